#include <exchange/reading_plan.h>
#include <exchange/shown.h>
#include <exchange/text_source.h>
#include <exchange/unit_words.h>
#include <fmt/format.h>
#include <quantity/near_miss.h>
#include <algorithm>
#include <array>
#include <charconv>
#include <optional>

namespace ohmkin::exchange {
namespace {

struct MarkName {
  std::string_view name;
  char mark;
};
constexpr std::array<MarkName, 5> kSeparators{
    {{"comma", ','}, {"semicolon", ';'}, {"tab", '\t'}, {"pipe", '|'}, {"blank", ' '}}};
constexpr std::array<MarkName, 2> kDecimals{{{"point", '.'}, {"comma", ','}}};
constexpr std::array<MarkName, 5> kThousands{
    {{"none", '\0'}, {"point", '.'}, {"comma", ','}, {"blank", ' '}, {"apostrophe", '\''}}};
constexpr std::array<MarkName, 2> kLines{{{"lf", '\n'}, {"cr", '\r'}}};
constexpr std::array<MarkName, 2> kParts{{{"none", '0'}, {"blank-line", '1'}}};

struct RoleName {
  std::string_view name;
  Role role;
};
constexpr std::array<RoleName, 6> kRoles{{{"temperature", Role::temperature},
                                          {"resistance", Role::resistance},
                                          {"time", Role::time},
                                          {"curve", Role::curve},
                                          {"direction", Role::direction},
                                          {"ignore", Role::ignored}}};

std::string_view unitText(ColumnUnit unit) {
  constexpr std::array<std::string_view, 16> texts{"",  "C",   "F", "K",     "ohm",  "kohm", "Mohm", "ms",
                                                   "s", "min", "h", "clock", "mmss", "ymd",  "dmy",  "mdy"};
  return texts[static_cast<std::size_t>(unit)];
}

template <std::size_t N>
std::string_view nameOf(const std::array<MarkName, N>& names, char mark) {
  for (const MarkName& one : names)
    if (one.mark == mark) return one.name;
  return "?";
}

std::string lower(std::string_view text) {
  std::string out(text);
  for (char& c : out)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return out;
}

std::optional<std::size_t> whole(std::string_view text, std::size_t most) {
  std::size_t value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (text.empty() || error != std::errc{} || end != text.data() + text.size() || value > most) return {};
  return value;
}

std::optional<ColumnUnit> unitFor(Role role, std::string_view text) {
  switch (role) {
    case Role::temperature:
      return text.empty() ? ColumnUnit::celsius : temperatureUnit(text);
    case Role::resistance:
      return text.empty() ? ColumnUnit::ohm : resistanceUnit(text);
    case Role::time: {
      if (text.empty()) return ColumnUnit::second;
      const std::string word = lower(text);
      if (word == "mmss") return ColumnUnit::minuteClock;
      if (word == "ymd") return ColumnUnit::yearMonthDay;
      if (word == "dmy") return ColumnUnit::dayMonthYear;
      if (word == "mdy") return ColumnUnit::monthDayYear;
      return timeUnit(word);
    }
    default:
      return text.empty() ? std::optional(ColumnUnit::none) : std::nullopt;
  }
}

std::string_view unitsFor(Role role) {
  switch (role) {
    case Role::temperature:
      return "C, F or K";
    case Role::resistance:
      return "ohm, kohm or Mohm";
    case Role::time:
      return "ms, s, min, h, clock, mmss, ymd, dmy or mdy";
    default:
      return "no unit";
  }
}

class PlanParser {
 public:
  PlanParser(ReadingPlan base, std::string_view where) : plan_(std::move(base)), where_(where) {}

  Expected<ReadingPlan> parse(std::string_view text) {
    if (text.size() > 64U << 10U) return bad(text, "a plan of one line");
    while (!text.empty()) {
      const std::size_t end = std::min(text.find(','), text.size());
      const std::string_view item = trimmedCell(text.substr(0, end));
      text.remove_prefix(std::min(end + 1, text.size()));
      if (item.empty()) continue;
      if (const auto taken = take(item); !taken) return tl::make_unexpected(taken.error());
    }
    return std::move(plan_);
  }

