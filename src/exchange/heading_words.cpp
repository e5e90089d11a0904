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

/// A heading taken apart; what each role asks of it. The order in which the roles are asked matters: see
/// headingMeaning().
struct Heading {
  std::string_view text;
  std::vector<std::string> words;  ///< at least one
  std::string unit;                ///< what may be one

  [[nodiscard]] const std::string& first() const { return words.front(); }
  [[nodiscard]] bool alone() const { return words.size() == 1; }
  [[nodiscard]] bool degrees() const {
    return unit.find("°") != std::string::npos || anyBegins({unit}, {"deg", "Deg", "℃", "℉", "º"});
  }
  [[nodiscard]] bool saysTemperature() const {
    return anyBegins(words, {"temp", "degc", "degf", "celsius", "fahrenheit", "kelvin", "thermo", "°c", "°f"}) ||
           any(words, {"deg", "degree", "degrees"});
  }
  [[nodiscard]] bool saysTime() const {
    return any(words, {"time", "zeit", "uhrzeit", "datum", "date", "datetime", "timestamp", "clock", "elapsed",
                       "seconds", "sec", "secs", "minutes", "hours", "heure", "hora", "tiempo", "timecode"});
  }
  [[nodiscard]] bool saysOhms() const {
    return anyBegins(words, {"resist", "rés", "ohm", "kohm", "mohm", "megohm", "kilo", "widerst", "rntc", "rk"}) ||
           (resistanceUnit(unit) && unit.size() > 1);
  }

  [[nodiscard]] bool ofSurroundings() const {
    return any(words, {"ambient", "room", "board", "junction", "case", "cjc", "air", "internal", "cold", "setpoint",
                       "target", "nominal", "desired", "programmed", "soll"});
  }
  [[nodiscard]] bool ofBath() const {
    return any(words, {"bath", "ref", "reference", "water", "coolant", "true", "standard", "oil", "measured", "actual",
                       "ist"});
  }
  [[nodiscard]] bool ofAnother() const {
    const std::size_t bracket = text.find_last_of("([{/,");
    const std::vector<std::string> inBrackets =
        bracket == std::string_view::npos ? std::vector<std::string>() : wordsOf(text.substr(bracket));
    return any(words, {"voltage",   "volt",  "volts",     "current", "amps", "humidity", "pressure", "power",
                       "deviation", "error", "tolerance", "percent", "beta", "no",       "nr",       "index",
                       "record",    "row",   "reading",   "point",   "flow", "rpm"}) ||
           any(inBrackets, {"v", "mv", "a", "ma", "w", "bar", "kpa", "hpa", "psi", "rh"}) ||
           text.find('%') != std::string_view::npos;
  }

  [[nodiscard]] bool isDirection() const {
    return (any(words, {"direction", "dir", "heating", "ramp", "richtung"}) && !degrees()) ||
           (alone() && first() == "run");
  }
  [[nodiscard]] bool isTime() const {
    return (saysTime() && !degrees() && !(saysTemperature() && !timeUnit(unit))) ||
           (first() == "t" && timeUnit(unit) && !alone());
  }
  /// "Coolant sender, kΩ" and "temperature sender resistance" are ohms, whatever else they name.
  [[nodiscard]] bool isTemperature() const {
    if (saysOhms() && !degrees() && !temperatureUnit(unit)) return false;
    return saysTemperature() || degrees() || grownOn(first()) || first() == "t" || numbered(first(), 't') ||
           any(words, {"theta", "ϑ", "bath", "water", "coolant"});
  }
  [[nodiscard]] bool isResistance() const {
    return saysOhms() || first() == "r" || numbered(first(), 'r') || first() == "res" || first() == "rt";
  }
  [[nodiscard]] bool isCurve() const {
    return any(words,
               {"curve",   "sender", "part", "partno", "sensor", "probe", "serial",   "sn",   "name",  "id",   "lot",
                "channel", "ch",     "item", "type",   "dut",    "piece", "specimen", "unit", "label", "part#"});
  }

  [[nodiscard]] std::optional<ColumnUnit> temperatureSaid() const {
    if (!alone() || degrees())
      if (const auto found = temperatureUnit(unit)) return found;
    if (const auto found = grownOn(first())) return found;
    if (!alone()) return temperatureUnit(words.back());
    return first().size() > 1 ? temperatureUnit(first()) : std::nullopt;
  }
  [[nodiscard]] std::optional<ColumnUnit> ohmsSaid() const {
    if (!alone() || first().size() > 1)
      if (const auto found = resistanceUnit(unit)) return found;
    if (first().starts_with("rk") || first().starts_with("kohm")) return ColumnUnit::kilohm;
    return resistanceUnit(words.back().size() > 1 ? words.back() : std::string());
  }
};

}  // namespace

HeadingMeaning headingMeaning(std::string_view heading) {
  HeadingMeaning said;
  const std::string_view text = trimmedCell(heading);
  if (text.empty() || text.size() > 400) return said;
  const Heading asked{text, wordsOf(text), unitPart(text)};
  if (asked.words.empty()) return said;
  said.surroundings = asked.ofSurroundings();
  said.bath = asked.ofBath();
  said.another = asked.ofAnother();
  if (asked.isDirection()) {
    said.role = Role::direction;
  } else if (asked.isTime()) {
    said.role = Role::time;
    said.unit = timeUnit(asked.unit);
  } else if (asked.isTemperature()) {
    said.role = Role::temperature;
    said.unit = asked.temperatureSaid();
  } else if (asked.isResistance()) {
    said.role = Role::resistance;
    said.unit = asked.ohmsSaid();
  } else if (asked.isCurve()) {
    said.role = Role::curve;
  }
  return said;
}

}  // namespace ohmkin::exchange
