#pragma once
#include <parts/panel.h>
#include <QTableView>
#include <functional>

/// A table as the program draws them, with cells that are edited where they stand and checked as they are typed.
namespace ohmkin::parts {

/// What a model says of its cells beside the text.
enum CellRole {
  kCellWrong = Qt::UserRole + 101,  ///< QString: why what stands in it is not understood; empty: it is
  kCellQuiet,                       ///< bool: read second
  kCellChoices,                     ///< QStringList: the only texts there are
  kCellWaits                        ///< bool: not read yet
};

class CellView : public QTableView {
  Q_OBJECT

 public:
  /// Why a text would not do in a cell, while it is typed; empty: it would.
  using Check = std::function<QString(const QModelIndex&, const QString& text)>;

  explicit CellView(const QString& name, QWidget* parent = nullptr);
  /// `keepsWrong`: a wrong text stays in the cell, marked, to be mended later; otherwise the cell's editor stays open
  /// until it is right or given up.
  void setCheck(Check check, bool keepsWrong);
  [[nodiscard]] QString complaint() const { return note_->isHidden() ? QString() : said_->text(); }
  /// As high as its rows, but not higher than so many and not lower than so many; 0: takes what room there is.
  void showAtMost(int rows, int atLeast = 1);
  void fitColumns(int mostRows = 60);  ///< to their words, within reason
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 signals:
  void opened(const QModelIndex& index);  ///< Enter, or a double click, where nothing is edited
  void removeAsked(int row);              ///< Ctrl+Delete

 protected:
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void rowsInserted(const QModelIndex& parent, int first, int last) override;

 private:
  friend class CellDelegate;
  void complain(const QString& sentence, const QRect& at);
  Check check_;
  bool keepsWrong_ = false;
  int most_ = 0;
  int least_ = 1;
  parts::Panel* note_;  // QFrame has a Panel of its own
  Words* said_;
};

}  // namespace ohmkin::parts
