#pragma once
#include <finding/refusal.h>
#include <cstddef>
#include <optional>
#include <vector>

/// A network of resistors, batteries and voltage regulators at rest, solved by Kirchhoff's current law at its nodes
/// (nodal analysis, with one unknown current for each regulator: Ho, Ruehli and Brennan, IEEE Trans. CAS 22 (1975) 504;
/// from memory). Bare numbers: ohms, volts, amperes.
///
/// Opens and shorts are exact: an infinite resistor is left out, one of 0 joins its two nodes into one. Nothing stands
/// in for them, so nothing spoils the conditioning.
namespace ohmkin::circuit {

using Node = int;                  ///< counted from 0
inline constexpr Node kEarth = 0;  ///< the battery's grounded post: all volts are against it

struct Resistor {
  Node from = kEarth;
  Node to = kEarth;
  double ohms = 0;   ///< 0 … infinite
  double volts = 0;  ///< of a battery in series with it, `from` the positive side; needs ohms above 0
};

/// A regulator that holds output − housing at so many volts RMS with current from its input, as long as the input is
/// higher than that; otherwise, and where its housing is on nothing, its contact stays closed (`contact` ohms).
struct Regulator {
  Node input = kEarth;
  Node output = kEarth;
  Node housing = kEarth;
  double volts = 5;
  double contact = 0.05;  ///< above 0
};

struct Network {
  int nodes = 1;
  std::vector<Resistor> resistors;
  std::vector<Regulator> regulators;
};

class Solution {
 public:
  /// Against earth; none for a node that nothing joins to earth, whose potential nothing settles.
  [[nodiscard]] std::optional<double> volts(Node node) const;
  /// Between two nodes; none where nothing joins them.
  [[nodiscard]] std::optional<double> between(Node plus, Node minus) const;
  /// Through a resistor from `from` to `to`; 0 through an infinite one. None through one of 0 ohms: it has no drop to
  /// tell it by.
  [[nodiscard]] std::optional<double> amperes(std::size_t resistor) const;
  [[nodiscard]] bool regulates(std::size_t regulator) const { return regulates_[regulator]; }

 private:
  friend Expected<Solution> solve(const Network& network);
  std::vector<double> volts_;    ///< of each node, against the first node of its island
  std::vector<int> island_;      ///< of each node; earth's is 0
  std::vector<double> amperes_;  ///< NaN where not known
  std::vector<bool> regulates_;
};

/// Refuses a node that is not there, ohms below 0 or no number, a battery or a regulator's contact without ohms.
Expected<Solution> solve(const Network& network);

/// What an ohmmeter shows between two nodes with every battery taken out and regulators open: infinite where nothing
/// joins them. Refuses as solve() does.
Expected<double> ohmsBetween(Network network, Node a, Node b);

}  // namespace ohmkin::circuit
