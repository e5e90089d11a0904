#pragma once
#include <date/casting_form.h>
#include <date/layout_bench.h>
#include <date/meaning_list.h>
#include <date/time_line_view.h>
#include <date/time_table.h>
#include <desk/catalogue_thread.h>
#include <desk/page.h>
#include <parts/blank_sheet.h>
#include <parts/finding_list.h>
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
  void showNoCatalogue() override;
  void takeKeyboard() override;
  [[nodiscard]] QString asText() const override;

  [[nodiscard]] CastingForm& form() const { return *form_; }
  [[nodiscard]] LayoutBench& bench() const { return *bench_; }
  [[nodiscard]] MeaningList& meanings() const { return *meanings_; }
  [[nodiscard]] TimeLineView& timeLine() const { return *timeLine_; }
  [[nodiscard]] TimeTable& table() const { return *table_; }
  [[nodiscard]] parts::FindingList& findings() const { return *findings_; }
  [[nodiscard]] parts::BlankSheet& sheet() const { return *sheet_; }
  [[nodiscard]] QString headline() const { return headline_->text(); }
  [[nodiscard]] QString engineWords() const { return engine_->text(); }
  [[nodiscard]] bool showsAnswer() const { return answers_->currentIndex() == 1; }
  void showHalf(Half half) { halves_->choose(half); }
  void showTable(bool table) { drawn_->choose(table ? 1 : 0); }

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  QWidget* makeReading();
  QWidget* makeAnswer();
  void wire();
  void readCatalogue();  ///< layouts, names and an example, once it is open
  void asked();
  void display(const std::shared_ptr<const workflow::DateAnswer>& answer);
  void displayRefused(const QString& sentence);
  void forget();
  void fitFindings();

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
  LayoutBench* bench_ = nullptr;
  QStackedWidget* answers_ = nullptr;
  parts::BlankSheet* sheet_ = nullptr;
  parts::Words* headline_ = nullptr;
  parts::Words* engine_ = nullptr;
  parts::Words* alarm_ = nullptr;
  parts::Words* decades_ = nullptr;
  MeaningList* meanings_ = nullptr;
  parts::Segmented* drawn_ = nullptr;
  TimeLineView* timeLine_ = nullptr;
  TimeTable* table_ = nullptr;
  parts::FindingList* findings_ = nullptr;
};

}  // namespace ohmkin::castings
