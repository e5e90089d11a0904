#include <catalog/gauges.h>
#include <dating/gain.h>
#include <fmt/format.h>
#include <quantity/print.h>
#include <workflow/deciding_look.h>
#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

namespace ohmkin::workflow {
namespace {

constexpr double kNothing = 1e-6;    // bits: a look that tells less changes nothing
constexpr double kAsMuch = 0.99;     // of the best look's gain
constexpr std::size_t kReasons = 3;  // outcomes a person can keep in mind
constexpr std::size_t kColdSteps = 160;

std::string_view actName(std::string_view act) { return act.empty() ? "nothing that fits" : act; }

/// Names numbered as they come; there are few.
class Numbered {
 public:
  std::size_t of(std::string_view name) {
    const auto found = std::find(names_.begin(), names_.end(), name);
    if (found != names_.end()) return static_cast<std::size_t>(found - names_.begin());
    names_.push_back(name);
    return names_.size() - 1;
  }
  [[nodiscard]] std::size_t size() const { return names_.size(); }

 private:
  std::vector<std::string_view> names_;
};

/// What would be done in each way, numbered, and how likely each is.
struct Acts {
  std::vector<std::size_t> ofWay;
  std::vector<double> weights;
};

Acts actsOf(const std::vector<Possibility>& ways) {
  Acts acts;
  Numbered numbered;
  for (const Possibility& way : ways) {
    acts.ofWay.push_back(numbered.of(way.act));
    acts.weights.resize(numbered.size());
    acts.weights[acts.ofWay.back()] += way.weight;
  }
  return acts;
}

/// Ways in which the look sees nothing of its own (`blind`) show what the others show, as often, and so tell nothing.
double gainOf(const Acts& acts, std::vector<std::vector<double>> joint, const std::vector<double>& blind) {
  double blindly = 0, all = 0;
  for (const double weight : blind) blindly += weight;
  for (const double weight : acts.weights) all += weight;
  if (blindly > 0) {
    for (std::vector<double>& outcome : joint) {
      double share = 0;
      for (const double weight : outcome) share += weight / (all - blindly);
      for (std::size_t a = 0; a < outcome.size(); ++a) outcome[a] += share * blind[a];
    }
  }
  for (std::vector<double>& outcome : joint)
    for (std::size_t a = 0; a < outcome.size(); ++a)
      outcome[a] = acts.weights[a] > 0 ? outcome[a] / acts.weights[a] : 0;
  return dating::expectedGainBits(acts.weights, joint);
}

/// "With A: X; with B: Y.", the likeliest outcomes first, each with what would then most likely be done.
std::string becauseOf(const std::vector<Possibility>& ways, const Outcome& outcome) {
  std::map<std::string_view, std::map<std::string_view, double>> seen;
  for (const Possibility& way : ways)
    if (const std::string_view name = outcome(way); !name.empty()) seen[name][way.act] += way.weight;
  struct Line {
    double weight = 0;
    std::string text;
  };
  std::vector<Line> lines;
  for (const auto& [name, acts] : seen) {
    const auto best =
        std::max_element(acts.begin(), acts.end(), [](const auto& a, const auto& b) { return a.second < b.second; });
    Line line{0, fmt::format("{}: {}", name, actName(best->first))};
    for (const auto& [act, weight] : acts) line.weight += weight;
    lines.push_back(std::move(line));
  }
  std::stable_sort(lines.begin(), lines.end(), [](const Line& a, const Line& b) { return a.weight > b.weight; });
  std::string text;
  for (std::size_t i = 0; i < std::min(lines.size(), kReasons); ++i) text += (i == 0 ? "" : "; ") + lines[i].text;
  return text + ".";
}

/// "About 318 Ω at 40 °C is Family A: keep the one in the head; about 940 Ω is Family B: BR-2217."
std::string becauseOfCold(const Unknowns& unknowns) {
  const Outcome family = [](const Possibility& way) { return std::string_view(way.inHand); };
  std::string text;
  std::size_t said = 0;
  std::vector<std::pair<double, const ColdOhms*>> likeliest;
  for (const ColdOhms& cold : unknowns.cold) {
    double weight = 0;
    for (const Possibility& way : unknowns.ways) weight += way.inHand == cold.family ? way.weight : 0;
    likeliest.emplace_back(weight, &cold);
  }
  std::stable_sort(likeliest.begin(), likeliest.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
  for (const auto& [weight, cold] : likeliest) {
    if (said++ == kReasons) break;
    std::vector<Possibility> ofIt;
    std::copy_if(unknowns.ways.begin(), unknowns.ways.end(), std::back_inserter(ofIt),
                 [&](const Possibility& way) { return way.inHand == cold->family; });
    text += fmt::format("{}about {} is {}", text.empty() ? "" : "; ", print(ohms(std::exp(cold->lnOhms))),
                        becauseOf(ofIt, family));
    text.pop_back();  // its full stop
  }
  if (!text.empty()) text.front() = 'A';
  return text + ".";
}

/// Where the casting number cannot be read, what tells nearly as much.
std::string failingThat(const std::vector<Possibility>& ways, const EngineSide& engine, double gain) {
  std::vector<std::string> years;
  years.reserve(engine.choices.size());
  for (const PortChoice& choice : engine.choices)
    years.push_back(
        choice.made.produced ? fmt::format("{}–{}", choice.made.produced->first, choice.made.produced->second) : "");
  const double byThread = gainOfSeeing(ways, [&](const Possibility& way) {
    const auto& thread = engine.choices[way.origin.port].thread;
    return thread ? std::string_view(thread->text) : std::string_view();
  });
  const double byYear =
      gainOfSeeing(ways, [&](const Possibility& way) { return std::string_view(years[way.origin.port]); });
  if (byThread >= kAsMuch * gain) return " The thread of the port tells as much.";
  if (byYear >= kAsMuch * gain) return " The date cast in the head tells as much.";
  return {};
}

/// No gauge and no senders to weigh: as many gauges of a family as the catalogue has.
double gainOfGauge(const catalog::Catalogue& catalogue) {
  std::map<std::string, double> families;
  for (const catalog::GaugeRecord& gauge : catalog::gauges(catalogue)) families[gauge.family.text] += 1;
  std::vector<double> weights;
  weights.reserve(families.size());
  for (const auto& [family, weight] : families) weights.push_back(weight);
  return dating::entropyBits(weights);
}

/// The look that gains most so far. Reasons are written for it alone.
class Looker {
 public:
  explicit Looker(const Unknowns& unknowns) : unknowns_(unknowns) {}

  void consider(std::string what, std::string field, const Outcome& outcome,
                const std::function<std::string(double)>& more = {}) {
    const double gain = gainOfSeeing(unknowns_.ways, outcome);
    if (!leads(gain)) return;
    best_ = {std::move(what), becauseOf(unknowns_.ways, outcome) + (more ? more(gain) : ""), std::move(field), gain};
  }
  void consider(const std::string& what, double gain, std::string field, const std::function<std::string()>& because) {
    if (leads(gain)) best_ = {what, because(), std::move(field), gain};
  }
  [[nodiscard]] const std::optional<DecidingLook>& best() const { return best_; }

 private:
  [[nodiscard]] bool leads(double gain) const { return gain > (best_ ? best_->gain : kNothing); }

  const Unknowns& unknowns_;
  std::optional<DecidingLook> best_;
};

}  // namespace

double gainOfSeeing(const std::vector<Possibility>& ways, const Outcome& outcome) {
  Numbered seen;
  std::vector<std::size_t> ofWay;  // 0: nothing of its own to see
  ofWay.reserve(ways.size());
  for (const Possibility& way : ways) {
    const std::string_view name = outcome(way);
    ofWay.push_back(name.empty() ? 0 : seen.of(name) + 1);
  }
  if (seen.size() < 2) return 0;
  const Acts acts = actsOf(ways);
  std::vector<std::vector<double>> joint(seen.size() + 1, std::vector<double>(acts.weights.size()));
  for (std::size_t i = 0; i < ways.size(); ++i) joint[ofWay[i]][acts.ofWay[i]] += ways[i].weight;
  const std::vector<double> blind = std::move(joint.front());
  joint.erase(joint.begin());
  return gainOf(acts, std::move(joint), blind);
}

double gainOfColdOhms(const Unknowns& unknowns) {
  if (unknowns.cold.size() < 2) return 0;
  const Acts acts = actsOf(unknowns.ways);
  // Weights of each family and act; last the ways without a family in hand.
  std::vector<std::vector<double>> ofFamily(unknowns.cold.size() + 1, std::vector<double>(acts.weights.size()));
  for (std::size_t i = 0; i < unknowns.ways.size(); ++i) {
    const Possibility& way = unknowns.ways[i];
    const auto family = std::find_if(unknowns.cold.begin(), unknowns.cold.end(),
                                     [&](const ColdOhms& cold) { return cold.family == way.inHand; });
    ofFamily[static_cast<std::size_t>(family - unknowns.cold.begin())][acts.ofWay[i]] += way.weight;
  }
  double low = 1e9, high = -1e9;
  for (const ColdOhms& cold : unknowns.cold) {
    low = std::min(low, cold.lnOhms - 5 * cold.spread);
    high = std::max(high, cold.lnOhms + 5 * cold.spread);
  }
  const auto below = [](const ColdOhms& cold, double x) {
    return 0.5 * std::erfc((cold.lnOhms - x) / cold.spread / std::numbers::sqrt2);
  };
  const double step = (high - low) / kColdSteps;
  std::vector<std::vector<double>> joint(kColdSteps, std::vector<double>(acts.weights.size()));
  for (std::size_t f = 0; f < unknowns.cold.size(); ++f) {
    for (std::size_t o = 0; o < kColdSteps; ++o) {
      const double from = low + step * static_cast<double>(o);
      const double share = below(unknowns.cold[f], from + step) - below(unknowns.cold[f], from);
      if (share < 1e-12) continue;
      for (std::size_t a = 0; a < acts.weights.size(); ++a) joint[o][a] += share * ofFamily[f][a];
    }
  }
  return gainOf(acts, std::move(joint), ofFamily.back());
}

std::optional<DecidingLook> decidingLook(const catalog::Catalogue& catalogue, const Answer& answer,
                                         const std::vector<Origin>& origins, const std::vector<std::string>& dashTells,
                                         const EngineSide& engine) {
  if (answer.branches.empty()) return std::nullopt;
  const Unknowns unknowns = unknownsOf(answer, origins);
  Looker looker(unknowns);
  const Outcome port = [&](const Possibility& way) {
    return std::string_view(engine.choices[way.origin.port].assumes);
  };
  looker.consider("Which of these clusters is in the dash?", "cluster", [&](const Possibility& way) {
    return dashTells.empty() ? std::string_view() : std::string_view(dashTells[way.origin.dash]);
  });
  if (engine.castingUnknown)
    looker.consider("What is the casting number of the head?", "casting", port,
                    [&](double gain) { return failingThat(unknowns.ways, engine, gain); });
  else looker.consider("Which port takes the sender?", "port-location", port);
  looker.consider("Which gauge is in the dash?", "gauge",
                  [](const Possibility& way) { return std::string_view(way.gauge); });
  looker.consider("What is the casting number, or the thread of the port?", "casting",
                  [](const Possibility& way) { return std::string_view(way.thread); });
  looker.consider("Which terminal is on the wire?", "terminal",
                  [](const Possibility& way) { return std::string_view(way.terminal); });
  if (answer.question.fitted.empty())
    looker.consider(fmt::format("What does the sender in the head read at {}?", print(unknowns.coldAt, DisplayUnits{})),
                    gainOfColdOhms(unknowns), "reading", [&] { return becauseOfCold(unknowns); });
  else
    looker.consider("What does the sender in the head read, cold and hot?", "reading",
                    [](const Possibility& way) { return std::string_view(way.inHand); });
  const Branch& first = answer.branches.front();
  const bool nothingToWeigh = first.ranked.empty() && !first.gauge && first.gaugeLink.headline == "not known";
  if (nothingToWeigh)
    looker.consider("Which gauge is in the dash?", gainOfGauge(catalogue), "gauge",
                    [] { return std::string("Without it nothing says which resistance the needle wants."); });
  return looker.best();
}

}  // namespace ohmkin::workflow
