#pragma once
#include <catalog/catalogue.h>
#include <catalog/source.h>
#include <quantity/date.h>
#include <quantity/quantity.h>
#include <optional>
#include <vector>

/// Vehicle lines and the clusters they came with.
namespace ohmkin::catalog {

enum class GroundedPole { negative, positive };
std::string_view text(GroundedPole pole);

struct VehicleLine {
  LineKey id;
  MakeKey make;
  std::string makeName;
  std::string name;
  std::vector<std::string> also;  ///< other names people use
  ModelYearSpan years;
  Volts volts;
  GroundedPole groundedPole = GroundedPole::negative;
  Source source;
};

/// Number parts of serials, `from` up to but not including `until`; either end may be open.
struct SerialSpan {
  std::optional<int> from;
  std::optional<int> until;
  [[nodiscard]] bool told() const { return from || until; }
  [[nodiscard]] bool holds(int serial) const { return (!from || *from <= serial) && (!until || serial < *until); }
};

struct ClusterRecord {
  ClusterKey id;
  LineKey line;
  std::string option;  ///< "standard", "gauge package", …
  ModelYearSpan years;
  DateSpan built;                       ///< build dates within those years; an open end: no limit there
  SerialSpan serials;                   ///< the same change by serial, where it is told so
  std::optional<GaugeKey> gauge;        ///< none: a warning lamp only
  std::optional<TerminalKey> terminal;  ///< at the engine end of the lead
  std::optional<int> leadAwg;
  std::optional<Length> leadLength;
  std::string tell;  ///< how to know it by looking
  Source source;
};

/// A name somebody might type, and the line it means. A line has several: id, name, make and name, other names.
struct LineName {
  std::string name;
  LineKey line;
};

std::vector<VehicleLine> lines(const Catalogue& catalogue);  ///< all, by make and name
std::optional<VehicleLine> line(const Catalogue& catalogue, const LineKey& key);
/// By id, name, another name, or make and either; letter case aside. More than one where makes share a name.
std::vector<VehicleLine> linesNamed(const Catalogue& catalogue, std::string_view name);
std::vector<LineName> lineNames(const Catalogue& catalogue);  ///< for near misses and completion

/// Clusters of the line in that model year; with mid-year changes several of one option, by option and first build
/// date.
std::vector<ClusterRecord> clusters(const Catalogue& catalogue, const LineKey& line, ModelYear year);
std::vector<ClusterRecord> clusters(const Catalogue& catalogue, const LineKey& line);  ///< in all years
std::vector<std::string> clusterOptions(const Catalogue& catalogue);                   ///< every option once

}  // namespace ohmkin::catalog
