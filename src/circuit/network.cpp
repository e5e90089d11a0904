#include <circuit/network.h>

#include <fmt/core.h>
#include <Eigen/Dense>
#include <cmath>
#include <limits>
#include <numeric>

namespace ohmkin::circuit {
namespace {

constexpr double kNotKnown = std::numeric_limits<double>::quiet_NaN();

/// Nodes that are joined, each set named by its lowest node.
class Joined {
 public:
  explicit Joined(int nodes) : parent_(static_cast<std::size_t>(nodes)) {
    std::iota(parent_.begin(), parent_.end(), 0);
  }
  [[nodiscard]] int of(int node) const {
    while (parent_[static_cast<std::size_t>(node)] != node) node = parent_[static_cast<std::size_t>(node)];
    return node;
  }
  void join(int a, int b) {
    a = of(a);
    b = of(b);
    parent_[static_cast<std::size_t>(std::max(a, b))] = std::min(a, b);
  }

 private:
  std::vector<int> parent_;
};

tl::unexpected<Refusal> wrong(std::string_view what, std::size_t which, double found, std::string expected) {
  return refuse("network-out-of-range", fmt::format("{} {}", what, which), fmt::format("{:g}", found),
                std::move(expected));
}

Expected<void> checked(const Network& network) {
  const auto there = [&](Node node) { return node >= 0 && node < network.nodes; };
  for (std::size_t i = 0; i < network.resistors.size(); ++i) {
    const Resistor& r = network.resistors[i];
    if (!there(r.from)) return wrong("resistor", i, r.from, "a node of the network");
    if (!there(r.to)) return wrong("resistor", i, r.to, "a node of the network");
    if (!(r.ohms >= 0)) return wrong("resistor", i, r.ohms, "ohms of 0 or more");
    if (!std::isfinite(r.volts)) return wrong("resistor", i, r.volts, "volts");
    if (r.volts != 0 && r.ohms == 0) return wrong("resistor", i, r.ohms, "ohms above 0 in series with a battery");
  }
  for (std::size_t i = 0; i < network.regulators.size(); ++i) {
    const Regulator& r = network.regulators[i];
    for (const Node node : {r.input, r.output, r.housing})
      if (!there(node)) return wrong("regulator", i, node, "a node of the network");
    if (!(r.contact > 0) || std::isinf(r.contact))
      return wrong("regulator", i, r.contact, "ohms of the contact above 0");
    if (!std::isfinite(r.volts) || r.volts <= 0) return wrong("regulator", i, r.volts, "volts above 0");
  }
  return {};
}

/// Nodes made one by the shorts between them, islands of nodes that resistors join, and one of each island's nodes to
/// count volts from.
class Layout {
 public:
  Layout(const Network& network, const std::vector<bool>& regulates)
      : same_(network.nodes), island_(network.nodes), unknown_(static_cast<std::size_t>(network.nodes), -1) {
    for (const Resistor& r : network.resistors) {
      if (r.ohms == 0) same_.join(r.from, r.to);
      if (!std::isinf(r.ohms)) island_.join(r.from, r.to);
    }
    for (std::size_t i = 0; i < network.regulators.size(); ++i) {
      const Regulator& r = network.regulators[i];
      island_.join(r.input, r.output);
      if (regulates[i]) island_.join(r.output, r.housing);
    }
    for (Node node = 0; node < network.nodes; ++node)
      if (same_.of(node) == node && same_.of(island_.of(node)) != node)
        unknown_[static_cast<std::size_t>(node)] = unknowns_++;
  }
  [[nodiscard]] int unknown(Node node) const { return unknown_[static_cast<std::size_t>(same_.of(node))]; }
  [[nodiscard]] int unknowns() const { return unknowns_; }
  [[nodiscard]] int island(Node node) const { return island_.of(node); }

 private:
  Joined same_;
  Joined island_;
  std::vector<int> unknown_;  ///< row of the node's equation; −1 where its volts are given
  int unknowns_ = 0;
};

/// Kirchhoff's current law at every node of unknown volts; below it a row for each regulator that regulates.
class Equations {
 public:
  explicit Equations(int size) : left_(Eigen::MatrixXd::Zero(size, size)), right_(Eigen::VectorXd::Zero(size)) {}

  void add(int from, int to, double ohms, double volts) {
    const double siemens = 1 / ohms;
    if (from >= 0) {
      left_(from, from) += siemens;
      right_(from) += volts * siemens;
    }
    if (to >= 0) {
      left_(to, to) += siemens;
      right_(to) -= volts * siemens;
    }
    if (from >= 0 && to >= 0) {
      left_(from, to) -= siemens;
      left_(to, from) -= siemens;
    }
  }

