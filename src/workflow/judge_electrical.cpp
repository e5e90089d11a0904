#include <fmt/format.h>
#include <workflow/judge_electrical.h>

namespace ohmkin::workflow {

ElectricalJudge::ElectricalJudge(const catalog::Catalogue& catalogue, GaugeSide side, MatchOptions options, PairMemory& memory)
    : catalogue_(catalogue),
      side_(std::move(side)),
      options_(std::move(options)),
      memory_(memory),
      onThisGauge_(fmt::format("{} {} {} {} ", side_.id, inKelvin(side_.band.low), inKelvin(side_.band.high), side_.boiling ? inKelvin(*side_.boiling) : 0.0)) {}

const catalog::Family* ElectricalJudge::family(const catalog::FamilyKey& key) {
  const auto [found, fresh] = memory_.families.try_emplace(key.text);
  if (fresh) found->second = catalog::family(catalogue_, key);
  return found->second ? &*found->second : nullptr;
}

std::shared_ptr<const Electrics> ElectricalJudge::ofFamily(const catalog::FamilyKey& key, bool seekTrim) {
  const catalog::Family* record = family(key);
  if (record == nullptr) {
    why_ = "its resistance family is not in the catalogue";
    return nullptr;
  }
  const std::string name = onThisGauge_ + "family " + key.text;
  if (const auto known = memory_.judged.find(name); known != memory_.judged.end()) return answered(known->second, seekTrim);
  return judged(name, curveOf(*record), record, key == side_.family, seekTrim);
}

std::shared_ptr<const Electrics> ElectricalJudge::ofLot(const catalog::CurveRecord& record, const catalog::FamilyKey& key, bool seekTrim) {
  // A measured lot is never taken for its family: whether it behaves so is just what the curve tells.
  const std::string name = onThisGauge_ + "lot " + record.id.text;
  if (const auto known = memory_.judged.find(name); known != memory_.judged.end()) return answered(known->second, seekTrim);
  return judged(name, curveOf(record), family(key), false, seekTrim);
}

std::shared_ptr<const Electrics> ElectricalJudge::judged(const std::string& key, const Expected<SourcedCurve>& curve, const catalog::Family* family,
                                         bool sameFamily, bool seekTrim) {
  Kept& kept = memory_.judged[key];
  const auto failed = [&](const Refusal& refusal) {
    kept.why = refusal.sentence();
    return answered(kept, false);
  };
  if (!curve) return failed(curve.error());

  pairing::PairOptions pair;
  pair.rows = kRows;
  pair.sameFamily = sameFamily;
  if (family != nullptr && family->tolerance) pair.inputs.senderTolerance = *family->tolerance;
  pair.inputs.gaugeTolerance = side_.gaugeTolerance;
  auto errors = pairing::errorTable(*side_.gauge, curve->curve, {}, side_.band, pair);
  if (!errors) return failed(errors.error());
  std::optional<pairing::ErrorTable> wide;
  if (options_.forDrawing) {
    pair.rows = kDrawnRows;
    if (auto table = pairing::errorTable(*side_.gauge, curve->curve, {}, side_.gauge->dial().marked(), pair)) wide = std::move(*table);
  }
  kept.circumstances.temperaturesStated = side_.temperaturesStated && curve->temperaturesStated;
  kept.circumstances.boiling = side_.boiling;
  kept.circumstances.evidence = fmt::format("{} on a gauge for {}",
                                            !curve->lot.empty()  ? "bench curve of lot " + curve->lot
                                            : family != nullptr ? "family " + family->name
                                                                : "its curve",
                                            side_.familyName);
  kept.circumstances.source = curve->source;
  kept.circumstances.units = options_.units;
  pairing::Verdict verdict = pairing::judge(*errors, std::nullopt, options_.limits, kept.circumstances);
  kept.electrics = std::make_shared<Electrics>(Electrics{curve->curve, std::move(*errors), std::move(wide), std::nullopt, std::move(verdict)});
  return answered(kept, seekTrim);
}

std::shared_ptr<const Electrics> ElectricalJudge::answered(Kept& kept, bool seekTrim) {
  why_ = kept.why;
  if (!kept.electrics) return nullptr;
  Electrics& electrics = *kept.electrics;
  const bool fits = electrics.verdict.electrical == pairing::Electrical::sameFamily || electrics.verdict.electrical == pairing::Electrical::withinLimits;
  if (!seekTrim || kept.trimSought || fits || electrics.errors.backwards) return kept.electrics;
  kept.trimSought = true;
  pairing::TrimOptions search;
  search.limits = options_.limits;
  search.pair = electrics.errors.options;
  search.feedToSender = false;  // unusual and in need of a fuse: only where somebody asks for it
  if (auto proposal = pairing::proposeTrim(*side_.gauge, electrics.curve, side_.band, search)) {
    electrics.trim = std::move(*proposal);
    electrics.verdict = pairing::judge(electrics.errors, electrics.trim, options_.limits, kept.circumstances);
  }
  return kept.electrics;
}

}  // namespace ohmkin::workflow
