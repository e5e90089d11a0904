#include "opened.h"
#include "small_catalogue.h"

#include <sqlite3.h>
#include <sys/stat.h>
#include <QtTest>

using namespace ohmkin;
using catalog::Access;
using catalog::Catalogue;

namespace {

using Change = void (*)(const std::filesystem::path&);

/// Statements as somebody else's program would run them, without any of our precautions.
void run(const std::filesystem::path& file, const std::string& sql) {
  SQLite::Database database(file.string(), SQLite::OPEN_READWRITE);
  sqlite3_db_config(database.getHandle(), SQLITE_DBCONFIG_DEFENSIVE, 0, nullptr);
  sqlite3_db_config(database.getHandle(), SQLITE_DBCONFIG_WRITABLE_SCHEMA, 1, nullptr);
  database.exec(sql);
}

void put(const std::filesystem::path& file, int at, const QByteArray& bytes) {
  QFile out(QString::fromStdString(file.string()));
  if (!out.open(QIODevice::ReadWrite) || !out.seek(at) || out.write(bytes) != bytes.size()) qFatal("cannot write");
}

void manyViews(const std::filesystem::path& file) {
  run(file,
      "WITH RECURSIVE n(x) AS (SELECT 1 UNION ALL SELECT x + 1 FROM n LIMIT 300000) INSERT INTO sqlite_schema SELECT "
      "'view', 'zz' || x, 'zz' || x, 0, 'CREATE VIEW zz' || x || ' AS SELECT 1 AS a, 2 AS b' FROM n");
}

/// A record whose header promises a text of 2^30 bytes in place of its last five columns (sqlite.org/fileformat2.html,
/// section 2.1: serial type 13 + 2 · 2^30, five bytes as a varint).
void promiseGigabyte(const std::filesystem::path& file) {
  run(file, "INSERT INTO change_log VALUES (1, 'ATATATAT', 'WHO', 'WHAT', 'SUBJECT', 'BEFORE', 'AFTER')");
  QByteArray bytes = test::Folder::bytes(file);
  const auto text = bytes.indexOf("ATATATATWHOWHATSUBJECTBEFOREAFTER");
  if (text < 0) qFatal("no such row");
  put(file, static_cast<int>(text) - 5, QByteArray::fromHex("888080800d"));
}

struct Attack {
  const char* name;
  const char* code;
  Change change;
};

constexpr Attack kAttacks[] = {
    {"a trigger", "catalogue-foreign-tables",
     [](const auto& f) { run(f, "CREATE TRIGGER sly AFTER UPDATE ON stock BEGIN DELETE FROM sender; END"); }},
    {"a view calling a function", "catalogue-foreign-tables",
     [](const auto& f) { run(f, "CREATE VIEW sly AS SELECT hex(randomblob(1000000000)) AS x"); }},
    {"a view in place of a table", "catalogue-foreign-tables",
     [](const auto& f) { run(f, "DROP TABLE stock; CREATE VIEW stock AS SELECT load_extension('x') AS sender"); }},
    {"a billion rows in a view", "catalogue-foreign-tables",
     [](const auto& f) {
       run(f,
           "DROP TABLE reading_habit; CREATE VIEW reading_habit AS WITH RECURSIVE n(x) AS (SELECT 1 UNION ALL SELECT "
           "x + 1 FROM n LIMIT 1000000000) SELECT x FROM n");
     }},
    {"a computed column", "catalogue-foreign-tables",
     [](const auto& f) { run(f, "ALTER TABLE stock ADD COLUMN x BLOB AS (zeroblob(1000000000))"); }},
    {"an index of its own", "catalogue-foreign-tables",
     [](const auto& f) { run(f, "CREATE INDEX sly ON sender (hex(id))"); }},
    {"a table of its own", "catalogue-foreign-tables", [](const auto& f) { run(f, "CREATE TABLE sly (x)"); }},
    {"a virtual table", "catalogue-foreign-tables",
     [](const auto& f) { run(f, "CREATE VIRTUAL TABLE sly USING fts5(x)"); }},
    {"a virtual table of a module that is not there", "catalogue-foreign-tables",
     [](const auto& f) {
       run(f,
           "INSERT INTO sqlite_schema VALUES ('table', 'sly', 'sly', 0, 'CREATE VIRTUAL TABLE sly USING nowhere(x)')");
     }},
    {"a rule taken out", "catalogue-foreign-tables",
     [](const auto& f) {
       run(f, "UPDATE sqlite_schema SET sql = replace(sql, 'CHECK (quantity >= 0)', '') WHERE name = 'stock'");
     }},
    {"a rule that calls a function", "catalogue-foreign-tables",
     [](const auto& f) {
       run(f,
           "UPDATE sqlite_schema SET sql = replace(sql, 'quantity >= 0', 'length(randomblob(99999999))') WHERE name = "
           "'stock'");
     }},
    {"a table missing", "catalogue-foreign-tables", [](const auto& f) { run(f, "DROP TABLE reading_habit"); }},
    {"a name that would write on the terminal", "catalogue-foreign-tables",
     [](const auto& f) { run(f, "CREATE TABLE \"a\x1b[2Jb\nc\" (x)"); }},
    {"three hundred thousand views", "catalogue-", manyViews},
    {"a text of a gigabyte promised", "catalogue-damaged", promiseGigabyte},
    {"pages of 3 bytes", "catalogue-damaged", [](const auto& f) { put(f, 16, QByteArray::fromHex("0003")); }},
    {"pages of 60,000 bytes", "catalogue-damaged", [](const auto& f) { put(f, 16, QByteArray::fromHex("ea60")); }},
    {"pages of another size", "catalogue-damaged", [](const auto& f) { put(f, 16, QByteArray::fromHex("0200")); }},
    {"more pages than there are", "catalogue-damaged",
     [](const auto& f) { put(f, 28, QByteArray::fromHex("7fffffff")); }},
    {"UTF-16", "catalogue-damaged", [](const auto& f) { put(f, 59, QByteArray::fromHex("02")); }},
    {"room kept in every page", "catalogue-damaged", [](const auto& f) { put(f, 20, QByteArray::fromHex("ff")); }},
    {"an unknown format", "catalogue-damaged", [](const auto& f) { put(f, 18, QByteArray::fromHex("0303")); }},
    {"cut off in the middle", "catalogue-damaged",
     [](const auto& f) { std::filesystem::resize_file(f, std::filesystem::file_size(f) / 2 / 4096 * 4096); }},
    {"cut off after its header", "catalogue-damaged", [](const auto& f) { std::filesystem::resize_file(f, 100); }},
};

}  // namespace

