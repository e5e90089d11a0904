#include <catalog/row.h>
#include <catalog/vehicles.h>
#include <algorithm>

namespace ohmkin::catalog {
namespace {

constexpr Words<GroundedPole, 2> kPoles{{{GroundedPole::negative, "negative"}, {GroundedPole::positive, "positive"}}};

#define LINES                                                                         \
  "SELECT l.id, l.make, m.name, l.name, l.also, l.year_from, l.year_until, l.volts, " \
  "l.grounded_pole, " OHMKIN_SOURCE_COLUMNS                                           \
  " FROM vehicle_line l JOIN make m ON m.id = l.make JOIN source s ON s.id = l.source "
#define CLUSTERS                                                                                           \
  "SELECT c.id, c.line, c.option, c.year_from, c.year_until, c.built_from, c.built_until, c.serial_from, " \
  "c.serial_until, c.gauge, c.terminal, "                                                                  \
  "c.lead_awg, c.lead_length, c.tell, " OHMKIN_SOURCE_COLUMNS " FROM cluster c JOIN source s ON s.id = c.source "

std::vector<std::string> listed(std::string_view names) {
  std::vector<std::string> all;
  while (!names.empty()) {
    const auto end = std::min(names.find(';'), names.size());
    std::string_view name = names.substr(0, end);
    names.remove_prefix(std::min(end + 1, names.size()));
    while (!name.empty() && name.front() == ' ') name.remove_prefix(1);
    while (!name.empty() && name.back() == ' ') name.remove_suffix(1);
    if (!name.empty()) all.emplace_back(name);
  }
  return all;
}

VehicleLine readLine(Row& row) {
  VehicleLine l;
  l.id = row.key<LineKey>();
  l.make = row.key<MakeKey>();
  l.makeName = row.text();
  l.name = row.text();
  l.also = listed(row.text());
  l.years = row.modelYears();
  l.volts = volts(row.number());
  l.groundedPole = row.oneOf(kPoles);
  l.source = row.source();
  return l;
}

/// `wanted` in lower case.
bool isNamed(const VehicleLine& l, const std::string& wanted) {
  const auto is = [&](const std::string& name) {
    return loweredName(name) == wanted || loweredName(l.makeName + " " + name) == wanted;
  };
  return loweredName(l.id.text) == wanted || is(l.name) || std::any_of(l.also.begin(), l.also.end(), is);
}

ClusterRecord readCluster(Row& row) {
  ClusterRecord c;
  c.id = row.key<ClusterKey>();
  c.line = row.key<LineKey>();
  c.option = row.text();
  c.years = row.modelYears();
  c.built = row.dates();
  c.serials.from = row.maybeWhole();
  c.serials.until = row.maybeWhole();
  c.gauge = row.maybeKey<GaugeKey>();
  c.terminal = row.maybeKey<TerminalKey>();
  c.leadAwg = row.maybeWhole();
  c.leadLength = row.maybe(millimetres);
  c.tell = row.text();
  c.source = row.source();
  return c;
}

}  // namespace

std::string_view text(GroundedPole pole) { return wordFor(kPoles, pole); }

std::vector<VehicleLine> lines(const Catalogue& catalogue) {
  return ask(catalogue, LINES "ORDER BY m.name, l.name, l.id", readLine);
}

std::optional<VehicleLine> line(const Catalogue& catalogue, const LineKey& key) {
  return first(ask(catalogue, LINES "WHERE l.id = ?", readLine, key.text));
}

std::vector<VehicleLine> linesNamed(const Catalogue& catalogue, std::string_view name) {
  const std::string wanted = loweredName(name);
  if (wanted.empty()) return {};
  // The lists of other names are only searched here for a part of them; isNamed() takes them apart.
  auto found =
      ask(catalogue,
          LINES
          "WHERE l.rowid IN (SELECT rowid FROM vehicle_line WHERE lower(id) = ?1 "
          "UNION ALL SELECT rowid FROM vehicle_line WHERE lower(name) = ?1 "
          "UNION ALL SELECT n.rowid FROM make k CROSS JOIN vehicle_line n ON lower(n.name) = substr(?1, length(k.name) "
          "+ 2) "
          "WHERE instr(?1, lower(k.name) || ' ') = 1 "
          "UNION ALL SELECT rowid FROM vehicle_line WHERE also <> '' AND instr(lower(also), ?1) > 0 "
          "UNION ALL SELECT n.rowid FROM make k CROSS JOIN vehicle_line n ON n.also <> '' AND "
          "instr(lower(n.also), substr(?1, length(k.name) + 2)) > 0 WHERE instr(?1, lower(k.name) || ' ') = 1) "
          "ORDER BY m.name, l.name, l.id",
          readLine, wanted);
  std::erase_if(found, [&](const VehicleLine& l) { return !isNamed(l, wanted); });
  return found;
}

std::vector<LineName> lineNames(const Catalogue& catalogue) {
  std::vector<LineName> names;
  for (const VehicleLine& l : lines(catalogue)) {
    names.push_back({l.name, l.id});
    names.push_back({l.makeName + " " + l.name, l.id});
    if (l.id.text != l.name) names.push_back({l.id.text, l.id});
    for (const std::string& other : l.also) {
      names.push_back({other, l.id});
      names.push_back({l.makeName + " " + other, l.id});
    }
  }
  return names;
}

std::vector<ClusterRecord> clusters(const Catalogue& catalogue, const LineKey& line, ModelYear year) {
  return ask(catalogue,
             CLUSTERS
             "WHERE c.line = ?1 AND c.year_from <= ?2 AND c.year_until > ?2 ORDER BY c.option, c.built_from, c.id",
             readCluster, line.text, year.value);
}

std::vector<ClusterRecord> clusters(const Catalogue& catalogue, const LineKey& line) {
  return ask(catalogue, CLUSTERS "WHERE c.line = ? ORDER BY c.year_from, c.option, c.built_from, c.id", readCluster,
             line.text);
}

std::vector<std::string> clusterOptions(const Catalogue& catalogue) {
  return ask(catalogue, "SELECT DISTINCT option FROM cluster ORDER BY option", onlyText);
}

}  // namespace ohmkin::catalog
