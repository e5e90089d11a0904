#pragma once
#include <catalog/sender_groups.h>
#include <workflow/candidates.h>
#include <array>
#include <set>
#include <unordered_map>

/// Inner header of candidates: more senders could go there than anyone would look through. What a sender comes to
/// follows from its group, but for four things: whether it was superseded, whether it lies on the shelf, whether it is
/// in the head, and whether a lot of it was measured. Those measured and those in the head are judged each for itself;
/// of the others the groups are put in order, and only so many parts are taken from them as are listed.
namespace ohmkin::workflow {

class GroupedCandidates {
 public:
  GroupedCandidates(const BranchQuestion& asked, const std::vector<catalog::ThreadKey>& threads, SenderJudge& judge,
                    ElectricalJudge& electrical);
  /// The same list, as far as it goes, that judging all one by one would give.
  void rankInto(Branch& branch);

 private:
  /// A group, and what each of its parts comes to.
  struct Judged {
    catalog::SenderGroup group;
    SenderJudge::JointOutcome screw;
    SenderJudge::JointOutcome plug;
    std::shared_ptr<const Electrics> electrics;
    pairing::Rank rank = pairing::Rank::refused;
    std::size_t partsNeeded = 0;
    double worst = 0;
    std::vector<catalog::GroupedSender> onTheShelf;  ///< by number
    std::set<std::string> apart;                     ///< judged for themselves
    std::set<std::string> taken;                     ///< listed

    [[nodiscard]] std::size_t ordinary() const { return group.senders - apart.size(); }
  };
  /// Where a part stands within its group, best first.
  struct Place {
    bool superseded = false;
    bool offTheShelf = false;
  };
  static constexpr std::array<Place, 4> kPlaces{{{false, false}, {false, true}, {true, false}, {true, true}}};

  void findGroups();
  void layOnTheShelf();
  void findApart();
  void setApart(const catalog::GroupedSender& part);
  void want();
  void settle();
  Judged* groupOf(const catalog::GroupedSender& part);
  std::vector<catalog::SenderKey> partsAt(const Judged& judged, const Place& place, std::size_t most) const;
  std::vector<catalog::Sender> choose(std::size_t most);
  std::optional<std::pair<Place, catalog::SenderKey>> firstNotTaken(const Judged& judged) const;
  void list(std::vector<Candidate> all, Branch& branch);

  const BranchQuestion& asked_;
  const std::vector<catalog::ThreadKey>& threads_;
  SenderJudge& judge_;
  ElectricalJudge& electrical_;
  std::vector<Judged> groups_;
  std::unordered_map<std::string, std::size_t> byName_;  ///< thread and likeness
  std::vector<catalog::Sender> apart_;
  std::set<std::string> apartKnown_;
  std::size_t outside_ = 0;  ///< of those apart: of none of the groups
  std::optional<catalog::SenderKey> fitted_;
};

}  // namespace ohmkin::workflow
