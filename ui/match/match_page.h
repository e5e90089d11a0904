#pragma once
#include <desk/page.h>
#include <match/asker.h>
#include <match/result_sheet.h>
#include <match/start_page.h>
#include <parts/chip_row.h>
#include <parts/keep_with_job.h>
#include <parts/query_box.h>
#include <QStackedWidget>
#include <QTimer>

namespace ohmkin::match {

/// The main job: one text box, and under it the chain, the ranked senders, the dial and the error plot.
class MatchPage : public desk::Page {
  Q_OBJECT

 public:
  explicit MatchPage(desk::Settings& settings, QWidget* parent = nullptr);
  void openCatalogue(const QString& file) override;
  void letGo(const std::function<void()>& then) override { desk::letGo({&asker_.thread()}, then); }
  void showNoCatalogue() override;
  void takeKeyboard() override { query_->takeFocus(); }
  [[nodiscard]] QString asText() const override;

  /// Shows what was answered; the asker's answers come this way.
  void display(const std::shared_ptr<const Outcome>& outcome);

  [[nodiscard]] parts::QueryBox& query() const { return *query_; }
  [[nodiscard]] parts::CandidateList& candidates() const { return result_->candidates(); }
  [[nodiscard]] parts::ChainView& chain() const { return result_->chain(); }
  [[nodiscard]] parts::ChipRow& chips() const { return *chips_; }
  [[nodiscard]] parts::Segmented& branches() const { return result_->branches(); }
  [[nodiscard]] parts::CautionPanel& cautions() const { return result_->cautions(); }
  [[nodiscard]] parts::LookCard& look() const { return result_->look(); }
  [[nodiscard]] NeedlePanel& needles() const { return result_->needles(); }
  [[nodiscard]] DetailPanel& details() const { return result_->details(); }
  [[nodiscard]] StartPage& start() const { return *start_; }
  [[nodiscard]] QPushButton& keepButton() const { return *keep_; }
  [[nodiscard]] QString told() const { return told_->isHidden() ? QString() : told_->text(); }  ///< of keeping
  [[nodiscard]] bool showsAnswer() const { return stack_->currentIndex() == 1; }

 private:
  void wire();
  void asked(const QString& text);
  void forget();  ///< no answer any more
  void fillIn(const std::string& field);
  void unitsChanged();
  void keepWithJob();
  void tell(const QString& sentence);
  void showState();  ///< what can be done with an answer follows whether there is one

  desk::Settings& settings_;
  Asker asker_;
  QString file_;
  std::shared_ptr<const Outcome> outcome_;
  QTimer settle_;

  parts::QueryBox* query_;
  parts::ChipRow* chips_;
  QPushButton* keep_;
  parts::Words* told_;
  QAction* keeping_ = nullptr;
  QStackedWidget* stack_;
  StartPage* start_;
  ResultSheet* result_;
};

}  // namespace ohmkin::match
