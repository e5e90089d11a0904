#include <match/error_table.h>
#include <parts/words.h>
#include <QLocale>
#include <cmath>
#include <map>

namespace ohmkin::match {
namespace {

/// Temperatures that print alike are one row.
qint64 tenths(double temperature) { return std::llround(10 * temperature); }

QString number(double value) { return QLocale().toString(value, 'f', 1); }
QString signedNumber(double value) {
  const QString digits = number(std::abs(value));
  return value < -0.05 ? QStringLiteral("−") + digits : value > 0.05 ? QLatin1Char('+') + digits : digits;
}

}  // namespace

ErrorTable::ErrorTable(QWidget* parent)
    : CellView(tr("Indicated minus true, as a table"), parent), rows_(new QStandardItemModel(this)) {
  setModel(rows_);
}

void ErrorTable::display(const parts::PlotPicture& picture) {
  rows_->clear();
  QStringList headings{tr("Coolant, %1").arg(picture.temperatureUnit)};
  std::map<qint64, QStringList> rows;
  for (const parts::PlotSeries& series : picture.series) {
    const qsizetype column = headings.size();
    headings << tr("%1: error, %2").arg(series.name, picture.errorUnit);
    if (!series.now) headings << tr("± (k = 2), %1").arg(picture.errorUnit);
    for (const parts::PlotPoint& point : series.points) {
      QStringList& cells = rows[tenths(point.at)];
      while (cells.size() < column) cells << QString();
      cells << signedNumber(point.error);
      if (!series.now) cells << number(point.uncertainty);
    }
  }
  rows_->setHorizontalHeaderLabels(headings);
  for (auto& [at, cells] : rows) {
    if (cells.isEmpty()) cells << QString();
    cells[0] = number(static_cast<double>(at) / 10);
    QList<QStandardItem*> items;
    for (const QString& cell : cells) {
      items << new QStandardItem(cell);
      items.back()->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
    }
    rows_->appendRow(items);
  }
  fitColumns();
}

}  // namespace ohmkin::match
