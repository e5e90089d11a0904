#pragma once
#include <catalogue/row_model.h>
#include <parts/busy_line.h>
#include <parts/cell_view.h>
#include <parts/entry.h>
#include <QTimer>

namespace ohmkin::shelves {

/// Every kind of row as a table: sorted, filtered, edited in place. Reads by one clerk and changes by the page's.
class TableDesk : public QWidget {
  Q_OBJECT

 public:
  TableDesk(Clerk& reader, Clerk& writer, const desk::Settings& settings, QWidget* parent = nullptr);
  void catalogueOpened();
  void showKind(const std::string& kind);
  void refresh();
  void takeKeyboard();
  [[nodiscard]] parts::Choice& kindChoice() const { return *kinds_; }
  [[nodiscard]] parts::Entry& filter() const { return *filter_; }
  [[nodiscard]] parts::CellView& view() const { return *view_; }
  [[nodiscard]] RowModel& model() const { return *model_; }
  [[nodiscard]] QString told() const { return told_->isHidden() ? QString() : told_->text(); }
  [[nodiscard]] QVariantMap layoutState() const;
  void restoreLayout(const QVariantMap& state);

 signals:
  void opened(const ohmkin::shelves::Ref& ref);
  void saved(const ohmkin::workflow::Edited& edited);

 private:
  void ask();
  void rememberColumns();
  void save(const Ref& ref, const std::string& field, const QString& text);
  void tell(const QString& sentence, bool refused);
  Clerk& writer_;
  Clerk& reader_;
  const desk::Settings& settings_;
  parts::Choice* kinds_;
  parts::Entry* filter_;
  parts::Words* count_;
  parts::Words* told_;
  parts::CellView* view_;
  RowModel* model_;
  parts::BusyLine* busy_;
  QTimer settle_;
  int sortColumn_ = 0;
  bool descending_ = false;
  bool fitted_ = false;
  std::string shownKind_;
  qint64 total_ = -1;
  QVariantMap columns_;  ///< by kind
};

}  // namespace ohmkin::shelves
