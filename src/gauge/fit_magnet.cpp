#include <gauge/fit_movement.h>
#include <gauge/movement_shapes.h>
#include <gauge/movement_solver.h>

#include <fmt/core.h>

namespace ohmkin::gauge {
namespace {

constexpr int kStrength = 3;
constexpr int kPull = 4;
constexpr int kLnWeakening = 5;
constexpr double kLeastDifference = 1;   // volts between the lowest and the highest supply
constexpr double kCoilOhmsKnown = 0.01;  // standard, of ln ohms: an ohmmeter and the coils' temperature
constexpr double kWorstLnWeakening = 1.5;

/// From the fit without a magnet, and magnets of usual strength beside it.
std::vector<Numbers<MagnetShape>> starts(const std::vector<BoxReading>& free, KeyOffNeedle keyOff,
                                         std::optional<double> lnWeakening) {
  std::vector<Numbers<MagnetShape>> out;
  for (const Eigen::Vector3d& coils : coilStarts(free))
    for (const double strength : {0.02, 0.06, 0.15})
      for (const double ln :
           lnWeakening ? std::vector{*lnWeakening} : std::vector{coils[2] - 1.2, coils[2] - 0.4, coils[2] + 0.4}) {
        Numbers<MagnetShape> start;
        start << coils, strength, keyOff.needle.degrees, ln;
        out.push_back(start);
      }
  return out;
}

tl::unexpected<Refusal> noMagnet() {
  return refuse("no-magnet-seen", "decade-box readings", "a needle that hardly moves with the supply",
                "readings at two supplies that differ more or taken with more care; or fit it as a crossed coil "
                "without a return magnet");
}

}  // namespace

Expected<MovementFit> fitMagneticCoil(const std::vector<BoxReading>& readings, KeyOffNeedle keyOff,
                                      const std::optional<CoilOhms>& coils) {
  if (!std::isfinite(keyOff.needle.degrees) || !(keyOff.uncertainty > 0) || !std::isfinite(keyOff.uncertainty))
    return refuse("movement-out-of-range", "needle with the key off", fmt::format("{:g}°", keyOff.needle.degrees),
                  "an angle in degrees, read to degrees above 0");
  const auto free = enoughFree(readings, 4);
  if (!free) return tl::make_unexpected(free.error());
  const auto [lowest, highest] =
      std::minmax_element(free->begin(), free->end(), [](const auto& a, const auto& b) { return a.supply < b.supply; });
  const double low = inVolts(lowest->supply);
  const double high = inVolts(highest->supply);
  if (!(low > 0) || !(high - low >= kLeastDifference))
    return refuse("one-supply-only", "decade-box readings", fmt::format("supplies from {:g} to {:g} V", low, high),
                  "readings at two supplies at least 1 V apart; at one, a return magnet cannot be seen");

  std::vector<SeenNumber> seen{{kPull, keyOff.needle.degrees, keyOff.uncertainty}};
  std::optional<double> lnWeakening;
  if (coils) {
    const double weakening = inOhms(coils->feed) * inOhms(coils->ground) / inOhms(coils->feed + coils->ground);
    if (!(weakening > 0) || !std::isfinite(weakening))
      return refuse("movement-out-of-range", "coil", fmt::format("{:g} Ω", weakening), "ohms above 0 for both coils");
    lnWeakening = std::log(weakening);
    seen.push_back({kLnWeakening, *lnWeakening, kCoilOhmsKnown});
  }
  if (free->size() + seen.size() < MagnetShape::kNumbers)
    return refuse("readings-too-few", "decade-box readings", fmt::format("{} with the needle free", free->size()),
                  "at least five with the needle free; four where both coils' ohms are known");
  const auto found = solved<MagnetShape>(*free, seen, starts(*free, keyOff, lnWeakening));
  if (!found) return noMagnet();
  const auto& [at, covariance, off] = *found;
  if (!(at[kStrength] > 2 * std::sqrt(covariance(kStrength, kStrength))) ||
      std::sqrt(covariance(kLnWeakening, kLnWeakening)) > kWorstLnWeakening)
    return noMagnet();
  CrossedCoil coil{{at[0]}, {at[1]}, ohms(std::exp(at[2])), {}, {}, {}};
  if (coils) coil.feedCoil = coils->feed, coil.groundCoil = coils->ground;
  coil.magnet = ReturnMagnet{at[kStrength], {at[kPull]}, ohms(std::exp(at[kLnWeakening]))};
  auto movement = checked(coil);
  if (!movement) return tooClose();
  return reported(readings, *free, off, std::move(*movement),
                  {{"grounded", "°", at[0]},
                   {"sweep", "°", at[1]},
                   {"half", "Ω", std::exp(at[2])},
                   {"magnet's strength", "", at[kStrength]},
                   {"magnet's pull", "°", at[kPull]},
                   {"weakening", "Ω", std::exp(at[kLnWeakening])}},
                  covariance);
}

}  // namespace ohmkin::gauge
