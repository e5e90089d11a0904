#include <fmt/format.h>
#include <workflow/judge_electrical.h>

namespace ohmkin::workflow {

ElectricalJudge::ElectricalJudge(const catalog::Catalogue& catalogue, GaugeSide side, MatchOptions options,
                                 PairMemory& memory)
    : catalogue_(catalogue),
      side_(std::move(side)),
      options_(std::move(options)),
      memory_(memory),
      onThisBand_(fmt::format("{} {} {} ", side_.id, inKelvin(side_.band.low), inKelvin(side_.band.high))),
      boilsAt_(fmt::format(" {}", side_.boiling ? inKelvin(*side_.boiling) : 0.0)) {}

const catalog::Family* ElectricalJudge::family(const catalog::FamilyKey& key) {
  const auto [found, fresh] = memory_.families.try_emplace(key.text);
  if (fresh) found->second = catalog::family(catalogue_, key);
  return found->second ? &*found->second : nullptr;
}

std::string ElectricalJudge::onBandName(const catalog::FamilyKey& family, const catalog::CurveRecord* lot) const {
  return onThisBand_ + (lot != nullptr ? "lot " + lot->id.text : "family " + family.text);
}

void ElectricalJudge::want(const catalog::FamilyKey& key, const catalog::CurveRecord* lot, bool seekTrim) {
  const std::string onBand = onBandName(key, lot);
  const std::string name = onBand + boilsAt_;
  const auto [place, fresh] = wanted_.try_emplace(name);
  Task& task = place->second;
  task.seekTrim = task.seekTrim || seekTrim;
  if (!fresh) return;
  const catalog::Family* record = family(key);
  const auto [kept, unknown] = memory_.judged.try_emplace(name);
  task.kept = &kept->second;
  if (!unknown) return;
  const auto [alike, first] = memory_.onBand.try_emplace(onBand, task.kept);
  if (!first) {
    task.alike = alike->second;
    return;
  }
  if (lot != nullptr) task.curve = curveOf(*lot);
  else if (record != nullptr) task.curve = curveOf(*record);
  else task.curve = refuse("family-missing", "", "", "its resistance family in the catalogue");
  // A measured lot is never taken for its family: whether it behaves so is just what the curve tells.
  task.sameFamily = lot == nullptr && key == side_.family;
  if (record != nullptr) task.senderTolerance = record->tolerance;
  task.name = lot != nullptr      ? "bench curve of lot " + lot->lot
              : record != nullptr ? "family " + record->name
                                  : "its curve";
}

void ElectricalJudge::judgeWanted() {
  for (const auto& [name, task] : wanted_) {
    if (task.curve) judge(task);
    if (task.alike != nullptr) judgeAlike(task);
    if (task.seekTrim) seekTrim(*task.kept);
  }
  wanted_.clear();
}

std::shared_ptr<const Electrics> ElectricalJudge::found(const catalog::FamilyKey& family,
                                                        const catalog::CurveRecord* lot) {
  const auto known = memory_.judged.find(onBandName(family, lot) + boilsAt_);
  why_ = known == memory_.judged.end() ? "nobody asked" : known->second.why;
  return known == memory_.judged.end() ? nullptr : known->second.electrics;
}

void ElectricalJudge::judge(const Task& task) const {
  PairMemory::Kept& kept = *task.kept;
  const Expected<SourcedCurve>& curve = *task.curve;
  if (!curve) {
    kept.why = curve.error().sentence();
    return;
  }
  pairing::PairOptions pair;
  pair.rows = kRows;
  pair.sameFamily = task.sameFamily;
  pair.inputs.senderTolerance = task.senderTolerance;
  pair.inputs.gaugeTolerance = side_.gaugeTolerance;
  auto errors = pairing::errorTable(*side_.gauge, curve->curve, {}, side_.band, pair);
  if (!errors) {
    kept.why = errors.error().sentence();
    return;
  }
  std::optional<pairing::ErrorTable> wide;
  if (options_.forDrawing) {
    pair.rows = kDrawnRows;
    if (auto table = pairing::errorTable(*side_.gauge, curve->curve, {}, side_.gauge->dial().marked(), pair))
      wide = std::move(*table);
  }
  kept.circumstances.temperaturesStated = side_.temperaturesStated && curve->temperaturesStated;
  kept.circumstances.boiling = side_.boiling;
  kept.circumstances.evidence = fmt::format("{} on a gauge for {}", task.name, side_.familyName);
  kept.circumstances.source = curve->source;
  kept.circumstances.units = options_.units;
  pairing::Verdict verdict = pairing::judge(*errors, std::nullopt, options_.limits, kept.circumstances);
  kept.electrics = std::make_shared<const Electrics>(
      Electrics{curve->curve, std::move(*errors), std::move(wide), std::nullopt, std::move(verdict)});
}

/// Where water boils changes what is said, not what the needle shows or what would trim it.
void ElectricalJudge::judgeAlike(const Task& task) const {
  PairMemory::Kept& kept = *task.kept;
  kept = *task.alike;
  if (!kept.electrics) return;
  Electrics again = *kept.electrics;
  kept.trimSought = kept.trimSought && task.seekTrim;
  if (!kept.trimSought) again.trim.reset();
  kept.circumstances.boiling = side_.boiling;
  again.verdict = pairing::judge(again.errors, again.trim, options_.limits, kept.circumstances);
  kept.electrics = std::make_shared<const Electrics>(std::move(again));
}

void ElectricalJudge::seekTrim(PairMemory::Kept& kept) const {
  if (kept.trimSought || !kept.electrics) return;
  kept.trimSought = true;
  const pairing::Electrical asItIs = kept.electrics->verdict.electrical;
  const bool fits = asItIs == pairing::Electrical::sameFamily || asItIs == pairing::Electrical::withinLimits;
  if (fits || kept.electrics->errors.backwards) return;
  pairing::TrimOptions search;
  search.limits = options_.limits;
  search.pair = kept.electrics->errors.options;
  search.feedToSender = false;  // unusual and in need of a fuse: only where somebody asks for it
  auto proposal = pairing::proposeTrim(*side_.gauge, kept.electrics->curve, side_.band, search);
  if (!proposal) return;
  // Answers given before hold the untrimmed judgement; they keep it.
  Electrics trimmed = *kept.electrics;
  trimmed.trim = std::move(*proposal);
  trimmed.verdict = pairing::judge(trimmed.errors, trimmed.trim, options_.limits, kept.circumstances);
  kept.electrics = std::make_shared<const Electrics>(std::move(trimmed));
}

}  // namespace ohmkin::workflow
