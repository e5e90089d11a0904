#pragma once
#include <catalogue/clerk.h>
#include <catalogue/ref.h>
#include <parts/cell_view.h>
#include <parts/entry.h>
#include <parts/segmented.h>
#include <workflow/stock_work.h>
#include <QStandardItemModel>

namespace ohmkin::shelves {

/// The whole shelf, what of it is running out, and what came and went lately.
class ShelfDesk : public QWidget {
  Q_OBJECT

 public:
  enum Part { all, low, movements };
  explicit ShelfDesk(Clerk& clerk, QWidget* parent = nullptr);
  void reload();
  void takeKeyboard();
  void showPart(Part part) { parts_->choose(part); }
  [[nodiscard]] int count() const { return rows_->rowCount(); }
  [[nodiscard]] QString cell(int row, int column) const { return rows_->item(row, column)->text(); }
  [[nodiscard]] parts::CellView& view() const { return *view_; }
  [[nodiscard]] parts::Entry& filter() const { return *filter_; }

 signals:
  void opened(const ohmkin::shelves::Ref& ref);

 private:
  void displayParts(const std::vector<workflow::PartOnShelf>& shelf);
  void displayMovements(const std::vector<catalog::StockMovement>& movements);
  void addRow(const QStringList& cells, const std::string& part, bool known, bool warn);
  void finish(const QString& none);
  Clerk& clerk_;
  parts::Segmented* parts_;
  parts::Entry* filter_;
  parts::Words* none_;
  parts::CellView* view_;
  QStandardItemModel* rows_;
};

}  // namespace ohmkin::shelves
