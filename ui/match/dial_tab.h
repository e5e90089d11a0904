#pragma once
#include <parts/panel.h>
#include <parts/paper_view.h>
#include <print/print_sheet.h>
#include <workflow/answer.h>
#include <QPushButton>

namespace ohmkin::match {

/// The dial re-marked for the chosen sender, and what a driver has to know where nothing is changed.
class DialTab : public QWidget {
  Q_OBJECT

 public:
  explicit DialTab(QWidget* parent = nullptr);
  /// What is not looked at is not drawn: the dial is made when the tab is first seen. All three are kept by the caller
  /// until the next call.
  void display(const workflow::Answer* answer, const workflow::Branch* branch, const workflow::Candidate* candidate,
               const DisplayUnits& units);
  [[nodiscard]] QString said() const;
  [[nodiscard]] QPushButton& print() const { return *print_; }
  [[nodiscard]] bool drawn() const { return !paper_->blank(); }

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  void draw();
  [[nodiscard]] Expected<printing::Sheets> offsetCard() const;
  [[nodiscard]] Expected<printing::Sheets> remarkedDial() const;
  parts::Words* driver_;
  parts::PaperView* paper_;
  parts::Words* remarks_;
  QPushButton* print_;
  const workflow::Answer* answer_ = nullptr;
  const workflow::Branch* branch_ = nullptr;
  const workflow::Candidate* candidate_ = nullptr;
  DisplayUnits units_;
  bool stale_ = false;
};

}  // namespace ohmkin::match
