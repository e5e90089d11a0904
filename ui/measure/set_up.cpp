#include <look/type.h>
#include <measure/set_up.h>
#include <QGridLayout>
#include <QVBoxLayout>

namespace ohmkin::measure {
namespace {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

const QString kByAccuracy = QStringLiteral("by accuracy");

QGridLayout* tightGrid() {
  auto* grid = new QGridLayout;
  grid->setHorizontalSpacing(space(8));
  grid->setVerticalSpacing(space(3));
  return grid;
}

}  // namespace

QString SetUp::Named::said() const {
  const QString chosen = choice->currentData().toString();
  return chosen == kByAccuracy ? accuracy->text().trimmed() : chosen;
}

SetUp::SetUp(QWidget* parent) : QWidget(parent), leads_(new parts::Entry(tr("Leads held together, ohms"), this)) {
  meter_ = makeNamed(tr("Meter"), tr("0.8 %"));
  thermometer_ = makeNamed(tr("Thermometer in the bath"), tr("0.5 K"));
  leads_->setPlaceholderText(tr("not zeroed"));
  setEquipment({}, {});
  auto* grid = tightGrid();
  grid->addWidget(parts::fieldName(tr("Meter"), this), 0, 0, 1, 2);
  grid->addWidget(parts::fieldName(tr("Leads held together, Ω"), this), 0, 2);
  grid->addWidget(meter_.choice, 1, 0);
  grid->addWidget(meter_.accuracy, 1, 1);
  grid->addWidget(leads_, 1, 2);
  grid->addWidget(parts::fieldName(tr("Thermometer in the bath"), this), 2, 0, 1, 2);
  grid->addWidget(thermometer_.choice, 3, 0);
  grid->addWidget(thermometer_.accuracy, 3, 1);
  grid->setColumnStretch(0, 6);
  grid->setColumnStretch(1, 0);
  grid->setColumnStretch(2, 3);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(4));
  column->addLayout(grid);
  column->addWidget(makeBoiling());
  connect(leads_, &QLineEdit::textChanged, this, &SetUp::changed);
}

SetUp::Named SetUp::makeNamed(const QString& name, const QString& accuracy) {
  Named made{new parts::Choice(name, this), new parts::Entry(tr("%1: accuracy, ±").arg(name), this)};
  made.accuracy->setPlaceholderText(tr("± %1").arg(accuracy));
  made.accuracy->setMinimumWidth(space(96));
  made.accuracy->hide();
  connect(made.choice, &QComboBox::currentIndexChanged, this, [this, made] {
    made.accuracy->setVisible(made.choice->currentData().toString() == kByAccuracy);
    emit changed();
  });
  connect(made.accuracy, &QLineEdit::textChanged, this, &SetUp::changed);
  return made;
}

void SetUp::fill(Named& named, const std::vector<std::pair<QString, QString>>& usual, const QStringList& shops) {
  const QSignalBlocker quiet(named.choice);
  const QString kept = named.choice->currentData().toString();
  named.choice->clear();
  for (const auto& [words, said] : usual) named.choice->addItem(words, said);
  for (const QString& own : shops) named.choice->addItem(own, own);
  named.choice->addItem(tr("Another, by its accuracy"), kByAccuracy);
  named.choice->setCurrentIndex(std::max(0, named.choice->findData(kept)));
}

void SetUp::setEquipment(const QStringList& meters, const QStringList& thermometers) {
  fill(meter_,
       {{tr("Not said: a usual digital one"), QString()},
        {tr("Digital, as usual"), QStringLiteral("digital")},
        {tr("Moving-coil, as usual"), QStringLiteral("moving-coil")}},
       meters);
  fill(thermometer_, {{tr("Not said: ± 1 K"), QString()}}, thermometers);
}

QWidget* SetUp::makeBoiling() {
  boiling_ = new QWidget(this);
  altitude_ = new parts::Entry(tr("Altitude"), boiling_);
  barometer_ = new parts::Entry(tr("Barometer"), boiling_);
  reduced_ = new parts::Choice(tr("Is its pressure reduced to sea level?"), boiling_);
  altitude_->setPlaceholderText(tr("1600 m or 5250 ft"));
  barometer_->setPlaceholderText(tr("none, or 1013 hPa"));
  reduced_->addItem(tr("Not known"), static_cast<int>(bench::Reduced::notKnown));
  reduced_->addItem(tr("Yes: forecast, wall"), static_cast<int>(bench::Reduced::toSeaLevel));
  reduced_->addItem(tr("No: sensor here"), static_cast<int>(bench::Reduced::no));
  question_ = (new parts::Words({}, boiling_))->sized(typeface(Text::small))->painted(Paint::warning);
  question_->hide();
  auto* grid = tightGrid();
  grid->addWidget(parts::fieldName(tr("Altitude"), boiling_), 0, 0);
  grid->addWidget(parts::fieldName(tr("Barometer"), boiling_), 0, 1);
  grid->addWidget(parts::fieldName(tr("Reduced to sea level?"), boiling_), 0, 2);
  grid->addWidget(altitude_, 1, 0);
  grid->addWidget(barometer_, 1, 1);
  grid->addWidget(reduced_, 1, 2);
  grid->addWidget(question_, 2, 0, 1, 3);
  for (int column = 0; column < 3; ++column) grid->setColumnStretch(column, 1);
  auto* outer = new QVBoxLayout(boiling_);
  outer->setContentsMargins(0, space(4), 0, 0);
  outer->addLayout(grid);
  boiling_->hide();
  for (parts::Entry* entry : {altitude_, barometer_}) connect(entry, &QLineEdit::textChanged, this, &SetUp::changed);
  connect(reduced_, &QComboBox::currentIndexChanged, this, &SetUp::changed);
  return boiling_;
}

SetUpSaid SetUp::said() const {
  return {meter_.said(),     leads_->text(),     thermometer_.said(),
          altitude_->text(), barometer_->text(), static_cast<bench::Reduced>(reduced_->currentData().toInt())};
}

void SetUp::askForBoiling(bool boils) { boiling_->setVisible(boils); }

void SetUp::askAboutBarometer(const QString& question) {
  question_->setText(question);
  question_->setVisible(!question.isEmpty());
}

QString SetUp::question() const { return question_->text(); }

}  // namespace ohmkin::measure
