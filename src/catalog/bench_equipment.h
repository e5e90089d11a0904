#pragma once
#include <catalog/catalogue.h>
#include <catalog/key.h>
#include <finding/refusal.h>
#include <quantity/quantity.h>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Meters, thermometers and baths of the shop, as its people wrote them down.
namespace ohmkin::catalog {

using MeterKey = Key<struct MeterNoun>;  ///< its name
using ThermometerKey = Key<struct ThermometerNoun>;
using BathKey = Key<struct BathNoun>;

/// ±(ofReading · reading + counts · resolution), as the data sheet has it.
struct MeterRangeRecord {
  Ohms fullScale;                                     ///< above 0
  Ohms resolution;                                    ///< one count; above 0, at most fullScale
  double ofReading = 0;                               ///< 0.012 for 1.2 %; 0 to below 1
  double counts = 0;                                  ///< 0 or above
  std::optional<double> milliamperes = std::nullopt;  ///< steady current, above 0; not together with a cell
  std::optional<Volts> cell = std::nullopt;           ///< both or neither
  std::optional<Ohms> midScale = std::nullopt;
};

struct MeterRecord {
  MeterKey name;
  std::optional<Ohms> leads;                     ///< held together; none: never zeroed
  std::optional<Ohms> leadsStandardUncertainty;  ///< both or neither
  std::string note;
  std::vector<MeterRangeRecord> ranges;  ///< by rising full scale; at least one
};

enum class AccuracyStated { limits, standardUncertainty };
struct ThermometerRecord {
  ThermometerKey name;
  TemperatureDifference accuracy;  ///< above 0
  AccuracyStated stated = AccuracyStated::limits;
  std::string note;
};

enum class BathKind { crushedIce, iceCubes, boilingWater, thermometer };
enum class BarometerReduced { toSeaLevel, no, notKnown };
struct BathRecord {
  BathKey name;
  BathKind kind = BathKind::crushedIce;
  std::optional<Length> altitude;             ///< boiling water
  std::optional<Length> altitudeU;            ///< standard, 0 or above
  std::optional<Pressure> barometerU;         ///< standard, of the shop's barometer; none: it has none
  std::optional<BarometerReduced> reduced;    ///< how that barometer shows its pressure
  std::optional<ThermometerKey> thermometer;  ///< of that kind, and only of that
  std::string note;
};

std::vector<MeterRecord> meters(const Catalogue& catalogue);  ///< all, by name, as are the others
std::optional<MeterRecord> meter(const Catalogue& catalogue, const MeterKey& key);
std::vector<ThermometerRecord> thermometers(const Catalogue& catalogue);
std::optional<ThermometerRecord> thermometer(const Catalogue& catalogue, const ThermometerKey& key);
std::vector<BathRecord> baths(const Catalogue& catalogue);
std::optional<BathRecord> bath(const Catalogue& catalogue, const BathKey& key);

/// Keeps it, in place of one of that name: one transaction with a line in the change log. Refuses (row-refused) what
/// breaks a rule of the tables. What was measured with it before keeps the words of its own time.
Expected<void> keepMeter(Catalogue& catalogue, const MeterRecord& meter, std::string_view who);
Expected<void> keepThermometer(Catalogue& catalogue, const ThermometerRecord& thermometer, std::string_view who);
Expected<void> keepBath(Catalogue& catalogue, const BathRecord& bath, std::string_view who);
/// Refuses (equipment-unknown), and (row-refused) a thermometer that a bath names.
Expected<void> removeMeter(Catalogue& catalogue, const MeterKey& key, std::string_view who);
Expected<void> removeThermometer(Catalogue& catalogue, const ThermometerKey& key, std::string_view who);
Expected<void> removeBath(Catalogue& catalogue, const BathKey& key, std::string_view who);

}  // namespace ohmkin::catalog
