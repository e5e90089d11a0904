#pragma once
#include <parts/panel.h>
#include <print/print_sheet.h>
#include <QPushButton>

namespace ohmkin::plan {

/// What can be done with a plan: open, save, copy, print; and what became of it.
class PlanHead : public QWidget {
  Q_OBJECT

 public:
  PlanHead(printing::MakeSheets sheets, QWidget* parent);
  void enable(bool answered);  ///< saving, copying and printing want an answer
  void tell(const QString& words) { told_->setText(words); }
  void chooseSave();  ///< asks where to, then saveTo
  void chooseOpen();  ///< asks which, then openFrom
  [[nodiscard]] QPushButton& print() const { return *print_; }

 signals:
  void saveTo(const QString& file);
  void openFrom(const QString& file);
  void copied();

 private:
  QPushButton* save_;
  QPushButton* copy_;
  QPushButton* print_;
  parts::Words* told_;
};

}  // namespace ohmkin::plan
