#include <circuit/faults.h>
#include <desk/catalogue_thread.h>
#include <jobs/job_forms.h>
#include <look/type.h>
#include <parts/names.h>
#include <QHBoxLayout>
#include <QVBoxLayout>

namespace ohmkin::jobs {

using desk::plain;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

Form::Form(const QString& heading, const QString& order, QWidget* parent)
    : Panel(Kind::sheet, parent),
      heading_((new parts::Words(heading, this))->sized(typeface(Text::heading))),
      help_((new parts::Words({}, this))->sized(typeface(Text::small))->painted(Paint::quiet)),
      grid_(new QGridLayout),
      wrong_((new parts::Words({}, this))->painted(Paint::warning)),
      order_(new QPushButton(order, this)) {
  auto* leave = new QPushButton(tr("Cancel"), this);
  for (QPushButton* button : {order_, leave}) button->setMinimumHeight(space(36));
  grid_->setHorizontalSpacing(space(12));
  grid_->setVerticalSpacing(space(3));
  grid_->setColumnStretch(0, 1);
  grid_->setColumnStretch(1, 1);
  auto* row = new QHBoxLayout;
  row->setSpacing(space(8));
  row->addWidget(order_);
  row->addWidget(leave);
  row->addStretch(1);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(space(16), space(14), space(16), space(14));
  column->setSpacing(space(8));
  column->addWidget(heading_);
  column->addWidget(help_);
  column->addLayout(grid_);
  column->addWidget(wrong_);
  column->addLayout(row);
  wrong_->hide();
  help_->hide();
  connect(order_, &QPushButton::clicked, this, &Form::done);
  connect(leave, &QPushButton::clicked, this, &Form::left);
}

void Form::add(const QString& name, QWidget* field, bool wide) {
  if (wide && column_ == 1) {
    row_ += 2;
    column_ = 0;
  }
  auto* label = (new parts::Words(name, this))->sized(typeface(Text::small))->painted(Paint::quiet);
  grid_->addWidget(label, row_, column_, 1, wide ? 2 : 1);
  grid_->addWidget(field, row_ + 1, column_, 1, wide ? 2 : 1);
  if (wide || column_ == 1) row_ += 2;
  column_ = wide || column_ == 1 ? 0 : 1;
  if (!fields_.empty()) setTabOrder(fields_.back(), field);
  setTabOrder(field, order_);
  fields_.push_back(field);
  if (auto* entry = qobject_cast<parts::Entry*>(field))
    connect(entry, &parts::Entry::left, this, [this, at = fields_.size() - 1](int direction) {
      if (direction < 0 && at > 0) fields_[at - 1]->setFocus(Qt::BacktabFocusReason);
      else if (direction > 0 && at + 1 < fields_.size()) fields_[at + 1]->setFocus(Qt::TabFocusReason);
      else if (direction > 0) send();
    });
}

void Form::setHeading(const QString& heading, const QString& order) {
  heading_->setText(heading);
  order_->setText(order);
}

void Form::explain(const QString& sentence) {
  help_->setText(sentence);
  help_->setVisible(!sentence.isEmpty());
}

void Form::refuse(const QString& sentence) {
  wrong_->setText(sentence);
  wrong_->setVisible(!sentence.isEmpty());
}

void Form::send() {
  if (order_->isEnabled()) emit done();
}

QStringList Form::said() const {
  QStringList all;
  for (const QWidget* field : fields_) {
    if (const auto* entry = qobject_cast<const parts::Entry*>(field)) all << entry->text();
    else if (const auto* area = qobject_cast<const parts::TextArea*>(field)) all << area->text();
    else if (const auto* choice = qobject_cast<const parts::Choice*>(field)) all << choice->currentText();
  }
  return all;
}

void Form::opened() {
  before_ = said();
  refuse({});
}

FieldsForm::FieldsForm(QWidget* parent)
    : Form(tr("New job"), tr("&Save"), parent),
      reference_(new parts::Entry(tr("Reference"), this)),
      vehicle_(new parts::Entry(tr("Vehicle"), this)),
      engine_(new parts::Entry(tr("Engine"), this)),
      seen_(new parts::TextArea(tr("What was seen"), 2, this)),
      note_(new parts::TextArea(tr("Note"), 3, this)) {
  QString help = plain(workflow::kReferenceHelp);
  help[0] = help[0].toUpper();
  reference_->setAccessibleDescription(help);
  explain(tr("Reference: %1.").arg(plain(workflow::kReferenceHelp)));
  add(tr("Reference"), reference_, true);
  add(tr("Vehicle"), vehicle_, false);
  add(tr("Engine"), engine_, false);
  add(tr("What was seen"), seen_, true);
  add(tr("Note"), note_, true);
  connect(reference_, &QLineEdit::textChanged, this, [this] { reference_->setWrong(false); });
}

void FieldsForm::begin() {
  setHeading(tr("New job"), tr("&Save"));
  job_.reset();
  changed_.clear();
  put({});
}

void FieldsForm::begin(const catalog::JobRecord& job) {
  setHeading(tr("Job %1").arg(job.id.value), tr("&Save"));
  job_ = job.id;
  changed_ = job.changed;
  put(job.said);
}

void FieldsForm::put(const catalog::JobFields& said) {
  before_ = said;
  reference_->setText(plain(said.reference));
  vehicle_->setText(plain(said.vehicle));
  engine_->setText(plain(said.engine));
  seen_->setText(plain(said.seen));
  note_->setText(plain(said.note));
  opened();
}

catalog::JobFields FieldsForm::fields() const {
  catalog::JobFields said = before_;  // part, cause and state are not of this form
  said.reference = reference_->text().toStdString();
  said.vehicle = vehicle_->text().toStdString();
  said.engine = engine_->text().toStdString();
  said.seen = seen_->text().toStdString();
  said.note = note_->text().toStdString();
  return said;
}

NoteForm::NoteForm(QWidget* parent) : Form(tr("Note"), tr("&Add"), parent), note_(new parts::Entry(tr("Note"), this)) {
  add(tr("A line more under the note"), note_, true);
}

void NoteForm::begin() {
  note_->clear();
  opened();
}

CloseForm::CloseForm(QWidget* parent)
    : Form(tr("Close the job"), tr("Close &it"), parent),
      part_(new parts::Entry(tr("Part fitted"), this)),
      cause_(new parts::Entry(tr("Cause found"), this)),
      symptom_(new parts::Choice(tr("What the gauge did"), this)) {
  explain(tr("Leave empty what is not known. Causes are counted, and help the next search for a fault."));
  part_->setPlaceholderText(tr("none"));
  cause_->setPlaceholderText(tr("none found"));
  std::vector<parts::NameWords> names;
  if (const auto book = circuit::usualFaults())
    for (const auto& fault : book->faults) names.push_back({plain(fault.name), {}});
  parts::offerNames(*cause_, names);
  symptom_->addItem(tr("not said"), QString());
  for (std::size_t i = 1; i < circuit::kSymptoms; ++i) {
    const auto symptom = static_cast<circuit::Symptom>(i);
    symptom_->addItem(plain(std::string(circuit::symptomName(symptom))),
                      plain(std::string(circuit::symptomCode(symptom))));
  }
  add(tr("Part fitted"), part_, false);
  add(tr("What the gauge did"), symptom_, false);
  add(tr("Cause found"), cause_, true);
}

void CloseForm::begin(const workflow::JobView& view) {
  QString part = plain(view.job.said.part);
  for (const auto& document : view.documents)
    if (part.isEmpty() && document.kept.kind == catalog::DocumentKind::match) part = plain(document.kept.part);
  part_->setText(part);
  cause_->setText(plain(view.causeWords));
  cause_->setWrong(false);
  symptom_->setCurrentIndex(std::max(0, symptom_->findData(plain(view.job.said.symptom))));
  opened();
}

Expected<workflow::JobClosing> CloseForm::closing() const {
  workflow::JobClosing closing;
  closing.part = part_->text().trimmed().toStdString();
  closing.symptom = symptom_->currentData().toString().toStdString();
  const QString said = cause_->text().trimmed();
  if (said.isEmpty()) return closing;
  const auto book = circuit::usualFaults();
  if (!book) return tl::make_unexpected(book.error());
  for (const auto& fault : book->faults)
    if (said.compare(plain(fault.name), Qt::CaseInsensitive) == 0 || said == plain(fault.code))
      closing.cause = fault.code;
  if (closing.cause.empty())
    return ohmkin::refuse(
        "cause-unknown", tr("cause").toStdString(), "'" + said.toStdString() + "'",
        tr("one of the causes offered as you type; what else there is to say goes into a note").toStdString());
  return closing;
}

EraseForm::EraseForm(QWidget* parent)
    : Form(tr("Erase for good"), tr("&Erase for good"), parent),
      number_(new parts::Entry(tr("Number of the job"), this)) {
  add(tr("Type the number of the job"), number_, false);
  connect(number_, &QLineEdit::textChanged, this, &EraseForm::look);
}

void EraseForm::begin(const catalog::JobRecord& job) {
  id_ = job.id.value;
  setHeading(tr("Erase job %1 for good").arg(id_), tr("&Erase for good"));
  explain(
      tr("The job, its notes and what was kept with it are overwritten in the file, and no undo brings them back. "
         "Pieces sold stay counted. Backups made before still hold it."));
  number_->clear();
  opened();
  look();
}

void EraseForm::look() {
  const auto typed = workflow::readJobNumber(number_->text().trimmed().toStdString(), {});
  order().setEnabled(typed && typed->value == id_);
}

}  // namespace ohmkin::jobs
