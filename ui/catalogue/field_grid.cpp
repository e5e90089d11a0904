#include <catalogue/field_grid.h>
#include <look/type.h>
#include <algorithm>

namespace ohmkin::shelves {

using look::space;

namespace {

constexpr int kMostColumns = 3;

}  // namespace

FieldGrid::FieldGrid(QWidget* parent) : QWidget(parent), grid_(new QGridLayout(this)) {
  grid_->setContentsMargins(0, 0, 0, 0);
  grid_->setHorizontalSpacing(space(12));
  grid_->setVerticalSpacing(space(8));
}

void FieldGrid::setFields(const std::vector<workflow::EditField>& fields) {
  for (FieldRow* row : rows_) {
    grid_->removeWidget(row);
    row->hide();
    row->deleteLater();
  }
  rows_.clear();
  for (const workflow::EditField& field : fields) rows_.push_back(new FieldRow(field, this));
  columns_ = 0;
  arrange();
}

FieldRow* FieldGrid::row(std::string_view field) const {
  const auto at = std::find_if(rows_.begin(), rows_.end(), [&](FieldRow* row) { return row->field().name == field; });
  return at == rows_.end() ? nullptr : *at;
}

int FieldGrid::columnsThatFit() const { return std::clamp(width() / space(200), 1, kMostColumns); }

void FieldGrid::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  arrange();
}

void FieldGrid::arrange() {
  const int columns = columnsThatFit();
  if (columns == columns_) return;
  columns_ = columns;
  for (int column = 0; column < kMostColumns; ++column) grid_->setColumnStretch(column, column < columns ? 1 : 0);
  int line = 0;
  int at = 0;
  for (FieldRow* row : rows_) {
    grid_->removeWidget(row);
    if (row->wide() && at > 0) {
      ++line;
      at = 0;
    }
    grid_->addWidget(row, line, at, 1, row->wide() ? columns : 1);
    at = row->wide() ? columns : at + 1;
    if (at >= columns) {
      ++line;
      at = 0;
    }
    row->show();
  }
  updateGeometry();
}

}  // namespace ohmkin::shelves
