#pragma once
#include <catalog/gauges.h>
#include <catalog/vehicles.h>
#include <finding/finding.h>
#include <workflow/answer.h>
#include <workflow/question.h>
#include <optional>
#include <string>
#include <vector>

/// First half of the match: which vehicle, which cluster, so which gauge.
namespace ohmkin::workflow {

/// One way the dash can be.
struct DashChoice {
  std::optional<catalog::ClusterRecord> cluster;  ///< none: the gauge was named, or nothing is known of the dash
  std::optional<catalog::GaugeRecord> gauge;      ///< none: a warning lamp only, or not known
  Basis basis = Basis::notSeen;
  std::string assumes;  ///< what tells this choice from the others: "gauge package, built from 1 Feb 1974 on"
};

struct Dash {
  std::optional<catalog::VehicleLine> line;
  std::vector<DashChoice> choices;  ///< never empty
  std::vector<Chip> chips;
  std::vector<Finding> findings;
};

/// Refuses a line, year, option or gauge the catalogue does not have, with near misses; a year outside the line's span;
/// a build date that cannot belong to the model year.
Expected<Dash> resolveDash(const catalog::Catalogue& catalogue, const Question& question);

}  // namespace ohmkin::workflow
