#include <dating/calendar.h>
#include <dating/decode.h>
#include <QTest>
#include <algorithm>
#include <map>
#include <random>
#include <set>

#include "reference_table.h"
#include "usual_layouts.h"

using namespace ohmkin;
using namespace ohmkin::dating;
using dating::test::usualLayout;
using dating::test::usualLayouts;
using std::chrono::days;

namespace {

const DateSpan kFiftyYears{date(1950, 1, 1), date(2001, 1, 1)};

QString q(const std::string& text) { return QString::fromStdString(text); }

DecodeOptions within(DateSpan window) {
  DecodeOptions options;
  options.window = window;
  return options;
}

std::optional<Reading> readingOf(const Decoded& decoded, Date day) {
  const auto r =
      std::ranges::find_if(decoded.readings, [&](const Reading& x) { return x.from <= day && day < x.until; });
  return r == decoded.readings.end() ? std::nullopt : std::optional(*r);
}

bool has(const Decoded& decoded, const char* code) {
  return std::ranges::any_of(decoded.findings, [&](const Finding& f) { return f.code == code; });
}

std::string sentences(const Decoded& decoded) {
  std::string all;
  for (const Finding& f : decoded.findings) all += f.sentence + "\n";
  return all;
}

std::string withoutSpaces(std::string text) {
  std::erase(text, ' ');
  return text;
}

/// The other way round, for checking: every day is written out in every way and compared with the text character by
/// character. Knows nothing of places, paths or fields being looked for.
class BruteForce {
 public:
  explicit BruteForce(const Layout& layout) {
    for (Date day = *kFiftyYears.from; day < *kFiftyYears.until; day += days{1})
      spelled_.push_back(spellings(layout, day));
  }

  /// Fewest look-alikes for each day that can be meant, at most two. Spaces are left out of the comparison.
  [[nodiscard]] std::map<Date, int> daysOf(const std::string& text) const {
    std::map<Date, int> meant;
    const std::string seen = withoutSpaces(text);
    for (std::size_t i = 0; i < spelled_.size(); ++i)
      for (const std::string& spelling : spelled_[i]) {
        const int swaps = compare(seen, spelling);
        if (swaps > 2) continue;
        const auto [known, fresh] = meant.emplace(*kFiftyYears.from + days{static_cast<int>(i)}, swaps);
        if (!fresh) known->second = std::min(known->second, swaps);
      }
    return meant;
  }

 private:
  static int compare(const std::string& seen, const std::string& spelling) {
    // Pairs as listed by the trade (general knowledge from memory, no source), and four that are typed for each other.
    static const std::set<std::string> pairs{"38", "17", "69", "0D", "2Z", "56", "08",
                                             "CG", "EF", "MW", "0O", "1I", "5S", "8B"};
    if (seen.size() != spelling.size()) return 99;
    int swaps = 0;
    for (std::size_t i = 0; i < seen.size(); ++i) {
      if (seen[i] == spelling[i] || seen[i] == '?') continue;
      if (!pairs.contains({seen[i], spelling[i]}) && !pairs.contains({spelling[i], seen[i]})) return 99;
      ++swaps;
    }
    return swaps;
  }

