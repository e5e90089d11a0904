#pragma once
#include <parts/caution_panel.h>
#include <parts/panel.h>
#include <plan/plan_grid.h>

namespace ohmkin::plan {

/// Every pair side by side, the chosen one in words, and what to buy.
class PlanAnswer : public QWidget {
  Q_OBJECT

 public:
  explicit PlanAnswer(QWidget* parent = nullptr);
  void display(GridPicture picture, const QStringList& partsToBuy, const QStringList& cautions);
  [[nodiscard]] PlanGrid& grid() const { return *grid_; }
  [[nodiscard]] QString buyWords() const { return buy_->text(); }
  [[nodiscard]] QString pairWords() const { return verdict_->text(); }

 private:
  void displayPair(int dash, int engine);
  PlanGrid* grid_;
  parts::Words* pair_;
  parts::Words* verdict_;
  parts::Words* look_;
  parts::Words* buy_;
  parts::CautionPanel* cautions_;
};

}  // namespace ohmkin::plan
