#pragma once
#include <catalog/catalogue.h>
#include <catalog/source.h>
#include <quantity/quantity.h>
#include <optional>
#include <vector>

/// Dash gauges, whole: numbers of the movement, marks of the dial, bench points.
namespace ohmkin::catalog {

enum class MovementKind { crossedCoil, bimetal, benchPoints, unknown };
std::string_view text(MovementKind kind);
enum class DialMarkKind { tick, numbered, cold, normalLow, normalHigh, hot };
std::string_view text(DialMarkKind kind);
enum class KeyOff { stays, cold, hot, unknown };  ///< where the needle goes with the key off
std::string_view text(KeyOff rest);

struct DialMark {
  DialMarkKind kind = DialMarkKind::tick;
  std::string text;
  std::optional<Temperature> at;
  Angle angle;
};

struct MovementPoint {
  Ohms ohms;  ///< on the lead
  Angle needle;
};

/// A magnet that takes a crossed coil's needle home without current.
struct ReturnMagnetRecord {
  double strength = 0;  ///< its field as a part of the coils' own, lead grounded; 0 to below 0.5
  Angle pull;           ///< where it alone would turn the needle
  /// The sender's ohms at which the coils' currents share a denominator twice that of a grounded lead.
  Ohms weakening;
};

struct GaugeRecord {
  GaugeKey id;
  std::string name;
  FamilyKey family;  ///< the senders it was built for
  MovementKind movement = MovementKind::unknown;
  std::optional<Angle> grounded;  ///< needle with the lead grounded
  std::optional<Angle> sweep;     ///< crossed coil: from there to lead open
  std::optional<Ohms> half;       ///< crossed coil: ohms at half the sweep
  std::optional<Ohms> feedCoil;
  std::optional<Ohms> groundCoil;
  std::optional<Angle> rest;  ///< bimetal: without current
  std::optional<Ohms> heater;
  std::optional<Volts> regulated;  ///< RMS, behind the regulator
  KeyOff keyOff = KeyOff::unknown;
  std::optional<double> tolerance;  ///< standard uncertainty of a good one, as a part of reading; none where not stated
  Angle lowStop;
  Angle highStop;
  std::optional<ReturnMagnetRecord> magnet;  ///< crossed coil: then the numbers above are those of the coils alone
  Source source;
  std::vector<DialMark> marks;        ///< by rising temperature
  std::vector<MovementPoint> points;  ///< in the order they were written down
};

std::optional<GaugeRecord> gauge(const Catalogue& catalogue, const GaugeKey& key);
std::vector<GaugeRecord> gauges(const Catalogue& catalogue);  ///< all, by id
/// By id or name, letter case aside.
std::vector<GaugeRecord> gaugesNamed(const Catalogue& catalogue, std::string_view name);
std::vector<GaugeRecord> gaugesOfFamily(const Catalogue& catalogue, const FamilyKey& family);

}  // namespace ohmkin::catalog
