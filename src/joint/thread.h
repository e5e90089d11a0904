#pragma once
#include <finding/finding.h>
#include <quantity/quantity.h>
#include <string>

/// Threads, and which of them seem to go together. Judged from dimensions, never from a list of names.
namespace ohmkin::joint {

enum class ThreadForm { npt, bspt, un, metric };

struct Thread {
  std::string designation;  ///< "1/2-14 NPT", "M16x1.5"
  ThreadForm form = ThreadForm::npt;
  int flankAngle = 60;  ///< degrees between the flanks: 60, or 55 for Whitworth forms
  Length pitch;
  Length diameter;  ///< at the crest, in the plane where the thread is gauged
  bool tapered = false;
  std::string source;  ///< citation, handed on into findings
};

/// How a sender's thread goes into a port's.
enum class ThreadFit {
  fits,
  needsBushing,          ///< clearly smaller: a bushing has room between the two
  looksAlikeButDoesNot,  ///< starts by hand, and then leaks, binds or strips
  doesNotFit
};

/// What was compared, with the physical reasons. Differences are sender minus port.
struct ThreadComparison {
  ThreadFit fit = ThreadFit::doesNotFit;
  Length pitchDifference;
  Length diameterDifference;
  int flankDifference = 0;    ///< degrees
  bool taperDiffers = false;  ///< one tapered, the other parallel, and no standard joins the two

  /// The pitch difference added up over as many threads, signed.
  [[nodiscard]] Length pitchErrorOver(int threads) const { return pitchDifference * static_cast<double>(threads); }
};

/// Threads a made-up pipe joint engages: the effective length L2 of ASME B1.20.1 is 7.1 to 7.5 threads at the sizes
/// senders use.
inline constexpr int kEngagedThreads = 7;

/// Two threads seem to screw together when their crests differ by no more than one thread depth, so that flanks still
/// meet flanks, and two turns drift by no more than half a pitch, so that it starts by hand. What then differs beyond
/// gauge tolerance is the reason why it does not fit. Symmetric but for needsBushing, where the port must be the
/// larger.
ThreadComparison compare(const Thread& port, const Thread& sender);

/// The comparison as a sentence with its reasons: thread-fits (note), thread-needs-bushing (caution),
/// thread-looks-alike (warning: "seem to screw together, but …"), thread-does-not-fit (refusal). `where` names the
/// port: "casting 30418, front of the head".
Finding threadFinding(const Thread& port, const Thread& sender, const std::string& where);

}  // namespace ohmkin::joint
