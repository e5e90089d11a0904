#include "small_catalogue.h"

#include <catalog/backup.h>
#include <catalog/stock.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>
#include <QtTest>
#include <chrono>
#include <fstream>

using namespace ohmkin;
using catalog::Access;
using catalog::Backup;
using catalog::BackupReason;
using catalog::Catalogue;
using catalog::CatalogueError;

namespace {

namespace fs = std::filesystem;

/// A number no process has: its process was waited for.
pid_t goneProcess() {
  const pid_t child = fork();
  if (child == 0) _exit(0);
  waitpid(child, nullptr, 0);
  return child;
}

void writtenBefore(const fs::path& file, std::chrono::minutes ago) {
  std::ofstream(file) << "half a copy";
  fs::last_write_time(file, fs::file_time_type::clock::now() - ago);
}

void receive(const fs::path& file) {
  Catalogue catalogue = Catalogue::open(file, Access::readWrite);
  catalog::MovementToMake wanted;
  wanted.kind = catalog::StockMovementKind::receipt;
  wanted.sender = catalog::SenderKey{"SN-10.1"};
  wanted.bin = "A1";
  wanted.quantity = 1;
  QVERIFY(moveStock(catalogue, wanted, "anna").has_value());
}

int piecesIn(const fs::path& file) {
  const Catalogue catalogue = Catalogue::openToRead(file);
  return catalogue.connection().database().execAndGet("SELECT sum(quantity) FROM stock").getInt();
}

}  // namespace

/// What a killed process left, a backup that could not be made, and odd places to restore to.
class Leftovers : public QObject {
  Q_OBJECT
 private slots:
  void draftsOfProcessesThatAreGoneAreCleared();
  void draftsThatMayBeInUseStay_data();
  void draftsThatMayBeInUseStay();
  void whatIsLeftOfARestoreIsCleared();
  void aMissedBackupIsToldOnceAndTheChangeIsKept();
  void restoringThroughALinkLeavesTheLink();
  void aLogOfALostFileIsPutAside();
};

void Leftovers::draftsOfProcessesThatAreGoneAreCleared() {
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  const auto made = test::smallCatalogue(file);
  const Backup first = catalog::backUp(made);
  const fs::path backups = catalog::backupFolder(file);
  const std::string gone = std::to_string(goneProcess());
  const std::string reused = std::to_string(getpid());  // this program began after they were last written
  for (const std::string& name : {"part-" + gone + "-1", "part-" + gone + "-1-journal", "part-" + reused + "-7",
                                  std::string("2020-01-01T000000Z-daily.ohmkin.sha256")})
    writtenBefore(backups / name, std::chrono::hours(24 * 365));
  for (const char* ending : {"", "-wal", "-shm", "-journal"})
    writtenBefore(file.string() + ".part-" + gone + ending, std::chrono::minutes(11));
  writtenBefore(backups / "participants.txt", std::chrono::hours(1000));  // not ours
  const Backup second = catalog::backUp(made);
  QCOMPARE(QDir(QString::fromStdString(backups.string())).entryList(QDir::Files).size(), 5);
  QVERIFY(fs::exists(backups / "participants.txt"));
  catalog::check(first);
  catalog::check(second);
  QCOMPARE(folder.names(), (QStringList{"a.ohmkin", "a.ohmkin.backups"}));
}

void Leftovers::draftsThatMayBeInUseStay_data() {
  QTest::addColumn<bool>("alive");
  QTest::addColumn<int>("minutes");
  QTest::newRow("a machine that shares the folder: its process is not seen here") << false << 2;
  QTest::newRow("a process that was put to sleep") << true << 20;
}

void Leftovers::draftsThatMayBeInUseStay() {
  QFETCH(bool, alive);
  QFETCH(int, minutes);
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  const auto made = test::smallCatalogue(file);
  (void)catalog::backUp(made);
  // The first process of all began when the machine did.
  const fs::path draft = catalog::backupFolder(file) / ("part-" + std::to_string(alive ? 1 : goneProcess()) + "-1");
  std::ifstream uptime("/proc/uptime");
  double seconds = 0;
  uptime >> seconds;
  if (alive && seconds < 60 * (minutes + 1)) QSKIP("this machine has not been on for long enough");
  writtenBefore(draft, std::chrono::minutes(minutes));
  (void)catalog::backUp(made);
  QVERIFY(fs::exists(draft));
}

