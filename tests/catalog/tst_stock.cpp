#include "small_catalogue.h"

#include <catalog/stock.h>
#include <sys/wait.h>
#include <unistd.h>
#include <QtTest>
#include <csignal>
#include <thread>

using namespace ohmkin;
using catalog::Access;
using catalog::Catalogue;
using catalog::MovementToMake;
using catalog::SenderKey;
using catalog::StockMovementKind;

namespace {

const SenderKey kPart{"SN-10.1"};  // of the small catalogue: 2 in A1, 5 in B4 with a minimum of 1

MovementToMake sale(int quantity, const char* bin = "B4") {
  return {StockMovementKind::sale, kPart, bin, quantity, {}, {}, {}};
}

/// "A1=2 B4=5"
QString bins(const Catalogue& catalogue) {
  QStringList all;
  for (const auto& stock : catalog::stock(catalogue, kPart))
    all << QString("%1=%2").arg(QString::fromStdString(stock.bin)).arg(stock.quantity);
  all.sort();
  return all.join(' ');
}

long asked(Catalogue& catalogue, const char* sql) {
  return catalogue.connection().database().execAndGet(sql).getInt64();
}

/// What the ledger says came into a bin since it was begun.
long sumOfMovements(Catalogue& catalogue, const std::string& bin) {
  SQLite::Statement sum(catalogue.connection().database(),
                        "SELECT coalesce(sum(CASE WHEN bin = ?1 THEN change ELSE -change END), 0) FROM stock_movement "
                        "WHERE bin = ?1 OR other_bin = ?1");
  sum.bind(1, bin);
  sum.executeStep();
  return sum.getColumn(0).getInt64();
}

/// A process that sells one piece at a time until it has sold so many; -1: for ever.
pid_t seller(const std::filesystem::path& file, int many) {
  const pid_t child = fork();
  if (child != 0) return child;
  try {
    Catalogue catalogue = Catalogue::open(file, Access::readWrite);
    for (int i = 0; i != many; ++i)
      if (!catalog::moveStock(catalogue, sale(1), "child")) _exit(2);
  } catch (...) {
    _exit(3);
  }
  _exit(0);
}

int ended(pid_t child) {
  int status = 0;
  waitpid(child, &status, 0);
  return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

}  // namespace

class StockTest : public QObject {
  Q_OBJECT
 private slots:
  void init() {
    folder_ = std::make_unique<test::Folder>();
    catalogue_.emplace(test::smallCatalogue(folder_->path("a.ohmkin")));
  }

  void a_sale_takes_from_its_bin_and_is_written_down() {
    const auto sold =
        catalog::moveStock(*catalogue_, {StockMovementKind::sale, kPart, "B4", 2, {}, "for the van", {}}, "Ann");
    QVERIFY(sold);
    QCOMPARE(bins(*catalogue_), QString("A1=2 B4=3"));
    QCOMPARE(sold->change, -2);
    QCOMPARE(sold->leftInBin, 3);
    QCOMPARE(sold->who, std::string("Ann"));
    QCOMPARE(sold->note, std::string("for the van"));
    QVERIFY(QRegularExpression("^\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\dZ$").match(sold->at.c_str()).hasMatch());
    QCOMPARE(catalog::movementsOf(*catalogue_, kPart, 9).size(), std::size_t{1});
  }

  void more_than_is_there_is_not_sold_and_a_sentence_says_what_is() {
    const auto sold = catalog::moveStock(*catalogue_, sale(6), "Ann");
    QVERIFY(!sold);
    QCOMPARE(sold.error().code, std::string("stock-short"));
    QCOMPARE(sold.error().found, std::string("5 pieces in B4"));
    QCOMPARE(bins(*catalogue_), QString("A1=2 B4=5"));
    QVERIFY(catalog::movements(*catalogue_, 9).empty());
  }

