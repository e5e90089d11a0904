#include <fmt/format.h>
#include <pairing/trim_search.h>
#include <quantity/print.h>
#include <workflow/plan_parts.h>
#include <algorithm>
#include <iterator>
#include <tuple>

namespace ohmkin::workflow {
namespace {

/// "AD-12" of "bushing AD-12": a joint's words are the kind and the number.
PartToBuy joiner(const std::string& kind, const std::string& words) {
  const std::size_t number = words.starts_with(kind + " ") ? kind.size() + 1 : 0;
  PartToBuy part;
  part.part = words.substr(number);
  part.kind = kind;
  return part;
}

/// The room that found the resistors names them by their place: "series resistor 12 Ω".
std::string placeOf(const pairing::PartLoad& load) {
  if (load.part.starts_with("series")) return "in series";
  return load.part.starts_with("parallel") ? "in parallel" : "from feed to sender post";
}

std::vector<PartToBuy> resistors(const pairing::TrimProposal& trim) {
  static const std::string series(pairing::seriesName(pairing::TrimOptions{}.series));
  std::vector<PartToBuy> parts;
  for (const pairing::PartLoad& load : trim.loads) {
    PartToBuy part;
    part.part = printNominal(load.resistance);
    part.kind = "resistor";
    part.name = placeOf(load);
    part.resistance = load.resistance;
    part.rating = load.rating;
    part.series = series;
    part.network = trim.network.name();
    parts.push_back(std::move(part));
  }
  return parts;
}

}  // namespace

std::vector<PartToBuy> partsFor(const Candidate& candidate) {
  std::vector<PartToBuy> parts(1);
  parts.front().part = candidate.part;
  parts.front().kind = "sender";
  parts.front().name =
      candidate.lot.empty() ? candidate.name : fmt::format("{}, of lot {}", candidate.name, candidate.lot);
  if (candidate.screw.state == JointState::withPart) parts.push_back(joiner("bushing", candidate.screw.words));
  if (candidate.plug.state == JointState::withPart) parts.push_back(joiner("pigtail", candidate.plug.words));
  if (candidate.rank == pairing::Rank::trimmedWithinLimits) {
    std::vector<PartToBuy> some = resistors(*candidate.trim);
    parts.insert(parts.end(), std::make_move_iterator(some.begin()), std::make_move_iterator(some.end()));
  }
  return parts;
}

void addTo(std::vector<PartToBuy>& list, const std::vector<PartToBuy>& some) {
  const auto same = [](const PartToBuy& a, const PartToBuy& b) {
    return std::tie(a.part, a.kind, a.name, a.rating, a.network) ==
           std::tie(b.part, b.kind, b.name, b.rating, b.network);
  };
  for (const PartToBuy& part : some) {
    const auto there =
        std::find_if(list.begin(), list.end(), [&](const PartToBuy& other) { return same(part, other); });
    if (there == list.end()) list.push_back(part);
    else there->quantity += part.quantity;
  }
}

std::string wordsOf(const PartToBuy& part) {
  if (part.kind == "sender") return part.name.empty() ? part.part : fmt::format("{}, {}", part.part, part.name);
  if (part.kind != "resistor") return fmt::format("{} {}", part.kind, part.part);
  return fmt::format("resistor {}, {:g} W or more, {} series, {}: {}", part.part,
                     part.rating ? inWatts(*part.rating) : 0, part.series, part.name, part.network);
}

}  // namespace ohmkin::workflow
