#include <desk/sheet_options.h>
#include <desk/snapshot.h>
#include <look/type.h>
#include <parts/keep_with_job.h>
#include <parts/scrolling.h>
#include <plan/plan_file.h>
#include <plan/plan_page.h>
#include <plan/presenter.h>
#include <workflow/job_work.h>
#include <QApplication>
#include <QClipboard>
#include <QFileInfo>

namespace ohmkin::plan {
namespace {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

constexpr int kSettleMilliseconds = 500;
constexpr std::size_t kMostDashes = 20;
constexpr std::size_t kMostEngines = 50;
constexpr int kFewestLines = 2;
constexpr int kMostLines = 6;
enum Lane { asking, examples, opening };

}  // namespace

PlanPage::PlanPage(desk::Settings& settings, QWidget* parent)
    : Page(parent), settings_(settings), whole_(new parts::BlankSheet(this)), stack_(new QStackedWidget(this)) {
  stack_->addWidget(whole_);
  stack_->addWidget(parts::scrolling(makeWork(), this));
  auto* outer = new QVBoxLayout(this);
  outer->setContentsMargins(space(24), space(24), space(24), space(16));
  outer->addWidget(stack_);
  parts::sayNoCatalogue(*whole_, {});
  wire();
}

QWidget* PlanPage::makeWork() {
  auto* work = new QWidget;
  head_ = new PlanHead([this] { return sheets(); }, work);
  dashes_ = new LineList(tr("Dashes: year, vehicle line, cluster option"),
                         QStringLiteral("1968 ridgeway utility gauge package"), kMostDashes, work);
  engines_ = new LineList(tr("Donor engines: casting number, date in the casting, engine"),
                          QStringLiteral("casting 30418 dated H 22 1"), kMostEngines, work);
  answers_ = new QStackedWidget(work);
  sheet_ = new parts::BlankSheet(work);
  answer_ = new PlanAnswer(work);
  answers_->addWidget(sheet_);
  answers_->addWidget(answer_);
  auto* sides = new QHBoxLayout;
  sides->setSpacing(space(16));
  sides->addWidget(dashes_, 1);
  sides->addWidget(engines_, 1);
  auto* column = new QVBoxLayout(work);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(12));
  column->addWidget(head_);
  column->addLayout(sides);
  column->addWidget(answers_, 1);
  return work;
}

void PlanPage::wire() {
  for (parts::BlankSheet* each : {whole_, sheet_}) {
    parts::askThrough(*this, *each);
  }
  connect(sheet_, &parts::BlankSheet::exampleTaken, this, [this] {
    dashes_->setLines(example_.first);
    engines_->setLines(example_.second);
    takeKeyboard();
  });
  connect(head_, &PlanHead::saveTo, this, [this](const QString& file) {
    const QString whyNot = savePlan(file);
    head_->tell(whyNot.isEmpty() ? tr("Saved as %1").arg(QFileInfo(file).fileName()) : whyNot);
  });
  connect(head_, &PlanHead::openFrom, this, [this](const QString& file) {
    const QString whyNot = openPlan(file);
    if (!whyNot.isEmpty()) head_->tell(tr("Not opened. %1").arg(whyNot));
  });
  connect(head_, &PlanHead::copied, this, [this] {
    if (answered_) QApplication::clipboard()->setText(asText());
  });
  connect(dashes_, &LineList::changed, this, &PlanPage::asked);
  connect(engines_, &LineList::changed, this, &PlanPage::asked);
  connect(&settings_, &desk::Settings::unitsChanged, this, &PlanPage::asked);
  wireCatalogue();
  settle_.setSingleShot(true);
  settle_.setInterval(kSettleMilliseconds);
  connect(&settle_, &QTimer::timeout, this, [this] { answers_->setCurrentIndex(0); });
  offer(tr("Type the dashes"), QKeySequence(Qt::CTRL | Qt::Key_L), [this] { dashes_->takeKeyboard(); });
  offer(tr("Type the engines"), QKeySequence(Qt::CTRL | Qt::Key_E), [this] { engines_->takeKeyboard(); });
  offer(tr("Go to the grid"), QKeySequence(Qt::CTRL | Qt::Key_G), [this] { grid().setFocus(Qt::ShortcutFocusReason); });
  offer(tr("Save the plan…"), QKeySequence(Qt::CTRL | Qt::Key_S), [this] { head_->chooseSave(); });
  offer(tr("Open a plan…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_O), [this] {
    if (!file_.isEmpty()) head_->chooseOpen();
  });
  offer(tr("Keep the plan with a job"), QKeySequence(Qt::CTRL | Qt::Key_K), [this] {
    if (!answered_) return;
    parts::keepWithJob(
        file_, tr("the plan"),
        [answered = answered_](catalog::Catalogue& catalogue, catalog::JobNumber id, std::string_view who) {
          return workflow::keepPlan(catalogue, id, answered->plan, who);
        },
        this, [this](const QString& sentence) { head_->tell(sentence); });
  });
  offer(tr("Print the plan"), QKeySequence(Qt::CTRL | Qt::Key_P), [this] { head_->print().click(); });
  forget();
}

