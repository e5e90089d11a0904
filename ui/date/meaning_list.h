#pragma once
#include <QAbstractListModel>
#include <QListView>
#include <vector>

/// What each code can mean: its likely days with their chances, and what was assumed to read it so.
namespace ohmkin::castings {

struct MeaningRow {
  bool heading = false;  ///< the code itself; the rows below are its meanings
  QString words;         ///< "head · H 22 1", "22 Aug 1981", "no date reads so"
  QString aside;         ///< "casting 30418", "8 read as 3 · month letter, day, year digit"
  double chance = -1;    ///< 0 … 1; below 0: none to show
};

class MeaningModel : public QAbstractListModel {
  Q_OBJECT

 public:
  using QAbstractListModel::QAbstractListModel;
  void setRows(std::vector<MeaningRow> rows);
  [[nodiscard]] const MeaningRow& row(int i) const { return rows_.at(static_cast<std::size_t>(i)); }
  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;

 private:
  std::vector<MeaningRow> rows_;
};

class MeaningList : public QListView {
  Q_OBJECT

 public:
  explicit MeaningList(QWidget* parent = nullptr);
  void display(std::vector<MeaningRow> rows);
  [[nodiscard]] const MeaningModel& rows() const { return model_; }
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  MeaningModel model_;
};

/// "97 %", "over 99 %", "under 1 %".
QString chanceWords(double probability);

}  // namespace ohmkin::castings
