#include <exchange/moment.h>
#include <exchange/reading_cell.h>
#include <exchange/reading_rows.h>
#include <exchange/record_reader.h>
#include <exchange/run_words.h>
#include <exchange/sample_table.h>
#include <exchange/shown.h>
#include <exchange/unit_words.h>
#include <fmt/format.h>
#include <algorithm>
#include <cmath>
#include <map>

namespace ohmkin::exchange {
namespace {

constexpr std::size_t kLongestName = 200;       // bytes of a curve's name
constexpr std::uint64_t kProgressEvery = 8192;  // rows between two looks at the bytes taken
constexpr double kHalfADay = 43'200;            // s

/// A resistance column and the thermometer that belongs to it: the nearest one on its left, else the first.
struct Pair {
  std::size_t temperature = 0;
  std::size_t resistance = 0;
  std::string heading;
};

class RowReader {
 public:
  RowReader(std::istream& in, const ReadingPlan& plan, std::string_view file, ReadingSink& sink)
      : plan_(plan),
        marks_{plan.decimal, plan.thousands},
        sink_(sink),
        source_(in, plan.encoding),
        records_(source_, plan.separator, plan.carriageReturns, file) {
    std::size_t thermometer = plan.with(Role::temperature).front();
    for (std::size_t i = 0; i < plan.columns.size(); ++i) {
      if (plan.columns[i].role == Role::temperature) thermometer = i;
      if (plan.columns[i].role == Role::resistance) pairs_.push_back({thermometer, i, {}});
    }
    const auto only = [&](Role role) {
      const auto columns = plan.with(role);
      return columns.empty() ? std::nullopt : std::optional(columns.front());
    };
    time_ = only(Role::time);
    curve_ = only(Role::curve);
    direction_ = only(Role::direction);
    if (plan.blankLineParts) part_ = "1";
    if (plan.heading == 0) tellApart();
  }

  Expected<ReadingTally> read() {
    if (const auto begun = preamble(); !begun) return tl::make_unexpected(begun.error());
    bool go = true;
    while (go) {
      const auto more = records_.next(record_);
      if (!more) return tl::make_unexpected(more.error());
      if (!*more) break;
      go = take() && (++taken_ % kProgressEvery != 0 || sink_.progress(source_.bytes()));
    }
    tally_.stopped = !go || !sink_.progress(source_.bytes());
    tally_.lines = records_.lines();
    tally_.bytes = source_.bytes();
    return tally_;
  }

 private:
  Expected<void> preamble() {
    for (std::size_t i = 0; i < plan_.skip; ++i) {
      const auto more = records_.nextLine(record_);
      if (!more) return tl::make_unexpected(more.error());
      if (!*more) return {};
      // A title right above the heading names the first part, as titles further down name theirs.
      const std::string_view title = trimmedCell(record_.text);
      if (plan_.blankLineParts && i + 1 == plan_.skip && !title.empty() &&
          title.find(plan_.separator) == std::string_view::npos)
        part_ = oneLine(title);
    }
    for (std::size_t i = 0; i < plan_.heading; ++i) {
      const auto more = records_.next(record_);
      if (!more) return tl::make_unexpected(more.error());
      if (!*more) return {};
      if (i == 0) takeHeading();
    }
    return {};
  }

  void takeHeading() {
    heading_.assign(record_.cells.begin(), record_.cells.end());
    if (pairs_.size() < 2) return;
    const std::vector<std::string> names =
        headingNames(heading_, record_.text, plan_.separator, plan_.comment, plan_.columns.size());
    for (Pair& pair : pairs_) {
      const std::string_view name =
          pair.resistance < names.size() ? trimmedCell(names[pair.resistance]) : std::string_view();
      pair.heading = oneLine(name);
    }
    tellApart();
  }

  /// Two curves never share a name: without headings, or under the same one, the column tells them apart.
  void tellApart() {
    if (pairs_.size() < 2) return;
    std::map<std::string, int> times;
    for (const Pair& pair : pairs_) ++times[pair.heading];
    for (Pair& pair : pairs_)
      if (pair.heading.empty() || times[pair.heading] > 1)
        pair.heading += fmt::format("{}column {}", pair.heading.empty() ? "" : ", ", pair.resistance + 1);
  }

  /// A curve's name is one line, and not longer than kLongestName.
  static std::string oneLine(std::string_view text) {
    text = text.substr(0, kLongestName);
    std::string out(text.substr(0, brokenUtf8At(text)));
    for (char& c : out)
      if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) c = ' ';
    return out;
  }

  bool take() {
    if (record_.blank()) {
      partEnds_ = plan_.blankLineParts && partHasRows_;
      return true;
    }
    if (record_.text == "\x1A") return passOver();  // DOS wrote it at the end of a text
    if (!plan_.comment.empty() && trimmedCell(record_.text).starts_with(plan_.comment)) return passOver();
    if (!heading_.empty() && record_.cells.size() == heading_.size() &&
        std::equal(heading_.begin(), heading_.end(), record_.cells.begin())) {
      partEnds_ = plan_.blankLineParts && partHasRows_;
      return passOver();
    }
    if (partEnds_) beginPart();
    if (plan_.blankLineParts && !partHasRows_ && namesPart()) return passOver();
    return readings();
  }

  bool passOver() {
    ++tally_.passedOver;
    return true;
  }

  void beginPart() {
    partEnds_ = partHasRows_ = false;
    part_ = std::to_string(++parts_);
    lastClock_.reset();
    days_ = 0;
  }

