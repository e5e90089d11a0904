#include <dating/lag.h>
#include <QTest>
#include <cmath>

using namespace ohmkin::dating;

namespace {

bool close(double a, double b) { return std::abs(a - b) < 1e-9; }

}  // namespace

class TestLag : public QObject {
  Q_OBJECT
 private slots:
  /// Standard normal quantile of 0.9: 1.2816 (any table; here from NIST's handbook, section 1.3.6.7.1). A lag told by
  /// its half and its nine in ten has that much of its whole days within them, to half a day.
  void a_lag_is_told_by_half_and_nine_in_ten() {
    const auto lag = lagWithin(20, 90, "test", "lag");
    QVERIFY(lag);
    QVERIFY(std::abs(lag->sigma - std::log(4.5) / 1.2816) < 1e-4);
    const std::vector<double> mass = dayProbabilities(*lag);
    const auto within = [&](int last) {
      double sum = 0;
      for (int day = 0; day <= last; ++day) sum += mass[static_cast<std::size_t>(day)];
      return sum;
    };
    QVERIFY(within(19) < 0.5 && within(20) > 0.5);
    QVERIFY(std::abs(within(90) - 0.9) < 0.005);
    QVERIFY(close(usualDays(*lag).nineInTen, 90));
    const Lag usual;
    const auto inProportion = lagWithin(usual.median, usual, "test", "lag");
    QVERIFY(inProportion && inProportion->sigma == usual.sigma && inProportion->longest == usual.longest);
    for (const auto& [half, late] : {std::pair{0., 5.}, {12., 12.}, {12., 5.}, {12., 4000.}, {-1., 3.}, {1e-9, 3000.}})
      QVERIFY(!lagWithin(half, late, "test", "lag"));
  }
};

QTEST_APPLESS_MAIN(TestLag)
#include "tst_lag.moc"
