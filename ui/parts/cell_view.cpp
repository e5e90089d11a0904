#include <look/palette.h>
#include <look/style.h>
#include <look/type.h>
#include <parts/cell_view.h>
#include <parts/entry.h>
#include <parts/words.h>
#include <QHeaderView>
#include <QKeyEvent>
#include <QPainter>
#include <QScrollBar>
#include <QStyledItemDelegate>
#include <QVBoxLayout>

namespace ohmkin::parts {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

class CellDelegate : public QStyledItemDelegate {
 public:
  explicit CellDelegate(CellView& view) : QStyledItemDelegate(&view), view_(view) {}

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    painter->save();
    const QRectF box(option.rect);
    const bool wrong = !index.data(kCellWrong).toString().isEmpty();
    if (wrong) painter->fillRect(box, colour(Paint::warningWash));
    else if (option.state & QStyle::State_Selected) painter->fillRect(box, colour(Paint::accentWash));
    painter->setPen(QPen(colour(Paint::line), 1));
    painter->drawLine(QPointF(box.left(), box.bottom() + 0.5), QPointF(box.right(), box.bottom() + 0.5));
    const double line = look::metrics(Text::small).lineSpacing();
    QRectF words(box.left() + space(8), box.center().y() - line / 2, box.width() - space(12), line);
    if (wrong) {  // not by colour alone
      drawWords(*painter, QRectF(box.right() - space(12), words.top(), space(10), line), QStringLiteral("!"),
                typeface(Text::strong), colour(Paint::warning), 1);
      words.setRight(words.right() - space(10));
    }
    const bool waits = index.data(kCellWaits).toBool();
    const Paint ink = wrong ? Paint::warning : waits || index.data(kCellQuiet).toBool() ? Paint::quiet : Paint::ink;
    const bool right = index.data(Qt::TextAlignmentRole).toInt() & Qt::AlignRight;
    drawWords(*painter, words, waits ? QStringLiteral("…") : index.data().toString(), typeface(Text::small),
              colour(ink), 1, right ? Qt::AlignRight : Qt::AlignLeft);
    if ((option.state & QStyle::State_HasFocus) && view_.hasFocus())
      look::drawFocusRing(*painter, box.adjusted(0, 0, 0, -1), space(4));
    painter->restore();
  }

  QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const QString name = index.model()->headerData(index.column(), Qt::Horizontal).toString();
    const QStringList choices = index.data(kCellChoices).toStringList();
    if (!choices.isEmpty()) {
      auto* choice = new Choice(name, parent);
      choice->addItems(choices);
      connect(choice, &QComboBox::activated, this, [this, choice] {
        auto* self = const_cast<CellDelegate*>(this);  // NOLINT: Qt asks for editors of a const delegate
        emit self->commitData(choice);
        emit self->closeEditor(choice);
      });
      return choice;
    }
    auto* edit = new Entry(name, parent);
    edit->setTextMargins(space(6), 0, space(6), 0);
    edit->setFont(typeface(Text::small));
    edit->setAcceptDrops(false);
    const QPersistentModelIndex at(index);
    connect(edit, &QLineEdit::textChanged, edit, [this, edit, at, box = option.rect](const QString& text) {
      const QString sentence = view_.check_ && edit->isModified() ? view_.check_(at, text) : QString();
      edit->setWrong(!sentence.isEmpty());
      edit->setAccessibleDescription(sentence);
      view_.complain(sentence, box);
    });
    connect(edit, &QObject::destroyed, &view_, [view = &view_] { view->complain({}, {}); });
    return edit;
  }

  void setEditorData(QWidget* editor, const QModelIndex& index) const override {
    if (auto* choice = qobject_cast<Choice*>(editor)) choice->setCurrentText(index.data(Qt::EditRole).toString());
    else if (auto* edit = qobject_cast<Entry*>(editor)) edit->setText(index.data(Qt::EditRole).toString());
  }

  void setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const override {
    if (auto* choice = qobject_cast<Choice*>(editor)) model->setData(index, choice->currentText());
    else if (auto* edit = qobject_cast<Entry*>(editor)) model->setData(index, edit->text());
  }

  void updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                            const QModelIndex& /*index*/) const override {
    QRect box = option.rect;
    const int wide = std::max(box.width(), space(140));
    box.setWidth(std::min(wide, std::max(box.width(), view_.viewport()->width() - box.left())));
    editor->setGeometry(box);
  }

 protected:
  /// What is wrong is not taken: Enter and Tab wait for it to be mended, and leaving gives it up.
  bool eventFilter(QObject* object, QEvent* event) override {
    auto* edit = qobject_cast<Entry*>(object);
    if (edit == nullptr) return QStyledItemDelegate::eventFilter(object, event);
    const bool stuck = edit->wrong() && !view_.keepsWrong_;
    if (event->type() == QEvent::KeyPress) {
      const int key = static_cast<QKeyEvent*>(event)->key();  // NOLINT: the type was looked at
      const bool takes = key == Qt::Key_Return || key == Qt::Key_Enter || key == Qt::Key_Tab || key == Qt::Key_Backtab;
      if (takes && stuck) return true;
    }
    if (event->type() == QEvent::FocusOut && stuck) {
      emit closeEditor(edit, RevertModelCache);
      return false;
    }
    return QStyledItemDelegate::eventFilter(object, event);
  }

 private:
  CellView& view_;
};

