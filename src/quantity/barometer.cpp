#include <fmt/format.h>
#include <quantity/barometer.h>
#include <quantity/near_miss.h>
#include <quantity/parse.h>
#include <algorithm>
#include <array>
#include <optional>

namespace ohmkin {
namespace {

struct Unit {
  std::string_view name;  ///< folded
  double factor;
};
constexpr std::array<Unit, 5> kLengths{
    {{"m", 1000}, {"metres", 1000}, {"ft", 304.8}, {"feet", 304.8}, {"foot", 304.8}}};  // in mm
constexpr std::array<Unit, 6> kPressures{
    {{"kpa", 1}, {"hpa", 0.1}, {"mbar", 0.1}, {"mb", 0.1}, {"inhg", 3.386389}, {"mmhg", 0.1333224}}};  // in kPa

template <std::size_t N>
std::optional<double> withUnit(std::string_view text, const std::array<Unit, N>& known) {
  const auto end = text.find_last_of("0123456789.,");
  if (end == std::string_view::npos) return std::nullopt;
  const auto number = parseNumber(text.substr(0, end + 1));
  if (!number) return std::nullopt;
  const std::string unit = folded(text.substr(end + 1));
  const auto found = std::find_if(known.begin(), known.end(), [&](const Unit& u) { return u.name == unit; });
  if (found == known.end()) return std::nullopt;
  return *number * found->factor;
}

}  // namespace

Expected<Length> parseAltitude(std::string_view text, std::string_view where) {
  const auto value = withUnit(text, kLengths);
  if (!value)
    return refuse("altitude-unreadable", std::string(where), fmt::format("'{}'", text),
                  "an altitude with its unit, for example 1600 m or 5280 ft");
  return millimetres(*value);
}

Expected<Pressure> parseBarometer(std::string_view text, std::string_view where) {
  const auto value = withUnit(text, kPressures);
  if (!value || !(*value > 0))
    return refuse("barometer-unreadable", std::string(where), fmt::format("'{}'", text),
                  "a pressure with its unit, for example 1013 hPa, 29.9 inHg or 101.3 kPa");
  return kilopascals(*value);
}

}  // namespace ohmkin