void Leftovers::whatIsLeftOfARestoreIsCleared() {
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  const auto made = test::smallCatalogue(file);
  (void)catalog::backUp(made);
  const fs::path alias = catalog::backupFolder(file) / "2020-01-01T000000Z-replaced.ohmkin";
  fs::create_hard_link(file, alias);
  writtenBefore(alias.string() + ".sha256", std::chrono::hours(1));
  const fs::path other = catalog::backupFolder(file) / "2020-01-02T000000Z-replaced.ohmkin";
  fs::copy_file(file, other);
  writtenBefore(other.string() + ".sha256", std::chrono::hours(1));
  (void)catalog::backUp(made);
  QVERIFY(!fs::exists(alias) && !fs::exists(alias.string() + ".sha256"));
  QVERIFY(fs::exists(other) && fs::exists(other.string() + ".sha256"));
  QVERIFY(fs::exists(file));
}

void Leftovers::aMissedBackupIsToldOnceAndTheChangeIsKept() {
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  {
    const auto made = test::smallCatalogue(file);
    made.connection().database().exec("UPDATE pack SET loaded = '2020-01-01T00:00:00Z' WHERE id = 'shop'");
  }
  folder.write("a.ohmkin.backups", "something else of that name");
  QVERIFY(catalog::takeMissedBackups().empty());
  receive(file);
  receive(file);
  QCOMPARE(piecesIn(file), 2 + 5 + 2);
  const auto missed = catalog::takeMissedBackups();
  QCOMPARE(missed.size(), std::size_t{1});
  QCOMPARE(missed.front().code, std::string("backup-failed"));
  QCOMPARE(missed.front().where, file.string());
  QVERIFY(!missed.front().found.empty());
  receive(file);
  QVERIFY(catalog::takeMissedBackups().empty());
  QCOMPARE(folder.names(), (QStringList{"a.ohmkin", "a.ohmkin.backups"}));
}

void Leftovers::restoringThroughALinkLeavesTheLink() {
  const test::Folder folder, elsewhere;
  const auto real = elsewhere.path("real.ohmkin");
  { const auto made = test::smallCatalogue(real); }
  const auto file = folder.path("a.ohmkin");
  fs::create_symlink(real, file);
  Backup backup;
  {
    const Catalogue catalogue = Catalogue::openToRead(file);
    backup = catalog::backUp(catalogue);
  }
  receive(file);
  QCOMPARE(piecesIn(real), 8);
  const auto restored = catalog::restore(file, backup);
  QVERIFY(fs::is_symlink(file));
  QCOMPARE(piecesIn(file), 7);
  QCOMPARE(piecesIn(real), 7);
  QCOMPARE(piecesIn(restored.kept), 8);
}

void Leftovers::aLogOfALostFileIsPutAside() {
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  Backup backup;
  {
    const auto made = test::smallCatalogue(file);
    backup = catalog::backUp(made);
  }
  const pid_t child = fork();
  if (child == 0) {
    receive(file);
    const Catalogue catalogue = Catalogue::open(file, Access::readWrite);
    catalogue.connection().useWriteAheadLog();
    catalogue.connection().database().exec("UPDATE stock SET quantity = 70");
    kill(getpid(), SIGKILL);
  }
  waitpid(child, nullptr, 0);
  const QByteArray log = test::Folder::bytes(file.string() + "-wal");
  QVERIFY(log.size() > 1000);
  fs::rename(file, folder.path("moved.ohmkin"));  // by mistake, without its log
  (void)catalog::restore(file, backup);
  QCOMPARE(piecesIn(file), 7);  // not what the log of another file says
  bool kept = false;
  for (const auto& entry : fs::directory_iterator(catalog::backupFolder(file)))
    kept = kept || test::Folder::bytes(entry.path()) == log;
  QVERIFY(kept);
}

QTEST_APPLESS_MAIN(Leftovers)
#include "tst_leftovers.moc"
