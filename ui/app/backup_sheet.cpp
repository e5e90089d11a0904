#include <app/backup_sheet.h>
#include <app/backup_words.h>
#include <catalog/catalogue_error.h>
#include <desk/catalogue_thread.h>
#include <look/type.h>
#include <parts/flow_layout.h>
#include <parts/words.h>
#include <QFileInfo>
#include <numeric>

namespace ohmkin::app {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

namespace {

constexpr std::uintmax_t kReadAtOnce = 256U << 20U;  // bytes of all of them together that are read without being asked

QPushButton* button(const QString& words, QWidget* parent) {
  auto* made = new QPushButton(words, parent);
  made->setMinimumHeight(space(34));
  made->setAutoDefault(false);
  return made;
}

}  // namespace

BackupSheet::BackupSheet(QWidget& window, std::function<QStringList()> unsaved)
    : Overlay(tr("Backups"), window),
      unsaved_(std::move(unsaved)),
      busy_(new parts::BusyLine(&panel())),
      none_((new parts::Words(tr("There is no backup yet. One is made before the first change of a day, and whenever "
                                 "you make one."),
                              &panel()))
                ->painted(Paint::quiet)),
      list_(new parts::CellView(tr("Backups, newest first"), &panel())),
      rows_(new QStandardItemModel(this)),
      fault_((new parts::Words({}, &panel()))->painted(Paint::warning)) {
  list_->setModel(rows_);
  auto* column = new QVBoxLayout(&panel());
  column->setContentsMargins(space(24), space(20), space(24), space(20));
  column->setSpacing(space(10));
  column->addLayout(makeHead());
  column->addWidget(makeTrouble());
  column->addWidget(busy_);
  column->addWidget(none_);
  column->addWidget(list_, 1);
  column->addWidget(fault_);
  column->addWidget(makeQuestion());
  column->addLayout(makeFoot());
  wire();
}

QLayout* BackupSheet::makeHead() {
  title_ = (new parts::Words({}, &panel()))->sized(typeface(Text::headline));
  where_ = (new parts::Words({}, &panel()))->sized(typeface(Text::small))->painted(Paint::quiet);
  auto* column = new QVBoxLayout;
  column->setSpacing(space(4));
  column->addWidget(title_);
  column->addWidget(where_);
  return column;
}

/// What is wrong with the catalogue itself, and what saves the most where no backup does.
QWidget* BackupSheet::makeTrouble() {
  auto* sheet = new parts::Panel(parts::Panel::Kind::caution, &panel());
  troubleWords_ = (new parts::Words({}, sheet))->painted(Paint::warning);
  salvage_ = button(tr("&Save what still reads…"), sheet);
  auto* row = new QHBoxLayout(sheet);
  row->setContentsMargins(space(16), space(12), space(12), space(12));
  row->setSpacing(space(16));
  row->addWidget(troubleWords_, 1);
  row->addWidget(salvage_, 0, Qt::AlignVCenter);
  trouble_ = sheet;
  sheet->hide();
  return sheet;
}

QWidget* BackupSheet::makeQuestion() {
  question_ = new QWidget(&panel());
  questionWords_ = new parts::Words({}, question_);
  goBack_ = button(tr("&Go back"), question_);
  auto* leave = button(tr("&Leave it as it is"), question_);
  auto* buttons = new QHBoxLayout;
  buttons->setSpacing(space(8));
  buttons->addWidget(goBack_);
  buttons->addWidget(leave);
  buttons->addStretch(1);
  auto* column = new QVBoxLayout(question_);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(8));
  column->addWidget(questionWords_);
  column->addLayout(buttons);
  question_->hide();
  connect(goBack_, &QPushButton::clicked, this, &BackupSheet::goBack);
  connect(leave, &QPushButton::clicked, this, &BackupSheet::giveUp);

  outcome_ = new QWidget(&panel());
  told_ = new parts::Words({}, outcome_);
  undo_ = button(tr("&Undo: back to what was there…"), outcome_);
  openSaved_ = button(tr("&Open the new file"), outcome_);
  auto* row = new QHBoxLayout(outcome_);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(space(16));
  row->addWidget(told_, 1);
  row->addWidget(undo_, 0, Qt::AlignTop);
  row->addWidget(openSaved_, 0, Qt::AlignTop);
  auto* both = new QWidget(&panel());
  auto* stacked = new QVBoxLayout(both);
  stacked->setContentsMargins(0, 0, 0, 0);
  stacked->addWidget(question_);
  stacked->addWidget(outcome_);
  return both;
}

