#include <look/palette.h>
#include <look/style.h>
#include <look/type.h>
#include <parts/entry.h>
#include <parts/field_frame.h>
#include <parts/words.h>
#include <QEvent>
#include <QKeyEvent>
#include <QListView>
#include <QPainter>
#include <QStyledItemDelegate>

namespace ohmkin::parts {
namespace {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

int fieldHeight() { return static_cast<int>(look::metrics(Text::body).lineSpacing()) + space(16); }

class RowDelegate : public QStyledItemDelegate {
 public:
  using QStyledItemDelegate::QStyledItemDelegate;

  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& /*option*/, const QModelIndex& index) const override {
    const QFontMetricsF m = look::metrics(Text::body);
    return {static_cast<int>(m.horizontalAdvance(index.data().toString())) + space(40),
            static_cast<int>(m.lineSpacing()) + space(12)};
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const QRectF box(option.rect);
    if (option.state & QStyle::State_Selected) {
      painter->setPen(QPen(colour(Paint::accent), 1));
      painter->setBrush(colour(Paint::accentWash));
      painter->drawRoundedRect(box.adjusted(2.5, 0.5, -2.5, -0.5), space(6), space(6));
    }
    const double line = look::metrics(Text::body).lineSpacing();
    drawWords(*painter, QRectF(box.left() + space(12), box.center().y() - line / 2, box.width() - space(20), line),
              index.data().toString(), typeface(Text::body), colour(Paint::ink), 1);
    painter->restore();
  }
};

}  // namespace

void makeRoomy(QAbstractItemView& list) { list.setItemDelegate(new RowDelegate(&list)); }

Entry::Entry(const QString& name, QWidget* parent) : QLineEdit(parent) {
  setAccessibleName(name);
  setFrame(false);
  setTextMargins(space(10), 0, space(10), 0);
  setMaxLength(400);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  tintField(*this);
}

void Entry::setWrong(bool wrong) {
  if (wrong == wrong_) return;
  wrong_ = wrong;
  update();
}

QSize Entry::sizeHint() const { return {space(120), fieldHeight()}; }
QSize Entry::minimumSizeHint() const { return {space(48), fieldHeight()}; }

void Entry::paintEvent(QPaintEvent* event) {
  {
    QPainter painter(this);
    drawField(painter, QRectF(rect()), hasFocus(), wrong_);
  }
  QLineEdit::paintEvent(event);
}

void Entry::keyPressEvent(QKeyEvent* event) {
  const int key = event->key();
  if (key == Qt::Key_Return || key == Qt::Key_Enter || key == Qt::Key_Down || key == Qt::Key_Up) {
    emit left(key == Qt::Key_Up ? -1 : 1);
    return;
  }
  QLineEdit::keyPressEvent(event);
}

void Entry::changeEvent(QEvent* event) {
  QLineEdit::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) tintField(*this);
}

Choice::Choice(const QString& name, QWidget* parent) : QComboBox(parent) {
  setAccessibleName(name);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  setMaxVisibleItems(16);
  auto* list = new QListView(this);  // a list under the field; the style's own would cover it like a menu
  list->setFrameShape(QFrame::NoFrame);
  setView(list);
  setItemDelegate(new RowDelegate(this));
  setFocusPolicy(Qt::StrongFocus);
}

QSize Choice::sizeHint() const { return {space(120), fieldHeight()}; }
QSize Choice::minimumSizeHint() const { return {space(72), fieldHeight()}; }

void Choice::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  drawField(painter, QRectF(rect()), hasFocus());
  const double arrow = space(4);
  const double line = look::metrics(Text::body).lineSpacing();
  drawWords(painter, QRectF(space(11), (height() - line) / 2, width() - space(34), line), currentText(),
            typeface(Text::body), colour(Paint::ink), 1);
  const QPointF tip(width() - space(15), height() / 2.0 + arrow / 2);
  painter.setPen(QPen(colour(Paint::quiet), space(1.6), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  painter.setBrush(Qt::NoBrush);
  painter.drawPolyline(QPolygonF({tip + QPointF(-arrow, -arrow), tip, tip + QPointF(arrow, -arrow)}));
}

void Choice::wheelEvent(QWheelEvent* event) { event->ignore(); }

Tick::Tick(const QString& words, QWidget* parent) : QCheckBox(words, parent) {
  setAccessibleName(words);
  setFocusPolicy(Qt::StrongFocus);
  setSizePolicy(QSizePolicy::Minimum, QSizePolicy::Fixed);
}

QSize Tick::sizeHint() const {
  return {static_cast<int>(look::metrics(Text::body).horizontalAdvance(text())) + space(32), fieldHeight()};
}

void Tick::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const double size = space(16);
  const QRectF box(space(3) + 0.5, (height() - size) / 2.0, size, size);
  painter.setPen(QPen(colour(isChecked() ? Paint::accent : Paint::edge), 1));
  painter.setBrush(colour(isChecked() ? Paint::accent : Paint::panel));
  painter.drawRoundedRect(box, space(4), space(4));
  if (isChecked()) {
    painter.setPen(QPen(colour(Paint::panel), space(2), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    const auto at = [&](double x, double y) { return box.topLeft() + QPointF(x * size, y * size); };
    painter.drawPolyline(QPolygonF({at(0.25, 0.52), at(0.43, 0.7), at(0.76, 0.32)}));
  }
  const double line = look::metrics(Text::body).lineSpacing();
  drawWords(painter, QRectF(box.right() + space(7), (height() - line) / 2, width() - box.right(), line), text(),
            typeface(Text::body), colour(Paint::ink), 1);
  if (hasFocus()) look::drawFocusRing(painter, QRectF(rect()).adjusted(0, space(3), 0, -space(3)), space(6));
}

}  // namespace ohmkin::parts
