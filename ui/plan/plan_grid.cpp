#include <look/palette.h>
#include <look/style.h>
#include <look/type.h>
#include <parts/words.h>
#include <plan/plan_grid.h>
#include <QAbstractButton>
#include <QEvent>
#include <QHeaderView>
#include <QPainter>
#include <QResizeEvent>
#include <QScrollBar>
#include <QStyledItemDelegate>

namespace ohmkin::plan {
namespace {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;
using parts::drawWords;
using parts::wrap;

constexpr int kNarrowest = 210;
constexpr int kNameLines = 4;
constexpr int kAddedLines = 2;
constexpr int kLookLines = 3;
constexpr int kWhyLines = 4;
int nameWidth(int whole) { return std::clamp(whole / 5, space(120), space(240)); }
int pad() { return space(10); }
int gap() { return space(6); }
int shape() { return space(26); }
double strongLine() { return look::metrics(Text::heading).lineSpacing(); }

/// The words under the part, each with how many lines it may take.
struct Piece {
  QString text;
  Text size;
  Paint ink;
  int lines;
};

std::vector<Piece> piecesOf(const GridCell& cell) {
  std::vector<Piece> all;
  const auto add = [&](const QString& text, Text size, Paint ink, int lines) {
    if (!text.isEmpty()) all.push_back({text, size, ink, lines});
  };
  add(cell.added, Text::small, Paint::ink, kAddedLines);
  add(cell.worst, Text::strong, Paint::ink, 1);
  if (!cell.answered) add(cell.sentence, Text::small, Paint::quiet, kWhyLines);
  add(cell.era, Text::small, Paint::quiet, kAddedLines);
  if (!cell.look.isEmpty()) add(PlanGrid::tr("Look: %1").arg(cell.look), Text::small, Paint::quiet, kLookLines);
  return all;
}

double cellHeight(const GridCell& cell, double width) {
  const double inner = width - gap() - 2 * pad() - shape();
  double high = 2 * pad() + strongLine() + gap();
  if (cell.best) high += look::metrics(Text::small).lineSpacing() + space(4);
  for (const Piece& piece : piecesOf(cell))
    high += wrap(piece.text, typeface(piece.size), inner, piece.lines).height + space(2);
  return high;
}

/// A pennant: the engine that is best for this dash.
void drawPennant(QPainter& painter, const QPointF& foot, double size) {
  painter.setPen(QPen(colour(Paint::accent), space(1.6), Qt::SolidLine, Qt::RoundCap));
  painter.drawLine(foot, foot - QPointF(0, size));
  painter.setPen(Qt::NoPen);
  painter.setBrush(colour(Paint::accent));
  painter.drawPolygon(
      QPolygonF({foot - QPointF(0, size), foot + QPointF(size * 0.75, -size * 0.7), foot - QPointF(0, size * 0.4)}));
}

class CellDelegate : public QStyledItemDelegate {
 public:
  using QStyledItemDelegate::QStyledItemDelegate;

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const auto* grid = static_cast<const PlanGrid*>(option.widget);
    const GridCell& cell = grid->cells().cell(index);
    const bool selected = option.state & QStyle::State_Selected;
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const QRectF card = QRectF(option.rect).adjusted(0.5, 0.5, -gap() - 0.5, -gap() - 0.5);
    painter->setPen(QPen(colour(selected ? Paint::accent : Paint::line), 1));
    painter->setBrush(colour(selected ? Paint::accentWash : Paint::panel));
    painter->drawRoundedRect(card, look::cornerRadius(), look::cornerRadius());
    double top = card.top() + pad();
    const double left = card.left() + pad() + shape();
    const double wide = card.right() - pad() - left;
    if (cell.best) {
      const double line = look::metrics(Text::small).lineSpacing();
      drawPennant(*painter, QPointF(card.left() + pad() + space(4), top + line), line * 0.85);
      drawWords(*painter, QRectF(left, top, wide, line), PlanGrid::tr("best for this dash"), typeface(Text::small),
                colour(Paint::accent), 1);
      top += line + space(4);
    }
    parts::drawFit(*painter, QPointF(card.left() + pad() + space(7), top + strongLine() / 2), space(15), cell.fit);
    drawWords(*painter, QRectF(left, top, wide, strongLine()), cell.part, typeface(Text::heading),
              colour(cell.answered ? Paint::ink : Paint::warning), 1);
    top += strongLine() + space(2);
    for (const Piece& piece : piecesOf(cell))
      top += drawWords(*painter, QRectF(left, top, wide, card.height()), piece.text, typeface(piece.size),
                       colour(piece.ink), piece.lines) +
             space(2);
    if ((option.state & QStyle::State_HasFocus) && grid->hasFocus())
      look::drawFocusRing(*painter, card.adjusted(-0.5, -0.5, 0.5, 0.5), look::cornerRadius());
    painter->restore();
  }
};

/// Keeps a widget from painting itself.
class Unpainted : public QObject {
 public:
  using QObject::QObject;
  bool eventFilter(QObject* /*watched*/, QEvent* event) override { return event->type() == QEvent::Paint; }
};

/// Names as they were typed, wrapped.
class NameHeader : public QHeaderView {
 public:
  NameHeader(Qt::Orientation orientation, QWidget* parent) : QHeaderView(orientation, parent) {
    setSectionsClickable(false);
    setSectionResizeMode(QHeaderView::Fixed);
    viewport()->setAutoFillBackground(false);
    setAccessibleName(orientation == Qt::Horizontal ? PlanGrid::tr("Engines") : PlanGrid::tr("Dashes"));
  }

