#pragma once
#include <circuit/faults.h>

/// Trade tests as data, and what each would show under each fault: every outcome is predicted by solving the network.
/// Minutes, limits and noise from memory, no source.
namespace ohmkin::circuit {

enum class Measure {
  needle,      ///< where it stands against where it should; after two conditions: their mean
  moves,       ///< where it goes from the condition before to the one after; "stays" where it does not
  shift,       ///< by how much it turns from the condition before to the one after
  rest,        ///< where it stands, whatever it should
  turnedOver,  ///< where it stands with the gauge's feed and ground exchanged
  other,       ///< where the second gauge's needle stands against where it should
  volts,       ///< between two posts
  share,       ///< volts between two posts as a share of what they should be
  feed,        ///< volts by a lamp, and whether it pulses
  ohms,        ///< between two posts, by a meter
  ratio,       ///< the same against what it should be, as the logarithm of their ratio
  board,       ///< the most ohms of the board's three tracks
  turned,      ///< whether the gauge is plugged in turned over
  coolant,     ///< kelvins of the engine above its running temperature, and the level
  bath         ///< the sender's ohms in heated water against its curve, as the logarithm of their ratio
};

/// One thing done before looking: "connector=open", "probe=10", "lamps=on".
struct Step {
  Part part = Part::lead;
  double ohms = 0;
  friend bool operator==(const Step&, const Step&) = default;
};

struct TradeTest {
  std::string code;   ///< "lead-unplugged"
  std::string setup;  ///< empty, "hood", "dash-out", "sender-out"; paid once
  double minutes = 0;
  std::string tools;
  Measure measure = Measure::needle;
  std::vector<Step> before;
  std::vector<Step> after;
  bool bench = false;  ///< the gauge is on a supply of its own, at its regulator's volts where it has one
  Post from = Post::earth;
  Post to = Post::earth;
  std::vector<double> limits;         ///< between outcomes, in the measure's unit, rising
  double noise = 0;                   ///< standard, same unit: reading, and what a good part may differ by
  double right = 0;                   ///< what is measured where nothing is wrong
  std::vector<std::string> outcomes;  ///< codes: "goes-cold"; one more than limits, and what the measure adds
  std::vector<std::string> words;     ///< "it goes to the cold end"
  std::string needs;                  ///< as Fault::needs
  std::string title;                  ///< what to do
  std::string hazard;                 ///< empty where none
  std::vector<Part> examines;  ///< the parts it looks at: those whose faults change its outcome, in circuit order
};

struct Setup {
  std::string code;
  double minutes = 0;
  std::string name;
};

struct TestBook {
  std::vector<TradeTest> tests;
  std::vector<Setup> setups;
  [[nodiscard]] std::optional<std::size_t> testWith(std::string_view code) const;
  [[nodiscard]] double setupMinutes(std::string_view code) const;  ///< 0 for none
};
/// Those compiled in that this circuit allows, what depends on it filled in (the ohms of the known resistors).
Expected<TestBook> usualTests(const GaugeCircuit& circuit);

/// Share of answers that say nothing whatever is the matter, spread evenly over all outcomes, the right one among them.
/// A judgement, no source: under one wrong answer in ten more of what is said for certain is so than with 0.06, and
/// true answers still end at their fault, which 0.13 spoils (tests/circuit/tst_simulated, tst_diagnosis).
inline constexpr double kMisread = 0.10;

/// Probability of each outcome, with reading noise but before kMisread.
Expected<std::vector<double>> predict(const GaugeCircuit& circuit, const TradeTest& test, const Condition& condition);

}  // namespace ohmkin::circuit
