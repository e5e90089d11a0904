#include <catalogue/field_words.h>
#include <catalogue/part_table.h>
#include <desk/catalogue_thread.h>
#include <look/type.h>
#include <parts/words.h>
#include <QHBoxLayout>
#include <QVBoxLayout>
#include <algorithm>

namespace ohmkin::shelves {

using desk::plain;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

PartModel::PartModel(workflow::EditPart part, DisplayUnits units, QObject* parent)
    : QAbstractTableModel(parent), part_(std::move(part)), units_(units) {
  rows_.push_back(emptyRow());
}

bool PartModel::empty(const std::vector<Cell>& row) {
  return std::all_of(row.begin(), row.end(), [](const Cell& cell) { return cell.text.trimmed().isEmpty(); });
}

void PartModel::setRows(const std::vector<workflow::FieldTexts>& rows) {
  beginResetModel();
  rows_.clear();
  for (const workflow::FieldTexts& texts : rows) {
    std::vector<Cell> row = emptyRow();
    for (std::size_t i = 0; i < row.size(); ++i)
      if (const auto at = texts.find(part_.fields[i].name); at != texts.end()) row[i].text = plain(at->second);
    rows_.push_back(std::move(row));
  }
  rows_.push_back(emptyRow());
  endResetModel();
}

std::vector<workflow::FieldTexts> PartModel::rows() const {
  std::vector<workflow::FieldTexts> all;
  for (const std::vector<Cell>& row : rows_) {
    workflow::FieldTexts texts;
    for (std::size_t i = 0; i < row.size(); ++i)
      if (!row[i].text.trimmed().isEmpty()) texts[part_.fields[i].name] = row[i].text.trimmed().toStdString();
    all.push_back(std::move(texts));
  }
  while (!all.empty() && all.back().empty()) all.pop_back();
  return all;
}

QString PartModel::complaint(const QModelIndex& index, const QString& text) const {
  if (text.trimmed().isEmpty()) return {};  // said when it is saved: the row may still be filled
  return complaintOf(part_.fields.at(static_cast<std::size_t>(index.column())), text, units_);
}

void PartModel::setWrong(std::size_t row, const std::string& field, const QString& sentence) {
  if (row >= rows_.size()) return;
  for (std::size_t i = 0; i < part_.fields.size(); ++i)
    if (part_.fields[i].name == field || (field.empty() && i == 0)) rows_[row][i].said = sentence;
  emit dataChanged(index(static_cast<int>(row), 0), index(static_cast<int>(row), columnCount() - 1));
}

void PartModel::clearSaid() {
  for (std::vector<Cell>& row : rows_)
    for (Cell& cell : row) cell.said.clear();
  emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
}

QString PartModel::firstWrong() const {
  for (std::size_t r = 0; r < rows_.size(); ++r)
    for (std::size_t c = 0; c < rows_[r].size(); ++c) {
      const Cell& cell = rows_[r][c];
      const QString sentence = cell.wrong.isEmpty() ? cell.said : cell.wrong;
      if (!sentence.isEmpty())
        return tr("Row %1, %2: %3").arg(r + 1).arg(plain(part_.fields[c].label).toLower(), sentence);
    }
  return {};
}

void PartModel::remove(int row) {
  if (row < 0 || row + 1 >= rowCount()) return;  // the empty one stays
  beginRemoveRows({}, row, row);
  rows_.erase(rows_.begin() + row);
  endRemoveRows();
  emit changed();
}

void PartModel::move(int row, int by) {
  const int to = row + by;
  if (row < 0 || row + 1 >= rowCount() || to < 0 || to + 1 >= rowCount()) return;
  beginResetModel();
  std::swap(rows_[static_cast<std::size_t>(row)], rows_[static_cast<std::size_t>(to)]);
  endResetModel();
  emit changed();
}

int PartModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}
int PartModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(part_.fields.size());
}

