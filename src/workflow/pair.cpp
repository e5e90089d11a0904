#include <fmt/format.h>
#include <workflow/judge_electrical.h>
#include <workflow/pair.h>
#include <workflow/readings.h>
#include <workflow/sides.h>

namespace ohmkin::workflow {
Expected<PairAnswer> pair(const catalog::Catalogue& catalogue, const PairQuestion& question,
                          const MatchOptions& options) {
  auto gauge = findGauge(catalogue, question.gauge, question.movement);
  if (!gauge) return tl::make_unexpected(gauge.error());
  auto sender = findSender(catalogue, question.sender);
  if (!sender) return tl::make_unexpected(sender.error());

  TemperatureSpan band = question.band.value_or(TemperatureSpan{celsius(0), celsius(0)});
  if (!question.band) {
    const auto usual = pairing::defaultBand(gauge->gauge, kUsualThermostat);
    band = usual ? *usual : gauge->gauge.dial().marked();
  }
  pairing::PairOptions pair;
  pair.rows = kRows;
  pair.conditions = question.conditions;
  pair.sameFamily = gauge->family.id == sender->family.id;
  pair.inputs.gaugeTolerance = gauge->tolerance;
  pair.inputs.senderTolerance = sender->family.tolerance;
  auto errors = pairing::errorTable(gauge->gauge, sender->curve.curve, question.network, band, pair);
  if (!errors) return tl::make_unexpected(errors.error());
  pairing::Circumstances circumstances;
  circumstances.temperaturesStated = gauge->curve.temperaturesStated && sender->curve.temperaturesStated;
  circumstances.evidence = fmt::format("family {} on a gauge for {}", sender->family.name, gauge->family.name);
  circumstances.source = sender->curve.source;
  circumstances.units = options.units;
  pairing::Verdict verdict = pairing::judge(*errors, std::nullopt, options.limits, circumstances);
  std::string unanswered;
  if (gauge->gauge.movement()) unanswered = gauge::unanswered(*gauge->gauge.movement(), question.conditions);
  else if (question.asksConditions()) unanswered = "The movement is not known, so the conditions are left out.";
  return PairAnswer{question.movement ? gauge->name + ", its movement as measured" : gauge->name,
                    gauge->family.name,
                    sender->name,
                    sender->family.name,
                    std::make_shared<const gauge::Gauge>(std::move(gauge->gauge)),
                    sender->curve.curve,
                    circumstances.temperaturesStated,
                    std::move(*errors),
                    std::move(verdict),
                    std::move(unanswered)};
}

}  // namespace ohmkin::workflow