  /// encode() for each field alone, optional ones and separators in and out, with and without a leading zero.
  static std::set<std::string> spellings(const Layout& layout, Date day) {
    std::set<std::string> all{""};
    for (const Field& field : layout.fields) {
      std::set<std::string> forms;
      const bool separator = field.kind == FieldKind::separator;
      if (field.optional || separator) forms.insert("");
      if (separator || field.kind == FieldKind::shift) {
        const std::string set = !field.text.empty() ? field.text : separator ? " -./" : "ABCDEFGHIJKLMNOPQRSTUVWXYZ";
        for (const char c : set) forms.insert(c == ' ' ? "" : std::string(1, c));
      } else if (partIsYear(field) && hasWeek(layout)) {
        forms.insert(encode({"", "", FoundOn::head, {field, {FieldKind::week, ""}}}, day).substr(0, yearWidth(field)));
      } else {
        const std::string usual = encode({"", "", FoundOn::head, {field}}, day);
        forms.insert(usual);
        const bool number = field.kind == FieldKind::day || field.kind == FieldKind::monthNumber;
        if (number && usual.size() == 1) forms.insert("0" + usual);
        if (field.kind == FieldKind::clockDial) forms.insert("(" + std::to_string(usual.size()) + ")");
      }
      std::set<std::string> longer;
      for (const std::string& begun : all)
        for (const std::string& form : forms) longer.insert(begun + form);
      all = std::move(longer);
    }
    return all;
  }
  static bool partIsYear(const Field& f) {
    return f.kind == FieldKind::yearDigit || f.kind == FieldKind::yearTwoDigits || f.kind == FieldKind::yearFourDigits;
  }
  static bool hasWeek(const Layout& layout) {
    return std::ranges::any_of(layout.fields, [](const Field& f) { return f.kind == FieldKind::week; });
  }
  static std::size_t yearWidth(const Field& f) {
    return f.kind == FieldKind::yearDigit ? 1 : f.kind == FieldKind::yearTwoDigits ? 2 : 4;
  }

  std::vector<std::set<std::string>> spelled_;
};

/// A code as it comes over the counter: characters unreadable, mistaken, left out, put in.
std::string damaged(std::string code, std::mt19937& random) {
  const auto below = [&](std::size_t n) { return std::uniform_int_distribution<std::size_t>(0, n - 1)(random); };
  static const std::string characters = "0123456789ABCDEFGIJMLOSWZ?-. /";
  for (std::size_t wounds = below(4); wounds > 0; --wounds) {
    const std::size_t place = below(code.size());
    switch (below(5)) {
      case 0:
      case 1:
        code[place] = '?';
        break;
      case 2:
        code[place] = characters[below(characters.size())];
        break;
      case 3:
        if (code.size() > 2) code.erase(place, 1);
        break;
      default:
        code.insert(place, 1, characters[below(characters.size())]);
    }
  }
  return code;
}

}  // namespace

class TestDecode : public QObject {
  Q_OBJECT
 private slots:
  void every_day_of_fifty_years_is_read_back_data() {
    QTest::addColumn<QString>("id");
    for (const Layout& layout : usualLayouts()) QTest::newRow(layout.id.c_str()) << q(layout.id);
  }
  void every_day_of_fifty_years_is_read_back() {
    QFETCH(QString, id);
    const Layout layout = *checkedLayout(usualLayout(id.toStdString()));
    DecodeOptions options = within(kFiftyYears);
    options.mostSwapped = 0;
    options.turnedToo = false;
    for (Date day = *kFiftyYears.from; day < *kFiftyYears.until; day += days{1}) {
      const std::string code = encode(layout, day);
      const auto decoded = decode(layout, code, options);
      QVERIFY2(decoded, code.c_str());
      const std::optional<Reading> reading = readingOf(*decoded, day);
      QVERIFY2(reading.has_value() && reading->plain() && reading->weight == 1, code.c_str());
      // And nothing else is read: every day named is written the same.
      for (const Reading& r : decoded->readings) {
        QCOMPARE(encode(layout, r.from), code);
        QCOMPARE(encode(layout, r.until - days{1}), code);
      }
    }
  }