void PlanPage::wireCatalogue() {
  connect(&thread_, &desk::CatalogueThread::opened, this, [this](const QString& file) {
    file_ = file;
    stack_->setCurrentIndex(1);
    findExample();
    emit opened(file);
    asked();
  });
  connect(&thread_, &desk::CatalogueThread::openingRefused, this, [this](const QString& file, const Refusal& refusal) {
    file_.clear();
    forget();
    parts::sayNoCatalogue(*whole_, refusal);
    stack_->setCurrentIndex(0);
    emit refused(file, desk::refusalSentence(refusal));
  });
  connect(&thread_, &desk::CatalogueThread::failed, this, [this](const Refusal& refusal) {
    forget();
    parts::sayNoCatalogue(*whole_, refusal);
    stack_->setCurrentIndex(0);
  });
}

void PlanPage::openCatalogue(const QString& file) {
  parts::sayOpening(*whole_, file);
  stack_->setCurrentIndex(0);
  thread_.open(file);
}

void PlanPage::showNoCatalogue() {
  forget();
  parts::sayNoCatalogue(*whole_, {});
  stack_->setCurrentIndex(0);
}

void PlanPage::findExample() {
  thread_.ask(examples, [this](const desk::OpenCatalogue& open) -> desk::CatalogueThread::Then {
    return [this, found = exampleOf(open.vocabulary)] {
      example_ = found;
      if (!found.first.empty())
        sheet_->offer(
            tr("Try: %1 with %2").arg(texts(found.first).join(QString()), texts(found.second).join(tr(" and "))));
    };
  });
}

void PlanPage::asked() {
  if (file_.isEmpty()) return;
  const auto dashes = dashes_->lines();
  const auto engines = engines_->lines();
  head_->tell({});
  if (dashes.empty() || engines.empty()) {
    thread_.drop(asking);
    forget();
    if (dashes.empty() != engines.empty())
      sheet_->say(dashes.empty() ? tr("Now the dash") : tr("Now the engine"),
                  dashes.empty() ? tr("Write at least one dash on the left: the year and the vehicle line.")
                                 : tr("Write at least one donor engine on the right: the casting number of its head, "
                                      "and the date cast beside it."));
    return;
  }
  thread_.ask(asking,
              [this, dashes, engines,
               units = settings_.units()](const desk::OpenCatalogue& open) -> desk::CatalogueThread::Then {
                auto made = std::make_shared<Answered>();
                workflow::PlanQuestion question{questionsOf(open.vocabulary, dashes, made->dashNotes),
                                                questionsOf(open.vocabulary, engines, made->engineNotes)};
                auto plan = workflow::plan(open.catalogue, question, {{}, units});
                made->dashes = texts(dashes);
                made->engines = texts(engines);
                if (!plan)
                  return [this, made, why = desk::refusalSentence(plan.error())] {
                    dashes_->setNotes(made->dashNotes);
                    engines_->setNotes(made->engineNotes);
                    displayRefused(why);
                  };
                made->plan = std::move(*plan);
                return [this, made] { display(made); };
              });
}

