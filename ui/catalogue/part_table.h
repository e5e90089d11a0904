#pragma once
#include <parts/cell_view.h>
#include <workflow/edit_session.h>
#include <QAbstractTableModel>
#include <QPushButton>

namespace ohmkin::shelves {

/// Rows of one part of a thing; the last, empty one is where a new one is typed.
class PartModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  PartModel(workflow::EditPart part, DisplayUnits units, QObject* parent);
  void setRows(const std::vector<workflow::FieldTexts>& rows);
  [[nodiscard]] std::vector<workflow::FieldTexts> rows() const;  ///< without empty ones at the end
  [[nodiscard]] const workflow::EditPart& part() const { return part_; }
  [[nodiscard]] QString complaint(const QModelIndex& index, const QString& text) const;
  void setWrong(std::size_t row, const std::string& field, const QString& sentence);  ///< said by saving
  void clearSaid();
  [[nodiscard]] QString firstWrong() const;  ///< of what was typed; empty: none
  void remove(int row);
  void move(int row, int by);

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
  [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
  bool setData(const QModelIndex& index, const QVariant& value, int role = Qt::EditRole) override;

 signals:
  void changed();  ///< by the person

 private:
  struct Cell {
    QString text;
    QString wrong;  ///< as typed
    QString said;   ///< by saving
  };
  [[nodiscard]] std::vector<Cell> emptyRow() const { return std::vector<Cell>(part_.fields.size()); }
  static bool empty(const std::vector<Cell>& row);
  workflow::EditPart part_;
  DisplayUnits units_;
  std::vector<std::vector<Cell>> rows_;
};

/// Marks, points, ports: a small table within the form.
class PartTable : public QWidget {
  Q_OBJECT

 public:
  PartTable(const workflow::EditPart& part, const DisplayUnits& units, QWidget* parent);
  [[nodiscard]] PartModel& model() const { return *model_; }
  [[nodiscard]] parts::CellView& view() const { return *view_; }
  [[nodiscard]] QPushButton& removeButton() const { return *remove_; }

 signals:
  void changed();

 private:
  void fit();
  PartModel* model_;
  parts::CellView* view_;
  parts::Words* wrong_;
  QPushButton* remove_;
  QPushButton* earlier_;
};

}  // namespace ohmkin::shelves
