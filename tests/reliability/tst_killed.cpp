#include "changes.h"

#include <catalog/backup.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>
#include <QtTest>
#include <chrono>
#include <random>
#include <thread>

using namespace ohmkin;
using catalog::Access;
using catalog::Catalogue;

namespace {

namespace fs = std::filesystem;

/// A process that does one thing after another and says so after each; how many times it had said so when it was
/// killed, that long after it had said so `heard` times: so the machine may be as slow as it likes.
template <class Task>
int saidBeforeKilled(Task task, int heard, std::chrono::microseconds after) {
  int ends[2];
  if (pipe(ends) != 0) qFatal("no pipe");
  const pid_t child = fork();
  if (child == 0) {
    close(ends[0]);
    try {
      task([&] { (void)!write(ends[1], "x", 1); });
    } catch (const std::exception& failure) {
      fprintf(stderr, "child: %s\n", failure.what());
      _exit(1);
    }
    _exit(0);
  }
  close(ends[1]);
  int said = 0;
  char piece[256];
  while (said < heard) {
    const ssize_t got = read(ends[0], piece, 1);
    if (got <= 0) break;
    ++said;
  }
  std::this_thread::sleep_for(after);
  kill(child, SIGKILL);
  int status = 0;
  waitpid(child, &status, 0);
  if (WIFEXITED(status) && WEXITSTATUS(status) != 0) qFatal("the child failed by itself");
  for (ssize_t got = 0; (got = read(ends[0], piece, sizeof piece)) > 0;) said += static_cast<int>(got);
  close(ends[0]);
  return said;
}

}  // namespace

/// Real processes, killed at random moments. 40 a kind; with OHMKIN_LONG_TESTS=1, 400.
class Killed : public QObject {
  Q_OBJECT
 private slots:
  void whatWasAcknowledgedIsThere_data();
  void whatWasAcknowledgedIsThere();
  void anUpdateOfTheTablesIsWholeOrNot();
};

void Killed::whatWasAcknowledgedIsThere_data() {
  QTest::addColumn<int>("which");
  for (int i = 0; i < static_cast<int>(test::kKinds.size()); ++i)
    QTest::newRow(test::kKinds[static_cast<std::size_t>(i)].name) << i;
}

void Killed::whatWasAcknowledgedIsThere() {
  QFETCH(int, which);
  const test::KindOfChange& kind = test::kKinds[static_cast<std::size_t>(which)];
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  { const auto made = test::smallCatalogue(file); }
  std::mt19937 random(static_cast<unsigned>(1959 + which));
  std::uniform_int_distribution<int> microseconds(100, 20'000);
  const int kills = test::longForm() ? 400 : 40;
  int acknowledged = 0;
  int amid = 0;
  for (int i = 0; i < kills; ++i) {
    const int first = acknowledged + 1;
    acknowledged += saidBeforeKilled(
        [&](const auto& say) {
          Catalogue catalogue = Catalogue::open(file, Access::readWrite);
          for (int change = first;; ++change) {
            kind.change(catalogue, change);
            say();
          }
        },
        static_cast<int>(random() % 4), std::chrono::microseconds(microseconds(random)));
    amid += folder.names().size() > 1;
    const std::string wrong = test::wrongWith(file, kind, acknowledged);
    QVERIFY2(wrong.empty(), wrong.c_str());
    Catalogue catalogue = Catalogue::openToRead(file);
    acknowledged = kind.changesIn(catalogue);  // the last may be in without its word having been heard
  }
  qInfo("%d processes killed, %d with the log open, %d changes acknowledged", kills, amid, acknowledged);
  QVERIFY(acknowledged > kills / 4 && amid > kills / 10);
}

void Killed::anUpdateOfTheTablesIsWholeOrNot() {
  std::mt19937 random(1960);
  // How long one takes here, undisturbed.
  const test::Folder calm;
  fs::copy_file(OHMKIN_TEST_DATA "/catalogues/version-1.ohmkin", calm.path("old.ohmkin"));
  fs::permissions(calm.path("old.ohmkin"), fs::perms::owner_read | fs::perms::owner_write);
  QElapsedTimer timer;
  timer.start();
  (void)Catalogue::open(calm.path("old.ohmkin"), Access::readWrite);
  std::uniform_int_distribution<int> microseconds(500, std::max(2000, static_cast<int>(timer.nsecsElapsed() / 700)));
  const int kills = test::longForm() ? 400 : 40;
  std::array<int, 3> found{};  // not begun, cut short, done
  for (int i = 0; i < kills; ++i) {
    const test::Folder folder;
    const auto file = folder.path("old.ohmkin");
    fs::copy_file(OHMKIN_TEST_DATA "/catalogues/version-1.ohmkin", file);
    fs::permissions(file, fs::perms::owner_read | fs::perms::owner_write);
    const int done = saidBeforeKilled(
        [&](const auto& say) {
          const Catalogue catalogue = Catalogue::open(file, Access::readWrite);
          say();
          while (true) pause();
        },
        0, std::chrono::microseconds(microseconds(random)));
    const bool journal = folder.names().contains("old.ohmkin-journal");
    ++found[done > 0 ? 2 : journal ? 1 : 0];
    for (const auto& backup : catalog::backups(file)) {
      // A backup that has its name is whole; its hash may not have been written yet.
      if (!fs::exists(backup.file.string() + ".sha256")) continue;
      if (done > 0) catalog::check(backup);
    }
    const Catalogue catalogue = Catalogue::openToRead(file);
    auto& database = catalogue.connection().database();
    QCOMPARE(catalog::userVersion(database), Catalogue::newestVersion());
    QCOMPARE(database.execAndGet("PRAGMA integrity_check").getString(), std::string("ok"));
    QCOMPARE(database.execAndGet("SELECT count(*) FROM pragma_foreign_key_check").getInt(), 0);
    QCOMPARE(database.execAndGet("SELECT count(*) FROM sender").getInt(), 4);
    QVERIFY(!folder.names().contains("old.ohmkin-journal"));
  }
  qInfo("%d updates killed: %d not begun or between two, %d cut short, %d done", kills, found[0], found[1], found[2]);
  QVERIFY(found[1] > 0 || !test::longForm());
}

QTEST_APPLESS_MAIN(Killed)
#include "tst_killed.moc"
