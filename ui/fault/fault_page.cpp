#include <desk/sheet_options.h>
#include <fault/fault_page.h>
#include <fault/found.h>
#include <look/type.h>
#include <parts/flow_layout.h>
#include <parts/keep_with_job.h>
#include <parts/scrolling.h>
#include <parts/words.h>
#include <workflow/job_work.h>
#include <workflow/wiring_sheet.h>
#include <QGridLayout>

namespace ohmkin::fault {
namespace {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

constexpr int kSettleMilliseconds = 600;
enum Lane { asking, names };

parts::Words* caption(const QString& text, QWidget* parent) {
  return (new parts::Words(text, parent))->sized(typeface(Text::small))->painted(Paint::quiet);
}

/// A sheet with a quiet title over what stands on it.
parts::Panel* titled(const QString& title, const std::vector<QWidget*>& content, QWidget* parent) {
  auto* panel = new parts::Panel(parts::Panel::Kind::sheet, parent);
  auto* column = new QVBoxLayout(panel);
  column->setContentsMargins(space(16), space(12), space(14), space(12));
  column->setSpacing(space(8));
  auto* over = caption(title, panel);
  over->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
  column->addWidget(over);
  for (QWidget* each : content) column->addWidget(each);
  column->addStretch(1);
  return panel;
}

}  // namespace

FaultPage::FaultPage(desk::Settings& settings, QWidget* parent)
    : Page(parent),
      settings_(settings),
      stack_(new QStackedWidget(this)),
      whole_(new parts::BlankSheet(this)),
      work_(new QStackedWidget(this)),
      form_(new QuestionForm(this)),
      sheet_(new parts::BlankSheet(this)),
      busy_(new parts::BusyLine(this)),
      newSearch_(new QPushButton(tr("&New search"), this)),
      undo_(new QPushButton(tr("Un&do"), this)),
      print_(new QPushButton(tr("&Print"), this)),
      alarm_((new parts::Words({}, this))->sized(typeface(Text::strong))->painted(Paint::warning)->selectable()),
      told_((new parts::Words({}, this))->painted(Paint::accent)->selectable()),
      card_(new StepCard(this)),
      bars_(new LikelihoodBars(this)),
      noAnswers_(caption(tr("Nothing yet. Press the number of what you see."), this)),
      answers_(new AnswerList(this)),
      chain_(new OpenedChain(this)),
      setups_(new QWidget(this)),
      tests_(new TestList(this)),
      assumptions_(new parts::FindingList(this)) {
  stack_->addWidget(whole_);
  stack_->addWidget(makeWork());
  auto* outer = new QVBoxLayout(this);
  outer->setContentsMargins(space(24), space(16), space(24), space(12));
  outer->addWidget(stack_);
  parts::sayNoCatalogue(*whole_, {});
  forget();
  wire();
}

QWidget* FaultPage::makeWork() {
  auto* work = new QWidget(this);
  undo_->setToolTip(parts::plainTip(tr("Take back the last answer (Ctrl+Z)")));
  undo_->setEnabled(false);
  newSearch_->setToolTip(parts::plainTip(tr("Another vehicle, or the same from the beginning (Alt+N)")));
  print_->setToolTip(parts::plainTip(tr("A wiring drawing, or what every test shows (Ctrl+P)")));
  printing::sheetButton(*print_, {{tr("Wiring drawing"), [this] { return wiringSheets(); }},
                                  {tr("What every test shows"), [this] { return predictionSheets(); }}});
  form_->addBeside(*undo_);
  form_->addBeside(*print_);
  form_->addBeside(*newSearch_);
  work_->addWidget(sheet_);
  work_->addWidget(parts::scrolling(makeSteps(), this));
  auto* column = new QVBoxLayout(work);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(6));
  column->addWidget(form_);
  column->addWidget(busy_);
  column->addWidget(told_);
  column->addWidget(work_, 1);
  told_->hide();
  return work;
}

QWidget* FaultPage::makeSteps() {
  auto* steps = new QWidget;
  alarmSheet_ = new parts::Panel(parts::Panel::Kind::caution, steps);
  auto* inAlarm = new QVBoxLayout(alarmSheet_);
  inAlarm->setContentsMargins(space(16), space(10), space(16), space(10));
  inAlarm->addWidget(alarm_);
  alarmSheet_->hide();
  auto* left = new QVBoxLayout;
  left->setSpacing(space(12));
  left->addWidget(alarmSheet_);
  left->addWidget(card_, 1);
  auto* right = new QVBoxLayout;
  right->setSpacing(space(12));
  right->addWidget(titled(tr("What may be the matter"), {bars_}, steps));
  right->addStretch(1);
  auto* grid = new QGridLayout(steps);
  grid->setContentsMargins(0, 0, space(4), 0);
  grid->setHorizontalSpacing(space(16));
  grid->setVerticalSpacing(space(12));
  grid->addLayout(left, 0, 0);
  grid->addLayout(right, 0, 1);
  grid->addWidget(chain_, 1, 0, 1, 2);
  new parts::FlowLayout(space(8), setups_);
  grid->addWidget(titled(tr("Answered so far"), {noAnswers_, answers_}, steps), 2, 0);
  grid->addWidget(titled(tr("Other tests, the best first (Ctrl+T)"), {setups_, tests_}, steps), 2, 1);
  grid->addWidget(titled(tr("What the answer rests on"), {assumptions_}, steps), 3, 0, 1, 2);
  grid->setColumnStretch(0, 11);
  grid->setColumnStretch(1, 9);
  grid->setRowStretch(4, 1);
  return steps;
}

