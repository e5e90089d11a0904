#include <catalog/catalogue_error.h>
#include <look/type.h>
#include <measure/answer_view.h>
#include <measure/file_words.h>
#include <measure/import_list.h>
#include <measure/lanes.h>
#include <QLocale>

namespace ohmkin::measure {

using desk::plain;
using look::Paint;
using look::space;

ImportList::ImportList(desk::CatalogueThread& thread, QWidget* parent)
    : QWidget(parent),
      thread_(thread),
      none_((new parts::Words(tr("No file has been brought in yet. Drop one on the window, or open it under From a "
                                 "file.")))
                ->painted(Paint::quiet)),
      table_(new CalmTable(tr("Imports"), {tr("Import"), tr("File"), tr("When"), tr("By"), tr("Readings"), tr("Curves"),
                                           tr("Measured with"), tr("State")})),
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
  column->addWidget(headedPanel(tr("What came in from files"), {none_, table_, question_, buttons, outcome_}, this));
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
    return [this, records = catalog::imports(open.catalogue)] { display(records); };
  });
}

void ImportList::tell(const QString& outcome, bool refused) {
  outcome_->painted(refused ? Paint::warning : Paint::accent)->setText(outcome);
  outcome_->setVisible(!outcome.isEmpty());
}

void ImportList::takeKeyboard() { table_->setFocus(Qt::ShortcutFocusReason); }

void ImportList::display(std::vector<catalog::ImportRecord> records) {
  const QSignalBlocker quiet(table_);
  records_ = std::move(records);
  table_->setRowCount(0);
  for (const catalog::ImportRecord& record : records_) {
    QStringList with;
    for (const std::string& words : {record.meter, record.bath})
      if (!words.empty()) with << plain(words);
    table_->addWords({QString::number(record.id.value), plain(record.file), whenWords(record.at), plain(record.who),
                      QLocale().toString(static_cast<qlonglong>(record.rows)), QString::number(record.curves),
                      with.isEmpty() ? tr("not said") : with.join(QStringLiteral(", ")),
                      record.stands() ? tr("stands") : tr("taken out %1").arg(whenWords(record.undone))});
    if (!record.stands())
      for (int column = 0; column < table_->columnCount(); ++column)
        table_->item(table_->rowCount() - 1, column)->setData(Qt::UserRole, true);
  }
  table_->fitColumns();
  if (!records_.empty()) table_->setCurrentCell(0, 0);
  none_->setVisible(records_.empty());
  table_->setVisible(!records_.empty());
  chosen();
}

void ImportList::chosen() {
  sure_ = false;
  const int row = table_->currentRow();
  const bool stands =
      row >= 0 && row < static_cast<int>(records_.size()) && records_[static_cast<std::size_t>(row)].stands();
  undo_->setText(tr("&Take it out again…"));
  undo_->setEnabled(stands);
  undo_->setVisible(!records_.empty());
  leave_->hide();
  question_->hide();
}

/// Asked once in so many words; the second press does it.
void ImportList::pressed() {
  const catalog::ImportRecord& record = records_.at(static_cast<std::size_t>(table_->currentRow()));
  if (sure_) return undo(record.id);
  sure_ = true;
  question_->setText(tr("Take the %1 readings and %2 curves of %3 out of the catalogue? The file itself stays where it "
                        "is and can be brought in again.")
                         .arg(QLocale().toString(static_cast<qlonglong>(record.rows)))
                         .arg(record.curves)
                         .arg(plain(record.file)));
  question_->show();
  undo_->setText(tr("Yes, &take it out"));
  leave_->show();
}

void ImportList::undo(catalog::ImportNumber id) {
  undo_->setEnabled(false);
  thread_.ask(
      undoing,
      [this, id, file = file_, who = who_.toStdString()](const desk::OpenCatalogue&) -> desk::CatalogueThread::Then {
        try {
          auto catalogue = catalog::Catalogue::open(file.toStdString(), catalog::Access::readWrite);
          const auto record = catalog::undoImport(catalogue, id, who);
          if (!record)
            return [this, why = desk::refusalSentence(record.error())] {
              tell(tr("Not taken out. %1").arg(why), true);
              reload();
            };
          return [this, words = tr("Import %1, %2, is out again.").arg(id.value).arg(plain(record->file))] {
            tell(words, false);
            reload();
            emit undone();
          };
        } catch (const catalog::CatalogueError& error) {
          return [this, why = desk::refusalSentence(error.refusal())] {
            tell(tr("Not taken out. %1").arg(why), true);
            chosen();
          };
        }
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
