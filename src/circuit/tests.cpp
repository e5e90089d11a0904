#include <circuit/data_table.h>
#include <circuit/measures.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace ohmkin::circuit {
namespace {

const std::map<std::string_view, Measure> kMeasures{{"needle", Measure::needle},
                                                    {"moves", Measure::moves},
                                                    {"shift", Measure::shift},
                                                    {"rest", Measure::rest},
                                                    {"turned-over", Measure::turnedOver},
                                                    {"other", Measure::other},
                                                    {"volts", Measure::volts},
                                                    {"share", Measure::share},
                                                    {"feed", Measure::feed},
                                                    {"ohms", Measure::ohms},
                                                    {"ratio", Measure::ratio},
                                                    {"board", Measure::board},
                                                    {"turned", Measure::turned},
                                                    {"coolant", Measure::coolant},
                                                    {"bath", Measure::bath}};

/// A good supply and ground of the tester's own, the car's taken off.
const std::vector<Step> kBench{{Part::regulator, kOpen},    {Part::feedTrack, kOpen}, {Part::groundTrack, kOpen},
                               {Part::senderTrack, kOpen},  {Part::directFeed, 0.01}, {Part::groundJumper, 0.01},
                               {Part::otherFeedCoil, kOpen}};

/// "on", "normal" and "hot" depend on the circuit.
std::optional<double> stepOhms(std::string_view word, const GaugeCircuit& circuit) {
  if (word == "on") return kLampOhms;
  if (word == "normal") return circuit.senderOhms(circuit.facts().running);
  if (word == "hot") return circuit.senderOhms(circuit.facts().gauge.hotMark());
  return ohmsFrom(word);
}

Expected<std::vector<Step>> readSteps(const DataTable& table, std::size_t row, std::string_view column,
                                      const GaugeCircuit& circuit) {
  std::vector<Step> steps;
  for (const std::string& word : split(table.text(row, column), ';')) {
    if (word == "bench") {
      steps.insert(steps.end(), kBench.begin(), kBench.end());
      continue;
    }
    const auto sides = split(word, '=');
    const auto part = sides.size() == 2 ? partOf(sides[0]) : std::nullopt;
    const auto ohms = sides.size() == 2 ? stepOhms(sides[1], circuit) : std::nullopt;
    if (!part || !ohms) return table.wrong(row, column, "'bench', or part=ohms with ; between them");
    steps.push_back({*part, *ohms});
  }
  return steps;
}

Expected<void> readLimits(const DataTable& table, std::size_t row, TradeTest& test) {
  const auto limits = table.numbers(row, "limits");
  if (!limits) return tl::make_unexpected(limits.error());
  test.limits = *limits;
  if (byLogarithm(test.measure))
    for (double& limit : test.limits) limit = std::log(limit);
  const auto noise = table.number(row, "noise");
  if (!noise || *noise <= 0) return table.wrong(row, "noise", "a standard uncertainty above 0");
  test.noise = *noise;
  test.outcomes = table.words(row, "outcomes");
  test.words = table.words(row, "words");
  const std::size_t parts = test.limits.size() + (addsOutcome(test.measure) ? 2 : 1);
  if (test.outcomes.size() != parts || test.words.size() != parts)
    return table.wrong(row, "outcomes", "an outcome between any two limits, and what the measure adds");
  return {};
}

Expected<void> readPosts(const DataTable& table, std::size_t row, TradeTest& test) {
  for (const auto& [column, post] : {std::pair{"from", &test.from}, {"to", &test.to}}) {
    const std::string& code = table.text(row, column);
    const auto found = postOf(code);
    if (!found && !code.empty()) return table.wrong(row, column, "the code of a post");
    *post = found.value_or(Post::earth);
  }
  return {};
}

Expected<TradeTest> readTest(const DataTable& table, std::size_t row, const GaugeCircuit& circuit) {
  TradeTest test;
  test.code = table.text(row, "code");
  test.setup = table.text(row, "setup");
  test.tools = table.text(row, "tools");
  test.needs = table.text(row, "needs");
  test.title = table.text(row, "title");
  test.hazard = table.text(row, "hazard");
  const auto minutes = table.number(row, "minutes");
  if (!minutes || *minutes <= 0) return table.wrong(row, "minutes", "minutes above 0");
  test.minutes = *minutes;
  const auto measure = kMeasures.find(table.text(row, "measure"));
  if (measure == kMeasures.end()) return table.wrong(row, "measure", "needle, moves, volts, ohms, …");
  test.measure = measure->second;
  test.bench = table.text(row, "before").starts_with("bench");
  if (const auto ok = readLimits(table, row, test); !ok) return tl::make_unexpected(ok.error());
  if (const auto ok = readPosts(table, row, test); !ok) return tl::make_unexpected(ok.error());
  for (const auto& [column, steps] : {std::pair{"before", &test.before}, {"after", &test.after}}) {
    auto read = readSteps(table, row, column, circuit);
    if (!read) return tl::make_unexpected(read.error());
    *steps = std::move(*read);
  }
  return test;
}

/// What is measured where nothing is wrong: with 0 taken off, or for a share divided by 1.
Expected<void> settleRight(const GaugeCircuit& circuit, TradeTest& test) {
  test.right = test.measure == Measure::share ? 1 : 0;
  Moments moments(circuit, circuit.healthy());
  const auto plain = shown(moments, test);
  if (!plain) return tl::make_unexpected(plain.error());
  const bool against = test.measure == Measure::needle || test.measure == Measure::other ||
                       test.measure == Measure::share || test.measure == Measure::ratio;
  if (against && !plain->values.empty()) test.right = plain->values.front().value;
  return {};
}

double below(double limit, double value, double noise) {
  return 0.5 * std::erfc((value - limit) / (noise * std::sqrt(2.0)));
}

}  // namespace