QVariant PartModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid()) return {};
  const Cell& cell = rows_.at(static_cast<std::size_t>(index.row())).at(static_cast<std::size_t>(index.column()));
  switch (role) {
    case Qt::DisplayRole:
    case Qt::EditRole:
      return cell.text;
    case parts::kCellWrong:
      return cell.wrong.isEmpty() ? cell.said : cell.wrong;
    case parts::kCellChoices: {
      return choicesOf(part_.fields.at(static_cast<std::size_t>(index.column())));
    }
    case Qt::ToolTipRole: {
      const QString wrong = cell.wrong.isEmpty() ? cell.said : cell.wrong;
      return parts::plainTip(wrong.isEmpty() ? cell.text : wrong);
    }
    default:
      return {};
  }
}

QVariant PartModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal || section >= columnCount()) return {};
  const workflow::EditField& field = part_.fields.at(static_cast<std::size_t>(section));
  if (role == Qt::DisplayRole) return plain(field.label) + (field.required ? QStringLiteral(" *") : QString());
  if (role == Qt::ToolTipRole) return parts::plainTip(helpOf(field));
  return {};
}

Qt::ItemFlags PartModel::flags(const QModelIndex& index) const {
  return index.isValid() ? Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsEditable : Qt::NoItemFlags;
}

bool PartModel::setData(const QModelIndex& index, const QVariant& value, int role) {
  if (role != Qt::EditRole || !index.isValid()) return false;
  std::vector<Cell>& row = rows_.at(static_cast<std::size_t>(index.row()));
  Cell& cell = row.at(static_cast<std::size_t>(index.column()));
  const QString text = value.toString().trimmed();
  if (text == cell.text) return true;
  cell = {text, complaint(index, text), {}};
  emit dataChanged(index, index);
  if (index.row() + 1 == rowCount() && !empty(row)) {
    beginInsertRows({}, rowCount(), rowCount());
    rows_.push_back(emptyRow());
    endInsertRows();
  }
  emit changed();
  return true;
}

PartTable::PartTable(const workflow::EditPart& part, const DisplayUnits& units, QWidget* parent)
    : QWidget(parent),
      model_(new PartModel(part, units, this)),
      view_(new parts::CellView(plain(part.label), this)),
      wrong_((new parts::Words({}, this))->sized(typeface(Text::small))->painted(Paint::warning)),
      remove_(new QPushButton(tr("Remove row"), this)),
      earlier_(new QPushButton(tr("One place earlier"), this)) {
  view_->setModel(model_);
  view_->setCheck([this](const QModelIndex& index, const QString& text) { return model_->complaint(index, text); },
                  true);
  view_->setSelectionBehavior(QAbstractItemView::SelectItems);
  view_->showAtMost(9, 2);
  remove_->setToolTip(tr("Remove the chosen row (Ctrl+Delete)"));
  auto* head = new QHBoxLayout;
  head->setSpacing(space(8));
  head->addWidget((new parts::Words(plain(part.label), this))->sized(typeface(Text::strong)), 1);
  for (QPushButton* button : {earlier_, remove_}) {
    button->setFont(typeface(Text::small));
    button->setMinimumHeight(std::max(24, space(28)));
    head->addWidget(button);
  }
  earlier_->setVisible(part.inOrder);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(4));
  column->addLayout(head);
  column->addWidget(view_);
  column->addWidget(wrong_);
  wrong_->hide();
  connect(model_, &PartModel::changed, this, [this] {
    fit();
    emit changed();
  });
  connect(model_, &QAbstractItemModel::dataChanged, this, &PartTable::fit);
  connect(model_, &QAbstractItemModel::modelReset, this, [this] {
    view_->fitColumns();
    fit();
  });
  const auto chosen = [this] { return view_->currentIndex(); };
  connect(remove_, &QPushButton::clicked, this, [this, chosen] { model_->remove(chosen().row()); });
  connect(view_, &parts::CellView::removeAsked, model_, &PartModel::remove);
  connect(earlier_, &QPushButton::clicked, this, [this, chosen] {
    const QModelIndex at = chosen();
    model_->move(at.row(), -1);
    view_->setCurrentIndex(model_->index(std::max(0, at.row() - 1), std::max(0, at.column())));
  });
}

void PartTable::fit() {
  const QString wrong = model_->firstWrong();
  wrong_->setText(wrong);
  wrong_->setVisible(!wrong.isEmpty());
  view_->updateGeometry();
}

}  // namespace ohmkin::shelves
