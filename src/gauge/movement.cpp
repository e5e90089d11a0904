#include <gauge/movement.h>
#include <gauge/needle_law.h>

#include <fmt/core.h>
#include <algorithm>
#include <cmath>

namespace ohmkin::gauge {
namespace {

bool positive(double number) { return std::isfinite(number) && number > 0; }

tl::unexpected<Refusal> wrong(std::string_view what, double found, std::string expected) {
  return refuse("movement-out-of-range", std::string(what), fmt::format("{:g}", found), std::move(expected));
}

Expected<Movement> checkedMagnet(const CrossedCoil& coil) {
  const ReturnMagnet& magnet = *coil.magnet;
  if (!std::isfinite(magnet.strength) || magnet.strength < 0 || magnet.strength >= 0.5)
    return wrong("return magnet", magnet.strength, "its field as a part of the coils' own, 0 or more and below 0.5");
  if (!std::isfinite(magnet.pull.degrees)) return wrong("return magnet", magnet.pull.degrees, "an angle in degrees");
  if (!positive(inOhms(magnet.weakening))) return wrong("return magnet", inOhms(magnet.weakening), "ohms above 0");
  return coil;
}

Expected<Movement> checkedCoil(const CrossedCoil& coil) {
  if (!std::isfinite(coil.grounded.degrees))
    return wrong("lead grounded", coil.grounded.degrees, "an angle in degrees");
  const double sweep = std::abs(coil.sweep.degrees);
  if (!positive(sweep) || sweep >= 180)
    return wrong("sweep", coil.sweep.degrees,
                 "an angle from lead grounded to lead open, not 0 and less than 180° either way");
  if (!positive(inOhms(coil.half))) return wrong("ohms at half the sweep", inOhms(coil.half), "ohms above 0");
  for (const auto& part : {coil.feedCoil, coil.groundCoil})
    if (part && !positive(inOhms(*part))) return wrong("coil", inOhms(*part), "ohms above 0");
  if (coil.magnet) return checkedMagnet(coil);
  return coil;
}

Expected<Movement> checkedBimetal(const Bimetal& bimetal) {
  if (!std::isfinite(bimetal.rest.degrees)) return wrong("needle at rest", bimetal.rest.degrees, "an angle in degrees");
  if (!std::isfinite(bimetal.grounded.degrees) || bimetal.grounded == bimetal.rest)
    return wrong("lead grounded", bimetal.grounded.degrees,
                 "an angle in degrees, other than that of the needle at rest");
  if (!positive(inOhms(bimetal.heater))) return wrong("heater", inOhms(bimetal.heater), "ohms above 0");
  if (!positive(inVolts(bimetal.regulated))) return wrong("regulator", inVolts(bimetal.regulated), "volts RMS above 0");
  return bimetal;
}

Expected<Movement> checkedBench(const BenchPoints& bench) {
  const auto& points = bench.points;
  if (!positive(inOhms(bench.scale))) return wrong("scale of the bench points", inOhms(bench.scale), "ohms above 0");
  if (points.size() < 4)
    return wrong("bench points", static_cast<double>(points.size()), "at least four of them, ohms and needle angle");
  for (const auto& [u, angle] : points)
    if (!(u >= 0 && u <= 1) || !std::isfinite(angle.degrees))
      return wrong("bench point", u, "ohms of 0 or more and an angle in degrees");
  const bool rises = points[1].second > points[0].second;
  for (std::size_t i = 1; i < points.size(); ++i) {
    if (points[i].first <= points[i - 1].first)
      return wrong("bench point", points[i].first, "points by rising ohms, each ohms once");
    if (points[i].second == points[i - 1].second || (points[i].second > points[i - 1].second) != rises)
      return wrong("bench point", points[i].second.degrees,
                   "an angle that goes on turning the same way as the ohms rise; leave out points on a stop");
  }
  return bench;
}

}  // namespace

std::string_view movementName(const Movement& movement) {
  if (std::holds_alternative<CrossedCoil>(movement)) return "crossed coil";
  if (std::holds_alternative<Bimetal>(movement)) return "bimetal";
  return "bench points";
}

Expected<Movement> checked(const Movement& movement) {
  if (const auto* coil = std::get_if<CrossedCoil>(&movement)) return checkedCoil(*coil);
  if (const auto* bimetal = std::get_if<Bimetal>(&movement)) return checkedBimetal(*bimetal);
  return checkedBench(std::get<BenchPoints>(movement));
}

std::string_view unanswered(const Movement& movement, const Conditions& conditions) {
  if (conditions.groundRise == 0 && inOhms(conditions.groundOhms) == 0) return {};
  if (std::holds_alternative<Bimetal>(movement)) return {};
  const auto* coil = std::get_if<CrossedCoil>(&movement);
  if (coil == nullptr) return "What the gauge's ground does was left out: bench points do not tell how it acts.";
  if (!coil->feedCoil || !coil->groundCoil)
    return "What the gauge's ground does was left out: the ohms of both coils, measured at the posts, are not known.";
  return {};
}

Angle deflection(const Movement& movement, Ohms sender, const Conditions& conditions) {
  const Felt f = felt(movement, inOhms(sender), conditions);
  return {std::visit([&](const auto& law) { return law.degrees(f.ohms, f.drive); }, lawOf(movement))};
}

std::optional<Ohms> ohmsFor(const Movement& movement, Angle angle, const Conditions& conditions) {
  const auto found = ohmsFor(movement, lawOf(movement), angle.degrees, conditions);
  if (!found) return std::nullopt;
  return ohms(*found);
}

bool established(const Movement& movement, Ohms sender) {
  const auto* bench = std::get_if<BenchPoints>(&movement);
  if (bench == nullptr) return true;
  const double r = inOhms(sender);
  const double u = std::isinf(r) ? 1 : r / (r + inOhms(bench->scale));
  return bench->points.front().first <= u && u <= bench->points.back().first;
}

// Field ∝ Q + Rs·P with Q along the grounded direction, |Q|/|P| = half. Tapped coils: Q = RB·a, P = a + b; the resistor
// adds b·RA/x to P.
Expected<CrossedCoil> withFeedResistor(const CrossedCoil& coil, Ohms resistor) {
  if (!coil.feedCoil || !coil.groundCoil)
    return refuse("coil-ohms-unknown", "resistor from feed to sender post", "a gauge whose coils are not measured",
                  "the ohms of both coils, by ohmmeter at the gauge's posts");
  if (!positive(inOhms(resistor))) return wrong("resistor from feed to sender post", inOhms(resistor), "ohms above 0");
  const double part = inOhms(*coil.feedCoil) / inOhms(resistor);
  const double delta = coil.sweep.degrees * kRadiansPerDegree;
  const double along = (1 + part) * std::cos(delta) / inOhms(coil.half) - part / inOhms(*coil.groundCoil);
  const double across = (1 + part) * std::sin(delta) / inOhms(coil.half);
  CrossedCoil changed{
      coil.grounded, {std::atan2(across, along) / kRadiansPerDegree}, ohms(1 / std::hypot(along, across)), {}, {}, {}};
  return changed;
}

}  // namespace ohmkin::gauge
