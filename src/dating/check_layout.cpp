#include <dating/written_field.h>
#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <unordered_map>
#include <unordered_set>

namespace ohmkin::dating {
namespace {

bool isLetter(char c) { return 'A' <= c && c <= 'Z'; }
bool isDigit(char c) { return '0' <= c && c <= '9'; }

bool mayBeOptional(FieldKind kind) {
  return kind == FieldKind::separator || kind == FieldKind::shift || kind == FieldKind::weekday ||
         kind == FieldKind::fixedText;
}

bool holds(const Layout& layout, FieldKind kind) {
  return std::ranges::any_of(layout.fields, [&](const Field& field) { return field.kind == kind; });
}

tl::unexpected<Refusal> bad(const Layout& layout, std::string code, std::string found, std::string expected) {
  return refuse("layout-" + std::move(code), fmt::format("layout '{}'", layout.id), std::move(found),
                std::move(expected));
}

std::string quoted(std::string_view text) { return fmt::format("'{}'", text); }

/// Letters to capitals; the default separators of a layout with a dial go without the stop, which is a dot there.
void normalise(Layout& layout) {
  const bool dial = holds(layout, FieldKind::clockDial);
  for (Field& field : layout.fields) {
    for (char& c : field.text)
      if ('a' <= c && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
    if (dial && field.kind == FieldKind::separator && field.text.empty()) field.text = " -/";
  }
}

Expected<void> checkText(const Layout& layout, const Field& field) {
  const std::string& text = field.text;
  const auto wrong = [&](std::string expected) { return bad(layout, "field-text", quoted(text), std::move(expected)); };
  const bool printable = std::ranges::all_of(text, [](char c) { return ' ' <= c && c <= '~' && c != '?'; });
  if (!printable) return wrong("plain characters; ? stands for an unreadable one and cannot be part of a layout");
  switch (field.kind) {
    case FieldKind::fixedText:
      if (text.empty()) return wrong("a text for a fixed text field");
      if (text.find(' ') != std::string::npos)
        return wrong("a fixed text without spaces; write a space as a separator");
      return {};
    case FieldKind::separator:
      if (std::ranges::any_of(text, [](char c) { return isLetter(c) || isDigit(c); }))
        return wrong("separators that are neither letters nor digits");
      return {};
    case FieldKind::shift:
      if (!std::ranges::all_of(text, isLetter)) return wrong("letters that may stand for a shift");
      return {};
    case FieldKind::weekday: {
      std::string sorted = text;
      std::ranges::sort(sorted);
      const bool distinct = std::ranges::adjacent_find(sorted) == sorted.end();
      if (text.empty() || (text.size() == 7 && distinct && text.find(' ') == std::string::npos)) return {};
      return wrong("nothing (1 Monday to 7 Sunday), or seven different characters from Monday on");
    }
    case FieldKind::monthNumber:
    case FieldKind::day:
      if (!text.empty() && text != "00") return wrong("nothing, or 00 for always two digits");
      return {};
    default:
      if (!text.empty()) return wrong(fmt::format("no text for a field of kind {}", dating::text(field.kind)));
      return {};
  }
}

Expected<void> checkField(const Layout& layout, const Field& field) {
  if (text(field.kind).empty())
    return bad(layout, "field-kind", "an unknown kind of field", "one of the kinds of date field");
  if (field.optional && !mayBeOptional(field.kind))
    return bad(layout, "field-optional", fmt::format("an optional {}", text(field.kind)),
               "a part that is always there: only separators, shift, weekday and fixed text may be left out");
  return checkText(layout, field);
}

/// Which parts of the date are said, and that they make one.
Expected<void> checkParts(const Layout& layout) {
  std::array<int, 7> said{};
  for (const Field& field : layout.fields) ++said[static_cast<std::size_t>(partOf(field.kind))];
  const auto has = [&](Part part) { return said[static_cast<std::size_t>(part)] > 0; };
  const auto circular = [&](std::string found) {
    return bad(layout, "circular", std::move(found),
               "each part of the date once: said twice, a misread one can no longer be told from the other");
  };
  for (const auto& [part, name] : {std::pair{Part::month, "month"},
                                   {Part::day, "day"},
                                   {Part::year, "year"},
                                   {Part::dayOfYear, "day of year"},
                                   {Part::week, "week"},
                                   {Part::weekday, "weekday"}})
    if (said[static_cast<std::size_t>(part)] > 1) return circular(fmt::format("the {} twice", name));
  if (!has(Part::year)) return bad(layout, "no-year", "no year", "a year digit, two digits or four digits");
  if (!has(Part::month) && !has(Part::dayOfYear) && !has(Part::week))
    return bad(layout, "no-date", has(Part::day) ? "a day without a month" : "nothing within the year",
               "a month, a week or a day of the year");
  if (has(Part::dayOfYear) && (has(Part::month) || has(Part::day) || has(Part::week)))
    return circular("a day of the year beside a month, day or week");
  if (has(Part::week) && (has(Part::month) || has(Part::day))) return circular("a week beside a month or day");
  if (std::ranges::count(layout.fields, FieldKind::shift, &Field::kind) > 1) return circular("two shift letters");
  return {};
}

Expected<void> checkDial(const Layout& layout) {
  if (!holds(layout, FieldKind::clockDial)) return {};
  for (const Field& field : layout.fields)
    if (field.text.find_first_of(".()") != std::string::npos)
      return bad(layout, "ambiguous", quoted(field.text),
                 "no stop or bracket beside a clock dial, whose dots they would be taken for");
  return {};
}

struct Spelling {
  std::string code;
  std::string said;  ///< the parts of the date it shows: "month 1, day 11"
};

/// Every way to write the day, every shift letter too.
std::vector<Spelling> spellings(const Layout& layout, Date day) {
  std::vector<Spelling> begun{{}};
  for (const Field& field : layout.fields) {
    std::vector<std::string> forms;
    std::string said;
    if (field.kind == FieldKind::shift) {
      for (const char letter : characterSet(field)) forms.emplace_back(1, letter);
    } else {
      const int value = valueIn(layout, field.kind, day);
      forms = formsOfValue(field, value);
      if (partOf(field.kind) != Part::nothing) said = fmt::format("{} {}, ", text(field.kind), forms.front());
    }
    std::vector<Spelling> longer;
    for (const Spelling& s : begun) {
      for (const std::string& form : forms) longer.push_back({s.code + form, s.said + said});
      if (field.optional) longer.push_back(s);
    }
    begun = std::move(longer);
  }
  for (Spelling& s : begun) s.said.resize(s.said.size() - 2);
  return begun;
}

/// A full calendar cycle of 28 years and the turn of a century: every weekday on every date, every last digit, leap
/// years.
Expected<void> checkUnambiguous(const Layout& layout) {
  std::unordered_map<std::string, std::string> saidBy;
  std::unordered_set<std::string> done;
  for (Date day = date(1973, 1, 1); day < date(2005, 1, 1); day += std::chrono::days{1}) {
    // A code that was met is another day's, which the layout cannot tell from this.
    if (!done.insert(encode(layout, day)).second) continue;
    for (Spelling& spelling : spellings(layout, day)) {
      const auto [known, fresh] = saidBy.emplace(spelling.code, spelling.said);
      if (fresh || known->second == spelling.said) continue;
      return bad(
          layout, "ambiguous", quoted(spelling.code),
          fmt::format("a layout whose parts can be told apart: this would be both {} and {}; put a separator between "
                      "them that is always there, or write two digits (00)",
                      known->second, spelling.said));
    }
  }
  return {};
}

}  // namespace

Expected<Layout> soundLayout(Layout layout) {
  if (layout.fields.empty())
    return bad(layout, "empty", "no fields", "at least a year and a month, week or day of year");
  if (layout.fields.size() > kMostFields)
    return bad(layout, "too-long", fmt::format("{} fields", layout.fields.size()),
               fmt::format("at most {}", kMostFields));
  if (const auto optional = std::ranges::count_if(layout.fields, &Field::optional);
      optional > static_cast<std::ptrdiff_t>(kMostOptionalFields))
    return bad(layout, "too-loose", fmt::format("{} optional fields", optional),
               fmt::format("at most {}", kMostOptionalFields));
  normalise(layout);
  std::size_t width = 0;
  for (const Field& field : layout.fields) {
    if (const auto fine = checkField(layout, field); !fine) return tl::make_unexpected(fine.error());
    width += widest(field);
  }
  if (width > kWidestCode)
    return bad(layout, "too-long", fmt::format("{} characters", width),
               fmt::format("a code of at most {}", kWidestCode));
  for (const auto check : {checkParts, checkDial})
    if (const auto fine = check(layout); !fine) return tl::make_unexpected(fine.error());
  return layout;
}

Expected<Layout> checkedLayout(Layout layout) {
  auto sound = soundLayout(std::move(layout));
  if (!sound) return sound;
  if (const auto fine = checkUnambiguous(*sound); !fine) return tl::make_unexpected(fine.error());
  return sound;
}

}  // namespace ohmkin::dating
