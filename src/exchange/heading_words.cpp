#include <exchange/heading_words.h>
#include <exchange/unit_words.h>
#include <algorithm>
#include <string>
#include <vector>

namespace ohmkin::exchange {
namespace {

/// Lower-case runs of letters, digits and bytes above 127; "ohms" of "R_ohms" and "°c" of "T [°C]" stand alone.
std::vector<std::string> wordsOf(std::string_view heading) {
  std::vector<std::string> words(1);
  while (!heading.empty()) {
    const std::size_t blank = blankLength(heading);
    const auto c = static_cast<unsigned char>(heading.front());
    const bool letter =
        blank == 0 && (c >= 0x80 || (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'));
    if (letter) words.back() += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : heading.front();
    else if (!words.back().empty()) words.emplace_back();
    heading.remove_prefix(std::max<std::size_t>(blank, 1));
  }
  if (words.back().empty()) words.pop_back();
  return words;
}

/// "t1", "r2": a letter and a number.
bool numbered(const std::string& word, char letter) {
  return word.size() > 1 && word.size() < 4 && word.front() == letter &&
         word.find_first_not_of("0123456789", 1) == std::string::npos;
}

bool any(const std::vector<std::string>& words, std::initializer_list<std::string_view> known) {
  return std::any_of(words.begin(), words.end(), [&](const std::string& word) {
    return std::find(known.begin(), known.end(), word) != known.end();
  });
}

bool anyBegins(const std::vector<std::string>& words, std::initializer_list<std::string_view> beginnings) {
  return std::any_of(words.begin(), words.end(), [&](const std::string& word) {
    return std::any_of(beginnings.begin(), beginnings.end(),
                       [&](std::string_view beginning) { return word.starts_with(beginning); });
  });
}

/// The unit is the last word, or what stands in brackets or behind a slash; "degC" may be two words.
std::string unitPart(std::string_view heading) {
  const std::size_t open = heading.find_last_of("([{/,");
  if (open != std::string_view::npos && open + 1 < heading.size()) return std::string(heading.substr(open + 1));
  const std::size_t last = heading.find_last_of(" _-.");
  return std::string(last == std::string_view::npos ? heading : heading.substr(last + 1));
}

/// "tempc", "tf": the unit grown onto the name.
std::optional<ColumnUnit> grownOn(const std::string& word) {
  if (word.size() < 2 || word.size() > 5 || !(word.starts_with("temp") || word.size() == 2) || word.front() != 't')
    return {};
  return temperatureUnit(word.substr(word.size() - 1));
}

}  // namespace

HeadingMeaning headingMeaning(std::string_view heading) {
  HeadingMeaning said;
  const std::string_view text = trimmedCell(heading);
  if (text.empty() || text.size() > 400) return said;
  const std::vector<std::string> words = wordsOf(text);
  if (words.empty()) return said;
  const std::string unit = unitPart(text);
  const bool degrees = unit.find("°") != std::string::npos || anyBegins({unit}, {"deg", "Deg", "℃", "℉", "º"});
  const bool tempWord =
      anyBegins(words, {"temp", "degc", "degf", "celsius", "fahrenheit", "kelvin", "thermo", "°c", "°f"}) ||
      any(words, {"deg", "degree", "degrees"});
  const bool timeWord =
      any(words, {"time", "zeit", "uhrzeit", "datum", "date", "datetime", "timestamp", "clock", "elapsed", "seconds",
                  "sec", "secs", "minutes", "hours", "heure", "hora", "tiempo", "timecode"});

  said.surroundings = any(words, {"ambient", "room", "board", "junction", "case", "cjc", "air", "internal", "cold",
                                  "setpoint", "target", "nominal", "desired", "programmed", "soll"});
  said.bath = any(
      words, {"bath", "ref", "reference", "water", "coolant", "true", "standard", "oil", "measured", "actual", "ist"});
  const std::size_t bracket = text.find_last_of("([{/,");
  const std::vector<std::string> inBrackets =
      bracket == std::string_view::npos ? std::vector<std::string>() : wordsOf(text.substr(bracket));
  said.another = any(words, {"voltage",   "volt",  "volts",     "current", "amps", "humidity", "pressure", "power",
                             "deviation", "error", "tolerance", "percent", "beta", "no",       "nr",       "index",
                             "record",    "row",   "reading",   "point",   "flow", "rpm"}) ||
                 any(inBrackets, {"v", "mv", "a", "ma", "w", "bar", "kpa", "hpa", "psi", "rh"}) ||
                 text.find('%') != std::string_view::npos;
  // "Coolant sender, kΩ" and "temperature sender resistance" are ohms, whatever else they name.
  const bool ohmsWord =
      anyBegins(words, {"resist", "rés", "ohm", "kohm", "mohm", "megohm", "kilo", "widerst", "rntc", "rk"}) ||
      (resistanceUnit(unit) && unit.size() > 1);
  const bool alone = words.size() == 1;
  if ((any(words, {"direction", "dir", "heating", "ramp", "richtung"}) && !degrees) ||
      (alone && words.front() == "run")) {
    said.role = Role::direction;
  } else if ((timeWord && !degrees && !(tempWord && !timeUnit(unit))) ||
             (words.front() == "t" && timeUnit(unit) && !alone)) {
    said.role = Role::time;
    said.unit = timeUnit(unit);
  } else if (!(ohmsWord && !degrees && !temperatureUnit(unit)) &&
             (tempWord || degrees || grownOn(words.front()) || words.front() == "t" || numbered(words.front(), 't') ||
              any(words, {"theta", "ϑ", "bath", "water", "coolant"}))) {
    said.role = Role::temperature;
    said.unit = words.size() > 1 || degrees ? temperatureUnit(unit) : std::nullopt;
    if (!said.unit) said.unit = grownOn(words.front());
    if (!said.unit && words.size() > 1) said.unit = temperatureUnit(words.back());
    if (!said.unit && words.size() == 1)
      said.unit = words.front().size() > 1 ? temperatureUnit(words.front()) : std::nullopt;
  } else if (ohmsWord || words.front() == "r" || numbered(words.front(), 'r') || words.front() == "res" ||
             words.front() == "rt") {
    said.role = Role::resistance;
    said.unit = words.size() > 1 || words.front().size() > 1 ? resistanceUnit(unit) : std::nullopt;
    if (!said.unit)
      said.unit = words.front().starts_with("rk") || words.front().starts_with("kohm")
                      ? std::optional(ColumnUnit::kilohm)
                      : resistanceUnit(words.back().size() > 1 ? words.back() : std::string());
  } else if (any(words,
                 {"curve",   "sender", "part", "partno", "sensor", "probe", "serial",   "sn",   "name",  "id",   "lot",
                  "channel", "ch",     "item", "type",   "dut",    "piece", "specimen", "unit", "label", "part#"})) {
    said.role = Role::curve;
  }
  return said;
}

}  // namespace ohmkin::exchange
