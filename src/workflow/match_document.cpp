#include <workflow/document_values.h>
#include <workflow/match_document.h>

namespace ohmkin::workflow {
namespace {

using documents::Json;
using documents::json;

std::string_view name(Basis basis) {
  switch (basis) {
    case Basis::seen:
      return "seen";
    case Basis::known:
      return "known";
    case Basis::inferred:
      return "inferred";
    case Basis::conflict:
      return "conflict";
    case Basis::notSeen:
      return "not-seen";
  }
  return "";
}

std::string_view name(JointState state) {
  switch (state) {
    case JointState::fits:
      return "fits";
    case JointState::withPart:
      return "with-part";
    case JointState::cut:
      return "cut";
    case JointState::look:
      return "look";
  }
  return "";
}

Json json(const Link& link) {
  return {{"title", link.title},
          {"headline", link.headline},
          {"detail", link.detail},
          {"basis", name(link.basis)},
          {"basis_text", link.basisText}};
}

Json json(const Joint& joint) {
  return {{"state", name(joint.state)}, {"words", joint.words}, {"findings", json(joint.findings)}};
}

Json json(const Candidate& candidate) {
  Json out{
      {"part", candidate.part},
      {"name", candidate.name},
      {"kind", candidate.kind},
      {"family", candidate.family},
      {"lot", candidate.lot},
      {"measured", candidate.measured},
      {"thread", candidate.thread},
      {"terminal", candidate.terminal},
      {"rank", pairing::rankName(candidate.rank)},
      {"recommended", candidate.recommended()},
      {"sentence", candidate.sentence},
      {"parts_needed", candidate.partsNeeded},
      {"replaced_by", candidate.replacedBy},
      {"fitted_now", !candidate.fittedNow      ? "no"
                     : candidate.fittedNowSaid ? "said"
                                               : "likely"},
      {"joints",
       {{"electrical", json(candidate.electrical)}, {"plug", json(candidate.plug)}, {"screw", json(candidate.screw)}}},
      {"findings", json(candidate.findings)}};
  Json shelf = Json::array();
  for (const auto& bin : candidate.shelf) shelf.push_back({{"bin", bin.bin}, {"quantity", bin.quantity}});
  out["shelf"] = std::move(shelf);
  out["errors"] = candidate.errors ? json(*candidate.errors) : Json();
  out["trim"] = candidate.trim ? json(*candidate.trim) : Json();
  return out;
}

Json json(const Branch& branch) {
  Json out{{"assumes", branch.title},
           {"weight", branch.weight},
           {"gauge", branch.gaugeName},
           {"family", branch.familyName},
           {"chain",
            {{"gauge", json(branch.gaugeLink)},
             {"lead", json(branch.leadLink)},
             {"port", json(branch.portLink)},
             {"engine", json(branch.engineLink)}}},
           {"era", json(branch.era)},
           {"considered", branch.considered},
           {"findings", json(branch.findings)}};
  if (branch.gauge) out["band_c"] = {inCelsius(branch.band.low), inCelsius(branch.band.high)};
  Json ranked = Json::array();
  for (const auto& candidate : branch.ranked) ranked.push_back(json(candidate));
  out["senders"] = std::move(ranked);
  return out;
}

}  // namespace

std::string matchDocument(const Answer& answer) {
  Json out = documents::document("ohmkin.match", 1);
  out["answered"] = answer.answered();
  Json chips = Json::array();
  for (const auto& chip : answer.chips) chips.push_back({{"text", chip.text}, {"basis", name(chip.basis)}});
  out["understood"] = std::move(chips);
  Json branches = Json::array();
  for (const auto& branch : answer.branches) branches.push_back(json(branch));
  out["branches"] = std::move(branches);
  out["look"] = answer.look ? Json{{"what", answer.look->what},
                                   {"because", answer.look->because},
                                   {"field", answer.look->field},
                                   {"gain_bits", answer.look->gain}}
                            : Json();
  out["findings"] = json(answer.findings);
  out["cautions"] = answer.cautions;
  return documents::text(out);
}

}  // namespace ohmkin::workflow
