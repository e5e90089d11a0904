#include <look/palette.h>
#include <look/type.h>
#include <parts/failure_table.h>
#include <parts/words.h>
#include <QEvent>
#include <QHeaderView>
#include <QScrollBar>

namespace ohmkin::parts {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

FailureTable::FailureTable(QWidget* parent) : QTableWidget(parent) {
  setColumnCount(4);
  setHorizontalHeaderLabels({tr("What fails"), tr("How"), tr("At the hot mark"), tr("Noticed?")});
  setFrameShape(QFrame::NoFrame);
  setShowGrid(false);
  setEditTriggers(QAbstractItemView::NoEditTriggers);
  setSelectionBehavior(QAbstractItemView::SelectRows);
  setSelectionMode(QAbstractItemView::SingleSelection);
  setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setTabKeyNavigation(false);
  setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setWordWrap(false);  // one line a failure; the tip says it in a sentence
  verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
  verticalHeader()->setMinimumSectionSize(1);
  verticalHeader()->setDefaultSectionSize(static_cast<int>(look::metrics(Text::small).lineSpacing()) + space(8));
  verticalHeader()->hide();
  horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
  horizontalHeader()->setSectionResizeMode(3, QHeaderView::ResizeToContents);
  horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  horizontalHeader()->setHighlightSections(false);
  horizontalHeader()->setFont(typeface(Text::small));
  setFont(typeface(Text::small));
  setAccessibleName(tr("What fails how"));
}

void FailureTable::display(const std::vector<FailureWords>& failures) {
  failures_ = failures;
  fill();
}

QSize FailureTable::sizeHint() const {
  return {space(320), horizontalHeader()->sizeHint().height() + verticalHeader()->length() + 2};
}

QSize FailureTable::minimumSizeHint() const { return {space(240), sizeHint().height()}; }

void FailureTable::changeEvent(QEvent* event) {
  QTableWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange && !failures_.empty()) fill();
}

void FailureTable::fill() {
  setRowCount(static_cast<int>(failures_.size()));
  int row = 0;
  for (const FailureWords& failure : failures_) {
    int column = 0;
    for (const QString& words : {failure.part, failure.mode, failure.needle, failure.noticed}) {
      auto* cell = new QTableWidgetItem(words);
      cell->setToolTip(plainTip(failure.sentence));
      cell->setForeground(colour(failure.misleads ? Paint::warning : Paint::ink));
      if (failure.misleads && column == 3) {
        QFont strong = typeface(Text::small);
        strong.setWeight(QFont::DemiBold);
        cell->setFont(strong);
      }
      setItem(row, column++, cell);
    }
    ++row;
  }
  updateGeometry();
}

}  // namespace ohmkin::parts