class HostileCatalogue : public QObject {
  Q_OBJECT
 private slots:
  void isRefusedWithinTwoSecondsAndNamed_data();
  void isRefusedWithinTwoSecondsAndNamed();
  void whatIsNoFileIsRefused_data();
  void whatIsNoFileIsRefused();
  void aLinkToACatalogueIsFollowed();
  void anHonestFileIsStillOpened();
  void aFileFromElsewhereIsLookedThroughOnce();
};

void HostileCatalogue::isRefusedWithinTwoSecondsAndNamed_data() {
  QTest::addColumn<int>("attack");
  for (int i = 0; i < static_cast<int>(std::size(kAttacks)); ++i) QTest::newRow(kAttacks[i].name) << i;
}

void HostileCatalogue::isRefusedWithinTwoSecondsAndNamed() {
  QFETCH(int, attack);
  const test::Folder folder;
  const auto file = folder.path("sly.ohmkin");
  { const auto made = test::smallCatalogue(file); }
  kAttacks[attack].change(file);
  const QByteArray before = test::Folder::bytes(file);
  for (const Access access : {Access::readOnly, Access::readWrite}) {
    const auto child = test::inAChild([&] { return test::openedOrWhyNot(file, access); });
    const QByteArray said = QByteArray::fromStdString(child.said);
    QVERIFY2(child.ended && said.startsWith(kAttacks[attack].code), said.constData());
    QVERIFY2(said.contains(file.string().c_str()) && said.count('\n') == 1 && !said.contains('\x1b'), said.constData());
    QVERIFY2(child.seconds < test::kMostSeconds, std::to_string(child.seconds).c_str());
    if (test::kBoundMemory) QVERIFY2(child.megabytes < 250, std::to_string(child.megabytes).c_str());
  }
  QCOMPARE(test::Folder::bytes(file), before);
  QCOMPARE(folder.names(), QStringList{"sly.ohmkin"});
}

