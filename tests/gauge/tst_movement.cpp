#include "invented_gauges.h"

#include <rapidcheck.h>
#include <QTest>
#include <limits>

using namespace ohmkin;
using namespace ohmkin::gauge;

namespace {

constexpr double kOpen = std::numeric_limits<double>::infinity();
constexpr double kNotANumber = std::numeric_limits<double>::quiet_NaN();

double drawn(double low, double high) { return low + (high - low) * *rc::gen::inRange(0, 1000001) * 1e-6; }

Movement drawnMovement() {
  switch (*rc::gen::inRange(0, 4)) {
    case 0:
      return CrossedCoil{{drawn(-180, 180)}, {drawn(10, 170)}, ohms(drawn(10, 500)), {}, {}, {}};
    case 1:
      return CrossedCoil{{drawn(-180, 180)},   {drawn(-170, -10)},   ohms(drawn(10, 500)),
                         ohms(drawn(30, 300)), ohms(drawn(30, 300)), {}};
    case 2:
      return Bimetal{{drawn(-90, 0)}, {drawn(10, 90)}, ohms(drawn(5, 50)), volts(drawn(3, 8))};
    default:
      return test::inventedBench();
  }
}

Conditions drawnConditions() {
  return {.cluster = celsius(drawn(-30, 60)),
          .supply = volts(drawn(10, 15)),
          .groundRise = drawn(0, 0.05),
          .groundOhms = ohms(drawn(0, 1))};
}

std::string refusedAs(const Movement& movement) {
  const auto result = checked(movement);
  return result ? std::string("taken") : result.error().code + ": " + result.error().sentence();
}

}  // namespace

class TestMovement : public QObject {
  Q_OBJECT
 private slots:
  void the_three_numbers_of_a_crossed_coil_are_what_is_measured_at_the_posts() {
    const Movement coil = test::inventedCoil();
    QCOMPARE(deflection(coil, ohms(0)).degrees, 50.0);
    QCOMPARE(deflection(coil, ohms(kOpen)).degrees, -45.0);
    QVERIFY(std::abs(deflection(coil, ohms(96)).degrees - 2.5) < 1e-12);
  }

  void the_sender_found_for_an_angle_is_the_one_that_put_the_needle_there() {
    rc::check("ohmsFor undoes deflection", [] {
      const Movement movement = drawnMovement();
      const Conditions conditions = drawnConditions();
      const double sender = std::exp(drawn(0, 8));
      const auto found = ohmsFor(movement, deflection(movement, ohms(sender), conditions), conditions);
      RC_ASSERT(found.has_value());
      // In the share of the sweep, where an angle's rounding weighs the same everywhere.
      RC_ASSERT(std::abs(inOhms(*found) / (inOhms(*found) + 100) - sender / (sender + 100)) < 1e-9);
    });
  }

  void grounded_and_open_are_found_again() {
    for (const Movement& movement :
         {Movement(test::inventedCoil()), Movement(test::inventedBimetal()), Movement(test::inventedBench())}) {
      QCOMPARE(inOhms(*ohmsFor(movement, deflection(movement, ohms(0)))), 0.0);
      QCOMPARE(inOhms(*ohmsFor(movement, deflection(movement, ohms(kOpen)))), kOpen);
    }
  }

  void the_needle_goes_one_way_as_the_ohms_rise() {
    rc::check("monotone", [] {
      const Movement movement = drawnMovement();
      const Conditions conditions = drawnConditions();
      const double open = deflection(movement, ohms(kOpen), conditions).degrees;
      double before = deflection(movement, ohms(0), conditions).degrees;
      const double way = open > before ? 1 : -1;
      for (double r = 0.5; r < 5000; r *= 1.7) {
        const double at = deflection(movement, ohms(r), conditions).degrees;
        RC_ASSERT((at - before) * way > 0);
        before = at;
      }
      RC_ASSERT((open - before) * way > 0);
    });
  }

  void no_resistance_takes_the_needle_beyond_its_sweep() {
    for (const Movement& movement :
         {Movement(test::inventedCoil()), Movement(test::inventedBimetal()), Movement(test::inventedBench())}) {
      QVERIFY(!ohmsFor(movement, {80}));
      QVERIFY(!ohmsFor(movement, {-80}));
      QVERIFY(!ohmsFor(movement, {kNotANumber}));
    }
  }

