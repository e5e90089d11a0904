#pragma once
#include <catalogue/clerk.h>
#include <desk/settings.h>
#include <parts/cell_view.h>
#include <workflow/edit_changes.h>
#include <QPushButton>
#include <QStandardItemModel>

namespace ohmkin::shelves {

/// The change log, of one thing or of all: who, when, before and after; any of them can be taken back.
class ChangeList : public QWidget {
  Q_OBJECT

 public:
  enum class Of { oneThing, everything };
  ChangeList(Of of, Clerk& clerk, const desk::Settings& settings, QWidget* parent = nullptr);
  void show(const std::string& subject);  ///< empty: everything
  void reload();
  [[nodiscard]] int count() const { return rows_->rowCount(); }
  [[nodiscard]] parts::CellView& view() const { return *view_; }
  [[nodiscard]] QPushButton& revertButton() const { return *revert_; }
  [[nodiscard]] QString told() const { return told_->isHidden() ? QString() : told_->text(); }
  [[nodiscard]] QString detail() const { return detail_->text(); }

 signals:
  void reverted(const ohmkin::workflow::Edited& edited);

 private:
  void display(std::vector<workflow::ChangeShown> changes);
  void chosen();
  void revert();
  void tell(const QString& sentence, bool refused);
  Of of_;
  Clerk& clerk_;
  const desk::Settings& settings_;
  std::string subject_;
  std::vector<workflow::ChangeShown> changes_;
  parts::Words* none_;
  parts::CellView* view_;
  QStandardItemModel* rows_;
  parts::Words* detail_;
  QPushButton* revert_;
  QPushButton* older_;
  parts::Words* told_;
  std::size_t most_;
};

}  // namespace ohmkin::shelves