  void what_no_movement_can_be_is_refused_data() {
    QTest::addColumn<QString>("code");
    QTest::addColumn<int>("kind");
    QTest::addColumn<QString>("bin");
    QTest::addColumn<QString>("other");
    QTest::addColumn<int>("quantity");
    const auto row = [](const char* name, const char* code, StockMovementKind kind, const char* bin, const char* other,
                        int quantity) {
      QTest::newRow(name) << code << static_cast<int>(kind) << bin << other << quantity;
    };
    row("nothing sold", "quantity-out-of-range", StockMovementKind::sale, "B4", "", 0);
    row("less than nothing", "quantity-out-of-range", StockMovementKind::sale, "B4", "", -3);
    row("less than nothing received", "quantity-out-of-range", StockMovementKind::receipt, "B4", "", -1);
    row("counted below nothing", "quantity-out-of-range", StockMovementKind::count, "B4", "", -1);
    row("more than a bin holds", "quantity-out-of-range", StockMovementKind::receipt, "B4", "", catalog::kMostPieces);
    row("far more", "quantity-out-of-range", StockMovementKind::receipt, "B4", "", std::numeric_limits<int>::max());
    row("to itself", "bin-same", StockMovementKind::move, "B4", "B4", 1);
    row("to nowhere", "bin-empty", StockMovementKind::move, "B4", "", 1);
    row("from nowhere", "bin-empty", StockMovementKind::sale, "", "", 1);
    row("from a bin that is not there", "stock-short", StockMovementKind::sale, "Z9", "", 1);
    row("moved from where too few are", "stock-short", StockMovementKind::move, "A1", "B4", 3);
  }
  void what_no_movement_can_be_is_refused() {
    QFETCH(QString, code);
    QFETCH(int, kind);
    QFETCH(QString, bin);
    QFETCH(QString, other);
    QFETCH(int, quantity);
    const auto moved = catalog::moveStock(
        *catalogue_,
        {static_cast<StockMovementKind>(kind), kPart, bin.toStdString(), quantity, other.toStdString(), {}, {}}, "Ann");
    QVERIFY(!moved);
    QCOMPARE(QString::fromStdString(moved.error().code), code);
    QCOMPARE(bins(*catalogue_), QString("A1=2 B4=5"));
    QVERIFY(catalog::movements(*catalogue_, 9).empty());
  }

  void every_movement_is_undone_by_a_contrary_one_and_that_again_data() {
    QTest::addColumn<int>("kind");
    QTest::addColumn<QString>("other");
    QTest::addColumn<int>("quantity");
    QTest::addColumn<QString>("after");
    QTest::newRow("sale") << static_cast<int>(StockMovementKind::sale) << "" << 2 << "A1=2 B4=3";
    QTest::newRow("receipt") << static_cast<int>(StockMovementKind::receipt) << "" << 4 << "A1=2 B4=9";
    QTest::newRow("fewer counted") << static_cast<int>(StockMovementKind::count) << "" << 1 << "A1=2 B4=1";
    QTest::newRow("more counted") << static_cast<int>(StockMovementKind::count) << "" << 8 << "A1=2 B4=8";
    QTest::newRow("as many counted") << static_cast<int>(StockMovementKind::count) << "" << 5 << "A1=2 B4=5";
    QTest::newRow("moved to another bin") << static_cast<int>(StockMovementKind::move) << "A1" << 5 << "A1=7 B4=0";
    QTest::newRow("moved to a new bin") << static_cast<int>(StockMovementKind::move) << "C" << 1 << "A1=2 B4=4 C=1";
  }
  void every_movement_is_undone_by_a_contrary_one_and_that_again() {
    QFETCH(int, kind);
    QFETCH(QString, other);
    QFETCH(int, quantity);
    QFETCH(QString, after);
    const auto made = catalog::moveStock(
        *catalogue_, {static_cast<StockMovementKind>(kind), kPart, "B4", quantity, other.toStdString(), {}, {}}, "Ann");
    QVERIFY(made);
    QCOMPARE(bins(*catalogue_), after);
    const auto undone = catalog::undoMovement(*catalogue_, made->id, "Bob");
    QVERIFY(undone);
    QCOMPARE(undone->kind, StockMovementKind::undo);
    QCOMPARE(bins(*catalogue_), other == "C" ? QString("A1=2 B4=5 C=0") : QString("A1=2 B4=5"));
    QCOMPARE(catalog::movement(*catalogue_, made->id)->undoneBy->value, undone->id.value);
    const auto twice = catalog::undoMovement(*catalogue_, made->id, "Bob");
    QVERIFY(!twice);
    QCOMPARE(twice.error().code, std::string("movement-undone"));
    QVERIFY(catalog::undoMovement(*catalogue_, undone->id, "Bob"));
    QCOMPARE(bins(*catalogue_), after);
    QCOMPARE(5 + sumOfMovements(*catalogue_, "B4"),
             long{catalog::stock(*catalogue_, kPart).empty()
                      ? 0L
                      : asked(*catalogue_, "SELECT quantity FROM stock WHERE bin = 'B4' AND sender = 'SN-10.1'")});
  }