QLayout* BackupSheet::makeFoot() {
  choose_ = button(tr("Go &back to it…"), &panel());
  make_ = button(tr("&Make a backup now"), &panel());
  check_ = button(tr("C&heck all"), &panel());
  close_ = button(tr("&Close"), &panel());
  auto* row = new QHBoxLayout;
  row->setSpacing(space(8));
  for (QPushButton* each : {choose_, make_, check_}) row->addWidget(each);
  row->addStretch(1);
  row->addWidget(close_);
  return row;
}

void BackupSheet::wire() {
  connect(list_, &parts::CellView::opened, this, [this](const QModelIndex& index) { askBack(index.row()); });
  connect(list_, &QTableView::doubleClicked, this, [this](const QModelIndex& index) { askBack(index.row()); });
  connect(list_->selectionModel(), &QItemSelectionModel::currentRowChanged, this, &BackupSheet::chosen);
  connect(choose_, &QPushButton::clicked, this, [this] { askBack(list_->currentIndex().row()); });
  connect(make_, &QPushButton::clicked, this, &BackupSheet::makeOne);
  connect(check_, &QPushButton::clicked, this, &BackupSheet::checkAll);
  connect(close_, &QPushButton::clicked, this, &BackupSheet::reject);
  connect(salvage_, &QPushButton::clicked, this, &BackupSheet::askSalvage);
  connect(undo_, &QPushButton::clicked, this, [this] { askBack(rowOf(kept_)); });
  connect(openSaved_, &QPushButton::clicked, this, [this] {
    vanish();
    emit savedOpenAsked(saved_);
  });
}

void BackupSheet::offer(const QString& file) {
  if (file_ != file) {
    backups_.clear();
    rows_->setRowCount(0);
  }
  file_ = file;
  kept_.clear();
  title_->setText(tr("Backups of %1").arg(QFileInfo(file).fileName()));
  where_->setText(tr("They lie beside it, in %1. Keep a copy on another disk too: these go with this one.")
                      .arg(QFileInfo(desk::plain(catalog::backupFolder(file.toStdString()).string())).fileName()));
  tell({}, false);
  giveUp();
  load();
  appear();
  list_->setFocus(Qt::PopupFocusReason);
}

void BackupSheet::load() {
  worker_.ask(listing, [this, file = std::filesystem::path(file_.toStdString())](const auto&) -> desk::Worker::Then {
    auto all = workflow::knownBackups(file);
    std::optional<Refusal> whyNot;
    try {
      (void)catalog::Catalogue::openToRead(file);
    } catch (const catalog::CatalogueError& error) {
      whyNot = error.refusal();
    }
    return [this, all = std::move(all), whyNot] { display(all, whyNot); };
  });
}

/// What was found out about one stays said of it.
void BackupSheet::display(std::vector<workflow::BackupState> backups, const std::optional<Refusal>& whyNot) {
  std::vector<bool> looked;
  for (workflow::BackupState& each : backups) {
    const int before = rowOf(each.backup.file);
    const auto at = static_cast<std::size_t>(std::max(before, 0));
    looked.push_back(before >= 0 && looked_[at]);
    if (before >= 0) each.fault = backups_[at].fault;
  }
  backups_ = std::move(backups);
  looked_ = std::move(looked);
  rows_->clear();
  rows_->setHorizontalHeaderLabels({tr("Taken"), tr("Why"), tr("Size"), tr("Whole?")});
  for (std::size_t i = 0; i < backups_.size(); ++i) {
    const catalog::Backup& each = backups_[i].backup;
    QList<QStandardItem*> cells;
    for (const QString& text : {whenTaken(each), whyTaken(each.reason), sizeOf(each), QString()}) {
      cells << new QStandardItem(text);
      cells.back()->setToolTip(parts::plainTip(desk::plain(each.file.string())));
    }
    rows_->appendRow(cells);
    displayState(static_cast<int>(i));
  }
  list_->fitColumns();
  if (!backups_.empty()) list_->setCurrentIndex(rows_->index(0, 0));
  troubleWords_->setText(whyNot ? desk::refusalSentence(*whyNot) : QString());
  trouble_->setVisible(whyNot.has_value());
  salvage_->setVisible(whyNot && workflow::salvageMayHelp(*whyNot));
  none_->setVisible(backups_.empty());
  list_->setVisible(!backups_.empty());
  const auto bytes = std::accumulate(backups_.begin(), backups_.end(), std::uintmax_t{0},
                                     [](auto sum, const auto& each) { return sum + each.backup.bytes; });
  checks_ = checks_ || bytes <= kReadAtOnce;
  chosen();
  checkNext();
}

