#include <catalog/joints.h>
#include <catalog/pack_writer.h>
#include <sqlite3.h>
#include <workflow/load_pack.h>
#include <QtCore/QDir>
#include <QtCore/QFile>
#include <QtCore/QTemporaryDir>
#include <QtTest>
#include <map>

using namespace ohmkin;
using catalog::Access;
using catalog::Catalogue;
using catalog::CatalogueError;

namespace {

/// A package in memory; every name in it is made up.
class Files {
 public:
  Files() {
    files_["source.csv"] = "id,kind,citation,confidence\nd,demo,made up,0.5\n";
    files_["thread.csv"] =
        "id,standard,form,flank_angle,pitch,diameter,tapered,source\n"
        "1/4-18 NPT,ASME B1.20.1,NPT,60,1.4111,13.616,1,d\nM12x1.5,ISO 261,M,60,1.5,12,0,d\n";
    files_["terminal.csv"] = "id,name,kind,size,contacts,look,source\nblade,blade 6.3 mm,blade,6.3,1,flat,d\n";
    files_["family.csv"] = "id,name,measurand,direction,source\nfa,Family A,coolant temperature,falling,d\n";
    files_["sender.csv"] =
        "id,name,kind,family,thread,terminal,grounding,source\n"
        "SN-1,one,variable sender,fa,M12x1.5,blade,case,d\nSN-2,two,variable sender,fa,M12x1.5,blade,case,d\n";
    files_["gauge.csv"] =
        "id,name,family,movement,key_off,low_stop,high_stop,source\ng1,Gauge,fa,unknown,stays,-50,50,d\n";
    files_["dial_mark.csv"] = "gauge,ordinal,kind,text,temperature,angle\ng1,1,cold,C,40,-45\ng1,2,hot,H,120,45\n";
  }
  std::string& operator[](const std::string& name) { return files_[name]; }
  void remove(const std::string& name) { files_.erase(name); }
  exchange::PackageSource source(const std::string& version = "1", const std::string& id = "small") {
    std::string resources;
    for (const auto& [name, text] : files_)
      if (name.ends_with(".csv"))
        resources += (resources.empty() ? "" : ", ") +
                     ("{\"name\": \"" + name.substr(0, name.size() - 4) + "\", \"path\": \"" + name + "\"}");
    files_["datapackage.json"] = "{\"name\": \"" + id + "\", \"title\": \"Small\", \"version\": \"" + version +
                                 "\", \"resources\": [" + resources + "]}";
    std::vector<exchange::PackageFile> all;
    all.reserve(files_.size());
    for (const auto& [name, text] : files_) all.push_back({name, text});
    return exchange::PackageSource::memory(std::move(all));
  }

 private:
  std::map<std::string, std::string> files_;
};

class Folder {
 public:
  [[nodiscard]] std::filesystem::path path(const char* name) const { return folder_.filePath(name).toStdString(); }
  [[nodiscard]] QStringList names() const {
    return QDir(folder_.path()).entryList(QDir::AllEntries | QDir::NoDotAndDotDot | QDir::Hidden, QDir::Name);
  }

 private:
  QTemporaryDir folder_;
};

/// A second look at the file, by the library and not by the program under test.
class Plain {
 public:
  explicit Plain(const std::filesystem::path& file) {
    if (sqlite3_open(file.c_str(), &handle_) != SQLITE_OK) qFatal("cannot open");
  }
  ~Plain() { sqlite3_close(handle_); }
  Plain(const Plain&) = delete;
  Plain& operator=(const Plain&) = delete;
  void run(const char* sql) {
    char* error = nullptr;
    if (sqlite3_exec(handle_, sql, nullptr, nullptr, &error) != SQLITE_OK) qFatal("%s", error);
  }
  QString ask(const char* sql) {
    sqlite3_stmt* statement = nullptr;
    if (sqlite3_prepare_v2(handle_, sql, -1, &statement, nullptr) != SQLITE_OK) qFatal("%s", sqlite3_errmsg(handle_));
    sqlite3_step(statement);
    const QString text = QString::fromUtf8(reinterpret_cast<const char*>(sqlite3_column_text(statement, 0)));
    sqlite3_finalize(statement);
    return text;
  }
  /// All rows of all tables as text.
  QString everything() {
    QString all;
    QStringList tables =
        ask("SELECT group_concat(name) FROM (SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name)")
            .split(',');
    for (const QString& table : tables) {
      sqlite3_stmt* statement = nullptr;
      sqlite3_prepare_v2(handle_, qPrintable("SELECT * FROM \"" + table + "\""), -1, &statement, nullptr);
      while (sqlite3_step(statement) == SQLITE_ROW)
        for (int c = 0; c < sqlite3_column_count(statement); ++c)
          all += QString::fromUtf8(reinterpret_cast<const char*>(sqlite3_column_text(statement, c))) + "|";
      sqlite3_finalize(statement);
      all += "\n";
    }
    return all;
  }

