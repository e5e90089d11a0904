#include "small_catalogue.h"

#include <catalog/catalogue.h>
#include <catalog/shop.h>
#include <catalog/snapshot.h>
#include <catalog/vehicles.h>
#include <sys/stat.h>
#include <unistd.h>
#include <QtTest>

using namespace ohmkin;
using catalog::Access;
using catalog::Catalogue;
using catalog::CatalogueError;

namespace {

/// The refusal's code, or "opened".
std::string opening(const std::filesystem::path& file, Access access) {
  try {
    Catalogue::open(file, access);
  } catch (const CatalogueError& error) {
    if (error.refusal().where != file.string() || error.refusal().found.empty() || error.refusal().expected.empty())
      return "no clear sentence";
    return error.refusal().code;
  }
  return "opened";
}

/// File permissions stop nobody who is root; for a while be somebody else.
class AsNobody {
 public:
  AsNobody() {
    if (geteuid() == 0 && (setegid(65534) != 0 || seteuid(65534) != 0)) qFatal("cannot step down");
  }
  ~AsNobody() {
    if (getuid() == 0 && (seteuid(0) != 0 || setegid(0) != 0)) qFatal("cannot step up");
  }
};

void mode(const std::filesystem::path& path, mode_t permissions) { chmod(path.c_str(), permissions); }

QByteArray withHeaderNumber(QByteArray file, int at, quint32 value) {
  for (int i = 0; i < 4; ++i) file[at + i] = static_cast<char>((value >> (24 - 8 * i)) & 0xFFU);
  return file;
}

}  // namespace

class CatalogueTest : public QObject {
  Q_OBJECT
 private slots:
  void whatIsNotACatalogueIsRefusedAndLeftAsItWas_data();
  void whatIsNotACatalogueIsRefusedAndLeftAsItWas();
  void aMissingFileIsRefusedAndNotMade();
  void aFolderIsRefused();
  void aDatabaseOfAnotherProgramIsRefusedAndLeftAsItWas();
  void aNewerCatalogueIsRefusedAndLeftAsItWas();
  void anOlderOneIsRefusedWhenItCannotBeBroughtUpToDate();
  void aReadOnlyFileIsRefusedForWriting();
  void aFileNobodyHasWrittenToIsReadAnywhere();
  void aShippedFileIsReadAsImmutable();
  void aLogBesideItKeepsItFromBeingImmutable();
  void aFileThatMayNotBeReadIsRefused();
  void aDamagedFileIsSaidToBeDamaged();
  void creatingNeverReplacesAFile();
  void creatingIntoNoFolderIsRefused();
  void aFailureWhileFillingLeavesNothingBehind();
  void theHeaderNamesTheFormat();
  void readersSeeOneStateThroughASnapshot();
  void aSecondWriterIsToldThatTheCatalogueIsBusy();
  void whatTheSchemaHidesIsNotRun();
  void foreignKeysAreEnforced();
};

void CatalogueTest::whatIsNotACatalogueIsRefusedAndLeftAsItWas_data() {
  QTest::addColumn<QByteArray>("content");
  QTest::addColumn<QByteArray>("code");
  QTest::newRow("empty") << QByteArray() << QByteArray("catalogue-empty");
  QTest::newRow("text") << QByteArray("dear diary\n") << QByteArray("catalogue-not-sqlite");
  QTest::newRow("long text") << QByteArray(5000, 'x') << QByteArray("catalogue-not-sqlite");
  QTest::newRow("the magic and no more") << QByteArray("SQLite format 3\0", 16) << QByteArray("catalogue-not-sqlite");
  QTest::newRow("nearly the magic") << QByteArray("SQLite format 2\0", 16) + QByteArray(200, '\0')
                                    << QByteArray("catalogue-not-sqlite");
}

void CatalogueTest::whatIsNotACatalogueIsRefusedAndLeftAsItWas() {
  QFETCH(QByteArray, content);
  QFETCH(QByteArray, code);
  const test::Folder folder;
  const auto file = folder.write("x.ohmkin", content);
  QCOMPARE(opening(file, Access::readOnly), code.toStdString());
  QCOMPARE(opening(file, Access::readWrite), code.toStdString());
  QCOMPARE(test::Folder::bytes(file), content);
  QCOMPARE(folder.names(), QStringList{"x.ohmkin"});
}

