#include <gauge/fit_movement.h>
#include <QTest>
#include <random>
#include "nodal_gauge.h"

using namespace ohmkin;
using namespace ohmkin::gauge;

namespace {

constexpr double kOpen = std::numeric_limits<double>::infinity();
const std::vector<double> kBox{20, 45, 80, 130, 220, 400};
const std::vector<double> kSupplies{10.5, 12.5, 15};
const CoilOhms kCoils{ohms(90), ohms(110)};

/// Two coils tapped at the sender post, and a magnet that pulls the needle home: read by Kirchhoff, not by our law.
test::NodalGauge circuit(double magnet = 0.002) {
  test::NodalGauge gauge;
  gauge.coils = {{test::kFeed, test::kSender, inOhms(kCoils.feed), {0.35, 0.6}},
                 {test::kSender, test::kGround, inOhms(kCoils.ground), {-0.9, 0.25}}};
  gauge.constantField = {-0.8 * magnet, 0.6 * magnet};
  return gauge;
}
const double kHome = test::NodalGauge::degreesOf({-0.8, 0.6});

std::vector<BoxReading> taken(const test::NodalGauge& gauge, const std::vector<double>& supplies, double noise = 0) {
  std::mt19937_64 random(1961);
  std::normal_distribution<double> off(0, 1);
  std::vector<BoxReading> readings;
  for (const double supply : supplies)
    for (const double r : kBox) {
      BoxReading reading{ohms(r), {gauge.degrees(r, supply) + noise * off(random)}, noise > 0 ? noise : 0.1};
      reading.supply = volts(supply);
      readings.push_back(reading);
    }
  return readings;
}

double shown(const Movement& movement, double r, double supply) {
  Conditions conditions;
  conditions.supply = volts(supply);
  return deflection(movement, ohms(r), conditions).degrees;
}

std::string code(const Expected<MovementFit>& fit) { return fit ? std::string("taken") : fit.error().code; }

}  // namespace

/// Checked against a nodal solution of the circuit (Kirchhoff's current law, nodal_gauge.h), as the movement itself is.
class TestFitMagnet : public QObject {
  Q_OBJECT

 private slots:
  void readings_of_a_circuit_at_several_supplies_are_predicted_at_supplies_and_ohms_never_read() {
    const test::NodalGauge gauge = circuit();
    const auto fit = fitMagneticCoil(taken(gauge, kSupplies), {{kHome}, 0.1});
    QVERIFY2(fit.has_value(), code(fit).c_str());
    QVERIFY(fit->chiSquare < 1e-6);
    for (const double supply : {10.0, 11.7, 14.4})
      for (const double r : {0.0, 33.0, 170.0, 900.0, kOpen})
        QVERIFY(std::abs(test::turned(shown(fit->movement, r, supply) - gauge.degrees(r, supply))) < 1e-3);
  }

  void the_coils_ohms_give_the_weakening_so_that_four_readings_are_enough() {
    const test::NodalGauge gauge = circuit();
    const std::vector<BoxReading> all = taken(gauge, {10.5, 15});
    const std::vector<BoxReading> few{all[0], all[4], all[8], all[11]};
    const auto fit = fitMagneticCoil(few, {{kHome}, 0.1}, kCoils);
    QVERIFY2(fit.has_value(), code(fit).c_str());
    const auto& coil = std::get<CrossedCoil>(fit->movement);
    QVERIFY(std::abs(inOhms(coil.magnet->weakening) - 49.5) < 0.05);  // 90 × 110 / 200
    QVERIFY(std::abs(test::turned(shown(fit->movement, 100, 14) - gauge.degrees(100, 14))) < 0.02);
  }

  // Normal distribution: 95.45 % within two standard uncertainties.
  void the_truth_lies_within_two_standard_uncertainties_as_often_as_it_should() {
    const test::NodalGauge gauge = circuit(0.004);
    std::mt19937_64 random(1962);
    std::normal_distribution<double> off(0, 0.25);
    int held = 0;
    int fits = 0;
    for (int i = 0; i < 400; ++i) {
      auto readings = taken(gauge, kSupplies);
      for (BoxReading& reading : readings) reading.needle.degrees += off(random), reading.uncertainty = 0.25;
      const auto fit = fitMagneticCoil(readings, {{kHome + off(random)}, 0.25}, kCoils);
      if (!fit) continue;
      ++fits;
      const double away = test::turned(deflection(fit->movement, ohms(100)).degrees - gauge.degrees(100, 13.5));
      held += std::abs(away) <= 2 * fit->knowledge(ohms(100)) ? 1 : 0;
    }
    QVERIFY2(fits > 390, std::to_string(fits).c_str());
    const double share = double(held) / fits;
    QVERIFY2(share > 0.93 && share < 0.99, std::to_string(share).c_str());
  }

  void one_supply_cannot_show_a_magnet() {
    QCOMPARE(code(fitMagneticCoil(taken(circuit(), {13.5}), {{kHome}})), "one-supply-only");
    QCOMPARE(code(fitMagneticCoil(taken(circuit(), {13.2, 13.8}), {{kHome}})), "one-supply-only");
  }

  // With no constant field the three-number law holds at any supply, and both fits of it agree with Kirchhoff.
  void a_coil_without_a_magnet_is_not_given_one() {
    const auto readings = taken(circuit(0), kSupplies, 0.5);
    QCOMPARE(code(fitMagneticCoil(readings, {{kHome}, 0.5})), "no-magnet-seen");
    QVERIFY(fitCrossedCoil(readings).has_value());
  }

  void a_magnet_fitted_as_a_plain_coil_scatters_and_says_so() {
    const auto fit = fitCrossedCoil(taken(circuit(0.004), kSupplies));
    QVERIFY(fit.has_value());
    QVERIFY(std::any_of(fit->findings.begin(), fit->findings.end(),
                        [](const Finding& f) { return f.code == "readings-scatter"; }));
  }

  void too_few_readings_are_refused() {
    std::vector<BoxReading> few = taken(circuit(), {10.5, 15});
    QCOMPARE(code(fitMagneticCoil({few[0], few[3], few[7]}, {{kHome}})), "readings-too-few");
    QCOMPARE(code(fitMagneticCoil({few[0], few[3], few[7], few[11]}, {{kHome}})), "readings-too-few");
    QCOMPARE(code(fitMagneticCoil(few, {{kHome}, 0})), "movement-out-of-range");
    QCOMPARE(code(fitMagneticCoil(few, {{kHome}}, CoilOhms{ohms(0), ohms(90)})), "movement-out-of-range");
  }
};

QTEST_APPLESS_MAIN(TestFitMagnet)
#include "tst_fit_magnet.moc"
