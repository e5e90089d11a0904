#include <curve/curve.h>
#include <curve/model_text.h>
#include <rapidcheck.h>

#include <QTest>
#include <cmath>

using namespace ohmkin;
using namespace ohmkin::curve;

namespace {

double between(double low, double high, int steps = 1'000'000) {
  return low + (high - low) * *rc::gen::resize(rc::kNominalSize, rc::gen::inRange(0, steps + 1)) / steps;
}
double sign() { return *rc::gen::element(-1.0, 1.0); }

Beta someBeta() {
  return {ohms(std::exp(between(-2, 12))), kelvin(between(250, 400)), sign() * std::exp(between(2, 9))};
}

/// Slope dx/dL = s at the middle, shared between the terms, so that the bends are of either sign and now and then spoil
/// it.
SteinhartHart someSteinhartHart(int terms) {
  SteinhartHart m{{}, terms};
  const double middle = between(3, 10);
  const double slope = sign() * std::exp(between(-8.5, -7.5));
  const double cubic = terms > 2 ? between(-0.3, 0.9) : 0;
  const double square = terms > 3 ? between(-0.3, 0.9) : 0;
  m.c[1] = slope * (1 - cubic - square);
  m.c[2] = slope * cubic / (3 * middle * middle);
  m.c[3] = slope * square / (2 * middle);
  m.c[0] = 1 / between(290, 360) - middle * (m.c[1] + middle * (m.c[3] + middle * m.c[2]));
  return m;
}
Exponential someExponential() {
  return {std::exp(between(-8, 4)), sign() * std::exp(between(3, 9)),
          *rc::gen::element(between(-230, 200), between(-1000, -500))};
}
Polynomial somePolynomial() {
  Polynomial m{ohms(std::exp(between(-1, 8))), {sign() * between(1e-4, 8e-3)}};
  const int more = *rc::gen::inRange(0, 4);
  double scale = m.a[0];
  for (int i = 0; i < more; ++i) m.a.push_back((scale /= 100) * between(-0.5, 0.5));
  if (*rc::gen::inRange(0, 2) == 1) m.vanDusen = between(-5e-12, 5e-12);
  return m;
}
MonotoneTable someTable() {
  MonotoneTable m;
  double t = between(-40, 30);
  double l = between(1, 9);
  const double direction = sign();
  for (int i = *rc::gen::inRange(4, 30); i > 0; --i) {
    m.points.emplace_back(celsius(t), ohms(std::exp(l)));
    t += between(0.5, 12);
    l += direction * between(1e-3, 0.6);
  }
  return m;
}

TemperatureSpan spanFor(const Model& model) {
  if (const auto* table = std::get_if<MonotoneTable>(&model))
    return {table->points.front().first, table->points.back().first};
  return {celsius(between(-40, 40)), celsius(between(60, 160))};
}

Model someModel(std::size_t kind) {
  switch (kind) {
    case 0:
      return someBeta();
    case 1:
      return someSteinhartHart(2);
    case 2:
      return someSteinhartHart(3);
    case 3:
      return someSteinhartHart(4);
    case 4:
      return someExponential();
    case 5:
      return somePolynomial();
    default:
      return someTable();
  }
}

/// ln R straight from the definitions of model.h, or NaN where that takes solving.
double byDefinition(const Model& model, double t) {
  if (const auto* m = std::get_if<Beta>(&model)) return std::log(inOhms(m->r0)) + m->b * (1 / t - 1 / inKelvin(m->t0));
  if (const auto* m = std::get_if<Exponential>(&model)) return std::log(m->a) + m->b / (t + m->c);
  if (const auto* m = std::get_if<Polynomial>(&model)) {
    const double c = t - 273.15;
    double sum = 1 + (c < 0 ? m->vanDusen * (c - 100) * c * c * c : 0);
    for (std::size_t i = 0; i < m->a.size(); ++i) sum += m->a[i] * std::pow(c, static_cast<double>(i) + 1);
    return std::log(inOhms(m->r0) * sum);
  }
  return std::nan("");
}

void kinds() {
  QTest::addColumn<int>("kind");
  const char* const names[] = {
      "B-parameter", "Steinhart-Hart 2", "Steinhart-Hart 3", "Steinhart-Hart 4", "exponential", "polynomial", "table"};
  for (int i = 0; i < 7; ++i) QTest::newRow(names[i]) << i;
}

}  // namespace

class TestCurve : public QObject {
  Q_OBJECT

