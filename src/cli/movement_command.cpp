#include <cli/common_options.h>
#include <cli/json_values.h>
#include <cli/movement_command.h>
#include <cli/table_text.h>
#include <fmt/format.h>
#include <gauge/fit_movement.h>
#include <algorithm>
#include <cmath>
#include <limits>
#include <ostream>

namespace ohmkin::cli {
namespace {

/// "120=35", "0=70>" on the right stop, "open=<-66" on the left one: ohms of the box, needle in degrees clockwise from
/// straight up.
Expected<gauge::BoxReading> boxReading(const std::string& word, double uncertainty) {
  const auto bad = [&] {
    return refuse(
        "box-reading-unreadable", "OHMS=DEGREES", "'" + word + "'",
        "ohms of the box, or open, and the needle's angle: 120=35, 0=70> on the right stop, open=<-66 on the left");
  };
  const auto equals = word.find('=');
  if (equals == std::string::npos) return bad();
  gauge::BoxReading reading;
  reading.uncertainty = uncertainty;
  const std::string box = word.substr(0, equals);
  if (box == "open") {
    reading.box = ohms(std::numeric_limits<double>::infinity());
  } else {
    const auto number = parseNumber(box);
    if (!number || *number < 0) return bad();
    reading.box = ohms(*number);
  }
  std::string angle = word.substr(equals + 1);
  if (angle.ends_with('>')) reading.rests = gauge::Rests::onRightStop, angle.pop_back();
  else if (angle.starts_with('<')) reading.rests = gauge::Rests::onLeftStop, angle.erase(0, 1);
  const auto degrees = parseNumber(angle);
  if (!degrees || std::abs(*degrees) > 180) return bad();
  reading.needle = {*degrees};
  return reading;
}

std::string boxName(Ohms box) { return std::isinf(inOhms(box)) ? "open" : inOhms(box) == 0 ? "grounded" : print(box); }

struct Numbers {
  std::string names[3];
  double values[3];
  double uncertainties[3];  // standard
};

Numbers numbersOf(const gauge::MovementFit& fit) {
  Numbers out{};
  double scale = 1;
  if (const auto* coil = std::get_if<gauge::CrossedCoil>(&fit.movement)) {
    out = {
        {"grounded, °", "sweep, °", "half, Ω"}, {coil->grounded.degrees, coil->sweep.degrees, inOhms(coil->half)}, {}};
    scale = inOhms(coil->half);
  } else if (const auto* bimetal = std::get_if<gauge::Bimetal>(&fit.movement)) {
    out = {{"rest, °", "grounded, °", "heater, Ω"},
           {bimetal->rest.degrees, bimetal->grounded.degrees, inOhms(bimetal->heater)},
           {}};
    scale = inOhms(bimetal->heater);
  }
  for (std::size_t i = 0; i < 3; ++i)
    out.uncertainties[i] =
        std::sqrt(fit.covariance[i * 4]) * (i == 2 ? scale : 1);  // the third is fitted as its logarithm
  return out;
}

std::string fitText(const gauge::MovementFit& fit, const std::vector<gauge::BoxReading>& readings) {
  std::string text = fmt::format("{}\n", gauge::movementName(fit.movement));
  const Numbers numbers = numbersOf(fit);
  for (std::size_t i = 0; i < 3; ++i)
    text += fmt::format("  {:<14} {:>8.2f} ± {:.2f} (k = 2)\n", numbers.names[i], numbers.values[i],
                        2 * numbers.uncertainties[i]);
  text += fit.freedom > 0
              ? fmt::format("χ² {:.2f} with {} free readings more than needed.\n", fit.chiSquare, fit.freedom)
              : "Three free readings for three numbers: nothing tells whether the law holds. Read more points.\n";
  for (const Finding& finding : fit.findings) text += wrapped("! " + finding.sentence, 2, 0);
  text += "\n       box     needle       law   ± (k = 2)\n";
  for (const auto& reading : readings) {
    text += fmt::format("{:>10} {:>9.1f}° {:>8.1f}° {:>9.1f}°{}\n", boxName(reading.box), reading.needle.degrees,
                        gauge::deflection(fit.movement, reading.box).degrees, 2 * fit.knowledge(reading.box),
                        reading.rests == gauge::Rests::free ? "" : "   on a stop");
  }
  return text;
}

std::string fitJson(const gauge::MovementFit& fit) {
  Json out = document("ohmkin.movement", 1);
  out["movement"] = gauge::movementName(fit.movement);
  const Numbers numbers = numbersOf(fit);
  Json list = Json::array();
  for (std::size_t i = 0; i < 3; ++i)
    list.push_back(
        {{"name", numbers.names[i]}, {"value", numbers.values[i]}, {"standard_uncertainty", numbers.uncertainties[i]}});
  out["numbers"] = std::move(list);
  out["covariance"] = fit.covariance;
  out["chi_square"] = fit.chiSquare;
  out["degrees_of_freedom"] = fit.freedom;
  out["findings"] = json(fit.findings);
  return text(out);
}

}  // namespace

const CommandSpec& MovementCommand::spec() const {
  static const CommandSpec spec{
      "movement",
      "A gauge's movement from decade-box readings: its three numbers, and how well they are known.",
      "OHMS=DEGREES…",
      "the box and the needle, degrees clockwise from straight up; > or < where it rests on the right or left stop",
      3,
      200,
      withCommonOptions({{"--kind", "KIND", "crossed-coil or bimetal; otherwise crossed-coil"},
                         {"--regulated", "VOLTS", "RMS volts behind a bimetal's regulator; otherwise 5"},
                         {"--read-to", "DEGREES", "standard uncertainty of reading the needle; otherwise 1"}}),
      "ohmkin movement 0=64> 30=45 60=22 100=-3 200=-33 open=<-66"};
  return spec;
}

Expected<Exit> MovementCommand::run(const Arguments& arguments, Streams streams) const {
  const std::string kind = arguments.one("--kind", "crossed-coil");
  if (kind != "crossed-coil" && kind != "bimetal")
    return refuse("kind-unknown", "--kind", "'" + kind + "'", "crossed-coil or bimetal");
  const auto readTo = parseNumber(arguments.one("--read-to", "1"), "--read-to");
  if (!readTo) return tl::make_unexpected(readTo.error());
  const auto regulated = parseNumber(arguments.one("--regulated", "5"), "--regulated");
  if (!regulated) return tl::make_unexpected(regulated.error());
  if (!(*regulated > 0))
    return refuse("volts-out-of-range", "--regulated", "'" + arguments.one("--regulated") + "'", "volts above 0");
  std::vector<gauge::BoxReading> readings;
  for (const std::string& word : arguments.words) {
    const auto reading = boxReading(word, *readTo);
    if (!reading) return tl::make_unexpected(reading.error());
    readings.push_back(*reading);
  }
  std::stable_sort(readings.begin(), readings.end(), [](const auto& a, const auto& b) { return a.box < b.box; });
  const auto fit = kind == "bimetal" ? gauge::fitBimetal(readings, volts(*regulated)) : gauge::fitCrossedCoil(readings);
  if (!fit) return tl::make_unexpected(fit.error());
  streams.out << (arguments.has("--json") ? fitJson(*fit) : fitText(*fit, readings));
  return Exit::answer;
}

}  // namespace ohmkin::cli