 private:
  sqlite3* handle_ = nullptr;
};

QString codes(const workflow::Loading& loading) {
  if (loading) return "loaded";
  QStringList all;
  for (const auto& refusal : loading.error().list()) all << QString::fromStdString(refusal.where + " " + refusal.code);
  return all.join("; ");
}

}  // namespace

class LoadPackTest : public QObject {
  Q_OBJECT
 private slots:
  void aPackIsLoadedWithItsCounts();
  void aBadCellLeavesTheCatalogueAsItWas();
  void aRuleOnlyTheTableKnowsLeavesTheCatalogueAsItWas();
  void theSameVersionAgainChangesNothing();
  void anotherVersionReplacesOnlyItsOwnRows();
  void theShopsRowsStayAndShadowThePacks();
  void theShopsReferencesAreNotLeftNowhere();
  void whatIsOnTheShelfStaysThereWhenItsPackForgetsThePart();
  void aRowOfAnotherPackIsNotTaken();
  void aPackMayReferToAnother();
  void aReaderIsRefused();
  void createdWholeOrNotAtAll();
  void anExistingFileIsNeverReplaced();
};

void LoadPackTest::aPackIsLoadedWithItsCounts() {
  const Folder folder;
  Catalogue catalogue = Catalogue::create(folder.path("a"));
  Files files;
  const auto loaded = workflow::loadPack(catalogue, files.source(), "test");
  if (!loaded) QFAIL(loaded.error().text().c_str());
  QCOMPARE(loaded->rows(), std::size_t{10});
  QCOMPARE(loaded->tables.size(), std::size_t{7});
  QCOMPARE(loaded->tables.front().table, std::string("source"));
  QCOMPARE(loaded->sentence(), std::string("Loaded 'Small' 1: 10 rows in 7 tables."));
  QCOMPARE(catalog::threads(catalogue).size(), std::size_t{2});
  Plain plain(folder.path("a"));
  QCOMPARE(plain.ask("SELECT who || ' ' || what || ' ' || subject || ' ' || after FROM change_log"),
           QString("test pack loaded small version 1, 10 rows"));
  QCOMPARE(plain.ask("SELECT count(*) FROM sender WHERE pack = 'small'"), QString("2"));
  QCOMPARE(plain.ask("PRAGMA foreign_key_check"), QString());
}

void LoadPackTest::aBadCellLeavesTheCatalogueAsItWas() {
  const Folder folder;
  Catalogue catalogue = Catalogue::create(folder.path("a"));
  Files files;
  QVERIFY(workflow::loadPack(catalogue, files.source("1"), "test"));
  const QString before = Plain(folder.path("a")).everything();
  files["dial_mark.csv"] += "g1,3,hot,H,hot,50\n";
  files["sender.csv"] += "SN-3,three,toaster,fa,M12x1.5,blade,case,d\n";
  QCOMPARE(codes(workflow::loadPack(catalogue, files.source("2"), "test")),
           QString("sender.csv:4:kind cell-not-allowed; dial_mark.csv:4:temperature cell-not-a-number"));
  QCOMPARE(Plain(folder.path("a")).everything(), before);
}

void LoadPackTest::whatIsOnTheShelfStaysThereWhenItsPackForgetsThePart() {
  const Folder folder;
  Catalogue catalogue = Catalogue::create(folder.path("a"));
  Files files;
  QVERIFY(workflow::loadPack(catalogue, files.source("1"), "test"));
  Plain(folder.path("a")).run("INSERT INTO stock VALUES ('SN-2', 'A', 3, 0, 'shop')");
  files["sender.csv"] =
      "id,name,kind,family,thread,terminal,grounding,source\nSN-1,one,variable sender,fa,M12x1.5,blade,case,d\n";
  const auto loaded = workflow::loadPack(catalogue, files.source("2"), "test");
  if (!loaded) QFAIL(loaded.error().text().c_str());
  Plain plain(folder.path("a"));
  QCOMPARE(plain.ask("SELECT count(*) FROM sender WHERE id = 'SN-2'"), QString("0"));
  QCOMPARE(plain.ask("SELECT sender || quantity FROM stock"), QString("SN-23"));
}

