#include <desk/catalogue_thread.h>
#include <look/palette.h>
#include <look/type.h>
#include <measure/calm_table.h>
#include <measure/file_columns.h>
#include <measure/set_up.h>
#include <parts/words.h>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QVBoxLayout>
#include <algorithm>
#include <array>

namespace ohmkin::measure {
namespace {

using desk::plain;
using exchange::ColumnPlan;
using exchange::ColumnUnit;
using exchange::Role;
using look::space;

constexpr int kRowsShown = 6;
constexpr int kNarrowest = 156;

struct Offered {
  ColumnPlan plan;
  QString words;
};

/// Role and unit at once: what a person would say of the column.
const std::vector<Offered>& offered() {
  static const std::vector<Offered> all{
      {{Role::temperature, ColumnUnit::celsius}, FileColumns::tr("temperature, °C")},
      {{Role::temperature, ColumnUnit::fahrenheit}, FileColumns::tr("temperature, °F")},
      {{Role::temperature, ColumnUnit::kelvin}, FileColumns::tr("temperature, K")},
      {{Role::resistance, ColumnUnit::ohm}, FileColumns::tr("resistance, Ω")},
      {{Role::resistance, ColumnUnit::kilohm}, FileColumns::tr("resistance, kΩ")},
      {{Role::resistance, ColumnUnit::megohm}, FileColumns::tr("resistance, MΩ")},
      {{Role::time, ColumnUnit::second}, FileColumns::tr("time, s")},
      {{Role::time, ColumnUnit::millisecond}, FileColumns::tr("time, ms")},
      {{Role::time, ColumnUnit::minute}, FileColumns::tr("time, min")},
      {{Role::time, ColumnUnit::hour}, FileColumns::tr("time, h")},
      {{Role::time, ColumnUnit::clock}, FileColumns::tr("time of day")},
      {{Role::time, ColumnUnit::yearMonthDay}, FileColumns::tr("date, year first")},
      {{Role::time, ColumnUnit::dayMonthYear}, FileColumns::tr("date, day first")},
      {{Role::time, ColumnUnit::monthDayYear}, FileColumns::tr("date, month first")},
      {{Role::curve, ColumnUnit::none}, FileColumns::tr("which curve")},
      {{Role::direction, ColumnUnit::none}, FileColumns::tr("heating or cooling")},
      {{Role::ignored, ColumnUnit::none}, FileColumns::tr("not used")}};
  return all;
}

constexpr std::array<char, 5> kSeparators{',', ';', '\t', '|', ' '};

}  // namespace

FileColumns::FileColumns(QWidget* parent)
    : QWidget(parent),
      separator_(new parts::Choice(tr("Cells are parted by"), this)),
      decimal_(new parts::Choice(tr("Decimals are marked by"), this)),
      rows_(new CalmTable(tr("First rows of the file"), {}, this)) {
  for (const QString& words : {tr("comma"), tr("semicolon"), tr("tab"), tr("bar"), tr("blanks")})
    separator_->addItem(words);
  for (const QString& words : {tr("point, 1.5"), tr("comma, 1,5")}) decimal_->addItem(words);
  for (parts::Choice* choice : {separator_, decimal_}) {
    choice->setMaximumWidth(space(180));
    connect(choice, &QComboBox::currentIndexChanged, this, &FileColumns::takeMarks);
  }
  rows_->setSelectionMode(QAbstractItemView::NoSelection);
  auto* marks = new QHBoxLayout;
  marks->setSpacing(space(8));
  marks->addWidget(parts::fieldName(tr("Cells are parted by"), this));
  marks->addWidget(separator_);
  marks->addSpacing(space(12));
  marks->addWidget(parts::fieldName(tr("Decimals"), this));
  marks->addWidget(decimal_);
  marks->addStretch(1);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(8));
  column->addLayout(marks);
  column->addWidget(rows_);
}

void FileColumns::display(const exchange::Proposal& proposal, const exchange::ReadingPlan& plan) {
  filling_ = true;
  plan_ = plan;
  const auto at = std::find(kSeparators.begin(), kSeparators.end(), plan.separator);
  separator_->setCurrentIndex(static_cast<int>(at - kSeparators.begin()));
  decimal_->setCurrentIndex(plan.decimal == ',' ? 1 : 0);
  makeRoles(proposal);
  filling_ = false;
}

