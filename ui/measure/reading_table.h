#pragma once
#include <measure/reading_rows.h>
#include <QTableWidget>

namespace ohmkin::measure {

/// Readings, typed with the keyboard alone: Enter goes from the bath to the ohms to the next row; Tab goes through
/// every cell of a row; Space ticks; a block copied from a spreadsheet is pasted over as many rows as it has.
class ReadingTable : public QTableWidget {
  Q_OBJECT

 public:
  explicit ReadingTable(QWidget* parent = nullptr);
  [[nodiscard]] std::vector<RowText> rows() const;
  void setRows(const std::vector<RowText>& rows);
  /// Cells that are wrong, and rows of which something is to be said.
  void setTroubles(const std::vector<RowTrouble>& troubles);
  [[nodiscard]] const std::vector<RowTrouble>& troubles() const { return troubles_; }
  void setBathHeading(const QString& words);
  void pasteText(const QString& text);  ///< from the current cell on
  void takeKeyboard();                  ///< to the first cell that is empty
  [[nodiscard]] bool wrong(int row, int column) const;
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 signals:
  void changed();
  void rowChosen(int row);

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  void advance();  ///< Enter: to the next cell that is asked for
  void copyChosen() const;
  void clearChosen();
  void toggle(QTableWidgetItem* cell);
  void settle();  ///< one empty row at the end, always
  void fitColumns();
  QTableWidgetItem* cellAt(int row, int column);
  std::vector<RowTrouble> troubles_;
  bool filling_ = false;
};

}  // namespace ohmkin::measure
