#pragma once
#include <catalogue/clerk.h>
#include <catalogue/ref.h>
#include <desk/settings.h>
#include <workflow/edit_rows.h>
#include <QAbstractTableModel>
#include <map>

namespace ohmkin::shelves {

/// All rows of one kind, a page at a time: only where each page begins is kept of what was scrolled past, so that a
/// million rows cost what is seen of them.
class RowModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  static constexpr int kRowsOfPage = 100;
  static constexpr std::size_t kPagesKept = 40;

  RowModel(Clerk& clerk, const desk::Settings& settings, QObject* parent);
  /// From the beginning. `filter` is looked for in every field.
  void ask(const std::string& kind, const QString& filter, int sortColumn, bool descending);
  void refresh();  ///< reads what is held anew, in place
  [[nodiscard]] const workflow::EditKind* kind() const { return kind_; }
  [[nodiscard]] Ref refAt(int row) const;  ///< empty: not read yet
  [[nodiscard]] bool complete() const { return complete_; }

  [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
  [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
  [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
  [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
  bool setData(const QModelIndex& index, const QVariant& value, int role = Qt::EditRole) override;
  [[nodiscard]] bool canFetchMore(const QModelIndex& parent) const override;
  void fetchMore(const QModelIndex& parent) override;

 signals:
  void came(int rows, bool all);  ///< so many are known; `all`: there are no more
  void refused(const ohmkin::Refusal& refusal);
  void busy(bool busy);
  /// A cell was typed over; the table says what becomes of it.
  void edited(const ohmkin::shelves::Ref& ref, const std::string& field, const QString& text);

 private:
  void read(std::size_t page) const;
  void take(std::size_t page, const workflow::Page& rows);
  [[nodiscard]] const workflow::RowOfPage* rowAt(int row) const;
  Clerk& clerk_;
  const desk::Settings& settings_;
  const workflow::EditKind* kind_ = nullptr;
  workflow::PageRequest request_;
  quint64 generation_ = 0;
  int rows_ = 0;
  bool complete_ = true;
  std::vector<std::string> begins_;  ///< PageRequest::after of each page
  std::map<std::size_t, workflow::Page> pages_;
  mutable std::map<std::size_t, bool> asked_;  ///< on their way
};

}  // namespace ohmkin::shelves
