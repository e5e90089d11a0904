#pragma once
#include <sheet/paper.h>

/// A gauge wired past the car's own harness: the circuit with every wire's size, and what to mind.
namespace ohmkin::sheet {

/// Figures as they are read: "20 AWG", "0.52 mm²", "1.5 m", "0.27 A", "0.013 V".
struct WireLine {
  std::string name;  ///< "feed"
  std::string from;
  std::string to;
  std::string gauge;   ///< the thinnest that does, American wire gauge
  std::string area;    ///< of that gauge
  std::string metric;  ///< the metric size to buy instead
  std::string length;
  std::string current;
  std::string drop;
  std::string note;
};

struct Wiring {
  Heading heading;
  std::string fuse;       ///< "1 A"
  std::string regulator;  ///< "5 V" of the regulator that stays in the feed; empty where there is none
  WireLine feed;
  WireLine lead;
  WireLine ground;
  std::vector<std::string> reminders;
  std::vector<std::string> assumed;
  std::vector<std::string> cautions;
};

/// Colours are not printed: every wire has a blank to write its own in. As many pages as it takes; the drawing and the
/// wires are on the first.
Pages drawWiring(const Wiring& wiring, Paper paper);

}  // namespace ohmkin::sheet
