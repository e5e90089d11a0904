#include <catalogue/found_list.h>
#include <desk/catalogue_thread.h>
#include <look/palette.h>
#include <look/type.h>
#include <parts/words.h>
#include <QKeyEvent>
#include <QPainter>
#include <QScrollBar>
#include <QStyledItemDelegate>

namespace ohmkin::shelves {
namespace {

using desk::plain;
using desk::shown;
using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

int gap() { return space(6); }
int padX() { return space(14); }
int padY() { return space(8); }

/// Spans are bytes of UTF-8; the window counts otherwise.
parts::MarkedWords marked(const workflow::Marked& words) {
  parts::MarkedWords out;
  out.text = plain(words.text);
  const auto at = [&](std::size_t byte) {
    return static_cast<int>(
        QString::fromUtf8(words.text.data(), static_cast<qsizetype>(std::min(byte, words.text.size()))).size());
  };
  for (const catalog::MatchedSpan& span : words.spans) {
    const int begin = at(span.begin);
    out.spans.push_back({begin, at(span.begin + span.length) - begin});
  }
  return out;
}

double rowHeight(const FoundRow& row) {
  double high = look::metrics(Text::heading).lineSpacing() + 2 * padY();
  if (!row.title.text.isEmpty() || !row.about.isEmpty()) high += look::metrics(Text::body).lineSpacing() + space(1);
  high += look::metrics(Text::small).lineSpacing() + space(2);
  if (!row.leads.isEmpty()) high += look::metrics(Text::small).lineSpacing() + space(2);
  return high;
}

class FoundDelegate : public QStyledItemDelegate {
 public:
  explicit FoundDelegate(FoundList& list) : QStyledItemDelegate(&list), list_(list) {}

  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& /*option*/, const QModelIndex& index) const override {
    return {list_.viewport()->width(), static_cast<int>(rowHeight(list_.rows().row(index.row()))) + gap()};
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const FoundRow& row = list_.rows().row(index.row());
    const bool selected = option.state & QStyle::State_Selected;
    painter->save();
    const QRectF card = parts::drawCard(*painter, option, gap());
    paintWords(*painter, card.adjusted(padX(), padY(), -padX(), -padY()), row, selected);
    parts::drawCardFocus(*painter, option, card, list_);
    painter->restore();
  }

 private:
  static void paintWords(QPainter& painter, const QRectF& box, const FoundRow& row, bool selected) {
    const QColor quiet = colour(selected ? Paint::ink : Paint::quiet);
    const double head = look::metrics(Text::heading).lineSpacing();
    const double small = look::metrics(Text::small).lineSpacing();
    QRectF line(box.left(), box.top(), box.width(), head);
    const double kindWide = std::min(look::metrics(Text::small).horizontalAdvance(row.kind) + 2, box.width() * 0.4);
    parts::drawWords(painter, QRectF(line.right() - kindWide, line.top() + (head - small) / 2, kindWide, small),
                     row.kind, typeface(Text::small), quiet, 1, Qt::AlignRight);
    parts::drawMarked(painter, line.adjusted(0, 0, -kindWide - space(8), 0), row.number, typeface(Text::heading),
                      colour(Paint::ink));
    double y = line.bottom();
    if (!row.title.text.isEmpty() || !row.about.isEmpty()) {
      const double body = look::metrics(Text::body).lineSpacing();
      const QRectF second(box.left(), y + space(1), box.width(), body);
      const double used =
          row.title.text.isEmpty()
              ? 0
              : parts::drawMarked(painter, second, row.title, typeface(Text::body), colour(Paint::ink)) + space(10);
      if (second.width() - used > space(40))
        parts::drawWords(painter, second.adjusted(used, (body - small) / 2, 0, 0), row.about, typeface(Text::small),
                         quiet, 1);
      y = second.bottom();
    }
    if (!row.leads.isEmpty()) {
      parts::drawWords(
          painter, QRectF(box.left(), y + space(2), box.width(), small), row.leads,
          [] {
            QFont font = typeface(Text::small);
            font.setWeight(QFont::DemiBold);
            return font;
          }(),
          colour(Paint::warning), 1);
      y += space(2) + small;
    }
    paintFoot(painter, QRectF(box.left(), y + space(2), box.width(), small), row, quiet);
  }