  void readings_are_those_of_brute_force_data() { every_day_of_fifty_years_is_read_back_data(); }
  void readings_are_those_of_brute_force() {
    QFETCH(QString, id);
    const Layout layout = *checkedLayout(usualLayout(id.toStdString()));
    const BruteForce bruteForce(layout);
    std::mt19937 random(1959);
    DecodeOptions options = within(kFiftyYears);
    options.turnedToo = false;
    options.spacingWeight = 1;  // the other side does not look at spaces
    int meaningful = 0;
    for (int i = 0; i < 60; ++i) {
      const Date day = *kFiftyYears.from + days{std::uniform_int_distribution<int>(0, 18627)(random)};
      const std::string code = damaged(encode(layout, day), random);
      const auto decoded = decode(layout, code, options);
      if (!decoded) {
        const std::string bare = withoutSpaces(code);
        QVERIFY2(bare.find_first_not_of('?') == std::string::npos, code.c_str());
        continue;
      }
      std::map<Date, double> read;
      for (const Reading& r : decoded->readings)
        for (Date d = r.from; d < r.until; d += days{1}) read[d] = std::max(read[d], r.weight);
      const std::map<Date, int> expected = bruteForce.daysOf(code);
      QVERIFY2(read.size() == expected.size(),
               qPrintable(QString("%1: %2 days, brute force %3").arg(q(code)).arg(read.size()).arg(expected.size())));
      for (const auto& [d, swaps] : expected) {
        QVERIFY2(read.contains(d), (code + " " + isoDate(d)).c_str());
        QVERIFY2(std::abs(read[d] - std::pow(options.swappedWeight, swaps)) < 1e-12, (code + " " + isoDate(d)).c_str());
      }
      meaningful += !expected.empty();
    }
    QVERIFY(meaningful > 20);
  }

  void a_year_digit_gives_one_date_in_each_decade() {
    const auto decoded = decode(usualLayout("letter-day-digit"), "C145", within(kFiftyYears));
    QVERIFY(decoded);
    std::vector<int> years;
    for (const Reading& r : decoded->readings)
      if (r.plain()) years.push_back(parts(r.from).year);
    QCOMPARE(years, (std::vector<int>{1955, 1965, 1975, 1985, 1995}));
    QVERIFY(decoded->findings.empty());
  }
  void small_letters_missing_spaces_and_zeros_are_understood() {
    const Layout layout = usualLayout("letter-day-digit-spaced");
    for (const char* code : {"c 14 5", "C14 5", "C145", "  C\t14   5 ", "c-14-5", "C 1 4 5", "C – 14 – 5"}) {
      const auto decoded = decode(layout, code, within(kFiftyYears));
      QVERIFY2(decoded, code);
      const std::optional<Reading> reading = readingOf(*decoded, date(1975, 3, 14));
      QVERIFY2(reading.has_value() && reading->swapped == 0 && reading->weight >= 0.8, code);
    }
    const auto small = decode(layout, "c14 5", within(kFiftyYears));
    const std::optional<Reading> reading = readingOf(*small, date(1975, 3, 14));
    QVERIFY(reading->lowerCase && reading->spacing);
    QCOMPARE(assumptions(*small, *reading).size(), std::size_t(2));
    QVERIFY(
        readingOf(*decode(usualLayout("letter-day-digit"), "C045", within(kFiftyYears)), date(1975, 3, 4))->plain());
  }
  void unreadable_characters_are_filled_with_all_that_fit() {
    const auto decoded = decode(usualLayout("letter-day-digit"), "?315", within({date(1970, 1, 1), date(1980, 1, 1)}));
    QVERIFY(decoded);
    // Months with a 31st; no calendar but the rhyme is needed.
    std::set<int> months;
    for (const Reading& r : decoded->readings)
      if (r.turned == Turned::upright && r.swapped == 0 && parts(r.from).day == 31) months.insert(parts(r.from).month);
    QCOMPARE(months, (std::set<int>{1, 3, 5, 7, 8, 10, 12}));
    QVERIFY(assumptions(*decoded, decoded->readings.front()).front().starts_with("unreadable character taken as"));
  }
  void look_alikes_are_offered_below_the_plain_reading() {
    const auto decoded = decode(usualLayout("letter-day-digit"), "C38", within(kFiftyYears));
    QVERIFY(decoded);
    QCOMPARE(decoded->readings.front().from, date(1958, 3, 3));
    const std::optional<Reading> other = readingOf(*decoded, date(1973, 7, 3));  // G for C, 3 for 8
    QVERIFY(other.has_value() && other->swapped == 2);
    QCOMPARE(other->weight, 0.05 * 0.05);
    QCOMPARE(q(assumptions(*decoded, *other).front()), QString("C read as G"));
  }

