#include <dating/model_year.h>
#include <fmt/format.h>
#include <quantity/near_miss.h>
#include <workflow/resolve_dash.h>
#include <algorithm>

namespace ohmkin::workflow {
namespace {

/// Days outside which a vehicle of this model year cannot have been built: usual production with a month of early
/// starts and four of late runs. Wide on purpose, since it refuses; a judgement from memory, no source.
DateSpan modelYearWindow(ModelYear year) {
  const DateSpan usual = dating::usualProduction(year);
  return {*usual.from - std::chrono::days{31}, *usual.until + std::chrono::days{122}};
}

Expected<std::optional<catalog::VehicleLine>> findLine(const catalog::Catalogue& catalogue, const Question& question) {
  if (question.line.empty()) return std::optional<catalog::VehicleLine>{};
  std::vector<catalog::VehicleLine> found = catalog::linesNamed(catalogue, question.line);
  if (found.size() > 1 && question.year)
    std::erase_if(found, [&](const auto& line) { return !line.years.holds(*question.year); });
  if (found.size() == 1) return std::optional(std::move(found.front()));
  if (found.size() > 1) {
    return refuse("line-ambiguous", "--vehicle",
                  fmt::format("'{}', which {} lines are called", question.line, found.size()),
                  fmt::format("its make too: {} {} or {} {}", found[0].makeName, found[0].name, found[1].makeName,
                              found[1].name));
  }
  std::vector<std::string> names;
  for (auto& name : catalog::lineNames(catalogue)) names.push_back(std::move(name.name));
  return refuse("line-unknown", "--vehicle", fmt::format("'{}'", question.line),
                "a vehicle line of this catalogue" + perhaps(nearMisses(question.line, names)));
}

Expected<void> checkYear(const catalog::VehicleLine& line, const Question& question) {
  if (question.year && !line.years.holds(*question.year))
    return refuse("year-outside-line", "--year", fmt::format("{}", question.year->value),
                  fmt::format("a model year of the {} {}: {}", line.makeName, line.name, plainSpan(line.years)));
  if (question.year && question.built && !modelYearWindow(*question.year).holds(*question.built))
    return refuse("built-outside-year", "--built", isoDate(*question.built),
                  fmt::format("a day on which model year {} can have been built: {} to {}", question.year->value,
                              plainDate(*modelYearWindow(*question.year).from),
                              plainDate(*modelYearWindow(*question.year).until)));
  return {};
}

/// "gauge package, built from 1 Feb 1974 on".
std::string tellingWords(const catalog::ClusterRecord& cluster) {
  std::string words = cluster.option;
  if (cluster.built.from) words += fmt::format(", built from {} on", plainDate(*cluster.built.from));
  if (cluster.built.until) words += fmt::format(", built before {}", plainDate(*cluster.built.until));
  if (cluster.serials.from) words += fmt::format(", from serial {} on", *cluster.serials.from);
  if (cluster.serials.until) words += fmt::format(", before serial {}", *cluster.serials.until);
  return words;
}

Expected<std::vector<catalog::ClusterRecord>> possibleClusters(const catalog::Catalogue& catalogue,
                                                               const catalog::VehicleLine& line,
                                                               const Question& question) {
  std::vector<catalog::ClusterRecord> found =
      question.year ? catalog::clusters(catalogue, line.id, *question.year) : catalog::clusters(catalogue, line.id);
  if (question.built) std::erase_if(found, [&](const auto& cluster) { return !cluster.built.holds(*question.built); });
  // A cluster whose change is not told by serial is not ruled out by one.
  if (question.serial)
    std::erase_if(found, [&](const auto& cluster) { return !cluster.serials.holds(*question.serial); });
  if (question.built && !question.year) {
    std::erase_if(found, [&](const auto& cluster) {
      for (int year = cluster.years.from.value; year < cluster.years.until.value; ++year)
        if (modelYearWindow(ModelYear{year}).holds(*question.built)) return false;
      return true;
    });
  }
  if (question.cluster.empty()) return found;
  std::vector<catalog::ClusterRecord> wanted;
  for (const auto& cluster : found) {
    if (folded(cluster.option) == folded(question.cluster) || folded(cluster.id.text) == folded(question.cluster))
      wanted.push_back(cluster);
  }
  if (!wanted.empty()) return wanted;
  std::vector<std::string> options;
  options.reserve(found.size());
  for (const auto& cluster : found) options.push_back(cluster.option);
  std::string expected = "a cluster option of this line and year";
  if (options.size() <= 4 && !options.empty()) expected += ": " + perhaps(options).substr(sizeof(", perhaps ") - 1);
  else expected += perhaps(nearMisses(question.cluster, options));
  return refuse("cluster-unknown", "--cluster", fmt::format("'{}'", question.cluster), std::move(expected));
}

Expected<catalog::GaugeRecord> namedGauge(const catalog::Catalogue& catalogue, const std::string& name) {
  std::vector<catalog::GaugeRecord> found = catalog::gaugesNamed(catalogue, name);
  // cppcheck-suppress returnStdMoveLocal ; an element, not what is returned
  if (!found.empty()) return std::move(found.front());
  std::vector<std::string> names;
  for (const auto& gauge : catalog::gauges(catalogue)) names.insert(names.end(), {gauge.id.text, gauge.name});
  return refuse("gauge-unknown", "--gauge", fmt::format("'{}'", name),
                "a gauge of this catalogue" + perhaps(nearMisses(name, names)));
}

DashChoice choiceOf(const catalog::Catalogue& catalogue, catalog::ClusterRecord cluster, bool alone) {
  DashChoice choice;
  if (cluster.gauge) choice.gauge = catalog::gauge(catalogue, *cluster.gauge);
  choice.assumes = tellingWords(cluster);
  choice.basis = alone ? Basis::known : Basis::inferred;
  choice.cluster = std::move(cluster);
  return choice;
}

}  // namespace

Expected<Dash> resolveDash(const catalog::Catalogue& catalogue, const Question& question) {
  Dash dash;
  auto line = findLine(catalogue, question);
  if (!line) return tl::make_unexpected(line.error());
  dash.line = std::move(*line);
  if (dash.line) {
    if (const auto fits = checkYear(*dash.line, question); !fits) return tl::make_unexpected(fits.error());
    dash.chips.push_back({fmt::format("{} {}{}", dash.line->makeName, dash.line->name,
                                      question.year ? fmt::format(", model year {}", question.year->value) : ""),
                          Basis::known});
  }

  if (!question.gauge.empty()) {
    auto gauge = namedGauge(catalogue, question.gauge);
    if (!gauge) return tl::make_unexpected(gauge.error());
    dash.chips.push_back({"Gauge " + gauge->name, Basis::seen});
    dash.choices.push_back({std::nullopt, std::move(*gauge), Basis::seen, {}});
    return dash;
  }
  if (question.dashOriginal == false || !dash.line) {
    dash.choices.push_back({});
    return dash;
  }

  auto clusters = possibleClusters(catalogue, *dash.line, question);
  if (!clusters) return tl::make_unexpected(clusters.error());
  for (auto& cluster : *clusters) {
    if (clusters->size() == 1)
      dash.chips.push_back(
          {fmt::format("Cluster {}, model years {}", tellingWords(cluster), plainSpan(cluster.years)), Basis::known});
    dash.choices.push_back(choiceOf(catalogue, std::move(cluster), clusters->size() == 1));
  }
  if (dash.choices.size() > 1)
    dash.chips.push_back({fmt::format("{} clusters possible", dash.choices.size()), Basis::inferred});
  if (dash.choices.empty()) {
    dash.findings.push_back({"cluster-not-on-record", Severity::caution,
                             "The catalogue has no cluster for this line and year; name the gauge to go on.",
                             fmt::format("{} {}", dash.line->makeName, dash.line->name),
                             catalog::cite(dash.line->source)});
    dash.choices.push_back({});
  }
  return dash;
}

}  // namespace ohmkin::workflow
