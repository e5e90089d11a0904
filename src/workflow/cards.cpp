#include <fmt/format.h>
#include <gauge/draw_dial.h>
#include <pairing/monte_carlo.h>
#include <workflow/cards.h>
#include <workflow/sheets.h>

#include <sheet/remarked_dial.h>
#include <algorithm>
#include <cmath>

namespace ohmkin::workflow {
namespace {

// Millimetres; large beside the lettering, so that few figures run into one another. On the screen only the ratio
// counts.
constexpr double kRadius = 100;
constexpr double kLettering = 5.5;
constexpr double kFigures = 0.7;  // parts of the radius: the figures' inner edge
constexpr double kMargin = 8;

/// From the stops' dots in to the figures; the drawing's origin is the pivot.
DialPreview::Part scaleOf(const gauge::Dial& dial) {
  double left = 0;
  double right = 0;
  double top = 0;
  double bottom = -kRadius;
  const auto [low, high] = std::minmax({dial.lowStop().degrees, dial.highStop().degrees});
  constexpr int kSteps = 60;
  for (int i = 0; i <= kSteps; ++i) {
    const double a = (low + (high - low) * i / kSteps) * kRadiansPerDegree;
    for (const double r : {kRadius, kRadius * kFigures}) {
      left = std::min(left, r * std::sin(a));
      right = std::max(right, r * std::sin(a));
      top = std::min(top, -r * std::cos(a));
      bottom = std::max(bottom, -r * std::cos(a));
    }
  }
  return {left - kMargin, top - kMargin, right - left + 2 * kMargin, bottom - top + 2 * kMargin};
}

}  // namespace

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
  const gauge::DialSheet drawn{kRadius, kLettering, {}, {}};
  const auto readable = sheet::legible(dial->remarked->dial, drawn);
  if (!readable) return tl::make_unexpected(readable.error());
  auto svg = gauge::drawDial(*readable, drawn);
  if (!svg) return tl::make_unexpected(svg.error());
  preview.scale = scaleOf(*readable);
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
