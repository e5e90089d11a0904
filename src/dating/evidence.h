#pragma once
#include <dating/day_distribution.h>
#include <dating/decode.h>
#include <dating/lag.h>

namespace ohmkin::dating {

enum class CastingRole { head, block, intake, housing };

/// One casting of the engine. Heads are dated one by one, so each is an entry.
struct DatedCasting {
  std::string name;  ///< for sentences: "left head", "block"
  CastingRole role = CastingRole::head;
  DateSpan produced;              ///< days on which this casting number was poured; open where not known
  std::vector<Reading> readings;  ///< of its date code; none: not read
};

/// The date stamped at assembly.
struct AssemblyStamp {
  std::vector<Reading> readings;
  bool padRecut = false;  ///< the pad was re-cut or re-stamped: weighs less than a casting
};

/// The vehicle the engine sits in.
struct VehicleDate {
  std::optional<Date> built;
  std::optional<ModelYear> year;         ///< used where `built` is not known
  std::optional<DateSpan> yearProduced;  ///< days on which that model year was built; default: usualProduction(year)
};

/// What is usual. All from memory, no source; every one may be set.
struct Beliefs {
  Lag castingToAssembly{12, 0.9, 180, kFromMemory};
  Lag assemblyToVehicle{10, 0.91, 180, kFromMemory};
  double firstEngine = 0.7;  ///< share of vehicles that still have their first engine
  double headStays = 0.97;   ///< a head is the one fitted at assembly; also intakes and housings
  double blockStays = 0.995;
  double stampTrue = 0.95;      ///< the stamp tells the assembly date
  double recutStampTrue = 0.4;  ///< the same where the pad was re-cut
  int headsApart = 60;          ///< days; further apart, one was changed
  int earlyCasting = 150;       ///< days before the model year's first build that are normal
  std::string source = kFromMemory;
};

struct Evidence {
  DateSpan window;  ///< dates thought possible, as in DecodeOptions
  std::vector<DatedCasting> castings;
  std::optional<AssemblyStamp> stamp;
  VehicleDate vehicle;
  Beliefs beliefs;
};

struct CastingPosterior {
  DayDistribution days;
  std::vector<DecadeShare> decades;
  double fittedAtAssembly = 1;  ///< probability that it was on the engine from the start
};

/// Two facts no date joins. Names are those of the castings, "assembly stamp", "production span of the left head".
struct Conflict {
  std::string one;
  std::string other;
};

struct Posterior {
  DayDistribution assembly;                ///< of the engine; empty where no evidence was given or none of it fits
  std::vector<DecadeShare> decades;        ///< of the assembly
  std::vector<CastingPosterior> castings;  ///< as given
  std::optional<double> firstEngine;       ///< probability that it is the vehicle's first; none: one of them undated
  std::optional<Conflict> conflict;        ///< cannot both be true; the probabilities say which is likelier wrong
  std::vector<Finding> findings;
  DateSpan window;  ///< dates that were considered, both ends known
};

/// Exact enumeration over days: assembly is equally likely on every day of the window, castings precede it and the
/// vehicle follows it by their lags, a casting may have been changed, a stamp may be false, and the engine may come
/// from elsewhere. Refuses windows that are empty or too wide, and beliefs that are not probabilities or lags.
Expected<Posterior> posterior(const Evidence& evidence);

/// "1970s (97 %), most probably 14 May 1974"; "1960s (48 %) or 1970s (47 %), not settled"; "not known". For heads,
/// blocks and engines alike.
std::string eraSummary(const DayDistribution& days);

}  // namespace ohmkin::dating
