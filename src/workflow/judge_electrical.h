#pragma once
#include <catalog/families.h>
#include <catalog/senders.h>
#include <map>
#include <memory>
#include <pairing/verdict.h>
#include <workflow/curves.h>
#include <workflow/match.h>

/// Does the needle tell the truth with this curve? Computed once a curve, not once a sender.
namespace ohmkin::workflow {

/// The gauge's side of a branch, as far as the electrical judgement needs it.
struct GaugeSide {
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

class ElectricalJudge {
 public:
  ElectricalJudge(const catalog::Catalogue& catalogue, GaugeSide side, MatchOptions options);

  /// By the family's curve. Null where the family has none, or one that never meets the band; `why` then says so.
  const Electrics* ofFamily(const catalog::FamilyKey& family);
  /// By the bench curve of one lot.
  const Electrics* ofLot(const catalog::CurveRecord& record, const catalog::FamilyKey& family);
  [[nodiscard]] const std::string& why() const { return why_; }
  [[nodiscard]] const catalog::Family* family(const catalog::FamilyKey& key);
  [[nodiscard]] const GaugeSide& side() const { return side_; }

 private:
  const Electrics* judged(const std::string& key, const Expected<SourcedCurve>& curve, const catalog::Family* family, bool sameFamily);

  const catalog::Catalogue& catalogue_;
  GaugeSide side_;
  MatchOptions options_;
  std::map<std::string, std::optional<catalog::Family>> families_;
  std::map<std::string, std::optional<Electrics>> judged_;
  std::map<std::string, std::string> reasons_;
  std::string why_;
};

}  // namespace ohmkin::workflow