  /// A line of one cell, not a number, at the head of a part is the curve's name.
  bool namesPart() {
    std::string_view only;
    for (const std::string_view cell : record_.cells) {
      const std::string_view text = trimmedCell(cell);
      if (text.empty()) continue;
      if (!only.empty()) return false;
      only = text;
    }
    if (bareNumber(only, marks_) || isOverload(only, marks_) || only.size() > kLongestName) return false;
    part_ = oneLine(only);
    return true;
  }

  [[nodiscard]] std::string_view cell(std::size_t column) const {
    return column < record_.cells.size() ? record_.cells[column] : std::string_view();
  }

  bool readings() {
    ReadingRow row;
    row.line = record_.line;
    row.curve = part_;
    partHasRows_ = true;
    if (curve_ && !readCurve(row)) return tellLast();
    if (time_ && !readTime(row)) return tellLast();
    if (direction_ && !readDirection(row)) return tellLast();
    for (const Pair& pair : pairs_)
      if (!reading(pair, row)) return false;
    return true;
  }

  bool readCurve(ReadingRow& row) {
    std::string_view name = trimmedCell(cell(*curve_));
    if (name.size() > kLongestName)
      return complain(*curve_, "curve-unreadable", fmt::format("a curve's name of at most {} bytes", kLongestName));
    if (std::any_of(name.begin(), name.end(),
                    [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; })) {
      name_ = oneLine(name);
      name = name_;
    }
    // A name only on a curve's first row, as merged cells are written out, goes on to the rows below.
    if (name.empty()) {
      if (lastName_.empty()) return complain(*curve_, "curve-unreadable", "a curve's name");
    } else if (name != lastName_) {
      lastName_ = name;
      lastClock_.reset();
      days_ = 0;
    }
    row.curve = lastName_;
    return true;
  }

  bool readTime(ReadingRow& row) {
    const ColumnUnit unit = plan_.columns[*time_].unit;
    const auto seconds = momentCell(cell(*time_), unit, marks_);
    if (!seconds || !std::isfinite(*seconds))
      return complain(*time_, "time-unreadable", fmt::format("a time in {}", unitName(unit)));
    if (unit == ColumnUnit::clock) {
      if (lastClock_ && *seconds + kHalfADay < *lastClock_) days_ += 86'400;
      lastClock_ = *seconds;
    }
    row.seconds = *seconds + days_;
    return true;
  }

  bool readDirection(ReadingRow& row) {
    const std::string_view word = trimmedCell(cell(*direction_));
    const auto run = word.empty() ? std::optional(Run::unknown) : runWord(word);
    if (!run) return complain(*direction_, "direction-unknown", "heating or cooling");
    row.run = *run;
    return true;
  }

  bool reading(const Pair& pair, ReadingRow& row) {
    const std::string_view ohmsText = cell(pair.resistance);
    if (pairs_.size() > 1 && trimmedCell(ohmsText).empty())
      return true;  // not every curve has been read at every temperature
    const auto kelvins = temperatureCell(cell(pair.temperature), plan_.columns[pair.temperature].unit, marks_);
    if (!kelvins) return complain(pair.temperature, kelvins.error().code, kelvins.error().expected) || tellLast();
    const auto r = ohmsCell(ohmsText, plan_.columns[pair.resistance].unit, marks_);
    if (!r) return complain(pair.resistance, r.error().code, r.error().expected) || tellLast();
    row.at = kelvin(*kelvins);
    row.ohms = std::isfinite(*r) ? std::optional(ohms(*r)) : std::nullopt;
    ReadingRow given = row;
    if (!pair.heading.empty()) {
      pairName_ = row.curve.empty() ? pair.heading : fmt::format("{} {}", row.curve, pair.heading);
      given.curve = pairName_;
    }
    ++tally_.rows;
    if (!given.ohms) ++tally_.overloads;
    return sink_.row(given);
  }

  /// Always false, so that a reader of a cell can return it; tellLast() then says whether to go on.
  bool complain(std::size_t column, std::string_view code, std::string expected) {
    ++tally_.rejected;
    std::string text = shown(trimmedCell(cell(column)));
    if (column >= record_.cells.size()) text = "no such cell";
    goOn_ = sink_.rejected({record_.line, column + 1, std::move(text), std::string(code), std::move(expected)});
    return false;
  }
  [[nodiscard]] bool tellLast() const { return goOn_; }

  const ReadingPlan& plan_;
  Marks marks_;
  ReadingSink& sink_;
  TextSource source_;
  RecordReader records_;
  Record record_;
  std::vector<Pair> pairs_;
  std::optional<std::size_t> time_, curve_, direction_;
  std::vector<std::string> heading_;
  std::string part_;
  std::string name_, lastName_, pairName_;
  std::optional<double> lastClock_;
  double days_ = 0;  ///< s, whole days the clock has gone round
  std::size_t parts_ = 1;
  bool partHasRows_ = false;
  bool partEnds_ = false;
  bool goOn_ = true;
  std::uint64_t taken_ = 0;
  ReadingTally tally_;
};

}  // namespace

Refusal RejectedCell::refusal(std::string_view file) const {
  return {code, fmt::format("{}:{}:{}", file, line, column), text, expected};
}

Expected<ReadingTally> readRows(std::istream& in, const ReadingPlan& plan, std::string_view file, ReadingSink& sink) {
  if (const auto usable = checkPlan(plan, file); !usable) return tl::make_unexpected(usable.error());
  return RowReader(in, plan, file, sink).read();
}

}  // namespace ohmkin::exchange