  void a_receipt_whose_pieces_are_sold_already_cannot_be_undone() {
    const auto came = catalog::moveStock(*catalogue_, {StockMovementKind::receipt, kPart, "C", 3, {}, {}, {}}, "Ann");
    QVERIFY(catalog::moveStock(*catalogue_, sale(1, "C"), "Ann"));
    const auto undone = catalog::undoMovement(*catalogue_, came->id, "Ann");
    QVERIFY(!undone);
    QCOMPARE(undone.error().code, std::string("stock-short"));
    QCOMPARE(bins(*catalogue_), QString("A1=2 B4=5 C=2"));
  }

  void a_movement_that_is_not_there_is_refused() {
    QCOMPARE(catalog::undoMovement(*catalogue_, {77}, "Ann").error().code, std::string("movement-unknown"));
    const auto of = catalog::moveStock(*catalogue_,
                                       {StockMovementKind::sale, kPart, "B4", 1, {}, {}, catalog::JobNumber{5}}, "Ann");
    QCOMPARE(of.error().code, std::string("job-unknown"));
  }

  void what_is_under_its_minimum_is_listed_with_all_its_bins() {
    QVERIFY(catalog::stockUnderMinimum(*catalogue_).empty());
    QVERIFY(catalog::setMinimum(*catalogue_, kPart, "A1", 7, "Ann"));  // 8 wanted together, 7 there
    QCOMPARE(catalog::stockUnderMinimum(*catalogue_).size(), std::size_t{2});
    QVERIFY(catalog::moveStock(*catalogue_, {StockMovementKind::receipt, kPart, "C", 1, {}, {}, {}}, "Ann"));
    QVERIFY(catalog::stockUnderMinimum(*catalogue_).empty());
    QCOMPARE(catalog::setMinimum(*catalogue_, kPart, "Z", 1, "Ann").error().code, std::string("bin-unknown"));
    QCOMPARE(catalog::setMinimum(*catalogue_, kPart, "C", -1, "Ann").error().code,
             std::string("quantity-out-of-range"));
    QCOMPARE(asked(*catalogue_, "SELECT count(*) FROM change_log WHERE what = 'minimum changed'"), 1L);
  }

  void only_an_empty_bin_is_forgotten() {
    QCOMPARE(catalog::forgetBin(*catalogue_, kPart, "A1", "Ann").error().code, std::string("bin-not-empty"));
    QVERIFY(catalog::moveStock(*catalogue_, {StockMovementKind::count, kPart, "A1", 0, {}, {}, {}}, "Ann"));
    QVERIFY(catalog::forgetBin(*catalogue_, kPart, "A1", "Ann"));
    QCOMPARE(bins(*catalogue_), QString("B4=5"));
  }

  void a_part_no_pack_has_can_lie_on_the_shelf() {
    const SenderKey strange{"XY-9/4"};
    QVERIFY(catalog::moveStock(*catalogue_, {StockMovementKind::receipt, strange, "A1", 1, {}, {}, {}}, "Ann"));
    QCOMPARE(catalog::stockedNumbered(*catalogue_, "xy 94").size(), std::size_t{1});
    QCOMPARE(asked(*catalogue_, "SELECT count(*) FROM pragma_foreign_key_check"), 0L);
  }

  void a_row_of_a_pack_becomes_the_shops_own_with_its_first_movement() {
    catalogue_->connection().database().exec("UPDATE stock SET pack = 'p'");
    QVERIFY(catalog::moveStock(*catalogue_, sale(1), "Ann"));
    QCOMPARE(catalogue_->connection().database().execAndGet("SELECT pack FROM stock WHERE bin = 'B4'").getString(),
             std::string("shop"));
    QCOMPARE(catalogue_->connection().database().execAndGet("SELECT pack FROM stock WHERE bin = 'A1'").getString(),
             std::string("p"));
  }

