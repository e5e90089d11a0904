#include <curve/fit.h>

#include <QTest>
#include <cmath>
#include <random>

/// The band must hold the truth as often as it says: 2,000 simulated bench runs a model, one truth looked up in each.
/// The standard error of a rate of 95 % in 2,000 is 0.5 %, so 93–97 % is four of them to either side.
using namespace ohmkin;
using namespace ohmkin::curve;

namespace {

constexpr int kRuns = 2000;

/// A truth of each form; the runs differ in its numbers, the points, the noise.
Model truth(Form form, std::mt19937_64& random) {
  std::uniform_real_distribution<double> u(0, 1);
  const double b = 2800 + 1400 * u(random);
  const double r0 = std::exp(4 + 4 * u(random));
  switch (form) {
    case Form::beta:
      return Beta{ohms(r0), celsius(40), b};
    case Form::exponential: {
      const double c = -60 - 60 * u(random);
      const double width = b * std::pow((333 + c) / 333, 2);
      return Exponential{r0 * std::exp(-width / (333 + c)), width, c};
    }
    case Form::straight:
      return Polynomial{ohms(r0), {0.003 + 0.003 * u(random)}};
    case Form::quadratic:
      return Polynomial{ohms(r0), {0.004 + 0.003 * u(random), 1e-5 * (u(random) - 0.3)}};
    case Form::cubic:
      return Polynomial{ohms(r0), {0.004 + 0.003 * u(random), 1e-5 * (u(random) - 0.3), 4e-8 * (u(random) - 0.3)}};
    default:
      break;
  }
  // Steinhart–Hart with a bend: slope 1/b at the middle, part of it from the cubic and the square term
  SteinhartHart m{{}, form == Form::steinhartHart4 ? 4 : 3};
  const double l = std::log(r0);
  const double cubic = 0.1 + 0.2 * u(random);
  const double square = m.terms == 4 ? -0.2 + 0.4 * u(random) : 0;
  m.c[1] = (1 - cubic - square) / b;
  m.c[2] = cubic / b / (3 * l * l);
  m.c[3] = square / b / (2 * l);
  m.c[0] = 1 / 333.15 - l * (m.c[1] + l * (m.c[3] + l * m.c[2]));
  return m;
}

MonotoneTable tableTruth(std::mt19937_64& random) {
  std::uniform_real_distribution<double> u(0, 1);
  MonotoneTable m;
  double l = 6 + u(random);
  for (int i = 0; i < 10; ++i, l -= 0.25 + 0.15 * u(random))
    m.points.emplace_back(celsius(20 + 10 * i), ohms(std::exp(l)));
  return m;
}

enum class Knowing { scatter, statedOhms, statedBath };

struct Tally {
  int held = 0;
  int tried = 0;
  [[nodiscard]] double rate() const { return static_cast<double>(held) / tried; }
};

void oneRun(Form form, Knowing knowing, bool robust, std::mt19937_64& random, Tally& tally) {
  std::uniform_real_distribution<double> u(0, 1);
  std::normal_distribution<double> normal;
  const TemperatureSpan span{celsius(20), celsius(110)};
  const auto curve = Curve::make(form == Form::table ? Model(tableTruth(random)) : truth(form, random), span);
  QVERIFY(curve);
  const int points = form == Form::table ? 10 : 8 + static_cast<int>(u(random) * 9);
  const double uLn = knowing == Knowing::statedBath ? 0 : 0.002 + 0.004 * u(random);
  const double uKelvin = knowing == Knowing::statedBath ? 0.1 + 0.1 * u(random) : 0;
  std::vector<Sample> samples;
  for (int i = 0; i < points; ++i) {
    const double t = 20 + 90.0 * i / (points - 1);
    const double l = curve->lnOhms(273.15 + t) + uLn * normal(random);
    const double seen = t + uKelvin * normal(random);
    samples.push_back({celsius(seen), ohms(std::exp(l)), Direction::heating, knowing == Knowing::scatter ? 0 : uKelvin,
                       knowing == Knowing::scatter ? 0 : uLn});
  }
  const auto fitted = fit(samples, {form, robust, false});
  QVERIFY2(fitted, fitted ? "" : fitted.error().sentence().c_str());
  const TemperatureSpan inside = fitted->curve.established();
  const double t = inKelvin(inside.low) + u(random) * (inKelvin(inside.high) - inKelvin(inside.low));
  const double r = std::exp(curve->lnOhms(t));
  const auto band = fitted->band(kelvin(t));
  QVERIFY(band);
  tally.held += inOhms(band->low) <= r && r <= inOhms(band->high) ? 1 : 0;
  ++tally.tried;
}

}  // namespace

class TestCoverage : public QObject {
  Q_OBJECT

 private slots:
  void theBandHoldsTheTruth_data() {
    QTest::addColumn<int>("form");
    QTest::addColumn<int>("knowing");
    QTest::addColumn<bool>("robust");
    for (const Form form : {Form::beta, Form::steinhartHart3, Form::steinhartHart4, Form::exponential, Form::straight,
                            Form::quadratic, Form::cubic}) {
      const std::string name(formName(form));
      QTest::addRow("%s, scatter estimated", name.c_str())
          << static_cast<int>(form) << static_cast<int>(Knowing::scatter) << false;
      QTest::addRow("%s, scatter estimated, robust", name.c_str())
          << static_cast<int>(form) << static_cast<int>(Knowing::scatter) << true;
      QTest::addRow("%s, ohms uncertain", name.c_str())
          << static_cast<int>(form) << static_cast<int>(Knowing::statedOhms) << true;
      QTest::addRow("%s, bath uncertain", name.c_str())
          << static_cast<int>(form) << static_cast<int>(Knowing::statedBath) << true;
    }
    QTest::addRow("monotone table, ohms uncertain")
        << static_cast<int>(Form::table) << static_cast<int>(Knowing::statedOhms) << false;
  }
  void theBandHoldsTheTruth() {
    QFETCH(int, form);
    QFETCH(int, knowing);
    QFETCH(bool, robust);
    std::mt19937_64 random(20'240'101);
    Tally tally;
    for (int run = 0; run < kRuns; ++run) {
      oneRun(static_cast<Form>(form), static_cast<Knowing>(knowing), robust, random, tally);
      if (QTest::currentTestFailed()) return;
    }
    const QString said = QString("the band held %1 %").arg(100 * tally.rate());
    qInfo("%s", qPrintable(said));
    QVERIFY2(tally.rate() >= 0.93 && tally.rate() <= 0.97, qPrintable(said));
  }
};

QTEST_APPLESS_MAIN(TestCoverage)
#include "tst_coverage.moc"
