#include <desk/catalogue_thread.h>
#include <jobs/job_desk.h>
#include <jobs/job_list.h>
#include <look/type.h>
#include <parts/scrolling.h>
#include <workflow/stock_work.h>
#include <QHBoxLayout>
#include <QPainter>
#include <ranges>

namespace ohmkin::jobs {

using desk::plain;
using desk::shown;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

namespace {

/// Ring or tick, beside the words that say the same.
class StateMark : public QWidget {
 public:
  explicit StateMark(QWidget* parent) : QWidget(parent) {
    setFixedSize(space(16), static_cast<int>(look::metrics(Text::body).lineSpacing()));
  }
  void show(catalog::JobState state) {
    state_ = state;
    update();
  }

 protected:
  void paintEvent(QPaintEvent* /*event*/) override {
    QPainter painter(this);
    drawState(painter, QRectF(rect()).center(), space(14), state_);
  }

 private:
  catalog::JobState state_ = catalog::JobState::open;
};

}  // namespace

JobDesk::JobDesk(QWidget* parent)
    : QWidget(parent),
      stack_(new QStackedWidget(this)),
      blank_(new parts::BlankSheet(this)),
      whole_(new QWidget),
      reference_(new parts::Words({}, whole_)),
      state_(new parts::Words({}, whole_)),
      addNote_(new QPushButton(tr("Add a no&te"), whole_)),
      closeOrOpen_(new QPushButton(whole_)),
      print_(new QPushButton(tr("&Print…"), whole_)),
      more_(new QPushButton(tr("More…"), whole_)),
      told_(new parts::Words({}, this)),
      fields_(new FieldsForm(this)),
      note_(new NoteForm(whole_)),
      close_(new CloseForm(whole_)),
      erase_(new EraseForm(whole_)),
      kept_(new QVBoxLayout) {
  kept_->setSpacing(space(10));
  auto* column = new QVBoxLayout(whole_);
  column->setContentsMargins(0, 0, space(2), 0);
  column->setSpacing(space(10));
  column->addWidget(makeHead());
  column->addWidget(note_);
  column->addWidget(close_);
  column->addWidget(erase_);
  column->addLayout(kept_);
  column->addStretch(1);
  auto* formColumn = new QWidget;
  auto* forms = new QVBoxLayout(formColumn);
  forms->setContentsMargins(0, 0, space(2), 0);
  forms->addWidget(fields_);
  forms->addStretch(1);
  stack_->addWidget(blank_);
  stack_->addWidget(parts::scrolling(whole_, this));
  stack_->addWidget(parts::scrolling(formColumn, this));
  auto* outer = new QVBoxLayout(this);
  outer->setContentsMargins(0, 0, 0, 0);
  outer->setSpacing(space(8));
  outer->addWidget(told_);
  outer->addWidget(stack_, 1);
  told_->hide();
  for (Form* each : std::initializer_list<Form*>{note_, close_, erase_}) each->hide();
  for (Form* each : std::initializer_list<Form*>{fields_, note_, close_, erase_}) {
    connect(each, &Form::done, this, &JobDesk::sent);
    connect(each, &Form::left, this, &JobDesk::formLeft);
  }
  connect(addNote_, &QPushButton::clicked, this, &JobDesk::noteAsked);
  connect(closeOrOpen_, &QPushButton::clicked, this, &JobDesk::closeAsked);
}

QWidget* JobDesk::makeHead() {
  head_ = new parts::Panel(parts::Panel::Kind::sheet, whole_);
  mark_ = new StateMark(head_);
  reference_->sized(typeface(Text::headline))->selectable();
  state_->painted(Paint::quiet);
  auto* buttons = new QWidget(head_);
  auto* flow = new parts::FlowLayout(space(8), buttons);
  for (QPushButton* button : {addNote_, closeOrOpen_, print_, more_}) {
    button->setParent(buttons);
    button->setMinimumHeight(space(34));
    flow->addWidget(button);
  }
  facts_ = new QGridLayout;
  facts_->setHorizontalSpacing(space(16));
  facts_->setVerticalSpacing(space(6));
  facts_->setColumnStretch(1, 1);
  auto* state = new QHBoxLayout;
  state->setSpacing(space(6));
  state->addWidget(mark_, 0, Qt::AlignTop);
  state->addWidget(state_, 1);
  auto* column = new QVBoxLayout(head_);
  column->setContentsMargins(space(16), space(14), space(16), space(14));
  column->setSpacing(space(8));
  column->addWidget(reference_);
  column->addLayout(state);
  column->addLayout(facts_);
  column->addWidget(buttons);
  return head_;
}

void JobDesk::open(Form* form) {
  for (Form* each : std::initializer_list<Form*>{note_, close_, erase_}) each->setVisible(each == form);
  form_ = form;
  if (form == fields_) stack_->setCurrentIndex(2);
  else if (stack_->currentIndex() == 2) stack_->setCurrentIndex(reference_->text().isEmpty() ? 0 : 1);
  if (form != nullptr) form->takeKeyboard();
}

void JobDesk::displayNothing(const QString& heading, const QString& text) {
  reference_->clear();
  blank_->say(heading, text);
  open(nullptr);
  stack_->setCurrentIndex(0);
}

void JobDesk::addFact(const QString& name, const QString& value) {
  if (value.isEmpty()) return;
  const auto row = static_cast<int>(factsSaid_.size());
  facts_->addWidget(parts::fieldName(name, head_), row, 0, Qt::AlignTop);
  facts_->addWidget((new parts::Words(value, head_))->selectable(), row, 1);
  factsSaid_ << name + QStringLiteral(": ") + value;
}

void JobDesk::displayFacts(const workflow::JobView& view) {
  while (QLayoutItem* item = facts_->takeAt(0)) {
    delete item->widget();
    delete item;
  }
  factsSaid_.clear();
  const catalog::JobFields& said = view.job.said;
  addFact(tr("Vehicle"), shown(said.vehicle));
  addFact(tr("Engine"), shown(said.engine));
  addFact(tr("Seen"), shown(said.seen));
  addFact(tr("Note"), shown(said.note));
  addFact(tr("Part fitted"), plain(said.part));
  addFact(tr("Cause found"), plain(view.causeWords));
  QStringList moved;
  for (const catalog::StockMovement& each : view.movements)
    moved << plain(each.sender.text) + QStringLiteral(" ") + shown(workflow::wordsOf(each));
  addFact(tr("Shelf"), moved.join(QLatin1Char('\n')));
}

void JobDesk::display(const workflow::JobView& view, const DisplayUnits& units) {
  const bool open = view.job.said.state == catalog::JobState::open;
  reference_->setText(plain(view.job.said.reference));
  static_cast<StateMark*>(mark_)->show(view.job.said.state);  // NOLINT: made as one
  const QString since = dayOf(view.job.opened);
  state_->setText(QStringList{stateWord(view.job.said.state), tr("job %1").arg(view.job.id.value),
                              view.job.openedBy.empty() ? tr("begun on %1").arg(since)
                                                        : tr("begun on %1 by %2").arg(since, plain(view.job.openedBy))}
                      .join(QStringLiteral(" · ")));
  closeOrOpen_->setText(open ? tr("&Close the job…") : tr("&Open it again"));
  displayFacts(view);
  for (const auto& [ordinal, card] : cards_) delete card;
  cards_.clear();
  for (const auto& each : std::views::reverse(view.documents)) {  // newest first
    auto* card = new DocumentCard(wordsOf(each, units), whole_);
    const int ordinal = each.kept.ordinal;
    connect(&card->remove(), &QPushButton::clicked, this, [this, ordinal] { emit removeAsked(ordinal); });
    if (each.kept.kind == catalog::DocumentKind::fault && each.asWritten)
      connect(&card->offerToGoOn(), &QPushButton::clicked, this, [this, document = plain(each.kept.document)] {
        emit goOnAsked(QStringLiteral("ohmkin.fault-session"), document);
      });
    kept_->addWidget(card);
    cards_.emplace_back(ordinal, card);
  }
  if (form_ != fields_) stack_->setCurrentIndex(1);
}

void JobDesk::sayToday(int ordinal, const workflow::AnsweredAgain& again) {
  for (const auto& [at, card] : cards_) {
    if (at != ordinal) continue;
    QStringList because;
    for (const auto& difference : again.differences)
      if (difference.sentence != again.sentence) because << shown(difference.sentence);
    for (const std::string& reason : again.because) because << shown(reason);
    card->sayToday(again.differs ? tr("Today it would differ. %1").arg(shown(again.sentence)) : shown(again.sentence),
                   because, again.differs);
  }
}

void JobDesk::sayToday(int ordinal, const QString& refused) {
  for (const auto& [at, card] : cards_)
    if (at == ordinal) card->sayToday(tr("It cannot be asked again. %1").arg(refused), {}, false);
}

void JobDesk::tell(const QString& sentence, bool refused) {
  told_->painted(refused ? Paint::warning : Paint::accent);
  told_->setText(sentence);
  told_->setVisible(!sentence.isEmpty());
}

QString JobDesk::asText() const {
  if (reference_->text().isEmpty()) return {};
  QStringList all{reference_->text(), state_->text()};
  all << factsSaid_;
  for (const auto& [ordinal, card] : cards_) {
    all << QString() << card->said();
    if (!card->today().isEmpty()) all << card->today();
  }
  return all.join(QLatin1Char('\n'));
}

}  // namespace ohmkin::jobs
