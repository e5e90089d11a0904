#include <circuit/wires.h>

#include <fmt/core.h>
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace ohmkin::circuit {
namespace {

constexpr double kInch = 0.0254;
constexpr double kMassResistivity = 0.15328;  // Ω·g/m² at 20 °C
constexpr double kDensity = 8.89e6;           // g/m³
constexpr double kPerKelvin = 0.00393;
constexpr double kFuseMargin = 1.25;
constexpr std::array kFuses{1.0, 2.0, 3.0, 5.0, 7.5, 10.0};
constexpr double kMostDrop = 0.1;  // volts, of feed and ground (common practice, no source)

/// The three wires, before their sizes are chosen.
std::array<Wire, 3> wanted(Amperes current, bool regulated, const WireLengths& lengths) {
  const auto wire = [&](std::string name, std::string from, std::string to, Length length, std::string note) {
    return Wire{std::move(name), std::move(from), std::move(to), 0, length, current, {}, std::move(note)};
  };
  return {wire("feed", "keyed supply, behind the fuse", regulated ? "the regulator's input" : "the gauge's feed post",
               lengths.feed, "The fuse sits at the supply's end of this wire."),
          wire("lead", "the gauge's sender post", "the sender", lengths.lead,
               "Away from the exhaust, in a sleeve where it passes through the bulkhead."),
          wire("ground", regulated ? "the gauge's ground and the regulator's housing" : "the gauge's ground post",
               "clean body metal or the grounded battery post", lengths.ground,
               "Of its own: no lamp or other load on it.")};
}

}  // namespace

Expected<Length> diameterOf(int awg) {
  if (awg < 4 || awg > 40)
    return refuse("gauge-out-of-range", "wire", fmt::format("{}", awg), "a wire gauge from 4 to 40");
  return Length::from_value(0.005 * kInch * std::pow(92, (36.0 - awg) / 39));
}

Expected<Ohms> ohmsOf(int awg, Length length, Temperature at) {
  const auto diameter = diameterOf(awg);
  if (!diameter) return tl::make_unexpected(diameter.error());
  if (!(length.value() >= 0))
    return refuse("length-out-of-range", "wire", fmt::format("{:g}", length.value()), "a length in metres, 0 or more");
  const double area = std::numbers::pi / 4 * diameter->value() * diameter->value();
  const double warm = 1 + kPerKelvin * inKelvin(at - celsius(20));
  return ohms(kMassResistivity / kDensity * length.value() / area * warm);
}

Expected<Volts> dropOf(int awg, Length length, Amperes current, Temperature at) {
  const auto resistance = ohmsOf(awg, length, at);
  if (!resistance) return tl::make_unexpected(resistance.error());
  return volts(inOhms(*resistance) * inAmperes(current));
}

Expected<int> wireFor(Length length, Amperes current, Volts most) {
  for (int awg = 20; awg >= 10; awg -= 2) {
    const auto drop = dropOf(awg, length, current);
    if (!drop) return tl::make_unexpected(drop.error());
    if (*drop <= most) return awg;
  }
  return refuse("wire-too-long", "wire", fmt::format("{:g} m at {:g} A", length.value(), inAmperes(current)),
                "a length and a current for which 10 gauge is thick enough");
}

Expected<Amperes> fuseFor(Amperes current) {
  const double needed = kFuseMargin * inAmperes(current);
  const auto* fuse = std::find_if(kFuses.begin(), kFuses.end(), [&](double f) { return f >= needed; });
  if (!(needed >= 0) || fuse == kFuses.end())
    return refuse("fuse-out-of-range", "fuse", fmt::format("{:g} A", inAmperes(current)), "a current of 0 to 8 A");
  return amperes(*fuse);
}

Expected<WirePlan> directWiring(Amperes current, bool regulated, const WireLengths& lengths) {
  WirePlan plan;
  const auto fuse = fuseFor(current);
  if (!fuse) return tl::make_unexpected(fuse.error());
  plan.fuse = *fuse;
  for (Wire wire : wanted(current, regulated, lengths)) {
    const auto awg = wireFor(wire.length, current, volts(kMostDrop));
    if (!awg) return tl::make_unexpected(awg.error());
    wire.awg = *awg;
    wire.drop = *dropOf(*awg, wire.length, current);
    plan.wires.push_back(std::move(wire));
  }
  plan.findings.push_back({"colours-not-assumed", Severity::note,
                           "Colours are not assumed: mark the old wires where they leave the board before cutting any.",
                           "", kCommonPractice});
  if (regulated)
    plan.findings.push_back({"keep-the-regulator", Severity::warning,
                             "The gauge keeps its regulator, the housing on ground: on battery volts it burns.", "",
                             kCommonPractice});
  plan.findings.push_back({"battery-off", Severity::caution,
                           "Take the battery's ground off before working on the wiring, and follow local rules.", "",
                           kCommonPractice});
  return plan;
}

}  // namespace ohmkin::circuit
