#include <parts/error_plot.h>
#include <rapidcheck.h>
#include <QSignalSpy>
#include <QTest>

using namespace ohmkin::parts;

namespace {

PlotPicture flat(double error, double uncertainty) {
  PlotPicture picture;
  picture.from = 40;
  picture.to = 125;
  picture.bandFrom = 80;
  picture.bandTo = 115;
  picture.hotMark = 115;
  picture.temperatureUnit = QStringLiteral("°C");
  picture.errorUnit = QStringLiteral("K");
  picture.summary = QStringLiteral("At worst −9 K at 115 °C.");
  PlotSeries series;
  series.name = QStringLiteral("PX-1");
  for (int t = 40; t <= 125; t += 5) series.points.push_back({double(t), error, uncertainty});
  picture.series = {series};
  return picture;
}

}  // namespace

class TestErrorPlot : public QObject {
  Q_OBJECT

 private slots:
  void ticksAreRoundAndCoverTheSpan() {
    const bool ok = rc::check([] {
      const double low = *rc::gen::inRange(-5000, 5000) / 10.0;
      const double high = low + *rc::gen::inRange(1, 8000) / 10.0;
      const int count = *rc::gen::inRange(2, 10);
      const Ticks ticks = ticksOver(low, high, count);
      RC_ASSERT(ticks.first <= low + 1e-6);
      RC_ASSERT(ticks.last >= high - 1e-6);
      const double leading = ticks.step / std::pow(10.0, std::floor(std::log10(ticks.step) + 1e-9));
      RC_ASSERT(std::abs(leading - 1) < 1e-6 || std::abs(leading - 2) < 1e-6 || std::abs(leading - 5) < 1e-6);
      RC_ASSERT((ticks.last - ticks.first) / ticks.step <= count + 2.0);
    });
    QVERIFY(ok);
  }

  void zeroIsAlwaysOnTheAxis() {
    ErrorPlot plot;
    for (const double error : {-30.0, -1.0, 0.0, 2.5, 40.0}) {
      plot.display(flat(error, 3));
      const Ticks ticks = plot.errorTicks(5);
      QVERIFY(ticks.first < 0);
      QVERIFY(ticks.last > 0);
      QVERIFY(ticks.first <= error - 3 && error + 3 <= ticks.last);
    }
  }

  void anOutlineIsOnTheAxisAndSeen() {
    ErrorPlot plot;
    plot.resize(400, 240);
    plot.display(flat(0, 3));
    const QImage before = plot.grab().toImage();
    const Ticks narrow = plot.errorTicks(5);
    plot.outline({{40, -4, 9}, {80, -4, 9}, {125, -4, 9}});
    QVERIFY(plot.errorTicks(5).last >= 9);
    QVERIFY(plot.errorTicks(5).last > narrow.last);
    QVERIFY(plot.grab().toImage() != before);
    plot.outline({});
    QCOMPARE(plot.grab().toImage(), before);
  }

  void thePlotIsSaidInWordsToo() {
    ErrorPlot plot;
    plot.display(flat(-9, 3));
    QCOMPARE(plot.accessibleDescription(), QStringLiteral("At worst −9 K at 115 °C."));
  }

  void pointingAtItGivesATemperatureOfTheAxis() {
    ErrorPlot plot;
    plot.resize(500, 300);
    plot.display(flat(1, 1));
    plot.show();
    QSignalSpy pointed(&plot, &ErrorPlot::pointed);
    QTest::mouseClick(&plot, Qt::LeftButton, {}, {0, 100});
    QTest::mouseClick(&plot, Qt::LeftButton, {}, {499, 100});
    QTest::mouseClick(&plot, Qt::LeftButton, {}, {270, 100});
    QCOMPARE(pointed.size(), 3);
    QCOMPARE(pointed[0].front().toDouble(), 40.0);
    QCOMPARE(pointed[1].front().toDouble(), 125.0);
    QVERIFY(pointed[2].front().toDouble() > 60 && pointed[2].front().toDouble() < 105);
  }

  void theOneInTheHeadHasNoBand() {
    PlotPicture picture = flat(1, 50);
    picture.series[0].now = true;
    ErrorPlot plot;
    plot.display(picture);
    QVERIFY(plot.errorTicks(5).last < 50);
  }
};

QTEST_MAIN(TestErrorPlot)
#include "tst_error_plot.moc"
