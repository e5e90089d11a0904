#include <look/palette.h>
#include <look/type.h>
#include <parts/candidate_list.h>
#include <parts/words.h>
#include <QKeyEvent>
#include <QPainter>
#include <QScrollBar>

namespace ohmkin::parts {
namespace {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

constexpr int kSentenceLines = 4;
int gap() { return space(8); }
int pad() { return space(12); }
int shapeColumn() { return space(54); }

/// Where everything stands in a row of this width: the shape, the words, and the numbers at the right.
struct Columns {
  double words;
  double wordsWidth;
  double right;
  double rightWidth;
};

Columns columnsOf(const CandidateRow& row, double width) {
  const double most = width * 0.4;
  const double needed = std::max(look::metrics(Text::strong).horizontalAdvance(row.worst),
                                 look::metrics(Text::small).horizontalAdvance(row.shelf)) +
                        space(2);
  const double rightWidth = std::min(needed, most);
  const double right = width - space(16) - rightWidth;
  return {static_cast<double>(shapeColumn()), right - space(16) - shapeColumn(), right, rightWidth};
}

QString said(const CandidateRow& row) {
  QStringList all{row.part};
  for (const QString& piece : {row.note, spoken(row.fit), row.sentence, row.worst, row.shelf})
    if (!piece.isEmpty()) all << piece;
  return all.join(QStringLiteral(", "));
}

double rowHeight(const CandidateRow& row, double width) {
  const Columns columns = columnsOf(row, width);
  const double sentence = wrap(row.sentence, typeface(Text::body), columns.wordsWidth, kSentenceLines).height;
  const double left = look::metrics(Text::heading).lineSpacing() + space(4) + sentence;
  return left + 2 * pad();
}

}  // namespace

QSize CandidateDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
  const auto* list = qobject_cast<const CandidateList*>(option.widget);
  if (list == nullptr) return QStyledItemDelegate::sizeHint(option, index);
  const int width = list->viewport()->width();
  return {width, static_cast<int>(rowHeight(list->rows().row(index.row()), width)) + gap()};
}

void CandidateDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
  const auto* list = qobject_cast<const CandidateList*>(option.widget);
  if (list == nullptr) return;
  const CandidateRow& row = list->rows().row(index.row());
  const bool selected = option.state & QStyle::State_Selected;
  painter->save();
  const QRectF card = drawCard(*painter, option, gap());
  drawFit(*painter, QPointF(card.left() + shapeColumn() / 2.0, card.center().y()), space(18), row.fit);
  const Columns columns = columnsOf(row, option.rect.width());
  const double head = look::metrics(Text::heading).lineSpacing();
  const double top = card.top() + pad();
  const double left = option.rect.left() + columns.words;
  const QRectF headBox(left, top, columns.wordsWidth, head);
  drawWords(*painter, headBox, row.part, typeface(Text::heading), colour(row.refused ? Paint::quiet : Paint::ink), 1);
  if (!row.note.isEmpty()) {
    const double after =
        std::min(look::metrics(Text::heading).horizontalAdvance(row.part) + space(10), columns.wordsWidth);
    if (columns.wordsWidth - after > space(48))
      drawWords(*painter, headBox.adjusted(after, head - look::metrics(Text::small).lineSpacing() - space(1), 0, 0),
                row.note, typeface(Text::small), colour(Paint::quiet), 1);
  }
  drawWords(*painter, QRectF(left, top + head + space(4), columns.wordsWidth, card.height()), row.sentence,
            typeface(Text::body), colour(selected ? Paint::ink : Paint::quiet), kSentenceLines);

  const double right = option.rect.left() + columns.right;
  drawWords(*painter,
            QRectF(right, top + (head - look::metrics(Text::strong).lineSpacing()) / 2, columns.rightWidth, head),
            row.worst, typeface(Text::strong), colour(row.misreads ? Paint::warning : Paint::ink), 1, Qt::AlignRight);
  drawWords(*painter, QRectF(right, top + head + space(4), columns.rightWidth, head), row.shelf, typeface(Text::small),
            colour(selected ? Paint::ink : Paint::quiet), 1, Qt::AlignRight);
  drawCardFocus(*painter, option, card, *list);
  painter->restore();
}

CandidateList::CandidateList(QWidget* parent)
    : QListView(parent), model_([](const CandidateRow& row) { return row.part; }, said) {
  setModel(&model_);
  setItemDelegate(new CandidateDelegate(this));
  listOfCards(*this);
  setAccessibleName(tr("Senders, best first"));
  verticalScrollBar()->setSingleStep(space(24));
}

void CandidateList::setRows(std::vector<CandidateRow> rows) {
  const QString kept = currentIndex().isValid() ? model_.row(currentIndex().row()).part : QString();
  filling_ = true;
  model_.setRows(std::move(rows));
  int at = 0;
  for (int i = 0; i < model_.rowCount(); ++i)
    if (model_.row(i).part == kept) at = i;
  if (model_.rowCount() > 0) setCurrentIndex(model_.index(at));
  filling_ = false;
  fitHeight();
  if (model_.rowCount() > 0) emit chosen(model_.row(at).index);
}

void CandidateList::choose(int index) {
  for (int i = 0; i < model_.rowCount(); ++i)
    if (model_.row(i).index == index) setCurrentIndex(model_.index(i));
}

int CandidateList::contentsHeight() const {
  double height = 0;
  for (int i = 0; i < model_.rowCount(); ++i)
    height += static_cast<int>(rowHeight(model_.row(i), viewport()->width())) + gap();
  return static_cast<int>(height);
}

QSize CandidateList::sizeHint() const { return {space(560), minimumSizeHint().height()}; }

QSize CandidateList::minimumSizeHint() const {
  return {space(320), std::min(space(140), std::max(space(48), contentsHeight()))};
}

void CandidateList::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
  QListView::currentChanged(current, previous);
  if (!filling_ && current.isValid()) emit chosen(model_.row(current.row()).index);
}

void CandidateList::resizeEvent(QResizeEvent* event) {
  QListView::resizeEvent(event);
  scheduleDelayedItemsLayout();
  fitHeight();
}

void CandidateList::fitHeight() {
  setMaximumHeight(std::max(minimumSizeHint().height(), contentsHeight()));
  updateGeometry();
}

void CandidateList::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Left || event->key() == Qt::Key_Right) {
    emit nudged(event->key() == Qt::Key_Right ? 1 : -1);
    return;
  }
  QListView::keyPressEvent(event);
}

}  // namespace ohmkin::parts