void LoadPackTest::aRuleOnlyTheTableKnowsLeavesTheCatalogueAsItWas() {
  const Folder folder;
  Catalogue catalogue = Catalogue::create(folder.path("a"));
  Files files;
  QVERIFY(workflow::loadPack(catalogue, files.source("1"), "test"));
  // A rule of this one file, standing for one that a later version of the tables has and an older exchange format does
  // not.
  Plain(folder.path("a")).run("CREATE UNIQUE INDEX one_name ON thread (standard)");
  const QString before = Plain(folder.path("a")).everything();
  files["thread.csv"] += "M14x1.5,ISO 261,M,60,1.5,14,0,d\n";
  QCOMPARE(codes(workflow::loadPack(catalogue, files.source("2"), "test")), QString("thread.csv:4 row-refused"));
  QCOMPARE(Plain(folder.path("a")).everything(), before);
}

void LoadPackTest::theSameVersionAgainChangesNothing() {
  const Folder folder;
  Catalogue catalogue = Catalogue::create(folder.path("a"));
  Files files;
  QVERIFY(workflow::loadPack(catalogue, files.source(), "test"));
  const QString before = Plain(folder.path("a")).everything();
  const auto again = workflow::loadPack(catalogue, files.source(), "test");
  QVERIFY(again && again->alreadyThere);
  QCOMPARE(again->sentence(), std::string("'Small' 1 is already in the catalogue; nothing was changed."));
  QCOMPARE(Plain(folder.path("a")).everything(), before);
}

void LoadPackTest::anotherVersionReplacesOnlyItsOwnRows() {
  const Folder folder;
  Catalogue catalogue = Catalogue::create(folder.path("a"));
  Files files;
  QVERIFY(workflow::loadPack(catalogue, files.source("1"), "test"));
  Plain(folder.path("a"))
      .run(
          "INSERT INTO terminal VALUES ('mine', 'mine', 'stud', 4, 1, 'nut', 'd', 'shop'); INSERT INTO stock VALUES "
          "('SN-1', 'A', 3, 0, 'shop')");
  files["sender.csv"] =
      "id,name,kind,family,thread,terminal,grounding,source\nSN-1,renamed,variable sender,fa,M12x1.5,blade,case,d\n";
  const auto loaded = workflow::loadPack(catalogue, files.source("2"), "test");
  if (!loaded) QFAIL(loaded.error().text().c_str());
  QCOMPARE(loaded->replaced, std::string("1"));
  Plain plain(folder.path("a"));
  QCOMPARE(plain.ask("SELECT group_concat(id || ' ' || name) FROM sender"), QString("SN-1 renamed"));
  QCOMPARE(plain.ask("SELECT group_concat(id) FROM terminal WHERE pack = 'shop'"), QString("mine"));
  QCOMPARE(plain.ask("SELECT quantity FROM stock"), QString("3"));
  QCOMPARE(plain.ask("SELECT version FROM pack WHERE id = 'small'"), QString("2"));
  QCOMPARE(plain.ask("SELECT count(*) FROM change_log"), QString("2"));
  QCOMPARE(plain.ask("PRAGMA foreign_key_check"), QString());
}

void LoadPackTest::theShopsRowsStayAndShadowThePacks() {
  const Folder folder;
  Catalogue catalogue = Catalogue::create(folder.path("a"));
  Files files;
  QVERIFY(workflow::loadPack(catalogue, files.source("1"), "test"));
  Plain(folder.path("a"))
      .run(
          "UPDATE sender SET name = 'ours', pack = 'shop' WHERE id = 'SN-1'; UPDATE gauge SET pack = 'shop';"
          "DELETE FROM dial_mark; INSERT INTO dial_mark VALUES ('g1', 1, 'hot', 'ours', 110, 40, 'shop')");
  const auto loaded = workflow::loadPack(catalogue, files.source("2"), "test");
  if (!loaded) QFAIL(loaded.error().text().c_str());
  QVERIFY(QString::fromStdString(loaded->sentence()).endsWith("4 rows were left out because the shop has its own."));
  Plain plain(folder.path("a"));
  QCOMPARE(plain.ask("SELECT name FROM sender WHERE id = 'SN-1'"), QString("ours"));
  QCOMPARE(plain.ask("SELECT group_concat(text) FROM dial_mark"), QString("ours"));
}

