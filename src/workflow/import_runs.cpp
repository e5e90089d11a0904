#include <catalog/senders.h>
#include <curve/model_text.h>
#include <fmt/format.h>
#include <quantity/near_miss.h>
#include <workflow/import_runs.h>
#include <workflow/readings.h>
#include <algorithm>
#include <cmath>
#include <numbers>

namespace ohmkin::workflow {
namespace {

constexpr std::size_t kWeighed = 40;  ///< readings: more say no more of whose curve it is
constexpr double kLeadsMatter = 0.01;

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view kBlank = " \t,;:/_-";
  const auto first = text.find_first_not_of(kBlank);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(kBlank) - first + 1);
}

std::optional<std::string> onePart(const catalog::Catalogue& catalogue, std::string_view number) {
  if (folded(number).empty()) return std::nullopt;
  const auto found = catalog::sendersNumbered(catalogue, number);
  if (found.size() != 1) return std::nullopt;
  return found.front().id.text;
}

double thermometerU(const BenchThermometer& thermometer) {
  const double accuracy = inKelvin(thermometer.accuracy);
  return thermometer.stated == bench::Stated::limits ? accuracy / std::numbers::sqrt3 : accuracy;
}

/// Standard, relative, of ohms as the file has them; of the highest range where they are above it.
double meterU(const BenchMeter& meter, Ohms shown, bool& above) {
  const bench::LeadZero leads{ohms(0), meter.leads.standardUncertainty};
  if (const auto read = bench::read(meter.meter, shown, leads)) return read->uLnOhms();
  above = true;
  const bench::MeterRange& last = meter.meter.ranges().back();
  return (last.ofReading + last.counts * inOhms(last.resolution) / inOhms(last.fullScale)) / std::numbers::sqrt3;
}

/// The points with the doubt of meter and bath in them.
std::vector<bench::Reading> readingsOf(const std::vector<RunPoint>& points, const FileInstruments& with, bool& above) {
  const double u = thermometerU(with.thermometer);
  std::vector<bench::Reading> readings;
  readings.reserve(points.size());
  for (const RunPoint& point : points)
    readings.push_back({point.at, kelvins(std::hypot(u, point.scatterKelvin)), point.ohms,
                        std::hypot(meterU(with.meter, point.ohms, above), point.scatterLnOhms), point.direction});
  return readings;
}

/// At most kWeighed of them, spread evenly over the temperatures.
std::vector<bench::Reading> thinned(std::vector<bench::Reading> readings) {
  if (readings.size() <= kWeighed) return readings;
  std::sort(readings.begin(), readings.end(), [](const auto& a, const auto& b) { return a.at < b.at; });
  std::vector<bench::Reading> few;
  for (std::size_t i = 0; i < kWeighed; ++i) few.push_back(readings[i * (readings.size() - 1) / (kWeighed - 1)]);
  return few;
}

/// Those the fit did not leave out.
std::vector<bench::Reading> belonging(const std::vector<bench::Reading>& readings, const curve::Fit& fit) {
  std::vector<bench::Reading> kept;
  for (std::size_t i = 0; i < readings.size(); ++i)
    if (std::none_of(fit.outliers.begin(), fit.outliers.end(), [&](const auto& o) { return o.index == i; }))
      kept.push_back(readings[i]);
  return kept;
}

void sayOfFit(RunPreview& run, const DisplayUnits& units) {
  for (const curve::Outlier& outlier : run.fit->outliers) {
    const curve::Sample& sample = run.points[outlier.index];
    run.findings.push_back({"reading-does-not-belong", Severity::caution,
                            fmt::format("{} at {} does not belong with the others: {}", print(sample.ohms),
                                        print(sample.at, units, 1), outlier.reason),
                            printDifference(outlier.residual, units, 1), "the file's readings"});
  }
  if (run.fit->hysteresis && run.fit->hysteresis->significant)
    run.findings.push_back(
        {"heating-and-cooling-differ", Severity::caution,
         fmt::format("Cooling reads {} hotter than heating: the sender lagged; the curve lies in the middle.",
                     printAmount(run.fit->hysteresis->difference, units, 1)),
         "", "the file's readings"});
  if (!run.fit->consistent)
    run.findings.push_back({"scatter-beyond-stated", Severity::caution,
                            "The readings scatter more than meter and bath explain; the band is widened by it.",
                            fmt::format("{:.2f} % of ohms", 100 * run.fit->scatter), "the file's readings"});
}

