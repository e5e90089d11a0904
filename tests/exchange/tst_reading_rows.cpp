#include <exchange/reading_proposal.h>
#include <exchange/reading_rows.h>
#include <fmt/format.h>
#include <rapidcheck.h>
#include <QTest>
#include <algorithm>
#include <cmath>
#include <sstream>

#include "kept_readings.h"

using namespace ohmkin;
using namespace ohmkin::exchange;
using exchange::test::KeptReadings;

namespace {

ReadingPlan planOf(const char* text) { return *parsePlan(text); }

Expected<ReadingTally> readInto(KeptReadings& kept, const std::string& bytes, const ReadingPlan& plan) {
  std::istringstream in(bytes);
  return readRows(in, plan, "f.csv", kept);
}

/// A file that never ends is not held in memory: it is made as it is read.
class Endless : public std::streambuf {
 public:
  explicit Endless(std::string piece) : piece_(std::move(piece)) {}

 private:
  int_type underflow() override {
    setg(piece_.data(), piece_.data(), piece_.data() + piece_.size());
    return traits_type::to_int_type(piece_.front());
  }
  std::string piece_;
};

/// How somebody writes a table down.
struct Dialect {
  char separator, decimal;
  bool mark, quotes, crlf, wide;
};

std::string numberIn(const Dialect& dialect, double value) {
  std::string text = fmt::format("{}", value);
  if (dialect.decimal != '.')
    for (char& c : text)
      if (c == '.') c = dialect.decimal;
  return text;
}

std::string cellIn(const Dialect& dialect, const std::string& text, bool always) {
  const bool needed =
      text.find_first_of("\"\n\r") != std::string::npos || text.find(dialect.separator) != std::string::npos;
  if (!needed && !always && !dialect.quotes) return text;
  std::string out = "\"";
  for (const char c : text) out += c == '"' ? std::string("\"\"") : std::string(1, c);
  return out + "\"";
}

std::string encoded(const Dialect& dialect, const std::string& ascii) {
  if (!dialect.wide) return (dialect.mark ? "\xEF\xBB\xBF" : "") + ascii;
  std::string out = dialect.mark ? "\xFF\xFE" : "";
  for (const char c : ascii) (out += c) += '\0';
  return out;
}

}  // namespace