  void the_supply_leaves_a_crossed_coil_and_a_regulated_bimetal_alone() {
    for (const Movement& movement :
         {Movement(test::inventedCoil()), Movement(test::inventedBimetal()), Movement(test::inventedBench())})
      for (const double supply : {10.0, 12.0, 15.0})
        QCOMPARE(deflection(movement, ohms(60), {.supply = volts(supply)}).degrees,
                 deflection(movement, ohms(60)).degrees);
  }

  // Joule: the heater's power goes with the square of the RMS voltage, and the strip turns with the power.
  void without_its_regulator_a_bimetal_follows_the_square_of_the_supply() {
    const Bimetal bimetal = test::inventedBimetal();
    for (const double supply : {10.0, 12.0, 15.0}) {
      const double turned =
          (deflection(bimetal, ohms(60), {.supply = volts(supply), .regulatorWorks = false}) - bimetal.rest).degrees;
      const double regular = (deflection(bimetal, ohms(60)) - bimetal.rest).degrees;
      QVERIFY(std::abs(turned / regular - supply * supply / 25) < 1e-12);
    }
  }

  void a_bimetal_turns_with_the_power_in_its_heater() {
    const Bimetal bimetal = test::inventedBimetal();
    for (const double sender : {5.0, 20.0, 100.0}) {
      const double amperes = 5 / (13 + sender);  // Ohm
      const double watts = amperes * amperes * 13;
      const double whole = 25.0 / 13;
      const double turned = (deflection(bimetal, ohms(sender)) - bimetal.rest).degrees;
      QVERIFY(std::abs(turned - 88 * watts / whole) < 1e-12);
    }
  }

  // Directions for a falling sender, hot to the right (common practice, no source; each follows from the circuit).
  void faults_move_the_needle_the_way_the_trade_knows() {
    const Movement coil = test::inventedCoil();
    const double well = deflection(coil, ohms(60)).degrees;
    QVERIFY(deflection(coil, ohms(63)).degrees < well);                  // ohms in lead or strap: cold
    QVERIFY(deflection(coil, ohms(60 * 1000.0 / 1060)).degrees > well);  // leak from lead to chassis: hot
    const double looseGround = deflection(coil, ohms(60), {.groundOhms = ohms(1)}).degrees;
    QVERIFY(looseGround > well && looseGround < well + 0.5);  // ohms in the gauge's ground alone: hot, little
    QVERIFY(deflection(coil, ohms(60), {.groundRise = 0.05, .groundOhms = ohms(1)}).degrees >
            well + 2);  // other loads in it: hot, much
    QVERIFY(deflection(test::inventedBimetal(), ohms(60), {.groundRise = 0.05}).degrees >
            deflection(test::inventedBimetal(), ohms(60)).degrees);  // the regulator's case rides up
  }

  void a_ground_that_cannot_be_reckoned_with_is_left_out_and_said_so() {
    CrossedCoil unmeasured = test::inventedCoil();
    unmeasured.groundCoil.reset();
    const Conditions risen{.groundRise = 0.05};
    QVERIFY(unanswered(unmeasured, risen).find("left out") != std::string_view::npos);
    QCOMPARE(deflection(unmeasured, ohms(60), risen).degrees, deflection(unmeasured, ohms(60)).degrees);
    QVERIFY(!unanswered(test::inventedBench(), risen).empty());
    QVERIFY(unanswered(test::inventedCoil(), risen).empty());
    QVERIFY(unanswered(test::inventedBimetal(), risen).empty());
    QVERIFY(unanswered(unmeasured, {}).empty());
  }

  void bench_points_are_met_and_continued_only_where_it_is_said() {
    const BenchPoints bench = test::inventedBench();
    for (const auto& [u, angle] : bench.points) {
      const Ohms sender = ohms(80 * u / (1 - u));
      QVERIFY(std::abs(deflection(bench, sender).degrees - angle.degrees) < 1e-9);
    }
    QVERIFY(established(bench, ohms(80)));
    QVERIFY(!established(bench, ohms(1)));
    QVERIFY(!established(bench, ohms(kOpen)));
    QVERIFY(established(test::inventedCoil(), ohms(kOpen)));
  }

  // The law itself is the outside here: sampled from a crossed coil, bench points give it back.
  void bench_points_of_a_crossed_coil_give_the_crossed_coil_back() {
    const Movement coil = test::inventedCoil();
    BenchPoints bench{ohms(96), {}};
    for (int i = 0; i <= 20; ++i)
      bench.points.emplace_back(i / 20.0, deflection(coil, i < 20 ? ohms(96 * i / (20.0 - i)) : ohms(kOpen)));
    for (const double sender : {3.0, 30.0, 77.0, 150.0, 900.0})
      QVERIFY(std::abs((deflection(bench, ohms(sender)) - deflection(coil, ohms(sender))).degrees) < 0.05);
  }

