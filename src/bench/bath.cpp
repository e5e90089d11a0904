#include <bench/bath.h>
#include <bench/boiling.h>
#include <bench/distributions.h>
#include <fmt/core.h>

#include <cmath>

namespace ohmkin::bench {
namespace {

constexpr double kWeatherPressure = 6000;  // Pa: a station further from the standard atmosphere is not believed
constexpr double kSuperheat = 0.1;         // K
constexpr double kReductionPerMetre = 0.004 / 1000;

struct Station {
  Pressure pressure;
  double u = 0;  ///< Pa, standard
  std::string evidence;
  std::vector<Finding> findings;
};

Station unreduced(const Barometer& barometer) {
  return {barometer.shown,
          barometer.u.value(),
          fmt::format("{:.1f} kPa at the bath, not reduced", inKilopascals(barometer.shown)),
          {}};
}

Expected<Station> reduced(const Barometer& barometer, Length altitude, Length altitudeU) {
  const double metres = altitude.value();
  const auto pressure = stationPressure(barometer.shown, altitude);
  if (!pressure) return tl::make_unexpected(pressure.error());
  const double perMetre = 1.2e-4;  // of the pressure, near the ground
  const double method = rectangular(kReductionPerMetre * std::abs(metres) * pressure->value());
  const double height = perMetre * altitudeU.value() * pressure->value();
  return Station{*pressure,
                 std::hypot(std::hypot(barometer.u.value(), method), height),
                 fmt::format("{:.1f} kPa reduced to sea level, {:.1f} kPa at {:.0f} m", inKilopascals(barometer.shown),
                             inKilopascals(*pressure), metres),
                 {}};
}

tl::unexpected<Refusal> question(const Barometer& barometer) {
  return refuse(
      "barometer-reduced-question", "barometer", fmt::format("{:.1f} kPa", inKilopascals(barometer.shown)),
      "to hear whether that pressure is reduced to sea level: a forecast, a telephone and most wall barometers "
      "are, a sensor in the shop is not");
}

/// Whether it was reduced is not known: perhaps only one of the two could be weather.
Expected<Station> guessed(const Barometer& barometer, const BoilingWater& water) {
  if (!water.altitude) return question(barometer);
  const auto standard = standardPressure(*water.altitude);
  const auto back = reduced(barometer, *water.altitude, water.altitudeU);
  if (!standard) return tl::make_unexpected(standard.error());
  const auto believable = [&](Pressure p) { return std::abs(p.value() - standard->value()) <= kWeatherPressure; };
  const bool asItIs = believable(barometer.shown);
  const bool asReduced = back && believable(back->pressure);
  if (asItIs == asReduced) return question(barometer);
  Station station = asItIs ? unreduced(barometer) : *back;
  station.findings.push_back(
      {"barometer-taken", Severity::caution,
       asItIs ? "The pressure is taken as read at the bath: reduced to sea level, no weather would make it."
              : "The pressure is taken as reduced to sea level: at this altitude no weather would make it so high.",
       station.evidence, "computed"});
  return station;
}

Expected<Station> stationOf(const Barometer& barometer, const BoilingWater& water) {
  if (!(barometer.shown.value() > 0 && std::isfinite(barometer.shown.value()) && barometer.u.value() >= 0 &&
        std::isfinite(barometer.u.value())))
    return refuse("barometer-out-of-range", "barometer",
                  fmt::format("{:g} kPa, u {:g} kPa", inKilopascals(barometer.shown), inKilopascals(barometer.u)),
                  "a pressure above 0 and an uncertainty of 0 or above");
  if (barometer.reduced == Reduced::notKnown) return guessed(barometer, water);
  if (barometer.reduced == Reduced::no) return unreduced(barometer);
  if (!water.altitude)
    return refuse("altitude-missing", "altitude", "none", "the altitude, since the pressure is reduced to sea level");
  return reduced(barometer, *water.altitude, water.altitudeU);
}

Expected<BathReference> byAltitude(const BoilingWater& water) {
  const auto at = boilingAtAltitude(*water.altitude);
  if (!at) return tl::make_unexpected(at.error());
  const double perMetre = 0.0033;  // K a metre, near the ground
  const double u = std::hypot(std::hypot(rectangular(kWeatherMoves), kSuperheat), perMetre * water.altitudeU.value());
  return BathReference{
      *at,
      kelvins(u),
      fmt::format("water boiling at {:.0f} m, weather not known", water.altitude->value()),
      {{"weather-not-known", Severity::note,
        fmt::format("Weather moves the boiling point by up to {} K either way; a barometer at the bath would tell.",
                    kWeatherMoves),
        "", kCommonPractice}}};
}

}  // namespace

BathReference icePoint(Ice ice) {
  const bool pure = ice == Ice::crushedPure;
  return {celsius(0),
          kelvins(pure ? 0.05 : 0.2),
          pure ? "crushed ice of pure water" : "ice cubes in tap water",
          {{"ice-practice", Severity::note,
            pure ? "Packed ice with just enough water to fill the gaps; pour off what melts."
                 : "Cubes float and the water below them is warmer: fill with ice to the bottom and stir.",
            "", kFromMemory}}};
}

Expected<BathReference> boilingPoint(const BoilingWater& water) {
  if (!water.plain)
    return refuse("water-not-plain", "bath", "water with something dissolved in it",
                  "plain water: coolant and salt raise the boiling point by an amount nobody knows here");
  if (!water.altitude && !water.barometer)
    return refuse("boiling-without-pressure", "bath", "neither altitude nor barometer", "one of the two");
  if (!(water.altitudeU.value() >= 0 && water.altitudeU.value() <= 1e4))
    return refuse("altitude-out-of-range", "altitude", fmt::format("u of {:g} m", water.altitudeU.value()),
                  "an uncertainty of 0 to 10 000 m");
  if (!water.barometer) return byAltitude(water);
  auto station = stationOf(*water.barometer, water);
  if (!station) return tl::make_unexpected(station.error());
  const auto at = saturationTemperature(station->pressure);
  if (!at) return tl::make_unexpected(at.error());
  const double step = 0.001 * station->pressure.value();
  const auto above = saturationTemperature(kilopascals((station->pressure.value() + step) * 1e-3));
  const double perPascal = above ? (inKelvin(*above) - inKelvin(*at)) / step : 0;
  return BathReference{*at, kelvins(std::hypot(perPascal * station->u, kSuperheat)),
                       "water boiling at " + station->evidence, std::move(station->findings)};
}

Expected<BathReference> referenceThermometer(Temperature shown, TemperatureDifference accuracy, Stated stated,
                                             const std::string& name) {
  if (!(inKelvin(shown) > 0 && inKelvin(shown) < 2000))
    return refuse("reading-temperature", name, fmt::format("{:g} K", inKelvin(shown)), "a temperature");
  if (!(inKelvin(accuracy) > 0 && inKelvin(accuracy) < 100))
    return refuse("thermometer-accuracy", name, fmt::format("{:g} K", inKelvin(accuracy)), "an accuracy above 0");
  const double u = stated == Stated::limits ? rectangular(inKelvin(accuracy)) : inKelvin(accuracy);
  return BathReference{shown, kelvins(u), name, {}};
}

}  // namespace ohmkin::bench