void sayOfClaim(RunPreview& run, const BenchFamilies& families) {
  if (!run.whose) return;
  if (run.claimed) {
    if (auto finding = bench::againstClaim(*run.whose, families.curves, *run.claimed))
      run.findings.insert(run.findings.begin(), *std::move(finding));
  } else if (!run.whose->findings.empty()) {
    run.findings.insert(run.findings.begin(), run.whose->findings.front());
  }
}

void sayOfMeasuring(RunPreview& run, const RunPoints& reduced, const FileInstruments& with, bool above) {
  if (!with.stated)
    run.findings.push_back({"doubt-not-stated", Severity::note,
                            "Nobody said how accurate meter and thermometer are: the fit goes by the scatter; for the "
                            "comparison with families a usual meter and ±1 K are assumed.",
                            with.meter.words + "; " + with.thermometer.words, "a judgement"});
  if (above)
    run.findings.push_back({"meter-range-exceeded", Severity::caution,
                            "Some ohms are above the meter's highest range: its doubt there is taken as at its end.",
                            with.meter.words, "the meter's ranges"});
  const auto least = std::min_element(run.points.begin(), run.points.end(),
                                      [](const auto& a, const auto& b) { return a.ohms < b.ohms; });
  if (with.stated && least != run.points.end() && with.meter.leads.shorted > kLeadsMatter * least->ohms)
    run.findings.push_back(
        {"leads-in-file", Severity::caution,
         fmt::format("The file's ohms are taken as they stand; the test leads' {} are not taken off.",
                     print(with.meter.leads.shorted)),
         with.meter.words, "the meter as written down"});
  if (reduced.neverStill)
    run.findings.push_back({"log-never-still", Severity::caution,
                            "This log was never still long enough: the curve goes through readings that moved, and "
                            "the sender's lag is in it.",
                            "", "the file's readings"});
}

}  // namespace

Expected<FileInstruments> fileInstruments(const catalog::Catalogue& catalogue, const ImportAsked& asked) {
  auto meter = meterNamed(catalogue, asked.meter);
  if (!meter) return tl::make_unexpected(meter.error());
  auto thermometer = thermometerNamed(catalogue, asked.bath);
  if (!thermometer) return tl::make_unexpected(thermometer.error());
  return FileInstruments{*std::move(meter), *std::move(thermometer), !asked.meter.empty() || !asked.bath.empty()};
}

std::optional<PartAndLot> partAndLot(const catalog::Catalogue& catalogue, std::string_view title) {
  const std::string_view whole = trimmed(title);
  if (auto part = onePart(catalogue, whole)) return PartAndLot{*std::move(part), {}};
  for (std::size_t end = whole.size(); end-- > 1;) {
    if (std::string_view(" ,;:/_").find(whole[end]) == std::string_view::npos) continue;
    auto part = onePart(catalogue, trimmed(whole.substr(0, end)));
    if (!part) continue;
    std::string_view lot = trimmed(whole.substr(end));
    if (lot.size() > 4 && folded(lot.substr(0, 3)) == "lot" && lot[3] == ' ') lot = trimmed(lot.substr(4));
    if (folded(lot) == "lot") continue;
    return PartAndLot{*std::move(part), std::string(lot)};
  }
  return std::nullopt;
}

Expected<RunSaid> saidOf(const catalog::Catalogue& catalogue, const BenchFamilies& families, const ImportAsked& asked,
                         const std::string& title) {
  RunSaid said{title, false, asked.part, asked.lot, asked.family};
  const auto own = std::find_if(asked.runs.begin(), asked.runs.end(), [&](const auto& r) { return r.title == title; });
  if (own != asked.runs.end()) {
    said = *own;
  } else if (const auto named = partAndLot(catalogue, title)) {
    said.part = named->part;
    if (!named->lot.empty()) said.lot = named->lot;
  }
  if (!said.part.empty()) {
    const auto part = onePart(catalogue, said.part);
    if (!part) {
      Refusal unknown = unknownPart(catalogue, said.part);
      unknown.where = "part";
      return tl::make_unexpected(std::move(unknown));
    }
    said.part = *part;
  }
  if (!said.family.empty()) {
    const auto family = familyNamed(families, said.family, "family");
    if (!family) return tl::make_unexpected(family.error());
    said.family = families.ids[*family].text;
  }
  return said;
}