void HostileCatalogue::whatIsNoFileIsRefused_data() {
  QTest::addColumn<QString>("name");
  for (const char* name : {"pipe", "link to a pipe", "link to itself", "folder", "empty", "/dev/zero", "/dev/null"})
    QTest::newRow(name) << name;
}

void HostileCatalogue::whatIsNoFileIsRefused() {
  QFETCH(QString, name);
  const test::Folder folder;
  mkfifo(folder.path("pipe").c_str(), 0600);
  std::filesystem::create_symlink("pipe", folder.path("link to a pipe"));
  std::filesystem::create_symlink("link to itself", folder.path("link to itself"));
  std::filesystem::create_directory(folder.path("folder"));
  folder.write("empty", "");
  const std::filesystem::path file =
      name.startsWith('/') ? std::filesystem::path(name.toStdString()) : folder.path(name.toStdString());
  const QStringList before = folder.names();
  for (const Access access : {Access::readOnly, Access::readWrite}) {
    const auto child = test::inAChild([&] { return test::openedOrWhyNot(file, access); });
    QVERIFY2(child.ended && child.said.starts_with("catalogue-"), child.said.c_str());
    QVERIFY2(child.said.find(file.string()) != std::string::npos, child.said.c_str());
    QVERIFY(child.seconds < test::kMostSeconds);
  }
  QCOMPARE(folder.names(), before);
}

void HostileCatalogue::aLinkToACatalogueIsFollowed() {
  const test::Folder folder;
  { const auto made = test::smallCatalogue(folder.path("a.ohmkin")); }
  std::filesystem::create_symlink("a.ohmkin", folder.path("b.ohmkin"));
  QCOMPARE(test::openedOrWhyNot(folder.path("b.ohmkin"), Access::readWrite), std::string("opened"));
}

void HostileCatalogue::anHonestFileIsStillOpened() {
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  { const auto made = test::smallCatalogue(file); }
  const auto child = test::inAChild([&] { return test::openedOrWhyNot(file, Access::readWrite); });
  QCOMPARE(child.said, std::string("opened"));
}

void HostileCatalogue::aFileFromElsewhereIsLookedThroughOnce() {
  const test::Folder folder;
  const test::Folder memory;
  const QByteArray stateBefore = qgetenv("XDG_STATE_HOME");
  qputenv("XDG_STATE_HOME", QByteArray::fromStdString(memory.path("state").string()));
  const auto file = folder.path("a.ohmkin");
  { const auto made = test::smallCatalogue(file); }
  const auto kept = memory.path("state/ohmkin/looked-through");
  QCOMPARE(test::Folder::bytes(kept).count('\n'), 1);
  // A page that quick_check minds: the cell count of a leaf that no question here reads.
  const QByteArray whole = test::Folder::bytes(file);
  QByteArray hurt = whole;
  const auto page = hurt.indexOf("made up") / 4096 * 4096;
  hurt[page + 3] = '\x7f';
  const auto copy = folder.write("b.ohmkin", hurt);
  QVERIFY(test::openedOrWhyNot(copy, Access::readOnly).starts_with("catalogue-damaged"));
  folder.write("b.ohmkin", whole);
  QCOMPARE(test::openedOrWhyNot(copy, Access::readOnly), std::string("opened"));
  QCOMPARE(test::Folder::bytes(kept).count('\n'), 2);
  const QByteArray once = test::Folder::bytes(kept);
  QCOMPARE(test::openedOrWhyNot(copy, Access::readOnly), std::string("opened"));
  QCOMPARE(test::Folder::bytes(kept), once);
  if (stateBefore.isEmpty()) qunsetenv("XDG_STATE_HOME");
  else qputenv("XDG_STATE_HOME", stateBefore);
}

QTEST_APPLESS_MAIN(HostileCatalogue)
#include "tst_hostile_catalogue.moc"