  void regulate(int row, int input, int output, int housing, double volts) {
    if (input >= 0) left_(input, row) += 1;
    if (output >= 0) left_(output, row) -= 1;
    if (output >= 0) left_(row, output) += 1;
    if (housing >= 0) left_(row, housing) -= 1;
    right_(row) = volts;
  }

  [[nodiscard]] Eigen::VectorXd solved() const { return left_.partialPivLu().solve(right_); }

 private:
  Eigen::MatrixXd left_;
  Eigen::VectorXd right_;
};

/// A housing from which no current comes back to the input cannot warm the regulator: its contact stays closed.
std::vector<bool> thatMayRegulate(const Network& network) {
  if (network.regulators.empty()) return {};
  const Layout apart({network.nodes, network.resistors, {}}, {});
  std::vector<bool> may;
  may.reserve(network.regulators.size());
  for (const Regulator& r : network.regulators) may.push_back(apart.island(r.housing) == apart.island(r.input));
  return may;
}

struct Trial {
  Layout layout;
  Eigen::VectorXd found;

  [[nodiscard]] double at(Node node) const {
    const int unknown = layout.unknown(node);
    return unknown < 0 ? 0 : found(unknown);
  }
};

Trial tried(const Network& network, const std::vector<bool>& regulates) {
  Layout layout(network, regulates);
  const int rows = layout.unknowns() + static_cast<int>(std::count(regulates.begin(), regulates.end(), true));
  Equations equations(rows);
  for (const Resistor& r : network.resistors)
    if (r.ohms > 0 && !std::isinf(r.ohms)) equations.add(layout.unknown(r.from), layout.unknown(r.to), r.ohms, r.volts);
  int row = layout.unknowns();
  for (std::size_t i = 0; i < network.regulators.size(); ++i) {
    const Regulator& r = network.regulators[i];
    const int in = layout.unknown(r.input);
    const int out = layout.unknown(r.output);
    if (regulates[i]) equations.regulate(row++, in, out, layout.unknown(r.housing), r.volts);
    else equations.add(in, out, r.contact, 0);
  }
  return {layout, rows == 0 ? Eigen::VectorXd() : equations.solved()};
}

/// Whether a regulator would have to push current backwards or raise the volts: then its contact is closed all the
/// time.
bool asksTooMuch(const Trial& trial, const Regulator& r, double amperes) {
  return !std::isfinite(amperes) || amperes < 0 || trial.at(r.input) - trial.at(r.output) < amperes * r.contact;
}

}  // namespace

std::optional<double> Solution::volts(Node node) const { return between(node, kEarth); }

std::optional<double> Solution::between(Node plus, Node minus) const {
  const auto a = static_cast<std::size_t>(plus);
  const auto b = static_cast<std::size_t>(minus);
  if (island_[a] != island_[b]) return std::nullopt;
  return volts_[a] - volts_[b];
}

std::optional<double> Solution::amperes(std::size_t resistor) const {
  if (std::isnan(amperes_[resistor])) return std::nullopt;
  return amperes_[resistor];
}

Expected<Solution> solve(const Network& network) {
  if (const auto ok = checked(network); !ok) return tl::make_unexpected(ok.error());
  std::vector<bool> regulates = thatMayRegulate(network);
  Trial trial = tried(network, regulates);
  for (std::size_t round = 0; round < network.regulators.size(); ++round) {
    bool changed = false;
    int row = trial.layout.unknowns();
    for (std::size_t i = 0; i < network.regulators.size(); ++i) {
      if (!regulates[i]) continue;
      if (!asksTooMuch(trial, network.regulators[i], trial.found(row++))) continue;
      regulates[i] = false;
      changed = true;
    }
    if (!changed) break;
    trial = tried(network, regulates);
  }
  Solution solution;
  solution.regulates_ = regulates;
  for (Node node = 0; node < network.nodes; ++node) {
    solution.volts_.push_back(trial.at(node));
    solution.island_.push_back(trial.layout.island(node));
  }
  for (const Resistor& r : network.resistors) {
    const double drop = trial.at(r.from) - trial.at(r.to) - r.volts;
    solution.amperes_.push_back(std::isinf(r.ohms) ? 0 : r.ohms == 0 ? kNotKnown : drop / r.ohms);
  }
  return solution;
}

Expected<double> ohmsBetween(Network network, Node a, Node b) {
  for (Resistor& r : network.resistors) r.volts = 0;
  network.regulators.clear();
  // The meter: a battery of 1 V behind 1 Ω; what it drives tells the rest.
  network.resistors.push_back({a, b, 1, 1});
  const auto solution = solve(network);
  if (!solution) return tl::make_unexpected(solution.error());
  const double current = -*solution->amperes(network.resistors.size() - 1);
  // Below what rounding leaves of no current at all.
  if (current <= 1e-13) return std::numeric_limits<double>::infinity();
  return 1 / current - 1;
}

}  // namespace ohmkin::circuit
