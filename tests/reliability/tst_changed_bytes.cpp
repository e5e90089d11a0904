#include "changes.h"

#include <catalog/backup.h>
#include <catalog/salvage.h>
#include <QtTest>
#include <fstream>
#include <random>

using namespace ohmkin;
using catalog::Access;
using catalog::Catalogue;
using catalog::CatalogueError;

namespace {

namespace fs = std::filesystem;

/// Every value of every table, in the order of the keys.
QByteArray everything(Catalogue& catalogue) {
  QByteArray all;
  SQLite::Database& database = catalogue.connection().database();
  SQLite::Statement tables(database,
                           "SELECT name FROM sqlite_schema WHERE type = 'table' AND sql LIKE '%STRICT%' ORDER BY name");
  while (tables.executeStep()) {
    SQLite::Statement rows(database, "SELECT * FROM \"" + tables.getColumn(0).getString() + "\"");
    while (rows.executeStep()) {
      for (int c = 0; c < rows.getColumnCount(); ++c)
        all += QByteArray::fromStdString(rows.getColumn(c).getString()) + '|';
      all += '\n';
    }
  }
  return all;
}

struct Change {
  const char* name;
  void (*change)(QByteArray& bytes, std::mt19937& random);
};

int somewhere(const QByteArray& bytes, std::mt19937& random) {
  return static_cast<int>(random() % static_cast<unsigned>(bytes.size()));
}

constexpr Change kChanges[] = {
    {"one bit",
     [](QByteArray& bytes, std::mt19937& random) {
       const int at = somewhere(bytes, random);
       bytes[at] = static_cast<char>(bytes[at] ^ (1 << (random() % 8)));
     }},
    {"one byte",
     [](QByteArray& bytes, std::mt19937& random) {
       const int at = somewhere(bytes, random);
       bytes[at] = static_cast<char>(bytes[at] + 1 + static_cast<int>(random() % 255));
     }},
    {"a sector of zeroes",
     [](QByteArray& bytes, std::mt19937& random) {
       const int at = somewhere(bytes, random) / 512 * 512;
       bytes.replace(at, 512, QByteArray(512, '\0'));
     }},
    {"two pages exchanged",
     [](QByteArray& bytes, std::mt19937& random) {
       const int one = somewhere(bytes, random) / 4096 * 4096;
       const int other = somewhere(bytes, random) / 4096 * 4096;
       const QByteArray kept = bytes.mid(one, 4096);
       bytes.replace(one, 4096, bytes.mid(other, 4096));
       bytes.replace(other, 4096, kept);
     }},
    {"cut off", [](QByteArray& bytes, std::mt19937& random) { bytes.truncate(somewhere(bytes, random)); }},
};

}  // namespace

/// A catalogue changed at a random place: refused with a sentence that names it, or opened; never a crash; and what is
/// salvaged of it is a sound catalogue. 1,000 places; with OHMKIN_LONG_TESTS=1, 10,000.
///
/// A value changed within a row is seen by nobody but the hash beside a backup: the numbers printed say how many there
/// were.
class ChangedBytes : public QObject {
  Q_OBJECT
 private slots:
  void areRefusedOrRead_data();
  void areRefusedOrRead();
};

void ChangedBytes::areRefusedOrRead_data() {
  QTest::addColumn<int>("how");
  for (int i = 0; i < static_cast<int>(std::size(kChanges)); ++i) QTest::newRow(kChanges[i].name) << i;
}

void ChangedBytes::areRefusedOrRead() {
  QFETCH(int, how);
  const test::Folder folder;
  const auto whole = folder.path("whole.ohmkin");
  catalog::Backup backup;
  {
    Catalogue made = test::smallCatalogue(whole);
    for (int i = 1; i <= 4; ++i) test::importReadings(made, i);
    backup = catalog::backUp(made);
  }
  QByteArray rows;
  {
    Catalogue catalogue = Catalogue::open(backup.file, Access::readOnly);
    rows = everything(catalogue);
  }
  const QByteArray bytes = test::Folder::bytes(backup.file);
  const auto file = folder.path("changed.ohmkin");
  std::mt19937 random(static_cast<unsigned>(1959 + how));
  const int places = (test::longForm() ? 10'000 : 1'000) / static_cast<int>(std::size(kChanges));
  int same = 0, refused = 0, refusedLater = 0, other = 0, salvaged = 0, lost = 0;
  for (int i = 0; i < places; ++i) {
    QByteArray changed = bytes;
    kChanges[how].change(changed, random);
    folder.write("changed.ohmkin", changed);
    try {
      Catalogue catalogue = Catalogue::openToRead(file);
      try {
        ++(everything(catalogue) == rows ? same : other);
      } catch (const SQLite::Exception&) {  // asked beside the questions of the room, which would say it in words
        ++refusedLater;
      }
    } catch (const CatalogueError& error) {
      ++refused;
      QCOMPARE(error.refusal().where, file.string());
      QVERIFY2(!error.refusal().found.empty() && !error.refusal().expected.empty(), error.what());
    }
    QCOMPARE(test::Folder::bytes(file), changed);  // looking changes nothing
    if (i % 10 != 0) continue;
    const auto into = folder.path("salvaged.ohmkin");
    fs::remove(into);
    try {
      (void)catalog::salvage(file, into);
      ++salvaged;
      SQLite::Database database(into.string(), SQLite::OPEN_READONLY);
      QCOMPARE(database.execAndGet("PRAGMA integrity_check").getString(), std::string("ok"));
      QCOMPARE(database.execAndGet("SELECT count(*) FROM pragma_foreign_key_check").getInt(), 0);
    } catch (const CatalogueError& error) {
      ++lost;
      QVERIFY2(error.refusal().where == file.string(), error.what());
    }
  }
  qInfo(
      "%d places: %d refused, %d refused later, %d read the same, %d read otherwise; of every tenth %d salvaged, %d "
      "lost",
      places, refused, refusedLater, same, other, salvaged, lost);
  QVERIFY(refused > 0);
}

QTEST_APPLESS_MAIN(ChangedBytes)
#include "tst_changed_bytes.moc"