  void the_31st_of_june_is_explained() {
    const auto decoded = decode(usualLayout("letter-day-digit"), "F315", within({date(1970, 1, 1), date(1980, 1, 1)}));
    QVERIFY(decoded);
    QVERIFY(has(*decoded, "date-impossible"));
    QVERIFY2(sentences(*decoded).find("31 June does not exist: June has 30 days.") != std::string::npos,
             sentences(*decoded).c_str());
    QVERIFY(has(*decoded, "date-nearest-reading"));
    QVERIFY(readingOf(*decoded, date(1975, 5, 31)).has_value());  // E for F
    QVERIFY(std::ranges::none_of(decoded->readings, [](const Reading& r) { return r.plain(); }));
  }
  void what_cannot_be_is_explained_data() {
    QTest::addColumn<QString>("id");
    QTest::addColumn<QString>("code");
    QTest::addColumn<QString>("words");
    QTest::newRow("month letter") << "letter-day-digit"
                                  << "N145"
                                  << "Month letter N is out of range: this layout goes from A to L.";
    QTest::newRow("I left out") << "no-i"
                                << "I 05 69"
                                << "Month letter I is out of range";
    QTest::newRow("no month 13") << "six-digits"
                                 << "134477"
                                 << "There is no month 13.";
    QTest::newRow("no day 32") << "six-digits"
                               << "123277"
                               << "There is no day 32 in any month.";
    QTest::newRow("29 February of a common year") << "six-digits"
                                                  << "022971"
                                                  << "29 February does not exist in a year ending in 71";
    QTest::newRow("29 February, odd digit") << "letter-day-digit"
                                            << "B295"
                                            << "29 February does not exist in a year ending in 5";
    QTest::newRow("day 366") << "day-of-year-shift"
                             << "71366"
                             << "Day 366 does not exist in a year ending in 71";
    QTest::newRow("day 367") << "day-of-year"
                             << "2367"
                             << "There is no day 367 of a year";
    QTest::newRow("week 54") << "week"
                             << "545"
                             << "There is no week 54";
    QTest::newRow("week 53 of a short year") << "week-weekday"
                                             << "1985W535"
                                             << "Week 53 does not exist in the year 1985";
    QTest::newRow("wrong weekday") << "weekday-checked"
                                   << "01010Q"
                                   << "'Q' is left over";
    QTest::newRow("weekday that does not agree") << "weekday-checked"
                                                 << "04125W"
                                                 << "does not agree";
    QTest::newRow("outside the window") << "day-letter-four"
                                        << "14C2021"
                                        << "reads as a date in the year 2021, but not between";
    QTest::newRow("too long") << "letter-day-digit"
                              << "C14578"
                              << "The code has 6 characters; this layout has at most 4.";
    QTest::newRow("too short") << "six-digits"
                               << "0204"
                               << "The code ends where the year two digits should stand";
    QTest::newRow("foreign") << "letter-day-digit"
                             << "Ж145"
                             << "'Ж' is no character of a date code";
  }
  void what_cannot_be_is_explained() {
    QFETCH(QString, id);
    QFETCH(QString, code);
    QFETCH(QString, words);
    DecodeOptions options = within({date(1955, 1, 1), date(1990, 1, 1)});
    const auto decoded = decode(usualLayout(id.toStdString()), code.toStdString(), options);
    QVERIFY(decoded);
    QVERIFY2(q(sentences(*decoded)).contains(words), sentences(*decoded).c_str());
    QVERIFY(std::ranges::none_of(decoded->readings, [](const Reading& r) { return r.plain(); }));
  }
  void the_nearest_legible_text_is_offered_where_nothing_reads() {
    DecodeOptions options = within({date(1970, 1, 1), date(1980, 1, 1)});
    const auto decoded = decode(usualLayout("letter-day-digit"), "N145", options);
    QVERIFY(decoded);
    QVERIFY(decoded->readings.empty());
    QVERIFY(decoded->nearest);
    QCOMPARE(decoded->nearest->from, date(1975, 12, 14));  // L, the nearest letter that is a month
  }