void FaultPage::wire() {
  for (parts::BlankSheet* each : {whole_, sheet_}) {
    parts::askThrough(*this, *each);
  }
  connect(sheet_, &parts::BlankSheet::exampleTaken, this, [this] {
    form_->gauge().setText(example_);
    form_->sender().setFocus(Qt::OtherFocusReason);
  });
  connect(form_, &QuestionForm::changed, this, &FaultPage::questionChanged);
  connect(form_, &QuestionForm::settled, this, [this] { card_->takeKeyboard(); });
  connect(card_, &StepCard::chosen, this, &FaultPage::outcomeChosen);
  connect(card_, &StepCard::unsure, this, &FaultPage::unsure);
  connect(answers_, &AnswerList::changeRequested, this, &FaultPage::changeRow);
  connect(answers_, &AnswerList::takenBack, this, &FaultPage::takeBackRow);
  connect(tests_, &TestList::chosen, this, [this](int row) {
    if (!found_ || row < 0 || row >= static_cast<int>(tests_->rows().size())) return;
    chooseTest(tests_->rows()[static_cast<std::size_t>(row)].test);
  });
  connect(newSearch_, &QPushButton::clicked, this, &FaultPage::beginAnew);
  connect(undo_, &QPushButton::clicked, &history(), &QUndoStack::undo);
  connect(&settings_, &desk::Settings::unitsChanged, this, [this] {
    if (found_) ask();
  });
  connect(&thread_, &desk::CatalogueThread::opened, this, [this](const QString& file) {
    file_ = file;
    stack_->setCurrentIndex(1);
    found_.reset();
    readCatalogue();
    emit opened(file);
    questionChanged();
  });
  const auto noCatalogue = [this](const Refusal& refusal) {
    file_.clear();
    forget();
    parts::sayNoCatalogue(*whole_, refusal);
    stack_->setCurrentIndex(0);
  };
  connect(&thread_, &desk::CatalogueThread::openingRefused, this,
          [this, noCatalogue](const QString& file, const Refusal& refusal) {
            noCatalogue(refusal);
            emit refused(file, desk::refusalSentence(refusal));
          });
  connect(&thread_, &desk::CatalogueThread::failed, this, noCatalogue);
  settle_.setSingleShot(true);
  settle_.setInterval(kSettleMilliseconds);
  connect(&settle_, &QTimer::timeout, this, [this] { work_->setCurrentIndex(0); });
  for (int key = 1; key <= 10; ++key)
    offer(
        key == 10 ? tr("Not sure") : tr("Answer %1").arg(key), QKeySequence(Qt::Key_0 + key % 10),
        [this, key] {
          if (showsAnswer()) card_->press(key % 10);
        },
        tr("Answers"));
  offer(tr("Go to the gauge"), QKeySequence(Qt::CTRL | Qt::Key_L), [this] { form_->takeKeyboard(); });
  QAction* others = offer(tr("Go to the other tests"), QKeySequence(Qt::CTRL | Qt::Key_T),
                          [this] { tests_->setFocus(Qt::ShortcutFocusReason); });
  tests_->setToolTip(parts::plainTip(desk::tipOf(*others)));
  offer(tr("Keep the search with a job"), QKeySequence(Qt::CTRL | Qt::Key_K), [this] { keepWithJob(); });
  offer(tr("Print the wiring drawing or the tests"), QKeySequence(Qt::CTRL | Qt::Key_P), [this] {
    if (showsAnswer()) print_->click();
  });
  offer(tr("Back to the test that is proposed"), QKeySequence(Qt::Key_Escape), [this] { backToProposed(); });
  offer(tr("Begin another search"), {}, [this] { beginAnew(); });
  connect(&history(), &QUndoStack::canUndoChanged, undo_, &QWidget::setEnabled);
}

/// The search as it is now, whatever is answered while the dialog is open.
void FaultPage::keepWithJob() {
  if (!showsAnswer() || !found_) return;
  parts::keepWithJob(
      file_, tr("fault search, %1").arg(desk::plain(found_->finder->gaugeName())),
      [json = workflow::faultDocument(session_), title = "fault search, " + found_->finder->gaugeName()](
          catalog::Catalogue& catalogue, catalog::JobNumber id, std::string_view who) {
        return workflow::keepJson(catalogue, id, json, title, who);
      },
      this,
      [this](const QString& sentence) {
        told_->setText(sentence);
        told_->setVisible(!sentence.isEmpty());
      });
}

