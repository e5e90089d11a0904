#pragma once
#include <catalog/catalogue.h>
#include <pairing/error_table.h>
#include <pairing/monte_carlo.h>
#include <pairing/trim_proposal.h>
#include <pairing/verdict.h>
#include <workflow/match.h>
#include <string>

namespace ohmkin::workflow {

/// A gauge and a sender held against one another without a vehicle. Either may be a resistance family; a gauge named by
/// family is the first one of the catalogue that was built for it, or, where none was, one that is true for it and
/// marked over its curve.
struct PairQuestion {
  std::string gauge;                        ///< family or gauge, by id or name
  std::string sender;                       ///< family or part number
  std::optional<TemperatureSpan> band;      ///< default: 11 K below an 82 °C thermostat to the hot mark
  pairing::TrimNetwork network;             ///< fitted already
  std::optional<gauge::Movement> movement;  ///< measured on this gauge, in place of the catalogue's
  gauge::Conditions conditions;             ///< cluster temperature, supply, regulator, a shared ground
  [[nodiscard]] bool asksConditions() const {
    const gauge::Conditions usual;
    return conditions.cluster != usual.cluster || conditions.supply != usual.supply ||
           conditions.regulatorWorks != usual.regulatorWorks || conditions.groundRise != usual.groundRise ||
           conditions.groundOhms != usual.groundOhms;
  }
};

struct PairAnswer {
  std::string gaugeName;
  std::string gaugeFamily;
  std::string senderName;
  std::string senderFamily;
  std::shared_ptr<const gauge::Gauge> gauge;
  curve::Curve sender;
  bool temperaturesStated = true;
  pairing::ErrorTable errors;
  pairing::Verdict verdict;
  std::string unanswered;  ///< what of the conditions could not be applied; empty where all of it was
};

Expected<PairAnswer> pair(const catalog::Catalogue& catalogue, const PairQuestion& question,
                          const MatchOptions& options = {});

}  // namespace ohmkin::workflow
