#include <cli/bench_arguments.h>
#include <cli/bench_words.h>
#include <fmt/format.h>
#include <quantity/barometer.h>
#include <quantity/near_miss.h>
#include <algorithm>

namespace ohmkin::cli {
namespace {

constexpr double kLeadsTouch = 0.05;  // Ω, standard: leads held together a second time; from memory, no source

Expected<std::optional<double>> percentGiven(const Arguments& given, const char* option, double most) {
  if (!given.has(option)) return std::optional<double>();
  const auto number = parseNumber(given.one(option), option);
  if (!number || !(*number > 0) || *number > most)
    return refuse("percent-unreadable", option, "'" + given.one(option) + "'",
                  fmt::format("a number above 0 and up to {:g}", most));
  return std::optional<double>(*number);
}

/// What the options say of the water and of the thermometer; each word then says which of them it is of.
Expected<workflow::BathSaid> bathGiven(const Arguments& given, const catalog::Catalogue& catalogue) {
  workflow::BathSaid bath;
  if (given.has("--bath")) {
    if (auto known = workflow::bathNamed(catalogue, given.one("--bath"))) bath = *std::move(known);
    else bath.thermometer = given.one("--bath");
  }
  if (given.has("--altitude")) {
    const auto altitude = parseAltitude(given.one("--altitude"), "--altitude");
    if (!altitude) return tl::make_unexpected(altitude.error());
    bath.altitude = *altitude;
  }
  if (given.has("--barometer")) {
    const auto pressure = parseBarometer(given.one("--barometer"), "--barometer");
    if (!pressure) return tl::make_unexpected(pressure.error());
    bath.barometer = *pressure;
  }
  if (given.has("--reduced")) {
    const auto reduced = reducedGiven(given.one("--reduced"));
    if (!reduced) return tl::make_unexpected(reduced.error());
    bath.reduced = *reduced;
  }
  return bath;
}

bench::Practice practiceGiven(const Arguments& given) {
  bench::Practice practice;
  if (given.has("--steady")) practice.perMinute = 0;
  if (given.has("--immersed")) practice.immersedPastHex = true;
  if (given.has("--stirred")) practice.stirred = true;
  if (given.has("--swapped")) practice.probesSwapped = true;
  return practice;
}

/// A word: where it was read, and what was read.
Expected<workflow::HandReading> handReading(const std::string& word, const workflow::BathSaid& bath,
                                            const DisplayUnits& units) {
  const auto equals = word.find('=');
  if (equals == std::string::npos)
    return refuse("reading-unreadable", "T=R", "'" + word + "'", "a reading: 95C=51, ice=920, boil=48.2 or 20C=OL");
  workflow::HandReading hand;
  hand.bath = bath;
  const std::string at = word.substr(0, equals);
  if (folded(at) == "ice") {
    if (bath.kind != catalog::BathKind::iceCubes) hand.bath.kind = catalog::BathKind::crushedIce;
  } else if (folded(at) == "boil") {
    hand.bath.kind = catalog::BathKind::boilingWater;
  } else {
    const auto shown = parseTemperature(at, units.temperature, "T=R");
    if (!shown) return tl::make_unexpected(shown.error());
    hand.bath.kind = catalog::BathKind::thermometer;
    hand.bath.shown = *shown;
  }
  const std::string read = word.substr(equals + 1);
  if (folded(read) == "ol" || folded(read) == "inf" || folded(read) == "open") return hand;
  const auto r = parseOhms(read, "T=R");
  if (!r) return tl::make_unexpected(r.error());
  hand.shown = *r;
  return hand;
}

}  // namespace

Expected<bench::LeadZero> leadsGiven(const std::string& text) {
  const auto comma = text.find(',');
  const auto shorted = parseNumber(text.substr(0, comma), "--leads");
  const auto u =
      comma == std::string::npos ? Expected<double>(kLeadsTouch) : parseNumber(text.substr(comma + 1), "--leads");
  if (!shorted || !u || !(*shorted >= 0) || *shorted > 100 || !(*u >= 0) || *u > 100)
    return refuse("leads-unreadable", "--leads", "'" + text + "'",
                  "ohms of the leads held together, for example 0.3, or with their standard uncertainty 0.3,0.05");
  return bench::LeadZero{ohms(*shorted), ohms(*u)};
}

Expected<bench::Reduced> reducedGiven(const std::string& text) {
  if (folded(text) == "yes") return bench::Reduced::toSeaLevel;
  if (folded(text) == "no") return bench::Reduced::no;
  return refuse("reduced-unreadable", "--reduced", "'" + text + "'",
                "yes for a pressure reduced to sea level, no for the shop's own");
}

Expected<workflow::BenchQuestion> benchQuestion(const Arguments& given, const catalog::Catalogue& catalogue,
                                                const DisplayUnits& units) {
  workflow::BenchQuestion question;
  question.units = units;
  question.meter = given.one("--meter");
  question.part = given.one("--part");
  question.lot = given.one("--lot");
  question.family = given.one("--family");
  if (given.has("--leads")) {
    const auto leads = leadsGiven(given.one("--leads"));
    if (!leads) return tl::make_unexpected(leads.error());
    question.leads = *leads;
  }
  const auto tolerance = percentGiven(given, "--tolerance", 99);
  if (!tolerance) return tl::make_unexpected(tolerance.error());
  if (*tolerance) question.tolerance = **tolerance / 100;
  const auto guard = percentGiven(given, "--guard", 10);
  if (!guard) return tl::make_unexpected(guard.error());
  if (*guard) question.rule.guard = **guard;
  if (given.has("--reach")) {
    const auto reach = parseBand(given.one("--reach"), units.temperature, "--reach");
    if (!reach) return tl::make_unexpected(reach.error());
    question.bathReach = *reach;
  }
  const auto bath = bathGiven(given, catalogue);
  if (!bath) return tl::make_unexpected(bath.error());
  for (const std::string& word : given.words) {
    auto hand = handReading(word, *bath, units);
    if (!hand) return tl::make_unexpected(hand.error());
    hand->practice = practiceGiven(given);
    question.readings.push_back(*std::move(hand));
  }
  return question;
}

}  // namespace ohmkin::cli
