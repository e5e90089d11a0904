#pragma once
#include <parts/circuit_view.h>
#include <parts/failure_table.h>
#include <parts/panel.h>
#include <print/print_sheet.h>
#include <workflow/answer.h>
#include <QPushButton>

namespace ohmkin::match {

/// The resistors proposed with the chosen sender, what fails how, and its sheet to print.
class TrimTab : public QWidget {
  Q_OBJECT

 public:
  explicit TrimTab(QWidget* parent = nullptr);
  /// Both are kept by the caller until the next call. Only for a candidate that has a trim.
  void display(const workflow::Branch* branch, const workflow::Candidate* candidate, const DisplayUnits& units);
  void forget();
  [[nodiscard]] QPushButton& print() const { return *print_; }

 private:
  [[nodiscard]] Expected<printing::Sheets> sheet() const;
  parts::Words* words_;
  QPushButton* print_;
  parts::CircuitView* circuit_;
  parts::FailureTable* failures_;
  parts::Words* minds_;
  parts::Words* ratings_;
  const workflow::Branch* branch_ = nullptr;
  const workflow::Candidate* candidate_ = nullptr;
  DisplayUnits units_;
};

}  // namespace ohmkin::match
