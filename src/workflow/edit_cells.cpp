#include <exchange/cell.h>
#include <exchange/formula_guard.h>
#include <exchange/shown.h>
#include <exchange/table_definition.h>
#include <fmt/format.h>
#include <quantity/near_miss.h>
#include <quantity/parse.h>
#include <workflow/edit_cells.h>
#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <span>

namespace ohmkin::workflow {
namespace {

using exchange::Cell;

constexpr std::size_t kLongest = 4096;  // bytes of a cell, as in a package

/// value in the base unit = (typed + before) · factor
struct Suffix {
  std::string_view text;
  double factor = 1;
  double before = 0;
};

// Longer suffixes before those they end in. Factors: NIST SP 811 B.8; temperatures by definition (ITS-90).
constexpr auto kCelsius =
    std::to_array<Suffix>({{"°C"}, {"C"}, {"°F", 5.0 / 9, -32}, {"F", 5.0 / 9, -32}, {"K", 1, -kZeroCelsius}});
constexpr auto kKelvin = std::to_array<Suffix>({{"K"}, {"C°"}, {"F°", 5.0 / 9}});
constexpr auto kOhms = std::to_array<Suffix>({{"Ω"}, {"ohms"}, {"ohm"}});
constexpr auto kMillimetres =
    std::to_array<Suffix>({{"mm"}, {"cm", 10}, {"m", 1000}, {"in", 25.4}, {"\"", 25.4}, {"″", 25.4}, {"ft", 304.8}});
constexpr auto kMetres = std::to_array<Suffix>({{"mm", 0.001}, {"m"}, {"ft", 0.3048}});
constexpr auto kNewtonMetres = std::to_array<Suffix>({{"N·m"}, {"Nm"}});
constexpr auto kDegrees = std::to_array<Suffix>({{"°"}, {"degrees"}, {"deg"}});
constexpr auto kVolts = std::to_array<Suffix>({{"V"}, {"volts"}});
constexpr auto kKilopascals = std::to_array<Suffix>({{"kPa"}, {"bar", 100}, {"psi", 6.894757293168361}});
constexpr auto kPart = std::to_array<Suffix>({{"%", 0.01}});

std::span<const Suffix> suffixesOf(EditUnit unit) {
  switch (unit) {
    case EditUnit::celsius:
      return kCelsius;
    case EditUnit::kelvin:
      return kKelvin;
    case EditUnit::ohms:
      return kOhms;
    case EditUnit::millimetres:
      return kMillimetres;
    case EditUnit::metres:
      return kMetres;
    case EditUnit::newtonMetres:
      return kNewtonMetres;
    case EditUnit::degrees:
      return kDegrees;
    case EditUnit::volts:
      return kVolts;
    case EditUnit::kilopascals:
      return kKilopascals;
    case EditUnit::part:
      return kPart;
    case EditUnit::none:
      break;
  }
  return {};
}

std::string_view trimmed(std::string_view text) {
  const auto from = text.find_first_not_of(" \t\r\n");
  if (from == std::string_view::npos) return {};
  return text.substr(from, text.find_last_not_of(" \t\r\n") - from + 1);
}

/// "12.5", "12,5", "−4"; of lengths in inches also "3/8" and "1 1/2".
std::optional<double> plainNumber(std::string_view text, bool fractions) {
  text = trimmed(text);
  const auto slash = text.find('/');
  if (fractions && slash != std::string_view::npos) {
    const auto blank = text.substr(0, slash).find_last_of(" -");
    const auto whole = blank == std::string_view::npos ? std::string_view("0") : text.substr(0, blank);
    const auto above = parseNumber(trimmed(text.substr(blank == std::string_view::npos ? 0 : blank + 1,
                                                       slash - (blank == std::string_view::npos ? 0 : blank + 1))));
    const auto below = parseNumber(trimmed(text.substr(slash + 1)));
    const auto before = parseNumber(whole);
    if (!above || !below || !before || *below <= 0 || *above < 0) return {};
    return *before + *above / *below;
  }
  const auto number = parseNumber(text);
  if (!number) return {};
  return *number;
}

/// A conversion's last digits are noise: what a person typed has fewer.
double withoutNoise(double value) {
  const double rounded = std::round(value * 1e9) / 1e9;
  return std::isfinite(rounded) ? rounded : value;
}

std::optional<double> inBaseUnit(EditUnit unit, std::string_view text, const DisplayUnits& units) {
  for (const Suffix& suffix : suffixesOf(unit)) {
    if (!text.ends_with(suffix.text)) continue;
    const bool inches = suffix.factor == 25.4;
    const auto number = plainNumber(text.substr(0, text.size() - suffix.text.size()), inches);
    if (!number) continue;
    if (suffix.factor == 1 && suffix.before == 0) return *number;
    return withoutNoise((*number + suffix.before) * suffix.factor);
  }
  if (unit == EditUnit::newtonMetres) {
    const auto torque = parseTorque(text);
    if (!torque) return {};
    return withoutNoise(inNewtonMetres(*torque));
  }
  if (const auto number = plainNumber(text, false)) {
    if (unit == EditUnit::celsius && units.temperature == TemperatureUnit::fahrenheit)
      return withoutNoise((*number - 32) * 5 / 9);
    return *number;
  }
  if (unit == EditUnit::ohms)
    if (const auto ohms = parseOhms(text)) return withoutNoise(inOhms(*ohms));
  return {};
}

std::string_view example(EditUnit unit) {
  switch (unit) {
    case EditUnit::celsius:
      return "a temperature, for example 85 °C or 185 °F";
    case EditUnit::kelvin:
      return "a difference of temperature, for example 3 K or 5 F°";
    case EditUnit::ohms:
      return "ohms, for example 51 or 1.2 kΩ";
    case EditUnit::millimetres:
      return "a length, for example 17 mm or 3/8 in";
    case EditUnit::metres:
      return "a length, for example 2.4 m or 8 ft";
    case EditUnit::newtonMetres:
      return "a torque with its unit, for example 15 N·m or 11 lbf·ft";
    case EditUnit::degrees:
      return "an angle, for example 70° or -66";
    case EditUnit::volts:
      return "volts, for example 12 V";
    case EditUnit::kilopascals:
      return "a pressure, for example 90 kPa or 13 psi";
    case EditUnit::part:
      return "a part, for example 0.08 or 8 %";
    case EditUnit::none:
      break;
  }
  return "a number, for example 12.5";
}

std::string number(const Cell& cell) {
  if (const auto* whole = std::get_if<std::int64_t>(&cell)) return fmt::format("{}", *whole);
  if (const auto* value = std::get_if<double>(&cell)) return fmt::format("{}", *value);
  return {};
}

double asDouble(const Cell& cell) {
  if (const auto* whole = std::get_if<std::int64_t>(&cell)) return static_cast<double>(*whole);
  const auto* value = std::get_if<double>(&cell);
  return value == nullptr ? 0 : *value;
}

std::string withUnit(EditUnit unit, const Cell& cell, const DisplayUnits& units) {
  switch (unit) {
    case EditUnit::celsius:
      if (units.temperature == TemperatureUnit::fahrenheit)
        return fmt::format("{:.10g} °F", asDouble(cell) * 9 / 5 + 32);
      return number(cell) + " °C";
    case EditUnit::kelvin:
      return number(cell) + " K";
    case EditUnit::ohms:
      return number(cell) + " Ω";
    case EditUnit::millimetres:
      return number(cell) + " mm";
    case EditUnit::metres:
      return number(cell) + " m";
    case EditUnit::newtonMetres:
      if (units.torque == TorqueUnit::poundFoot)
        return fmt::format("{:.10g} lbf·ft", asDouble(cell) / kNewtonMetresPerPoundFoot);
      return number(cell) + " N·m";
    case EditUnit::degrees:
      return number(cell) + "°";
    case EditUnit::volts:
      return number(cell) + " V";
    case EditUnit::kilopascals:
      return number(cell) + " kPa";
    case EditUnit::part:
    case EditUnit::none:
      break;
  }
  return number(cell);
}

/// The choice that is meant, however it is written; else the text itself, which readCell() refuses with the list.
std::string chosen(const EditField& field, std::string_view text) {
  const auto same = [&](const std::string& choice) { return folded(choice) == folded(text); };
  const auto found = std::find_if(field.choices.begin(), field.choices.end(), same);
  return found == field.choices.end() ? std::string(text) : *found;
}

}  // namespace

std::string textOf(const EditField& field, const Cell& cell, const DisplayUnits& units) {
  if (std::holds_alternative<std::monostate>(cell)) return {};
  if (const auto* text = std::get_if<std::string>(&cell)) return *text;
  if (field.type == EditType::yesNo) return asDouble(cell) != 0 ? "yes" : "no";
  return withUnit(field.unit, cell, units);
}

Expected<Cell> cellOf(const EditField& field, std::string_view typed, const DisplayUnits& units,
                      std::string_view where) {
  const exchange::TableDefinition* definitions = exchange::tableDefinition(field.table);
  const exchange::FieldDefinition& definition = *definitions->field(field.name);
  const std::string_view text = definition.blanks ? typed : trimmed(typed);
  const auto refused = [&](std::string code, std::string expected) {
    return refuse(std::move(code), std::string(where), text.empty() ? "nothing" : exchange::shown(text),
                  std::move(expected));
  };
  std::string plain(text);
  if (!text.empty()) {
    if (field.type == EditType::number) {
      const auto value = inBaseUnit(field.unit, text, units);
      if (!value) return refused("cell-not-a-number", std::string(example(field.unit)));
      plain = fmt::format("{}", *value);
    } else if (field.type == EditType::yesNo) {
      if (folded(text) == "yes") plain = "1";
      if (folded(text) == "no") plain = "0";
    } else if (!field.choices.empty()) {
      plain = chosen(field, text);
    } else if (field.type == EditType::text && exchange::isGuarded(definition)) {
      plain = exchange::guarded(text);  // readCell() takes the guard of a file off again
    }
  }
  auto cell = exchange::readCell(plain, definition, kLongest);
  if (!cell) return refused(cell.error().code, cell.error().expected);
  return std::move(*cell);
}

}  // namespace ohmkin::workflow