 private:
  tl::unexpected<Refusal> bad(std::string_view found, std::string expected) const {
    return refuse("plan-unreadable", where_, shown(found), std::move(expected));
  }

  Expected<void> take(std::string_view item) {
    const std::size_t equals = item.find('=');
    const std::string key = lower(trimmedCell(item.substr(0, equals)));
    const std::string_view value =
        equals == std::string_view::npos ? std::string_view() : trimmedCell(item.substr(equals + 1));
    if (equals == std::string_view::npos || value.empty()) return bad(item, "WORD=VALUE, for example temperature=2:C");
    for (const RoleName& role : kRoles)
      if (role.name == key) return column(role.role, value, item);
    if (key == "separator") return mark(kSeparators, value, item, plan_.separator);
    if (key == "decimal") return mark(kDecimals, value, item, plan_.decimal);
    if (key == "thousands") return mark(kThousands, value, item, plan_.thousands);
    char choice = 0;
    if (key == "lines") {
      const auto taken = mark(kLines, value, item, choice);
      plan_.carriageReturns = choice == '\r';
      return taken;
    }
    if (key == "parts") {
      const auto taken = mark(kParts, value, item, choice);
      plan_.blankLineParts = choice == '1';
      return taken;
    }
    if (key == "skip") return number(value, item, kMostSkippedLines, plan_.skip);
    if (key == "heading") return number(value, item, 9, plan_.heading);
    if (key == "columns") return columns(value, item);
    if (key == "comment") return comment(value, item);
    if (key == "encoding") return encoding(value, item);
    std::vector<std::string> names{"separator", "decimal", "thousands", "lines",   "parts",
                                   "skip",      "heading", "columns",   "comment", "encoding"};
    for (const RoleName& role : kRoles) names.emplace_back(role.name);
    return bad(item, "temperature, resistance, time, curve, direction, ignore, or a word of the plan" +
                         perhaps(nearMisses(key, names)));
  }

  Expected<void> column(Role role, std::string_view value, std::string_view item) {
    const std::size_t colon = value.find(':');
    const auto at = whole(trimmedCell(value.substr(0, colon)), kMostColumns);
    if (!at || *at == 0) return bad(item, fmt::format("a column from 1 to {}", kMostColumns));
    const auto unit =
        unitFor(role, colon == std::string_view::npos ? std::string_view() : trimmedCell(value.substr(colon + 1)));
    if (!unit) return bad(item, fmt::format("{} behind the column", unitsFor(role)));
    auto& named = named_[static_cast<std::size_t>(role)];
    if (!named && role != Role::ignored) {
      for (ColumnPlan& before : plan_.columns)
        if (before.role == role) before = {};
      named = true;
    }
    if (plan_.columns.size() < *at) plan_.columns.resize(*at);
    plan_.columns[*at - 1] = {role, *unit};
    return {};
  }

  template <std::size_t N>
  Expected<void> mark(const std::array<MarkName, N>& names, std::string_view value, std::string_view item, char& into) {
    std::string all;
    for (const MarkName& one : names) {
      if (one.name == lower(value) || (value.size() == 1 && value[0] == one.mark)) {
        into = one.mark;
        return {};
      }
      all += (all.empty() ? "" : ", ") + std::string(one.name);
    }
    return bad(item, "one of " + all);
  }

  Expected<void> number(std::string_view value, std::string_view item, std::size_t most, std::size_t& into) {
    const auto read = whole(value, most);
    if (!read) return bad(item, fmt::format("a whole number up to {}", most));
    into = *read;
    return {};
  }

  Expected<void> columns(std::string_view value, std::string_view item) {
    std::size_t count = 0;
    if (const auto read = number(value, item, kMostColumns, count); !read) return read;
    plan_.columns.resize(count);
    return {};
  }