  static void paintFoot(QPainter& painter, const QRectF& line, const FoundRow& row, const QColor& quiet) {
    const QFontMetricsF m = look::metrics(Text::small);
    const double shelfWide = std::min(m.horizontalAdvance(row.shelf) + 2, line.width() * 0.5);
    if (!row.shelf.isEmpty())
      parts::drawWords(painter, QRectF(line.right() - shelfWide, line.top(), shelfWide, line.height()), row.shelf,
                       typeface(Text::small), row.none ? quiet : colour(Paint::accent), 1, Qt::AlignRight);
    const QRectF left = line.adjusted(0, 0, -shelfWide - space(8), 0);
    const double why = std::min(m.horizontalAdvance(row.why) + 2, left.width());
    parts::drawWords(painter, left, row.why, typeface(Text::small), quiet, 1);
    if (!row.matched.text.isEmpty() && left.width() - why > space(30))
      parts::drawMarked(painter, left.adjusted(why + space(5), 0, 0, 0), row.matched, typeface(Text::small), quiet);
  }

  FoundList& list_;
};

}  // namespace

FoundRow rowOf(const workflow::Found& found) {
  FoundRow row;
  const std::string_view kind = text(found.kind);
  row.ref = {editKindOf(kind), {found.id}};
  row.kind = QString::fromUtf8(kind.data(), static_cast<qsizetype>(kind.size()));
  row.number = marked(found.number);
  row.title = marked(found.title);
  row.about = shown(found.about);
  row.why = shown(found.why);
  const bool shownAlready = found.matched.text == found.number.text || found.matched.text == found.title.text ||
                            found.why.find(found.matched.text) != std::string::npos;
  if (!shownAlready) row.matched = marked(found.matched);
  if (found.leadsTo) row.leads = shown(found.leadsTo->sentence);
  if (found.kind == workflow::FoundKind::sender) {
    row.none = found.inStock == 0;
    row.shelf = row.none ? FoundList::tr("none on the shelf")
                         : FoundList::tr("%n on the shelf", nullptr, static_cast<int>(found.inStock));
  }
  return row;
}

QString spoken(const FoundRow& row) {
  QStringList all;
  for (const QString& each :
       {row.number.text, row.kind, row.title.text, row.about, row.leads, row.why, row.matched.text, row.shelf})
    if (!each.isEmpty()) all << each;
  return all.join(QStringLiteral(", "));
}

FoundList::FoundList(QWidget* parent)
    : QListView(parent), model_([](const FoundRow& row) { return row.number.text; }, spoken) {
  setModel(&model_);
  setItemDelegate(new FoundDelegate(*this));
  parts::listOfCards(*this);
  setAccessibleName(tr("What was found, best first"));
  connect(this, &QListView::doubleClicked, this, &FoundList::opened);
  connect(verticalScrollBar(), &QScrollBar::valueChanged, this, [this](int value) {
    if (!filling_ && value > verticalScrollBar()->maximum() - viewport()->height()) emit endNeared();
  });
}

void FoundList::setRows(std::vector<FoundRow> rows) {
  filling_ = true;
  model_.setRows(std::move(rows));
  if (model_.rowCount() > 0) setCurrentIndex(model_.index(0));
  scrollToTop();
  filling_ = false;
  emit chosen(model_.rowCount() > 0 ? model_.row(0).ref : Ref());
}

void FoundList::addRows(std::vector<FoundRow> more) {
  filling_ = true;
  model_.addRows(std::move(more));
  filling_ = false;
}

void FoundList::step(int rows) {
  if (model_.rowCount() == 0) return;
  setCurrentIndex(model_.index(std::clamp(currentIndex().row() + rows, 0, model_.rowCount() - 1)));
  scrollTo(currentIndex());
}

void FoundList::stepPage(int pages) {
  const int high = currentIndex().isValid() ? sizeHintForIndex(currentIndex()).height() : space(60);
  step(pages * std::max(1, viewport()->height() / std::max(1, high) - 1));
}

QSize FoundList::minimumSizeHint() const { return {space(220), space(120)}; }

void FoundList::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
  QListView::currentChanged(current, previous);
  if (filling_ || !current.isValid()) return;
  emit chosen(model_.row(current.row()).ref);
  if (current.row() + 3 > model_.rowCount()) emit endNeared();
}

void FoundList::resizeEvent(QResizeEvent* event) {
  QListView::resizeEvent(event);
  scheduleDelayedItemsLayout();
}

void FoundList::keyPressEvent(QKeyEvent* event) {
  if ((event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) && currentIndex().isValid()) {
    emit opened();
    return;
  }
  QListView::keyPressEvent(event);
}

}  // namespace ohmkin::shelves
