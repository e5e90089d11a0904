#pragma once
#include <catalog/catalogue.h>
#include <catalog/source.h>
#include <quantity/quantity.h>
#include <optional>
#include <vector>

/// Resistance families and the curves that describe them, or one lot of one part: a part number is not a curve.
namespace ohmkin::catalog {

enum class Measurand { coolantTemperature, oilTemperature, oilPressure, fuelLevel };
std::string_view text(Measurand measurand);
enum class CurveModel { beta, steinhartHart, exponential, polynomial, table };
std::string_view text(CurveModel model);
enum class RunDirection { heating, cooling };
std::string_view text(RunDirection direction);

struct Sample {
  Temperature at;
  Ohms ohms;
  RunDirection direction = RunDirection::heating;
};

/// Of exactly one of `family` and `sender` (then of its `lot`).
struct CurveRecord {
  CurveKey id;
  std::optional<FamilyKey> family;
  std::optional<SenderKey> sender;
  std::string lot;
  CurveModel model = CurveModel::beta;
  std::string coefficients;        ///< as curve::modelFrom reads them; empty for a table, whose points are samples
  std::vector<double> covariance;  ///< square, row by row; empty where not known
  double floor = 0;                ///< least standard uncertainty of ln R
  TemperatureSpan valid;
  std::vector<Sample> samples;  ///< in the order they were written down
  Source source;
};

/// The trade's two numbers. Where a temperature is stated its span is a point.
struct ColdHot {
  Ohms cold;
  Ohms hot;
  TemperatureSpan coldAt;
  TemperatureSpan hotAt;
};

struct Family {
  FamilyKey id;
  std::string name;
  Measurand measurand = Measurand::coolantTemperature;
  bool falling = true;              ///< ohms fall as the measurand rises
  std::optional<double> tolerance;  ///< of ohms, as a part: 0.08; none where the trade states none
  std::optional<ColdHot> coldHot;
  std::string note;
  Source source;
  std::vector<CurveRecord> curves;  ///< of the family itself, by id; may be empty when coldHot is there
};

std::vector<Family> families(const Catalogue& catalogue);  ///< by name, curves included
std::optional<Family> family(const Catalogue& catalogue, const FamilyKey& key);
std::vector<Family> familiesNamed(const Catalogue& catalogue,
                                  std::string_view name);  ///< by id or name, letter case aside

std::vector<CurveRecord> benchCurves(const Catalogue& catalogue,
                                     const SenderKey& sender);  ///< every lot, by lot and id
std::vector<CurveRecord> benchCurves(const Catalogue& catalogue, const SenderKey& sender, std::string_view lot);

}  // namespace ohmkin::catalog
