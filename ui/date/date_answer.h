#pragma once
#include <date/meaning_list.h>
#include <date/time_line_view.h>
#include <date/time_table.h>
#include <parts/finding_list.h>
#include <parts/panel.h>
#include <parts/segmented.h>
#include <print/print_sheet.h>
#include <workflow/date_engine.h>
#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

namespace ohmkin::castings {

/// When the engine was assembled, what the codes can mean, the time line, and why.
class DateAnswerView : public QWidget {
  Q_OBJECT

 public:
  DateAnswerView(printing::MakeSheets sheets, QWidget* parent);
  void display(const workflow::DateAnswer& answer);
  void showTable(bool table) { drawn_->choose(table ? 1 : 0); }
  void toggleTable() { drawn_->choose(1 - drawn_->chosenIndex()); }

  [[nodiscard]] MeaningList& meanings() const { return *meanings_; }
  [[nodiscard]] TimeLineView& timeLine() const { return *timeLine_; }
  [[nodiscard]] TimeTable& table() const { return *table_; }
  [[nodiscard]] parts::FindingList& findings() const { return *findings_; }
  [[nodiscard]] QPushButton& print() const { return *print_; }
  [[nodiscard]] QString headline() const { return headline_->text(); }
  [[nodiscard]] QString engineWords() const { return engine_->text(); }

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  QVBoxLayout* makeWords();
  QVBoxLayout* makePictures();
  void fitFindings();
  parts::Words* headline_;
  parts::Words* engine_;
  parts::Words* alarm_;
  parts::Words* decades_;
  QPushButton* print_;
  MeaningList* meanings_;
  parts::Segmented* drawn_;
  TimeLineView* timeLine_;
  TimeTable* table_;
  parts::FindingList* findings_;
};

}  // namespace ohmkin::castings
