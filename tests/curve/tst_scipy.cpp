#include <curve/fit.h>

#include <QProcess>
#include <QStandardPaths>
#include <QTemporaryDir>
#include <QTest>
#include <cmath>
#include <map>

#include "reference_table.h"

/// 200 noisy curves against scipy.optimize.curve_fit; generator and values are tests/data/scipy-curve-fits.{py,csv}.
using namespace ohmkin;
using namespace ohmkin::curve;

namespace {

struct Case {
  std::string form;
  std::vector<Sample> samples;
  std::vector<std::pair<double, double>> predicted;  // °C, ln R
  std::map<std::pair<std::size_t, std::size_t>, double> covariance;
};

std::map<int, Case> cases() {
  const test::ReferenceTable table("scipy-curve-fits.csv");
  std::map<int, Case> out;
  for (std::size_t i = 0; i < table.size(); ++i) {
    Case& c = out[static_cast<int>(table.number(i, "case"))];
    c.form = table.text(i, "form");
    const std::string& record = table.text(i, "record");
    const double v1 = table.number(i, "v1");
    const double v2 = table.number(i, "v2");
    if (record == "sample")
      c.samples.push_back(
          {celsius(v1), ohms(v2), Direction::heating, table.blank(i, "v3") ? 0 : table.number(i, "v3"), 0});
    if (record == "predict") c.predicted.emplace_back(v1, v2);
    if (record == "cov")
      c.covariance[{static_cast<std::size_t>(v1), static_cast<std::size_t>(v2)}] = table.number(i, "v3");
  }
  return out;
}

const std::map<std::string, Form> kForms{{"beta", Form::beta},
                                         {"steinhart-hart-3", Form::steinhartHart3},
                                         {"steinhart-hart-4", Form::steinhartHart4},
                                         {"exponential", Form::exponential},
                                         {"polynomial-1", Form::straight},
                                         {"polynomial-2", Form::quadratic},
                                         {"polynomial-3", Form::cubic}};

}  // namespace

class TestScipy : public QObject {
  Q_OBJECT

 private slots:
  void everyFitAgreesWithScipy() {
    const auto all = cases();
    QCOMPARE(all.size(), std::size_t{200});
    double worstPrediction = 0;
    double worstCovariance = 0;
    for (const auto& [number, c] : all) {
      const Form form = kForms.at(c.form);
      const auto fitted = fit(c.samples, {form, false, c.form.starts_with("polynomial")});
      QVERIFY2(fitted,
               qPrintable(QString("case %1: %2").arg(number).arg(fitted ? "" : fitted.error().sentence().c_str())));
      for (const auto& [t, l] : c.predicted)
        worstPrediction = std::max(worstPrediction, std::abs(std::expm1(fitted->curve.lnOhms(273.15 + t) - l)));
      const Covariance& covariance = fitted->curve.covariance();
      // what SciPy takes as stated we widen where the scatter contradicts it
      const double widened =
          fitted->stated && !fitted->consistent ? fitted->chiSquare / static_cast<double>(fitted->freedom) : 1;
      for (const auto& [cell, value] : c.covariance) {
        const auto own = [&](std::size_t i) {
          return form == Form::beta && i == 1 ? 2 : i;
        };  // t0 lies between r0 and b
        const auto at = [&](std::size_t i, std::size_t j) {
          return covariance.values[own(i) * covariance.size + own(j)] / widened;
        };
        const double scale = std::sqrt(at(cell.first, cell.first) * at(cell.second, cell.second));
        worstCovariance = std::max(worstCovariance, std::abs(at(cell.first, cell.second) - value) / scale);
      }
    }
    qInfo("predictions agree to %.1e, covariances to %.1e", worstPrediction, worstCovariance);
    QVERIFY(worstPrediction <= 1e-6);
    QVERIFY(worstCovariance <= 1e-3);
  }

  void theGeneratorStillGivesTheseValues() {
    QString python;
    for (const QString& name : {QStringLiteral("python3"), QStringLiteral("/usr/bin/python3")}) {
      QProcess probe;
      probe.start(name, {"-c", "import scipy"});
      if (probe.waitForFinished() && probe.exitStatus() == QProcess::NormalExit && probe.exitCode() == 0) python = name;
    }
    if (python.isEmpty()) QSKIP("SciPy is not installed; the committed values were checked above");
    QProcess run;
    run.start(python, {QString(OHMKIN_TEST_DATA) + "/scipy-curve-fits.py"});
    QVERIFY(run.waitForFinished(120'000) && run.exitCode() == 0);
    QFile committed(QString(OHMKIN_TEST_DATA) + "/scipy-curve-fits.csv");
    QVERIFY(committed.open(QIODevice::ReadOnly));
    const QList<QByteArray> now = run.readAllStandardOutput().split('\n');
    const QList<QByteArray> then = committed.readAll().split('\n');
    QCOMPARE(now.size(), then.size());
    for (qsizetype i = 0; i < now.size(); ++i) {
      if (then[i].startsWith('#') || then[i] == now[i]) continue;  // versions are named in the comments
      const QList<QByteArray> a = now[i].split(',');
      const QList<QByteArray> b = then[i].split(',');
      QCOMPARE(a.mid(0, 3), b.mid(0, 3));
      for (int column = 3; column < 6; ++column) {
        const double x = a[column].toDouble();
        const double y = b[column].toDouble();
        QVERIFY2(std::abs(x - y) <= 1e-5 * std::abs(y),
                 now[i].constData());  // LAPACKs differ in the last places of a covariance
      }
    }
  }
};

QTEST_APPLESS_MAIN(TestScipy)
#include "tst_scipy.moc"
