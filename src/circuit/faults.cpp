#include <circuit/data_table.h>
#include <circuit/faults.h>
#include <circuit/named.h>

#include <fmt/core.h>
#include <algorithm>
#include <cmath>
#include <map>

namespace ohmkin::circuit {
namespace {

constexpr std::array<Named, kSymptoms> kSymptomNames{{{"any", "it is not said how it misreads"},
                                                      {"low", "reads low or dead cold"},
                                                      {"pegged", "pegged hot"},
                                                      {"high", "reads high"},
                                                      {"erratic", "erratic"},
                                                      {"lamps", "moves with the lamps"}}};

const std::map<std::string_view, Change> kChanges{
    {"set", Change::set},         {"add", Change::add},           {"times", Change::times},
    {"coolant", Change::coolant}, {"tip", Change::tip},           {"level", Change::level},
    {"stuck", Change::stuck},     {"reversed", Change::reversed}, {"regulator", Change::regulator}};

constexpr double kLow = 0.10;
constexpr double kPegged = 1.0;
constexpr double kMoved = 0.05;
constexpr double kBlur = 0.03;

/// How likely a value seen with the blur is above the limit.
double above(double value, double limit) { return 0.5 * std::erfc((limit - value) / (kBlur * std::sqrt(2.0))); }

Expected<Fault> readFault(const DataTable& table, std::size_t row) {
  const auto part = partOf(table.text(row, "part"));
  if (!part) return table.wrong(row, "part", "the code of a part of the circuit");
  const auto change = kChanges.find(table.text(row, "change"));
  if (change == kChanges.end()) return table.wrong(row, "change", "set, add, times, coolant, tip, level, stuck, …");
  const auto share = table.number(row, "share");
  if (!share || *share <= 0) return table.wrong(row, "share", "a share above 0");
  const auto severities = table.numbers(row, "severities");
  if (!severities) return tl::make_unexpected(severities.error());
  if (severities->empty()) return table.wrong(row, "severities", "at least one");
  const auto erratic = table.number(row, "erratic");
  if (!erratic || !(*erratic >= 0 && *erratic <= 1)) return table.wrong(row, "erratic", "0 to 1");
  return Fault{table.text(row, "code"),
               table.text(row, "group"),
               *share,
               *part,
               change->second,
               *severities,
               *erratic,
               table.text(row, "needs"),
               table.text(row, "repair"),
               table.text(row, "name")};
}

Expected<std::vector<Repair>> readRepairs() {
  const auto table = DataTable::embedded("repairs.csv");
  if (!table) return tl::make_unexpected(table.error());
  std::vector<Repair> repairs;
  for (std::size_t row = 0; row < table->size(); ++row) {
    const auto minutes = table->number(row, "minutes");
    if (!minutes || *minutes <= 0) return table->wrong(row, "minutes", "minutes above 0");
    repairs.push_back({table->text(row, "code"), *minutes, table->text(row, "sentence"), table->text(row, "caution")});
  }
  return repairs;
}

Expected<std::vector<GroupPrior>> readGroups() {
  const auto table = DataTable::embedded("priors.csv");
  if (!table) return tl::make_unexpected(table.error());
  std::vector<GroupPrior> groups;
  for (std::size_t row = 0; row < table->size(); ++row) {
    GroupPrior group{table->text(row, "group"), table->text(row, "name"), {}};
    for (std::size_t s = 0; s < kSymptoms; ++s) {
      const auto percent = table->number(row, kSymptomNames[s].code);
      if (!percent || *percent < 0) return table->wrong(row, kSymptomNames[s].code, "percent of 0 or more");
      group.percent[s] = *percent;
    }
    groups.push_back(std::move(group));
  }
  return groups;
}

/// Every fault has its repair and its group.
Expected<void> checked(const DataTable& table, const FaultBook& book) {
  for (std::size_t row = 0; row < book.faults.size(); ++row) {
    const Fault& fault = book.faults[row];
    if (std::none_of(book.repairs.begin(), book.repairs.end(), [&](const Repair& r) { return r.code == fault.repair; }))
      return table.wrong(row, "repair", "the code of a repair");
    if (std::none_of(book.groups.begin(), book.groups.end(),
                     [&](const GroupPrior& g) { return g.group == fault.group; }))
      return table.wrong(row, "group", "the code of a group of the priors");
  }
  return {};
}

}  // namespace

std::string_view symptomCode(Symptom symptom) { return kSymptomNames[static_cast<std::size_t>(symptom)].code; }
std::string_view symptomName(Symptom symptom) { return kSymptomNames[static_cast<std::size_t>(symptom)].name; }
std::optional<Symptom> symptomOf(std::string_view code) { return calledBy<Symptom>(kSymptomNames, code); }

std::size_t FaultBook::repairIndex(const Fault& fault) const {
  const auto found =
      std::find_if(repairs.begin(), repairs.end(), [&](const Repair& r) { return r.code == fault.repair; });
  return static_cast<std::size_t>(found - repairs.begin());
}

std::optional<std::size_t> FaultBook::faultWith(std::string_view code) const {
  const auto found = std::find_if(faults.begin(), faults.end(), [&](const Fault& f) { return f.code == code; });
  if (found == faults.end()) return std::nullopt;
  return static_cast<std::size_t>(found - faults.begin());
}

Expected<FaultBook> usualFaults() {
  const auto table = DataTable::embedded("faults.csv");
  if (!table) return tl::make_unexpected(table.error());
  FaultBook book;
  for (std::size_t row = 0; row < table->size(); ++row) {
    auto fault = readFault(*table, row);
    if (!fault) return tl::make_unexpected(fault.error());
    book.faults.push_back(std::move(*fault));
  }
  auto repairs = readRepairs();
  if (!repairs) return tl::make_unexpected(repairs.error());
  book.repairs = std::move(*repairs);
  auto groups = readGroups();
  if (!groups) return tl::make_unexpected(groups.error());
  book.groups = std::move(*groups);
  if (const auto ok = checked(*table, book); !ok) return tl::make_unexpected(ok.error());
  return book;
}

Expected<FaultBook> learned(FaultBook book, const std::vector<JobCount>& jobs) {
  std::array<std::vector<double>, kSymptoms> counted;
  for (auto& ofSymptom : counted) ofSymptom.assign(book.groups.size(), 0);
  for (const JobCount& job : jobs) {
    const auto fault = book.faultWith(job.group);
    const std::string& code = fault ? book.faults[*fault].group : job.group;
    const auto group =
        std::find_if(book.groups.begin(), book.groups.end(), [&](const GroupPrior& g) { return g.group == code; });
    if (group == book.groups.end())
      return refuse("cause-unknown", "", "'" + job.group + "'", "the code of a fault, or of a group of them");
    if (!(job.jobs >= 0))
      return refuse("jobs-out-of-range", job.group, fmt::format("{:g}", job.jobs), "0 jobs or more");
    const auto at = static_cast<std::size_t>(group - book.groups.begin());
    counted[static_cast<std::size_t>(job.symptom)][at] += job.jobs;
    if (job.symptom != Symptom::any) counted[static_cast<std::size_t>(Symptom::any)][at] += job.jobs;
  }
  for (std::size_t s = 0; s < kSymptoms; ++s) {
    double all = 0;
    double percent = 0;
    for (std::size_t g = 0; g < book.groups.size(); ++g) {
      all += counted[s][g];
      percent += book.groups[g].percent[s];
    }
    for (std::size_t g = 0; g < book.groups.size(); ++g) {
      double& own = book.groups[g].percent[s];
      own = 100 * (kPriorJobs * own / percent + counted[s][g]) / (kPriorJobs + all);
    }
  }
  return book;
}

Condition with(const Condition& before, const Fault& fault, double severity) {
  Condition after = before;
  double& part = after.ohms[static_cast<std::size_t>(fault.part)];
  switch (fault.change) {
    case Change::set:
      part = severity;
      break;
    case Change::add:
      part += severity;
      break;
    case Change::times:
      if (fault.part == Part::sender) after.senderFactor *= severity;
      else part *= severity;
      break;
    case Change::coolant:
      after.coolantKelvin += severity;
      after.tipKelvin += severity;
      break;
    case Change::level:
      after.levelLow = true;
      [[fallthrough]];
    case Change::tip:
      after.tipKelvin += severity;
      break;
    case Change::stuck:
      after.stuckAt = severity;
      break;
    case Change::reversed:
      after.reversed = true;
      break;
    case Change::regulator:
      after.regulatorHolds = false;
      part = severity;
      break;
  }
  return after;
}

bool has(const GaugeCircuit& circuit, std::string_view needs) {
  if (needs == "regulated") return circuit.regulated();
  if (needs == "crossed" || needs == "unregulated") return !circuit.regulated();
  if (needs == "feed-shunt") return circuit.facts().feedShunt.has_value() && !circuit.regulated();
  if (needs == "ground-shunt") return circuit.facts().groundShunt.has_value() && !circuit.regulated();
  return needs.empty();
}

Expected<std::array<double, kSymptoms>> symptomsOf(const GaugeCircuit& circuit, const Condition& condition,
                                                   double erratic) {
  Condition lit = condition;
  lit.ohms[static_cast<std::size_t>(Part::lamps)] = kLampOhms;
  const auto dark = solve(circuit.network(condition));
  if (!dark) return tl::make_unexpected(dark.error());
  const auto bright = solve(circuit.network(lit));
  if (!bright) return tl::make_unexpected(bright.error());
  const Needle before = circuit.needle(condition, *dark);
  const Needle after = circuit.needle(lit, *bright);
  const double right = circuit.placeOf(circuit.facts().running);
  // A needle without torque may stay where it stood when the current failed: as often at the cold end as in between.
  const bool waits = !before.torque && circuit.needleStays() && !condition.stuckAt;
  const double pegged = waits ? 0 : above(before.place, kPegged);
  const double low = waits ? 0.5 : above(right - kLow, before.place);
  const double high = waits ? 0 : above(before.place, right + kLow) * (1 - pegged);
  const double moves = before.torque && after.torque ? above(std::abs(after.place - before.place), kMoved) : 0;
  return std::array<double, kSymptoms>{1, low, pegged, high, erratic, moves};
}

}  // namespace ohmkin::circuit
