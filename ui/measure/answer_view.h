#pragma once
#include <measure/answer_words.h>
#include <measure/curve_plot.h>
#include <measure/suspect_bars.h>
#include <parts/finding_list.h>
#include <parts/look_card.h>
#include <QBoxLayout>

namespace ohmkin::measure {

/// All that can be said of the readings so far: the plot, whose curve it is, what to measure next, whether it is good.
class AnswerView : public QWidget {
  Q_OBJECT

 public:
  explicit AnswerView(QWidget* parent = nullptr);
  void display(const workflow::BenchFamilies& families, const workflow::BenchAnswer& answer, const DisplayUnits& units);
  [[nodiscard]] CurvePlot& plot() const { return *plot_; }
  [[nodiscard]] SuspectBars& bars() const { return *bars_; }
  [[nodiscard]] VerdictCard& verdict() const { return *verdict_; }
  [[nodiscard]] parts::LookCard& next() const { return *next_; }
  [[nodiscard]] parts::FindingList& remarks() const { return *remarks_; }
  [[nodiscard]] QString fitWords() const { return fit_->text(); }

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  void displayNext(const workflow::BenchAnswer& answer, const DisplayUnits& units);
  CurvePlot* plot_;
  parts::Words* fit_;
  parts::LookCard* next_;
  SuspectBars* bars_;
  parts::Words* noBars_;
  VerdictCard* verdict_;
  parts::FindingList* remarks_;
  QBoxLayout* pair_;
};

/// A sheet with a heading over what stands on it.
parts::Panel* headedPanel(const QString& heading, const std::vector<QWidget*>& below, QWidget* parent);

}  // namespace ohmkin::measure
