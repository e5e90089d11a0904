#pragma once
#include <catalog/catalogue.h>
#include <catalog/source.h>
#include <quantity/date.h>
#include <quantity/quantity.h>
#include <optional>
#include <vector>

/// Engine families, their castings, and the ports in them.
namespace ohmkin::catalog {

struct EngineFamily {
  EngineKey id;
  MakeKey make;
  std::string makeName;
  std::string name;        ///< "inline six, 3.6 l"
  Temperature thermostat;  ///< begins to open
  Pressure cap;            ///< pressure cap, above ambient
  Source source;
};

/// Fitted new in this line in these model years.
struct OriginalEngine {
  EngineFamily engine;
  LineKey line;
  ModelYearSpan years;
  Source source;
};

enum class CastingRole { head, intake, housing, block };
std::string_view text(CastingRole role);
enum class CastingSide { left, right, either, only };
std::string_view text(CastingSide side);

struct Casting {
  CastingKey id;
  EngineKey engine;
  CastingRole role = CastingRole::head;
  CastingSide side = CastingSide::only;
  DateSpan cast;  ///< production span
  std::optional<LayoutKey> layout;
  Source source;
};

enum class PortUse { gaugeSender, warningSwitch, controllerSensor, fanSwitch, plug };
std::string_view text(PortUse use);

struct Port {
  CastingKey casting;
  std::string location;  ///< "front of the head"
  ThreadKey thread;
  std::optional<Length> depth;
  std::optional<Length> longestReach;
  PortUse usedBy = PortUse::gaugeSender;
  std::optional<TemperatureDifference> offset;  ///< coolant there minus coolant at the head's outlet; none: not known
  Source source;
};

std::vector<EngineFamily> engineFamilies(const Catalogue& catalogue);  ///< all, by make and name
std::optional<EngineFamily> engineFamily(const Catalogue& catalogue, const EngineKey& key);
/// By id, name, or make and name; letter case aside.
std::vector<EngineFamily> engineFamiliesNamed(const Catalogue& catalogue, std::string_view name);
std::vector<OriginalEngine> originalEngines(const Catalogue& catalogue, const LineKey& line, ModelYear year);

/// Letter case, blanks and the signs - . / aside: a casting is read with a torch.
std::vector<Casting> castingsNumbered(const Catalogue& catalogue, std::string_view number);
std::vector<Casting> castingsOf(const Catalogue& catalogue, const EngineKey& engine);  ///< by first casting date
std::vector<std::string> castingNumbers(const Catalogue& catalogue);             ///< for near misses and completion
std::vector<Port> ports(const Catalogue& catalogue, const CastingKey& casting);  ///< by location
std::vector<std::string> portLocations(const Catalogue& catalogue);              ///< every location once

}  // namespace ohmkin::catalog
