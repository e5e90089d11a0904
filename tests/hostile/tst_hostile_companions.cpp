#include "opened.h"
#include "small_catalogue.h"

#include <catalog/shop.h>
#include <QtTest>

using namespace ohmkin;
using catalog::Access;
using catalog::Catalogue;

namespace {

int quantity(const Catalogue& catalogue) {
  return catalog::stock(catalogue, catalog::SenderKey{"SN-10.1"}).front().quantity;
}

/// What lies on the disk while a program that has changed the file is still at it: the file, and its log or journal.
void leaveBehind(const test::Folder& folder, const char* mode, const char* as) {
  const auto file = folder.path("working.ohmkin");
  { const auto made = test::smallCatalogue(file); }
  SQLite::Database database(file.string(), SQLite::OPEN_READWRITE);
  database.exec(std::string("PRAGMA journal_mode = ") + mode + "; PRAGMA wal_autocheckpoint = 0");
  database.exec("PRAGMA cache_size = 1; PRAGMA cache_spill = 1; BEGIN IMMEDIATE; UPDATE stock SET quantity = 77");
  database.exec(
      "INSERT INTO change_log SELECT NULL, 'x', hex(zeroblob(4000)), '', '', '', '' FROM sender, thread, source");
  if (std::string(mode) == "WAL") database.exec("COMMIT");
  for (const char* ending : {"", "-wal", "-journal"}) {
    const auto from = folder.path(std::string("working.ohmkin") + ending);
    if (std::filesystem::exists(from)) folder.write(std::string(as) + ending, test::Folder::bytes(from));
  }
}

}  // namespace

class HostileCompanions : public QObject {
  Q_OBJECT
 private slots:
  void aLogLeftBehindIsRead();
  void aJournalLeftBehindIsRolledBack();
  void rubbishBesideItHarmsNothing_data();
  void rubbishBesideItHarmsNothing();
  void aLogOfAnotherFileIsNotMixedIn();
  void aJournalThatNamesAFileDeletesNothing();
  void aLinkBesideItIsRefused_data();
  void aLinkBesideItIsRefused();
};

void HostileCompanions::aLogLeftBehindIsRead() {
  const test::Folder folder;
  leaveBehind(folder, "WAL", "a.ohmkin");
  QVERIFY(folder.names().contains("a.ohmkin-wal"));
  QCOMPARE(quantity(Catalogue::openToRead(folder.path("a.ohmkin"))), 77);
  QCOMPARE(quantity(Catalogue::open(folder.path("a.ohmkin"), Access::readWrite)), 77);
}

void HostileCompanions::aJournalLeftBehindIsRolledBack() {
  const test::Folder folder;
  leaveBehind(folder, "DELETE", "a.ohmkin");
  QVERIFY(folder.names().contains("a.ohmkin-journal"));
  QCOMPARE(quantity(Catalogue::openToRead(folder.path("a.ohmkin"))), 5);
  QVERIFY(!folder.names().contains("a.ohmkin-journal"));
}

