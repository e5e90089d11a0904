#include <parts/words.h>
#include <plan/plan_grid.h>

namespace ohmkin::plan {

void GridModel::setPicture(GridPicture picture) {
  beginResetModel();
  picture_ = std::move(picture);
  endResetModel();
}

void GridModel::turn(bool enginesDown) {
  if (enginesDown == enginesDown_) return;
  beginResetModel();
  enginesDown_ = enginesDown;
  endResetModel();
}

const QStringList& GridModel::names(Qt::Orientation orientation) const {
  return (orientation == Qt::Vertical) == enginesDown_ ? picture_.engines : picture_.dashes;
}

int GridModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(names(Qt::Vertical).size());
}
int GridModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(names(Qt::Horizontal).size());
}

QVariant GridModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const GridCell& cell = this->cell(index);
  if (role == Qt::DisplayRole) return cell.part;
  if (role == Qt::ToolTipRole) return parts::plainTip(cell.sentence);
  if (role != Qt::AccessibleTextRole) return {};
  QStringList all{tr("%1 with %2").arg(picture_.dashes[dashOf(index)], picture_.engines[engineOf(index)])};
  if (cell.best) all << PlanGrid::tr("best for this dash");
  for (const QString& words : {cell.part, cell.added, cell.worst, cell.sentence, cell.era})
    if (!words.isEmpty()) all << words;
  if (!cell.look.isEmpty()) all << PlanGrid::tr("Look: %1").arg(cell.look);
  return all.join(QStringLiteral(", "));
}

QVariant GridModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (role == Qt::DisplayRole) return names(orientation).value(section);
  if (role == Qt::ToolTipRole) return parts::plainTip(names(orientation).value(section));
  return {};
}

}  // namespace ohmkin::plan