  [[nodiscard]] QSize sizeHint() const override {
    const bool across = orientation() == Qt::Horizontal;
    if (!across) return {space(160), 0};
    double high = look::metrics(Text::strong).lineSpacing();
    for (int i = 0; model() != nullptr && i < count(); ++i)
      high = std::max(high, wrap(nameOf(i), typeface(Text::strong), sectionSize(i) - gap(), kNameLines).height);
    return {0, static_cast<int>(high) + space(8)};
  }

 protected:
  void paintSection(QPainter* painter, const QRect& rect, int section) const override {
    painter->save();
    const bool across = orientation() == Qt::Horizontal;
    const QRectF box = QRectF(rect).adjusted(0, across ? 0 : pad(), across ? -gap() : -space(12), 0);
    drawWords(*painter, box, nameOf(section), typeface(Text::strong), colour(Paint::ink), kNameLines);
    painter->restore();
  }
  void paintEvent(QPaintEvent* event) override {
    QPainter(viewport()).fillRect(viewport()->rect(), colour(Paint::ground));
    QHeaderView::paintEvent(event);
  }

 private:
  [[nodiscard]] QString nameOf(int section) const {
    return model()->headerData(section, orientation(), Qt::DisplayRole).toString();
  }
};

}  // namespace

PlanGrid::PlanGrid(QWidget* parent) : QTableView(parent) {
  setHorizontalHeader(new NameHeader(Qt::Horizontal, this));
  setVerticalHeader(new NameHeader(Qt::Vertical, this));
  setModel(&model_);
  setItemDelegate(new CellDelegate(this));
  setFrameShape(QFrame::NoFrame);
  setShowGrid(false);
  setCornerButtonEnabled(false);
  setSelectionMode(QAbstractItemView::SingleSelection);
  setEditTriggers(QAbstractItemView::NoEditTriggers);
  setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
  setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  setTabKeyNavigation(false);
  viewport()->setAutoFillBackground(false);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setAccessibleName(tr("Dashes against engines"));
  QPalette clear = palette();  // the cards are all there is to see
  for (const auto role : {QPalette::Base, QPalette::Highlight}) clear.setColor(role, Qt::transparent);
  setPalette(clear);
  if (auto* corner = findChild<QAbstractButton*>()) corner->installEventFilter(new Unpainted(corner));
}

void PlanGrid::display(GridPicture picture) {
  const QModelIndex at = currentIndex();
  int dash = at.isValid() ? model_.dashOf(at) : 0;
  int engine = at.isValid() ? model_.engineOf(at) : -1;
  model_.setPicture(std::move(picture));
  turnAsFits();
  const int engines = static_cast<int>(model_.picture().engines.size());
  dash = std::min(dash, static_cast<int>(model_.picture().dashes.size()) - 1);
  if (engine < 0 || engine >= engines)
    for (engine = engines - 1; engine > 0 && !model_.picture().at(dash, engine).best;) --engine;
  fit();
  if (dash >= 0 && engine >= 0) choose(dash, engine);
}

/// Dashes down, as a person reads a plan, while the engines find room beside one another; otherwise the longer side
/// goes down: one scrolls down more easily than across.
void PlanGrid::turnAsFits() {
  const auto& picture = model_.picture();
  const bool room = picture.engines.size() * space(kNarrowest) <= width() - nameWidth(width());
  const bool down = !room && picture.engines.size() > picture.dashes.size();
  if (down == model_.enginesDown()) return;
  const QModelIndex at = currentIndex();
  const int dash = at.isValid() ? model_.dashOf(at) : -1;
  const int engine = at.isValid() ? model_.engineOf(at) : -1;
  model_.turn(down);
  for (auto* header : {horizontalHeader(), verticalHeader()})
    header->setAccessibleName((header == verticalHeader()) == down ? tr("Engines") : tr("Dashes"));
  if (dash >= 0 && engine >= 0) choose(dash, engine);
}

/// Columns share the width until they would be too narrow to read; every row is as high as its highest card.
void PlanGrid::fit() {
  const int columns = model_.columnCount();
  if (columns == 0) return;
  const int name = nameWidth(width());
  verticalHeader()->setFixedWidth(name);
  // Room for the bar that scrolls down, whether it is there now or not: columns do not jump.
  const int each =
      std::max(space(kNarrowest), (width() - name - 2 - verticalScrollBar()->sizeHint().width()) / columns);
  for (int column = 0; column < columns; ++column) horizontalHeader()->resizeSection(column, each);
  for (int row = 0; row < model_.rowCount(); ++row) {
    double high = wrap(model_.headerData(row, Qt::Vertical, Qt::DisplayRole).toString(), typeface(Text::strong),
                       name - space(12), kNameLines)
                      .height +
                  2 * pad();
    for (int column = 0; column < columns; ++column)
      high = std::max(high, cellHeight(model_.cell(model_.index(row, column)), each));
    verticalHeader()->resizeSection(row, static_cast<int>(high));
  }
  updateGeometries();
  updateGeometry();
}

void PlanGrid::showAtMost(int height) {
  if (most_ == std::max(space(220), height)) return;
  most_ = std::max(space(220), height);
  fit();
}

QSize PlanGrid::sizeHint() const {
  const bool wide = horizontalHeader()->length() + verticalHeader()->width() > width();
  return {space(600), std::min(most_, horizontalHeader()->sizeHint().height() + verticalHeader()->length() + 2 +
                                          (wide ? space(10) : 0))};
}

QSize PlanGrid::minimumSizeHint() const { return {space(320), sizeHint().height()}; }

void PlanGrid::resizeEvent(QResizeEvent* event) {
  QTableView::resizeEvent(event);
  if (event->oldSize().width() == event->size().width()) return;
  turnAsFits();
  fit();
}

void PlanGrid::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
  QTableView::currentChanged(current, previous);
  if (current.isValid()) emit chosen(model_.dashOf(current), model_.engineOf(current));
}

}  // namespace ohmkin::plan
