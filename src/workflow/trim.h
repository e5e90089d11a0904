#pragma once
#include <pairing/offset_card.h>
#include <workflow/pair.h>
#include <string>
#include <vector>

namespace ohmkin::workflow {

/// The best resistors for a pair that misreads, with what each of them does to the needle when it fails.
struct TrimQuestion {
  PairQuestion pair;
  pairing::Series series = pairing::Series::e24;
  std::vector<Ohms> drawer;                    ///< not empty: only what the shop stocks
  std::optional<pairing::TrimNetwork> chosen;  ///< judge this network instead of looking for the best
  /// Look at a resistor from feed to sender post too, where the coils' ohms are known; it wants a fuse.
  bool feedToSender = false;
};

struct TrimAnswer {
  PairAnswer asItIs;
  std::optional<pairing::TrimProposal> proposal;  ///< none: no network makes it better
};

Expected<TrimAnswer> trim(const catalog::Catalogue& catalogue, const TrimQuestion& question,
                          const MatchOptions& options = {});

/// For a pair left as it is: the offset card, and the dial that would tell the truth.
struct DialAnswer {
  PairAnswer pair;
  pairing::OffsetCard card;
  std::optional<pairing::RemarkedDial> remarked;
  std::string whyNot;  ///< where the dial cannot be re-marked
};

Expected<DialAnswer> dial(const catalog::Catalogue& catalogue, const PairQuestion& question,
                          const std::optional<Temperature>& thermostat, const MatchOptions& options = {});

}  // namespace ohmkin::workflow
