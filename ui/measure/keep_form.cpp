#include <look/type.h>
#include <measure/keep_form.h>
#include <workflow/person.h>
#include <QAbstractItemView>
#include <QCompleter>
#include <QGridLayout>
#include <QStringListModel>
#include <QVBoxLayout>

namespace ohmkin::measure {

using look::Paint;
using look::space;

void complete(parts::Entry& entry, const QStringList& words) {
  auto* completer = new QCompleter(words, &entry);
  completer->setCaseSensitivity(Qt::CaseInsensitive);
  completer->setFilterMode(Qt::MatchContains);
  parts::makeRoomy(*completer->popup());
  delete entry.completer();
  entry.setCompleter(completer);
}

KeepForm::KeepForm(QWidget* parent)
    : QWidget(parent),
      part_(new parts::Entry(tr("Number on the part"), this)),
      lot_(new parts::Entry(tr("Lot"), this)),
      family_(new parts::Choice(tr("Family it claims to be"), this)),
      who_(new parts::Entry(tr("Measured by"), this)),
      keep_(new QPushButton(tr("&Keep this curve"), this)),
      doubt_((new parts::Words({}, this))->sized(look::typeface(look::Text::small))->painted(Paint::warning)),
      outcome_(new parts::Words({}, this)) {
  part_->setPlaceholderText(tr("number on the part"));
  lot_->setPlaceholderText(tr("none"));
  who_->setText(QString::fromStdString(workflow::personLoggedIn()));
  family_->addItem(tr("As the part says"), QString());
  keep_->setMinimumHeight(space(36));
  keep_->setEnabled(false);
  outcome_->hide();
  doubt_->hide();
  auto* grid = new QGridLayout;
  grid->setHorizontalSpacing(space(8));
  grid->setVerticalSpacing(space(3));
  grid->addWidget(parts::fieldName(tr("Part"), this), 0, 0);
  grid->addWidget(parts::fieldName(tr("Lot"), this), 0, 1);
  grid->addWidget(parts::fieldName(tr("Claims to be"), this), 0, 2);
  grid->addWidget(part_, 1, 0);
  grid->addWidget(lot_, 1, 1);
  grid->addWidget(family_, 1, 2);
  grid->addWidget(parts::fieldName(tr("Measured by"), this), 2, 0);
  grid->addWidget(who_, 3, 0);
  grid->addWidget(keep_, 3, 1, 1, 2, Qt::AlignLeft);
  grid->setColumnStretch(0, 5);
  grid->setColumnStretch(1, 3);
  grid->setColumnStretch(2, 5);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(8));
  column->addLayout(grid);
  column->addWidget(doubt_);
  column->addWidget(outcome_);
  for (parts::Entry* entry : {part_, lot_}) connect(entry, &QLineEdit::textChanged, this, &KeepForm::changed);
  connect(family_, &QComboBox::currentIndexChanged, this, &KeepForm::changed);
  connect(keep_, &QPushButton::clicked, this, &KeepForm::kept);
}

void KeepForm::setNames(const QStringList& parts, const QStringList& families) {
  complete(*part_, parts);
  const QSignalBlocker quiet(family_);
  const QString now = familySaid();
  family_->clear();
  family_->addItem(tr("As the part says"), QString());
  for (const QString& family : families) family_->addItem(family, family);
  family_->setCurrentIndex(std::max(0, family_->findData(now)));
}

void KeepForm::doubtPart(const QString& sentence) {
  part_->setWrong(!sentence.isEmpty());
  doubt_->setText(sentence);
  doubt_->setVisible(!sentence.isEmpty());
}

void KeepForm::tell(const QString& sentence, bool refused) {
  outcome_->setText(refused ? tr("Not kept. %1").arg(sentence) : sentence);
  outcome_->painted(refused ? Paint::warning : Paint::accent);
  outcome_->setVisible(!sentence.isEmpty());
}

}  // namespace ohmkin::measure
