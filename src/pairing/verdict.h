#pragma once
#include <finding/finding.h>
#include <pairing/error_table.h>
#include <pairing/limits.h>
#include <pairing/trim_proposal.h>
#include <quantity/print.h>
#include <compare>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Does the needle tell the truth with this sender? Judged on the nominal mismatch and on how well curves and trim are
/// known; what every candidate shares (tolerances, location, supply) is reported apart.
namespace ohmkin::pairing {

enum class Electrical {
  sameFamily,           ///< the gauge was built for it
  withinLimits,         ///< another family, close enough
  trimmedWithinLimits,  ///< close enough with resistors that may stay
  readsHigh,            ///< safe but wrong: an offset card
  undecided,            ///< the curves are not known well enough: take a reading
  refused               ///< the hot mark comes late, or it reads low
};
std::string_view electricalName(Electrical electrical);  ///< "within limits", …

/// What the judge has to know beside the numbers.
struct Circumstances {
  /// Cold and hot ohms of both families come with their temperatures, or were measured.
  bool temperaturesStated = true;
  std::optional<Temperature> boiling;  ///< plain water under this vehicle's cap
  std::string evidence;                ///< goes into the findings: "family A, lot curve of 12 May"
  std::string source;
  DisplayUnits units;
};

struct Verdict {
  Electrical electrical = Electrical::undecided;
  std::string sentence;           ///< one plain sentence
  std::vector<Finding> findings;  ///< what it rests on, gravest first
  Limits limits;
  std::optional<Temperature> takeReadingAt;  ///< a hot reading of the sender that would decide
};

/// `trim` is the proposal for this pair where one was sought.
Verdict judge(const ErrorTable& asItIs, const std::optional<TrimProposal>& trim, const Limits& limits,
              const Circumstances& circumstances);

/// The order of recommendation; first is best.
enum class Rank {
  sameFamily,
  withPigtail,
  withBushing,
  otherFamilyWithinLimits,
  trimmedWithinLimits,
  readsHigh,
  undecided,
  refused
};
std::string_view rankName(Rank rank);

/// Compares as the ranking does: smaller is better.
struct RankKey {
  Rank rank = Rank::refused;
  int partsNeeded = 0;     ///< adapters, pigtails, resistors
  double worstKelvin = 0;  ///< largest |error| over the band, as it would be fitted
  friend auto operator<=>(const RankKey&, const RankKey&) = default;
};
Rank rankOf(Electrical electrical, bool needsPigtail, bool needsBushing);

}  // namespace ohmkin::pairing
