#include <catalog/engines.h>
#include <catalog/row.h>

namespace ohmkin::catalog {
namespace {

constexpr Words<CastingRole, 4> kRoles{{{CastingRole::head, "head"},
                                        {CastingRole::intake, "intake"},
                                        {CastingRole::housing, "housing"},
                                        {CastingRole::block, "block"}}};
constexpr Words<CastingSide, 4> kSides{{{CastingSide::left, "left"},
                                        {CastingSide::right, "right"},
                                        {CastingSide::either, "either"},
                                        {CastingSide::only, "only"}}};
constexpr Words<PortUse, 5> kPortUses{{{PortUse::gaugeSender, "gauge sender"},
                                       {PortUse::warningSwitch, "warning switch"},
                                       {PortUse::controllerSensor, "controller sensor"},
                                       {PortUse::fanSwitch, "fan switch"},
                                       {PortUse::plug, "plug"}}};

#define ENGINE_COLUMNS "e.id, e.make, m.name, e.name, e.thermostat, e.cap, "
#define ENGINES                                  \
  "SELECT " ENGINE_COLUMNS OHMKIN_SOURCE_COLUMNS \
  " FROM engine_family e JOIN make m ON m.id = e.make JOIN source s ON s.id = e.source "
#define CASTINGS                                                                                       \
  "SELECT c.id, c.engine, c.role, c.side, c.cast_from, c.cast_until, c.layout, " OHMKIN_SOURCE_COLUMNS \
  " FROM casting c JOIN source s ON s.id = c.source "

EngineFamily readEngine(Row& row) {
  EngineFamily e;
  e.id = row.key<EngineKey>();
  e.make = row.key<MakeKey>();
  e.makeName = row.text();
  e.name = row.text();
  e.thermostat = celsius(row.number());
  e.cap = kilopascals(row.number());
  e.source = row.source();
  return e;
}

OriginalEngine readOriginalEngine(Row& row) {
  OriginalEngine o;
  o.engine = readEngine(row);
  o.line = row.key<LineKey>();
  o.years = row.modelYears();
  o.source = row.source();
  return o;
}

Casting readCasting(Row& row) {
  Casting c;
  c.id = row.key<CastingKey>();
  c.engine = row.key<EngineKey>();
  c.role = row.oneOf(kRoles);
  c.side = row.oneOf(kSides);
  c.cast = row.dates();
  c.layout = row.maybeKey<LayoutKey>();
  c.source = row.source();
  return c;
}

Port readPort(Row& row) {
  Port p;
  p.casting = row.key<CastingKey>();
  p.location = row.text();
  p.thread = row.key<ThreadKey>();
  p.depth = row.maybe(millimetres);
  p.longestReach = row.maybe(millimetres);
  p.usedBy = row.oneOf(kPortUses);
  p.offset = row.maybe(kelvins);
  p.source = row.source();
  return p;
}

}  // namespace

std::string_view text(CastingRole role) { return wordFor(kRoles, role); }
std::string_view text(CastingSide side) { return wordFor(kSides, side); }
std::string_view text(PortUse use) { return wordFor(kPortUses, use); }

std::vector<EngineFamily> engineFamilies(const Catalogue& catalogue) {
  return ask(catalogue, ENGINES "ORDER BY m.name, e.name, e.id", readEngine);
}

std::optional<EngineFamily> engineFamily(const Catalogue& catalogue, const EngineKey& key) {
  return first(ask(catalogue, ENGINES "WHERE e.id = ?", readEngine, key.text));
}

std::vector<EngineFamily> engineFamiliesNamed(const Catalogue& catalogue, std::string_view name) {
  return ask(catalogue,
             ENGINES
             "WHERE lower(e.id) = ?1 OR lower(e.name) = ?1 OR lower(m.name || ' ' || e.name) = ?1 ORDER BY e.id",
             readEngine, loweredName(name));
}

std::vector<OriginalEngine> originalEngines(const Catalogue& catalogue, const LineKey& line, ModelYear year) {
  return ask(catalogue,
             "SELECT " ENGINE_COLUMNS
             "es.id, es.kind, es.citation, es.confidence, o.line, o.year_from, o.year_until, " OHMKIN_SOURCE_COLUMNS
             " FROM original_engine o JOIN engine_family e ON e.id = o.engine JOIN make m ON m.id = e.make"
             " JOIN source es ON es.id = e.source JOIN source s ON s.id = o.source"
             " WHERE o.line = ?1 AND o.year_from <= ?2 AND o.year_until > ?2 ORDER BY e.name, e.id",
             readOriginalEngine, line.text, year.value);
}

std::vector<Casting> castingsNumbered(const Catalogue& catalogue, std::string_view number) {
  return ask(
      catalogue,
      CASTINGS
      "WHERE replace(replace(replace(replace(upper(c.id), ' ', ''), '-', ''), '.', ''), '/', '') = ? ORDER BY c.id",
      readCasting, plainNumber(number));
}

std::vector<Casting> castingsOf(const Catalogue& catalogue, const EngineKey& engine) {
  return ask(catalogue, CASTINGS "WHERE c.engine = ? ORDER BY c.cast_from, c.id", readCasting, engine.text);
}

std::vector<std::string> castingNumbers(const Catalogue& catalogue) {
  return ask(catalogue, "SELECT id FROM casting ORDER BY id", onlyText);
}

std::vector<Port> ports(const Catalogue& catalogue, const CastingKey& casting) {
  return ask(
      catalogue,
      "SELECT p.casting, p.location, p.thread, p.depth, p.longest_reach, p.used_by, p.offset_k, " OHMKIN_SOURCE_COLUMNS
      " FROM port p JOIN source s ON s.id = p.source WHERE p.casting = ? ORDER BY p.location",
      readPort, casting.text);
}

std::vector<std::string> portLocations(const Catalogue& catalogue) {
  return ask(catalogue, "SELECT DISTINCT location FROM port ORDER BY location", onlyText);
}

}  // namespace ohmkin::catalog