RunPreview previewOf(const catalog::Catalogue& catalogue, const BenchFamilies& families, const ImportAsked& asked,
                     const FileInstruments& instruments, RunSaid said, const RunRows& rows) {
  RunPreview run;
  run.title = said.title;
  run.said = std::move(said);
  run.rows = rows.rows();
  run.overloads = rows.overloads();
  run.span = rows.span();
  run.log = rows.log();
  if (!run.said.family.empty()) run.claimed = families.at(catalog::FamilyKey(run.said.family));
  else if (!run.said.part.empty()) run.claimed = familyOfPart(catalogue, families, run.said.part);

  auto reduced = rows.points(asked.steady);
  if (!reduced) {
    run.noFit = reduced.error();
    return run;
  }
  run.reduction = reduced->reduction;
  run.reducedBy = reduced->words;
  run.steady = std::move(reduced->steady);
  bool above = false;
  std::vector<bench::Reading> readings = readingsOf(reduced->points, instruments, above);
  for (const bench::Reading& reading : readings) {
    run.points.push_back(bench::sampleOf(reading));
    if (!instruments.stated) run.points.back().uKelvin = run.points.back().uLnOhms = 0;
  }

  curve::FitOptions options;
  options.form = asked.form;
  if (auto fit = curve::fit(run.points, options)) run.fit = *std::move(fit);
  else run.noFit = fit.error();
  if (run.fit) {
    sayOfFit(run, asked.units);
    readings = belonging(readings, *run.fit);
  }
  if (!readings.empty() && !families.empty()) {
    if (auto whose = bench::identify(families.curves, thinned(std::move(readings)))) run.whose = *std::move(whose);
  }
  sayOfClaim(run, families);
  sayOfMeasuring(run, *reduced, instruments, above);
  return run;
}

namespace {

/// Standard, of ln R: what one meter and one thermometer are off by is off in all readings alike, and no number of them
/// averages it out. All of their doubt is taken as of that kind, a judgement on the safe side.
double commonDoubt(const curve::Curve& curve, const std::vector<curve::Sample>& samples) {
  double ofMeter = samples.empty() ? 0 : samples.front().uLnOhms;
  double ofBath = samples.empty() ? 0 : samples.front().uKelvin;
  for (const curve::Sample& sample : samples) {
    ofMeter = std::min(ofMeter, sample.uLnOhms);
    ofBath = std::min(ofBath, sample.uKelvin);
  }
  const double middle = (inKelvin(curve.established().low) + inKelvin(curve.established().high)) / 2;
  return std::hypot(ofMeter, curve.lnOhmsSlope(middle) * ofBath);
}

}  // namespace

catalog::BenchCurve benchCurveOf(const curve::Fit& fit, const std::vector<curve::Sample>& samples) {
  const curve::Model& model = fit.curve.model();
  catalog::BenchCurve kept;
  kept.covariance = fit.curve.covariance().values;
  kept.floor = std::max(fit.curve.floor(), commonDoubt(fit.curve, samples));
  kept.valid = fit.curve.established();
  if (const auto* table = std::get_if<curve::MonotoneTable>(&model)) {
    for (const auto& [at, r] : table->points) kept.samples.push_back({at, r});
    return kept;
  }
  for (const auto candidate : {catalog::CurveModel::beta, catalog::CurveModel::steinhartHart,
                               catalog::CurveModel::exponential, catalog::CurveModel::polynomial})
    if (catalog::text(candidate) == curve::textName(model)) kept.model = candidate;
  kept.coefficients = curve::coefficientText(model);
  for (std::size_t i = 0; i < samples.size(); ++i) {
    if (std::any_of(fit.outliers.begin(), fit.outliers.end(), [&](const auto& o) { return o.index == i; })) continue;
    kept.samples.push_back({samples[i].at, samples[i].ohms,
                            samples[i].direction == curve::Direction::cooling ? catalog::RunDirection::cooling
                                                                              : catalog::RunDirection::heating});
  }
  return kept;
}

}  // namespace ohmkin::workflow
