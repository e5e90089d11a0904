#include <fault/test_list.h>
#include <look/palette.h>
#include <look/style.h>
#include <look/type.h>
#include <parts/words.h>
#include <QPainter>
#include <QStyledItemDelegate>

namespace ohmkin::fault {
namespace {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

constexpr int kTitle = Qt::UserRole + 1;
constexpr int kValue = Qt::UserRole + 2;
constexpr int kWhy = Qt::UserRole + 3;
constexpr int kTitleLines = 2;
constexpr int kRowsShown = 5;

double wide(const QStyleOptionViewItem& option) { return option.rect.width() - 2.0 * space(10); }

class TestDelegate : public QStyledItemDelegate {
 public:
  using QStyledItemDelegate::QStyledItemDelegate;

  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const auto* list = qobject_cast<const QListWidget*>(option.widget);
    const double room = (list != nullptr ? list->viewport()->width() : space(360)) - 2 * space(10);
    const double title = parts::wrap(index.data(kTitle).toString(), typeface(Text::body), room, kTitleLines).height;
    return {space(240), static_cast<int>(title + look::metrics(Text::small).lineSpacing()) + space(15)};
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const QRectF box = QRectF(option.rect).adjusted(1.5, 1.5, -1.5, -1.5);
    const bool chosen = option.state & QStyle::State_Selected;
    const bool keyboard = chosen && option.widget != nullptr && option.widget->hasFocus();
    if (chosen || (option.state & QStyle::State_MouseOver)) {
      painter->setPen(keyboard ? QPen(colour(Paint::accent), 2) : QPen(Qt::NoPen));
      painter->setBrush(colour(Paint::accentWash));
      painter->drawRoundedRect(box, space(6), space(6));
    }
    const bool weightless = !index.data(kWhy).toString().isEmpty();
    double y = box.top() + space(5);
    y += parts::drawWords(*painter, QRectF(box.left() + space(8), y, wide(option), box.height()),
                          index.data(kTitle).toString(), typeface(Text::body),
                          colour(weightless ? Paint::quiet : Paint::ink), kTitleLines) +
         space(1);
    parts::drawWords(*painter, QRectF(box.left() + space(8), y, wide(option), look::metrics(Text::small).lineSpacing()),
                     index.data(kValue).toString(), typeface(Text::small), colour(Paint::quiet), 1);
    painter->restore();
  }
};

}  // namespace

TestList::TestList(QWidget* parent) : QListWidget(parent) {
  setFrameShape(QFrame::NoFrame);
  setAccessibleName(tr("Other tests"));
  setItemDelegate(new TestDelegate(this));
  setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setMouseTracking(true);
  viewport()->setAutoFillBackground(false);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Preferred);
  connect(this, &QListWidget::itemClicked, this, [this](QListWidgetItem* item) { emit chosen(row(item)); });
  connect(this, &QListWidget::itemActivated, this, [this](QListWidgetItem* item) { emit chosen(row(item)); });
}

void TestList::display(const std::vector<TestRow>& rows) {
  if (rows == rows_) return;
  rows_ = rows;
  clear();
  for (const TestRow& row : rows) {
    auto* item = new QListWidgetItem(this);
    item->setData(kTitle, row.title);
    item->setData(kValue, row.why.isEmpty() ? row.value : row.why);
    item->setData(kWhy, row.why);
    item->setData(Qt::AccessibleTextRole, QStringList{row.title, row.value, row.why}.join(QStringLiteral(". ")));
    item->setToolTip(parts::plainTip(row.why.isEmpty() ? row.value : row.value + QStringLiteral(". ") + row.why));
  }
  if (!rows.empty()) setCurrentRow(0);
}

QSize TestList::sizeHint() const { return {space(360), kRowsShown * space(52)}; }
QSize TestList::minimumSizeHint() const { return {space(240), 2 * space(52)}; }

void TestList::resizeEvent(QResizeEvent* event) {
  QListWidget::resizeEvent(event);
  scheduleDelayedItemsLayout();
}

}  // namespace ohmkin::fault
