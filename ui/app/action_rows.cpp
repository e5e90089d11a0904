#include <app/action_rows.h>
#include <look/palette.h>
#include <look/style.h>
#include <look/type.h>
#include <parts/words.h>
#include <QKeyEvent>
#include <QPainter>
#include <QStyledItemDelegate>
#include <ranges>

namespace ohmkin::app {
namespace {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

enum Role { groupRole = Qt::UserRole, capsRole };

double widthOf(const QString& cap) {
  const QFontMetricsF metrics = look::metrics(Text::small);
  return std::max(metrics.height() + space(6), metrics.horizontalAdvance(cap) + space(14));
}

double widthOf(const QStringList& caps) {
  double width = 0;
  for (const QString& cap : caps) width += widthOf(cap) + space(4);
  return width;
}

/// From the right edge leftward; returns where the first cap begins.
double drawCaps(QPainter& painter, const QRectF& row, const QStringList& caps) {
  const QFontMetricsF metrics = look::metrics(Text::small);
  const double height = metrics.height() + space(6);
  double right = row.right();
  for (const QString& cap : std::views::reverse(caps)) {
    const double width = widthOf(cap);
    const QRectF box(right - width, row.center().y() - height / 2, width, height);
    painter.setPen(QPen(colour(Paint::edge), 1));
    painter.setBrush(colour(Paint::ground));
    painter.drawRoundedRect(box.adjusted(0.5, 0.5, -0.5, -0.5), space(4), space(4));
    painter.setFont(typeface(Text::small));
    painter.setPen(colour(Paint::ink));
    painter.drawText(box, static_cast<int>(Qt::AlignCenter), cap);
    right -= width + space(4);
  }
  return right;
}

class RowPainter : public QStyledItemDelegate {
 public:
  RowPainter(const ActionRows& view, ActionRows::Show show, QObject* parent)
      : QStyledItemDelegate(parent), view_(view), show_(show) {}

  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const double name = look::metrics(Text::body).horizontalAdvance(index.data().toString());
    const double caps = widthOf(index.data(capsRole).toStringList());
    const double group = show_ == ActionRows::Show::withGroup
                             ? look::metrics(Text::small).horizontalAdvance(index.data(groupRole).toString())
                             : 0;
    Q_UNUSED(option);
    return {static_cast<int>(name + caps + group) + space(56), view_.rowHeight()};
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const bool chosen = option.state & QStyle::State_Selected;
    const bool possible = index.flags() & Qt::ItemIsEnabled;
    const QRectF box = QRectF(option.rect).adjusted(space(2), 1, -space(2), -1);
    if (chosen) {
      painter->setPen(Qt::NoPen);
      painter->setBrush(colour(Paint::accentWash));
      painter->drawRoundedRect(box, space(6), space(6));
      if (view_.hasFocus()) look::drawFocusRing(*painter, box, space(6));
    }
    const QRectF row = box.adjusted(space(10), 0, -space(10), 0);
    double right = drawCaps(*painter, row, index.data(capsRole).toStringList()) - space(12);
    const double line = look::metrics(Text::body).lineSpacing();
    const double small = look::metrics(Text::small).lineSpacing();
    const QString name = index.data().toString();
    if (show_ == ActionRows::Show::withGroup) {
      const QString group = index.data(groupRole).toString();
      const double needs = look::metrics(Text::small).horizontalAdvance(group) + 1;
      const double left = row.right() - view_.capsWidth() - space(12) - needs;  // one column, whatever the keys
      if (left > row.left() + look::metrics(Text::body).horizontalAdvance(name) + space(12)) {
        parts::drawWords(*painter, {left, row.center().y() - small / 2, needs, small}, group, typeface(Text::small),
                         colour(Paint::quiet), 1);
        right = left - space(12);
      }
    }
    parts::drawWords(*painter, {row.left(), row.center().y() - line / 2, right - row.left(), line}, name,
                     typeface(Text::body), colour(possible ? Paint::ink : Paint::quiet), 1);
    painter->restore();
  }

 private:
  const ActionRows& view_;
  ActionRows::Show show_;
};

}  // namespace

ActionRows::ActionRows(const QString& name, Show show, QWidget* parent) : QListView(parent) {
  setAccessibleName(name);
  setFrameShape(QFrame::NoFrame);
  setModel(&model_);
  setItemDelegate(new RowPainter(*this, show, this));
  setUniformItemSizes(false);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setEditTriggers(NoEditTriggers);
  setMouseTracking(true);
  viewport()->setAutoFillBackground(false);
  viewport()->setCursor(Qt::PointingHandCursor);
  connect(this, &QListView::clicked, this, &ActionRows::take);
}

int ActionRows::rowHeight() const {
  return std::max(space(32), static_cast<int>(look::metrics(Text::body).lineSpacing()) + space(14));
}

QSize ActionRows::sizeHint() const {
  return {std::max(space(240), sizeHintForColumn(0)), rowHeight() * static_cast<int>(rows_.size()) + 2 * frameWidth()};
}

QSize ActionRows::minimumSizeHint() const { return {space(120), rowHeight()}; }

void ActionRows::setRows(const std::vector<Offered>& rows) {
  rows_ = rows;
  model_.clear();
  capsWidth_ = 0;
  for (const Offered& each : rows) {
    capsWidth_ = std::max(capsWidth_, widthOf(capsOf(each.action->shortcut())));
    const QString name = nameOf(*each.action);
    auto* item = new QStandardItem(name);
    const QString keys = each.action->shortcut().toString(QKeySequence::NativeText);
    item->setData(each.group, groupRole);
    item->setData(capsOf(each.action->shortcut()), capsRole);
    QStringList said{name};
    if (each.action->isCheckable() && each.action->isChecked()) said << tr("chosen");
    if (!keys.isEmpty()) said << keys;
    said << each.group;
    item->setData(said.join(QStringLiteral(", ")), Qt::AccessibleTextRole);
    item->setEditable(false);
    item->setEnabled(each.action->isEnabled());
    model_.appendRow(item);
  }
  step(0);
  updateGeometry();
}

QAction* ActionRows::current() const {
  const int row = currentIndex().row();
  return row < 0 ? nullptr : rows_.at(static_cast<std::size_t>(row)).action.data();
}

void ActionRows::step(int by) {
  const int count = model_.rowCount();
  if (count == 0) return;
  int row = currentIndex().row() < 0 ? 0 : (currentIndex().row() + by + count) % count;
  const int way = by < 0 ? -1 : 1;
  for (int tried = 0; tried < count && !(model_.index(row, 0).flags() & Qt::ItemIsEnabled); ++tried)
    row = (row + way + count) % count;
  setCurrentIndex(model_.index(row, 0));
}

void ActionRows::take() {
  QAction* action = current();
  if (action != nullptr && action->isEnabled()) emit taken(action);
}

void ActionRows::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) take();
  else QListView::keyPressEvent(event);
}

void ActionRows::focusInEvent(QFocusEvent* event) {
  QListView::focusInEvent(event);
  if (!currentIndex().isValid()) step(0);
}

}  // namespace ohmkin::app
