#include "changes.h"

#include <catalog/file_system.h>
#include <catalog/layout_writer.h>
#include <catalog/vehicles.h>
#include <sched.h>
#include <signal.h>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>
#include <QtTest>
#include <fstream>

using namespace ohmkin;
using catalog::Access;
using catalog::Catalogue;
using catalog::CatalogueError;

namespace {

namespace fs = std::filesystem;

constexpr int kMeans = 77;  // the child could not do what the test needs

/// Changes until one is refused; the refusal's code and sentence are written to `said`. Exits with the number of
/// changes that were acknowledged.
int changeUntilRefused(const fs::path& file, const test::KindOfChange& kind, const fs::path& said) {
  int done = 0;
  try {
    Catalogue catalogue = Catalogue::open(file, Access::readWrite);
    for (; done < 60; ++done) kind.change(catalogue, done + 1);
  } catch (const CatalogueError& error) {
    std::ofstream(said) << error.refusal().code << '\n' << error.refusal().sentence();
  } catch (const std::exception& failure) {
    std::ofstream(said) << "not caught\n" << failure.what();
  }
  return done;
}

int exitOf(pid_t child) {
  int status = 0;
  waitpid(child, &status, 0);
  return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

}  // namespace

/// What a disk, a network or another person can do to a catalogue that is in use.
class Adversity : public QObject {
  Q_OBJECT
 private slots:
  void aFileThatMayNotGrow_data() { kinds(); }
  void aFileThatMayNotGrow();
  void aDiskThatIsFull_data() { kinds(); }
  void aDiskThatIsFull();
  void aFileThatIsDeletedOrReplacedWhileOpen_data();
  void aFileThatIsDeletedOrReplacedWhileOpen();
  void twoProcessesLoseNothingOfEachOther();
  void aFileThatIsOpenTwiceKeepsItsLog();
  void onANetworkThereIsNoLog();
  void theTypesOfNetworksAreKnown();

