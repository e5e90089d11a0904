#pragma once
#include <parts/circuit_view.h>
#include <parts/error_plot.h>
#include <parts/failure_table.h>
#include <parts/finding_list.h>
#include <parts/panel.h>
#include <parts/segmented.h>
#include <quantity/print.h>
#include <workflow/answer.h>
#include <QScrollArea>
#include <QStackedWidget>

namespace ohmkin::match {

/// Three ways to look into the chosen sender: its error over the temperature, why it was judged so, and what resistors
/// could do.
class DetailPanel : public parts::Panel {
  Q_OBJECT

 public:
  enum Tab { error, why, trim };
  explicit DetailPanel(QWidget* parent = nullptr);
  void display(const workflow::Answer& answer, const workflow::Branch& branch, const workflow::Candidate* candidate,
               const DisplayUnits& units);
  void setCoolant(Temperature coolant);
  void showTab(Tab tab);
  void showTopic(const QString& topic);
  [[nodiscard]] Tab tab() const { return static_cast<Tab>(sheets_->currentIndex()); }
  [[nodiscard]] const parts::ErrorPlot& plot() const { return *plot_; }

 signals:
  void pointed(Temperature coolant);

 private:
  void present(Tab tab);
  void displayTrim(const workflow::Candidate* candidate);
  parts::Segmented* tabs_;
  parts::Words* title_;
  QStackedWidget* sheets_;
  parts::ErrorPlot* plot_;
  parts::Words* summary_;
  parts::FindingList* findings_;
  parts::CircuitView* circuit_;
  parts::Words* trimWords_;
  parts::FailureTable* failures_;
  parts::Words* ratings_;
  parts::Words* minds_;
  DisplayUnits units_;
  Tab wanted_ = error;  ///< what the person chose last, where it can be shown
};

}  // namespace ohmkin::match
