#include <workflow/readings.h>
#include <workflow/trim.h>

namespace ohmkin::workflow {

Expected<TrimAnswer> trim(const catalog::Catalogue& catalogue, const TrimQuestion& question,
                          const MatchOptions& options) {
  auto asItIs = pair(catalogue, question.pair, options);
  if (!asItIs) return tl::make_unexpected(asItIs.error());
  pairing::TrimOptions search;
  search.series = question.series;
  search.drawer = question.drawer;
  search.feedToSender = question.feedToSender;
  search.limits = options.limits;
  search.pair = asItIs->errors.options;
  if (question.chosen) {
    auto judged = pairing::judgeTrim(*asItIs->gauge, asItIs->sender, *question.chosen, asItIs->errors.asked, search);
    if (!judged) return tl::make_unexpected(judged.error());
    return TrimAnswer{std::move(*asItIs), std::move(*judged)};
  }
  auto proposal = pairing::proposeTrim(*asItIs->gauge, asItIs->sender, asItIs->errors.asked, search);
  if (!proposal && proposal.error().code != "no-trim-helps") return tl::make_unexpected(proposal.error());
  return TrimAnswer{std::move(*asItIs), proposal ? std::optional(std::move(*proposal)) : std::nullopt};
}

Expected<DialAnswer> dial(const catalog::Catalogue& catalogue, const PairQuestion& question,
                          const std::optional<Temperature>& thermostat, const MatchOptions& options) {
  auto asItIs = pair(catalogue, question, options);
  if (!asItIs) return tl::make_unexpected(asItIs.error());
  const pairing::PairOptions& pairOptions = asItIs->errors.options;
  auto card = pairing::offsetCard(*asItIs->gauge, asItIs->sender, question.network,
                                  thermostat.value_or(kUsualThermostat), pairOptions, options.units);
  if (!card) return tl::make_unexpected(card.error());
  auto remarked = pairing::remarkedDial(*asItIs->gauge, asItIs->sender, question.network, options.units);
  DialAnswer answer{std::move(*asItIs), std::move(*card), std::nullopt, {}};
  if (remarked) answer.remarked = std::move(*remarked);
  else answer.whyNot = remarked.error().sentence();
  return answer;
}

}  // namespace ohmkin::workflow
