#pragma once
#include <catalog/families.h>
#include <catalog/senders.h>
#include <pairing/verdict.h>
#include <workflow/curves.h>
#include <workflow/match.h>
#include <map>
#include <memory>

/// Does the needle tell the truth with this curve? Computed once a curve, not once a sender.
namespace ohmkin::workflow {

/// Temperatures in a table; worst errors are found between them too. The same wherever a pair is judged, so that
/// terminal, window and trim propose the same network.
inline constexpr std::size_t kRows = 25;
inline constexpr std::size_t kDrawnRows = 90;  ///< of a line that is drawn

/// The gauge's side of a branch, as far as the electrical judgement needs it.
struct GaugeSide {
  std::string id;  ///< of the gauge
  std::shared_ptr<const gauge::Gauge> gauge;
  bool pulsing = false;  ///< its senders are pulsing contacts: a family without any ohms
  catalog::FamilyKey family;
  std::string familyName;
  bool temperaturesStated = true;
  double gaugeTolerance = 0.05;
  TemperatureSpan band{celsius(0), celsius(0)};
  std::optional<Temperature> boiling;  ///< plain water under the cap
  std::string source;
};

struct Electrics {
  curve::Curve curve;
  pairing::ErrorTable errors;
  std::optional<pairing::ErrorTable> wide;
  std::optional<pairing::TrimProposal> trim;
  pairing::Verdict verdict;
};

/// What was judged before, for gauges on bands: a plan of many engines asks the same of each pair over and over.
class PairMemory {
 public:
  struct Kept {
    std::shared_ptr<const Electrics> electrics;
    pairing::Circumstances circumstances;
    bool trimSought = false;
    std::string why;  ///< where there are no electrics
  };
  std::map<std::string, Kept> judged;
  std::map<std::string, const Kept*> onBand;  ///< one of those that differ by nothing but where the water boils
  std::map<std::string, std::optional<catalog::Family>> families;
};

/// First everything is wanted, then judged, then looked up: a pair's trim is there for all who share it, whoever of
/// them joins. On one thread: starting another takes as long as a few pairs, and a catalogue seldom has many more.
class ElectricalJudge {
 public:
  /// The memory outlives the judge; it must be of one catalogue and one set of options.
  ElectricalJudge(const catalog::Catalogue& catalogue, GaugeSide side, MatchOptions options, PairMemory& memory);

  /// By the family's curve, or by the bench curve of one lot. A trim is sought only where some sender that wants one
  /// joins: it costs most.
  void want(const catalog::FamilyKey& family, const catalog::CurveRecord* lot, bool seekTrim);
  void judgeWanted();
  /// Null where the family has no curve, or one that never meets the band; `why` then says so.
  std::shared_ptr<const Electrics> found(const catalog::FamilyKey& family, const catalog::CurveRecord* lot);

  [[nodiscard]] const std::string& why() const { return why_; }
  [[nodiscard]] const catalog::Family* family(const catalog::FamilyKey& key);
  [[nodiscard]] const GaugeSide& side() const { return side_; }

 private:
  struct Task {
    PairMemory::Kept* kept = nullptr;
    const PairMemory::Kept* alike = nullptr;      ///< judged before where water boils elsewhere
    std::optional<Expected<SourcedCurve>> curve;  ///< none: judged before, at most the trim is wanting
    std::optional<double> senderTolerance;
    std::string name;
    bool sameFamily = false;
    bool seekTrim = false;
  };
  std::string onBandName(const catalog::FamilyKey& family, const catalog::CurveRecord* lot) const;
  void judge(const Task& task) const;
  void judgeAlike(const Task& task) const;
  void seekTrim(PairMemory::Kept& kept) const;

  const catalog::Catalogue& catalogue_;
  GaugeSide side_;
  MatchOptions options_;
  PairMemory& memory_;
  std::string onThisBand_;  ///< begins the names under which pairs are kept: gauge and band
  std::string boilsAt_;     ///< ends them
  std::map<std::string, Task> wanted_;
  std::string why_;
};

}  // namespace ohmkin::workflow
