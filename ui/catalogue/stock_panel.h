#pragma once
#include <catalogue/clerk.h>
#include <parts/cell_view.h>
#include <parts/entry.h>
#include <parts/panel.h>
#include <workflow/stock_work.h>
#include <QPushButton>
#include <QStandardItemModel>

namespace ohmkin::shelves {

/// What is on the shelf of one part, and every piece that comes or goes. Quiet until a movement is asked for.
class StockPanel : public QWidget {
  Q_OBJECT

 public:
  enum class Movement { sell, receive, count, move, minimum };

  explicit StockPanel(Clerk& clerk, QWidget* parent = nullptr);
  void show(const std::string& part);  ///< reads what is there
  void reload();
  void sellOne();
  void ask(Movement movement);  ///< opens the small form of it
  void giveUp();                ///< and closes it

  [[nodiscard]] QString words() const { return words_->text(); }
  [[nodiscard]] QString told() const { return told_->isHidden() ? QString() : told_->text(); }
  [[nodiscard]] parts::Entry& quantity() const { return *quantity_; }
  [[nodiscard]] parts::Entry& bin() const { return *bin_; }
  [[nodiscard]] parts::Entry& otherBin() const { return *other_; }
  [[nodiscard]] bool asking() const { return !form_->isHidden(); }

 signals:
  /// A movement was made: for undo. 0: a minimum, which has none.
  void moved(qint64 movement, const QString& words);

 private:
  using Done = Expected<QString>;
  QWidget* makeForm();
  void display(const workflow::PartOnShelf& shelf, const std::vector<catalog::StockMovement>& movements);
  void run(std::function<Expected<workflow::MovementDone>(catalog::Catalogue&, const workflow::MovementSaid&)> what);
  void runMinimum(int minimum);
  void take();
  void tell(const QString& sentence, bool refused);
  Clerk& clerk_;
  std::string part_;
  Movement movement_ = Movement::sell;
  parts::Words* words_;
  parts::CellView* bins_;
  QStandardItemModel* binRows_;
  QPushButton* sell_;
  QPushButton* more_;
  QWidget* form_ = nullptr;
  parts::Words* formWords_ = nullptr;
  parts::Entry* quantity_ = nullptr;
  parts::Entry* bin_ = nullptr;
  parts::Entry* other_ = nullptr;
  parts::Words* otherName_ = nullptr;
  parts::Entry* note_ = nullptr;
  QPushButton* do_ = nullptr;
  parts::Words* told_;
  parts::Words* history_;
};

}  // namespace ohmkin::shelves
