#include <circuit/diagnosis.h>
#include <circuit/measures.h>

#include <fmt/core.h>
#include <algorithm>
#include <cmath>
#include <numeric>

namespace ohmkin::circuit {
namespace {

/// A fault may show a symptom the network does not foresee: someone reads the dial wrongly, or does not say all.
constexpr double kUnforeseen = 0.02;
/// A test examines a part if a fault of it changes its outcomes by so much (half the sum of the differences).
constexpr double kExamines = 0.5;

struct Weighed {
  Case what;
  Condition condition;
  std::array<double, kSymptoms> symptoms{};
};

Expected<std::vector<Weighed>> singles(const GaugeCircuit& circuit, const FaultBook& book) {
  std::vector<Weighed> all;
  for (std::size_t f = 0; f < book.faults.size(); ++f) {
    const Fault& fault = book.faults[f];
    for (const double severity : fault.severities) {
      const Condition condition = with(circuit.healthy(), fault, severity);
      const auto symptoms = symptomsOf(circuit, condition, fault.erratic);
      if (!symptoms) return tl::make_unexpected(symptoms.error());
      all.push_back({{{f}, {severity}, {}}, condition, *symptoms});
    }
  }
  return all;
}

/// The percentages of the groups, within a group by share and by how well the network makes the symptom.
void weighSingles(std::vector<Weighed>& all, const FaultBook& book) {
  for (std::size_t s = 0; s < kSymptoms; ++s) {
    double total = 0;
    for (const GroupPrior& group : book.groups) {
      const auto weight = [&](const Weighed& w) {
        const Fault& fault = book.faults[w.what.faults.front()];
        if (fault.group != group.group) return 0.0;
        return fault.share / static_cast<double>(fault.severities.size()) * (w.symptoms[s] + kUnforeseen);
      };
      double sum = 0;
      for (const Weighed& w : all) sum += weight(w);
      if (sum == 0) continue;
      // Nothing is impossible: a judgement of 0 % is less than half a percent.
      const double percent = std::max(group.percent[s], 0.3);
      for (Weighed& w : all)
        if (const double own = weight(w); own > 0) w.what.prior[s] = percent * own / sum;
      total += percent;
    }
    for (Weighed& w : all) w.what.prior[s] /= total;
  }
}

/// How likely each fault is with no symptom said, its severities together.
std::vector<double> anyPrior(const std::vector<Weighed>& all, std::size_t faults) {
  std::vector<double> prior(faults, 0);
  for (const Weighed& w : all) prior[w.what.faults.front()] += w.what.prior[static_cast<std::size_t>(Symptom::any)];
  return prior;
}

/// Two faults at once, each with its middle severity: what the second does to the outcomes matters, not by how much.
Expected<std::vector<Weighed>> pairsOf(const GaugeCircuit& circuit, const FaultBook& book,
                                       const std::vector<double>& prior) {
  std::vector<Weighed> all;
  const auto middle = [](const Fault& fault) { return fault.severities[fault.severities.size() / 2]; };
  for (std::size_t i = 0; i < book.faults.size(); ++i) {
    for (std::size_t j = i + 1; j < book.faults.size(); ++j) {
      const Fault& one = book.faults[i];
      const Fault& two = book.faults[j];
      if (one.repair == two.repair) continue;
      const Condition condition = with(with(circuit.healthy(), one, middle(one)), two, middle(two));
      const auto symptoms = symptomsOf(circuit, condition, 1 - (1 - one.erratic) * (1 - two.erratic));
      if (!symptoms) return tl::make_unexpected(symptoms.error());
      Weighed pair{{{i, j}, {middle(one), middle(two)}, {}}, condition, *symptoms};
      for (std::size_t s = 0; s < kSymptoms; ++s)
        pair.what.prior[s] = prior[i] * prior[j] * (pair.symptoms[s] + kUnforeseen);
      all.push_back(std::move(pair));
    }
  }
  return all;
}

void scale(std::vector<Weighed>& all, double to) {
  for (std::size_t s = 0; s < kSymptoms; ++s) {
    const double sum =
        std::accumulate(all.begin(), all.end(), 0.0, [&](double t, const Weighed& w) { return t + w.what.prior[s]; });
    for (Weighed& w : all) w.what.prior[s] *= sum > 0 ? to / sum : 0;
  }
}

void misread(std::span<double> outcomes) {
  for (double& p : outcomes) p = (1 - kMisread) * p + kMisread / static_cast<double>(outcomes.size());
}

}  // namespace

Expected<Predictions> Predictions::make(const GaugeCircuit& circuit, FaultBook faults, TestBook tests, double pairs) {
  if (!(pairs >= 0 && pairs <= 0.5))
    return refuse("pairs-out-of-range", "share of two faults at once", fmt::format("{:g}", pairs), "0 to 0.5");
  std::erase_if(faults.faults, [&](const Fault& fault) { return !has(circuit, fault.needs); });
  auto all = singles(circuit, faults);
  if (!all) return tl::make_unexpected(all.error());
  weighSingles(*all, faults);
  auto two = pairsOf(circuit, faults, anyPrior(*all, faults.faults.size()));
  if (!two) return tl::make_unexpected(two.error());
  scale(*all, 1 - pairs);
  scale(*two, pairs);
  std::move(two->begin(), two->end(), std::back_inserter(*all));
  Predictions made;
  made.faults_ = std::move(faults);
  made.tests_ = std::move(tests);
  made.regulated_ = circuit.regulated();
  made.table_.resize(made.tests_.tests.size());
  for (const Weighed& w : *all) {
    Moments moments(circuit, w.condition);
    if (const auto ok = made.addRow(moments, made.table_); !ok) return tl::make_unexpected(ok.error());
  }
  made.healthy_.resize(made.tests_.tests.size());
  Moments healthy(circuit, circuit.healthy());
  if (const auto ok = made.addRow(healthy, made.healthy_); !ok) return tl::make_unexpected(ok.error());
  for (Weighed& w : *all) made.cases_.push_back(std::move(w.what));
  made.settleExamines();
  return made;
}

Expected<void> Predictions::addRow(Moments& moments, std::vector<std::vector<double>>& tests) const {
  for (std::size_t t = 0; t < tests.size(); ++t) {
    auto outcomes = predict(moments, tests_.tests[t]);
    if (!outcomes) return tl::make_unexpected(outcomes.error());
    misread(*outcomes);
    tests[t].insert(tests[t].end(), outcomes->begin(), outcomes->end());
  }
  return {};
}

std::span<const double> Predictions::outcomes(std::size_t test, std::size_t ofCase) const {
  const std::size_t count = tests_.tests[test].outcomes.size();
  return std::span(table_[test]).subspan(ofCase * count, count);
}

double Predictions::unlikeHealthy(std::size_t test, std::size_t ofCase) const {
  const auto bad = outcomes(test, ofCase);
  double sum = 0;
  for (std::size_t o = 0; o < bad.size(); ++o) sum += std::abs(bad[o] - healthy_[test][o]);
  return sum / 2;
}

void Predictions::settleExamines() {
  for (std::size_t t = 0; t < tests_.tests.size(); ++t) {
    std::array<bool, kParts> examined{};
    for (std::size_t c = 0; c < cases_.size() && cases_[c].faults.size() == 1; ++c)
      if (unlikeHealthy(t, c) > kExamines)
        examined[static_cast<std::size_t>(faults_.faults[cases_[c].faults.front()].part)] = true;
    for (std::size_t p = 0; p < kParts; ++p)
      if (examined[p]) tests_.tests[t].examines.push_back(static_cast<Part>(p));
  }
}

std::size_t likeliest(std::span<const double> outcomes) {
  return static_cast<std::size_t>(std::max_element(outcomes.begin(), outcomes.end()) - outcomes.begin());
}

bool alike(const Predictions& predictions, std::size_t fault, std::size_t other) {
  const auto& cases = predictions.cases();
  const auto is = [&](std::size_t c, std::size_t f) { return cases[c].faults.size() == 1 && cases[c].faults[0] == f; };
  for (std::size_t a = 0; a < cases.size(); ++a) {
    if (!is(a, fault)) continue;
    for (std::size_t b = 0; b < cases.size(); ++b) {
      if (!is(b, other)) continue;
      bool same = true;
      for (std::size_t t = 0; same && t < predictions.tests().tests.size(); ++t)

        same = likeliest(predictions.outcomes(t, a)) == likeliest(predictions.outcomes(t, b));
      if (same) return true;
    }
  }
  return false;
}

}  // namespace ohmkin::circuit