  Expected<void> comment(std::string_view value, std::string_view item) {
    if (value.size() > 4 || value.find_first_of("0123456789\"=,") != std::string_view::npos ||
        brokenUtf8At(value) != std::string_view::npos)
      return bad(item, "the characters that begin a comment, for example # or //, or none");
    plan_.comment = value == "none" ? std::string() : std::string(value);
    return {};
  }

  Expected<void> encoding(std::string_view value, std::string_view item) {
    const std::string name = lower(value);
    constexpr std::string_view allowed = "abcdefghijklmnopqrstuvwxyz0123456789-_";
    if (name.size() > 40 || name.find_first_not_of(allowed) != std::string::npos || !TextSource::knows(name))
      return bad(item, "utf-8, utf-16le, utf-16be, windows-1252, or another encoding the system knows");
    plan_.encoding = name;
    return {};
  }

  ReadingPlan plan_;
  std::string where_;
  std::array<bool, kRoles.size()> named_{};
};

}  // namespace

std::vector<std::size_t> ReadingPlan::with(Role role) const {
  std::vector<std::size_t> found;
  for (std::size_t i = 0; i < columns.size(); ++i)
    if (columns[i].role == role) found.push_back(i);
  return found;
}

std::string planText(const ReadingPlan& plan) {
  std::string text;
  const auto put = [&](std::string_view word, std::string_view value) {
    fmt::format_to(std::back_inserter(text), "{}{}={}", text.empty() ? "" : ", ", word, value);
  };
  put("columns", std::to_string(plan.columns.size()));
  for (const RoleName& role : kRoles) {
    for (std::size_t i = 0; i < plan.columns.size() && role.role != Role::ignored; ++i) {
      const ColumnPlan& column = plan.columns[i];
      if (column.role != role.role) continue;
      const std::string_view unit = unitText(column.unit);
      put(role.name, unit.empty() ? std::to_string(i + 1) : fmt::format("{}:{}", i + 1, unit));
    }
  }
  put("skip", std::to_string(plan.skip));
  put("heading", std::to_string(plan.heading));
  put("separator", nameOf(kSeparators, plan.separator));
  put("decimal", nameOf(kDecimals, plan.decimal));
  put("thousands", nameOf(kThousands, plan.thousands));
  put("comment", plan.comment.empty() ? "none" : plan.comment);
  put("parts", plan.blankLineParts ? "blank-line" : "none");
  put("lines", plan.carriageReturns ? "cr" : "lf");
  put("encoding", plan.encoding);
  return text;
}

Expected<ReadingPlan> parsePlan(std::string_view text, ReadingPlan base, std::string_view where) {
  return PlanParser(std::move(base), where).parse(text);
}

Expected<void> checkPlan(const ReadingPlan& plan, std::string_view where) {
  const auto bad = [&](std::string found, std::string expected) {
    return refuse("plan-unusable", std::string(where), std::move(found), std::move(expected));
  };
  if (plan.with(Role::temperature).empty()) return bad("no temperature column", "one, for example temperature=1:C");
  if (plan.with(Role::resistance).empty()) return bad("no resistance column", "one, for example resistance=2:ohm");
  for (const Role role : {Role::time, Role::curve, Role::direction})
    if (plan.with(role).size() > 1) return bad("two columns for time, curve or direction", "one of each at most");
  for (const ColumnPlan& column : plan.columns) {
    const auto suits = unitFor(column.role, unitText(column.unit));
    if (!suits || *suits != column.unit)
      return bad(fmt::format("a column in {}", unitName(column.unit)),
                 fmt::format("{} for that column", unitsFor(column.role)));
  }
  if (plan.columns.size() > kMostColumns)
    return bad("more columns than that", fmt::format("at most {} columns", kMostColumns));
  if (plan.decimal == plan.thousands) return bad("one mark for decimals and thousands", "two different marks");
  return {};
}

}  // namespace ohmkin::exchange
