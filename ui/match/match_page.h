#pragma once
#include <desk/page.h>
#include <match/asker.h>
#include <match/detail_panel.h>
#include <match/needle_panel.h>
#include <match/start_page.h>
#include <parts/candidate_list.h>
#include <parts/caution_panel.h>
#include <parts/chain_view.h>
#include <parts/chip_row.h>
#include <parts/look_card.h>
#include <parts/query_box.h>
#include <parts/segmented.h>
#include <QPushButton>
#include <QStackedWidget>
#include <QTimer>

namespace ohmkin::match {

/// The main job: one text box, and under it the chain, the ranked senders, the dial and the error plot.
class MatchPage : public desk::Page {
  Q_OBJECT

 public:
  explicit MatchPage(desk::Settings& settings, QWidget* parent = nullptr);
  void openCatalogue(const QString& file) override;
  void showNoCatalogue() override;
  void takeKeyboard() override { query_->takeFocus(); }
  [[nodiscard]] QString asText() const override;

  /// Shows what was answered; the asker's answers come this way.
  void display(const std::shared_ptr<const Outcome>& outcome);

  [[nodiscard]] parts::QueryBox& query() const { return *query_; }
  [[nodiscard]] parts::CandidateList& candidates() const { return *candidates_; }
  [[nodiscard]] parts::ChainView& chain() const { return *chain_; }
  [[nodiscard]] parts::ChipRow& chips() const { return *chips_; }
  [[nodiscard]] parts::Segmented& branches() const { return *branches_; }
  [[nodiscard]] parts::CautionPanel& cautions() const { return *cautions_; }
  [[nodiscard]] parts::LookCard& look() const { return *look_; }
  [[nodiscard]] NeedlePanel& needles() const { return *needles_; }
  [[nodiscard]] DetailPanel& details() const { return *details_; }
  [[nodiscard]] StartPage& start() const { return *start_; }
  [[nodiscard]] bool showsAnswer() const { return stack_->currentIndex() == 1; }

 private:
  QWidget* makeResult();
  void wire();
  void asked(const QString& text);
  void forget();  ///< no answer any more
  void displayBranch(std::size_t branch);
  void displayRows();
  void displayCandidate(int index);
  void fillIn(const std::string& field);
  void unitsChanged();
  [[nodiscard]] const workflow::Branch* branch() const;
  [[nodiscard]] const workflow::Candidate* candidate() const;

  desk::Settings& settings_;
  Asker asker_;
  QString file_;
  std::shared_ptr<const Outcome> outcome_;
  std::size_t branch_ = 0;
  int candidate_ = -1;
  QTimer settle_;
  bool chosenTemperature_ = false;  ///< the person moved the slider: it stays where they put it

  parts::QueryBox* query_;
  parts::ChipRow* chips_;
  QStackedWidget* stack_;
  StartPage* start_;
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
