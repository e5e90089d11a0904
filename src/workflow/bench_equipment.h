#pragma once
#include <bench/bath.h>
#include <bench/meter.h>
#include <catalog/bench_equipment.h>
#include <optional>
#include <string>
#include <string_view>

/// What is on the bench: the shop's own equipment by name, or what was said of it just now.
namespace ohmkin::workflow {

struct BenchMeter {
  bench::Meter meter;
  bench::LeadZero leads;
  std::string words;     ///< for the record: "bench meter, leads 0.2 Ω"
  bool assumed = false;  ///< nobody said which: flagged
};

/// A meter of the catalogue by name (letter case aside), "digital" or "moving-coil" for what is usual, or "±0.8 %":
/// limits of the reading. Empty: the usual digital one, flagged as assumed. Refuses (meter-unknown) with near misses.
Expected<BenchMeter> meterNamed(const catalog::Catalogue& catalogue, std::string_view name,
                                std::optional<bench::LeadZero> leads = {});
Expected<BenchMeter> meterOf(const catalog::MeterRecord& record);

/// A thermometer in the bath, beside the sender.
struct BenchThermometer {
  std::string words;
  TemperatureDifference accuracy;
  bench::Stated stated = bench::Stated::limits;
  bool assumed = false;
};
/// A thermometer of the catalogue, or a bath that has one, by name, or "±0.5 K": limits. Empty: ±1 K, flagged as
/// assumed (a judgement). Refuses (thermometer-unknown) with near misses.
Expected<BenchThermometer> thermometerNamed(const catalog::Catalogue& catalogue, std::string_view name);

/// The bath of a reading.
struct BathSaid {
  catalog::BathKind kind = catalog::BathKind::thermometer;
  std::optional<Temperature> shown;  ///< by the thermometer; of that kind, and only of that
  std::string thermometer;           ///< as thermometerNamed() has it
  std::optional<Length> altitude;    ///< boiling water
  std::optional<Pressure> barometer;
  bench::Reduced reduced = bench::Reduced::notKnown;
  std::optional<Pressure> barometerU;  ///< standard
  std::optional<Length> altitudeU;     ///< standard; none: 30 m, a map's
  bool plain = true;
};
/// Refuses as the bath does: `barometer-reduced-question` is the question to put to the person.
Expected<bench::BathReference> bathReference(const catalog::Catalogue& catalogue, const BathSaid& said);
/// A bath of the catalogue by name, its altitude and how its barometer shows; what it shows today is still to be said.
Expected<BathSaid> bathNamed(const catalog::Catalogue& catalogue, std::string_view name);

}  // namespace ohmkin::workflow
