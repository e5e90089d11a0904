#include <catalog/senders.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <workflow/bench_work.h>
#include <workflow/curves.h>
#include <workflow/import_readings.h>
#include <workflow/import_runs.h>
#include <workflow/readings.h>
#include <algorithm>

namespace ohmkin::workflow {
namespace {

const TemperatureSpan kGaugeSpan{celsius(40), celsius(120)};  ///< where a dash gauge is looked at; a judgement
const TemperatureSpan kOpenPot{celsius(0), celsius(100)};

/// The lines of the table, and what they were read in.
struct Table {
  std::vector<TakenLine> lines;
  std::vector<std::string> baths;  // evidence, each once
  std::vector<bench::Reading> readings;
  std::optional<Temperature> boils;
};

void append(std::vector<Finding>& all, const std::vector<Finding>& some) {
  all.insert(all.end(), some.begin(), some.end());
}

/// The meter's part of a line; overload is none, with its finding.
Expected<std::optional<bench::MeterReading>> meterReading(const BenchMeter& meter, const HandReading& hand,
                                                          std::vector<Finding>& findings) {
  if (!hand.shown) {
    const auto finding = bench::overload(meter.meter);
    if (!finding) return tl::make_unexpected(finding.error());
    findings.push_back(*finding);
    return std::optional<bench::MeterReading>();
  }
  Ohms shown = *hand.shown;
  if (hand.swapped) {
    const auto both = bench::averageSwapped(*hand.shown, *hand.swapped);
    if (!both) return tl::make_unexpected(both.error());
    shown = both->mean;
    append(findings, both->findings);
  }
  auto read = bench::read(meter.meter, shown, meter.leads);
  if (!read) return tl::make_unexpected(read.error());
  return std::optional(*std::move(read));
}

TakenLine takenLine(const catalog::Catalogue& catalogue, const BenchMeter& meter, const HandReading& hand,
                    Table& table) {
  TakenLine line;
  const auto bath = bathReference(catalogue, hand.bath);
  if (!bath) {
    line.refused = bath.error();
    return line;
  }
  if (hand.bath.kind == catalog::BathKind::boilingWater) table.boils = bath->at;
  const auto read = meterReading(meter, hand, line.findings);
  if (!read) {
    line.refused = read.error();
    return line;
  }
  if (!*read) return line;
  bench::Practice practice = hand.practice;
  if (hand.swapped) practice.probesSwapped = true;
  const auto taken = bench::take(*bath, **read, practice, hand.direction);
  if (!taken) {
    line.refused = taken.error();
    return line;
  }
  line.reading = taken->reading;
  append(line.findings, taken->findings);
  line.sample = table.readings.size();
  table.readings.push_back(taken->reading);
  if (std::find(table.baths.begin(), table.baths.end(), bath->evidence) == table.baths.end())
    table.baths.push_back(bath->evidence);
  return line;
}

Table tableOf(const catalog::Catalogue& catalogue, const BenchMeter& meter, const BenchQuestion& question) {
  Table table;
  for (const HandReading& hand : question.readings) table.lines.push_back(takenLine(catalogue, meter, hand, table));
  return table;
}

std::vector<Finding> cautionsFor(const BenchQuestion& question) {
  const auto isIce = [](const HandReading& hand) {
    return hand.bath.kind == catalog::BathKind::crushedIce || hand.bath.kind == catalog::BathKind::iceCubes;
  };
  // The next bath is likely a hot one: what it asks is said before it is heated.
  const bool onlyIce = !question.readings.empty() && question.bathReach && question.bathReach->high < celsius(40) &&
                       std::all_of(question.readings.begin(), question.readings.end(), isIce);
  return bench::cautions(onlyIce ? bench::BathKind::ice : bench::BathKind::heatedWater);
}

bench::NextOptions nextOptions(const BenchQuestion& question, const Table& table) {
  bench::NextOptions options;
  options.within = question.bathReach.value_or(TemperatureSpan{kOpenPot.low, table.boils.value_or(kOpenPot.high)});
  if (!table.readings.empty()) {
    options.uKelvin = table.readings.back().u;
    options.uLnOhms = table.readings.back().uLnOhms;
  }
  return options;
}

std::vector<curve::Sample> samplesOf(const std::vector<bench::Reading>& readings) {
  std::vector<curve::Sample> samples;
  samples.reserve(readings.size());
  for (const bench::Reading& reading : readings) samples.push_back(bench::sampleOf(reading));
  return samples;
}

void fitTable(const BenchQuestion& question, BenchAnswer& answer) {
  const std::vector<curve::Sample> samples = samplesOf(answer.readings);
  curve::FitOptions options;
  options.form = question.form;
  if (auto fit = curve::fit(samples, options)) answer.fit = *std::move(fit);
  else answer.noFit = fit.error();
}

Expected<void> identifyTable(const BenchFamilies& families, const BenchQuestion& question, const Table& table,
                             BenchAnswer& answer) {
  if (families.empty()) return {};
  bench::IdentifyModel model;
  model.unnamed = question.unnamed;
  if (!answer.readings.empty()) {
    auto whose = bench::identify(families.curves, answer.readings, model);
    if (!whose) return tl::make_unexpected(whose.error());
    answer.whose = *std::move(whose);
  }
  auto next = bench::nextReading(families.curves, answer.readings, nextOptions(question, table), model, question.units);
  if (!next) return tl::make_unexpected(next.error());
  answer.next = *std::move(next);
  return {};
}

Expected<void> judgeTable(const BenchFamilies& families, const BenchQuestion& question, BenchAnswer& answer) {
  if (!answer.claimed || answer.readings.empty()) return {};
  if (auto finding = bench::againstClaim(*answer.whose, families.curves, *answer.claimed))
    answer.againstClaim = *std::move(finding);
  bench::FamilyCurve claimed = families.curves[*answer.claimed];
  if (question.tolerance) claimed.tolerance = question.tolerance;
  auto good = bench::judge(claimed, answer.readings, question.rule, question.units);
  if (!good) return tl::make_unexpected(good.error());
  answer.good = *std::move(good);
  if (!families.temperaturesStated[*answer.claimed])
    answer.findings.push_back({"temperatures-not-stated", Severity::caution,
                               fmt::format("The book gives ohms of {} without temperatures: the verdict allows for "
                                           "that and is the less sure.",
                                           claimed.name),
                               "", "the family's two numbers"});
  return {};
}

void driftOfPart(const catalog::Catalogue& catalogue, const BenchQuestion& question, BenchAnswer& answer) {
  if (question.part.empty() || answer.readings.empty()) return;
  for (const catalog::Sender& sender : catalog::sendersNumbered(catalogue, question.part)) {
    for (const catalog::CurveRecord& record : catalog::benchCurves(catalogue, sender.id)) {
      const auto earlier = curveOf(record);
      if (!earlier) continue;
      if (auto drift = bench::drift(earlier->curve, answer.readings, question.units))
        answer.drift.push_back({record.id, record.lot, provenance(catalogue, record.id), *std::move(drift)});
    }
  }
}

void sayOfPart(const catalog::Catalogue& catalogue, const BenchQuestion& question, BenchAnswer& answer) {
  if (question.part.empty() || catalog::sendersNumbered(catalogue, question.part).size() == 1) return;
  answer.findings.push_back(
      {"part-unknown", Severity::caution,
       fmt::format("The catalogue has no part '{}': its readings can be kept, a curve of it not.", question.part),
       unknownPart(catalogue, question.part).expected, "the catalogue"});
}

}  // namespace

Expected<BenchAnswer> benchWork(const catalog::Catalogue& catalogue, const BenchFamilies& families,
                                const BenchQuestion& question) {
  auto meter = meterNamed(catalogue, question.meter, question.leads);
  if (!meter) return tl::make_unexpected(meter.error());
  BenchAnswer answer{cautionsFor(question), *std::move(meter), {}, {}, {}, {}, {}, {}, {}, {}, {}, {}, {}};
  if (!question.family.empty()) {
    const auto family = familyNamed(families, question.family, "family");
    if (!family) return tl::make_unexpected(family.error());
    answer.claimed = *family;
  } else if (!question.part.empty()) {
    answer.claimed = familyOfPart(catalogue, families, question.part);
  }
  Table table = tableOf(catalogue, answer.meter, question);
  answer.lines = std::move(table.lines);
  answer.readings = table.readings;
  if (answer.meter.assumed)
    answer.findings.push_back({"meter-assumed", Severity::caution,
                               fmt::format("Nobody said which meter: {} is assumed.", answer.meter.words), "",
                               kFromMemory});
  sayOfPart(catalogue, question, answer);
  if (!answer.readings.empty()) fitTable(question, answer);
  if (auto done = identifyTable(families, question, table, answer); !done) return tl::make_unexpected(done.error());
  if (auto done = judgeTable(families, question, answer); !done) return tl::make_unexpected(done.error());
  driftOfPart(catalogue, question, answer);
  if (auto reach = bench::reachOf(answer.readings, kGaugeSpan, question.units))
    answer.findings.push_back(*std::move(reach));
  return answer;
}

Expected<bench::QuickCheck> quickCheck(const catalog::Catalogue& catalogue, const BenchFamilies& families,
                                       std::string_view meter, Temperature room, Ohms shown,
                                       TemperatureDifference roomU, const DisplayUnits& units) {
  const auto with = meterNamed(catalogue, meter);
  if (!with) return tl::make_unexpected(with.error());
  const auto read = bench::read(with->meter, shown, with->leads, bench::Surroundings::stillAir);
  if (!read) return tl::make_unexpected(read.error());
  auto check = bench::quickCheck(families.curves, {room, roomU, read->ohms, read->uLnOhms(), std::nullopt},
                                 bench::kAssumedTolerance, units);
  if (check) append(check->findings, read->findings);
  return check;
}

Expected<KeptBench> keepBench(catalog::Catalogue& catalogue, const BenchFamilies& families,
                              const BenchQuestion& question, std::string_view who) {
  const auto answer = benchWork(catalogue, families, question);
  if (!answer) return tl::make_unexpected(answer.error());
  if (answer->readings.empty())
    return refuse("bench-nothing-to-keep", "readings", "none that was taken", "at least one reading");
  const Table table = tableOf(catalogue, answer->meter, question);

  std::string part = question.part;
  if (const auto known = catalog::sendersNumbered(catalogue, part); known.size() == 1) part = known.front().id.text;
  const std::string family = answer->claimed ? families.ids[*answer->claimed].text : std::string();
  auto writer = catalog::BenchWriter::byHand(
      catalogue, {std::string(who), answer->meter.words, fmt::format("{}", fmt::join(table.baths, "; "))});
  KeptBench kept;
  kept.run = writer.beginRun({part, question.lot, family, std::nullopt, "", "test leads taken off"});
  for (const bench::Reading& reading : answer->readings) {
    catalog::RawReading raw;
    raw.celsius = inCelsius(reading.at);
    raw.ohms = inOhms(reading.ohms);
    raw.u = inKelvin(reading.u);
    raw.uLnOhms = reading.uLnOhms;
    if (reading.direction)
      raw.direction = *reading.direction == bench::Direction::heating ? catalog::RunDirection::heating
                                                                      : catalog::RunDirection::cooling;
    writer.add(kept.run, raw);
  }
  std::string without = answer->noFit ? answer->noFit->sentence() : "";
  if (answer->fit && part.empty()) without = "nobody said of which part they are";
  if (answer->fit && !part.empty()) {
    const std::vector<curve::Sample> samples = samplesOf(answer->readings);
    const auto curve = writer.addCurve(kept.run, benchCurveOf(*answer->fit, samples));
    if (curve) kept.curve = *curve;
    else without = curve.error().sentence();
  }
  writer.keep();
  kept.sentence = fmt::format("{} reading{} kept as run {}", answer->readings.size(),
                              answer->readings.size() == 1 ? "" : "s", kept.run.value);
  kept.sentence += kept.curve ? fmt::format("; {}{} is judged by their curve from now on.", part,
                                            question.lot.empty() ? "" : ", lot " + question.lot)
                              : fmt::format(", without a curve: {}.", without);
  if (answer->againstClaim && answer->againstClaim->severity >= Severity::warning)
    kept.findings.push_back(*answer->againstClaim);
  return kept;
}

}  // namespace ohmkin::workflow