class TestReadingRows : public QObject {
  Q_OBJECT
 private slots:
  void what_is_written_in_any_dialect_is_read_back_the_same() {
    QVERIFY(rc::check([] {
      const char separator = *rc::gen::element(',', ';', '\t', '|');
      const Dialect dialect{separator,
                            *rc::gen::element('.', ','),
                            *rc::gen::arbitrary<bool>(),
                            *rc::gen::arbitrary<bool>(),
                            *rc::gen::arbitrary<bool>(),
                            *rc::gen::arbitrary<bool>()};
      const std::string end = dialect.crlf ? "\r\n" : "\n";
      std::string text = cellIn(dialect, "curve", false) + separator + "t" + separator + "r" + end;
      std::vector<KeptReadings::Row> rows;
      const int count = *rc::gen::inRange(0, 40);
      for (int i = 0; i < count; ++i) {
        KeptReadings::Row row;
        row.curve = *rc::gen::nonEmpty(
            rc::gen::container<std::string>(rc::gen::element('a', 'B', '7', '"', ',', ';', '\t', '|', '\'', '#', '.')));
        if (row.curve.find_first_not_of('\t') == std::string::npos || row.curve.front() == '\t' ||
            row.curve.back() == '\t')
          row.curve = "A" + row.curve + "Z";
        row.celsius = *rc::gen::inRange(-4000, 30000) / 100.0;
        if (*rc::gen::inRange(0, 5) > 0) row.ohms = *rc::gen::inRange(1, 900'000'000) / 1000.0;
        const std::string ohms = row.ohms ? numberIn(dialect, *row.ohms) : "OL";
        // A name that begins with a quote would be taken for a quoted cell: such a writer quotes it.
        text += cellIn(dialect, row.curve, row.curve.front() == '"') + separator +
                cellIn(dialect, numberIn(dialect, row.celsius), false) + separator + cellIn(dialect, ohms, false) + end;
        std::replace(row.curve.begin(), row.curve.end(), '\t', ' ');  // a name is one line without control characters
        rows.push_back(row);
      }
      ReadingPlan plan = planOf("curve=1, temperature=2:C, resistance=3:ohm, heading=1");
      plan.separator = separator;
      plan.decimal = dialect.decimal;
      plan.encoding = dialect.wide ? "utf-16le" : "utf-8";
      KeptReadings kept;
      const auto tally = readInto(kept, encoded(dialect, text), plan);
      RC_ASSERT(tally.has_value());
      RC_ASSERT(tally->rejected == 0U);
      RC_ASSERT(kept.rows.size() == rows.size());
      for (std::size_t i = 0; i < rows.size(); ++i) {
        RC_ASSERT(kept.rows[i].curve == rows[i].curve);
        RC_ASSERT(std::abs(kept.rows[i].celsius - rows[i].celsius) < 1e-9);
        RC_ASSERT(kept.rows[i].ohms == rows[i].ohms);
        RC_ASSERT(kept.rows[i].line == i + 2);
      }
    }));
  }
  void hostile_files_are_refused_in_one_sentence_data() {
    QTest::addColumn<QByteArray>("bytes");
    QTest::addColumn<QString>("where");
    QTest::newRow("NUL") << QByteArray("t,r\n20,480\n30,4\0 0\n", 18) << "f.csv:3:3";
    QTest::newRow("not UTF-8") << QByteArray("t,r\n20,480\n30,\xC3(\n") << "f.csv:3:3";
    QTest::newRow("a gigantic line") << QByteArray("t,r\n20,480\n") + QByteArray(200'000, '7') << "f.csv:3";
    QTest::newRow("a cell without end") << QByteArray("t,r\n20,\"480\n") + QByteArray("30,400\n").repeated(20'000)
                                        << "f.csv:2:2";
    QTest::newRow("a quote never closed") << QByteArray("t,r\n20,\"480\n30,1\n") << "f.csv:2:2";
    QTest::newRow("ten thousand columns") << QByteArray("t,r\n") + QByteArray("1,").repeated(10'000) + "\n"
                                          << "f.csv:2:257";
    QTest::newRow("a quote out of place") << QByteArray("t,r\n\"20\"x,480\n") << "f.csv:2:1";
  }
  void hostile_files_are_refused_in_one_sentence() {
    QFETCH(QByteArray, bytes);
    QFETCH(QString, where);
    KeptReadings kept;
    const auto tally = readInto(kept, bytes.toStdString(), planOf("temperature=1:C, resistance=2:ohm, heading=1"));
    QVERIFY(!tally);
    QCOMPARE(QString::fromStdString(tally.error().where), where);
    QVERIFY(!tally.error().found.empty() && !tally.error().expected.empty());
    QVERIFY(tally.error().sentence().find('\n') == std::string::npos);
  }
  void text_broken_off_or_not_in_its_encoding_is_refused_with_its_line() {
    KeptReadings kept;
    ReadingPlan plan = planOf("temperature=1:C, resistance=2:ohm, encoding=utf-16le");
    std::string wide;
    for (const char c : std::string("20,480\n30,400\n")) (wide += c) += '\0';
    QVERIFY(readInto(kept, wide, plan).has_value());
    const auto halved = readInto(kept, wide + "4", plan);
    QVERIFY(!halved && halved.error().where == "f.csv:3");
    const auto lone = readInto(kept, wide + "\x01\xDC\x20\x20", plan);  // a low surrogate alone
    QVERIFY(!lone && lone.error().where == "f.csv:3");
    plan.encoding = "windows-1252";  // 81 is no character of it
    const auto unused = readInto(kept, "20,480\n30,\x81\n", plan);
    QVERIFY(!unused && unused.error().where == "f.csv:2");
  }
  void the_sink_ends_the_reading_and_memory_does_not_grow_with_the_file() {
    Endless endless("20,480\n30,400\n");
    std::istream in(&endless);
    KeptReadings kept(100'000);
    const auto tally = readRows(in, planOf("temperature=1:C, resistance=2:ohm"), "f.csv", kept);
    QVERIFY(tally && tally->stopped);
    QCOMPARE(tally->rows, std::uint64_t{100'000});
    QVERIFY(tally->bytes < 2'000'000);  // it does not read far ahead
  }
  void a_rejected_cell_says_what_stands_there_and_what_was_expected() {
    KeptReadings kept;
    const auto tally = readInto(kept, "20;480\n30;4 80\x07\n40;1.234,5\n",
                                planOf("temperature=1:C, resistance=2:kohm, separator=semicolon, decimal=comma"));
    QVERIFY(tally);
    QCOMPARE(tally->rejected, std::uint64_t{2});
    const Refusal refusal = kept.rejects.front().refusal("f.csv");
    QCOMPARE(refusal.where, std::string("f.csv:2:2"));
    QCOMPARE(refusal.found, std::string("'4 80\\x07'"));
    QVERIFY(refusal.expected.find("kΩ above 0") != std::string::npos);
  }
  void the_clock_goes_on_past_midnight_and_a_stopwatch_counts_minutes() {
    KeptReadings kept;
    QVERIFY(readInto(kept, "23:59:50,20,480\n00:00:10,21,470\n",
                     planOf("time=1:clock, temperature=2:C, resistance=3:ohm")));
    QCOMPARE(*kept.rows[1].seconds - *kept.rows[0].seconds, 20.0);
    KeptReadings stopwatch;
    QVERIFY(readInto(stopwatch, "5:30,20,480\n61:05.5,21,470\n1:02:00,22,460\n",
                     planOf("time=1:mmss, temperature=2:C, resistance=3:ohm")));
    QCOMPARE(*stopwatch.rows[0].seconds, 330.0);
    QCOMPARE(*stopwatch.rows[1].seconds, 3665.5);
    QCOMPARE(*stopwatch.rows[2].seconds, 3720.0);
  }
};

QTEST_APPLESS_MAIN(TestReadingRows)
#include "tst_reading_rows.moc"
