#include <date/meaning_list.h>
#include <look/palette.h>
#include <look/style.h>
#include <look/type.h>
#include <parts/words.h>
#include <QPainter>
#include <QScrollBar>
#include <QStyledItemDelegate>
#include <cmath>

namespace ohmkin::castings {
namespace {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

class MeaningDelegate : public QStyledItemDelegate {
 public:
  using QStyledItemDelegate::QStyledItemDelegate;

  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const MeaningRow& row = static_cast<const MeaningList*>(option.widget)->rows().row(index.row());
    double high = look::metrics(Text::strong).lineSpacing() + space(row.heading ? 10 : 8);
    if (row.heading && index.row() > 0) high += space(8);
    if (!row.heading && !row.aside.isEmpty()) high += look::metrics(Text::small).lineSpacing();
    return {static_cast<const MeaningList*>(option.widget)->viewport()->width(), std::max(24, static_cast<int>(high))};
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const MeaningRow& row = static_cast<const MeaningList*>(option.widget)->rows().row(index.row());
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    if (row.heading) paintHeading(*painter, option, index, row);
    else paintMeaning(*painter, option, row);
    painter->restore();
  }

 private:
  static void paintHeading(QPainter& painter, const QStyleOptionViewItem& option, const QModelIndex& index,
                           const MeaningRow& row) {
    QRectF box = QRectF(option.rect).adjusted(space(2), index.row() > 0 ? space(8) : 0, -space(8), 0);
    const double line = look::metrics(Text::strong).lineSpacing();
    const double aside = std::min(look::metrics(Text::small).horizontalAdvance(row.aside) + 2, box.width() * 0.5);
    parts::drawWords(painter, QRectF(box.left(), box.top() + space(4), box.width() - aside - space(8), line), row.words,
                     typeface(Text::strong), colour(Paint::ink), 1);
    parts::drawWords(painter, QRectF(box.right() - aside, box.top() + space(5), aside, line), row.aside,
                     typeface(Text::small), colour(Paint::quiet), 1, Qt::AlignRight);
    painter.setPen(QPen(colour(Paint::line), 1));
    painter.drawLine(QPointF(box.left(), option.rect.bottom() + 0.5), QPointF(box.right(), option.rect.bottom() + 0.5));
  }

  static void paintMeaning(QPainter& painter, const QStyleOptionViewItem& option, const MeaningRow& row) {
    const QRectF box = QRectF(option.rect).adjusted(space(2), 0, -space(8), 0);
    if (option.state & QStyle::State_Selected) {
      painter.setPen(QPen(colour(Paint::accent), 1));
      painter.setBrush(colour(Paint::accentWash));
      painter.drawRoundedRect(QRectF(option.rect).adjusted(0.5, 0.5, -space(4), -0.5), space(6), space(6));
    }
    const bool likely = row.chance >= 0.5;
    const double line = look::metrics(Text::body).lineSpacing();
    const double left = box.left() + space(8);
    const double figures = look::metrics(Text::strong).horizontalAdvance(MeaningList::tr("under 1 %")) + space(14);
    const double bar = row.chance < 0 ? 0 : std::min(box.width() * 0.28, static_cast<double>(space(110)));
    const double right = row.chance < 0 ? 0 : figures + bar + space(20);
    parts::drawWords(painter, QRectF(left, box.top() + space(4), box.right() - right - left, line), row.words,
                     typeface(likely ? Text::strong : Text::body), colour(row.chance < 0 ? Paint::quiet : Paint::ink),
                     1);
    if (row.chance >= 0) {
      const QRectF trough(box.right() - figures - bar - space(8), box.top() + space(4) + line / 2 - space(3), bar,
                          space(6));
      painter.setPen(Qt::NoPen);
      painter.setBrush(colour(Paint::line));
      painter.drawRoundedRect(trough, space(3), space(3));
      if (row.chance > 0.005) {
        painter.setBrush(colour(Paint::accent));
        painter.drawRoundedRect(QRectF(trough.left(), trough.top(),
                                       std::max(trough.width() * row.chance, trough.height()), trough.height()),
                                space(3), space(3));
      }
      parts::drawWords(painter, QRectF(box.right() - figures, box.top() + space(4), figures - space(8), line),
                       chanceWords(row.chance), typeface(likely ? Text::strong : Text::body), colour(Paint::ink), 1,
                       Qt::AlignRight);
    }
    parts::drawWords(painter, QRectF(left, box.top() + space(4) + line, box.right() - left - space(8), line), row.aside,
                     typeface(Text::small), colour(Paint::quiet), 1);
  }
};

}  // namespace

QString chanceWords(double probability) {
  if (probability > 0.995) return MeaningList::tr("over 99 %");
  if (probability < 0.005) return MeaningList::tr("under 1 %");
  return MeaningList::tr("%1 %").arg(std::lround(100 * probability));
}

void MeaningModel::setRows(std::vector<MeaningRow> rows) {
  beginResetModel();
  rows_ = std::move(rows);
  endResetModel();
}

int MeaningModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant MeaningModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const MeaningRow& row = this->row(index.row());
  QStringList all{row.words};
  if (row.chance >= 0) all << chanceWords(row.chance);
  if (!row.aside.isEmpty()) all << row.aside;
  if (role == Qt::DisplayRole) return row.words;
  if (role == Qt::AccessibleTextRole) return all.join(QStringLiteral(", "));
  if (role == Qt::ToolTipRole) return parts::plainTip(all.join(QStringLiteral(", ")));
  return {};
}

Qt::ItemFlags MeaningModel::flags(const QModelIndex& index) const {
  return row(index.row()).heading ? Qt::ItemIsEnabled : Qt::ItemIsEnabled | Qt::ItemIsSelectable;
}

MeaningList::MeaningList(QWidget* parent) : QListView(parent) {
  setModel(&model_);
  setItemDelegate(new MeaningDelegate(this));
  setFrameShape(QFrame::NoFrame);
  setResizeMode(QListView::Adjust);
  setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);  // the page scrolls
  setTabKeyNavigation(false);
  viewport()->setAutoFillBackground(false);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setAccessibleName(tr("What the codes can mean"));
}

void MeaningList::display(std::vector<MeaningRow> rows) {
  model_.setRows(std::move(rows));
  updateGeometry();
}

QSize MeaningList::sizeHint() const { return {space(320), minimumSizeHint().height()}; }

QSize MeaningList::minimumSizeHint() const {
  int high = 2;
  QStyleOptionViewItem option;
  option.widget = this;
  for (int i = 0; i < model_.rowCount(); ++i) high += itemDelegate()->sizeHint(option, model_.index(i)).height();
  return {space(260), high};
}

void MeaningList::resizeEvent(QResizeEvent* event) {
  QListView::resizeEvent(event);
  scheduleDelayedItemsLayout();
}

}  // namespace ohmkin::castings
