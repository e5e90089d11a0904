#include <look/palette.h>
#include <look/style.h>
#include <look/type.h>
#include <measure/calm_table.h>
#include <parts/words.h>
#include <QHeaderView>
#include <QPainter>
#include <QScrollBar>
#include <QStyledItemDelegate>

namespace ohmkin::measure {
namespace {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

class CalmDelegate : public QStyledItemDelegate {
 public:
  using QStyledItemDelegate::QStyledItemDelegate;

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    painter->save();
    const QRectF box(option.rect);
    if (option.state & QStyle::State_Selected) painter->fillRect(box, colour(Paint::accentWash));
    painter->setPen(QPen(colour(Paint::line), 1));
    painter->drawLine(QPointF(box.left(), box.bottom() + 0.5), QPointF(box.right(), box.bottom() + 0.5));
    const double line = look::metrics(Text::small).lineSpacing();
    double left = box.left() + space(8);
    if (index.flags() & Qt::ItemIsUserCheckable) {
      const QRectF tick(left, box.center().y() - space(7), space(14), space(14));
      const bool on = index.data(Qt::CheckStateRole).toInt() == Qt::Checked;
      painter->setRenderHint(QPainter::Antialiasing);
      painter->setPen(QPen(colour(on ? Paint::accent : Paint::edge), 1));
      painter->setBrush(colour(on ? Paint::accent : Paint::panel));
      painter->drawRoundedRect(tick, space(3), space(3));
      if (on) {
        painter->setPen(QPen(colour(Paint::panel), space(2), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
        const auto at = [&](double x, double y) {
          return tick.topLeft() + QPointF(x * tick.width(), y * tick.height());
        };
        painter->drawPolyline(QPolygonF({at(0.25, 0.52), at(0.43, 0.7), at(0.76, 0.32)}));
      }
      left = tick.right() + space(8);
    }
    const bool quiet = index.data(Qt::UserRole).toBool();
    parts::drawWords(*painter, QRectF(left, box.center().y() - line / 2, box.right() - left - space(4), line),
                     index.data().toString(), typeface(Text::small), colour(quiet ? Paint::quiet : Paint::ink), 1);
    const auto* table = static_cast<const QTableWidget*>(option.widget);
    if ((option.state & QStyle::State_HasFocus) && table->hasFocus())
      look::drawFocusRing(*painter, box.adjusted(0, 0, 0, -1), space(4));
    painter->restore();
  }
};

}  // namespace

CalmTable::CalmTable(const QString& name, const QStringList& headings, QWidget* parent) : QTableWidget(parent) {
  setColumnCount(static_cast<int>(headings.size()));
  setHorizontalHeaderLabels(headings);
  setItemDelegate(new CalmDelegate(this));
  setFrameShape(QFrame::NoFrame);
  setShowGrid(false);
  setEditTriggers(QAbstractItemView::NoEditTriggers);
  setSelectionBehavior(QAbstractItemView::SelectRows);
  setSelectionMode(QAbstractItemView::SingleSelection);
  setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
  setTabKeyNavigation(false);
  setWordWrap(false);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  viewport()->setAutoFillBackground(false);
  verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
  verticalHeader()->setMinimumSectionSize(1);
  verticalHeader()->setDefaultSectionSize(static_cast<int>(look::metrics(Text::small).lineSpacing()) + space(12));
  verticalHeader()->hide();
  horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  horizontalHeader()->setHighlightSections(false);
  horizontalHeader()->setFont(typeface(Text::small));
  horizontalHeader()->setMinimumSectionSize(space(40));
  horizontalHeader()->setStretchLastSection(true);
  setFont(typeface(Text::small));
  setAccessibleName(name);
}

void CalmTable::showAtMost(int rows) {
  most_ = rows;
  updateGeometry();
}

QSize CalmTable::sizeHint() const {
  int high = horizontalHeader()->sizeHint().height() + 2;
  if (rowCount() == 0) high += verticalHeader()->defaultSectionSize();
  for (int row = 0; row < std::min(rowCount(), most_); ++row) high += verticalHeader()->sectionSize(row);
  if (horizontalHeader()->length() > width()) high += horizontalScrollBar()->sizeHint().height();
  return {space(320), high};
}

QSize CalmTable::minimumSizeHint() const { return {space(200), sizeHint().height()}; }

void CalmTable::addWords(const QStringList& words) {
  const int row = rowCount();
  insertRow(row);
  for (int column = 0; column < words.size(); ++column) {
    auto* cell = new QTableWidgetItem(words[column]);
    cell->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable);
    cell->setToolTip(parts::plainTip(words[column]));
    setItem(row, column, cell);
  }
  updateGeometry();
}

void CalmTable::fitColumns() {
  const QFontMetricsF m = look::metrics(Text::small);
  for (int column = 0; column < columnCount(); ++column) {
    double wide = m.horizontalAdvance(horizontalHeaderItem(column)->text());
    for (int row = 0; row < rowCount(); ++row)
      if (const QTableWidgetItem* cell = item(row, column))
        wide = std::max(
            wide, m.horizontalAdvance(cell->text()) + ((cell->flags() & Qt::ItemIsUserCheckable) ? space(22) : 0));
    horizontalHeader()->resizeSection(column, std::clamp(static_cast<int>(wide) + space(20), space(56), space(240)));
  }
  updateGeometry();
}

void CalmTable::focusInEvent(QFocusEvent* event) {
  QTableWidget::focusInEvent(event);
  if (!currentIndex().isValid() && rowCount() > 0) setCurrentCell(0, 0);
  viewport()->update();
}

void CalmTable::focusOutEvent(QFocusEvent* event) {
  QTableWidget::focusOutEvent(event);
  viewport()->update();
}

}  // namespace ohmkin::measure