void FaultPage::goOnWith(const QString& document) {
  const auto session =
      workflow::readFaultDocument(document.toStdString(), tr("the search that was kept").toStdString());
  if (session) goOn(*session);
  else refuse(session.error());
}

void FaultPage::openCatalogue(const QString& file) {
  parts::sayOpening(*whole_, file);
  stack_->setCurrentIndex(0);
  thread_.open(file);
}

void FaultPage::showNoCatalogue() {
  forget();
  parts::sayNoCatalogue(*whole_, {});
  stack_->setCurrentIndex(0);
}

void FaultPage::takeKeyboard() {
  if (showsAnswer()) card_->takeKeyboard();
  else form_->takeKeyboard();
}

void FaultPage::readCatalogue() {
  thread_.ask(names, [this](const desk::OpenCatalogue& open) -> desk::CatalogueThread::Then {
    return [this, gauges = gaugeNames(open.catalogue), senders = senderNames(open.catalogue)] {
      form_->setNames(gauges, senders);
      example_ = gauges.empty() ? QString() : gauges.front().name;
      sayWhatToDo();
    };
  });
}

void FaultPage::ask() {
  asking_ = true;
  busy_->setRunning(true);
  thread_.ask(asking,
              [this, session = session_, known = found_,
               units = settings_.units()](const desk::OpenCatalogue& open) -> desk::CatalogueThread::Then {
                auto found = findAnswer(open.catalogue, session, known.get(), units);
                if (!found) return [this, why = found.error()] { refuse(why); };
                return [this, shared = std::make_shared<const Found>(std::move(*found))] { take(shared); };
              });
}

void FaultPage::questionChanged() {
  if (file_.isEmpty()) return;
  if (form_->empty()) {
    thread_.drop(asking);
    forget();
    return;
  }
  const auto question = form_->question(settings_.units());
  if (!question) {
    thread_.drop(asking);
    refuse(question.error());
    return;
  }
  session_.question = *question;
  ask();
}

void FaultPage::take(const std::shared_ptr<const Found>& found) {
  asking_ = false;
  busy_->setRunning(false);
  settle_.stop();
  form_->setWrong({});
  found_ = found;
  session_ = found->session;
  display();
  work_->setCurrentIndex(1);
}

void FaultPage::refuse(const Refusal& refusal) {
  asking_ = false;
  busy_->setRunning(false);
  found_.reset();
  form_->setWrong(desk::plain(refusal.where));
  sheet_->offer({});
  sheet_->say(refusal.code == "name-unknown" ? tr("Not in this catalogue") : tr("That circuit cannot be made"),
              desk::refusalSentence(refusal));
  // Half a name is often refused: what is shown stays a moment, so that the page does not flicker under the typing.
  if (showsAnswer()) settle_.start();
}

void FaultPage::sayWhatToDo() {
  if (found_ || !form_->empty()) return;
  if (example_.isEmpty()) {
    sheet_->offer({});
    sheet_->say(tr("No gauges in this catalogue"),
                tr("A fault is searched in the circuit of a known gauge. Bring one in, or open another catalogue."));
    return;
  }
  sheet_->say(tr("Which gauge misreads?"),
              tr("Name the gauge, and the sender where you know it. One test after the other is then proposed: the one "
                 "that tells most for its minutes."));
  sheet_->offer(tr("Try %1").arg(example_));
}

void FaultPage::forget() {
  settle_.stop();
  asking_ = false;
  busy_->setRunning(false);
  found_.reset();
  form_->setWrong({});
  work_->setCurrentIndex(0);
  sayWhatToDo();
}

namespace {
tl::unexpected<Refusal> noCircuitYet() {
  return ohmkin::refuse("nothing-to-print", FaultPage::tr("Fault").toStdString(),
                        FaultPage::tr("no gauge yet").toStdString(),
                        FaultPage::tr("a gauge whose circuit is known").toStdString());
}
}  // namespace

Expected<printing::Sheets> FaultPage::wiringSheets() const {
  if (!found_) return noCircuitYet();
  const auto plan = found_->finder->wiring();
  if (!plan) return tl::make_unexpected(plan.error());
  return printing::Sheets{tr("wiring of %1").arg(desk::plain(found_->finder->gaugeName())),
                          workflow::wiringSheet(*found_->finder, *plan, desk::todaysSheet(settings_.units()))};
}

Expected<printing::Sheets> FaultPage::predictionSheets() const {
  if (!found_) return noCircuitYet();
  return printing::Sheets{tr("tests of %1").arg(desk::plain(found_->finder->gaugeName())),
                          workflow::predictionsSheet(*found_->finder, desk::todaysSheet(settings_.units()))};
}

QString FaultPage::asText() const {
  const auto now = standing();
  return now ? searchAsText(*now) : QString();
}

}  // namespace ohmkin::fault
