#pragma once
#include <parts/card_list.h>
#include <parts/fit.h>
#include <QStyledItemDelegate>

/// The ranked senders, best first: a list for the eye and the arrow keys.
namespace ohmkin::parts {

struct CandidateRow {
  Fit fit = Fit::look;
  QString part;           ///< "BR-2215", with what is added: "AM-4107 + 510 Ω"
  QString note;           ///< beside the part: "in the head now", "replaced by BR-2300"; may be empty
  QString sentence;       ///< the verdict
  QString worst;          ///< "worst +1 K"
  QString shelf;          ///< "bin 4C · 6"
  bool misreads = false;  ///< the worst error is one to be warned of
  bool refused = false;
  int index = 0;  ///< place in the whole ranking
};

class CandidateDelegate : public QStyledItemDelegate {
  Q_OBJECT

 public:
  using QStyledItemDelegate::QStyledItemDelegate;
  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
};

class CandidateList : public QListView {
  Q_OBJECT

 public:
  explicit CandidateList(QWidget* parent = nullptr);
  /// Keeps the same part chosen where it is still there, otherwise chooses the first.
  void setRows(std::vector<CandidateRow> rows);
  void choose(int index);  ///< by place in the whole ranking
  [[nodiscard]] const CardModel<CandidateRow>& rows() const { return model_; }
  [[nodiscard]] int contentsHeight() const;  ///< what it would need to show every row
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 signals:
  void chosen(int index);  ///< place in the whole ranking
  void nudged(int steps);  ///< left and right: the list has no use for them, the temperature has

 protected:
  void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
  void resizeEvent(QResizeEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void fitHeight();  ///< never higher than its rows: what stands under it follows at once
  CardModel<CandidateRow> model_;
  bool filling_ = false;
};

}  // namespace ohmkin::parts
