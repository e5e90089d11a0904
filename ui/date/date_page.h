#pragma once
#include <date/casting_form.h>
#include <date/date_answer.h>
#include <date/layout_bench.h>
#include <date/usual_lags.h>
#include <desk/catalogue_thread.h>
#include <desk/page.h>
#include <parts/blank_sheet.h>
#include <parts/segmented.h>
#include <QStackedWidget>
#include <QTimer>

namespace ohmkin::castings {

/// When the engine was made, from what is cast and stamped on it; and the layouts those codes are read by.
class DatePage : public desk::Page {
  Q_OBJECT

 public:
  enum Half { read, layouts };

  explicit DatePage(desk::Settings& settings, QWidget* parent = nullptr);
  void openCatalogue(const QString& file) override;
  void letGo(const std::function<void()>& then) override { desk::letGo({&thread_}, then); }
  void showNoCatalogue() override;
  void takeKeyboard() override;
  [[nodiscard]] QString asText() const override;

  [[nodiscard]] CastingForm& form() const { return *form_; }
  [[nodiscard]] UsualLags& lags() const { return *lags_; }
  [[nodiscard]] DateAnswerView& view() const { return *view_; }
  /// The answer as pages to print; refuses where there is none yet.
  [[nodiscard]] Expected<printing::Sheets> sheets() const;
  [[nodiscard]] LayoutBench& bench() const { return *bench_; }
  [[nodiscard]] MeaningList& meanings() const { return view_->meanings(); }
  [[nodiscard]] TimeLineView& timeLine() const { return view_->timeLine(); }
  [[nodiscard]] TimeTable& table() const { return view_->table(); }
  [[nodiscard]] parts::FindingList& findings() const { return view_->findings(); }
  [[nodiscard]] parts::BlankSheet& sheet() const { return *sheet_; }
  [[nodiscard]] QString headline() const { return view_->headline(); }
  [[nodiscard]] QString engineWords() const { return view_->engineWords(); }
  [[nodiscard]] bool showsAnswer() const { return answers_->currentIndex() == 1; }
  void showHalf(Half half) { halves_->choose(half); }
  void showTable(bool table) { view_->showTable(table); }

 private:
  QWidget* makeReading();
  void wire();
  void readCatalogue();  ///< layouts, names and an example, once it is open
  void asked();
  void display(const std::shared_ptr<const workflow::DateAnswer>& answer);
  void displayRefused(const QString& sentence);
  void forget();

  desk::Settings& settings_;
  desk::CatalogueThread thread_;
  QString file_;
  std::shared_ptr<const workflow::DateAnswer> answer_;
  std::optional<workflow::DateQuestion> example_;
  QTimer settle_;

  parts::BlankSheet* whole_;
  QStackedWidget* stack_;
  parts::Segmented* halves_;
  QStackedWidget* half_;
  CastingForm* form_ = nullptr;
  UsualLags* lags_ = nullptr;
  LayoutBench* bench_ = nullptr;
  QStackedWidget* answers_ = nullptr;
  parts::BlankSheet* sheet_ = nullptr;
  DateAnswerView* view_ = nullptr;
};

}  // namespace ohmkin::castings
