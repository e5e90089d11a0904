#pragma once
#include <catalog/catalogue.h>
#include <circuit/diagnosis.h>
#include <circuit/wires.h>
#include <quantity/print.h>
#include <memory>
#include <optional>
#include <string>
#include <vector>

/// A needle that misbehaves: the circuit of this gauge and this sender, what each trade test would show in it, and what
/// to look at next.
namespace ohmkin::workflow {

struct FaultQuestion {
  std::string gauge;                        ///< gauge or family, by id or name
  std::string sender;                       ///< family or part number; empty: one of the gauge's own family
  std::optional<gauge::Movement> movement;  ///< measured on this gauge, in place of the catalogue's
  std::optional<Temperature> running;       ///< where the warm engine stands; none: 88 °C
  std::optional<Volts> supply;              ///< of the battery; none: 12.6 V
  std::optional<Ohms> feedShunt;            ///< on the gauge's own posts, where it has one
  std::optional<Ohms> groundShunt;
  std::vector<circuit::JobCount> jobs;  ///< besides those kept in the catalogue, which count by themselves
};

/// What is shown after every answer.
struct FaultAnswer {
  circuit::Posterior posterior;
  std::vector<circuit::TestValue> tests;  ///< not yet answered, best first
  circuit::Conclusion conclusion;
  std::string torque;             ///< for a sender that is to be screwed in; empty where not known or not asked for
  std::vector<Finding> findings;  ///< of the circuit, and of answers that do not fit
};

/// One search. Made once, then asked after every answer; nothing in it changes.
class FaultFinder {
 public:
  /// Refuses unknown names, a gauge whose circuit cannot be made (circuit::GaugeCircuit), numbers out of range.
  static Expected<FaultFinder> make(const catalog::Catalogue& catalogue, const FaultQuestion& question,
                                    const DisplayUnits& units = {});

  [[nodiscard]] const std::string& gaugeName() const { return gaugeName_; }
  [[nodiscard]] const std::string& senderName() const { return senderName_; }
  [[nodiscard]] const circuit::GaugeCircuit& circuit() const { return *circuit_; }
  [[nodiscard]] const circuit::Predictions& predictions() const { return *predictions_; }

  /// `tried`: repairs of the book that were made and did not help, in their order.
  [[nodiscard]] Expected<FaultAnswer> answer(circuit::Symptom symptom, std::span<const circuit::Answer> seen,
                                             std::span<const std::string> paid = {},
                                             std::span<const std::size_t> tried = {}) const;
  /// "unplug=stays"; "unplug=unsure" for looked at but not sure. Refuses what is no test or outcome, with near misses.
  [[nodiscard]] Expected<circuit::Answer> read(const std::string& saw, const std::string& where) const;
  /// The wires of a gauge wired past the car's own harness.
  [[nodiscard]] Expected<circuit::WirePlan> wiring(const circuit::WireLengths& lengths = {}) const;

 private:
  FaultFinder() = default;
  std::string gaugeName_;
  std::string senderName_;
  std::string torque_;
  std::vector<Finding> assumed_;
  std::shared_ptr<const circuit::GaugeCircuit> circuit_;
  std::shared_ptr<const circuit::Predictions> predictions_;
};

/// "very likely", "likely", "possible", "unlikely": what stands beside a bar.
std::string_view likelihoodWords(double probability);

}  // namespace ohmkin::workflow