void CatalogueTest::aMissingFileIsRefusedAndNotMade() {
  const test::Folder folder;
  QCOMPARE(opening(folder.path("no"), Access::readOnly), std::string("catalogue-missing"));
  QCOMPARE(opening(folder.path("no"), Access::readWrite), std::string("catalogue-missing"));
  QCOMPARE(folder.names(), QStringList());
}

void CatalogueTest::aFolderIsRefused() {
  const test::Folder folder;
  QCOMPARE(opening(folder.path(""), Access::readOnly), std::string("catalogue-is-folder"));
}

void CatalogueTest::aDatabaseOfAnotherProgramIsRefusedAndLeftAsItWas() {
  const test::Folder folder;
  const auto file = folder.path("other.db");
  SQLite::Database(file.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE)
      .exec("PRAGMA journal_mode = WAL; CREATE TABLE t (a); PRAGMA user_version = 1");
  const QByteArray before = test::Folder::bytes(file);
  QCOMPARE(opening(file, Access::readOnly), std::string("catalogue-not-ours"));
  QCOMPARE(opening(file, Access::readWrite), std::string("catalogue-not-ours"));
  QCOMPARE(test::Folder::bytes(file), before);
  QCOMPARE(folder.names(), QStringList{"other.db"});
}

void CatalogueTest::aNewerCatalogueIsRefusedAndLeftAsItWas() {
  const test::Folder folder;
  Catalogue::create(folder.path("a.ohmkin"));
  const QByteArray newer = withHeaderNumber(test::Folder::bytes(folder.path("a.ohmkin")), 60, 99);
  const auto file = folder.write("newer.ohmkin", newer);
  QCOMPARE(opening(file, Access::readOnly), std::string("catalogue-newer"));
  QCOMPARE(opening(file, Access::readWrite), std::string("catalogue-newer"));
  QCOMPARE(test::Folder::bytes(file), newer);
}

void CatalogueTest::anOlderOneIsRefusedWhenItCannotBeBroughtUpToDate() {
  const test::Folder folder;
  const auto file = folder.path("old.ohmkin");
  SQLite::Database(file.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE)
      .exec("CREATE TABLE t (a); PRAGMA application_id = " +
            std::to_string(static_cast<qint32>(Catalogue::kApplicationId)));
  const QByteArray before = test::Folder::bytes(file);
  QCOMPARE(opening(file, Access::readOnly), std::string("catalogue-older"));
  QCOMPARE(test::Folder::bytes(file), before);
  mode(file, 0444);
  mode(folder.path(""), 0777);
  const AsNobody nobody;
  try {
    (void)Catalogue::openToRead(file);
    QFAIL("opened");
  } catch (const CatalogueError& error) {
    QCOMPARE(error.refusal().sentence(),
             file.string() + ": found a catalogue of version 0 that cannot be written here, expected version " +
                 std::to_string(Catalogue::newestVersion()) +
                 "; copy it to a folder you may write and open the copy: that brings the copy up to date");
  }
  QCOMPARE(test::Folder::bytes(file), before);
}

void CatalogueTest::aReadOnlyFileIsRefusedForWriting() {
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  Catalogue::create(file);
  const QByteArray before = test::Folder::bytes(file);
  mode(file, 0444);
  mode(folder.path(""), 0777);
  const AsNobody nobody;
  QCOMPARE(opening(file, Access::readWrite), std::string("catalogue-read-only"));
  QCOMPARE(test::Folder::bytes(file), before);
}

void CatalogueTest::aFileNobodyHasWrittenToIsReadAnywhere() {
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  test::smallCatalogue(file);
  mode(file, 0444);
  mode(folder.path(""), 0555);
  {
    const AsNobody nobody;
    const Catalogue catalogue = Catalogue::open(file, Access::readOnly);
    QVERIFY(!catalogue.immutable());
    QCOMPARE(catalog::lines(catalogue).size(), std::size_t{2});
  }
  mode(folder.path(""), 0755);
  QCOMPARE(folder.names(), QStringList{"a.ohmkin"});
}