 private:
  static void kinds() {
    QTest::addColumn<int>("which");
    for (int i = 0; i < static_cast<int>(test::kKinds.size()); ++i)
      QTest::newRow(test::kKinds[static_cast<std::size_t>(i)].name) << i;
  }
};

void Adversity::aFileThatMayNotGrow() {
  QFETCH(int, which);
  const test::KindOfChange& kind = test::kKinds[static_cast<std::size_t>(which)];
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  { const auto made = test::smallCatalogue(file); }
  for (const rlim_t room : {4096U, 60'000U, 200'000U}) {
    fs::copy_file(file, folder.path("b.ohmkin"), fs::copy_options::overwrite_existing);
    const auto limited = folder.path("b.ohmkin");
    const pid_t child = fork();
    if (child == 0) {
      signal(SIGXFSZ, SIG_IGN);
      const rlimit most{static_cast<rlim_t>(fs::file_size(limited)) + room, RLIM_INFINITY};
      setrlimit(RLIMIT_FSIZE, &most);
      const auto said = folder.path("said");
      _exit(changeUntilRefused(limited, kind, said));
    }
    const int done = exitOf(child);
    const QByteArray said = test::Folder::bytes(folder.path("said"));
    QVERIFY2(done >= 0, "crashed");
    if (done < 60) QVERIFY2(said.startsWith("catalogue-") && said.contains(limited.string().c_str()), said.constData());
    const std::string wrong = test::wrongWith(limited, kind, done);
    QVERIFY2(wrong.empty(), wrong.c_str());
    Catalogue catalogue = Catalogue::open(limited, Access::readWrite);  // and work goes on
    const int had = kind.changesIn(catalogue);
    kind.change(catalogue, had + 1);
    QCOMPARE(kind.changesIn(catalogue), had + 1);
  }
}

void Adversity::aDiskThatIsFull() {
  QFETCH(int, which);
  const test::KindOfChange& kind = test::kKinds[static_cast<std::size_t>(which)];
  const test::Folder folder;
  { const auto made = test::smallCatalogue(folder.path("a.ohmkin")); }
  const auto size = fs::file_size(folder.path("a.ohmkin"));
  const pid_t child = fork();
  if (child == 0) {
    const std::string options = "size=" + std::to_string(size + (160U << 10U));
    if (unshare(CLONE_NEWNS) != 0 || mount(nullptr, "/", nullptr, MS_REC | MS_PRIVATE, nullptr) != 0) _exit(kMeans);
    fs::create_directory(folder.path("small"));
    if (mount("tmpfs", folder.path("small").c_str(), "tmpfs", 0, options.c_str()) != 0) _exit(kMeans);
    const auto file = folder.path("small/a.ohmkin");
    fs::copy_file(folder.path("a.ohmkin"), file);
    const int done = changeUntilRefused(file, kind, folder.path("said"));
    const std::string wrong = test::wrongWith(file, kind, done);
    if (!wrong.empty()) std::ofstream(folder.path("wrong")) << wrong;
    _exit(wrong.empty() ? done : 99);
  }
  const int done = exitOf(child);
  if (done == kMeans) QSKIP("no small disk may be made here");
  QVERIFY2(done >= 0 && done != 99, test::Folder::bytes(folder.path("wrong")).constData());
  if (which == 0) QVERIFY(done < 60);
  if (done == 60) return;
  const QByteArray said = test::Folder::bytes(folder.path("said"));
  QVERIFY2(said.startsWith("catalogue-full") && said.contains("small/a.ohmkin"), said.constData());
}

void Adversity::aFileThatIsDeletedOrReplacedWhileOpen_data() {
  QTest::addColumn<int>("how");
  QTest::newRow("deleted") << 0;
  QTest::newRow("moved away") << 1;
  QTest::newRow("replaced by another") << 2;
}

void Adversity::aFileThatIsDeletedOrReplacedWhileOpen() {
  QFETCH(int, how);
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  { const auto made = test::smallCatalogue(file); }
  for (const test::KindOfChange& kind : test::kKinds) {
    Catalogue catalogue = Catalogue::open(file, Access::readWrite);
    const int had = kind.changesIn(catalogue);
    fs::copy_file(file, folder.path("other"), fs::copy_options::overwrite_existing);
    if (how == 0) fs::remove(file);
    if (how == 1) fs::rename(file, folder.path("away"));
    if (how == 2) fs::rename(folder.path("other"), file);
    try {
      kind.change(catalogue, had + 1);
      QFAIL("acknowledged and lost");
    } catch (const CatalogueError& error) {
      QCOMPARE(error.refusal().code, std::string("catalogue-moved"));
      QCOMPARE(error.refusal().where, file.string());
    }
    if (how != 2) fs::copy_file(folder.path("other"), file, fs::copy_options::overwrite_existing);
  }
  for (const test::KindOfChange& kind : test::kKinds) {
    Catalogue catalogue = Catalogue::open(file, Access::readWrite);  // opened again, work goes on
    kind.change(catalogue, kind.changesIn(catalogue) + 1);
    if (&kind == &test::kKinds.front()) break;  // the others count lines of the log that this one writes
  }
}

void Adversity::twoProcessesLoseNothingOfEachOther() {
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  { const auto made = test::smallCatalogue(file); }
  constexpr int kEach = 300;
  std::array<pid_t, 2> children{};
  for (std::size_t c = 0; c < children.size(); ++c) {
    children[c] = fork();
    if (children[c] != 0) continue;
    try {
      Catalogue catalogue = Catalogue::open(file, Access::readWrite);
      for (int i = 1; i <= kEach; ++i) {
        const std::string id = (c == 0 ? "left-" : "right-") + std::to_string(i);
        if (!catalog::keepLayout(catalogue, test::layoutNumbered(id, i), "anna", false)) _exit(2);
      }
    } catch (const std::exception& failure) {
      fprintf(stderr, "%s\n", failure.what());
      _exit(1);
    }
    _exit(0);
  }
  for (const pid_t child : children) QCOMPARE(exitOf(child), 0);
  Catalogue catalogue = Catalogue::openToRead(file);
  QCOMPARE(test::number(catalogue, "SELECT count(*) FROM date_layout WHERE id GLOB 'left-*'"), kEach);
  QCOMPARE(test::number(catalogue, "SELECT count(*) FROM date_layout WHERE id GLOB 'right-*'"), kEach);
  QCOMPARE(test::number(catalogue, "SELECT count(*) FROM change_log"), 2 * kEach);
  QCOMPARE(catalogue.connection().database().execAndGet("PRAGMA integrity_check").getString(), std::string("ok"));
}

/// As a window's pages have it open, while another program comes, writes and goes: were it the last, it would take the
/// log away with it.
void Adversity::aFileThatIsOpenTwiceKeepsItsLog() {
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  { const auto made = test::smallCatalogue(file); }
  std::array<int, 2> toChild{}, toParent{};
  QVERIFY(pipe(toChild.data()) == 0 && pipe(toParent.data()) == 0);
  const auto tell = [](const std::array<int, 2>& whom) { return write(whom[1], "x", 1) == 1; };
  const auto await = [](const std::array<int, 2>& whom) {
    char said = 0;
    return read(whom[0], &said, 1) == 1;
  };
  const pid_t child = fork();
  if (child == 0) {
    int seen = 99;
    try {
      if (!await(toChild)) _exit(98);
      {
        Catalogue catalogue = Catalogue::open(file, Access::readWrite);
        test::editLayout(catalogue, 2);
      }
      if (!tell(toParent) || !await(toChild)) _exit(98);
      Catalogue catalogue = Catalogue::openToRead(file);
      seen = test::editsIn(catalogue);
    } catch (const std::exception& failure) {
      fprintf(stderr, "%s\n", failure.what());
    }
    _exit(seen);
  }
  Catalogue first = Catalogue::open(file, Access::readWrite);
  test::editLayout(first, 1);
  { const Catalogue second = Catalogue::openToRead(file); }
  QVERIFY(tell(toChild) && await(toParent));
  QVERIFY(folder.names().contains("a.ohmkin-wal"));
  test::editLayout(first, 3);
  QVERIFY(tell(toChild));
  QCOMPARE(exitOf(child), 3);  // what was acknowledged is seen by others while it is open here
}

void Adversity::onANetworkThereIsNoLog() {
  const test::Folder folder;
  const auto file = folder.path("a.ohmkin");
  { const auto made = test::smallCatalogue(file); }
  const auto before = catalog::fileSystemType;
  const auto mode = [&] {
    return Catalogue::open(file, Access::readWrite)
        .connection()
        .database()
        .execAndGet("PRAGMA journal_mode")
        .getString();
  };
  {
    Catalogue catalogue = Catalogue::open(file, Access::readWrite);
    test::editLayout(catalogue, 1);
  }
  QCOMPARE(mode(), std::string("wal"));
  catalog::fileSystemType = [](const fs::path&) { return 0x6969L; };  // NFS, as statfs(2) has it
  {
    Catalogue catalogue = Catalogue::open(file, Access::readWrite);
    test::editLayout(catalogue, 2);
    QCOMPARE(folder.names(), QStringList{"a.ohmkin"});
  }
  QCOMPARE(mode(), std::string("delete"));
  catalog::fileSystemType = before;
  Catalogue catalogue = Catalogue::openToRead(file);
  QCOMPARE(test::editsIn(catalogue), 2);
}

void Adversity::theTypesOfNetworksAreKnown() {
  // statfs(2), linux/magic.h
  for (const long network : {0x6969L, 0x517BL, 0xFF534D42L, 0xFE534D42L, 0x01021997L})
    QVERIFY(catalog::isNetworkFileSystem(network));
  QVERIFY(catalog::isNetworkFileSystem(static_cast<long>(static_cast<int>(0xFF534D42))));  // as a signed word
  for (const long local : {0xEF53L /* ext4 */, 0x9123683EL /* btrfs */, 0x58465342L /* xfs */, 0x01021994L /* tmpfs */})
    QVERIFY(!catalog::isNetworkFileSystem(local));
}

QTEST_APPLESS_MAIN(Adversity)
#include "tst_adversity.moc"
