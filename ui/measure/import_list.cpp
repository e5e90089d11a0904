#include <catalog/catalogue_error.h>
#include <look/type.h>
#include <measure/answer_view.h>
#include <measure/file_words.h>
#include <measure/import_list.h>
#include <measure/lanes.h>
#include <QLocale>
#include <algorithm>
#include <array>

namespace ohmkin::measure {

using desk::plain;
using look::Paint;
using look::space;

namespace {

/// Runs of a file go with their file; those kept by hand stand for themselves.
std::vector<KeptEntry> entriesOf(const catalog::Catalogue& catalogue) {
  std::vector<KeptEntry> entries;
  for (catalog::ImportRecord& import : catalog::imports(catalogue))
    entries.push_back({std::move(import), std::nullopt});
  for (catalog::RunRecord& run : catalog::runs(catalogue))
    if (!run.ofImport) entries.push_back({std::nullopt, std::move(run)});
  // ISO 8601 times of UTC sort as they read.
  std::stable_sort(entries.begin(), entries.end(),
                   [](const KeptEntry& a, const KeptEntry& b) { return a.at() > b.at(); });
  return entries;
}

QString partWords(const catalog::RunDescription& said) {
  if (said.part.empty()) return ImportList::tr("no part said");
  return said.lot.empty() ? plain(said.part) : ImportList::tr("%1 of lot %2").arg(plain(said.part), plain(said.lot));
}

QString stateWords(const KeptEntry& entry) {
  if (!entry.stands()) return ImportList::tr("taken out %1").arg(whenWords(entry.import->undone));
  const bool used = entry.import ? entry.import->curves > 0 : entry.run->curve.has_value();
  return used ? ImportList::tr("matching uses it") : ImportList::tr("kept, without a curve");
}

QStringList cellsOf(const KeptEntry& entry) {
  QStringList with;
  for (const std::string& words : entry.import ? std::array{entry.import->meter, entry.import->bath}
                                               : std::array{entry.run->meter, entry.run->bath})
    if (!words.empty()) with << plain(words);
  return {entry.import ? ImportList::tr("import %1").arg(entry.import->id.value)
                       : ImportList::tr("run %1").arg(entry.run->id.value),
          entry.import ? plain(entry.import->file) : ImportList::tr("by hand: %1").arg(partWords(entry.run->said)),
          whenWords(entry.at()),
          plain(entry.import ? entry.import->who : entry.run->who),
          QLocale().toString(static_cast<qlonglong>(entry.rows())),
          QString::number(entry.import       ? entry.import->curves
                          : entry.run->curve ? 1
                                             : 0),
          stateWords(entry),
          with.isEmpty() ? ImportList::tr("not said") : with.join(QStringLiteral(", "))};
}

}  // namespace

QString KeptEntry::name() const {
  return import ? ImportList::tr("import %1, %2").arg(import->id.value).arg(plain(import->file))
                : ImportList::tr("run %1, %2").arg(run->id.value).arg(partWords(run->said));
}

ImportList::ImportList(desk::CatalogueThread& thread, QWidget* parent)
    : QWidget(parent),
      thread_(thread),
      none_((new parts::Words(tr("Nothing is kept yet: keep a curve under By hand, or bring in a file.")))
                ->painted(Paint::quiet)),
      table_(new CalmTable(tr("What is kept"), {tr("Number"), tr("What"), tr("When"), tr("By"), tr("Readings"),
                                                tr("Curves"), tr("State"), tr("Measured with")})),
      undo_(new QPushButton(tr("&Take it out again…"))),
      leave_(new QPushButton(tr("&Leave it in"))),
      question_(new parts::Words),
      outcome_(new parts::Words) {
  table_->showAtMost(14);
  auto* buttons = new QWidget;
  auto* row = new QHBoxLayout(buttons);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(space(8));
  for (QPushButton* button : {undo_, leave_}) {
    button->setMinimumHeight(space(36));
    row->addWidget(button);
  }
  row->addStretch(1);
  leave_->hide();
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(headedPanel(tr("What is kept of the bench"), {none_, table_, question_, buttons, outcome_}, this));
  column->addStretch(1);
  connect(table_, &QTableWidget::currentCellChanged, this, &ImportList::chosen);
  connect(undo_, &QPushButton::clicked, this, &ImportList::pressed);
  connect(leave_, &QPushButton::clicked, this, &ImportList::chosen);
  outcome_->hide();
  display({});
}

void ImportList::catalogueOpened(const QString& file) {
  file_ = file;
  tell({}, false);
  reload();
}

void ImportList::reload() {
  thread_.ask(listing, [this](const desk::OpenCatalogue& open) -> desk::CatalogueThread::Then {
    return [this, entries = entriesOf(open.catalogue)] { display(entries); };
  });
}

void ImportList::tell(const QString& outcome, bool refused) {
  outcome_->painted(refused ? Paint::warning : Paint::accent)->setText(outcome);
  outcome_->setVisible(!outcome.isEmpty());
}

void ImportList::takeKeyboard() {
  if (table_->isVisibleTo(this)) table_->setFocus(Qt::ShortcutFocusReason);
  else focusNextChild();  // nothing is kept: the keyboard must not stay with what is hidden
}

void ImportList::display(std::vector<KeptEntry> entries) {
  const QSignalBlocker quiet(table_);
  entries_ = std::move(entries);
  table_->setRowCount(0);
  for (const KeptEntry& entry : entries_) {
    table_->addWords(cellsOf(entry));
    for (int column = 0; !entry.stands() && column < table_->columnCount(); ++column)
      table_->item(table_->rowCount() - 1, column)->setData(Qt::UserRole, true);
  }
  table_->fitColumns();
  if (!entries_.empty()) table_->setCurrentCell(0, 0);
  none_->setVisible(entries_.empty());
  table_->setVisible(!entries_.empty());
  chosen();
}

void ImportList::chosen() {
  sure_ = false;
  const int row = table_->currentRow();
  const bool stands =
      row >= 0 && row < static_cast<int>(entries_.size()) && entries_[static_cast<std::size_t>(row)].stands();
  undo_->setText(tr("&Take it out again…"));
  undo_->setEnabled(stands);
  undo_->setVisible(!entries_.empty());
  leave_->hide();
  question_->hide();
}

/// Asked once in so many words; the second press does it.
void ImportList::pressed() {
  const KeptEntry entry = entries_.at(static_cast<std::size_t>(table_->currentRow()));
  if (sure_) {
    undo(entry);
    return;
  }
  sure_ = true;
  const QString count = QLocale().toString(static_cast<qlonglong>(entry.rows()));
  question_->setText(entry.import
                         ? tr("Take %1 out of the catalogue, with its %2 readings and what curves were made of "
                              "them? The file itself stays where it is and can be brought in again.")
                               .arg(entry.name(), count)
                         : tr("Take %1 out of the catalogue, with its %2 readings and the curve that was made "
                              "of them? They were typed in: they cannot be brought back.")
                               .arg(entry.name(), count));
  question_->show();
  undo_->setText(tr("Yes, &take it out"));
  leave_->show();
}

void ImportList::undo(const KeptEntry& entry) {
  undo_->setEnabled(false);
  thread_.ask(
      undoing,
      [this, entry, file = file_, who = who_.toStdString()](const desk::OpenCatalogue&) -> desk::CatalogueThread::Then {
        std::optional<Refusal> refused;
        try {
          auto catalogue = catalog::Catalogue::open(file.toStdString(), catalog::Access::readWrite);
          if (entry.import) {
            if (const auto done = catalog::undoImport(catalogue, entry.import->id, who); !done) refused = done.error();
          } else if (const auto done = catalog::removeRun(catalogue, entry.run->id, who); !done) {
            refused = done.error();
          }
        } catch (const catalog::CatalogueError& error) {
          // Not to be written: what is open can still be read.
          refused = error.refusal();
        }
        return [this, refused, name = entry.name()] {
          tell(refused ? tr("Not taken out. %1").arg(desk::refusalSentence(*refused))
                       : tr("Out again: %1. Matching no longer uses it.").arg(name),
               refused.has_value());
          reload();
          if (!refused) emit undone();
        };
      });
}

QString ImportList::asText() const {
  QStringList lines;
  for (int row = 0; row < table_->rowCount(); ++row) {
    QStringList cells;
    for (int column = 0; column < table_->columnCount(); ++column) cells << table_->item(row, column)->text();
    lines << cells.join(QLatin1Char('\t'));
  }
  return lines.join(QLatin1Char('\n'));
}

}  // namespace ohmkin::measure