void CatalogueTest::aShippedFileIsReadAsImmutable() {
  const test::Folder folder;
  const auto file = folder.path("a shop's #1%.ohmkin");  // all that a URI would trip over
  {
    const Catalogue written = test::smallCatalogue(file);
    written.connection().useWriteAheadLog();
  }
  mode(file, 0444);
  mode(folder.path(""), 0555);
  {
    const AsNobody nobody;
    const Catalogue catalogue = Catalogue::open(file, Access::readOnly);
    QVERIFY(catalogue.immutable());
    QCOMPARE(catalog::lines(catalogue).size(), std::size_t{2});
    QCOMPARE(opening(file, Access::readWrite), std::string("catalogue-read-only"));
  }
  mode(folder.path(""), 0755);
  QCOMPARE(folder.names(), QStringList{"a shop's #1%.ohmkin"});
  QVERIFY(!Catalogue::open(file, Access::readOnly).immutable());
}

void CatalogueTest::aLogBesideItKeepsItFromBeingImmutable() {
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  test::smallCatalogue(file);
  const Catalogue writer = Catalogue::open(file, Access::readWrite);
  writer.connection().useWriteAheadLog();
  writer.connection().database().exec("UPDATE stock SET quantity = 77 WHERE bin = 'A1'");
  QVERIFY(folder.names().contains("a.ohmkin-wal"));
  mode(folder.path(""), 0555);
  {
    const AsNobody nobody;
    // Either the change in the log is seen or the file is refused; never an old state without a word.
    try {
      const Catalogue reader = Catalogue::open(file, Access::readOnly);
      QVERIFY(!reader.immutable());
      QCOMPARE(catalog::stock(reader, catalog::SenderKey{"SN-10.1"}).front().quantity, 77);
    } catch (const CatalogueError& error) {
      QVERIFY(!error.refusal().code.empty());
    }
  }
  mode(folder.path(""), 0755);
}

void CatalogueTest::aFileThatMayNotBeReadIsRefused() {
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  Catalogue::create(file);
  mode(file, 0000);
  mode(folder.path(""), 0755);
  const AsNobody nobody;
  QCOMPARE(opening(file, Access::readOnly), std::string("catalogue-unreadable"));
}

void CatalogueTest::aDamagedFileIsSaidToBeDamaged() {
  const test::Folder folder;
  test::smallCatalogue(folder.path("a.ohmkin"));
  QByteArray bytes = test::Folder::bytes(folder.path("a.ohmkin"));
  for (int i = 100; i < bytes.size(); ++i) bytes[i] = '\x5A';  // the header stands, the rest does not
  const auto file = folder.write("b.ohmkin", bytes);
  std::string code = "none";
  try {
    (void)catalog::lines(Catalogue::open(file, Access::readOnly));
  } catch (const CatalogueError& error) {
    code = error.refusal().code;
  }
  QCOMPARE(code, std::string("catalogue-damaged"));
  QCOMPARE(test::Folder::bytes(file), bytes);
}

void CatalogueTest::creatingNeverReplacesAFile() {
  const test::Folder folder;
  const auto file = folder.write("mine.ohmkin", "precious");
  const auto code = [&](const std::filesystem::path& at) {
    try {
      Catalogue::create(at);
    } catch (const CatalogueError& error) {
      return error.refusal().code;
    }
    return std::string("made");
  };
  QCOMPARE(code(file), std::string("catalogue-exists"));
  QCOMPARE(test::Folder::bytes(file), QByteArray("precious"));
  std::filesystem::create_symlink(folder.path("nowhere"), folder.path("link"));
  QCOMPARE(code(folder.path("link")), std::string("catalogue-exists"));
  QCOMPARE(code(folder.path("")), std::string("catalogue-exists"));
  QCOMPARE(folder.names(), (QStringList{"link", "mine.ohmkin"}));
}

void CatalogueTest::creatingIntoNoFolderIsRefused() {
  const test::Folder folder;
  QVERIFY_THROWS_EXCEPTION(CatalogueError, Catalogue::create(folder.path("no/such/a.ohmkin")));
  QCOMPARE(folder.names(), QStringList());
}

