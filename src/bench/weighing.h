#pragma once
#include <bench/identify.h>
#include <bench/shared_normal.h>

/// The model of identify.h in bare numbers: ln ohms, kelvin. Not for other rooms.
namespace ohmkin::bench {

Expected<void> checked(std::span<const FamilyCurve> families);
Expected<void> checked(std::span<const Reading> readings);  ///< none at all is well
Expected<void> checked(const IdentifyModel& model);

/// The part's standard deviation of ln ohms: tolerance as rectangular limits.
double partSpread(double tolerance);

/// What a family says of a reading: its expected ln ohms and how it may deviate. None outside its curve.
struct Foretold {
  double lnOhms = 0;
  Shares shares;
};
struct Bath {
  Temperature at;
  double uKelvin = 0;
  double uLnOhms = 0;
  double crowd = 1;  ///< readings that share its own deviation, itself among them; at least 1
};
std::optional<Foretold> foretell(const FamilyCurve& family, const Bath& bath, const IdentifyModel& model);
Foretold foretellUnnamed(const Bath& bath, const Unnamed& unnamed);
/// How many readings lie about each temperature: each counts 1 − its distance/20 K, those further off nothing.
std::vector<double> crowds(std::span<const Temperature> of, std::span<const Reading> readings);

/// A family, or none of them, with the readings so far taken in.
struct Weighed {
  SharedNormal normal;
  double lnEvidence = 0;
  std::size_t answered = 0;
};

struct Weighing {
  std::vector<Weighed> families;
  std::vector<double> probability;  ///< of each family
  Weighed unnamed;
  double none = 0;
};
/// Readings may be none: then the weights alone decide.
Weighing weigh(std::span<const FamilyCurve> families, std::span<const Reading> readings, const IdentifyModel& model);

/// "98 %", "less than 0.1 %", "more than 99.9 %": nothing is certain.
std::string percent(double probability);

}  // namespace ohmkin::bench
