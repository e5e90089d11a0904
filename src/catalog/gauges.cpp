#include <catalog/gauges.h>
#include <catalog/row.h>

namespace ohmkin::catalog {
namespace {

constexpr Words<MovementKind, 4> kMovements{{{MovementKind::crossedCoil, "crossed coil"},
                                             {MovementKind::bimetal, "bimetal"},
                                             {MovementKind::benchPoints, "bench points"},
                                             {MovementKind::unknown, "unknown"}}};
constexpr Words<DialMarkKind, 6> kMarks{{{DialMarkKind::tick, "tick"},
                                         {DialMarkKind::numbered, "numbered"},
                                         {DialMarkKind::cold, "cold"},
                                         {DialMarkKind::normalLow, "normal low"},
                                         {DialMarkKind::normalHigh, "normal high"},
                                         {DialMarkKind::hot, "hot"}}};
constexpr Words<KeyOff, 4> kKeyOff{
    {{KeyOff::stays, "stays"}, {KeyOff::cold, "cold"}, {KeyOff::hot, "hot"}, {KeyOff::unknown, "unknown"}}};

#define GAUGES                                                                                                   \
  "SELECT g.id, g.name, g.family, g.movement, g.grounded, g.sweep, g.half, g.feed_coil, g.ground_coil, g.rest, " \
  "g.heater, g.regulated, g.key_off, g.tolerance, g.low_stop, g.high_stop, g.magnet_strength, g.magnet_pull, "   \
  "g.magnet_weakening, " OHMKIN_SOURCE_COLUMNS " FROM gauge g JOIN source s ON s.id = g.source "

Angle degrees(double d) { return {d}; }

DialMark readMark(Row& row) {
  DialMark m;
  m.kind = row.oneOf(kMarks);
  m.text = row.text();
  m.at = row.maybe(celsius);
  m.angle = degrees(row.number());
  return m;
}

MovementPoint readPoint(Row& row) {
  const Ohms r = ohms(row.number());
  return {r, degrees(row.number())};
}

std::optional<ReturnMagnetRecord> readMagnet(Row& row) {
  const auto strength = row.maybeNumber();
  const auto pull = row.maybe(degrees);
  const auto weakening = row.maybe(ohms);
  if (!strength || !pull || !weakening) return {};
  return ReturnMagnetRecord{*strength, *pull, *weakening};
}

GaugeRecord readGauge(Row& row) {
  GaugeRecord g;
  g.id = row.key<GaugeKey>();
  g.name = row.text();
  g.family = row.key<FamilyKey>();
  g.movement = row.oneOf(kMovements);
  g.grounded = row.maybe(degrees);
  g.sweep = row.maybe(degrees);
  g.half = row.maybe(ohms);
  g.feedCoil = row.maybe(ohms);
  g.groundCoil = row.maybe(ohms);
  g.rest = row.maybe(degrees);
  g.heater = row.maybe(ohms);
  g.regulated = row.maybe(volts);
  g.keyOff = row.oneOf(kKeyOff);
  g.tolerance = row.maybeNumber();
  g.lowStop = degrees(row.number());
  g.highStop = degrees(row.number());
  g.magnet = readMagnet(row);
  g.source = row.source();
  return g;
}

std::vector<GaugeRecord> whole(const Catalogue& catalogue, std::vector<GaugeRecord> gauges) {
  for (GaugeRecord& g : gauges) {
    g.marks = ask(catalogue, "SELECT kind, text, temperature, angle FROM dial_mark WHERE gauge = ? ORDER BY ordinal",
                  readMark, g.id.text);
    g.points =
        ask(catalogue, "SELECT ohms, angle FROM movement_point WHERE gauge = ? ORDER BY ordinal", readPoint, g.id.text);
  }
  return gauges;
}

}  // namespace

std::string_view text(MovementKind kind) { return wordFor(kMovements, kind); }
std::string_view text(DialMarkKind kind) { return wordFor(kMarks, kind); }
std::string_view text(KeyOff rest) { return wordFor(kKeyOff, rest); }

std::optional<GaugeRecord> gauge(const Catalogue& catalogue, const GaugeKey& key) {
  return first(whole(catalogue, ask(catalogue, GAUGES "WHERE g.id = ?", readGauge, key.text)));
}

std::vector<GaugeRecord> gauges(const Catalogue& catalogue) {
  return whole(catalogue, ask(catalogue, GAUGES "ORDER BY g.id", readGauge));
}

std::vector<GaugeRecord> gaugesNamed(const Catalogue& catalogue, std::string_view name) {
  return whole(catalogue, ask(catalogue, GAUGES "WHERE lower(g.id) = ?1 OR lower(g.name) = ?1 ORDER BY g.id", readGauge,
                              loweredName(name)));
}

std::vector<GaugeRecord> gaugesOfFamily(const Catalogue& catalogue, const FamilyKey& family) {
  return whole(catalogue, ask(catalogue, GAUGES "WHERE g.family = ? ORDER BY g.id", readGauge, family.text));
}

}  // namespace ohmkin::catalog