std::optional<std::size_t> TestBook::testWith(std::string_view code) const {
  const auto found = std::find_if(tests.begin(), tests.end(), [&](const TradeTest& t) { return t.code == code; });
  if (found == tests.end()) return std::nullopt;
  return static_cast<std::size_t>(found - tests.begin());
}

double TestBook::setupMinutes(std::string_view code) const {
  const auto found = std::find_if(setups.begin(), setups.end(), [&](const Setup& s) { return s.code == code; });
  return found == setups.end() ? 0 : found->minutes;
}

Expected<TestBook> usualTests(const GaugeCircuit& circuit) {
  TestBook book;
  const auto setups = DataTable::embedded("setups.csv");
  if (!setups) return tl::make_unexpected(setups.error());
  for (std::size_t row = 0; row < setups->size(); ++row) {
    const auto minutes = setups->number(row, "minutes");
    if (!minutes || *minutes < 0) return setups->wrong(row, "minutes", "minutes of 0 or more");
    book.setups.push_back({setups->text(row, "code"), *minutes, setups->text(row, "name")});
  }
  const auto table = DataTable::embedded("tests.csv");
  if (!table) return tl::make_unexpected(table.error());
  for (std::size_t row = 0; row < table->size(); ++row) {
    auto test = readTest(*table, row, circuit);
    if (!test) return tl::make_unexpected(test.error());
    if (!has(circuit, test->needs)) continue;
    if (const auto ok = settleRight(circuit, *test); !ok) return tl::make_unexpected(ok.error());
    book.tests.push_back(std::move(*test));
  }
  return book;
}

Expected<std::vector<double>> predict(const GaugeCircuit& circuit, const TradeTest& test, const Condition& condition) {
  Moments moments(circuit, condition);
  return predict(moments, test);
}

Expected<std::vector<double>> predict(Moments& moments, const TradeTest& test) {
  const auto seen = shown(moments, test);
  if (!seen) return tl::make_unexpected(seen.error());
  std::vector<double> outcomes(test.outcomes.size(), 0);
  if (addsOutcome(test.measure)) outcomes.back() = seen->last;
  for (const auto& [value, weight] : seen->values) {
    double under = 0;
    for (std::size_t i = 0; i < test.limits.size(); ++i) {
      const double upTo = below(test.limits[i], value, test.noise);
      outcomes[i] += weight * (upTo - under);
      under = upTo;
    }
    outcomes[test.limits.size()] += weight * (1 - under);
  }
  return outcomes;
}

}  // namespace ohmkin::circuit