CellView::CellView(const QString& name, QWidget* parent)
    : QTableView(parent),
      note_(new parts::Panel(parts::Panel::Kind::caution, viewport())),
      said_(new Words({}, note_)) {
  setItemDelegate(new CellDelegate(*this));
  setFrameShape(QFrame::NoFrame);
  setShowGrid(false);
  setEditTriggers(QAbstractItemView::NoEditTriggers);
  setSelectionBehavior(QAbstractItemView::SelectRows);
  setSelectionMode(QAbstractItemView::SingleSelection);
  setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
  setTabKeyNavigation(false);  // Tab leaves the table; the arrow keys go through it
  setWordWrap(false);
  viewport()->setAutoFillBackground(false);
  verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
  verticalHeader()->setMinimumSectionSize(1);
  verticalHeader()->setDefaultSectionSize(
      std::max(space(28), static_cast<int>(look::metrics(Text::small).lineSpacing()) + space(12)));
  verticalHeader()->hide();
  horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  horizontalHeader()->setHighlightSections(false);
  horizontalHeader()->setFont(typeface(Text::small));
  horizontalHeader()->setMinimumSectionSize(space(40));
  horizontalHeader()->setStretchLastSection(true);
  setFont(typeface(Text::small));
  setAccessibleName(name);
  said_->sized(typeface(Text::small))->painted(Paint::warning);
  auto* column = new QVBoxLayout(note_);
  column->setContentsMargins(space(10), space(6), space(10), space(6));
  column->addWidget(said_);
  note_->hide();
}

void CellView::setCheck(Check check, bool keepsWrong) {
  check_ = std::move(check);
  keepsWrong_ = keepsWrong;
  setEditTriggers(QAbstractItemView::AnyKeyPressed | QAbstractItemView::DoubleClicked |
                  QAbstractItemView::EditKeyPressed);
}

void CellView::complain(const QString& sentence, const QRect& at) {
  said_->setText(sentence);
  note_->setVisible(!sentence.isEmpty());
  if (sentence.isEmpty()) return;
  const int wide = std::min(space(320), viewport()->width());
  note_->resize(
      wide, note_->layout()->hasHeightForWidth() ? note_->layout()->heightForWidth(wide) : note_->sizeHint().height());
  const bool below = at.bottom() + note_->height() + space(4) <= viewport()->height();
  note_->move(std::clamp(at.left(), 0, std::max(0, viewport()->width() - wide)),
              below ? at.bottom() + space(4) : std::max(0, at.top() - note_->height() - space(4)));
  note_->raise();
}

void CellView::showAtMost(int rows, int atLeast) {
  most_ = rows;
  least_ = atLeast;
  setSizePolicy(QSizePolicy::Expanding, rows > 0 ? QSizePolicy::Fixed : QSizePolicy::Expanding);
  updateGeometry();
}

QSize CellView::sizeHint() const {
  const int rows = model() == nullptr ? 0 : model()->rowCount();
  const int seen = most_ == 0 ? 6 : std::clamp(rows, least_, most_);
  int high = horizontalHeader()->sizeHint().height() + 2 + seen * verticalHeader()->defaultSectionSize();
  if (most_ != 0 && horizontalHeader()->length() > width()) high += horizontalScrollBar()->sizeHint().height();
  return {space(320), high};
}

QSize CellView::minimumSizeHint() const { return {space(160), most_ == 0 ? space(120) : sizeHint().height()}; }

void CellView::fitColumns(int mostRows) {
  if (model() == nullptr) return;
  const QFontMetricsF m = look::metrics(Text::small);
  for (int column = 0; column < model()->columnCount(); ++column) {
    double wide = m.horizontalAdvance(model()->headerData(column, Qt::Horizontal).toString()) + space(14);
    for (int row = 0; row < std::min(model()->rowCount(), mostRows); ++row)
      wide = std::max(wide, m.horizontalAdvance(model()->index(row, column).data().toString()));
    horizontalHeader()->resizeSection(column, std::clamp(static_cast<int>(wide) + space(20), space(56), space(260)));
  }
  updateGeometry();
}

/// Rows that come while the keyboard waits here are gone along from the first.
void CellView::rowsInserted(const QModelIndex& parent, int first, int last) {
  QTableView::rowsInserted(parent, first, last);
  if (hasFocus() && !currentIndex().isValid()) setCurrentIndex(model()->index(0, 0));
}

void CellView::focusInEvent(QFocusEvent* event) {
  QTableView::focusInEvent(event);
  if (!currentIndex().isValid() && model() != nullptr && model()->rowCount() > 0) setCurrentIndex(model()->index(0, 0));
  viewport()->update();
}

void CellView::focusOutEvent(QFocusEvent* event) {
  QTableView::focusOutEvent(event);
  viewport()->update();
}

void CellView::keyPressEvent(QKeyEvent* event) {
  const int key = event->key();
  if ((key == Qt::Key_Return || key == Qt::Key_Enter) && state() != EditingState && currentIndex().isValid()) {
    emit opened(currentIndex());
    return;
  }
  if (key == Qt::Key_Delete && event->modifiers() == Qt::ControlModifier && currentIndex().isValid()) {
    emit removeAsked(currentIndex().row());
    return;
  }
  QTableView::keyPressEvent(event);
}

}  // namespace ohmkin::parts
