#include <date/layout_list.h>
#include <desk/catalogue_thread.h>
#include <look/palette.h>
#include <look/type.h>
#include <parts/words.h>
#include <QPainter>
#include <QStyledItemDelegate>

namespace ohmkin::castings {
namespace {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

constexpr int kPlaceAndCode = Qt::UserRole + 1;

/// A layout: its name, and under it where it is found and what it looks like.
class LayoutDelegate : public QStyledItemDelegate {
 public:
  using QStyledItemDelegate::QStyledItemDelegate;

  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const double inner = option.widget == nullptr ? space(200) : viewWidth(option) - 2 * space(8);
    const double name = parts::wrap(index.data().toString(), typeface(Text::body), inner, 2).height;
    return {space(160), static_cast<int>(name + look::metrics(Text::small).lineSpacing()) + space(10)};
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const QRectF box = QRectF(option.rect).adjusted(0.5, 0.5, -space(4), -0.5);
    if (option.state & QStyle::State_Selected) {
      painter->setPen(QPen(look::colour(Paint::accent), 1));
      painter->setBrush(look::colour(Paint::accentWash));
      painter->drawRoundedRect(box, space(6), space(6));
    }
    const QRectF words = box.adjusted(space(8), space(4), -space(4), -space(2));
    const double used =
        parts::drawWords(*painter, words, index.data().toString(), typeface(Text::body), look::colour(Paint::ink), 2);
    parts::drawWords(*painter, words.translated(0, used), index.data(kPlaceAndCode).toString(), typeface(Text::small),
                     look::colour(Paint::quiet), 1);
    painter->restore();
  }

 private:
  static double viewWidth(const QStyleOptionViewItem& option) {
    return static_cast<const QListWidget*>(option.widget)->viewport()->width();  // NOLINT: it serves this list alone
  }
};

}  // namespace

LayoutList::LayoutList(QWidget* parent) : QListWidget(parent) {
  setFrameShape(QFrame::NoFrame);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setAccessibleName(tr("Layouts of this catalogue"));
  setMinimumWidth(space(180));
  setItemDelegate(new LayoutDelegate(this));
  setResizeMode(QListView::Adjust);
}

void LayoutList::display(const std::vector<dating::Layout>& layouts,
                         const std::vector<std::pair<QString, QString>>& examples) {
  clear();
  for (std::size_t i = 0; i < layouts.size(); ++i) {
    auto* item = new QListWidgetItem(desk::plain(layouts[i].name), this);
    const auto place = dating::text(layouts[i].foundOn);
    item->setData(
        kPlaceAndCode,
        tr("%1 · %2").arg(QString::fromUtf8(place.data(), static_cast<qsizetype>(place.size())), examples[i].first));
    item->setData(Qt::AccessibleTextRole, tr("%1, %2").arg(item->text(), item->data(kPlaceAndCode).toString()));
  }
}

}  // namespace ohmkin::castings
