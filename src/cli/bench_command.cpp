#include <cli/bench_arguments.h>
#include <cli/bench_command.h>
#include <cli/bench_words.h>
#include <cli/common_options.h>
#include <cli/fit_words.h>
#include <cli/table_text.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <quantity/percent.h>
#include <workflow/bench_work.h>
#include <algorithm>
#include <ostream>

namespace ohmkin::cli {
namespace {

/// The same practice is asked about at every reading; it is said once.
std::vector<Finding> findingsOnce(const workflow::BenchAnswer& answer) {
  std::vector<Finding> once = answer.findings;
  for (const auto& line : answer.lines) {
    for (const Finding& finding : line.findings)
      if (std::find(once.begin(), once.end(), finding) == once.end()) once.push_back(finding);
  }
  return once;
}

std::vector<curve::Sample> samplesOf(const workflow::BenchAnswer& answer) {
  std::vector<curve::Sample> samples;
  samples.reserve(answer.readings.size());
  for (const auto& reading : answer.readings) samples.push_back(bench::sampleOf(reading));
  return samples;
}

std::string benchText(const workflow::BenchAnswer& answer, const workflow::BenchFamilies& families,
                      const DisplayUnits& units) {
  std::string text = findingLines(answer.cautions, 0) + "\n";
  for (const auto& reading : answer.readings)
    text += fmt::format("{:>10} ± {}   {:>10} ± {:.2g} %\n", print(reading.at, units, 1),
                        printAmount(2.0 * reading.u, units, 1), print(reading.ohms), 200 * reading.uLnOhms);
  if (!answer.readings.empty()) text += fmt::format("   (k = 2; {})\n", answer.meter.words);
  if (answer.whose) {
    text += "\n" + wrapped("Whose curve: " + whoseText(*answer.whose, families), 2, 0);
    text += findingLines(answer.whose->findings, 2);
  }
  if (answer.againstClaim) text += findingLines({*answer.againstClaim}, 2);
  if (answer.good) {
    text += "\nIs it good?\n" + findingLines(answer.good->findings, 2);
    if (!answer.good->findings.empty()) text += wrapped(answer.good->findings.front().evidence, 4, 4);
  }
  for (const auto& earlier : answer.drift) {
    text += "\n" + wrapped(fmt::format("Beside the earlier curve{}{}: {} of ohms ± {:.1f} % (k = 2).",
                                       earlier.lot.empty() ? "" : " of lot " + earlier.lot,
                                       earlier.provenance.empty() ? "" : ", " + earlier.provenance,
                                       signedPercent(earlier.drift.ratio, 1), 200 * earlier.drift.u),
                           2, 0);
    text += findingLines(earlier.drift.findings, 2);
  }
  if (answer.fit)
    text += "\n" + fitText(*answer.fit, units) + "\n" + readingsText(*answer.fit, samplesOf(answer), units);
  else if (answer.noFit) text += "\n" + wrapped(fmt::format("No curve yet: {}.", answer.noFit->sentence()), 2, 0);
  const auto rest = findingsOnce(answer);
  if (!rest.empty()) text += "\n" + findingLines(rest, 0);
  if (answer.next && answer.next->finding) text += "\n" + wrapped("→ " + answer.next->finding->sentence, 2, 0);
  return text;
}

std::string_view conformanceName(bench::Conformance conformance) {
  switch (conformance) {
    case bench::Conformance::pass:
      return "pass";
    case bench::Conformance::undecided:
      return "undecided";
    case bench::Conformance::fail:
      return "fail";
    case bench::Conformance::notComparable:
      break;
  }
  return "not comparable";
}

Json json(const bench::Acceptance& good) {
  return {{"verdict", conformanceName(good.conformance)},
          {"tolerance", good.tolerance},
          {"tolerance_assumed", good.toleranceAssumed},
          {"wrong", good.wrong},
          {"consumer_risk", good.risk ? Json(good.risk->consumer) : Json()},
          {"producer_risk", good.risk ? Json(good.risk->producer) : Json()},
          {"findings", cli::json(good.findings)}};
}

Json benchJson(const workflow::BenchAnswer& answer, const workflow::BenchFamilies& families) {
  Json out = document("ohmkin.bench", 1);
  out["cautions"] = cli::json(answer.cautions);
  out["meter"] = answer.meter.words;
  Json readings = Json::array();
  for (const auto& reading : answer.readings)
    readings.push_back({{"true_c", inCelsius(reading.at)},
                        {"u_k", inKelvin(reading.u)},
                        {"ohm", inOhms(reading.ohms)},
                        {"u_ln_ohm", reading.uLnOhms}});
  out["readings"] = std::move(readings);
  Json fit;
  if (answer.fit) putFit(fit, *answer.fit, samplesOf(answer));
  out["fit"] = std::move(fit);
  out["no_fit"] = answer.noFit ? cli::json(*answer.noFit) : Json();
  out["whose"] = answer.whose ? cli::json(*answer.whose, families) : Json();
  out["claimed_family"] = answer.claimed ? Json(families.ids[*answer.claimed].text) : Json();
  out["against_claim"] = answer.againstClaim ? cli::json(*answer.againstClaim) : Json();
  out["good"] = answer.good ? json(*answer.good) : Json();
  Json drift = Json::array();
  for (const auto& earlier : answer.drift)
    drift.push_back({{"curve", earlier.curve.text},
                     {"lot", earlier.lot},
                     {"provenance", earlier.provenance},
                     {"ratio", earlier.drift.ratio},
                     {"u", earlier.drift.u},
                     {"significant", earlier.drift.significant},
                     {"shows_k", inKelvin(earlier.drift.shows)}});
  out["drift"] = std::move(drift);
  out["next"] = answer.next ? Json{{"at_c", inCelsius(answer.next->best.at)},
                                   {"bits", answer.next->best.bits},
                                   {"certainty_now", answer.next->certaintyNow},
                                   {"certainty_then", answer.next->best.certainty}}
                            : Json();
  out["findings"] = cli::json(findingsOnce(answer));
  return out;
}

Expected<Exit> cold(const Arguments& given, const catalog::Catalogue& catalogue, const DisplayUnits& units,
                    std::ostream& out) {
  if (given.words.size() != 1)
    return refuse("cold-wants-one", "--cold", fmt::format("{} readings", given.words.size()),
                  "one: room temperature and cold ohms, for example 22C=480");
  const auto reading = parseReading(given.words.front(), units.temperature, "T=R");
  if (!reading) return tl::make_unexpected(reading.error());
  const auto families = workflow::benchFamilies(catalogue);
  const auto check = workflow::quickCheck(catalogue, families, given.one("--meter"), reading->first, reading->second,
                                          kelvins(2), units);
  if (!check) return tl::make_unexpected(asBenchOption(check.error()));
  const auto names = [&](const std::vector<std::size_t>& some) {
    std::vector<std::string> all;
    all.reserve(some.size());
    for (const std::size_t i : some) all.push_back(families.curves[i].name);
    return all;
  };
  if (given.has("--json")) {
    Json document = cli::document("ohmkin.bench-cold", 1);
    document["remain"] = names(check->remain);
    document["excluded"] = names(check->excluded);
    document["silent"] = names(check->silent);
    document["findings"] = cli::json(check->findings);
    out << text(document);
  } else {
    const auto line = [&](const char* title, const std::vector<std::size_t>& some) {
      if (!some.empty()) out << wrapped(fmt::format("{}: {}", title, fmt::join(names(some), ", ")), 2, 0);
    };
    line("Remain", check->remain);
    line("Ruled out", check->excluded);
    line("Say nothing at that temperature", check->silent);
    out << findingLines(check->findings, 0);
  }
  return check->remain.empty() ? Exit::noAnswer : Exit::answer;
}

Expected<Exit> keep(const Arguments& given, const workflow::BenchQuestion& question,
                    const workflow::BenchFamilies& families, Json& json, std::string& text) {
  const auto path = cataloguePath(given);
  if (!path) return tl::make_unexpected(path.error());
  auto catalogue = catalog::Catalogue::open(*path, catalog::Access::readWrite);
  const auto kept = workflow::keepBench(catalogue, families, question, whoIsAsking(given));
  if (!kept) return tl::make_unexpected(asBenchOption(kept.error()));
  json["kept"] = {{"run", kept->run.value}, {"curve", kept->curve ? Json(kept->curve->text) : Json()}};
  text += "\n" + wrapped(kept->sentence, 0, 0);
  return Exit::answer;
}

}  // namespace

const CommandSpec& BenchCommand::spec() const {
  static const CommandSpec spec{
      "bench",
      "Readings of a sender in a bath: whose curve it is, whether the part is good, and the temperature to read next.",
      "[T=R]…",
      "readings, temperature and ohms as the meter shows them: 60C=120, ice=920, boil=48.2, 20C=OL",
      0,
      4096,
      withCommonOptions(
          {{"--meter", "METER", "a meter of the catalogue, digital, moving-coil, or its accuracy: 0.8 %"},
           {"--leads", "OHMS[,U]", "the test leads held together; they are taken off"},
           {"--bath", "BATH", "a bath or thermometer of the catalogue, or the thermometer's accuracy: 0.5 K"},
           {"--altitude", "HEIGHT", "where the water boils: 1600 m, 5280 ft"},
           {"--barometer", "PRESSURE", "and what it shows: 1013 hPa, 29.9 inHg"},
           {"--reduced", "yes|no", "whether that is reduced to sea level, as forecasts are", false, {"yes", "no"}},
           {"--steady", "", "each was read after the ohms moved less than 0.5 % a minute"},
           {"--immersed", "", "the hex was under water, nothing touching the vessel"},
           {"--stirred", "", "the bath was stirred"},
           {"--swapped", "", "each is the mean of both ways round"},
           {"--part", "PART", "part number on the sender", false, {}, Names::parts},
           {"--lot", "LOT", "its lot, delivery or date code"},
           {"--family",
            "FAMILY",
            "family it claims to be of; otherwise the catalogue's for the part",
            false,
            {},
            Names::families},
           {"--tolerance", "PERCENT", "of ohms, where the part's own sheet states one"},
           {"--guard", "K", "guard band in standard uncertainties; otherwise 2"},
           {"--reach", "LOW:HIGH", "what the bath can do, for the next reading"},
           {"--cold", "", "one reading at room temperature: which families remain"},
           {"--keep", "", "keeps the readings, and their curve for matching"},
           {"--who", "NAME", "who measured; otherwise the name you are logged in by"}}),
      "ohmkin bench --part BR-2215 --meter digital --bath \"0.5 K\" --altitude \"1600 m\" 40C=320 60C=165 boil=60"};
  return spec;
}

Expected<Exit> BenchCommand::run(const Arguments& arguments, Streams streams) const {
  const auto units = displayUnits(arguments);
  if (!units) return tl::make_unexpected(units.error());
  const auto catalogue = openCatalogue(arguments);
  if (!catalogue) return tl::make_unexpected(catalogue.error());
  if (arguments.has("--cold")) return cold(arguments, *catalogue, *units, streams.out);
  const auto question = benchQuestion(arguments, *catalogue, *units);
  if (!question) return tl::make_unexpected(asBenchOption(question.error()));
  const auto families = workflow::benchFamilies(*catalogue);
  const auto answer = workflow::benchWork(*catalogue, families, *question);
  if (!answer) return tl::make_unexpected(asBenchOption(answer.error()));
  for (const auto& line : answer->lines)
    if (line.refused) return tl::make_unexpected(asBenchOption(*line.refused));
  Json document = benchJson(*answer, families);
  std::string said = benchText(*answer, families, *units);
  if (arguments.has("--keep")) {
    const auto kept = keep(arguments, *question, families, document, said);
    if (!kept) return kept;
  }
  streams.out << (arguments.has("--json") ? text(document) : said);
  return answer->readings.empty() ? Exit::noAnswer : Exit::answer;
}

}  // namespace ohmkin::cli
