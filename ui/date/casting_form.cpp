#include <date/casting_form.h>
#include <look/type.h>
#include <QAbstractItemView>
#include <QCompleter>
#include <QHBoxLayout>
#include <QVBoxLayout>

namespace ohmkin::castings {
namespace {

using dating::CastingRole;
using dating::FoundOn;
using look::space;
using parts::fieldName;

constexpr std::array kRoles{CastingRole::head, CastingRole::block, CastingRole::intake, CastingRole::housing};

FoundOn placeOf(CastingRole role) {
  switch (role) {
    case CastingRole::head:
      return FoundOn::head;
    case CastingRole::block:
      return FoundOn::block;
    case CastingRole::intake:
      return FoundOn::intake;
    case CastingRole::housing:
      return FoundOn::housing;
  }
  return FoundOn::head;
}

CastingRole roleIn(const CastingForm::Row& row) {
  return kRoles.at(static_cast<std::size_t>(std::max(0, row.role->currentIndex())));
}

bool blank(const CastingForm::Row& row) {
  return row.number->text().trimmed().isEmpty() && row.code->text().trimmed().isEmpty();
}

void complete(parts::Entry* entry, const QStringList& names) {
  delete entry->completer();
  auto* completer = new QCompleter(names, entry);
  completer->setCaseSensitivity(Qt::CaseInsensitive);
  completer->setFilterMode(Qt::MatchContains);
  entry->setCompleter(completer);
  parts::makeRoomy(*completer->popup());
}

}  // namespace

CastingForm::CastingForm(QWidget* parent)
    : QWidget(parent),
      grid_(new QGridLayout),
      stamp_(new parts::Entry(tr("Assembly stamp"), this)),
      stampLayout_(new parts::Choice(tr("Assembly stamp written as"), this)),
      recut_(new parts::Tick(tr("re-cut pad"), this)),
      line_(new parts::Entry(tr("Vehicle line"), this)),
      year_(new parts::Entry(tr("Model year"), this)),
      built_(new parts::Entry(tr("Build date"), this)) {
  auto* castings = new parts::Panel(parts::Panel::Kind::sheet, this);
  auto* column = new QVBoxLayout(castings);
  column->setContentsMargins(space(16), space(12), space(16), space(14));
  grid_->setHorizontalSpacing(space(8));
  grid_->setVerticalSpacing(space(6));
  const QStringList heads{tr("Casting"), tr("Casting number"), tr("Date code, ? unreadable"), tr("Written as")};
  for (int i = 0; i < heads.size(); ++i) grid_->addWidget(fieldName(heads[i], castings), 0, i);
  grid_->setColumnStretch(0, 3);
  grid_->setColumnStretch(1, 3);
  grid_->setColumnStretch(2, 5);
  grid_->setColumnStretch(3, 5);
  column->addLayout(grid_);
  column->addStretch(1);
  recut_->setToolTip(tr("The pad under the stamp was machined or stamped again: the stamp then weighs less."));
  auto* stampName = new parts::Words(tr("Assembly stamp"), castings);
  stampName->setWordWrap(false);
  stampRow_[0] = stampName;
  stampRow_[1] = recut_;
  stampRow_[2] = stamp_;
  stampRow_[3] = stampLayout_;
  connectEntry(stamp_);
  connect(recut_, &QAbstractButton::toggled, this, [this] { rowChanged(); });
  connect(stampLayout_, &QComboBox::currentIndexChanged, this, [this] { rowChanged(); });
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(space(16));
  row->addWidget(castings, 7);
  row->addWidget(makeVehicle(), 3);
  addRow();
}

QWidget* CastingForm::makeVehicle() {
  auto* vehicle = new parts::Panel(parts::Panel::Kind::sheet, this);
  auto* column = new QVBoxLayout(vehicle);
  column->setContentsMargins(space(16), space(12), space(16), space(14));
  column->setSpacing(space(6));
  line_->setPlaceholderText(tr("not known"));
  year_->setPlaceholderText(QStringLiteral("1968"));
  built_->setPlaceholderText(QStringLiteral("1968-03-21"));
  column->addWidget(fieldName(tr("Vehicle line"), vehicle));
  column->addWidget(line_);
  auto* pair = new QGridLayout;
  pair->setHorizontalSpacing(space(8));
  pair->setVerticalSpacing(space(6));
  pair->addWidget(fieldName(tr("Model year"), vehicle), 0, 0);
  pair->addWidget(fieldName(tr("or build date"), vehicle), 0, 1);
  pair->addWidget(year_, 1, 0);
  pair->addWidget(built_, 1, 1);
  pair->setColumnStretch(0, 2);
  pair->setColumnStretch(1, 3);
  column->addLayout(pair);
  column->addStretch(1);
  for (parts::Entry* entry : {line_, year_, built_}) connectEntry(entry);
  return vehicle;
}

void CastingForm::connectEntry(parts::Entry* entry) {
  connect(entry, &QLineEdit::textChanged, this, [this] { rowChanged(); });
  connect(entry, &parts::Entry::left, this, [this](int direction) { focusNextPrevChild(direction > 0); });
}

void CastingForm::addRow() {
  if (rows_.size() >= kMostCastings) return;
  QWidget* sheet = stampRow_[0]->parentWidget();
  const int n = static_cast<int>(rows_.size()) + 1;
  Row row{new parts::Choice(tr("Casting %1").arg(n), sheet), new parts::Entry(tr("Casting number %1").arg(n), sheet),
          new parts::Entry(tr("Date code of casting %1").arg(n), sheet),
          new parts::Choice(tr("Casting %1 written as").arg(n), sheet)};
  for (const CastingRole role : kRoles) row.role->addItem(QString::fromUtf8(dating::text(placeOf(role)).data()));
  if (n == 1) {
    row.number->setPlaceholderText(QStringLiteral("30418"));
    row.code->setPlaceholderText(QStringLiteral("H 2? 1"));
  } else {
    row.number->setPlaceholderText(tr("another"));
  }
  complete(row.number, castings_);
  offerLayouts(row.layout, FoundOn::head);
  connectEntry(row.number);
  connectEntry(row.code);
  connect(row.role, &QComboBox::currentIndexChanged, this, [this, role = row.role, layout = row.layout](int index) {
    if (index >= 0) offerLayouts(layout, placeOf(kRoles.at(static_cast<std::size_t>(index))));
    Q_UNUSED(role)
    rowChanged();
  });
  connect(row.layout, &QComboBox::currentIndexChanged, this, [this] { rowChanged(); });
  rows_.push_back(row);
  grid_->addWidget(row.role, n, 0);
  grid_->addWidget(row.number, n, 1);
  grid_->addWidget(row.code, n, 2);
  grid_->addWidget(row.layout, n, 3);
  for (int i = 0; i < 4; ++i) grid_->addWidget(stampRow_[i], n + 1, i);  // moves there
  QWidget* before = n > 1 ? static_cast<QWidget*>(rows_[rows_.size() - 2].layout) : nullptr;
  for (QWidget* each :
       {static_cast<QWidget*>(row.role), static_cast<QWidget*>(row.number), static_cast<QWidget*>(row.code),
        static_cast<QWidget*>(row.layout), static_cast<QWidget*>(recut_), static_cast<QWidget*>(stamp_),
        static_cast<QWidget*>(stampLayout_), static_cast<QWidget*>(line_)}) {
    if (before != nullptr) setTabOrder(before, each);
    before = each;
  }
}

void CastingForm::rowChanged() {
  if (filling_) return;
  if (!blank(rows_.back())) addRow();
  emit changed();
}

void CastingForm::offerLayouts(parts::Choice* choice, FoundOn place) {
  const QSignalBlocker quiet(choice);
  const QString kept = choice->currentData().toString();
  choice->clear();
  choice->addItem(place == FoundOn::assemblyStamp ? tr("any stamp layout") : tr("casting's own"), QString());
  for (const LayoutName& layout : layouts_)
    if (layout.foundOn == place) choice->addItem(tr("%1 (%2)").arg(layout.name, layout.id), layout.id);
  choice->setCurrentIndex(std::max(0, choice->findData(kept)));
}

void CastingForm::setLayouts(const std::vector<LayoutName>& layouts) {
  layouts_ = layouts;
  for (const Row& row : rows_) offerLayouts(row.layout, placeOf(roleIn(row)));
  offerLayouts(stampLayout_, FoundOn::assemblyStamp);
}

void CastingForm::setNames(const QStringList& lines, const QStringList& castings) {
  castings_ = castings;
  complete(line_, lines);
  for (const Row& row : rows_) complete(row.number, castings);
}

void CastingForm::fill(const workflow::DateQuestion& question) {
  filling_ = true;
  for (std::size_t i = 0; i < std::max(rows_.size(), question.castings.size()); ++i) {
    if (i >= rows_.size()) addRow();
    if (i >= rows_.size()) break;
    const workflow::CastingRead read = i < question.castings.size() ? question.castings[i] : workflow::CastingRead{};
    rows_[i].role->setCurrentIndex(
        static_cast<int>(std::find(kRoles.begin(), kRoles.end(), read.role) - kRoles.begin()));
    rows_[i].number->setText(QString::fromStdString(read.number));
    rows_[i].code->setText(QString::fromStdString(read.code));
    rows_[i].layout->setCurrentIndex(std::max(0, rows_[i].layout->findData(QString::fromStdString(read.layout))));
  }
  stamp_->setText(QString::fromStdString(question.stamp));
  recut_->setChecked(question.padRecut);
  line_->setText(QString::fromStdString(question.line));
  year_->setText(question.year ? QString::number(question.year->value) : QString());
  built_->setText(question.built ? QString::fromStdString(isoDate(*question.built)) : QString());
  filling_ = false;
  rowChanged();
}

void CastingForm::takeKeyboard() {
  parts::Entry* first = rows_.front().number;
  first->setFocus(Qt::ShortcutFocusReason);
  first->selectAll();
}

bool CastingForm::empty() const {
  return std::all_of(rows_.begin(), rows_.end(), blank) && stamp_->text().trimmed().isEmpty();
}

Expected<workflow::DateQuestion> CastingForm::question() const {
  workflow::DateQuestion asked;
  for (const Row& row : rows_)
    if (!blank(row))
      asked.castings.push_back({"", roleIn(row), row.number->text().trimmed().toStdString(),
                                row.code->text().trimmed().toStdString(),
                                row.layout->currentData().toString().toStdString()});
  asked.stamp = stamp_->text().trimmed().toStdString();
  asked.stampLayout = stampLayout_->currentData().toString().toStdString();
  asked.padRecut = recut_->isChecked();
  asked.line = line_->text().trimmed().toStdString();
  bool yearRead = true;
  const QString year = year_->text().trimmed();
  const int number = year.isEmpty() ? 0 : year.toInt(&yearRead);
  const bool yearWrong = !year.isEmpty() && (!yearRead || number < 1900 || number > 2100);
  year_->setWrong(yearWrong);
  if (!year.isEmpty() && !yearWrong) asked.year = ModelYear{number};
  const QString built = built_->text().trimmed();
  const auto day =
      built.isEmpty() ? Expected<Date>(Date{}) : parseDate(built.toStdString(), tr("Build date").toStdString());
  built_->setWrong(!day);
  if (yearWrong)
    return refuse("year-unreadable", tr("Model year").toStdString(), "'" + year.toStdString() + "'",
                  tr("four digits, for example 1968").toStdString());
  if (!day) return tl::make_unexpected(day.error());
  if (!built.isEmpty()) asked.built = *day;
  return asked;
}

}  // namespace ohmkin::castings