  void leap_days_and_year_ends_are_exact() {
    const auto leap = decode(usualLayout("letter-day-digit"), "B296", within(kFiftyYears));
    std::vector<Date> read;
    for (const Reading& r : leap->readings)
      if (r.plain()) read.push_back(r.from);
    QCOMPARE(read, (std::vector<Date>{date(1956, 2, 29), date(1976, 2, 29), date(1996, 2, 29)}));
    // ISO 8601: 31 December 1996 lies in week 1 of 1997 (tests/data/dates.csv), and 1 January 1995 in week 52 of 1994.
    const auto week = decode(usualLayout("week-weekday"), "1997-W01-2", within(kFiftyYears));
    QCOMPARE(week->readings.front().from, date(1996, 12, 31));
    QCOMPARE(decode(usualLayout("week-weekday"), "1994-W52-7", within(kFiftyYears))->readings.front().from,
             date(1995, 1, 1));
    QCOMPARE(decode(usualLayout("day-of-year-shift"), "72366A", within(kFiftyYears))->readings.front().from,
             date(1972, 12, 31));
    QCOMPARE(decode(usualLayout("day-of-year-shift"), "00001", within(kFiftyYears))->readings.front().from,
             date(2000, 1, 1));
  }
  void layouts_without_a_day_give_the_month_or_week() {
    const auto month = decode(usualLayout("fixed"), "KR2*8", within({date(1970, 1, 1), date(1990, 1, 1)}));
    QVERIFY(month);
    QCOMPARE(q(plainReading(month->readings[0])), QString("Feb 1978"));
    QCOMPARE(month->readings[0].until, date(1978, 3, 1));
    QCOMPARE(q(plainReading(month->readings[1])), QString("Feb 1988"));
    const auto week = decode(usualLayout("week"), "155", within({date(1980, 1, 1), date(1990, 1, 1)}));
    QCOMPARE(q(plainReading(week->readings[0])),
             QString("week of 8 Apr 1985"));  // 12 April 1985 is 1985-W15-5 (ISO 8601)
  }
  void a_dial_is_read_by_its_dots_or_its_hour() {
    const Layout layout = *checkedLayout(usualLayout("dial"));
    for (const char* code : {"71 .....", "71.....", "71 (5)", "71-(5)", "71 •••••", "71 . . . . ."}) {
      const auto decoded = decode(layout, code, within(kFiftyYears));
      QVERIFY2(decoded && !decoded->readings.empty(), code);
      QCOMPARE(decoded->readings.front().from, date(1971, 5, 1));
      QCOMPARE(decoded->readings.front().until, date(1971, 6, 1));
    }
  }
  void a_code_held_upside_down_is_turned() {
    // 19 Jan 1966 as 011966; half a turn makes 996110 of it.
    const auto decoded = decode(usualLayout("six-digits"), "996110", within(kFiftyYears));
    const std::optional<Reading> reading = readingOf(*decoded, date(1966, 1, 19));
    QVERIFY(reading.has_value());
    QVERIFY(reading->turned == Turned::upsideDown);
    QCOMPARE(q(reading->taken), QString("011966"));
    QCOMPARE(q(assumptions(*decoded, *reading).front()), QString("upside down"));
    QVERIFY(has(*decoded, "date-impossible"));
    // M for September turned is W: December-style letters, 6 for 9.
    const auto letter = decode(usualLayout("no-i"), "69 11 W", within({date(1960, 1, 1), date(1970, 1, 1)}));
    const std::optional<Reading> december = readingOf(*letter, date(1969, 12, 11));
    QVERIFY(december.has_value() && december->turned == Turned::upsideDown && !december->spacing);
  }
  void a_mirrored_casting_is_read_backwards() {
    const auto decoded = decode(usualLayout("letter-day-digit"), "541C", within({date(1970, 1, 1), date(1980, 1, 1)}));
    const std::optional<Reading> reading = readingOf(*decoded, date(1975, 3, 14));
    QVERIFY(reading.has_value() && reading->turned == Turned::mirrored);
    const auto threeForE =
        decode(usualLayout("letter-day-digit"), "5413", within({date(1970, 1, 1), date(1980, 1, 1)}));
    QVERIFY(readingOf(*threeForE, date(1975, 5, 14)).has_value());
    DecodeOptions upright = within({date(1970, 1, 1), date(1980, 1, 1)});
    upright.turnedToo = false;
    QVERIFY(decode(usualLayout("letter-day-digit"), "541C", upright)->readings.empty());
  }

