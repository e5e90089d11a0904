#pragma once
#include <bench/acceptance.h>
#include <bench/guidance.h>
#include <catalog/bench_writer.h>
#include <curve/fit.h>
#include <workflow/bench_equipment.h>
#include <workflow/bench_families.h>
#include <optional>
#include <string>
#include <vector>

/// Bench work by hand: readings as they are taken, and after each all that can be said so far.
namespace ohmkin::workflow {

/// One line of the table.
struct HandReading {
  BathSaid bath;
  std::optional<Ohms> shown;    ///< as the meter shows it, leads included; none: overload
  std::optional<Ohms> swapped;  ///< probes the other way round
  std::optional<bench::Direction> direction;
  bench::Practice practice;
};

struct BenchQuestion {
  std::vector<HandReading> readings;
  std::string meter;  ///< as meterNamed() has it
  std::optional<bench::LeadZero> leads;
  std::string part;  ///< number on the part; must be the catalogue's to keep a curve
  std::string lot;
  std::string family;               ///< it claims to be; empty: the part's
  std::optional<double> tolerance;  ///< of ohms, as the part's own sheet states it; none: the family's
  bench::AcceptanceRule rule;
  bench::Unnamed unnamed;
  /// What the bath can do, for the next reading; none: from ice to where the water boils, or 100 °C.
  std::optional<TemperatureSpan> bathReach;
  std::optional<curve::Form> form;
  DisplayUnits units;
};

/// A line of the table, taken or not.
struct TakenLine {
  std::optional<bench::Reading> reading;  ///< leads off, with its standard uncertainties
  std::vector<Finding> findings;
  std::optional<Refusal> refused;     ///< what is wrong with this line; the others stand
  std::optional<std::size_t> sample;  ///< in the fit
};

struct DriftOfPart {
  catalog::CurveKey curve;
  std::string lot;
  std::string provenance;  ///< "measured 25 Nov 2026 by Ann …"; empty: of a pack
  bench::Drift drift;
};

struct BenchAnswer {
  std::vector<Finding> cautions;  ///< first, always
  BenchMeter meter;
  std::vector<TakenLine> lines;          ///< beside the question's readings
  std::vector<bench::Reading> readings;  ///< of the lines that were taken
  std::optional<curve::Fit> fit;         ///< as soon as the readings carry one
  std::optional<Refusal> noFit;
  std::optional<bench::Identification> whose;
  std::optional<bench::NextReading> next;
  std::optional<std::size_t> claimed;  ///< family, among those given
  std::optional<Finding> againstClaim;
  std::optional<bench::Acceptance> good;  ///< against the claimed family; none: nothing is claimed
  std::vector<DriftOfPart> drift;         ///< against each earlier curve of the part
  std::vector<Finding> findings;          ///< overload, practice, reach, …
};

/// Refuses an unknown meter, part family or family; a line that cannot be taken refuses itself alone.
/// No readings at all are well: then cautions, practice and the first temperature to measure are the answer.
Expected<BenchAnswer> benchWork(const catalog::Catalogue& catalogue, const BenchFamilies& families,
                                const BenchQuestion& question);

/// Cold ohms at room temperature: which families remain. `roomU` is standard; 2 K is a counter's thermometer.
Expected<bench::QuickCheck> quickCheck(const catalog::Catalogue& catalogue, const BenchFamilies& families,
                                       std::string_view meter, Temperature room, Ohms shown,
                                       TemperatureDifference roomU = kelvins(2), const DisplayUnits& units = {});

struct KeptBench {
  catalog::RunNumber run;
  std::optional<catalog::CurveKey> curve;  ///< none: too few readings, or no part said
  std::string sentence;
  std::vector<Finding> findings;
};
/// Keeps the readings as a run, and its curve where they carry one. Refuses (bench-nothing-to-keep) no readings, and
/// what benchWork() and the catalogue refuse. Throws catalog::CatalogueError.
Expected<KeptBench> keepBench(catalog::Catalogue& catalogue, const BenchFamilies& families,
                              const BenchQuestion& question, std::string_view who);

}  // namespace ohmkin::workflow