void BackupSheet::displayState(int row) {
  const auto at = static_cast<std::size_t>(row);
  const workflow::BackupState& of = backups_[at];
  QStandardItem* cell = rows_->item(row, state);
  cell->setText(!looked_[at] ? tr("not looked at") : of.fault ? tr("damaged") : tr("whole"));
  cell->setData(!looked_[at], parts::kCellQuiet);
  cell->setData(of.fault ? desk::refusalSentence(*of.fault) : QString(), parts::kCellWrong);
}

void BackupSheet::checkAll() {
  looked_.assign(backups_.size(), false);
  for (int row = 0; row < rows_->rowCount(); ++row) displayState(row);
  checks_ = true;
  checkNext();
}

/// One after the other, newest first, so that each is said as soon as it is known.
void BackupSheet::checkNext() {
  const auto next = std::find(looked_.begin(), looked_.end(), false);
  busy_->setRunning(working_ || (checks_ && isVisible() && next != looked_.end()));
  if (!checks_ || !isVisible() || next == looked_.end()) return;
  const auto& backup = backups_[static_cast<std::size_t>(next - looked_.begin())].backup;
  rows_->item(static_cast<int>(next - looked_.begin()), state)->setText(tr("is being read …"));
  worker_.ask(checking, [this, backup](const auto&) -> desk::Worker::Then {
    return [this, found = workflow::checked(backup)] {
      if (const int row = rowOf(found.backup.file); row >= 0) {
        backups_[static_cast<std::size_t>(row)] = found;
        looked_[static_cast<std::size_t>(row)] = true;
        displayState(row);
        chosen();
      }
      checkNext();
    };
  });
}

void BackupSheet::chosen() {
  const workflow::BackupState* one = at(list_->currentIndex().row());
  const std::optional<Refusal> fault = one != nullptr ? one->fault : std::nullopt;
  fault_->setText(fault ? desk::refusalSentence(*fault) : QString());
  fault_->setVisible(fault.has_value());
  if (wanted_ && (one == nullptr || one->backup.file != wanted_->file)) giveUp();
  showState();
}

void BackupSheet::showState() {
  const workflow::BackupState* one = at(list_->currentIndex().row());
  choose_->setEnabled(one != nullptr && !working_ && !one->fault);
  check_->setEnabled(!backups_.empty() && !working_);
  for (QPushButton* each : {salvage_, goBack_, undo_, close_}) each->setEnabled(!working_);
  make_->setEnabled(!working_ && trouble_->isHidden());
}

void BackupSheet::tell(const QString& sentence, bool refused) {
  told_->painted(refused ? Paint::warning : Paint::accent)->setText(sentence);
  told_->setVisible(!sentence.isEmpty());
  undo_->setVisible(!sentence.isEmpty() && !refused && !kept_.empty() && !working_);
  openSaved_->hide();
  outcome_->setVisible(!sentence.isEmpty());
}

int BackupSheet::rowOf(const std::filesystem::path& file) const {
  const auto at =
      std::find_if(backups_.begin(), backups_.end(), [&](const auto& each) { return each.backup.file == file; });
  return at == backups_.end() ? -1 : static_cast<int>(at - backups_.begin());
}

const workflow::BackupState* BackupSheet::at(int row) const {
  return row >= 0 && row < static_cast<int>(backups_.size()) ? &backups_[static_cast<std::size_t>(row)] : nullptr;
}

void BackupSheet::hideEvent(QHideEvent* event) {
  Overlay::hideEvent(event);
  worker_.drop(checking);
  giveUp();
  busy_->setRunning(false);
}

QRect BackupSheet::place(const QSize& window) const {
  const int width = std::min(space(820), window.width() - 2 * space(32));
  const int height = std::min(space(640), window.height() - 2 * space(32));
  return {(window.width() - width) / 2, (window.height() - height) / 2, width, height};
}

}  // namespace ohmkin::app
