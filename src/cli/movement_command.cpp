#include <cli/box_words.h>
#include <cli/common_options.h>
#include <cli/json_values.h>
#include <cli/movement_command.h>
#include <cli/table_text.h>
#include <fmt/format.h>
#include <gauge/fit_movement.h>
#include <quantity/near_miss.h>
#include <workflow/movement_document.h>
#include <algorithm>
#include <cmath>
#include <ostream>

namespace ohmkin::cli {
namespace {

using gauge::BoxReading;
using gauge::MovementFit;
using Readings = std::vector<BoxReading>;

Angle lawAt(const gauge::Movement& movement, const BoxReading& reading) {
  gauge::Conditions conditions;
  conditions.supply = reading.supply;
  return gauge::deflection(movement, reading.box, conditions);
}

std::string readingsText(const Readings& readings, const gauge::Movement& movement, const MovementFit* fit) {
  const bool supplies = std::any_of(readings.begin(), readings.end(),
                                    [](const auto& reading) { return reading.supply != BoxReading{}.supply; });
  std::string text = fmt::format("\n       box{}     needle       law{}\n", supplies ? "   supply" : "",
                                 fit != nullptr ? "   ± (k = 2)" : "");
  for (const BoxReading& reading : readings) {
    text += fmt::format("{:>10}", boxName(reading.box));
    if (supplies) text += fmt::format(" {:>6.1f} V", inVolts(reading.supply));
    text += fmt::format(" {:>9.1f}° {:>8.1f}°", reading.needle.degrees, lawAt(movement, reading).degrees);
    if (fit != nullptr) text += fmt::format(" {:>9.1f}°", 2 * fit->knowledge(reading.box));
    text += reading.rests == gauge::Rests::free ? "\n" : "   on a stop\n";
  }
  return text;
}

std::string fitText(const MovementFit& fit, const Readings& readings) {
  std::string text = fmt::format("{}\n", gauge::movementName(fit.movement));
  for (const auto& number : fit.numbers) {
    const int digits = number.unit.empty() ? 4 : 2;
    text += fmt::format("  {:<18} {:>9.{}f} ± {:.{}f}{} (k = 2)\n", number.name, number.value, digits,
                        2 * number.uncertainty, digits, number.unit.empty() ? "" : fmt::format(" {}", number.unit));
  }
  text += fit.freedom > 0
              ? fmt::format("χ² {:.2f} with {} more than needed.\n", fit.chiSquare,
                            fit.freedom == 1 ? "1 free reading" : fmt::format("{} free readings", fit.freedom))
              : "As many free readings as numbers: nothing tells whether the law holds. Read more points.\n";
  for (const Finding& finding : fit.findings) text += wrapped("! " + finding.sentence, 2, 0);
  return text + readingsText(readings, fit.movement, &fit);
}

std::string pointsText(const gauge::BenchPoints& bench, const Readings& readings) {
  return fmt::format("bench points\n{}",
                     wrapped(fmt::format("{} points joined by a curve that only turns one way. No law is assumed, so "
                                         "nothing is smoothed and nothing checks a reading but its neighbours.",
                                         bench.points.size()),
                             2, 2)) +
         readingsText(readings, bench, nullptr);
}

Json movementJson(const gauge::Movement& movement) {
  Json out = document("ohmkin.movement", 1);
  out["movement"] = gauge::movementName(movement);
  out["law"] = Json::parse(workflow::movementLaw(movement));
  return out;
}

std::string fitJson(const MovementFit& fit) {
  Json out = movementJson(fit.movement);
  Json list = Json::array();
  for (const auto& number : fit.numbers)
    list.push_back({{"name", number.name},
                    {"unit", number.unit},
                    {"value", number.value},
                    {"standard_uncertainty", number.uncertainty}});
  out["numbers"] = std::move(list);
  out["covariance"] = fit.covariance;
  out["chi_square"] = fit.chiSquare;
  out["degrees_of_freedom"] = fit.freedom;
  out["findings"] = json(fit.findings);
  return text(out);
}

/// What the options say beside the readings.
struct Bench {
  std::string kind;
  double readTo = 1;
  Volts regulated = volts(5);
  std::optional<gauge::KeyOffNeedle> keyOff;
  std::optional<gauge::CoilOhms> coils;
};

Expected<Bench> benchOf(const Arguments& arguments) {
  Bench bench;
  bench.kind = arguments.one("--kind", "crossed-coil");
  if (bench.kind != "crossed-coil" && bench.kind != "bimetal" && bench.kind != "bench-points")
    return refuse("kind-unknown", "--kind", "'" + bench.kind + "'", "crossed-coil, bimetal or bench-points");
  const auto number = [&](const char* option, double least) -> Expected<std::optional<double>> {
    if (!arguments.has(option)) return std::optional<double>();
    const auto read = parseNumber(arguments.one(option), option);
    if (!read) return tl::make_unexpected(read.error());
    if (!(*read > least))
      return refuse("number-out-of-range", option, "'" + arguments.one(option) + "'", fmt::format("above {:g}", least));
    return std::optional<double>(*read);
  };
  const auto readTo = number("--read-to", 0);
  const auto regulated = number("--regulated", 0);
  const auto keyOff = number("--key-off", -180);
  const auto feed = number("--feed-coil", 0);
  const auto ground = number("--ground-coil", 0);
  for (const auto* read : {&readTo, &regulated, &keyOff, &feed, &ground})
    if (!*read) return tl::make_unexpected(read->error());
  bench.readTo = readTo->value_or(1);
  bench.regulated = volts(regulated->value_or(5));
  if (feed->has_value() != ground->has_value())
    return refuse("coil-missing", feed->has_value() ? "--ground-coil" : "--feed-coil", "nothing",
                  "ohms of both coils, or of none");
  if (*feed) bench.coils = gauge::CoilOhms{ohms(**feed), ohms(**ground)};
  if (*keyOff) bench.keyOff = gauge::KeyOffNeedle{{**keyOff}, bench.readTo};
  if (bench.kind != "crossed-coil" && (bench.keyOff || bench.coils))
    return refuse("option-unfit", bench.keyOff ? "--key-off" : "--feed-coil", "--kind " + bench.kind,
                  "a crossed coil, which alone has coils and a return magnet");
  return bench;
}

Expected<MovementFit> fitted(const Bench& bench, const Readings& readings) {
  if (bench.kind == "bimetal") return gauge::fitBimetal(readings, bench.regulated);
  if (bench.keyOff) return gauge::fitMagneticCoil(readings, *bench.keyOff, bench.coils);
  auto fit = gauge::fitCrossedCoil(readings);
  if (fit && bench.coils) {
    auto& coil = std::get<gauge::CrossedCoil>(fit->movement);
    coil.feedCoil = bench.coils->feed;
    coil.groundCoil = bench.coils->ground;
  }
  return fit;
}

Expected<std::vector<catalog::DialMark>> marksOf(const Arguments& arguments) {
  if (!arguments.has("--gauge")) return std::vector<catalog::DialMark>();
  const auto catalogue = openCatalogue(arguments);
  if (!catalogue) return tl::make_unexpected(catalogue.error());
  auto named = catalog::gaugesNamed(*catalogue, arguments.one("--gauge"));
  if (!named.empty()) return std::move(named.front().marks);
  std::vector<std::string> known;
  for (const auto& gauge : catalog::gauges(*catalogue)) known.insert(known.end(), {gauge.id.text, gauge.name});
  return refuse("name-unknown", "--gauge", "'" + arguments.one("--gauge") + "'",
                "a gauge of this catalogue" + perhaps(nearMisses(arguments.one("--gauge"), known)));
}

}  // namespace

const CommandSpec& MovementCommand::spec() const {
  static const CommandSpec spec{
      "movement",
      "A gauge's movement from decade-box readings: its numbers, and how well they are known. With --json, a file for "
      "pair, trim and dial.",
      "OHMS=NEEDLE…",
      "the box and the needle, degrees clockwise from straight up, or mark:TEXT; > or < where it rests on the right or "
      "left stop; @VOLTS where the feed is not 13.5 V",
      3,
      200,
      withCommonOptions({{"--kind",
                          "KIND",
                          "crossed-coil, bimetal, or bench-points for any other; otherwise crossed-coil",
                          false,
                          {"crossed-coil", "bimetal", "bench-points"}},
                         {"--regulated", "VOLTS", "RMS volts behind a bimetal's regulator; otherwise 5"},
                         {"--key-off", "DEGREES",
                          "needle without current, where a return magnet pulls it home; read at two supplies"},
                         {"--feed-coil", "OHMS", "coil from feed to sender post, by ohmmeter at the posts"},
                         {"--ground-coil", "OHMS", "coil from sender post to ground"},
                         {"--gauge", "GAUGE", "whose dial marks are meant by mark:TEXT", false, {}, Names::gauges},
                         {"--read-to", "DEGREES", "standard uncertainty of reading the needle; otherwise 1"}}),
      "ohmkin movement 0=64> 30=45 60=22 100=-3 200=-33 open=<-58"};
  return spec;
}

Expected<Exit> MovementCommand::run(const Arguments& arguments, Streams streams) const {
  const auto bench = benchOf(arguments);
  if (!bench) return tl::make_unexpected(bench.error());
  const auto marks = marksOf(arguments);
  if (!marks) return tl::make_unexpected(marks.error());
  Readings readings;
  for (const std::string& word : arguments.words) {
    const auto reading = boxReading(word, *marks, bench->readTo);
    if (!reading) return tl::make_unexpected(reading.error());
    readings.push_back(*reading);
  }
  std::stable_sort(readings.begin(), readings.end(), [](const auto& a, const auto& b) { return a.box < b.box; });
  if (bench->kind == "bench-points") {
    const auto points = gauge::benchPointsOf(readings);
    if (!points) return tl::make_unexpected(points.error());
    streams.out << (arguments.has("--json") ? text(movementJson(*points)) : pointsText(*points, readings));
    return Exit::answer;
  }
  const auto fit = fitted(*bench, readings);
  if (!fit) return tl::make_unexpected(fit.error());
  streams.out << (arguments.has("--json") ? fitJson(*fit) : fitText(*fit, readings));
  return Exit::answer;
}

}  // namespace ohmkin::cli
