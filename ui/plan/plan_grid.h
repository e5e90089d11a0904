#pragma once
#include <parts/fit.h>
#include <QAbstractTableModel>
#include <QTableView>
#include <vector>

/// Dashes against engines: a card for each pair, the engine that needs least marked in every row.
namespace ohmkin::plan {

struct GridCell {
  parts::Fit fit = parts::Fit::look;
  bool answered = false;
  bool best = false;
  QString part;      ///< "BR-2215", "No sender to recommend"
  QString added;     ///< "with bushing AD-12"; may be empty
  QString worst;     ///< "worst +1.0 K"; may be empty
  QString era;       ///< "later engine, 13 years"
  QString look;      ///< the one observation that would settle it
  QString sentence;  ///< the verdict, or why there is none
  QString buy;       ///< "BR-2215 + AD-12"
  QString branches;  ///< where several answers are possible
};

struct GridPicture {
  QStringList dashes;
  QStringList engines;
  std::vector<GridCell> cells;  ///< dash by dash
  [[nodiscard]] const GridCell& at(int dash, int engine) const {
    return cells.at(static_cast<std::size_t>(dash) * static_cast<std::size_t>(engines.size()) +
                    static_cast<std::size_t>(engine));
  }
};

class GridModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  using QAbstractTableModel::QAbstractTableModel;
  void setPicture(GridPicture picture);
  [[nodiscard]] const GridPicture& picture() const { return picture_; }
  /// Engines down and dashes across, instead of the other way.
  void turn(bool enginesDown);
  [[nodiscard]] bool enginesDown() const { return enginesDown_; }
  [[nodiscard]] int dashOf(const QModelIndex& index) const { return enginesDown_ ? index.column() : index.row(); }
  [[nodiscard]] int engineOf(const QModelIndex& index) const { return enginesDown_ ? index.row() : index.column(); }
  [[nodiscard]] QModelIndex at(int dash, int engine) const {
    return enginesDown_ ? index(engine, dash) : index(dash, engine);
  }
  [[nodiscard]] const GridCell& cell(const QModelIndex& index) const {
    return picture_.at(dashOf(index), engineOf(index));
  }
  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 private:
  [[nodiscard]] const QStringList& names(Qt::Orientation orientation) const;
  GridPicture picture_;
  bool enginesDown_ = false;
};

class PlanGrid : public QTableView {
  Q_OBJECT

 public:
  explicit PlanGrid(QWidget* parent = nullptr);
  /// Keeps the same pair chosen where it is still there, otherwise the best engine of the first dash.
  void display(GridPicture picture);
  [[nodiscard]] const GridPicture& picture() const { return model_.picture(); }
  [[nodiscard]] const GridModel& cells() const { return model_; }
  void choose(int dash, int engine) { setCurrentIndex(model_.at(dash, engine)); }
  /// Pixels; what is higher scrolls inside, so that what stands under the grid is seen.
  void showAtMost(int height);
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 signals:
  void chosen(int dash, int engine);

 protected:
  void resizeEvent(QResizeEvent* event) override;
  void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;

 private:
  void turnAsFits();
  void fit();
  GridModel model_;
  int most_ = 560;
};

}  // namespace ohmkin::plan
