#include <exchange/reading_proposal.h>
#include <fmt/format.h>
#include <QDir>
#include <QTest>
#include <algorithm>
#include <cmath>
#include <fstream>
#include <sstream>

#include "kept_readings.h"

using namespace ohmkin;
using namespace ohmkin::exchange;
using exchange::test::KeptReadings;

/// Every file of tests/data/awkward-csv is read as the .expected beside it says; both were written by hand. Its lines:
///   plan ITEM               the proposed plan, written out, has this item
///   question CODE           is asked; without such lines nothing may be asked
///   refusal CODE WHERE      proposing or reading refuses with these
///   row LINE CURVE|°C|OHMS or OL[|SECONDS][|heating or cooling]
///   reject LINE:COLUMN CODE
class TestAwkwardCsv : public QObject {
  Q_OBJECT

  static std::string bytesOf(const QString& path) {
    std::ifstream file(path.toStdString(), std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
  }

  static std::string number(double value) { return fmt::format("{:.9g}", value); }

  static std::string rowText(const KeptReadings::Row& row) {
    std::string text =
        fmt::format("row {} {}|{}|{}", row.line, row.curve, number(std::round(row.celsius * 1e9) / 1e9 + 0.0),
                    row.ohms ? number(*row.ohms) : "OL");
    if (row.seconds || row.run != Run::unknown)
      text += "|" + (row.seconds ? fmt::format("{:.10g}", *row.seconds) : std::string());
    if (row.run != Run::unknown) text += row.run == Run::heating ? "|heating" : "|cooling";
    return text;
  }

  /// What came of the file, in the words of the .expected.
  static std::vector<std::string> outcome(const std::string& bytes, const std::string& name, std::string& plan) {
    std::vector<std::string> lines;
    const auto refusal = [&](const Refusal& why) {
      lines.push_back(fmt::format("refusal {} {}", why.code, why.where));
    };
    const auto proposal = propose(bytes, name, {TemperatureUnit::celsius, true});
    if (!proposal) {
      refusal(proposal.error());
      return lines;
    }
    plan = planText(proposal->plan);
    for (const PlanQuestion& question : proposal->questions) lines.push_back("question " + question.code);
    KeptReadings kept;
    std::istringstream in(bytes);
    const auto read = readRows(in, proposal->plan, name, kept);
    for (const auto& row : kept.rows) lines.push_back(rowText(row));
    for (const auto& cell : kept.rejects)
      lines.push_back(fmt::format("reject {}:{} {}", cell.line, cell.column, cell.code));
    if (!read) refusal(read.error());
    return lines;
  }

 private slots:
  void each_file_is_read_as_written_beside_it_data() {
    QTest::addColumn<QString>("path");
    const QDir folder(OHMKIN_TEST_DATA "/awkward-csv");
    const QStringList files = folder.entryList({"*.csv"}, QDir::Files, QDir::Name);
    QVERIFY(files.size() >= 40);
    for (const QString& file : files) QTest::newRow(qPrintable(file)) << folder.filePath(file);
  }
  void each_file_is_read_as_written_beside_it() {
    QFETCH(QString, path);
    std::string plan;
    const std::string name = path.section('/', -1).toStdString();
    const std::vector<std::string> found = outcome(bytesOf(path), name, plan);
    std::istringstream expected(bytesOf(path.chopped(4) + ".expected"));
    std::vector<std::string> wanted;
    std::string wantedText;
    for (std::string line; std::getline(expected, line);) {
      if (line.starts_with("plan "))
        QVERIFY2(QStringLiteral(", %1,").arg(plan.c_str()).contains(QStringLiteral(" %1,").arg(line.substr(5).c_str())),
                 qPrintable(QStringLiteral("%1 is not in: %2").arg(line.c_str(), plan.c_str())));
      else wanted.push_back(line);
    }
    std::string foundText;
    for (const std::string& line : found) foundText += line + "\n";
    for (const std::string& line : wanted) wantedText += line + "\n";
    QVERIFY2(!wanted.empty(), "nothing is expected of this file");
    QVERIFY2(found == wanted, ("\n" + plan + "\nfound:\n" + foundText + "expected:\n" + wantedText).c_str());
  }
};

QTEST_APPLESS_MAIN(TestAwkwardCsv)
#include "tst_awkward_csv.moc"
