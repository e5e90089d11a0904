#include <exchange/cell.h>
#include <exchange/formula_guard.h>
#include <exchange/shown.h>
#include <fmt/format.h>
#include <quantity/date.h>
#include <quantity/near_miss.h>
#include <algorithm>
#include <charconv>
#include <cmath>

namespace ohmkin::exchange {

std::string boundsOf(const FieldDefinition& field) {
  std::vector<std::string> parts;
  if (field.exclusiveMinimum) parts.push_back(fmt::format("above {}", *field.exclusiveMinimum));
  if (field.minimum) parts.push_back(fmt::format("at least {}", *field.minimum));
  if (field.exclusiveMaximum) parts.push_back(fmt::format("below {}", *field.exclusiveMaximum));
  if (field.maximum) parts.push_back(fmt::format("at most {}", *field.maximum));
  return fmt::format("{}", fmt::join(parts, " and "));
}

namespace {

using Read = tl::expected<Cell, CellFault>;

tl::unexpected<CellFault> fault(std::string code, std::string expected) {
  return tl::make_unexpected(CellFault{std::move(code), std::move(expected)});
}

std::string listed(const std::vector<std::string>& allowed) {
  std::string all;
  for (std::size_t i = 0; i < allowed.size(); ++i)
    all += (i == 0 ? "" : i + 1 == allowed.size() ? " or " : ", ") + allowed[i];
  return all;
}

template <class Number>
std::optional<Number> whole(std::string_view text) {
  Number value{};
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size()) return {};
  return value;
}

bool within(double value, const FieldDefinition& field) {
  return (!field.minimum || value >= *field.minimum) && (!field.maximum || value <= *field.maximum) &&
         (!field.exclusiveMinimum || value > *field.exclusiveMinimum) &&
         (!field.exclusiveMaximum || value < *field.exclusiveMaximum);
}

bool isAllowed(double value, const std::vector<std::string>& allowed) {
  return allowed.empty() || std::any_of(allowed.begin(), allowed.end(), [&](const std::string& a) {
           const auto number = whole<double>(a);
           return number && *number == value;
         });
}

Read checkedNumber(double value, Cell cell, const FieldDefinition& field) {
  if (!isAllowed(value, field.allowed)) return fault("cell-not-allowed", listed(field.allowed));
  if (!within(value, field)) return fault("cell-out-of-range", "a number " + boundsOf(field));
  return cell;
}

Read readNumber(std::string_view text, const FieldDefinition& field) {
  const auto value = whole<double>(text);
  if (!value || !std::isfinite(*value))
    return fault("cell-not-a-number", "a number with a decimal point, for example 12.5");
  return checkedNumber(*value, *value, field);
}

Read readWhole(std::string_view text, const FieldDefinition& field) {
  const auto value = whole<std::int64_t>(text);
  if (!value) return fault("cell-not-a-whole-number", "a whole number");
  return checkedNumber(static_cast<double>(*value), *value, field);
}

Read readBoolean(std::string_view text) {
  if (text == "1" || text == "true" || text == "True" || text == "TRUE") return Cell{std::int64_t{1}};
  if (text == "0" || text == "false" || text == "False" || text == "FALSE") return Cell{std::int64_t{0}};
  return fault("cell-not-yes-or-no", "true or false");
}

Read readDate(std::string_view text) {
  const auto day = parseDate(text);
  if (!day) return fault("cell-not-a-date", day.error().expected);
  return Cell{std::string(text)};
}

Read readText(std::string_view text, const FieldDefinition& field) {
  if (brokenUtf8At(text) != std::string_view::npos) return fault("cell-not-utf-8", "text in UTF-8");
  if (std::any_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) < 0x20U || c == 0x7F; }))
    return fault("cell-control-character", "text without control characters or line breaks");
  if (!field.blanks && (text.front() == ' ' || text.back() == ' '))
    return fault("cell-blank-at-end", "text without a blank at either end");
  std::string value(text);
  if (!field.allowed.empty() && std::find(field.allowed.begin(), field.allowed.end(), value) == field.allowed.end())
    return fault("cell-not-allowed", listed(field.allowed) + perhaps(nearMisses(value, field.allowed)));
  if (field.matches && !field.matches(text)) return fault("cell-of-another-form", "text of the form " + field.pattern);
  return Cell{std::move(value)};
}

}  // namespace

Read readCell(std::string_view text, const FieldDefinition& field, std::size_t longest) {
  if (text.empty()) {
    if (field.required) return fault("cell-empty", "a value");
    return Cell{};
  }
  if (text.size() > longest) return fault("cell-too-long", fmt::format("at most {} bytes", longest));
  switch (field.type) {
    case FieldType::number:
      return readNumber(text, field);
    case FieldType::integer:
      return readWhole(text, field);
    case FieldType::boolean:
      return readBoolean(text);
    case FieldType::date:
      return readDate(text);
    case FieldType::text:
      return readText(isGuarded(field) ? unguarded(text) : text, field);
  }
  return fault("cell-of-another-form", "a value");
}

std::string textOf(const Cell& cell) {
  if (const auto* text = std::get_if<std::string>(&cell)) return *text;
  if (const auto* whole = std::get_if<std::int64_t>(&cell)) return fmt::format("{}", *whole);
  if (const auto* number = std::get_if<double>(&cell)) return fmt::format("{}", *number);
  return {};
}

}  // namespace ohmkin::exchange
