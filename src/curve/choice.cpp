#include <curve/choice.h>
#include <fmt/format.h>
#include <algorithm>
#include <cmath>

namespace ohmkin::curve {
namespace {

constexpr double kMostWaves = 0.01;  // ln R: waves below this are of no account where no uncertainties are stated

bool falling(const Readings& readings) {
  double product = 0;
  const auto n = static_cast<double>(readings.size());
  double t = 0;
  double l = 0;
  for (std::size_t i = 0; i < readings.size(); ++i) t += readings.kelvin[i] / n, l += readings.lnOhms[i] / n;
  for (std::size_t i = 0; i < readings.size(); ++i) product += (readings.kelvin[i] - t) * (readings.lnOhms[i] - l);
  return product < 0;
}

/// The simplest first, and the customary one first among equals.
std::vector<Form> formsFor(const Readings& readings) {
  if (falling(readings)) return {Form::beta, Form::steinhartHart3, Form::exponential, Form::steinhartHart4};
  return {Form::straight, Form::quadratic, Form::steinhartHart3, Form::exponential, Form::cubic};
}

Expected<Trial> attempt(Form form, const Readings& readings, bool robust) {
  if (form == Form::table) return tryTable(readings);
  return robust ? tryFormRobustly(form, readings) : tryForm(form, readings);
}

/// The readings without what the most flexible form that can be fitted casts out.
Readings withoutOutliers(const std::vector<Form>& forms, const Readings& readings) {
  Readings out = readings;
  for (std::size_t parameters = 4; parameters >= 2; --parameters) {
    for (const Form form : forms) {
      if (parametersOf(form) != parameters || readings.size() < parameters + 4) continue;
      const auto trial = tryFormRobustly(form, readings);
      if (!trial) continue;
      for (const std::size_t i : trial->outliers) out.weight[i] = 0;
      return out;
    }
  }
  return out;
}

struct Ranked {
  Trial trial;
  std::optional<double> aicc;
};

bool follows(const Trial& trial, const Readings& readings) {
  if (readings.stated) return trial.consistent || !goesInWaves(trial, readings);
  const double scatter =
      readings.inOhms ? trial.scatter
                      : std::sqrt(trial.chiSquare / static_cast<double>(std::max<std::size_t>(trial.freedom, 1)));
  return scatter <= kMostWaves || !goesInWaves(trial, readings);
}

/// The first of those that are within 2 of the least: a smaller difference of AICc tells nothing (Burnham and
/// Anderson).
const Ranked* best(const std::vector<Ranked>& ranked) {
  const Ranked* least = nullptr;
  for (const Ranked& r : ranked)
    if (r.aicc && (!least || *r.aicc < *least->aicc)) least = &r;
  if (!least) return nullptr;
  for (const Ranked& r : ranked)
    if (r.aicc && *r.aicc <= *least->aicc + 2) return &r;
  return least;
}

double percent(double lnResidual) { return 100 * std::expm1(std::abs(lnResidual)); }

double largest(const Trial& trial, const Readings& readings) {
  double most = 0;
  for (std::size_t i = 0; i < readings.size(); ++i)
    if (readings.weight[i] > 0) most = std::max(most, std::abs(trial.lnResiduals[i]));
  return most;
}

/// "a B-parameter curve", "Steinhart–Hart with 3 terms"
std::string inASentence(Form form) {
  const bool named = form == Form::steinhartHart3 || form == Form::steinhartHart4 || form == Form::exponential;
  return (named ? "" : "a ") + std::string(formName(form));
}

std::string sentence(const Ranked& chosen, const std::vector<Ranked>& ranked, const Readings& compared) {
  std::string out = fmt::format("{}: the readings lie within {:.2g} % of it", formName(chosen.trial.form),
                                percent(largest(chosen.trial, compared)));
  if (!chosen.aicc) return out + "; they are too few to compare models, so the simplest one is taken.";
  const std::size_t own = parametersOf(chosen.trial.form);
  const Ranked* simpler = nullptr;
  bool moreTried = false;
  for (const Ranked& r : ranked) {
    if (!r.aicc || &r == &chosen) continue;
    if (parametersOf(r.trial.form) < own) simpler = &r;
    moreTried = moreTried || parametersOf(r.trial.form) > own;
  }
  if (simpler)
    out += fmt::format("; they bend away from {} by up to {:.2g} %, more than chance explains (AICc better by {:.1f})",
                       inASentence(simpler->trial.form), percent(largest(simpler->trial, compared)),
                       *simpler->aicc - *chosen.aicc);
  if (moreTried)
    out +=
        simpler ? "; more parameters gain nothing" : "; models with more parameters gain nothing that chance would not";
  return out + ".";
}

Candidate listed(Form form, const Expected<Trial>& trial, bool stated) {
  Candidate out{form, std::nullopt, 0, {}};
  if (!trial) {
    out.refusal = trial.error().sentence();
    return out;
  }
  out.aicc = aicc(*trial, stated);
  out.scatter = trial->scatter;
  return out;
}

}  // namespace

Expected<Choice> asAsked(Form form, const Readings& readings, bool robust) {
  const auto trial = attempt(form, readings, robust);
  if (!trial) return tl::make_unexpected(trial.error());
  return Choice{*trial, fmt::format("{}, as asked.", formName(form)), {listed(form, trial, readings.stated)}};
}

Expected<Choice> choose(const Readings& readings, bool robust) {
  const std::vector<Form> forms = formsFor(readings);
  const Readings compared = robust ? withoutOutliers(forms, readings) : readings;
  std::vector<Ranked> ranked;
  std::vector<Candidate> candidates;
  std::optional<Refusal> first;
  for (const Form form : forms) {
    auto trial = tryForm(form, compared);
    candidates.push_back(listed(form, trial, readings.stated));
    if (!trial) {
      if (!first) first = trial.error();
      continue;
    }
    ranked.push_back({std::move(*trial), candidates.back().aicc});
  }
  if (ranked.empty()) return tl::make_unexpected(*first);

  const Ranked* chosen = best(ranked);
  if (!chosen) chosen = &ranked.front();
  if (!follows(chosen->trial, compared)) {
    if (auto table = tryTable(compared)) {
      candidates.push_back({Form::table, std::nullopt, table->scatter, {}});
      std::string reason = fmt::format(
          "Monotone table: no model follows the readings, the nearest, {}, is off by up to {:.2g} % in waves that "
          "chance does not make.",
          inASentence(chosen->trial.form), percent(largest(chosen->trial, compared)));
      for (std::size_t i = 0; i < compared.size(); ++i)
        if (compared.weight[i] == 0) table->outliers.push_back(i);
      return Choice{std::move(*table), std::move(reason), std::move(candidates)};
    }
  }
  const std::string reason = sentence(*chosen, ranked, compared);
  auto final = attempt(chosen->trial.form, readings, robust);
  if (!final) return tl::make_unexpected(final.error());
  return Choice{std::move(*final), reason, std::move(candidates)};
}

}  // namespace ohmkin::curve