void LoadPackTest::theShopsReferencesAreNotLeftNowhere() {
  const Folder folder;
  Catalogue catalogue = Catalogue::create(folder.path("a"));
  Files files;
  QVERIFY(workflow::loadPack(catalogue, files.source("1"), "test"));
  Plain(folder.path("a")).run("INSERT INTO stands_in_for VALUES ('SN-2', 'SN-1', '1980', 'd', 'shop')");
  const QString before = Plain(folder.path("a")).everything();
  files["sender.csv"] =
      "id,name,kind,family,thread,terminal,grounding,source\nSN-1,one,variable sender,fa,M12x1.5,blade,case,d\n";
  const auto loaded = workflow::loadPack(catalogue, files.source("2"), "test");
  QCOMPARE(codes(loaded), QString("stands_in_for:sender reference-dangling"));
  QVERIFY(loaded.error().text().find("'SN-2', which the shop refers to") != std::string::npos);
  QCOMPARE(Plain(folder.path("a")).everything(), before);
}

void LoadPackTest::aRowOfAnotherPackIsNotTaken() {
  const Folder folder;
  Catalogue catalogue = Catalogue::create(folder.path("a"));
  Files files;
  QVERIFY(workflow::loadPack(catalogue, files.source("1"), "test"));
  Files other;
  for (const char* name : {"terminal.csv", "family.csv", "sender.csv", "gauge.csv", "source.csv"}) other.remove(name);
  other["thread.csv"] = "id,standard,form,flank_angle,pitch,diameter,tapered,source\nM12x1.5,mine,M,60,1.5,12,0,d\n";
  other["dial_mark.csv"] = "gauge,ordinal,kind,angle\ng1,3,tick,47\n";
  const QString before = Plain(folder.path("a")).everything();
  QCOMPARE(codes(workflow::loadPack(catalogue, other.source("1", "other"), "test")),
           QString("thread.csv:2 row-of-another-pack; dial_mark.csv:2 row-of-another-pack"));
  QCOMPARE(Plain(folder.path("a")).everything(), before);
}

void LoadPackTest::aPackMayReferToAnother() {
  const Folder folder;
  Catalogue catalogue = Catalogue::create(folder.path("a"));
  Files files;
  Files other;
  for (const char* name : {"thread.csv", "terminal.csv", "family.csv", "gauge.csv", "dial_mark.csv", "source.csv"})
    other.remove(name);
  other["sender.csv"] = "id,name,kind,thread,terminal,grounding,source\nSN-9,nine,fan switch,M12x1.5,blade,case,d\n";
  QCOMPARE(codes(workflow::loadPack(catalogue, other.source("1", "other"), "test")),
           QString("sender.csv:2:thread reference-dangling; sender.csv:2:terminal reference-dangling; "
                   "sender.csv:2:source reference-dangling"));
  QVERIFY(workflow::loadPack(catalogue, files.source("1"), "test"));
  QCOMPARE(codes(workflow::loadPack(catalogue, other.source("1", "other"), "test")), QString("loaded"));
  QCOMPARE(catalog::packs(catalogue).size(), std::size_t{2});
}

void LoadPackTest::aReaderIsRefused() {
  const Folder folder;
  Catalogue::create(folder.path("a"));
  Catalogue reader = Catalogue::open(folder.path("a"), Access::readOnly);
  Files files;
  QVERIFY_THROWS_EXCEPTION(CatalogueError, (void)workflow::loadPack(reader, files.source(), "test"));
}

void LoadPackTest::createdWholeOrNotAtAll() {
  const Folder folder;
  Files files;
  files["sender.csv"] += "SN-1,again,variable sender,fa,M12x1.5,blade,case,d\n";
  QCOMPARE(codes(workflow::createWithPack(folder.path("demo.ohmkin"), files.source(), "test")),
           QString("sender.csv:4:id key-twice"));
  QCOMPARE(folder.names(), QStringList());
  Files sound;
  QVERIFY(workflow::createWithPack(folder.path("demo.ohmkin"), sound.source(), "test"));
  QCOMPARE(folder.names(), QStringList{"demo.ohmkin"});
}

void LoadPackTest::anExistingFileIsNeverReplaced() {
  const Folder folder;
  Files files;
  QVERIFY(workflow::createWithPack(folder.path("demo.ohmkin"), files.source(), "test"));
  const auto bytes = [&] {
    QFile file(QString::fromStdString(folder.path("demo.ohmkin").string()));
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
  };
  const QByteArray before = bytes();
  QVERIFY_THROWS_EXCEPTION(CatalogueError,
                           (void)workflow::createWithPack(folder.path("demo.ohmkin"), files.source("2"), "test"));
  QCOMPARE(bytes(), before);
}

QTEST_APPLESS_MAIN(LoadPackTest)
#include "tst_load_pack.moc"
