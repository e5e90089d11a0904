#include <fmt/format.h>
#include <workflow/judge_electrical.h>

namespace ohmkin::workflow {

ElectricalJudge::ElectricalJudge(const catalog::Catalogue& catalogue, GaugeSide side, MatchOptions options)
    : catalogue_(catalogue), side_(std::move(side)), options_(std::move(options)) {}

const catalog::Family* ElectricalJudge::family(const catalog::FamilyKey& key) {
  const auto [found, fresh] = families_.try_emplace(key.text);
  if (fresh) found->second = catalog::family(catalogue_, key);
  return found->second ? &*found->second : nullptr;
}

const Electrics* ElectricalJudge::ofFamily(const catalog::FamilyKey& key) {
  const catalog::Family* record = family(key);
  if (record == nullptr) {
    why_ = "its resistance family is not in the catalogue";
    return nullptr;
  }
  if (const auto known = judged_.find("family " + key.text); known != judged_.end()) {
    why_ = reasons_[known->first];
    return known->second ? &*known->second : nullptr;
  }
  return judged("family " + key.text, curveOf(*record), record, key == side_.family);
}

const Electrics* ElectricalJudge::ofLot(const catalog::CurveRecord& record, const catalog::FamilyKey& key) {
  // A measured lot is never taken for its family: whether it behaves so is just what the curve tells.
  return judged("lot " + record.id.text, curveOf(record), family(key), false);
}

const Electrics* ElectricalJudge::judged(const std::string& key, const Expected<SourcedCurve>& curve, const catalog::Family* family,
                                         bool sameFamily) {
  auto& slot = judged_[key];
  const auto failed = [&](const Refusal& refusal) {
    why_ = reasons_[key] = refusal.sentence();
    return nullptr;
  };
  if (!curve) return failed(curve.error());

  pairing::PairOptions pair;
  pair.sameFamily = sameFamily;
  if (family != nullptr && family->tolerance) pair.inputs.senderTolerance = *family->tolerance;
  pair.inputs.gaugeTolerance = side_.gaugeTolerance;
  const auto errors = pairing::errorTable(*side_.gauge, curve->curve, {}, side_.band, pair);
  if (!errors) return failed(errors.error());
  const auto wide = pairing::errorTable(*side_.gauge, curve->curve, {}, side_.gauge->dial().marked(), pair);

  std::optional<pairing::TrimProposal> trim;
  if (!sameFamily && !errors->backwards) {
    pairing::TrimOptions search;
    search.limits = options_.limits;
    search.pair = pair;
    if (auto proposal = pairing::proposeTrim(*side_.gauge, curve->curve, side_.band, search)) trim = std::move(*proposal);
  }
  pairing::Circumstances circumstances;
  circumstances.temperaturesStated = side_.temperaturesStated && curve->temperaturesStated;
  circumstances.boiling = side_.boiling;
  circumstances.evidence = curve->lot.empty() ? fmt::format("family {} on a gauge for {}", family != nullptr ? family->name : "?", side_.familyName)
                                              : fmt::format("bench curve of lot {} on a gauge for {}", curve->lot, side_.familyName);
  circumstances.source = curve->source;
  circumstances.units = options_.units;
  pairing::Verdict verdict = pairing::judge(*errors, trim, options_.limits, circumstances);
  slot = Electrics{curve->curve, *errors, wide ? std::optional(*wide) : std::nullopt, std::move(trim), std::move(verdict)};
  return &*slot;
}

}  // namespace ohmkin::workflow
