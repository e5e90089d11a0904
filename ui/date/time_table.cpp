#include <date/time_table.h>
#include <look/type.h>
#include <parts/words.h>
#include <QHeaderView>

namespace ohmkin::castings {

using look::space;
using look::Text;
using look::typeface;

TimeTable::TimeTable(QWidget* parent) : QTableWidget(parent) {
  setColumnCount(4);
  setHorizontalHeaderLabels({tr("What"), tr("First day"), tr("Last day"), tr("Chance")});
  setFrameShape(QFrame::NoFrame);
  setShowGrid(false);
  setEditTriggers(QAbstractItemView::NoEditTriggers);
  setSelectionBehavior(QAbstractItemView::SelectRows);
  setSelectionMode(QAbstractItemView::SingleSelection);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setTabKeyNavigation(false);
  setWordWrap(false);
  setFont(typeface(Text::small));
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  verticalHeader()->hide();
  verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
  verticalHeader()->setDefaultSectionSize(static_cast<int>(look::metrics(Text::small).lineSpacing()) + space(8));
  horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
  horizontalHeader()->setSectionResizeMode(0, QHeaderView::Stretch);
  horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  horizontalHeader()->setHighlightSections(false);
  horizontalHeader()->setFont(typeface(Text::small));
  setAccessibleName(tr("Time line as a table"));
}

void TimeTable::display(const std::vector<TimeTableRow>& rows) {
  setRowCount(static_cast<int>(rows.size()));
  int at = 0;
  for (const TimeTableRow& row : rows) {
    int column = 0;
    for (const QString& words : {row.what, row.from, row.until, row.chance}) {
      auto* cell = new QTableWidgetItem(words);
      cell->setToolTip(parts::plainTip(words));
      setItem(at, column++, cell);
    }
    ++at;
  }
  updateGeometry();
}

QSize TimeTable::sizeHint() const {
  return {space(320), horizontalHeader()->sizeHint().height() + verticalHeader()->length() + 2};
}
QSize TimeTable::minimumSizeHint() const { return {space(240), sizeHint().height()}; }

}  // namespace ohmkin::castings
