#include <catalogue/field_words.h>
#include <catalogue/row_model.h>
#include <desk/catalogue_thread.h>
#include <parts/cell_view.h>
#include <parts/words.h>

namespace ohmkin::shelves {

using desk::plain;
using desk::shown;

RowModel::RowModel(Clerk& clerk, const desk::Settings& settings, QObject* parent)
    : QAbstractTableModel(parent), clerk_(clerk), settings_(settings) {}

void RowModel::ask(const std::string& kind, const QString& filter, int sortColumn, bool descending) {
  beginResetModel();
  ++generation_;
  kind_ = workflow::editKind(kind);
  request_ = {};
  request_.kind = kind;
  request_.most = kRowsOfPage;
  request_.descending = descending;
  if (kind_ != nullptr && sortColumn > 0 && sortColumn < static_cast<int>(kind_->fields.size()))
    request_.sortBy = kind_->fields[static_cast<std::size_t>(sortColumn)].name;
  if (!filter.isEmpty()) request_.filter[""] = filter.toStdString();
  rows_ = 0;
  complete_ = kind_ == nullptr;
  begins_ = {std::string()};
  pages_.clear();
  asked_.clear();
  endResetModel();
  if (!complete_) read(0);
}

void RowModel::refresh() {
  if (kind_ == nullptr) return;
  std::vector<std::size_t> held;
  held.reserve(pages_.size());
  for (const auto& [page, rows] : pages_) held.push_back(page);
  asked_.clear();
  for (const std::size_t page : held) read(page);
  if (held.empty()) read(0);
}

void RowModel::read(std::size_t page) const {
  if (asked_[page]) return;
  asked_[page] = true;
  auto* self = const_cast<RowModel*>(this);  // NOLINT: a view asks a const model for what is then fetched
  emit self->busy(true);
  workflow::PageRequest request = request_;
  request.after = begins_.at(page);
  // Not a lane: several pages may be in sight. One of an older question is dropped when it comes.
  clerk_.tell([self, page, request, generation = generation_, units = settings_.units()](
                  OpenFile& open, const std::stop_token& stop) -> Clerk::Then {
    if (stop.stop_requested()) return {};
    auto rows = workflow::page(open.catalogue(), request, units);
    return [self, page, generation, rows = std::move(rows)] {
      if (generation != self->generation_) return;
      self->asked_.erase(page);
      if (rows) self->take(page, *rows);
      else emit self->refused(rows.error());
      if (self->asked_.empty()) emit self->busy(false);
    };
  });
}

void RowModel::take(std::size_t page, const workflow::Page& rows) {
  const int first = static_cast<int>(page) * kRowsOfPage;
  const int end = first + static_cast<int>(rows.rows.size());
  pages_[page] = rows;
  while (pages_.size() > kPagesKept) {  // the one farthest from what was read now
    const auto front = pages_.begin();
    const auto back = std::prev(pages_.end());
    pages_.erase(page - front->first > back->first - page ? front : back);
  }
  const bool last = page + 1 == begins_.size();
  if (last && rows.more && !rows.rows.empty()) begins_.push_back(rows.rows.back().place);
  if (last) complete_ = !rows.more;
  if (end > rows_) {
    beginInsertRows({}, rows_, end - 1);
    rows_ = end;
    endInsertRows();
  } else if (last && end < rows_) {
    beginRemoveRows({}, end, rows_ - 1);
    rows_ = end;
    endRemoveRows();
  }
  if (end > first) emit dataChanged(index(first, 0), index(end - 1, columnCount() - 1));
  emit came(rows_, complete_);
}

const workflow::RowOfPage* RowModel::rowAt(int row) const {
  const auto page = pages_.find(static_cast<std::size_t>(row / kRowsOfPage));
  if (page == pages_.end()) return nullptr;
  const auto at = static_cast<std::size_t>(row % kRowsOfPage);
  return at < page->second.rows.size() ? &page->second.rows[at] : nullptr;
}

Ref RowModel::refAt(int row) const {
  const workflow::RowOfPage* at = rowAt(row);
  return at == nullptr || kind_ == nullptr ? Ref() : Ref{kind_->name, at->key};
}

int RowModel::rowCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : rows_; }

int RowModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() || kind_ == nullptr ? 0 : static_cast<int>(kind_->fields.size());
}

QVariant RowModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const workflow::RowOfPage* row = rowAt(index.row());
  if (row == nullptr) {
    if (role == Qt::DisplayRole) {
      const auto page = static_cast<std::size_t>(index.row() / kRowsOfPage);
      if (page < begins_.size()) read(page);
    }
    return role == parts::kCellWaits ? QVariant(true) : QVariant();
  }
  const auto column = static_cast<std::size_t>(index.column());
  const QString text = column < row->texts.size() ? plain(row->texts[column]) : QString();
  switch (role) {
    case Qt::DisplayRole:
      return shown(text.toStdString());
    case Qt::EditRole:
      return text;
    case Qt::ToolTipRole:
      return parts::plainTip(text);
    case parts::kCellChoices:
      return choicesOf(kind_->fields.at(column));
    default:
      return {};
  }
}

QVariant RowModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal || kind_ == nullptr || section >= columnCount()) return {};
  const workflow::EditField& field = kind_->fields.at(static_cast<std::size_t>(section));
  if (role == Qt::DisplayRole) return plain(field.label);
  if (role == Qt::ToolTipRole) return parts::plainTip(helpOf(field));
  return {};
}

Qt::ItemFlags RowModel::flags(const QModelIndex& index) const {
  if (!index.isValid()) return Qt::NoItemFlags;
  const bool there = rowAt(index.row()) != nullptr;
  return Qt::ItemIsEnabled | Qt::ItemIsSelectable | (there ? Qt::ItemIsEditable : Qt::NoItemFlags);
}

bool RowModel::setData(const QModelIndex& index, const QVariant& value, int role) {
  if (role != Qt::EditRole || !index.isValid()) return false;
  const QString text = value.toString().trimmed();
  if (text == data(index, Qt::EditRole).toString()) return true;
  emit edited(refAt(index.row()), kind_->fields.at(static_cast<std::size_t>(index.column())).name, text);
  return true;
}

bool RowModel::canFetchMore(const QModelIndex& parent) const { return !parent.isValid() && !complete_; }

void RowModel::fetchMore(const QModelIndex& parent) {
  if (!parent.isValid() && !complete_) read(begins_.size() - 1);
}

}  // namespace ohmkin::shelves
