#include <catalog/layouts.h>
#include <date/date_page.h>
#include <date/presenter.h>
#include <desk/sheet_options.h>
#include <look/type.h>
#include <parts/scrolling.h>
#include <workflow/layouts.h>
#include <QVBoxLayout>

namespace ohmkin::castings {
namespace {

using look::space;

constexpr int kSettleMilliseconds = 500;
enum Lane { asking, names };  // of the catalogue's thread; the bench has 2 and 3

}  // namespace

DatePage::DatePage(desk::Settings& settings, QWidget* parent)
    : Page(parent),
      settings_(settings),
      whole_(new parts::BlankSheet(this)),
      stack_(new QStackedWidget(this)),
      halves_(new parts::Segmented(tr("What to do"), this)),
      half_(new QStackedWidget(this)) {
  halves_->setSegments({tr("Read the castings"), tr("Layouts")});
  half_->addWidget(parts::scrolling(makeReading(), this));
  bench_ = new LayoutBench(thread_, this);
  half_->addWidget(parts::scrolling(bench_, this));
  auto* work = new QWidget(this);
  auto* column = new QVBoxLayout(work);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(12));
  column->addWidget(halves_);
  column->addWidget(half_, 1);
  stack_->addWidget(whole_);
  stack_->addWidget(work);
  auto* outer = new QVBoxLayout(this);
  outer->setContentsMargins(space(24), space(24), space(24), space(16));
  outer->addWidget(stack_);
  parts::sayNoCatalogue(*whole_, {});
  wire();
}

QWidget* DatePage::makeReading() {
  auto* reading = new QWidget;
  form_ = new CastingForm(reading);
  lags_ = new UsualLags(reading);
  answers_ = new QStackedWidget(reading);
  sheet_ = new parts::BlankSheet(reading);
  answers_->addWidget(sheet_);
  view_ = new DateAnswerView([this] { return sheets(); }, reading);
  answers_->addWidget(view_);
  auto* column = new QVBoxLayout(reading);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(16));
  column->addWidget(form_);
  column->addWidget(lags_);
  column->addWidget(answers_, 1);
  return reading;
}

void DatePage::wire() {
  for (parts::BlankSheet* each : {whole_, sheet_}) {
    parts::askThrough(*this, *each);
  }
  connect(sheet_, &parts::BlankSheet::exampleTaken, this, [this] {
    if (example_) form_->fill(*example_);
    form_->takeKeyboard();
  });
  connect(halves_, &parts::Segmented::chosen, this, [this](int half) {
    half_->setCurrentIndex(half);
    takeKeyboard();
  });
  connect(form_, &CastingForm::changed, this, &DatePage::asked);
  connect(lags_, &UsualLags::changed, this, &DatePage::asked);
  connect(bench_, &LayoutBench::saved, this, [this] {
    readCatalogue();
    asked();
  });
  connect(&thread_, &desk::CatalogueThread::opened, this, [this](const QString& file) {
    file_ = file;
    stack_->setCurrentIndex(1);
    readCatalogue();
    bench_->catalogueOpened(file);
    emit opened(file);
    asked();
  });
  connect(&thread_, &desk::CatalogueThread::openingRefused, this, [this](const QString& file, const Refusal& refusal) {
    forget();
    file_.clear();
    parts::sayNoCatalogue(*whole_, refusal);
    stack_->setCurrentIndex(0);
    emit refused(file, desk::refusalSentence(refusal));
  });
  connect(&thread_, &desk::CatalogueThread::failed, this, [this](const Refusal& refusal) {
    forget();
    parts::sayNoCatalogue(*whole_, refusal);
    stack_->setCurrentIndex(0);
  });
  settle_.setSingleShot(true);
  settle_.setInterval(kSettleMilliseconds);
  connect(&settle_, &QTimer::timeout, this, [this] { answers_->setCurrentIndex(0); });
  offer(tr("Type what is cast and stamped"), QKeySequence(Qt::CTRL | Qt::Key_L), [this] { takeKeyboard(); });
  offer(tr("Time line or table"), QKeySequence(Qt::CTRL | Qt::Key_T), [this] { view_->toggleTable(); });
  offer(tr("Usual lags: show or hide"), QKeySequence(Qt::CTRL | Qt::Key_J), [this] { lags_->fold().toggle(); });
  offer(tr("Print the date sheet"), QKeySequence(Qt::CTRL | Qt::Key_P), [this] {
    if (showsAnswer()) view_->print().click();
  });
  offer(tr("Layouts of date codes"), QKeySequence(Qt::CTRL | Qt::Key_PageDown), [this] { halves_->choose(layouts); });
  offer(tr("Read an engine's codes"), QKeySequence(Qt::CTRL | Qt::Key_PageUp), [this] { halves_->choose(read); });
}

