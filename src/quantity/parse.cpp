#include <fmt/format.h>
#include <quantity/parse.h>
#include <array>
#include <charconv>
#include <cmath>
#include <optional>
#include <string>

namespace ohmkin {
namespace {

constexpr double kNewtonMetresPerPoundInch = 0.1129848290276167;  // NIST SP 811 B.8

std::string_view trimmed(std::string_view text) {
  const auto blank = [](char c) { return c == ' ' || c == '\t'; };
  while (!text.empty() && blank(text.front())) text.remove_prefix(1);
  while (!text.empty() && blank(text.back())) text.remove_suffix(1);
  return text;
}

std::string quoted(std::string_view text) { return fmt::format("'{}'", text.substr(0, 60)); }

/// The number text begins with, and what follows it; empty first where there is no number.
std::pair<std::string, std::string_view> splitNumber(std::string_view text) {
  std::size_t end = 0;
  if (text.starts_with("−")) end = std::string_view("−").size();
  else if (!text.empty() && (text[0] == '-' || text[0] == '+')) end = 1;
  const std::size_t first = end;
  while (end < text.size() && ((text[end] >= '0' && text[end] <= '9') || text[end] == '.' || text[end] == ',')) ++end;
  if (end == first) return {{}, text};
  if (end < text.size() && (text[end] == 'e' || text[end] == 'E')) {
    std::size_t e = end + 1;
    if (e < text.size() && (text[e] == '-' || text[e] == '+')) ++e;
    if (e < text.size() && text[e] >= '0' && text[e] <= '9') {
      while (e < text.size() && text[e] >= '0' && text[e] <= '9') ++e;
      end = e;
    }
  }
  std::string digits =
      text.starts_with("−") ? "-" + std::string(text.substr(first, end - first)) : std::string(text.substr(0, end));
  return {std::move(digits), text.substr(end)};
}

std::optional<double> toDouble(std::string digits) {
  std::size_t points = 0;
  for (char& c : digits) {
    if (c == ',') c = '.';
    if (c == '.') ++points;
  }
  if (points > 1 || digits.empty()) return {};
  if (digits.front() == '+') digits.erase(0, 1);
  double value = 0;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (error != std::errc{} || end != digits.data() + digits.size() || !std::isfinite(value)) return {};
  return value;
}

}  // namespace

Expected<double> parseNumber(std::string_view text, std::string_view where) {
  const auto [digits, rest] = splitNumber(trimmed(text));
  const auto value = toDouble(digits);
  if (!value || !trimmed(rest).empty())
    return refuse("number-unreadable", std::string(where), quoted(text), "a finite number, for example 51.5");
  return *value;
}

Expected<Temperature> parseTemperature(std::string_view text, TemperatureUnit bare, std::string_view where) {
  const auto bad = [&](std::string expected) {
    return refuse("temperature-unreadable", std::string(where), quoted(text), std::move(expected));
  };
  const auto [digits, rest] = splitNumber(trimmed(text));
  const auto value = toDouble(digits);
  const std::string_view unit = trimmed(rest);
  if (!value) return bad("a temperature, for example 95C or 203F");
  Temperature t = celsius(0);
  if (unit.empty()) t = bare == TemperatureUnit::celsius ? celsius(*value) : fahrenheit(*value);
  else if (unit == "°C" || unit == "C" || unit == "c" || unit == "degC") t = celsius(*value);
  else if (unit == "°F" || unit == "F" || unit == "f" || unit == "degF") t = fahrenheit(*value);
  else if (unit == "K" || unit == "k") t = kelvin(*value);
  else return bad("a temperature in C, F or K, for example 95C");
  if (inKelvin(t) <= 0 || inCelsius(t) > kHottestCelsius)
    return bad("a temperature above absolute zero and below 1000 °C");
  return t;
}

Expected<Ohms> parseOhms(std::string_view text, std::string_view where) {
  const auto bad = [&] {
    return refuse("ohms-unreadable", std::string(where), quoted(text), "ohms above 0, for example 51 or 1.2k");
  };
  const auto [digits, rest] = splitNumber(trimmed(text));
  auto value = toDouble(digits);
  if (!value) return bad();
  std::string_view unit = trimmed(rest);
  double multiplier = 1;
  if (unit.starts_with('k') || unit.starts_with('K')) multiplier = 1e3, unit.remove_prefix(1);
  else if (unit.starts_with('M')) multiplier = 1e6, unit.remove_prefix(1);
  else if (unit.starts_with('R')) unit.remove_prefix(1);
  const bool lettered = unit.size() < trimmed(rest).size();
  if (lettered && !unit.empty() && unit.front() >= '0' && unit.front() <= '9') {
    // 1k2: the multiplier stands for the point
    if (digits.find_first_of(".,eE") != std::string::npos) return bad();
    const auto [fraction, tail] = splitNumber(unit);
    if (fraction.find_first_of(".,eE") != std::string::npos) return bad();
    value = toDouble(digits + "." + fraction);
    unit = trimmed(tail);
  }
  const std::string_view name = trimmed(unit);
  constexpr std::array<std::string_view, 6> names{"", "Ω", "Ω", "ohm", "ohms", "Ohm"};  // Greek omega and the ohm sign
  bool known = false;
  for (std::string_view n : names) known = known || n == name;
  if (!known || !value || !(*value > 0)) return bad();
  const double r = *value * multiplier;
  if (!std::isfinite(r) || !(r > 0)) return bad();
  return ohms(r);
}

Expected<TemperatureSpan> parseBand(std::string_view text, TemperatureUnit bare, std::string_view where) {
  const auto colon = text.find(':');
  if (colon == std::string_view::npos)
    return refuse("band-unreadable", std::string(where), quoted(text), "LOW:HIGH, for example 80:120");
  const auto low = parseTemperature(text.substr(0, colon), bare, where);
  if (!low) return tl::make_unexpected(low.error());
  const auto high = parseTemperature(text.substr(colon + 1), bare, where);
  if (!high) return tl::make_unexpected(high.error());
  if (!(*low < *high))
    return refuse("band-reversed", std::string(where), quoted(text), "the lower temperature first, for example 80:120");
  return TemperatureSpan{*low, *high};
}

Expected<std::pair<Temperature, Ohms>> parseReading(std::string_view text, TemperatureUnit bare,
                                                    std::string_view where) {
  const auto equals = text.find('=');
  if (equals == std::string_view::npos)
    return refuse("reading-unreadable", std::string(where), quoted(text), "T=R, for example 20C=480");
  const auto t = parseTemperature(text.substr(0, equals), bare, where);
  if (!t) return tl::make_unexpected(t.error());
  const auto r = parseOhms(text.substr(equals + 1), where);
  if (!r) return tl::make_unexpected(r.error());
  return std::pair{*t, *r};
}

Expected<Torque> parseTorque(std::string_view text, std::string_view where) {
  const auto [digits, rest] = splitNumber(trimmed(text));
  const auto value = toDouble(digits);
  const std::string_view unit = trimmed(rest);
  if (value && *value > 0) {
    if (unit == "N·m" || unit == "Nm" || unit == "N.m") return newtonMetres(*value);
    if (unit == "lbf·ft" || unit == "lbf-ft" || unit == "lbf.ft" || unit == "ft-lb" || unit == "ft-lbf" ||
        unit == "lb-ft")
      return newtonMetres(*value * kNewtonMetresPerPoundFoot);
    if (unit == "lbf·in" || unit == "lbf-in" || unit == "in-lb")
      return newtonMetres(*value * kNewtonMetresPerPoundInch);
  }
  return refuse("torque-unreadable", std::string(where), quoted(text),
                "a torque with its unit, for example 15Nm or 11lbf-ft");
}

}  // namespace ohmkin
