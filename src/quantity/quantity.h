#pragma once
#include <boost/units/absolute.hpp>
#include <boost/units/quantity.hpp>
#include <boost/units/systems/si/current.hpp>
#include <boost/units/systems/si/electric_potential.hpp>
#include <boost/units/systems/si/length.hpp>
#include <boost/units/systems/si/power.hpp>
#include <boost/units/systems/si/pressure.hpp>
#include <boost/units/systems/si/resistance.hpp>
#include <boost/units/systems/si/temperature.hpp>
#include <boost/units/systems/si/torque.hpp>
#include <numbers>

/// The trade's quantities as types. Inside they are SI doubles and cost nothing; a temperature (a point on the scale)
/// and a difference of temperatures do not mix, and nothing is built from a bare number by accident.
namespace ohmkin {

namespace units = boost::units;

using Temperature = units::quantity<units::absolute<units::si::temperature>>;  ///< a point, kelvin inside
using TemperatureDifference = units::quantity<units::si::temperature>;         ///< a difference, kelvin
using Ohms = units::quantity<units::si::resistance>;
using Volts = units::quantity<units::si::electric_potential>;
using Amperes = units::quantity<units::si::current>;
using Watts = units::quantity<units::si::power>;
using Length = units::quantity<units::si::length>;      ///< metres inside
using Pressure = units::quantity<units::si::pressure>;  ///< pascals inside, absolute unless the name says gauge
using Torque = units::quantity<units::si::torque>;      ///< newton metres (per radian in the unit system; same number)

/// Needle angle on the dial, degrees, clockwise positive, 0 straight up.
struct Angle {
  double degrees = 0;
  friend auto operator<=>(const Angle&, const Angle&) = default;
  friend Angle operator+(Angle a, Angle b) { return {a.degrees + b.degrees}; }
  friend Angle operator-(Angle a, Angle b) { return {a.degrees - b.degrees}; }
};

inline constexpr double kRadiansPerDegree = std::numbers::pi / 180;
inline constexpr double kZeroCelsius = 273.15;                           ///< K, exact by definition
inline constexpr double kNewtonMetresPerPoundFoot = 1.3558179483314004;  ///< NIST SP 811 (2008), table B.8

inline Temperature kelvin(double k) { return k * units::absolute<units::si::temperature>(); }
inline Temperature celsius(double c) { return kelvin(c + kZeroCelsius); }
inline Temperature fahrenheit(double f) { return celsius((f - 32.0) / 1.8); }
inline TemperatureDifference kelvins(double k) { return k * units::si::kelvin; }
inline Ohms ohms(double r) { return r * units::si::ohm; }
inline Volts volts(double v) { return v * units::si::volt; }
inline Amperes amperes(double a) { return a * units::si::ampere; }
inline Amperes milliamperes(double ma) { return amperes(ma * 1e-3); }
inline Watts watts(double w) { return w * units::si::watt; }
inline Length millimetres(double mm) { return mm * 1e-3 * units::si::metre; }
inline Pressure kilopascals(double kpa) { return kpa * 1e3 * units::si::pascal; }
inline Torque newtonMetres(double nm) { return Torque::from_value(nm); }

inline double inKelvin(Temperature t) { return t.value(); }
inline double inKelvin(TemperatureDifference d) { return d.value(); }
inline double inCelsius(Temperature t) { return t.value() - kZeroCelsius; }
inline double inFahrenheit(Temperature t) { return inCelsius(t) * 1.8 + 32.0; }
inline double inOhms(Ohms r) { return r.value(); }
inline double inVolts(Volts v) { return v.value(); }
inline double inAmperes(Amperes a) { return a.value(); }
inline double inWatts(Watts w) { return w.value(); }
inline double inMillimetres(Length l) { return l.value() * 1e3; }
inline double inKilopascals(Pressure p) { return p.value() * 1e-3; }
inline double inNewtonMetres(Torque t) { return t.value(); }

/// A closed range of temperatures, low ≤ high.
struct TemperatureSpan {
  Temperature low;
  Temperature high;
  [[nodiscard]] bool holds(Temperature t) const { return low <= t && t <= high; }
  friend bool operator==(const TemperatureSpan&, const TemperatureSpan&) = default;
};

}  // namespace ohmkin
