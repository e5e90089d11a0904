#include <desk/catalogue_thread.h>
#include <fault/question_form.h>
#include <look/type.h>
#include <parts/words.h>
#include <quantity/parse.h>
#include <QCompleter>
#include <QGridLayout>
#include <QVBoxLayout>

namespace ohmkin::fault {
namespace {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

void addField(QGridLayout& grid, int column, const QString& name, QWidget* field) {
  auto* label = (new parts::Words(name))->sized(typeface(Text::small))->painted(Paint::quiet);
  label->setBuddy(field);
  grid.addWidget(label, 0, column, Qt::AlignBottom);
  grid.addWidget(field, 1, column);
}

QGridLayout* fields() {
  auto* grid = new QGridLayout;
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setHorizontalSpacing(space(12));
  grid->setVerticalSpacing(space(3));
  return grid;
}

QString figures(double value) { return QString::number(value, 'g', 6); }

std::string typed(const parts::Entry& entry) { return entry.text().trimmed().toStdString(); }

}  // namespace

QuestionForm::QuestionForm(QWidget* parent)
    : QWidget(parent),
      gauge_(new parts::Entry(tr("Gauge"), this)),
      sender_(new parts::Entry(tr("Sender"), this)),
      running_(new parts::Entry(tr("Engine warm at"), this)),
      supply_(new parts::Entry(tr("Battery, engine off, volts"), this)),
      feedShunt_(new parts::Entry(tr("Resistor on the gauge, feed to sender"), this)),
      groundShunt_(new parts::Entry(tr("Resistor on the gauge, sender to ground"), this)),
      fold_(new QPushButton(tr("&More…"), this)),
      more_(new QWidget(this)) {
  gauge_->setPlaceholderText(tr("its name or number, or the family it was built for"));
  sender_->setPlaceholderText(tr("its number or family; empty: the gauge's own family"));
  supply_->setPlaceholderText(tr("12.6"));
  feedShunt_->setPlaceholderText(tr("none"));
  groundShunt_->setPlaceholderText(tr("none"));
  running_->setPlaceholderText(tr("88 °C"));
  fold_->setCheckable(true);
  fold_->setToolTip(parts::plainTip(tr("What is known of the circuit besides (Alt+M)")));
  auto* first = first_ = fields();
  addField(*first, 0, tr("Gauge"), gauge_);
  addField(*first, 1, tr("Sender on the engine"), sender_);
  addBeside(*fold_);
  first->setColumnStretch(0, 1);
  first->setColumnStretch(1, 1);
  auto* second = fields();
  addField(*second, 0, tr("Engine warm at"), running_);
  addField(*second, 1, tr("Battery, engine off, V"), supply_);
  addField(*second, 2, tr("Resistor feed to sender, Ω"), feedShunt_);
  addField(*second, 3, tr("Resistor sender to ground, Ω"), groundShunt_);
  more_->setLayout(second);
  more_->hide();
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(8));
  column->addLayout(first);
  column->addWidget(more_);
  connect(fold_, &QPushButton::toggled, this, [this](bool open) {
    more_->setVisible(open);
    if (open) running_->setFocus(Qt::OtherFocusReason);
  });
  for (parts::Entry* entry : {gauge_, sender_, running_, supply_, feedShunt_, groundShunt_})
    connect(entry, &QLineEdit::textChanged, this, &QuestionForm::changed);
  connect(gauge_, &parts::Entry::left, this, [this](int direction) {
    if (direction > 0) sender_->setFocus(Qt::OtherFocusReason);
  });
  for (parts::Entry* entry : {sender_, running_, supply_, feedShunt_, groundShunt_})
    connect(entry, &parts::Entry::left, this, [this](int direction) {
      if (direction > 0) emit settled();
      else takeKeyboard();
    });
}

void QuestionForm::setNames(const std::vector<parts::NameWords>& gauges, const std::vector<parts::NameWords>& senders) {
  parts::offerNames(*gauge_, gauges);
  parts::offerNames(*sender_, senders);
}

void QuestionForm::fill(const workflow::FaultQuestion& question, const DisplayUnits& units) {
  const QSignalBlocker quiet(this);
  gauge_->setText(desk::plain(question.gauge));
  sender_->setText(desk::plain(question.sender));
  running_->setText(question.running ? desk::plain(print(*question.running, units)) : QString());
  supply_->setText(question.supply ? figures(inVolts(*question.supply)) : QString());
  feedShunt_->setText(question.feedShunt ? figures(inOhms(*question.feedShunt)) : QString());
  groundShunt_->setText(question.groundShunt ? figures(inOhms(*question.groundShunt)) : QString());
  if (question.running || question.supply || question.feedShunt || question.groundShunt) {
    const QSignalBlocker still(fold_);
    fold_->setChecked(true);
    more_->show();
  }
}

Expected<workflow::FaultQuestion> QuestionForm::question(const DisplayUnits& units) const {
  workflow::FaultQuestion question;
  question.gauge = typed(*gauge_);
  question.sender = typed(*sender_);
  if (const std::string text = typed(*running_); !text.empty()) {
    const auto read = parseTemperature(text, units.temperature, tr("Engine warm at").toStdString());
    if (!read) return tl::make_unexpected(read.error());
    question.running = *read;
  }
  if (const std::string text = typed(*supply_); !text.empty()) {
    const auto read = parseNumber(text, tr("Battery").toStdString());
    if (!read) return tl::make_unexpected(read.error());
    question.supply = volts(*read);
  }
  for (const auto& [entry, into] :
       {std::pair{feedShunt_, &question.feedShunt}, {groundShunt_, &question.groundShunt}}) {
    const std::string text = typed(*entry);
    if (text.empty()) continue;
    const auto read = parseOhms(text, entry->accessibleName().toStdString());
    if (!read) return tl::make_unexpected(read.error());
    *into = *read;
  }
  return question;
}

void QuestionForm::addBeside(QPushButton& button) {
  button.setFixedHeight(gauge_->sizeHint().height());
  first_->addWidget(&button, 1, first_->columnCount());
}

void QuestionForm::takeKeyboard() {
  gauge_->setFocus(Qt::ShortcutFocusReason);
  gauge_->selectAll();
}

void QuestionForm::setWrong(const QString& where) {
  gauge_->setWrong(where == QStringLiteral("--gauge"));
  sender_->setWrong(where == QStringLiteral("--sender"));
  running_->setWrong(where.contains(QStringLiteral("running")) || where == tr("Engine warm at"));
  supply_->setWrong(where == QStringLiteral("supply") || where == tr("Battery"));
  feedShunt_->setWrong(where.contains(QStringLiteral("feed")) && where.contains(QStringLiteral("sender")));
  groundShunt_->setWrong(where.contains(QStringLiteral("sender to ground")));
}

}  // namespace ohmkin::fault