  void malformed_input_is_refused_in_a_sentence() {
    const Layout layout = usualLayout("letter-day-digit");
    const auto code = [&](const std::string& text, const DecodeOptions& options = {}) {
      const auto decoded = decode(layout, text, options);
      return decoded ? std::string("taken") : decoded.error().code;
    };
    QCOMPARE(q(code("")), QString("code-empty"));
    QCOMPARE(q(code(" \t \n")), QString("code-empty"));
    QCOMPARE(q(code("????")), QString("code-unreadable"));
    QCOMPARE(q(code(std::string(10'001, 'C'))), QString("code-too-long"));
    QVERIFY(decode(layout, std::string(10'001, 'C')).error().sentence().size() < 200);
    QCOMPARE(q(code("C145", within({date(1980, 1, 1), date(1970, 1, 1)}))), QString("dates-reversed"));
    QCOMPARE(q(code("C145", within({date(1601, 1, 1), date(1990, 1, 1)}))), QString("dates-too-wide"));
    QCOMPARE(q(code("C145", within({Date::min(), Date::max()}))), QString("dates-too-wide"));
    DecodeOptions weights;
    weights.swappedWeight = 0;
    QCOMPARE(q(code("C145", weights)), QString("weight-out-of-range"));
    QVERIFY(!decode({"broken", "", FoundOn::head, {{FieldKind::day, ""}}}, "14", {}));
    QVERIFY(decode(layout, std::string("C1\0", 3) + "45"));
  }
  /// Any bytes: nothing read but sentences, and an end. The largest that are looked at, and many small ones.
  void hostile_bytes_come_to_an_end() {
    std::mt19937 random(1959);
    for (const Layout& layout : usualLayouts()) {
      for (const std::string& text :
           {std::string(10'000, '?') + "", std::string(9'999, '?') + "C", std::string(10'000, '.'),
            std::string(10'000, '\xff'), std::string(9'999, ' ') + "1"}) {
        const auto decoded = decode(layout, text);
        QVERIFY(!decoded || !decoded->findings.empty() || !decoded->readings.empty());
      }
      for (int i = 0; i < 300; ++i) {
        std::string bytes(std::uniform_int_distribution<std::size_t>(1, 12)(random), ' ');
        for (char& c : bytes) c = static_cast<char>(std::uniform_int_distribution<int>(0, 255)(random));
        const auto decoded = decode(layout, bytes);
        QVERIFY(!decoded || !decoded->findings.empty() || !decoded->readings.empty());
      }
    }
    // Almost nothing legible, over the widest window and the loosest layout.
    const auto loose = decode(usualLayout("slashes"), "?/?????", within({date(1700, 1, 1), date(1999, 1, 1)}));
    QVERIFY(loose || loose.error().code == "code-too-little-legible");
  }
};

QTEST_APPLESS_MAIN(TestDecode)
#include "tst_decode.moc"
