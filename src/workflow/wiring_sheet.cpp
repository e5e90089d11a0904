#include <fmt/format.h>
#include <sheet/wiring.h>
#include <workflow/wiring_sheet.h>

#include <algorithm>
#include <array>
#include <numbers>

namespace ohmkin::workflow {
namespace {

/// Nominal areas of road vehicle wire, mm² (ISO 19642, from memory).
constexpr std::array kMetric{0.35, 0.5, 0.75, 1.0, 1.5, 2.5, 4.0, 6.0, 10.0};

double areaOf(int awg) {
  const double diameter = inMillimetres(*circuit::diameterOf(awg));
  return std::numbers::pi / 4 * diameter * diameter;
}

/// The next metric size that is not thinner by more than a strand.
std::string metricFor(double area) {
  constexpr double kStrand = 0.05;
  const auto* size =
      std::find_if(kMetric.begin(), kMetric.end() - 1, [&](double m) { return m >= area * (1 - kStrand); });
  return fmt::format("{:g} mm²", *size);
}

sheet::WireLine lineOf(const circuit::Wire& wire) {
  const double area = areaOf(wire.awg);
  return {wire.name,
          wire.from,
          wire.to,
          fmt::format("{} AWG", wire.awg),
          fmt::format("{:.2f} mm²", area),
          metricFor(area),
          fmt::format("{:g} m", wire.length.value()),
          fmt::format("{:.2f} A", inAmperes(wire.current)),
          fmt::format("{:.0f} mV", 1000 * inVolts(wire.drop)),
          wire.note};
}

}  // namespace

sheet::Pages wiringSheet(const FaultFinder& finder, const circuit::WirePlan& plan, const SheetOptions& options) {
  sheet::Wiring made;
  made.heading = {finder.gaugeName(), "", finder.senderName(), "", plainDate(options.day)};
  made.fuse = fmt::format("{:g} A", inAmperes(plan.fuse));
  const bool regulated = finder.circuit().regulated();
  if (regulated) made.regulator = fmt::format("{:g} V", finder.circuit().benchVolts());
  for (const circuit::Wire& wire : plan.wires) {
    sheet::WireLine line = lineOf(wire);
    (wire.name == "feed" ? made.feed : wire.name == "lead" ? made.lead : made.ground) = std::move(line);
  }
  for (const Finding& finding : plan.findings)
    (finding.severity >= Severity::caution ? made.cautions : made.reminders).push_back(finding.sentence);
  made.cautions.insert(
      made.cautions.end(),
      {"Never put battery volts on the lead or on the sender post: the gauge or the sender burns.",
       "Try the new wires before the old ones are cut.", "Local codes and licensed practice come first."});
  made.assumed = {
      fmt::format(
          "Current: the most this gauge draws, its lead grounded, at {:g} V. What else a regulator feeds comes "
          "on top of it.",
          regulated ? finder.circuit().benchVolts() : std::max(finder.circuit().benchVolts(), circuit::kChargingVolts)),
      "Wire: annealed copper at 20 °C, solid; stranded differs by a few percent. Thinner than 20 AWG is not taken, for "
      "strength.",
      "Lengths are as they were said, or usual ones (feed 1.5 m, lead 3 m, ground 1.5 m). Measure the car before "
      "buying.",
      "Drawn with the negative post grounded. With the positive post grounded the same wires go to the same posts."};
  return sheet::drawWiring(made, options.paper);
}

}  // namespace ohmkin::workflow
