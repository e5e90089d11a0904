#include "edited_catalogue.h"

#include <catalog/backup.h>
#include <workflow/backup.h>
#include <workflow/stock_work.h>
#include <QtTest>
#include <fstream>

using namespace ohmkin;
using catalog::Access;
using catalog::Catalogue;

namespace {

catalog::Backup backedUp(const std::filesystem::path& file) { return catalog::backUp(Catalogue::openToRead(file)); }

void change(const std::filesystem::path& file, const char* name) {
  auto catalogue = Catalogue::open(file, Access::readWrite);
  workflow::Thing part = test::thing(catalogue, "sender", {"BR-2215"});
  part.fields["name"] = name;
  const auto saved = workflow::EditSession(catalogue, "Ann", {}).save(part);
  if (!saved) qFatal("%s", test::why(saved).c_str());
}

void sell(const std::filesystem::path& file) {
  auto catalogue = Catalogue::open(file, Access::readWrite);
  if (!workflow::sell(catalogue, "BR-2215", {}, 1, {"Ann", {}, {}})) qFatal("not sold");
}

}  // namespace

/// What going back to a backup would lose and bring.
class BackupWorkTest : public QObject {
  Q_OBJECT
  test::DemoCatalogue demo_;
  std::filesystem::path file_;

 private slots:
  void init() {
    std::filesystem::remove_all(demo_.beside("back.ohmkin.backups"));
    file_ = test::copyOf(demo_, "back.ohmkin");
  }

  void nothingIsLostWhereNothingWasChanged() {
    const auto apart = workflow::apart(file_, backedUp(file_));
    QVERIFY(apart);
    QCOMPARE(apart->changesLost + apart->movementsLost + apart->changesBack + apart->movementsBack, std::int64_t{0});
    QVERIFY(apart->lastLost.empty());
  }

  void whatWasDoneSinceIsCounted() {
    change(file_, "before");
    const auto backup = backedUp(file_);
    change(file_, "one");
    change(file_, "two");
    sell(file_);
    const auto apart = workflow::apart(file_, backup);
    QVERIFY(apart);
    QCOMPARE(apart->changesLost, std::int64_t{2});
    QCOMPARE(apart->movementsLost, std::int64_t{1});
    QCOMPARE(apart->changesBack + apart->movementsBack, std::int64_t{0});
    QCOMPARE(apart->lastLost, test::inFile(file_, "SELECT at FROM stock_movement ORDER BY id DESC LIMIT 1"));
  }

  void goingForwardAgainBringsBackWhatWasLost() {
    const auto backup = backedUp(file_);
    change(file_, "one");
    sell(file_);
    const auto restored = catalog::restore(file_, backup);
    change(file_, "after going back");
    const auto all = catalog::backups(file_);
    const auto kept =
        std::find_if(all.begin(), all.end(), [&](const auto& each) { return each.file == restored.kept; });
    QVERIFY(kept != all.end());
    const auto apart = workflow::apart(file_, *kept);
    QVERIFY(apart);
    QCOMPARE(apart->changesLost, std::int64_t{1});
    QCOMPARE(apart->movementsLost, std::int64_t{0});
    QCOMPARE(apart->changesBack, std::int64_t{1});
    QCOMPARE(apart->movementsBack, std::int64_t{1});
  }

  void anOlderVersionIsToldApartByTime() {
    change(file_, "long ago");
    auto backup = backedUp(file_);
    backup.version = Catalogue::newestVersion() - 1;
    backup.taken += std::chrono::hours(24);
    const auto none = workflow::apart(file_, backup);
    QVERIFY(none);
    QCOMPARE(none->changesLost + none->movementsLost, std::int64_t{0});
    backup.taken = std::chrono::sys_days(std::chrono::year(2020) / 1 / 1);
    const auto all = workflow::apart(file_, backup);
    QVERIFY(all);
    QCOMPARE(std::to_string(all->changesLost), test::inFile(file_, "SELECT count(*) FROM change_log"));
  }

  void whatDoesNotReadIsRefused() {
    const auto backup = backedUp(file_);
    std::ofstream(file_, std::ios::trunc) << "spilt coffee";
    const auto apart = workflow::apart(file_, backup);
    QVERIFY(!apart);
    QVERIFY(workflow::copiesMayHelp(apart.error()));
    QVERIFY(!workflow::salvageMayHelp(apart.error()));
    std::filesystem::remove(file_);
    QCOMPARE(workflow::apart(file_, backup).error().code, std::string("catalogue-missing"));
  }

  void aWholeFileIsHelpedByNeither() {
    for (const char* code : {"catalogue-busy", "catalogue-newer", "catalogue-unreadable"}) {
      QVERIFY(!workflow::copiesMayHelp({code, {}, {}, {}}));
      QVERIFY(!workflow::salvageMayHelp({code, {}, {}, {}}));
    }
  }
};

QTEST_APPLESS_MAIN(BackupWorkTest)
#include "tst_backup_work.moc"