void DatePage::openCatalogue(const QString& file) {
  parts::sayOpening(*whole_, file);
  stack_->setCurrentIndex(0);
  thread_.open(file);
}

void DatePage::showNoCatalogue() {
  forget();
  parts::sayNoCatalogue(*whole_, {});
  stack_->setCurrentIndex(0);
}

void DatePage::takeKeyboard() {
  if (half_->currentIndex() == layouts) bench_->takeKeyboard();
  else form_->takeKeyboard();
}

void DatePage::readCatalogue() {
  thread_.ask(names, [this](const desk::OpenCatalogue& open) -> desk::CatalogueThread::Then {
    std::vector<LayoutName> layoutNames;
    for (const auto& record : catalog::dateLayouts(open.catalogue)) {
      const dating::Layout layout = workflow::layoutOf(record);
      layoutNames.push_back({desk::plain(layout.id), desk::plain(layout.name), layout.foundOn});
    }
    QStringList lines;
    QStringList castings;
    for (const workflow::Word& word : open.vocabulary.words()) {
      QStringList* into = word.field == "line" ? &lines : word.field == "casting" ? &castings : nullptr;
      if (into != nullptr && !into->contains(desk::plain(word.text))) *into << desk::plain(word.text);
    }
    return [this, layoutNames, lines, castings, example = exampleOf(open.catalogue)] {
      form_->setLayouts(layoutNames);
      form_->setNames(lines, castings);
      example_ = example;
      sheet_->offer(example_ ? exampleInWords(*example_) : QString());
    };
  });
}

void DatePage::asked() {
  if (file_.isEmpty()) return;
  auto question = form_->question();
  if (question)
    if (auto set = lags_->fill(*question); !set) question = tl::make_unexpected(set.error());
  if (form_->empty()) {
    thread_.drop(asking);
    forget();
    return;
  }
  if (!question) {
    thread_.drop(asking);
    displayRefused(desk::refusalSentence(question.error()));
    return;
  }
  thread_.ask(asking, [this, asked = *question](const desk::OpenCatalogue& open) -> desk::CatalogueThread::Then {
    auto answer = workflow::dateEngine(open.catalogue, asked);
    if (!answer) return [this, why = desk::refusalSentence(answer.error())] { displayRefused(why); };
    return [this, shared = std::make_shared<const workflow::DateAnswer>(std::move(*answer))] { display(shared); };
  });
}

void DatePage::display(const std::shared_ptr<const workflow::DateAnswer>& answer) {
  answer_ = answer;
  settle_.stop();
  view_->display(*answer);
  answers_->setCurrentIndex(1);
}

void DatePage::displayRefused(const QString& sentence) {
  sheet_->say(tr("Not enough to go on yet"), sentence);
  answer_.reset();
  // Half a number is often refused: what is shown stays a moment, so that the page does not flicker under the typing.
  if (showsAnswer()) settle_.start();
}

void DatePage::forget() {
  settle_.stop();
  answer_.reset();
  sheet_->say(tr("What can you read?"),
              tr("Type a casting number, the date code beside it, or the assembly stamp. Put ? for a character you "
                 "cannot read. Each head goes in a "
                 "row of its own; what you know of the vehicle says whether the engine is its first."));
  answers_->setCurrentIndex(0);
}

Expected<printing::Sheets> DatePage::sheets() const {
  if (!answer_)
    return refuse("nothing-to-print", tr("Engine date").toStdString(), tr("no answer yet").toStdString(),
                  tr("a casting number or a code").toStdString());
  return printing::Sheets{tr("engine date"), workflow::dateSheet(*answer_, desk::todaysSheet(settings_.units()))};
}

QString DatePage::asText() const { return answer_ ? answerAsText(*answer_) : QString(); }

}  // namespace ohmkin::castings
