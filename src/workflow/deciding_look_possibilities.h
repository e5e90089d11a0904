#pragma once
#include <workflow/answer.h>
#include <workflow/resolve_port.h>
#include <string>
#include <vector>

/// Everything that is not known, taken together: each way it can be, how likely, and what would then be done. The
/// deciding look is computed over these and over nothing else. Inner header of the deciding look.
namespace ohmkin::workflow {

/// Which branch came of which choice of dash and which choice of port.
struct Origin {
  std::size_t dash = 0;
  std::size_t port = 0;
};

/// One way it can be. Weights of all sum to 1.
struct Possibility {
  double weight = 0;
  std::string act;  ///< part number to hand over; kKeep; empty: nothing fits
  Origin origin;
  std::string gauge;     ///< family of the gauge, where that is open; else empty
  std::string thread;    ///< of the port, where that is open
  std::string terminal;  ///< on the wire, where that is open
  std::string inHand;    ///< family of the sender in the head, where that is open
};
inline constexpr const char* kKeep = "keep the one in the head";

/// ln R of one family's senders at the temperature where an ohmmeter is held to the sender in hand.
struct ColdOhms {
  std::string family;
  double lnOhms = 0;
  double spread = 0;  ///< standard deviation of ln R: part, curve, thermometer
};

struct Unknowns {
  std::vector<Possibility> ways;
  std::vector<ColdOhms> cold;  ///< of every family that may be in the head; empty: no look at it would tell
  Temperature coldAt = celsius(20);
};

/// Judgements, from memory, no source.
inline constexpr double kStillOriginal = 0.75;  ///< wires and senders still as they left the works

Unknowns unknownsOf(const Answer& answer, const std::vector<Origin>& origins);

}  // namespace ohmkin::workflow
