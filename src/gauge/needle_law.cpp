#include <gauge/needle_law.h>

#include <algorithm>
#include <boost/math/tools/roots.hpp>
#include <cmath>
#include <limits>

namespace ohmkin::gauge {
namespace {

constexpr double kInfinite = std::numeric_limits<double>::infinity();
constexpr double kAngleRounding = 1e-9;  // degrees; an end of the sweep computed in doubles still counts as the end

double copper(const Conditions& conditions) {
  return 1 + kCopperPerKelvin * inKelvin(conditions.cluster - celsius(20));
}

std::vector<double> column(const std::vector<std::pair<double, Angle>>& points, bool angles) {
  std::vector<double> out;
  out.reserve(points.size());
  for (const auto& [u, angle] : points) out.push_back(angles ? angle.degrees : u);
  return out;
}

}  // namespace

// rho = I_ground coil/I_feed coil = ((1−v)Rs − v·RA)/((1−v)Rs + RB + Rg); a sender of R_eq on a good ground gives rho =
// R_eq/(R_eq + RB).
Felt felt(const Movement& movement, double senderOhms, const Conditions& conditions) {
  if (const auto* bimetal = std::get_if<Bimetal>(&movement)) {
    const double seen = conditions.regulatorWorks
                            ? inVolts(bimetal->regulated) + conditions.groundRise * inVolts(conditions.supply)
                            : inVolts(conditions.supply);
    const double ratio = seen / inVolts(bimetal->regulated);
    return {senderOhms, ratio * ratio};
  }
  const double k = copper(conditions);
  double ohms = senderOhms / k;
  const auto* coil = std::get_if<CrossedCoil>(&movement);
  if (coil == nullptr) return {ohms, 1};
  if (coil->feedCoil && coil->groundCoil && std::isfinite(ohms)) {
    const double v = conditions.groundRise;
    const double a = inOhms(*coil->feedCoil);
    const double b = inOhms(*coil->groundCoil);
    ohms = b * ((1 - v) * ohms - v * a) / (b + inOhms(conditions.groundOhms) / k + v * a);
  }
  return {ohms, inVolts(conditions.supply) / kStandardVolts / k};
}

double senderBehind(const Movement& movement, double feltOhms, const Conditions& conditions) {
  if (std::holds_alternative<Bimetal>(movement)) return feltOhms;
  const double k = copper(conditions);
  const auto* coil = std::get_if<CrossedCoil>(&movement);
  double ohms = feltOhms;
  if (coil != nullptr && coil->feedCoil && coil->groundCoil && std::isfinite(ohms)) {
    const double v = conditions.groundRise;
    const double a = inOhms(*coil->feedCoil);
    const double b = inOhms(*coil->groundCoil);
    ohms = (ohms * (b + inOhms(conditions.groundOhms) / k + v * a) / b + v * a) / (1 - v);
  }
  return ohms * k;
}

CoilLaw::CoilLaw(const CrossedCoil& coil)
    : grounded_(coil.grounded.degrees),
      sweep_(coil.sweep.degrees),
      sin_(std::sin(coil.sweep.degrees * kRadiansPerDegree)),
      cos_(std::cos(coil.sweep.degrees * kRadiansPerDegree)),
      perHalf_(1 / inOhms(coil.half)) {
  if (!coil.magnet) return;
  const double pull = (coil.magnet->pull - coil.grounded).degrees * kRadiansPerDegree;
  magnet_ = true;
  perWeakening_ = 1 / inOhms(coil.magnet->weakening);
  along_ = coil.magnet->strength * std::cos(pull);
  across_ = coil.magnet->strength * std::sin(pull);
}

double CoilLaw::degrees(double ohms, double drive) const {
  if (!magnet_) {
    if (std::isinf(ohms)) return grounded_ + sweep_;
    const double x = ohms * perHalf_;
    return grounded_ + std::atan2(x * sin_, 1 + x * cos_) / kRadiansPerDegree;
  }
  // Multiplied through by the denominator, or for an open lead divided by the ohms: neither turns the field.
  const double x = std::isinf(ohms) ? perHalf_ : ohms * perHalf_;
  const double one = std::isinf(ohms) ? 0 : 1;
  const double denominator = std::isinf(ohms) ? perWeakening_ : 1 + ohms * perWeakening_;
  return grounded_ +
         std::atan2(drive * x * sin_ + across_ * denominator, drive * (one + x * cos_) + along_ * denominator) /
             kRadiansPerDegree;
}

double CoilLaw::slope(double ohms) const {
  const double x = ohms * perHalf_;
  if (!magnet_) return x * sin_ / (1 + x * (2 * cos_ + x)) / kRadiansPerDegree;
  const double r = ohms * perWeakening_;
  const double fieldAlong = 1 + x * cos_ + along_ * (1 + r);
  const double fieldAcross = x * sin_ + across_ * (1 + r);
  const double turning = fieldAlong * (x * sin_ + across_ * r) - fieldAcross * (x * cos_ + along_ * r);
  return turning / (fieldAlong * fieldAlong + fieldAcross * fieldAcross) / kRadiansPerDegree;
}

// The field has no part across the needle: linear in the ohms, also with the magnet.
std::optional<double> CoilLaw::ohmsFor(double degrees, Felt grounded) const {
  const double drive = grounded.drive;
  const double atGrounded = this->degrees(grounded.ohms, drive);
  const double atOpen = this->degrees(kInfinite, drive);
  if (std::abs(degrees - atGrounded) <= kAngleRounding) return grounded.ohms;
  if (std::abs(degrees - atOpen) <= kAngleRounding) return kInfinite;
  if ((degrees > atGrounded) == (degrees > atOpen)) return std::nullopt;
  const double phi = (degrees - grounded_) * kRadiansPerDegree;
  const double magnetAcross = along_ * std::sin(phi) - across_ * std::cos(phi);
  const double constant = drive * std::sin(phi) + magnetAcross;
  const double perOhm = drive * perHalf_ * (cos_ * std::sin(phi) - sin_ * std::cos(phi)) + magnetAcross * perWeakening_;
  const double ohms = -constant / perOhm;
  if (!std::isfinite(ohms)) return std::nullopt;
  return ohms;
}

BimetalLaw::BimetalLaw(const Bimetal& bimetal)
    : rest_(bimetal.rest.degrees), span_((bimetal.grounded - bimetal.rest).degrees), heater_(inOhms(bimetal.heater)) {}

double BimetalLaw::degrees(double ohms, double drive) const {
  const double share = heater_ / (heater_ + ohms);
  return rest_ + span_ * drive * share * share;
}

double BimetalLaw::slope(double ohms) const {
  const double share = heater_ / (heater_ + ohms);
  return -2 * span_ * share * share * (1 - share);
}

std::optional<double> BimetalLaw::ohmsFor(double degrees, Felt grounded) const {
  const double turn = span_ * grounded.drive;
  const double part = (degrees - rest_) / turn;
  const double rounding = kAngleRounding / std::abs(turn);
  if (!(part >= -rounding) || part > 1 + rounding) return std::nullopt;
  if (part <= rounding * rounding) return kInfinite;
  if (part >= 1) return 0.0;
  return heater_ * (1 / std::sqrt(part) - 1);
}

BenchLaw::BenchLaw(const BenchPoints& bench)
    : scale_(inOhms(bench.scale)),
      first_{bench.points.front().first, bench.points.front().second.degrees, 0},
      last_{bench.points.back().first, bench.points.back().second.degrees, 0},
      between_(column(bench.points, false), column(bench.points, true)) {
  first_.slope = between_.prime(first_.u);
  last_.slope = between_.prime(last_.u);
}

double BenchLaw::at(double u) const {
  if (u <= first_.u) return first_.degrees + first_.slope * (u - first_.u);
  if (u >= last_.u) return last_.degrees + last_.slope * (u - last_.u);
  return between_(u);
}

double BenchLaw::degrees(double ohms, double) const { return at(std::isinf(ohms) ? 1 : ohms / (ohms + scale_)); }

double BenchLaw::slope(double ohms) const {
  const double u = ohms / (ohms + scale_);
  const double perU = u <= first_.u ? first_.slope : u >= last_.u ? last_.slope : between_.prime(u);
  return perU * u * (1 - u);
}

std::optional<double> BenchLaw::ohmsFor(double degrees, Felt) const {
  const double grounded = at(0);
  const double open = at(1);
  if (std::abs(degrees - grounded) <= kAngleRounding) return 0.0;
  if (std::abs(degrees - open) <= kAngleRounding) return kInfinite;
  if ((degrees > grounded) == (degrees > open)) return std::nullopt;
  std::uintmax_t steps = 100;
  const auto [low, high] =
      boost::math::tools::toms748_solve([&](double u) { return at(u) - degrees; }, 0.0, 1.0, grounded - degrees,
                                        open - degrees, boost::math::tools::eps_tolerance<double>(52), steps);
  const double u = (low + high) / 2;
  return u < 1 ? scale_ * u / (1 - u) : kInfinite;
}

NeedleLaw lawOf(const Movement& movement) {
  if (const auto* coil = std::get_if<CrossedCoil>(&movement)) return CoilLaw(*coil);
  if (const auto* bimetal = std::get_if<Bimetal>(&movement)) return BimetalLaw(*bimetal);
  return BenchLaw(std::get<BenchPoints>(movement));
}

std::optional<double> ohmsFor(const Movement& movement, const NeedleLaw& law, double degrees,
                              const Conditions& conditions) {
  const Felt grounded = felt(movement, 0, conditions);
  const auto found = std::visit([&](const auto& ready) { return ready.ohmsFor(degrees, grounded); }, law);
  if (!found) return std::nullopt;
  return std::max(0.0, senderBehind(movement, *found, conditions));  // rounding may leave a hair below 0
}

}  // namespace ohmkin::gauge
