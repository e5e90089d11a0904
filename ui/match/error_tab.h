#pragma once
#include <match/error_table.h>
#include <match/sampler.h>
#include <parts/busy_line.h>
#include <parts/error_plot.h>
#include <parts/panel.h>
#include <workflow/answer.h>
#include <QPushButton>
#include <QShortcut>

namespace ohmkin::match {

/// The error over the temperature, in a plot and in words; its band can be checked by Monte Carlo.
class ErrorTab : public QWidget {
  Q_OBJECT

 public:
  explicit ErrorTab(QWidget* parent = nullptr);
  /// A check that runs is cancelled, and so is what it would have found.
  void display(const workflow::Branch& branch, const workflow::Candidate* candidate, const DisplayUnits& units);
  [[nodiscard]] parts::ErrorPlot& plot() const { return *plot_; }
  [[nodiscard]] ErrorTable& table() const { return *table_; }
  void toggleTable();
  [[nodiscard]] QPushButton& check() const { return *check_; }
  [[nodiscard]] bool checking() const { return sampler_.running(); }
  [[nodiscard]] QString said() const { return summary_->text(); }

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  void checkOrCancel();
  void showChecked(const std::shared_ptr<const SampledOrNot>& result);
  void nameCheck();
  parts::ErrorPlot* plot_;
  ErrorTable* table_;
  parts::BusyLine* busy_;
  parts::Words* summary_;
  QPushButton* asTable_;
  QPushButton* check_;
  QShortcut* escape_;
  Sampler sampler_;
  Sampler::Work work_;
  DisplayUnits units_;
  QString words_;  ///< the plot in words
  bool checked_ = false;
};

}  // namespace ohmkin::match