  void numbers_out_of_range_are_refused_data() {
    QTest::addColumn<QString>("said");
    QTest::addColumn<QString>("about");
    const auto row = [](const char* name, const Movement& movement, const char* about) {
      QTest::newRow(name) << QString::fromStdString(refusedAs(movement)) << about;
    };
    const auto coil = [](auto change) {
      CrossedCoil c = test::inventedCoil();
      change(c);
      return c;
    };
    row("no sweep", coil([](CrossedCoil& c) { c.sweep = {0}; }), "sweep");
    row("half a turn", coil([](CrossedCoil& c) { c.sweep = {180}; }), "sweep");
    row("sweep not a number", coil([](CrossedCoil& c) { c.sweep = {kNotANumber}; }), "sweep");
    row("grounded not a number", coil([](CrossedCoil& c) { c.grounded = {kNotANumber}; }), "lead grounded");
    row("half of no ohms", coil([](CrossedCoil& c) { c.half = ohms(0); }), "half the sweep");
    row("half infinite", coil([](CrossedCoil& c) { c.half = ohms(kOpen); }), "half the sweep");
    row("coil below 0", coil([](CrossedCoil& c) { c.feedCoil = ohms(-90); }), "coil");
    row("magnet as strong as the coils", coil([](CrossedCoil& c) {
          c.magnet = ReturnMagnet{1, {0}, ohms(100)};
        }),
        "return magnet");
    row("magnet without weakening", coil([](CrossedCoil& c) {
          c.magnet = ReturnMagnet{0.05, {0}, ohms(0)};
        }),
        "return magnet");
    row("magnet pulling nowhere", coil([](CrossedCoil& c) {
          c.magnet = ReturnMagnet{0.05, {kNotANumber}, ohms(9)};
        }),
        "return magnet");
    row("bimetal that does not move", Bimetal{{10}, {10}, ohms(13), volts(5)}, "lead grounded");
    row("bimetal resting nowhere", Bimetal{{kNotANumber}, {10}, ohms(13), volts(5)}, "rest");
    row("heater of no ohms", Bimetal{{-40}, {48}, ohms(0), volts(5)}, "heater");
    row("regulator of no volts", Bimetal{{-40}, {48}, ohms(13), volts(0)}, "regulator");
    row("three bench points", BenchPoints{ohms(80), {{0, {1}}, {0.5, {2}}, {1, {3}}}}, "at least four");
    row("bench points to and fro", BenchPoints{ohms(80), {{0, {1}}, {0.2, {2}}, {0.5, {1.5}}, {1, {3}}}},
        "turning the same way");
    row("bench points on a stop", BenchPoints{ohms(80), {{0, {1}}, {0.2, {1}}, {0.5, {2}}, {1, {3}}}}, "stop");
    row("bench points twice", BenchPoints{ohms(80), {{0, {1}}, {0.2, {2}}, {0.2, {3}}, {1, {4}}}}, "each ohms once");
    row("bench points of ohms below 0", BenchPoints{ohms(80), {{-0.1, {1}}, {0.2, {2}}, {0.5, {3}}, {1, {4}}}},
        "0 or more");
    row("bench scale of no ohms", BenchPoints{ohms(0), {{0, {1}}, {0.2, {2}}, {0.5, {3}}, {1, {4}}}}, "scale");
  }
  void numbers_out_of_range_are_refused() {
    QFETCH(QString, said);
    QFETCH(QString, about);
    QVERIFY2(said.startsWith("movement-out-of-range: "), qPrintable(said));
    QVERIFY2(said.contains(about) && said.contains("expected"), qPrintable(said));
  }

  void a_feed_resistor_wants_coils_that_are_known_and_ohms_above_0() {
    CrossedCoil unmeasured = test::inventedCoil();
    unmeasured.feedCoil.reset();
    QCOMPARE(withFeedResistor(unmeasured, ohms(100)).error().code, std::string("coil-ohms-unknown"));
    QCOMPARE(withFeedResistor(test::inventedCoil(), ohms(0)).error().code, std::string("movement-out-of-range"));
    QVERIFY(!withFeedResistor(test::inventedCoil(), ohms(200))->feedCoil);
  }
};

QTEST_APPLESS_MAIN(TestMovement)
#include "tst_movement.moc"
