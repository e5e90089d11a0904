#pragma once
#include <circuit/gauge_circuit.h>
#include <string>

/// What may be wrong, as changes of parts, read from data. From memory, no source: starting values until a shop's own
/// jobs replace them.
namespace ohmkin::circuit {

enum class Symptom { any, low, pegged, high, erratic, lamps };
inline constexpr std::size_t kSymptoms = 6;
std::string_view symptomCode(Symptom symptom);  ///< "low"
std::string_view symptomName(Symptom symptom);  ///< "reads low or dead cold"
std::optional<Symptom> symptomOf(std::string_view code);

enum class Change {
  set,       ///< ohms of the part become those of the severity
  add,       ///< are added
  times,     ///< the part's ohms (the sender's: against its curve) are multiplied
  coolant,   ///< kelvins above the running temperature
  tip,       ///< kelvins the sender's tip is above the coolant
  level,     ///< tip, and the coolant is low
  stuck,     ///< needle at that place
  reversed,  ///< feed and ground of the gauge exchanged
  regulator  ///< does not regulate: its contact has those ohms
};

struct Fault {
  std::string code;   ///< "cluster-ground-open"
  std::string group;  ///< of the priors
  double share = 1;   ///< within its group, before the symptom is looked at
  Part part = Part::lead;
  Change change = Change::set;
  std::vector<double> severities;  ///< equally likely at first; infinite is open
  double erratic = 0;              ///< how often it comes and goes, 0 … 1
  std::string needs;               ///< empty, "regulated", "unregulated", "crossed", "feed-shunt", "ground-shunt"
  std::string repair;
  std::string name;  ///< "the cluster's ground is lost"
};

struct Repair {
  std::string code;
  double minutes = 0;  ///< part and labour as minutes of work
  std::string sentence;
  std::string caution;  ///< empty where none
};

struct GroupPrior {
  std::string group;
  std::string name;
  std::array<double, kSymptoms> percent{};
};

struct FaultBook {
  std::vector<Fault> faults;
  std::vector<Repair> repairs;
  std::vector<GroupPrior> groups;
  [[nodiscard]] std::size_t repairIndex(const Fault& fault) const;
  [[nodiscard]] std::optional<std::size_t> faultWith(std::string_view code) const;
};
/// Jobs of a shop's own, where the cause was found in the end.
struct JobCount {
  std::string group;  ///< of the cause; a fault's code stands for its group
  Symptom symptom = Symptom::any;
  double jobs = 0;
};
inline constexpr double kPriorJobs = 20;  ///< how many jobs the percentages count for (common practice, no source)
/// The percentages with the shop's own jobs taken in; every job counts for its symptom and for "any". Refuses a group
/// that is not there and jobs below 0.
Expected<FaultBook> learned(FaultBook book, const std::vector<JobCount>& jobs);

/// The one compiled in. Refuses (a test holds that it does not) a row that does not read.
Expected<FaultBook> usualFaults();

/// The circuit with the fault; may be applied twice for a pair.
Condition with(const Condition& before, const Fault& fault, double severity);
/// Whether the circuit has what a fault or a test needs.
bool has(const GaugeCircuit& circuit, std::string_view needs);

inline constexpr double kLampOhms = 9;  ///< lamps of a cluster together, lit (memory)
/// Probability of each symptom, from the same network: where the needle stands with a warm engine, lamps off and on.
/// `any` is 1. Limits: 0.10 of the dial is read as low or high, past the hot mark as pegged, 0.05 as moving with the
/// lamps (common practice, no source), each blurred by 0.03 (standard).
Expected<std::array<double, kSymptoms>> symptomsOf(const GaugeCircuit& circuit, const Condition& condition,
                                                   double erratic);

}  // namespace ohmkin::circuit
