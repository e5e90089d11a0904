#include "in_a_child.h"

#include <exchange/reading_proposal.h>
#include <exchange/reading_rows.h>
#include <QTemporaryDir>
#include <QtTest>
#include <fstream>

using namespace ohmkin;

/// A line of a hundred megabytes, and its kin, in a file of bench readings.
class HostileReadings : public QObject {
  Q_OBJECT
 private slots:
  void endlessLinesAreRefusedInBoundedMemory_data();
  void endlessLinesAreRefusedInBoundedMemory();
};

namespace {

class Counting : public exchange::ReadingSink {
 public:
  bool row(const exchange::ReadingRow&) override { return ++rows < 100'000'000; }
  bool rejected(const exchange::RejectedCell& cell) override { return cell.text.size() < 1000 && ++bad < 1000; }
  long rows = 0;
  long bad = 0;
};

}  // namespace

void HostileReadings::endlessLinesAreRefusedInBoundedMemory_data() {
  QTest::addColumn<QByteArray>("head");
  QTest::addColumn<char>("fill");
  QTest::newRow("one line of digits") << QByteArray("temperature,ohms\n20,") << '7';
  QTest::newRow("one line of commas") << QByteArray("temperature,ohms\n20,") << ',';
  QTest::newRow("a quote never closed") << QByteArray("temperature,ohms\n20,\"") << 'x';
  QTest::newRow("nothing but quotes") << QByteArray("temperature,ohms\n20,") << '"';
  QTest::newRow("no line end at all") << QByteArray() << 'x';
  QTest::newRow("nothing but zero bytes") << QByteArray() << '\0';
}

void HostileReadings::endlessLinesAreRefusedInBoundedMemory() {
  QFETCH(QByteArray, head);
  QFETCH(char, fill);
  const QTemporaryDir folder;
  const std::string file = folder.filePath("sly.csv").toStdString();
  {
    std::ofstream out(file, std::ios::binary);
    out.write(head.constData(), head.size());
    const std::string piece(1U << 20U, fill);
    for (int i = 0; i < 100; ++i) out.write(piece.data(), static_cast<std::streamsize>(piece.size()));
  }
  const auto child = test::inAChild([&]() -> std::string {
    const auto plan = exchange::parsePlan("temperature=1:C, resistance=2:ohm, separator=comma, heading=1");
    if (!plan) return "no plan: " + plan.error().sentence();
    std::ifstream in(file, std::ios::binary);
    Counting sink;
    const auto tally = exchange::readRows(in, *plan, "sly.csv", sink);
    return tally ? "rows " + std::to_string(sink.rows) + ", rejected " + std::to_string(sink.bad)
                 : "refused: " + tally.error().sentence();
  });
  QVERIFY2(child.ended, child.said.c_str());
  QVERIFY2(child.said.find("sly.csv") != std::string::npos || child.said.starts_with("rows 0"), child.said.c_str());
  QVERIFY2(child.said.size() < 2000, child.said.c_str());
  QVERIFY2(child.seconds < test::kMostSeconds, std::to_string(child.seconds).c_str());
  if (test::kBoundMemory) QVERIFY2(child.megabytes < 150, std::to_string(child.megabytes).c_str());
}

QTEST_APPLESS_MAIN(HostileReadings)
#include "tst_hostile_readings.moc"
