#pragma once
#include <match/asker.h>
#include <match/detail_panel.h>
#include <match/needle_panel.h>
#include <parts/candidate_list.h>
#include <parts/caution_panel.h>
#include <parts/chain_view.h>
#include <parts/look_card.h>
#include <parts/segmented.h>
#include <QPushButton>

namespace ohmkin::match {

/// One answer: the chain, the ranked senders, and beside them the dial and the details of the chosen one.
class ResultSheet : public QWidget {
  Q_OBJECT

 public:
  explicit ResultSheet(QWidget* parent = nullptr);
  /// An answer with at least one branch.
  void display(const std::shared_ptr<const Outcome>& outcome, const DisplayUnits& units);
  void forget();  ///< no answer any more
  void toggleRefused() { refused_->toggle(); }
  void nextBranch(int steps) { branches_->choose(branches_->chosenIndex() + steps); }
  [[nodiscard]] QString asText() const;

  [[nodiscard]] parts::CandidateList& candidates() const { return *candidates_; }
  [[nodiscard]] parts::ChainView& chain() const { return *chain_; }
  [[nodiscard]] parts::Segmented& branches() const { return *branches_; }
  [[nodiscard]] parts::CautionPanel& cautions() const { return *cautions_; }
  [[nodiscard]] parts::LookCard& look() const { return *look_; }
  [[nodiscard]] NeedlePanel& needles() const { return *needles_; }
  [[nodiscard]] DetailPanel& details() const { return *details_; }

 signals:
  void lookTaken(const std::string& field);  ///< the person is about to say what the deciding look showed

 private:
  void place(parts::Words* heading);
  void wire();
  void displayBranch(std::size_t branch);
  void displayRows();
  void displayCandidate(int index);
  [[nodiscard]] QString noteOn(const workflow::Branch& branch) const;
  [[nodiscard]] const workflow::Branch* branch() const;
  [[nodiscard]] const workflow::Candidate* candidate() const;

  std::shared_ptr<const Outcome> outcome_;
  DisplayUnits units_;
  std::size_t branch_ = 0;
  int candidate_ = -1;
  bool chosenTemperature_ = false;  ///< the person moved the slider: it stays where they put it

  parts::Segmented* branches_;
  parts::ChainView* chain_;
  parts::Words* count_;
  QPushButton* refused_;
  parts::Words* note_;
  parts::CandidateList* candidates_;
  parts::LookCard* look_;
  parts::CautionPanel* cautions_;
  NeedlePanel* needles_;
  DetailPanel* details_;
};

}  // namespace ohmkin::match
