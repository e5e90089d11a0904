#include <catalog/gauges.h>
#include <dating/gain.h>
#include <fmt/format.h>
#include <quantity/print.h>
#include <workflow/deciding_look.h>
#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <set>

namespace ohmkin::workflow {
namespace {

using Outcome = std::function<std::string(const Possibility&)>;

constexpr double kNothing = 1e-6;    // bits: a look that tells less changes nothing
constexpr double kAsMuch = 0.99;     // of the best look's gain
constexpr std::size_t kReasons = 3;  // outcomes a person can keep in mind
constexpr std::size_t kColdSteps = 160;

std::string actName(const std::string& act) { return act.empty() ? "nothing that fits" : act; }

/// What would be done, numbered, and how likely each is.
struct Acts {
  std::map<std::string, std::size_t> number;
  std::vector<double> weights;
};

Acts actsOf(const std::vector<Possibility>& ways) {
  Acts acts;
  for (const Possibility& way : ways) {
    const auto [place, fresh] = acts.number.emplace(way.act, acts.weights.size());
    if (fresh) acts.weights.push_back(0);
    acts.weights[place->second] += way.weight;
  }
  return acts;
}

/// From joint weights of outcome and act to the gain.
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
  std::map<std::string, std::map<std::string, double>> seen;
  for (const Possibility& way : ways)
    if (const std::string name = outcome(way); !name.empty()) seen[name][way.act] += way.weight;
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
  const auto family = [](const Possibility& way) { return way.inHand; };
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
  const double byThread = gainOfSeeing(ways, [&](const Possibility& way) {
    const PortChoice& choice = engine.choices[way.origin.port];
    return choice.thread ? choice.thread->text : std::string();
  });
  const double byYear = gainOfSeeing(ways, [&](const Possibility& way) {
    const auto& produced = engine.choices[way.origin.port].made.produced;
    return produced ? fmt::format("{}–{}", produced->first, produced->second) : std::string();
  });
  if (byThread >= kAsMuch * gain) return " The thread of the port tells as much.";
  if (byYear >= kAsMuch * gain) return " The date cast in the head tells as much.";
  return {};
}

/// No gauge and no senders to weigh: as many gauges of a family as the catalogue has.
double gainOfGauge(const catalog::Catalogue& catalogue) {
  std::map<std::string, double> families;
  for (const catalog::GaugeRecord& gauge : catalog::gauges(catalogue)) families[gauge.family.text] += 1;
  std::vector<double> weights;
  for (const auto& [family, weight] : families) weights.push_back(weight);
  return dating::entropyBits(weights);
}

class Looker {
 public:
  Looker(const Unknowns& unknowns) : unknowns_(unknowns) {}

  void consider(std::string what, std::string field, const Outcome& outcome, const std::string& more = {}) {
    const double gain = gainOfSeeing(unknowns_.ways, outcome);
    if (gain > kNothing)
      looks_.push_back({std::move(what), becauseOf(unknowns_.ways, outcome) + more, std::move(field), gain});
  }
  void consider(DecidingLook look) {
    if (look.gain > kNothing) looks_.push_back(std::move(look));
  }
  [[nodiscard]] std::optional<DecidingLook> best() const {
    const auto most =
        std::max_element(looks_.begin(), looks_.end(), [](const auto& a, const auto& b) { return a.gain < b.gain; });
    return most == looks_.end() ? std::nullopt : std::optional(*most);
  }

 private:
  const Unknowns& unknowns_;
  std::vector<DecidingLook> looks_;
};

}  // namespace

double gainOfSeeing(const std::vector<Possibility>& ways, const Outcome& outcome) {
  const Acts acts = actsOf(ways);
  std::map<std::string, std::vector<double>> seen;
  for (const Possibility& way : ways) {
    auto& joint = seen[outcome(way)];
    joint.resize(acts.weights.size());
    joint[acts.number.at(way.act)] += way.weight;
  }
  std::vector<double> blind(acts.weights.size());
  std::vector<std::vector<double>> joint;
  for (auto& [name, weights] : seen) name.empty() ? blind.swap(weights) : joint.push_back(std::move(weights));
  return joint.size() < 2 ? 0 : gainOf(acts, std::move(joint), blind);
}

double gainOfColdOhms(const Unknowns& unknowns) {
  if (unknowns.cold.size() < 2) return 0;
  const Acts acts = actsOf(unknowns.ways);
  // Weights of each family and act; last the ways without a family in hand.
  std::vector<std::vector<double>> ofFamily(unknowns.cold.size() + 1, std::vector<double>(acts.weights.size()));
  for (const Possibility& way : unknowns.ways) {
    const auto family = std::find_if(unknowns.cold.begin(), unknowns.cold.end(),
                                     [&](const ColdOhms& cold) { return cold.family == way.inHand; });
    ofFamily[static_cast<std::size_t>(family - unknowns.cold.begin())][acts.number.at(way.act)] += way.weight;
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
  const Outcome port = [&](const Possibility& way) { return engine.choices[way.origin.port].assumes; };
  looker.consider("Which of these clusters is in the dash?", "cluster", [&](const Possibility& way) {
    return dashTells.empty() ? std::string() : dashTells[way.origin.dash];
  });
  if (const double gain = gainOfSeeing(unknowns.ways, port); gain > kNothing) {
    if (engine.castingUnknown)
      looker.consider("What is the casting number of the head?", "casting", port,
                      failingThat(unknowns.ways, engine, gain));
    else looker.consider("Which port takes the sender?", "port-location", port);
  }
  looker.consider("Which gauge is in the dash?", "gauge", [](const Possibility& way) { return way.gauge; });
  looker.consider("What is the casting number, or the thread of the port?", "casting",
                  [](const Possibility& way) { return way.thread; });
  looker.consider("Which terminal is on the wire?", "terminal", [](const Possibility& way) { return way.terminal; });
  if (answer.question.fitted.empty())
    looker.consider(
        {fmt::format("What does the sender in the head read at {}?", print(unknowns.coldAt, DisplayUnits{})),
         becauseOfCold(unknowns), "reading", gainOfColdOhms(unknowns)});
  else
    looker.consider("What does the sender in the head read, cold and hot?", "reading",
                    [](const Possibility& way) { return way.inHand; });
  const Branch& first = answer.branches.front();
  const bool nothingToWeigh = first.ranked.empty() && !first.gauge && first.gaugeLink.headline == "not known";
  if (nothingToWeigh)
    looker.consider({"Which gauge is in the dash?", "Without it nothing says which resistance the needle wants.",
                     "gauge", gainOfGauge(catalogue)});
  return looker.best();
}

}  // namespace ohmkin::workflow