  void two_threads_on_one_file_lose_no_sale() {
    QVERIFY(catalog::moveStock(*catalogue_, {StockMovementKind::receipt, kPart, "B4", 995, {}, {}, {}}, "Ann"));
    const auto file = folder_->path("a.ohmkin");
    std::atomic<int> sold = 0;
    const auto counter = [&] {
      Catalogue own = Catalogue::open(file, Access::readWrite);
      for (int i = 0; i < 300; ++i)
        if (catalog::moveStock(own, sale(1), "counter")) ++sold;
    };
    std::thread one(counter);
    std::thread two(counter);
    one.join();
    two.join();
    QCOMPARE(sold.load(), 600);
    QCOMPARE(bins(*catalogue_), QString("A1=2 B4=400"));
    QCOMPARE(sumOfMovements(*catalogue_, "B4"), 395L);
  }

  void two_processes_on_one_file_lose_no_sale() {
    QVERIFY(catalog::moveStock(*catalogue_, {StockMovementKind::receipt, kPart, "B4", 995, {}, {}, {}}, "Ann"));
    const auto file = folder_->path("a.ohmkin");
    catalogue_.reset();
    const pid_t one = seller(file, 300);
    const pid_t two = seller(file, 300);
    QCOMPARE(ended(one), 0);
    QCOMPARE(ended(two), 0);
    catalogue_.emplace(Catalogue::open(file, Access::readWrite));
    QCOMPARE(bins(*catalogue_), QString("A1=2 B4=400"));
    QCOMPARE(asked(*catalogue_, "SELECT count(*) FROM stock_movement WHERE kind = 'sale'"), 600L);
    // Each saw the other's: no two sales left the same number behind.
    QCOMPARE(asked(*catalogue_, "SELECT count(DISTINCT left_in_bin) FROM stock_movement WHERE kind = 'sale'"), 600L);
  }

  void the_last_pieces_are_sold_once() {
    const auto file = folder_->path("a.ohmkin");
    catalogue_.reset();
    const pid_t one = seller(file, 300);  // five pieces only: both stop at a refusal
    const pid_t two = seller(file, 300);
    QCOMPARE(ended(one), 2);
    QCOMPARE(ended(two), 2);
    catalogue_.emplace(Catalogue::open(file, Access::readWrite));
    QCOMPARE(bins(*catalogue_), QString("A1=2 B4=0"));
    QCOMPARE(asked(*catalogue_, "SELECT count(*) FROM stock_movement"), 5L);
  }

  void a_killed_counter_leaves_shelf_and_ledger_of_one_mind() {
    const int many = catalog::kMostPieces - 5;
    QVERIFY(catalog::moveStock(*catalogue_, {StockMovementKind::receipt, kPart, "B4", many, {}, {}, {}}, "Ann"));
    const auto file = folder_->path("a.ohmkin");
    catalogue_.reset();
    long sales = 0;
    std::vector<int> moments{20, 33, 47, 61, 80};
    for (std::size_t i = 0; i < moments.size(); ++i) {
      const pid_t child = seller(file, -1);
      QTest::qSleep(moments[i]);
      QCOMPARE(kill(child, SIGKILL), 0);
      QCOMPARE(ended(child), -1);
      Catalogue after = Catalogue::open(file, Access::readWrite);
      const long left = asked(after, "SELECT quantity FROM stock WHERE sender = 'SN-10.1' AND bin = 'B4'");
      QCOMPARE(left, 5 + sumOfMovements(after, "B4"));
      QCOMPARE(left, asked(after, "SELECT left_in_bin FROM stock_movement ORDER BY id DESC LIMIT 1"));
      QCOMPARE(after.connection().database().execAndGet("PRAGMA integrity_check").getString(), std::string("ok"));
      sales = asked(after, "SELECT count(*) FROM stock_movement WHERE kind = 'sale'");
      // A slow machine gets more time, until it has sold something at all.
      if (sales == 0 && i + 1 == moments.size() && moments[i] < 10000) moments.push_back(2 * moments[i]);
    }
    QVERIFY(sales > 0);
  }

 private:
  std::unique_ptr<test::Folder> folder_;
  std::optional<Catalogue> catalogue_;
};

QTEST_APPLESS_MAIN(StockTest)
#include "tst_stock.moc"
