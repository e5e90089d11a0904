#include "reference_table.h"

#include <bench/outliers.h>
#include <QTest>
#include <cmath>
#include <limits>

using namespace ohmkin;
using namespace ohmkin::bench;

/// NIST/SEMATECH e-Handbook 1.3.5.17.1 and a table of critical values; provenance in tests/data/grubbs.csv.
class TestOutliers : public QObject {
  Q_OBJECT
  const ohmkin::test::ReferenceTable table_{"grubbs.csv"};

  std::vector<double> handbookData() const {
    std::vector<double> data;
    for (std::size_t i = 0; i < table_.size(); ++i)
      if (table_.text(i, "kind") == "data") data.push_back(table_.number(i, "published"));
    return data;
  }

 private slots:
  void the_handbook_example_is_met() {
    const auto data = handbookData();
    QCOMPARE(data.size(), std::size_t{8});
    const auto result = grubbs(data, 0.05, Side::highest);
    QVERIFY(result.has_value());
    QCOMPARE(result->suspect, std::size_t{7});  // 245.57
    QVERIFY(std::abs(result->g - 2.468765) < 5e-7);
    QVERIFY(std::abs(result->critical - 2.032) < 5e-4);  // as printed
    QVERIFY(result->outlier);
  }

  void without_the_outlier_the_rest_belong_together() {
    auto data = handbookData();
    data.pop_back();
    QVERIFY(!grubbs(data, 0.05, Side::highest)->outlier);
  }

  void both_sides_share_the_significance() {
    // Computed with SciPy, tests/data/grubbs.csv: 2.126645 two-sided for n = 8.
    const auto result = grubbs(handbookData(), 0.05, Side::either);
    QVERIFY(std::abs(result->critical - 2.126645) < 5e-7);
  }

  void critical_values_are_those_of_the_table() {
    int seen = 0;
    for (std::size_t i = 0; i < table_.size(); ++i) {
      if (table_.text(i, "kind") != "critical_one_sided") continue;
      const auto n = static_cast<std::size_t>(std::stoi(table_.text(i, "key").substr(2)));
      std::vector<double> values(n);
      for (std::size_t v = 0; v < n; ++v) values[v] = static_cast<double>(v);
      const auto result = grubbs(values, table_.number(i, "alpha"), Side::highest);
      QVERIFY(std::abs(result->critical - table_.number(i, "computed")) < 6e-5);
      if (table_.text(i, "verified") == "yes")
        QVERIFY(std::abs(result->critical - table_.number(i, "published")) <
                0.0051);  // half a digit, halves printed down
      ++seen;
    }
    QCOMPARE(seen, 54);
  }

  void the_side_asked_for_is_looked_at() {
    const std::vector<double> low{10.1, 10.0, 9.9, 10.05, 9.95, 10.02, 2.0};
    QVERIFY(grubbs(low, 0.05, Side::lowest)->outlier);
    QCOMPARE(grubbs(low, 0.05, Side::lowest)->suspect, std::size_t{6});
    QVERIFY(!grubbs(low, 0.05, Side::highest)->outlier);
    QVERIFY(grubbs(low, 0.05, Side::either)->outlier);
  }

  void equal_readings_hold_no_outlier() { QVERIFY(!grubbs(std::vector<double>{5, 5, 5, 5})->outlier); }

  void what_cannot_be_tested_is_refused() {
    const auto code = [](const auto& r) { return QString::fromStdString(r ? "answered" : r.error().code); };
    QCOMPARE(code(grubbs(std::vector<double>{1, 2})), QString("too-few-readings"));
    QCOMPARE(code(grubbs(std::vector<double>{1, 2, std::numeric_limits<double>::quiet_NaN()})),
             QString("reading-not-finite"));
    QCOMPARE(code(grubbs(std::vector<double>{1, 2, 3}, 0.5)), QString("significance-out-of-range"));
  }
};

QTEST_APPLESS_MAIN(TestOutliers)
#include "tst_outliers.moc"
