#include <catalog/senders.h>
#include <catalog/shop.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <workflow/find.h>
#include <algorithm>
#include <map>
#include <set>

namespace ohmkin::workflow {
namespace {

/// Newer parts of each, as far as the chains go.
using Newer = std::map<std::string, std::vector<std::string>>;

/// A way from `part` back to itself, `part` first; empty where there is none.
std::vector<std::string> circleThrough(const Newer& newer, const std::string& part) {
  std::map<std::string, std::string> from;
  std::vector<std::string> open{part};
  while (!open.empty()) {
    std::vector<std::string> further;
    for (const std::string& one : open) {
      const auto found = newer.find(one);
      if (found == newer.end()) continue;
      for (const std::string& next : found->second) {
        if (next == part) {
          std::vector<std::string> circle{one};
          while (circle.back() != part) circle.push_back(from.at(circle.back()));
          std::reverse(circle.begin(), circle.end());
          return circle;
        }
        if (from.emplace(next, one).second) further.push_back(next);
      }
    }
    open = std::move(further);
  }
  return {};
}

bool onTheShelf(const catalog::Catalogue& catalogue, const std::string& part) {
  const auto bins = catalog::stock(catalogue, catalog::SenderKey(part));
  return std::any_of(bins.begin(), bins.end(), [](const auto& bin) { return bin.quantity > 0; });
}

}  // namespace

std::optional<LeadsTo> leadsTo(const catalog::Catalogue& catalogue, const std::string& part) {
  const auto steps = catalog::replacements(catalogue, catalog::SenderKey(part));  // nearest first
  if (steps.empty()) return std::nullopt;
  // replacements() leaves out steps back to parts it has met: they are what a circle is known by.
  Newer newer;
  std::map<std::string, std::string> cameFrom;
  std::vector<std::string> met{part};
  for (const auto& step : steps) {
    cameFrom.emplace(step.sender.text, step.replaces.text);
    met.push_back(step.sender.text);
  }
  for (const std::string& one : met)
    for (const auto& step : catalog::replacements(catalogue, catalog::SenderKey(one)))
      if (step.replaces.text == one) newer[one].push_back(step.sender.text);

  LeadsTo leads;
  for (const std::string& one : met)
    if (one != part && !newer.contains(one)) leads.parts.push_back(one);
  std::stable_partition(leads.parts.begin(), leads.parts.end(),
                        [&](const std::string& one) { return onTheShelf(catalogue, one); });
  std::vector<std::string> circle;
  for (const std::string& one : met)
    if (circle.empty()) circle = circleThrough(newer, one);
  leads.circle = !circle.empty();
  if (leads.parts.empty()) {
    leads.sentence = fmt::format("{} stand in for each other in a circle: none of them is the current one.",
                                 fmt::join(circle, ", "));
    return leads;
  }
  for (std::string at = cameFrom.at(leads.parts.front()); at != part; at = cameFrom.at(at)) leads.through.push_back(at);
  std::reverse(leads.through.begin(), leads.through.end());
  leads.sentence = fmt::format("superseded by {}", fmt::join(leads.parts, " or "));
  if (!leads.through.empty()) leads.sentence += fmt::format(" (through {})", fmt::join(leads.through, ", "));
  if (leads.circle) leads.sentence += fmt::format("; {} stand in for each other in a circle", fmt::join(circle, ", "));
  return leads;
}

}  // namespace ohmkin::workflow