 private slots:
  void inverseUndoesForwardToANanokelvin_data() { kinds(); }
  void inverseUndoesForwardToANanokelvin() {
    QFETCH(int, kind);
    int taken = 0;
    QVERIFY(rc::check([&] {
      const Model model = someModel(static_cast<std::size_t>(kind));
      const auto curve = Curve::make(model, spanFor(model));
      RC_PRE(curve.has_value());
      ++taken;
      const double low = inKelvin(curve->valid().low);
      const double high = inKelvin(curve->valid().high);
      for (int i = 0; i <= 20; ++i) {
        const Temperature t = kelvin(i == 20 ? high : low + (high - low) * i / 20);
        const auto r = curve->resistance(t);
        RC_ASSERT(r.has_value());
        if (std::abs(*curve->slope(t)) < 1e-5) continue;  // a double of ohms holds no nanokelvin there
        const auto back = curve->temperature(*r);
        RC_ASSERT(back.has_value());
        RC_ASSERT(std::abs(inKelvin(*back) - inKelvin(t)) <= 1e-9);
      }
    }));
    QVERIFY(taken >= 100);
  }

  void whatIsTakenIsStrictlyMonotoneAndWhatIsRefusedIsNot_data() { kinds(); }
  void whatIsTakenIsStrictlyMonotoneAndWhatIsRefusedIsNot() {
    QFETCH(int, kind);
    int refused = 0;
    QVERIFY(rc::check([&] {
      const Model model = someModel(static_cast<std::size_t>(kind));
      const TemperatureSpan span = spanFor(model);
      const auto curve = Curve::make(model, span);
      const double low = inKelvin(span.low);
      const double high = inKelvin(span.high);
      if (curve) {
        double before = curve->lnOhms(low);
        for (int i = 1; i <= 200; ++i) {
          const double t = low + (high - low) * i / 200;
          const double l = curve->lnOhms(t);
          RC_ASSERT(std::isfinite(l));
          const bool keepsOn = curve->falls() ? l < before : l > before;
          RC_ASSERT(keepsOn);
          const bool slopesDown = curve->lnOhmsSlope(t) < 0;
          RC_ASSERT(slopesDown == curve->falls());
          before = l;
          const double defined = byDefinition(model, t);
          if (!std::isnan(defined)) RC_ASSERT(std::abs(l - defined) <= 1e-12 * (1 + std::abs(defined)));
          if (const auto* s = std::get_if<SteinhartHart>(&model)) {
            const double x = s->c[0] + s->c[1] * l + s->c[2] * l * l * l + s->c[3] * l * l;
            RC_ASSERT(std::abs(1 / x - t) <= 1e-9);
          }
        }
      } else if (std::holds_alternative<Polynomial>(model)) {
        ++refused;
        bool up = false;
        bool down = false;
        bool bad = false;
        double before = byDefinition(model, low);
        for (int i = 1; i <= 20'000; ++i) {
          const double l = byDefinition(model, low + (high - low) * i / 20'000);
          up = up || l > before;
          down = down || l < before;
          bad = bad || !std::isfinite(l);
          before = l;
        }
        const bool turns = bad || (up && down);
        RC_ASSERT(turns);
      } else {
        ++refused;
      }
    }));
    if (kind == 5) QVERIFY(refused > 0);
  }

  void slopeIsTheDerivativeOfTheValue_data() { kinds(); }
  void slopeIsTheDerivativeOfTheValue() {
    QFETCH(int, kind);
    QVERIFY(rc::check([&] {
      const Model model = someModel(static_cast<std::size_t>(kind));
      const auto curve = Curve::make(model, spanFor(model));
      RC_PRE(curve.has_value());
      const double t = between(inKelvin(curve->valid().low) + 1, inKelvin(curve->valid().high) - 1);
      const double h = 1e-3;
      const double numeric = (curve->lnOhms(t + h) - curve->lnOhms(t - h)) / (2 * h);
      RC_ASSERT(std::abs(curve->lnOhmsSlope(t) - numeric) <= 2e-3 * std::abs(numeric) + 1e-8);
    }));
  }

  void equationsAreWrittenAsHandbooksWriteThem() {
    QCOMPARE(equationText(Beta{ohms(100), kelvin(298.15), 3450}),
             std::string("R = 100 Ω · exp(3450 K · (1/T − 1/298.15 K))"));
    QCOMPARE(equationText(SteinhartHart{{0.001, 0.0002, -3e-7, 0}, 3}),
             std::string("1/T = 0.001 + 0.0002 · L − 3e-07 · L³, L = ln(R/Ω), T in K"));
    QCOMPARE(equationText(Exponential{0.02, 2900, -45}), std::string("R = 0.02 Ω · exp(2900 K / (T − 45 K))"));
    QCOMPARE(equationText(Polynomial{ohms(100), {3.9083e-3, -5.775e-7}}),
             std::string("R = 100 Ω · (1 + 0.0039083 · t − 5.775e-07 · t^2), t in °C"));
  }

  void textReadsBackToTheSameModel_data() { kinds(); }
  void textReadsBackToTheSameModel() {
    QFETCH(int, kind);
    QVERIFY(rc::check([&] {
      const Model model = someModel(static_cast<std::size_t>(kind));
      const auto back = modelFrom(textName(model), coefficientText(model));
      RC_ASSERT(back.has_value());
      RC_ASSERT(coefficientText(*back) == coefficientText(model));
      RC_ASSERT(back->index() == model.index());
    }));
  }

  void aCurveAnswersInsideItsSpanOnly() {
    const auto curve = Curve::make(Beta{ohms(100), celsius(25), 3500}, {celsius(20), celsius(120)});
    QVERIFY(curve);
    QVERIFY(!curve->resistance(celsius(19.9)) && !curve->resistance(celsius(120.1)) && !curve->slope(celsius(0)) &&
            !curve->knowledge(celsius(0)));
    QVERIFY(!curve->temperature(ohms(1)) && !curve->temperature(ohms(1000)) && !curve->temperature(ohms(-5)) &&
            !curve->temperature(ohms(std::nan(""))));
    QVERIFY(!curve->extrapolates(celsius(50)));

    const auto wider = curve->extendedTo({celsius(0), celsius(60)});
    QVERIFY(wider);
    QCOMPARE(inCelsius(wider->valid().low), 0.0);
    QCOMPARE(inCelsius(wider->valid().high), 120.0);
    QVERIFY(wider->resistance(celsius(10)) && wider->extrapolates(celsius(10)) && !wider->extrapolates(celsius(20)));
    QVERIFY(wider->established() == curve->established());
  }

  void extendingStopsWhereTheModelTurns() {
    // 1 + 0.01 t − 5e-5 t² turns at 100 °C
    const auto curve = Curve::make(Polynomial{ohms(100), {0.01, -5e-5}}, {celsius(0), celsius(80)});
    QVERIFY(curve && !curve->falls());
    QVERIFY(curve->extendedTo({celsius(-20), celsius(99)}));
    const auto beyond = curve->extendedTo({celsius(0), celsius(110)});
    QVERIFY(!beyond);
    QCOMPARE(beyond.error().code, std::string("curve-not-monotone"));
  }

  void unsoundNumbersAreRefused_data() {
    QTest::addColumn<QString>("name");
    QTest::addColumn<QString>("numbers");
    QTest::addColumn<QString>("code");
    QTest::newRow("beta of no ohms") << "beta"
                                     << "0 298.15 3500"
                                     << "curve-numbers";
    QTest::newRow("beta that does not change") << "beta"
                                               << "100 298.15 0"
                                               << "curve-not-monotone";
    QTest::newRow("exponential below zero") << "exponential"
                                            << "-1 3500 0"
                                            << "curve-numbers";
    QTest::newRow("exponential with its pole inside") << "exponential"
                                                      << "1 100 -350"
                                                      << "curve-not-monotone";
    QTest::newRow("Steinhart-Hart of nothing") << "steinhart-hart"
                                               << "0 0 0"
                                               << "curve-not-monotone";
    QTest::newRow("Steinhart-Hart far from the span") << "steinhart-hart"
                                                      << "0.1 2e-4 1e-7"
                                                      << "curve-not-monotone";
    QTest::newRow("polynomial that turns") << "polynomial"
                                           << "100 0.01 -1e-4"
                                           << "curve-not-monotone";
    QTest::newRow("polynomial below zero ohms") << "polynomial"
                                                << "100 -0.02"
                                                << "curve-not-positive";
    QTest::newRow("polynomial that is flat") << "polynomial"
                                             << "100 0"
                                             << "curve-not-monotone";
    QTest::newRow("table that goes up and down") << "table"
                                                 << "290 100 300 80 320 90 400 20"
                                                 << "curve-not-monotone";
    QTest::newRow("table out of order") << "table"
                                        << "290 100 320 80 300 70 400 20"
                                        << "curve-points-order";
    QTest::newRow("table that does not reach") << "table"
                                               << "290 100 300 80 320 60 350 20"
                                               << "curve-span";
  }
  void unsoundNumbersAreRefused() {
    QFETCH(QString, name);
    QFETCH(QString, numbers);
    QFETCH(QString, code);
    const auto model = modelFrom(name.toStdString(), numbers.toStdString());
    QVERIFY(model);
    const auto curve = Curve::make(*model, {kelvin(293.15), kelvin(393.15)});
    QVERIFY(!curve);
    QCOMPARE(QString::fromStdString(curve.error().code), code);
  }

  void unreadableTextIsRefusedWithItsPlace_data() {
    QTest::addColumn<QString>("name");
    QTest::addColumn<QString>("numbers");
    QTest::newRow("unknown model") << "spline"
                                   << "1 2 3";
    QTest::newRow("too few") << "beta"
                             << "100 298.15";
    QTest::newRow("too many") << "steinhart-hart"
                              << "1 2 3 4 5";
    QTest::newRow("not a number") << "exponential"
                                  << "1 b 3";
    QTest::newRow("odd table") << "table"
                               << "290 100 300 80 320 60 350 20 360";
    QTest::newRow("Van Dusen elsewhere") << "beta"
                                         << "100 298.15 3500 c=1";
  }
  void unreadableTextIsRefusedWithItsPlace() {
    QFETCH(QString, name);
    QFETCH(QString, numbers);
    const auto model = modelFrom(name.toStdString(), numbers.toStdString(), "curve.csv:4:coefficients");
    QVERIFY(!model);
    QCOMPARE(model.error().where, std::string("curve.csv:4:coefficients"));
  }

  void knowledgeFollowsTheCovarianceButNotBelowTheFloor() {
    // u(ln R) of r0 alone is u(r0)/r0 everywhere; of b alone it is u(b)·|1/T − 1/t0|: nil at t0
    const Beta model{ohms(100), celsius(50), 3500};
    const TemperatureSpan span{celsius(20), celsius(120)};
    const auto curve = Curve::make(model, span, {{4, 0, 0, 0, 0, 0, 0, 0, 900}, 3}, 0.001);
    QVERIFY(curve);
    QCOMPARE(*curve->knowledge(celsius(50)), 0.02);
    QCOMPARE(*curve->knowledge(celsius(100)), std::hypot(0.02, 30 * (1 / 323.15 - 1 / 373.15)));
    const auto floored = Curve::make(model, span, {{1e-6, 0, 0, 0, 0, 0, 0, 0, 0}, 3}, 0.001);
    QCOMPARE(*floored->knowledge(celsius(50)), 0.001);
    QCOMPARE(*curve->withBow(0.05).knowledge(celsius(20)), *curve->knowledge(celsius(20)));
    QVERIFY(!Curve::make(model, span, {{1, 0, 0, 1}, 2}));
    QVERIFY(!Curve::make(model, span, {{-1, 0, 0, 0, 1, 0, 0, 0, 1}, 3}));
  }

  void knowledgeIsWhatPerturbedParametersDo_data() { kinds(); }
  void knowledgeIsWhatPerturbedParametersDo() {
    QFETCH(int, kind);
    QVERIFY(rc::check([&] {
      const Model model = someModel(static_cast<std::size_t>(kind));
      const TemperatureSpan span = spanFor(model);
      RC_PRE(Curve::make(model, span).has_value());
      const QStringList words = QString::fromStdString(coefficientText(model)).split(' ');
      const bool table = std::holds_alternative<MonotoneTable>(model);
      const auto size = static_cast<std::size_t>(table                          ? words.size() / 2
                                                 : words.filter("c=").isEmpty() ? words.size()
                                                                                : words.size() - 1);
      const auto which = *rc::gen::resize(rc::kNominalSize, rc::gen::inRange<std::size_t>(0, size));
      const auto word = static_cast<qsizetype>(table ? 2 * which + 1 : which);
      const double value = words[word].toDouble();
      const double h = 1e-6 * std::abs(value);
      RC_PRE(h > 0);
      const auto nudged = [&](double by) {
        QStringList other = words;
        other[word] = QString::number(value + by, 'g', 17);
        return Curve::make(*modelFrom(textName(model), other.join(' ').toStdString()), span);
      };
      const auto up = nudged(h);
      const auto down = nudged(-h);
      RC_PRE(up.has_value() && down.has_value());
      const Temperature t = kelvin(between(inKelvin(span.low), inKelvin(span.high)));
      const double numeric = std::abs(up->lnOhms(inKelvin(t)) - down->lnOhms(inKelvin(t))) / 2;
      Covariance covariance{std::vector<double>(size * size, 0.0), size};
      covariance.values[which * size + which] = h * h;
      const auto known = Curve::make(model, span, covariance);
      RC_ASSERT(known.has_value());
      RC_ASSERT(std::abs(*known->knowledge(t) - numeric) <= 1e-3 * numeric + 1e-12);
    }));
  }
};

QTEST_APPLESS_MAIN(TestCurve)
#include "tst_curve.moc"