void PlanPage::display(const std::shared_ptr<const Answered>& answered) {
  answered_ = answered;
  settle_.stop();
  dashes_->setNotes(answered->dashNotes);
  engines_->setNotes(answered->engineNotes);
  QStringList parts;
  for (const std::string& part : answered->plan.partsToBuy) parts << desk::plain(part);
  QStringList cautions;
  for (const std::string& caution : answered->plan.cautions) cautions << desk::plain(caution);
  answer_->display(gridOf(answered->plan, answered->dashes, answered->engines, settings_.units()), parts, cautions);
  head_->enable(true);
  answers_->setCurrentIndex(1);
}

void PlanPage::displayRefused(const QString& sentence) {
  answered_.reset();
  head_->enable(false);
  sheet_->say(tr("Not enough to go on yet"), sentence);
  if (showsAnswer()) settle_.start();
}

void PlanPage::forget() {
  settle_.stop();
  answered_.reset();
  head_->enable(false);
  sheet_->say(tr("Which engine for which dash?"),
              tr("Write the dashes on the left and the engines you could have on the right, a line each, as on the "
                 "match page. Every pair is answered: the sender to buy, how far the needle is off, and the one look "
                 "that would settle it."));
  answers_->setCurrentIndex(0);
}

void PlanPage::resizeEvent(QResizeEvent* event) {
  Page::resizeEvent(event);
  // What is asked takes a third of the page at most, the answer has the rest.
  const int most = std::clamp(height() / 3 / dashes_->lineHeight() - 1, kFewestLines, kMostLines);
  dashes_->showAtMost(most);
  engines_->showAtMost(most);
  grid().showAtMost(height() / 2);
}

QString PlanPage::asText() const {
  return answered_ ? planAsText(answered_->plan, answered_->dashes, answered_->engines, settings_.units()) : QString();
}

Expected<printing::Sheets> PlanPage::sheets() const {
  if (!answered_)
    return refuse("nothing-to-print", tr("Plan").toStdString(), tr("no answer yet").toStdString(),
                  tr("a dash and an engine").toStdString());
  // On paper the dashes and engines are called what the person called them.
  workflow::Plan named = answered_->plan;
  for (std::size_t i = 0; i < named.dashNames.size(); ++i)
    named.dashNames[i] = answered_->dashes[static_cast<qsizetype>(i)].toStdString();
  for (std::size_t i = 0; i < named.engineNames.size(); ++i)
    named.engineNames[i] = answered_->engines[static_cast<qsizetype>(i)].toStdString();
  return printing::Sheets{tr("swap plan"), workflow::planSheet(named, desk::todaysSheet(settings_.units()))};
}

QString PlanPage::savePlan(const QString& file) const {
  return answered_ ? writePlan(answered_->plan.question, file) : tr("There is no plan to save yet.");
}

void PlanPage::putLines(const Sides& sides) {
  dashes_->setLines(sides.dashes);
  engines_->setLines(sides.engines);
}

QString PlanPage::openPlan(const QString& file) {
  auto question = readPlan(file);
  if (!question) return question.error();
  thread_.ask(opening,
              [this, asked = std::move(*question)](const desk::OpenCatalogue& open) -> desk::CatalogueThread::Then {
                const auto lines = [&](const std::vector<workflow::Question>& side) {
                  std::vector<Line> all;
                  all.reserve(side.size());
                  for (const workflow::Question& each : side) all.push_back({lineOf(open.vocabulary, each), each});
                  return all;
                };
                return [this, lines = Sides{lines(asked.dashes), lines(asked.engines)}] {
                  const Sides before{dashes_->lines(), engines_->lines()};
                  putLines(lines);
                  history().push(new desk::Snapshot<Sides>(tr("opening a plan"), before, lines,
                                                           [this](const Sides& sides) { putLines(sides); }));
                };
              });
  return {};
}

}  // namespace ohmkin::plan
