#include <dating/gain.h>
#include <QTest>
#include <cmath>
#include <vector>

using namespace ohmkin::dating;

namespace {

bool close(double a, double b) { return std::abs(a - b) < 1e-9; }

}  // namespace

class TestGain : public QObject {
  Q_OBJECT
 private slots:
  /// Shannon 1948, A Mathematical Theory of Communication, section 6: H(1/2, 1/3, 1/6) = H(1/2, 1/2) + 1/2 H(2/3, 1/3).
  void entropy_is_shannons() {
    const double half = entropyBits(std::vector{0.5, 0.5});
    QVERIFY(close(half, 1));
    QVERIFY(
        close(entropyBits(std::vector{1. / 2, 1. / 3, 1. / 6}), half + 0.5 * entropyBits(std::vector{2. / 3, 1. / 3})));
    QVERIFY(close(entropyBits(std::vector{4.0, 4.0, 4.0, 4.0}), 2));  // weights need not sum to 1
    QCOMPARE(entropyBits(std::vector{0.0, 1.0}), 0.0);
    QCOMPARE(entropyBits(std::vector<double>{}), 0.0);
  }
  /// Shannon 1948, section 12: a symmetric binary channel that errs once in a hundred carries 0.919 bits of each.
  void expected_gain_is_the_mutual_information() {
    const std::vector even{0.5, 0.5};
    QVERIFY(std::abs(expectedGainBits(even, std::vector<std::vector<double>>{{0.99, 0.01}, {0.01, 0.99}}) - 0.919) <
            5e-4);
    QVERIFY(close(expectedGainBits(even, std::vector<std::vector<double>>{{1, 0}, {0, 1}}), 1));
    QVERIFY(close(expectedGainBits(even, std::vector<std::vector<double>>{{0.3, 0.3}, {0.7, 0.7}}), 0));
  }
};

QTEST_APPLESS_MAIN(TestGain)
#include "tst_gain.moc"
