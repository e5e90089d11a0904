#include "changes.h"
#include "failing_disk.h"

#include <catalog/file_system.h>
#include <QtTest>
#include <fstream>

using namespace ohmkin;
using catalog::Access;
using catalog::Catalogue;
using test::DiskCall;
using test::FailingDisk;

namespace {

namespace fs = std::filesystem;

struct Moment {
  test::DiskImage image;
  int acknowledged = 0;
};

/// Puts the files of a moment into a folder of their own; the catalogue's name there.
fs::path laidOut(const test::Folder& folder, const Moment& moment, const fs::path& catalogue) {
  for (const auto& entry : fs::directory_iterator(folder.path(""))) fs::remove_all(entry.path());
  for (const auto& [name, content] : moment.image) {
    if (name.ends_with("-shm") || !name.starts_with(catalogue.string())) continue;
    std::ofstream(folder.path(fs::path(name).filename().string()), std::ios::binary) << content;
  }
  return folder.path(catalogue.filename().string());
}

/// At how many moments of all that are written the power fails.
int mostMoments() { return test::longForm() ? 2000 : 120; }

}  // namespace

/// Loss of power at any write, in any state of what was not synced: the old state or the new one, and what was
/// acknowledged is there.
class PowerLoss : public QObject {
  Q_OBJECT
 private slots:
  void initTestCase() { FailingDisk::install(); }
  void leavesTheOldStateOrTheNew_data();
  void leavesTheOldStateOrTheNew();
  void duringAnUpdateOfTheTables();
};

void PowerLoss::leavesTheOldStateOrTheNew_data() {
  QTest::addColumn<int>("which");
  QTest::addColumn<bool>("log");
  QTest::addColumn<bool>("network");
  for (int i = 0; i < static_cast<int>(test::kKinds.size()); ++i) {
    QTest::addRow("%s, first change", test::kKinds[static_cast<std::size_t>(i)].name) << i << false << false;
    QTest::addRow("%s, with a log", test::kKinds[static_cast<std::size_t>(i)].name) << i << true << false;
    QTest::addRow("%s, on a network", test::kKinds[static_cast<std::size_t>(i)].name) << i << false << true;
  }
}

void PowerLoss::leavesTheOldStateOrTheNew() {
  QFETCH(int, which);
  QFETCH(bool, log);
  QFETCH(bool, network);
  const test::KindOfChange& kind = test::kKinds[static_cast<std::size_t>(which)];
  FailingDisk& disk = FailingDisk::install();
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  { const auto made = test::smallCatalogue(file); }
  const auto before = catalog::fileSystemType;
  if (network) catalog::fileSystemType = [](const fs::path&) { return 0x6969L; };  // NFS: no log there
  int acknowledged = 0;
  if (log) {
    Catalogue catalogue = Catalogue::open(file, Access::readWrite);
    kind.change(catalogue, ++acknowledged);
  }
  std::mt19937 random(static_cast<unsigned>(1959 + which));
  std::vector<Moment> moments;
  int writes = 0;
  disk.beginNoting([&] {
    ++writes;
    // Each moment is as likely to be among those kept (Vitter's algorithm R).
    const Moment now{disk.afterPowerLoss(random), acknowledged};
    if (static_cast<int>(moments.size()) < mostMoments()) moments.push_back(now);
    else if (const auto place = random() % static_cast<unsigned>(writes); place < moments.size()) moments[place] = now;
  });
  {
    Catalogue catalogue = Catalogue::open(file, Access::readWrite);
    for (int i = 0; i < 4; ++i) {
      kind.change(catalogue, acknowledged + 1);
      ++acknowledged;
    }
  }
  disk.endNoting();
  catalog::fileSystemType = before;
  const test::Folder after;
  for (const Moment& moment : moments) {
    const auto found = laidOut(after, moment, file);
    if (moment.image.empty() || !fs::exists(found)) continue;  // nothing had been opened yet
    const std::string wrong = test::wrongWith(found, kind, moment.acknowledged);
    QVERIFY2(wrong.empty(), wrong.c_str());
  }
  qInfo("%d writes, power lost at %d of them", writes, static_cast<int>(moments.size()));
  QVERIFY(writes > 20);
}

void PowerLoss::duringAnUpdateOfTheTables() {
  FailingDisk& disk = FailingDisk::install();
  const test::Folder folder;
  const auto file = folder.path("old.ohmkin");
  fs::copy_file(OHMKIN_TEST_DATA "/catalogues/version-1.ohmkin", file);
  fs::permissions(file, fs::perms::owner_read | fs::perms::owner_write);
  std::mt19937 random(1960);
  std::vector<Moment> moments;
  int writes = 0;
  disk.beginNoting([&] {
    ++writes;
    const Moment now{disk.afterPowerLoss(random), 0};
    if (static_cast<int>(moments.size()) < mostMoments()) moments.push_back(now);
    else if (const auto place = random() % static_cast<unsigned>(writes); place < moments.size()) moments[place] = now;
  });
  { const Catalogue catalogue = Catalogue::open(file, Access::readWrite); }
  disk.endNoting();
  const test::Folder after;
  for (const Moment& moment : moments) {
    const auto found = laidOut(after, moment, file);
    if (!fs::exists(found)) continue;
    const Catalogue catalogue = Catalogue::openToRead(found);
    auto& database = catalogue.connection().database();
    QCOMPARE(catalog::userVersion(database), Catalogue::newestVersion());
    QCOMPARE(database.execAndGet("PRAGMA integrity_check").getString(), std::string("ok"));
    QCOMPARE(database.execAndGet("SELECT count(*) FROM sender").getInt(), 4);
  }
  qInfo("%d writes, power lost at %d of them", writes, static_cast<int>(moments.size()));
}

QTEST_APPLESS_MAIN(PowerLoss)
#include "tst_power_loss.moc"
