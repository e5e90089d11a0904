#include <workflow/document_values.h>

namespace ohmkin::workflow::documents {
namespace {

std::string_view name(Severity severity) {
  switch (severity) {
    case Severity::note:
      return "note";
    case Severity::caution:
      return "caution";
    case Severity::warning:
      return "warning";
    case Severity::refusal:
      return "refusal";
  }
  return "";
}

std::string_view name(pairing::HotSign sign) {
  switch (sign) {
    case pairing::HotSign::onTime:
      return "on-time";
    case pairing::HotSign::early:
      return "early";
    case pairing::HotSign::late:
      return "late";
    case pairing::HotSign::notSettled:
      return "not-settled";
  }
  return "";
}

std::string_view name(pairing::FailureMode mode) {
  switch (mode) {
    case pairing::FailureMode::opens:
      return "opens";
    case pairing::FailureMode::shorts:
      return "shorts";
    case pairing::FailureMode::driftsUp:
      return "drifts-up";
    case pairing::FailureMode::driftsDown:
      return "drifts-down";
    case pairing::FailureMode::leadOpens:
      return "lead-opens";
    case pairing::FailureMode::leadGrounded:
      return "lead-grounded";
  }
  return "";
}

Json json(const pairing::Extreme& extreme) {
  return {{"error_k", inKelvin(extreme.error)},
          {"at_c", inCelsius(extreme.at)},
          {"uncertainty_k", inKelvin(extreme.uncertainty.total())}};
}

}  // namespace

Json document(std::string_view schema, int version) { return {{"schema", schema}, {"version", version}}; }

std::string text(const Json& json) { return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n"; }

int depthOf(std::string_view json) {
  int depth = 0;
  int deepest = 0;
  bool quoted = false;
  for (std::size_t i = 0; i < json.size(); ++i) {
    const char c = json[i];
    if (quoted) {
      if (c == '\\') ++i;
      else if (c == '"') quoted = false;
    } else if (c == '"') {
      quoted = true;
    } else if (c == '{' || c == '[') {
      deepest = std::max(deepest, ++depth);
    } else if (c == '}' || c == ']') {
      --depth;
    }
  }
  return deepest;
}

std::string textOf(const Json& json, const char* key) {
  return json.is_object() && json.contains(key) && json[key].is_string() ? json[key].get<std::string>() : std::string();
}

Json json(const Finding& finding) {
  return {{"code", finding.code},
          {"severity", name(finding.severity)},
          {"sentence", finding.sentence},
          {"evidence", finding.evidence},
          {"source", finding.source}};
}

Json json(const std::vector<Finding>& findings) {
  Json out = Json::array();
  for (const Finding& finding : findings) out.push_back(json(finding));
  return out;
}

Json json(const Refusal& refusal) {
  return {{"code", refusal.code},
          {"where", refusal.where},
          {"found", refusal.found},
          {"expected", refusal.expected},
          {"sentence", refusal.sentence()}};
}

Json json(const gauge::Reading& reading) {
  const std::string_view where = reading.where == gauge::Where::onTheMarks      ? "on-the-marks"
                                 : reading.where == gauge::Where::belowTheMarks ? "below-the-marks"
                                                                                : "past-the-marks";
  return {{"shown_c", inCelsius(reading.shown)},
          {"where", where},
          {"needle_degrees", reading.needle.degrees},
          {"extrapolated", reading.extrapolated}};
}

Json json(const pairing::HotWarning& hot) {
  if (const auto* reaches = std::get_if<pairing::Reaches>(&hot))
    return {{"reaches", "yes"},
            {"at_c", inCelsius(reaches->at)},
            {"late_k", inKelvin(reaches->late)},
            {"mismatch_uncertainty_k", inKelvin(reaches->uncertainty.mismatch)},
            {"extrapolated", reaches->extrapolated}};
  if (const auto* never = std::get_if<pairing::NeverReaches>(&hot))
    return {{"reaches", "never"},
            {"curve_ends_c", inCelsius(never->curveEnds)},
            {"at_least_late_k", inKelvin(never->atLeastLate)}};
  const auto& past = std::get<pairing::PastAlready>(hot);
  return {{"reaches", "past-already"},
          {"curve_begins_c", inCelsius(past.curveBegins)},
          {"at_least_early_k", inKelvin(past.atLeastEarly)}};
}

Json json(const pairing::ErrorTable& table) {
  Json rows = Json::array();
  for (const auto& row : table.rows) {
    rows.push_back({{"true_c", inCelsius(row.trueTemperature)},
                    {"indicated", json(row.indicated)},
                    {"error_k", inKelvin(row.error)},
                    {"mismatch_uncertainty_k", inKelvin(row.uncertainty.mismatch)},
                    {"shared_uncertainty_k", inKelvin(row.uncertainty.shared)},
                    {"uncertainty_k", inKelvin(row.uncertainty.total())},
                    {"extrapolated", row.extrapolated}});
  }
  return {{"asked_c", {inCelsius(table.asked.low), inCelsius(table.asked.high)}},
          {"covered_c", {inCelsius(table.covered.low), inCelsius(table.covered.high)}},
          {"worst", json(table.worst)},
          {"low", json(table.low)},
          {"high", json(table.high)},
          {"hot_mark", json(table.hot)},
          {"hot_sign", name(table.hotSign)},
          {"backwards", table.backwards},
          {"sender_tolerance_assumed", table.senderToleranceAssumed},
          {"movement_assumed", table.movementAssumed},
          {"rows", std::move(rows)}};
}

Json json(const pairing::TrimNetwork& network) {
  const auto ohmsOr = [](bool there, Ohms r) { return there ? Json(inOhms(r)) : Json(); };
  return {{"name", network.name()},
          {"series_ohm", ohmsOr(network.hasSeries(), network.seriesOhms())},
          {"parallel_ohm", ohmsOr(network.hasParallel(), network.parallelOhms())},
          {"feed_ohm", ohmsOr(network.topology() == pairing::Topology::feedToSender, network.feedOhms())}};
}

Json json(const pairing::TrimProposal& proposal) {
  Json failures = Json::array();
  for (const auto& failure : proposal.failures) {
    failures.push_back({{"part", failure.part},
                        {"mode", name(failure.mode)},
                        {"at_hot_mark", json(failure.atHotMark)},
                        {"noticed", failure.noticed},
                        {"reads_low", failure.readsLow},
                        {"severity", name(failure.severity)},
                        {"sentence", failure.sentence}});
  }
  Json loads = Json::array();
  for (const auto& load : proposal.loads) {
    loads.push_back({{"part", load.part},
                     {"ohm", inOhms(load.resistance)},
                     {"working_w", load.working ? Json(inWatts(*load.working)) : Json()},
                     {"shorted_to_feed_w", inWatts(load.shortedToFeed)},
                     {"buy_w", inWatts(load.rating)}});
  }
  Json tolerances = Json::array();
  for (const auto& tolerance : proposal.tolerances) {
    tolerances.push_back({{"tolerance", tolerance.tolerance},
                          {"low_k", inKelvin(tolerance.low)},
                          {"high_k", inKelvin(tolerance.high)},
                          {"late_k", tolerance.late ? Json(inKelvin(*tolerance.late)) : Json()}});
  }
  return {{"network", json(proposal.network)},
          {"within_limits", proposal.withinLimits},
          {"permanent", proposal.permanent},
          {"weighted_worst_k", inKelvin(proposal.weightedWorst)},
          {"weighted_worst_before_k", inKelvin(proposal.weightedWorstBefore)},
          {"after", json(proposal.after)},
          {"tolerances", std::move(tolerances)},
          {"loads", std::move(loads)},
          {"failures", std::move(failures)},
          {"findings", json(proposal.findings)},
          {"search",
           {{"networks", proposal.search.networks},
            {"evaluated", proposal.search.evaluated},
            {"excluded_by_bound", proposal.search.excluded}}}};
}

}  // namespace ohmkin::workflow::documents
