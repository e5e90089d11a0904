#include <desk/catalogue_thread.h>
#include <look/type.h>
#include <measure/run_table.h>
#include <measure/suspect_bars.h>
#include <parts/words.h>
#include <QLocale>

namespace ohmkin::measure {
namespace {

using desk::plain;
using desk::shown;
using look::space;

QString likeliestOf(const workflow::RunPreview& run, const workflow::BenchFamilies& families) {
  if (!run.whose) return RunTable::tr("no curve");
  if (run.whose->suspects.empty() || run.whose->none > run.whose->suspects.front().probability)
    return RunTable::tr("none of these, %1").arg(chanceWords(run.whose->none));
  const bench::Suspect& first = run.whose->suspects.front();
  return RunTable::tr("%1, %2").arg(plain(families.curves[first.family].name), chanceWords(first.probability));
}

}  // namespace

RunTable::RunTable(QWidget* parent)
    : CalmTable(tr("Curves found"),
                {tr("Curve in the file"), tr("Part"), tr("Lot"), tr("Claims to be"), tr("Readings"), tr("From … to"),
                 tr("Whose it is")},
                parent) {
  setSelectionBehavior(QAbstractItemView::SelectItems);
  setEditTriggers(QAbstractItemView::AnyKeyPressed | QAbstractItemView::DoubleClicked |
                  QAbstractItemView::EditKeyPressed);
  connect(this, &QTableWidget::cellChanged, this, [this] {
    if (!filling_) emit edited();
  });
  connect(this, &QTableWidget::currentCellChanged, this, [this](int row, int /*column*/, int before) {
    if (!filling_ && row != before && row >= 0) emit chosen(row);
  });
}

void RunTable::display(const std::vector<workflow::RunPreview>& runs, const workflow::BenchFamilies& families,
                       const DisplayUnits& units) {
  filling_ = true;
  const int row = std::max(0, currentRow());
  const int column = std::max(0, currentColumn());
  runs_ = runs;
  setRowCount(0);
  for (const workflow::RunPreview& run : runs) {
    addWords({run.title.empty() ? tr("the file's only curve") : plain(run.title), plain(run.said.part),
              plain(run.said.lot), plain(run.said.family), QLocale().toString(static_cast<qulonglong>(run.rows)),
              run.rows == 0 ? QString()
                            : tr("%1 to %2").arg(shown(print(run.span.low, units)), shown(print(run.span.high, units))),
              likeliestOf(run, families)});
    const int at = rowCount() - 1;
    item(at, bringIn)->setFlags(item(at, bringIn)->flags() | Qt::ItemIsUserCheckable);
    item(at, bringIn)->setCheckState(run.said.leaveOut ? Qt::Unchecked : Qt::Checked);
    for (const int own : {part, lot, family}) item(at, own)->setFlags(item(at, own)->flags() | Qt::ItemIsEditable);
  }
  setCurrentCell(std::min(row, rowCount() - 1), column);
  fitColumns();
  filling_ = false;
}

std::vector<workflow::RunSaid> RunTable::said() const {
  std::vector<workflow::RunSaid> all;
  for (int row = 0; row < rowCount() && row < static_cast<int>(runs_.size()); ++row) {
    workflow::RunSaid said;
    said.title = runs_[static_cast<std::size_t>(row)].title;
    said.leaveOut = item(row, bringIn)->checkState() != Qt::Checked;
    said.part = item(row, part)->text().trimmed().toStdString();
    said.lot = item(row, lot)->text().trimmed().toStdString();
    said.family = item(row, family)->text().trimmed().toStdString();
    all.push_back(std::move(said));
  }
  return all;
}

}  // namespace ohmkin::measure
