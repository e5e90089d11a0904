#include <fmt/format.h>
#include <gauge/draw_dial.h>
#include <pairing/monte_carlo.h>
#include <workflow/cards.h>
#include <workflow/sheets.h>

namespace ohmkin::workflow {

Expected<DialPreview> dialPreview(const Answer& answer, const Branch& branch, const Candidate& candidate,
                                  const DisplayUnits& units) {
  const auto dial = dialOfCandidate(answer, branch, candidate, units);
  if (!dial) return tl::make_unexpected(dial.error());
  DialPreview preview;
  preview.driverLine = dial->card.driverLine;
  if (!dial->remarked) {
    preview.whyNot = dial->whyNot;
    return preview;
  }
  gauge::DialSheet sheet;
  sheet.title = fmt::format("{}, re-marked for {}", branch.gaugeName, dial->pair.senderName);
  auto svg = gauge::drawDial(dial->remarked->dial, sheet);
  if (!svg) return tl::make_unexpected(svg.error());
  preview.svg = std::move(*svg);
  if (!dial->remarked->leftOut.empty()) {
    std::string left;
    for (const Temperature& t : dial->remarked->leftOut) left += (left.empty() ? "" : ", ") + print(t, units);
    preview.remarks.push_back("Not marked, because the needle lies on a stop: " + left + ".");
  }
  if (dial->remarked->extrapolated)
    preview.remarks.emplace_back(
        "The outermost marks lie past the end of the sender's measured curve, which was continued for them.");
  return preview;
}

const pairing::ErrorTable* fittedTable(const Candidate& candidate) {
  if (candidate.rank == pairing::Rank::trimmedWithinLimits && candidate.trim) return &candidate.trim->after;
  return candidate.wide ? candidate.wide.get() : candidate.errors.get();
}

Expected<pairing::Sampled> sampled(const Branch& branch, const Candidate& candidate, const pairing::Draws& draws,
                                   std::stop_token stop) {
  const pairing::ErrorTable* table = fittedTable(candidate);
  if (!branch.gauge)
    return refuse("gauge-not-known", "gauge", "no gauge with a needle", "a dash with a temperature gauge");
  if (!candidate.curve || table == nullptr)
    return refuse("sender-without-curve", "sender", candidate.part, "a variable sender whose curve is known");
  return pairing::monteCarlo(*branch.gauge, *candidate.curve, *table, draws, std::move(stop));
}

}  // namespace ohmkin::workflow
