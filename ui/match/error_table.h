#pragma once
#include <parts/cell_view.h>
#include <parts/error_plot.h>
#include <QStandardItemModel>

namespace ohmkin::match {

/// The error plot in numbers: a row for each temperature, a column for each curve of it.
class ErrorTable : public parts::CellView {
  Q_OBJECT

 public:
  explicit ErrorTable(QWidget* parent = nullptr);
  void display(const parts::PlotPicture& picture);

 private:
  QStandardItemModel* rows_;
};

}  // namespace ohmkin::match