void HostileCompanions::rubbishBesideItHarmsNothing_data() {
  QTest::addColumn<QString>("ending");
  QTest::addColumn<QByteArray>("content");
  QByteArray noise(100'000, 'x');
  for (int i = 0; i < noise.size(); ++i) noise[i] = static_cast<char>((static_cast<unsigned>(i) * 2654435761U) >> 13U);
  const QByteArray walHead = QByteArray::fromHex("377f0682002de21800001000");
  const QByteArray journalHead = QByteArray::fromHex("d9d505f920a163d7ffffffff00000001000000ff0000020000001000");
  for (const char* ending : {"-wal", "-journal", "-shm"}) {
    QTest::addRow("%s empty", ending) << ending << QByteArray();
    QTest::addRow("%s noise", ending) << ending << noise;
    QTest::addRow("%s log's head and noise", ending) << ending << walHead + noise;
    QTest::addRow("%s journal's head and noise", ending) << ending << journalHead + noise;
  }
}

void HostileCompanions::rubbishBesideItHarmsNothing() {
  QFETCH(QString, ending);
  QFETCH(QByteArray, content);
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  { const auto made = test::smallCatalogue(file); }
  const QByteArray before = test::Folder::bytes(file);
  folder.write("a.ohmkin" + ending.toStdString(), content);
  for (const Access access : {Access::readOnly, Access::readWrite}) {
    const auto child = test::inAChild([&] { return test::openedOrWhyNot(file, access); });
    QVERIFY2(child.ended && child.seconds < test::kMostSeconds, child.said.c_str());
    QVERIFY2(child.said == "opened" || child.said.find(file.string()) != std::string::npos, child.said.c_str());
  }
  // Nothing of the rubbish went in: what is in the file is as it was.
  SQLite::Database database(file.string(), SQLite::OPEN_READONLY);
  QCOMPARE(database.execAndGet("PRAGMA integrity_check").getString(), std::string("ok"));
  QCOMPARE(test::Folder::bytes(file).left(before.size()).mid(100), before.mid(100));
}

void HostileCompanions::aLogOfAnotherFileIsNotMixedIn() {
  const test::Folder folder;
  leaveBehind(folder, "WAL", "other.ohmkin");
  const auto file = folder.path("a.ohmkin");
  { const auto made = Catalogue::create(file); }
  const QByteArray before = test::Folder::bytes(file);
  folder.write("a.ohmkin-wal", test::Folder::bytes(folder.path("other.ohmkin-wal")));
  for (const Access access : {Access::readOnly, Access::readWrite}) {
    const auto child = test::inAChild([&] { return test::openedOrWhyNot(file, access); });
    QVERIFY2(child.ended && child.said.starts_with("catalogue-damaged"), child.said.c_str());
    QVERIFY2(child.said.find(file.string()) != std::string::npos, child.said.c_str());
  }
  QCOMPARE(test::Folder::bytes(file), before);  // nothing of the log was written into it
}

void HostileCompanions::aJournalThatNamesAFileDeletesNothing() {
  const test::Folder folder;
  leaveBehind(folder, "DELETE", "a.ohmkin");
  const auto precious = folder.write("precious.txt", "a year's work\n");
  // The end of a journal that is part of a change over several files (sqlite.org/fileformat2.html, section 3): page
  // number of the lock, name, its length, the sum of its bytes, the magic.
  const std::string name = precious.string();
  quint32 sum = 0;
  for (const char c : name) sum += static_cast<quint32>(static_cast<signed char>(c));
  QByteArray end;
  const auto number = [&](quint32 value) {
    for (int shift = 24; shift >= 0; shift -= 8) end += static_cast<char>((value >> shift) & 0xFFU);
  };
  number(0x40000000U / 4096 + 1);
  end += QByteArray::fromStdString(name);
  number(static_cast<quint32>(name.size()));
  number(sum);
  end += QByteArray::fromHex("d9d505f920a163d7");
  folder.write("a.ohmkin-journal", test::Folder::bytes(folder.path("a.ohmkin-journal")) + end);
  const auto said = test::openedOrWhyNot(folder.path("a.ohmkin"), Access::readWrite);
  QVERIFY2(said.starts_with("catalogue-companion"), said.c_str());
  QCOMPARE(test::Folder::bytes(precious), QByteArray("a year's work\n"));
}

void HostileCompanions::aLinkBesideItIsRefused_data() {
  QTest::addColumn<QString>("ending");
  for (const char* ending : {"-wal", "-shm", "-journal"}) QTest::newRow(ending) << ending;
}

void HostileCompanions::aLinkBesideItIsRefused() {
  QFETCH(QString, ending);
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  { const auto made = test::smallCatalogue(file); }
  const auto precious = folder.write("precious.txt", "a year's work\n");
  std::filesystem::create_symlink("precious.txt", folder.path("a.ohmkin" + ending.toStdString()));
  for (const Access access : {Access::readOnly, Access::readWrite}) {
    const auto said = test::openedOrWhyNot(file, access);
    QVERIFY2(said.starts_with("catalogue-companion") && said.find(file.string()) != std::string::npos, said.c_str());
  }
  QCOMPARE(test::Folder::bytes(precious), QByteArray("a year's work\n"));
}

QTEST_APPLESS_MAIN(HostileCompanions)
#include "tst_hostile_companions.moc"
