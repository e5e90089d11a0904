#pragma once
#include <finding/finding.h>
#include <joint/thread.h>
#include <quantity/print.h>
#include <quantity/quantity.h>
#include <optional>
#include <span>
#include <string>
#include <vector>

/// A sender screwed into a port: does it go in, does it seal, does it reach the coolant and nothing else, does it
/// ground, how tight.
namespace ohmkin::joint {

struct Port {
  std::string where;                   ///< "casting 30418, front of the head"
  std::optional<Thread> thread;        ///< none: not seen
  std::optional<Length> depth;         ///< from the seat of the hex to where the coolant begins
  std::optional<Length> longestReach;  ///< from there to the first thing a sender would strike
  std::string source;
};

/// What a mechanic finds stamped on or measures at a sender, and what its sheet says.
struct SenderBody {
  std::string part;
  std::optional<Thread> thread;
  std::optional<Length> reach;  ///< below the hex
  std::optional<Length> hex;    ///< across flats
  std::optional<Torque> torqueLow;
  std::optional<Torque> torqueHigh;
  bool groundsThroughCase = true;  ///< false: two-wire
  std::string source;
};

/// An adapter bushing: screws into `port`, takes a sender of thread `sender` (designations), and stands the sender off.
struct Bushing {
  std::string id;
  std::string port;
  std::string sender;
  Length immersionLost;
  std::string source;
};

enum class ScrewFit {
  fits,
  withBushing,  ///< a bushing of the list joins the two
  looksAlike,   ///< seems to, and does not
  doesNotFit,   ///< no bushing known or possible, or of a length that strikes the casting or never meets the coolant
  notSeen       ///< one of the threads not known: look. Never counted as wrong
};

struct ScrewJudgement {
  ScrewFit fit = ScrewFit::notSeen;
  std::string bushing;                  ///< part number, where one is needed
  std::optional<Length> immersionLost;  ///< by that bushing
  std::vector<Finding> findings;        ///< thread first; then reach, seal, ground, torque as far as known
};

/// Of several bushings that fit, the one that loses least immersion is taken.
ScrewJudgement judgeScrew(const Port& port, const SenderBody& sender, std::span<const Bushing> bushings,
                          const DisplayUnits& units = {});

/// How far the tip stands in the coolant, past the port's depth; negative: still inside the boss. None where a length
/// is not known.
std::optional<Length> immersion(const Port& port, const SenderBody& sender, Length immersionLost);

struct TorqueRange {
  Torque low;
  Torque high;
  std::string source;  ///< whose figure it is
};

/// "Tighten to 15–20 N·m"; where the figure is too much for a small taper thread in brass a warning instead (common
/// practice, no source: 20 lbf·ft is). A taper thread tightens by angle, so its range is a limit, not a goal.
Finding torqueFinding(const Thread& thread, const TorqueRange& range, const DisplayUnits& units = {});

}  // namespace ohmkin::joint
