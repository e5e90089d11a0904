#pragma once
#include <parts/words.h>
#include <QAbstractListModel>
#include <QListView>
#include <QStyleOptionViewItem>
#include <functional>
#include <vector>

/// Lists whose rows are cards: for the eye, the arrow keys and a screen reader.
namespace ohmkin::parts {

/// Rows that are shown by a delegate and said in words.
template <class Row>
class CardModel : public QAbstractListModel {
 public:
  using Said = std::function<QString(const Row&)>;
  /// `name`: in one word; `spoken`: all of it.
  CardModel(Said name, Said spoken) : name_(std::move(name)), spoken_(std::move(spoken)) {}

  void setRows(std::vector<Row> rows) {
    beginResetModel();
    rows_ = std::move(rows);
    endResetModel();
  }
  void addRows(std::vector<Row> more) {
    if (more.empty()) return;
    beginInsertRows({}, rowCount(), rowCount() + static_cast<int>(more.size()) - 1);
    rows_.insert(rows_.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
    endInsertRows();
  }
  [[nodiscard]] const Row& row(int i) const { return rows_.at(static_cast<std::size_t>(i)); }
  [[nodiscard]] const std::vector<Row>& rows() const { return rows_; }
  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
  }
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override {
    if (!index.isValid()) return {};
    switch (role) {
      case Qt::DisplayRole:
        return name_(row(index.row()));
      case Qt::ToolTipRole:
        return plainTip(spoken_(row(index.row())));
      case Qt::AccessibleTextRole:
        return spoken_(row(index.row()));
      default:
        return {};
    }
  }

 private:
  Said name_;
  Said spoken_;
  std::vector<Row> rows_;
};

/// A list of cards, one chosen: no frame, scrolled by pixels, the rows as wide as it is.
void listOfCards(QListView& list);
/// The card of a row with `gap` under it, as it is chosen or under the mouse; where it lies.
QRectF drawCard(QPainter& painter, const QStyleOptionViewItem& option, int gap);
/// Around the card that has the keyboard, where `list` has it: drawn last.
void drawCardFocus(QPainter& painter, const QStyleOptionViewItem& option, const QRectF& card, const QListView& list);

}  // namespace ohmkin::parts
