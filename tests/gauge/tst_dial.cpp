#include <gauge/dial.h>
#include <rapidcheck.h>
#include <QTest>
#include <algorithm>
#include <limits>

using namespace ohmkin;
using namespace ohmkin::gauge;

namespace {

std::vector<Mark> marks() {
  return {{MarkKind::cold, "C", std::nullopt, {-42}},
          {MarkKind::numbered, "50", celsius(50), {-40}},
          {MarkKind::tick, "", std::nullopt, {-15}},
          {MarkKind::numbered, "80", celsius(80), {0}},
          {MarkKind::hot, "110", celsius(110), {36}}};
}

std::vector<Mark> mirrored() {
  std::vector<Mark> all = marks();
  for (Mark& mark : all) mark.angle.degrees *= -1;
  return all;
}

template <class Change>
std::string refusedAs(Change change, Angle low = {-50}, Angle high = {45}) {
  std::vector<Mark> all = marks();
  change(all);
  const auto dial = Dial::make(std::move(all), low, high);
  return dial ? std::string("taken") : dial.error().code + ": " + dial.error().sentence();
}

}  // namespace

class TestDial : public QObject {
  Q_OBJECT
 private slots:
  void the_scale_is_straight_between_marks_with_numbers() {
    const auto dial = Dial::make(marks(), {-50}, {45});
    QVERIFY(dial.has_value());
    QCOMPARE(dial->angleOf(celsius(50)).degrees, -40.0);
    QCOMPARE(dial->angleOf(celsius(65)).degrees, -20.0);
    QCOMPARE(dial->angleOf(celsius(95)).degrees, 18.0);
    QCOMPARE(inCelsius(dial->temperatureAt({18})), 95.0);
    QCOMPARE(inCelsius(dial->hotMark()), 110.0);
    QCOMPARE(inCelsius(dial->marked().low), 50.0);
    QCOMPARE(inCelsius(dial->marked().high), 110.0);
    QVERIFY(dial->turnsClockwise());
  }

  void outside_the_marks_the_outermost_interval_goes_on() {
    const auto dial = Dial::make(marks(), {-50}, {45});
    QVERIFY(std::abs(dial->angleOf(celsius(120)).degrees - 48) < 1e-9);
    QVERIFY(std::abs(dial->angleOf(celsius(35)).degrees + 60) < 1e-9);
    QVERIFY(std::abs(inCelsius(dial->temperatureAt({48})) - 120) < 1e-9);
    QVERIFY(std::abs(inCelsius(dial->temperatureAt({-60})) - 35) < 1e-9);
  }

  void temperature_and_angle_undo_each_other_either_way_round() {
    rc::check("temperatureAt undoes angleOf", [] {
      const auto dial = Dial::make(*rc::gen::arbitrary<bool>() ? marks() : mirrored(), {-50}, {50});
      const Temperature t = celsius(*rc::gen::inRange(-50000, 250000) * 1e-3);
      RC_ASSERT(std::abs(inKelvin(dial->temperatureAt(dial->angleOf(t)) - t)) < 1e-9);
    });
  }

  void a_dial_may_run_anticlockwise() {
    const auto dial = Dial::make(mirrored(), {50}, {-45});
    QVERIFY(dial.has_value());
    QVERIFY(!dial->turnsClockwise());
    QCOMPARE(dial->angleOf(celsius(95)).degrees, -18.0);
    QCOMPARE(inCelsius(dial->hotMark()), 110.0);
  }

  void the_needle_is_held_by_the_stops_whichever_is_named_first() {
    for (const auto& dial : {Dial::make(marks(), {-50}, {45}), Dial::make(marks(), {45}, {-50})}) {
      QCOMPARE(dial->onStops({90}).degrees, 45.0);
      QCOMPARE(dial->onStops({-90}).degrees, -50.0);
      QCOMPARE(dial->onStops({7}).degrees, 7.0);
    }
  }

  void a_red_field_is_hot_from_its_first_mark() {
    std::vector<Mark> all = marks();
    all.push_back({MarkKind::hot, "H", celsius(120), {44}});
    QCOMPARE(inCelsius(Dial::make(all, {-50}, {45})->hotMark()), 110.0);
  }

  void a_scale_of_its_own_overrules_the_marks_between_them() {
    const Dial::Scale scale{{celsius(40), {-45}}, {celsius(100), {10}}, {celsius(130), {44}}};
    const auto dial = Dial::withScale(marks(), {-50}, {45}, scale);
    QCOMPARE(dial->angleOf(celsius(100)).degrees, 10.0);
    QCOMPARE(inCelsius(dial->hotMark()), 110.0);
    QCOMPARE(Dial::withScale(marks(), {-50}, {45}, {{celsius(40), {10}}, {celsius(100), {-10}}}).error().code,
             std::string("dial-order"));
  }

  void what_is_no_dial_is_refused_data() {
    QTest::addColumn<QString>("said");
    QTest::addColumn<QString>("code");
    const auto row = [](const char* name, const char* code, const std::string& said) {
      QTest::newRow(name) << QString::fromStdString(said) << code;
    };
    row("no marks", "dial-without-marks", refusedAs([](auto& m) { m.clear(); }));
    row("no hot mark", "dial-without-hot-mark", refusedAs([](auto& m) { m.back().kind = MarkKind::numbered; }));
    row("hot mark without a number", "dial-without-numbers", refusedAs([](auto& m) { m.back().at.reset(); }));
    row("one number only", "dial-without-numbers", refusedAs([](auto& m) { m[1].at.reset(), m[3].at.reset(); }));
    row("temperatures out of order", "dial-order", refusedAs([](auto& m) { std::swap(m[1].at, m[3].at); }));
    row("the same temperature twice", "dial-order", refusedAs([](auto& m) { m[1].at = m[3].at; }));
    row("angles out of order", "dial-order", refusedAs([](auto& m) { m[3].angle = {-41}; }));
    row("the same angle twice", "dial-order", refusedAs([](auto& m) { m[2].angle = m[3].angle; }));
    row("an angle that is no number", "dial-angle",
        refusedAs([](auto& m) { m[2].angle = {std::numeric_limits<double>::quiet_NaN()}; }));
    row("a mark beyond the stop", "dial-stops", refusedAs([](auto&) {}, {-50}, {30}));
    row("stops in one place", "dial-stops", refusedAs([](auto&) {}, {30}, {30}));
  }
  void what_is_no_dial_is_refused() {
    QFETCH(QString, said);
    QFETCH(QString, code);
    QVERIFY2(said.startsWith(code + ": ") && said.contains("expected"), qPrintable(said));
  }
};

QTEST_APPLESS_MAIN(TestDial)
#include "tst_dial.moc"