/// Even widths, until they would be too narrow for what a column is said to be: then the table scrolls.
void FileColumns::fitColumns() {
  const int columns = rows_->columnCount();
  for (int column = 0; column < columns; ++column)
    rows_->horizontalHeader()->resizeSection(column, std::max((width() - 2) / columns, space(kNarrowest)));
  rows_->updateGeometry();
}

void FileColumns::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  fitColumns();
}

/// The first row of the table holds the drop-downs.
void FileColumns::makeRoles(const exchange::Proposal& proposal) {
  const int columns = static_cast<int>(plan_.columns.size());
  const int rows = std::min(kRowsShown, static_cast<int>(proposal.firstRows.size()));
  roles_.clear();
  rows_->clear();
  rows_->setColumnCount(columns);
  rows_->setRowCount(rows + 1);
  for (int column = 0; column < columns; ++column) {
    const auto at = static_cast<std::size_t>(column);
    QString name = tr("Column %1").arg(column + 1);
    QString why;
    if (at < proposal.columns.size()) {
      if (!proposal.columns[at].heading.empty()) name = plain(proposal.columns[at].heading);
      why = plain(proposal.columns[at].reason);
    }
    auto* heading = new QTableWidgetItem(name);
    heading->setToolTip(parts::plainTip(why));
    rows_->setHorizontalHeaderItem(column, heading);
    auto* role = new parts::Choice(tr("%1 is").arg(name), rows_);
    role->setAccessibleDescription(why);
    role->setToolTip(parts::plainTip(why));
    int chosen = static_cast<int>(offered().size()) - 1;
    for (int i = 0; i < static_cast<int>(offered().size()); ++i) {
      const Offered& each = offered()[static_cast<std::size_t>(i)];
      role->addItem(each.words);
      if (each.plan == plan_.columns[at]) chosen = i;
    }
    role->setCurrentIndex(chosen);
    connect(role, &QComboBox::currentIndexChanged, this, [this, at](int choice) { takeRole(at, choice); });
    rows_->setCellWidget(0, column, role);
    roles_.push_back(role);
    for (int row = 0; row < rows; ++row) {
      const auto& cells = proposal.firstRows[static_cast<std::size_t>(row)];
      const QString words = at < cells.size() ? plain(cells[at]) : QString();
      auto* cell = new QTableWidgetItem(words);
      cell->setFlags(Qt::ItemIsEnabled);
      cell->setToolTip(parts::plainTip(words));
      cell->setData(Qt::UserRole, plan_.columns[at].role == Role::ignored);
      rows_->setItem(row + 1, column, cell);
    }
  }
  rows_->verticalHeader()->resizeSection(0,
                                         roles_.empty() ? space(36) : roles_.front()->sizeHint().height() + space(4));
  static_cast<CalmTable*>(rows_)->showAtMost(rows + 1);
  fitColumns();
}

void FileColumns::takeRole(std::size_t column, int choice) {
  if (filling_ || choice < 0) return;
  const ColumnPlan wanted = offered()[static_cast<std::size_t>(choice)].plan;
  // Several columns may hold resistances; of everything else there is one.
  if (wanted.role != Role::resistance && wanted.role != Role::ignored)
    for (ColumnPlan& other : plan_.columns)
      if (other.role == wanted.role) other = {};
  plan_.columns[column] = wanted;
  emit corrected(plain(exchange::planText(plan_)));
}

void FileColumns::takeMarks() {
  if (filling_) return;
  plan_.separator = kSeparators.at(static_cast<std::size_t>(std::max(0, separator_->currentIndex())));
  plan_.decimal = decimal_->currentIndex() == 1 ? ',' : '.';
  if (plan_.thousands == plan_.decimal) plan_.thousands = '\0';
  // Another separator makes other columns: those are proposed anew.
  emit corrected(QStringLiteral("separator=%1, decimal=%2")
                     .arg(QStringList{QStringLiteral("comma"), QStringLiteral("semicolon"), QStringLiteral("tab"),
                                      QStringLiteral("pipe"), QStringLiteral("blank")}
                              .value(separator_->currentIndex()),
                          plan_.decimal == ',' ? QStringLiteral("comma") : QStringLiteral("point")));
}

}  // namespace ohmkin::measure
