#include <catalogue/field_words.h>
#include <catalogue/source_box.h>
#include <look/type.h>
#include <QGridLayout>
#include <QVBoxLayout>
#include <array>

namespace ohmkin::shelves {

using look::space;

namespace {

constexpr std::array kSourceKinds{catalog::SourceKind::published, catalog::SourceKind::makerSheet,
                                  catalog::SourceKind::bench, catalog::SourceKind::commonPractice,
                                  catalog::SourceKind::demo};

workflow::EditField fieldOf(std::string_view name) { return *workflow::editKind("source")->field(name); }

workflow::EditField idField() {
  workflow::EditField id = fieldOf("id");
  id.required = false;
  id.help = SourceBox::tr("Left out, one is made of what it is a source of.").toStdString();
  return id;
}

workflow::EditField confidenceField() {
  workflow::EditField confidence = fieldOf("confidence");
  confidence.required = false;
  return confidence;
}

}  // namespace

SourceBox::SourceBox(QWidget* parent)
    : QWidget(parent),
      tick_(new parts::Tick(tr("State a new source"), this)),
      fields_(new QWidget(this)),
      kind_(new FieldRow(fieldOf("kind"), fields_)),
      citation_(new FieldRow(fieldOf("citation"), fields_)),
      confidence_(new FieldRow(confidenceField(), fields_)),
      id_(new FieldRow(idField(), fields_)) {
  auto* grid = new QGridLayout(fields_);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setHorizontalSpacing(space(12));
  grid->setVerticalSpacing(space(8));
  grid->addWidget(kind_, 0, 0);
  grid->addWidget(citation_, 0, 1, 1, 2);
  grid->addWidget(confidence_, 1, 0);
  grid->addWidget(id_, 1, 1);
  for (int column = 0; column < 3; ++column) grid->setColumnStretch(column, 1);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(4));
  column->addWidget(tick_);
  column->addWidget(fields_);
  fields_->hide();
  connect(tick_, &QAbstractButton::toggled, this, [this](bool on) {
    fields_->setVisible(on);
    if (on) kind_->takeKeyboard();
    emit changed();
  });
  for (FieldRow* row : {kind_, citation_, confidence_, id_})
    connect(row, &FieldRow::changed, this, [this] {
      check();
      emit changed();
    });
}

void SourceBox::check() {
  for (FieldRow* row : {kind_, citation_, confidence_, id_})
    row->setWrong(row->touched() && !row->text().isEmpty() ? complaintOf(row->field(), row->text(), {}) : QString());
}

void SourceBox::clear() {
  const QSignalBlocker quiet(this);
  for (FieldRow* row : {citation_, confidence_, id_}) row->setText({});
  kind_->setText(QString::fromUtf8(text(catalog::SourceKind::commonPractice).data()));
  tick_->setChecked(false);
}

void SourceBox::fold(bool open) { tick_->setChecked(open); }

std::optional<workflow::NewSource> SourceBox::source() const {
  if (!open()) return {};
  workflow::NewSource source;
  source.id = id_->text().toStdString();
  source.citation = citation_->text().toStdString();
  for (const catalog::SourceKind kind : kSourceKinds)
    if (kind_->text().toStdString() == text(kind)) source.kind = kind;
  bool number = false;
  const double confidence = QString(confidence_->text()).replace(QLatin1Char(','), QLatin1Char('.')).toDouble(&number);
  if (number) source.confidence = confidence;
  return source;
}

bool SourceBox::sound() const {
  if (!open()) return true;
  for (const FieldRow* row : {kind_, citation_, confidence_, id_})
    if (!row->wrong().isEmpty()) return false;
  return true;
}

bool SourceBox::setWrong(const std::string& field, const QString& sentence) {
  for (FieldRow* row : {kind_, citation_, confidence_, id_})
    if (row->field().name == field) {
      row->setWrong(sentence);
      return true;
    }
  return false;
}

}  // namespace ohmkin::shelves