void CatalogueTest::aFailureWhileFillingLeavesNothingBehind() {
  const test::Folder folder;
  struct Stop {};
  QVERIFY_THROWS_EXCEPTION(Stop, Catalogue::create(folder.path("a.ohmkin"), [](Catalogue&) { throw Stop{}; }));
  QVERIFY_THROWS_EXCEPTION(CatalogueError, Catalogue::create(folder.path("a.ohmkin"), [](Catalogue& fresh) {
                             fresh.connection().database().exec("INSERT INTO nonsense VALUES (1)");
                           }));
  QCOMPARE(folder.names(), QStringList());
}

void CatalogueTest::theHeaderNamesTheFormat() {
  const test::Folder folder;
  Catalogue::create(folder.path("a.ohmkin"));
  const QByteArray bytes = test::Folder::bytes(folder.path("a.ohmkin"));
  QCOMPARE(bytes.mid(68, 4), QByteArray("OHMK"));  // offsets: sqlite.org/fileformat2.html, "The Database Header"
  QCOMPARE(static_cast<int>(bytes[63]), Catalogue::newestVersion());
  QCOMPARE(folder.names(), QStringList{"a.ohmkin"});
}

void CatalogueTest::readersSeeOneStateThroughASnapshot() {
  const test::Folder folder;
  const Catalogue writer = test::smallCatalogue(folder.path("a.ohmkin"));
  writer.connection().useWriteAheadLog();
  const Catalogue reader = Catalogue::open(folder.path("a.ohmkin"), Access::readOnly);
  {
    const catalog::Snapshot snapshot(reader);
    QCOMPARE(catalog::stock(reader, catalog::SenderKey{"SN-10.1"}).front().quantity, 5);
    writer.connection().database().exec("UPDATE stock SET quantity = 9 WHERE bin = 'B4'");
    QCOMPARE(catalog::stock(reader, catalog::SenderKey{"SN-10.1"}).front().quantity, 5);
  }
  QCOMPARE(catalog::stock(reader, catalog::SenderKey{"SN-10.1"}).front().quantity, 9);
}

void CatalogueTest::aSecondWriterIsToldThatTheCatalogueIsBusy() {
  const test::Folder folder;
  const Catalogue one = test::smallCatalogue(folder.path("a.ohmkin"));
  const Catalogue two = Catalogue::open(folder.path("a.ohmkin"), Access::readWrite);
  one.connection().database().exec("BEGIN IMMEDIATE");
  two.connection().database().exec("PRAGMA busy_timeout = 1");
  try {
    two.connection().database().exec("BEGIN IMMEDIATE");
    QFAIL("two writers at once");
  } catch (const SQLite::Exception& failure) {
    try {
      catalog::rethrow(failure, two.file());
    } catch (const CatalogueError& error) {
      QCOMPARE(error.refusal().code, std::string("catalogue-busy"));
    }
  }
}

void CatalogueTest::whatTheSchemaHidesIsNotRun() {
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  const Catalogue catalogue = test::smallCatalogue(file);
  // Put in while the file is open: opening it again is refused (tests/hostile).
  SQLite::Database(file.string(), SQLite::OPEN_READWRITE)
      .exec("CREATE TRIGGER sly AFTER UPDATE ON stock BEGIN DELETE FROM sender; END");
  catalogue.connection().database().exec("UPDATE stock SET quantity = 1");
  QCOMPARE(catalogue.connection().database().execAndGet("SELECT count(*) FROM sender").getInt(), 4);
  QVERIFY_THROWS_EXCEPTION(SQLite::Exception,
                           catalogue.connection().database().exec("UPDATE sqlite_schema SET sql = ''"));
  QCOMPARE(opening(file, Access::readOnly), std::string("catalogue-foreign-tables"));
}

void CatalogueTest::foreignKeysAreEnforced() {
  const test::Folder folder;
  const Catalogue catalogue = test::smallCatalogue(folder.path("a.ohmkin"));
  QVERIFY_THROWS_EXCEPTION(SQLite::Exception,
                           catalogue.connection().database().exec("DELETE FROM sender WHERE id = 'SN-10.1'"));
}

QTEST_APPLESS_MAIN(CatalogueTest)
#include "tst_catalogue.moc"
