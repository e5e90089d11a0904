#include <catalog/layouts.h>
#include <date/date_page.h>
#include <date/presenter.h>
#include <look/type.h>
#include <workflow/layouts.h>
#include <QEvent>
#include <QHBoxLayout>
#include <QScrollArea>
#include <QShortcut>
#include <QVBoxLayout>

namespace ohmkin::castings {
namespace {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

constexpr int kSettleMilliseconds = 500;
enum Lane { asking, names };  // of the catalogue's thread; the bench has 2 and 3

QScrollArea* scrolling(QWidget* inner, QWidget* parent) {
  auto* scroll = new QScrollArea(parent);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setWidgetResizable(true);
  scroll->setFocusPolicy(Qt::NoFocus);
  scroll->viewport()->setAutoFillBackground(false);
  scroll->setWidget(inner);
  inner->setAutoFillBackground(false);
  return scroll;
}

}  // namespace

DatePage::DatePage(desk::Settings& /*settings*/, QWidget* parent)
    : Page(parent),
      whole_(new parts::BlankSheet(this)),
      stack_(new QStackedWidget(this)),
      halves_(new parts::Segmented(tr("What to do"), this)),
      half_(new QStackedWidget(this)) {
  halves_->setSegments({tr("Read the castings"), tr("Layouts")});
  half_->addWidget(scrolling(makeReading(), this));
  bench_ = new LayoutBench(thread_, this);
  half_->addWidget(scrolling(bench_, this));
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
  answers_ = new QStackedWidget(reading);
  sheet_ = new parts::BlankSheet(reading);
  answers_->addWidget(sheet_);
  answers_->addWidget(makeAnswer());
  auto* column = new QVBoxLayout(reading);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(16));
  column->addWidget(form_);
  column->addWidget(answers_, 1);
  return reading;
}

QWidget* DatePage::makeAnswer() {
  auto* answer = new QWidget;
  QFont large = typeface(Text::headline);
  large.setPixelSize(static_cast<int>(QFontInfo(large).pixelSize() * 1.2));
  headline_ = (new parts::Words({}, answer))->sized(large)->selectable();
  engine_ = (new parts::Words({}, answer))->sized(typeface(Text::body))->selectable();
  alarm_ = (new parts::Words({}, answer))->painted(Paint::warning)->selectable();
  decades_ = (new parts::Words({}, answer))->sized(typeface(Text::small))->painted(Paint::quiet)->selectable();
  meanings_ = new MeaningList(answer);
  findings_ = new parts::FindingList(answer);
  drawn_ = new parts::Segmented(tr("Time line"), answer);
  drawn_->setSegments({tr("Time line"), tr("As a table")});
  timeLine_ = new TimeLineView(answer);
  table_ = new TimeTable(answer);
  table_->hide();

  auto* left = new QVBoxLayout;
  left->setSpacing(space(6));
  left->addWidget(
      (new parts::Words(tr("Engine assembled"), answer))->sized(typeface(Text::small))->painted(Paint::quiet));
  left->addWidget(headline_);
  left->addWidget(engine_);
  left->addWidget(alarm_);
  left->addWidget(decades_);
  left->addSpacing(space(10));
  auto* codes = new parts::Panel(parts::Panel::Kind::sheet, answer);
  auto* inCodes = new QVBoxLayout(codes);
  inCodes->setContentsMargins(space(16), space(12), space(12), space(12));
  inCodes->setSpacing(space(6));
  inCodes->addWidget(
      (new parts::Words(tr("What the codes can mean"), codes))->sized(typeface(Text::small))->painted(Paint::quiet));
  inCodes->addWidget(meanings_);
  left->addWidget(codes);
  left->addStretch(1);

  auto* times = new parts::Panel(parts::Panel::Kind::sheet, answer);
  auto* inTimes = new QVBoxLayout(times);
  inTimes->setContentsMargins(space(16), space(12), space(16), space(12));
  inTimes->setSpacing(space(8));
  inTimes->addWidget(drawn_);
  inTimes->addWidget(timeLine_);
  inTimes->addWidget(table_);
  auto* why = new parts::Panel(parts::Panel::Kind::sheet, answer);
  auto* inWhy = new QVBoxLayout(why);
  inWhy->setContentsMargins(space(16), space(12), space(8), space(12));
  inWhy->setSpacing(space(6));
  inWhy->addWidget((new parts::Words(tr("Why"), why))->sized(typeface(Text::small))->painted(Paint::quiet));
  findings_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);  // as high as it is: the page scrolls
  findings_->installEventFilter(this);
  inWhy->addWidget(findings_);
  auto* right = new QVBoxLayout;
  right->setSpacing(space(16));
  right->addWidget(times);
  right->addWidget(why);
  right->addStretch(1);
  auto* both = new QHBoxLayout(answer);
  both->setContentsMargins(0, 0, 0, 0);
  both->setSpacing(space(24));
  both->addLayout(left, 10);
  both->addLayout(right, 12);
  return answer;
}

void DatePage::wire() {
  for (parts::BlankSheet* each : {whole_, sheet_}) {
    connect(each, &parts::BlankSheet::openRequested, this, &Page::openRequested);
    connect(each, &parts::BlankSheet::demoRequested, this, &Page::demoRequested);
  }
  connect(sheet_, &parts::BlankSheet::exampleTaken, this, [this] {
    if (example_) form_->fill(*example_);
    form_->takeKeyboard();
  });
  connect(halves_, &parts::Segmented::chosen, this, [this](int half) {
    half_->setCurrentIndex(half);
    takeKeyboard();
  });
  connect(drawn_, &parts::Segmented::chosen, this, [this](int which) {
    timeLine_->setVisible(which == 0);
    table_->setVisible(which == 1);
  });
  connect(form_, &CastingForm::changed, this, &DatePage::asked);
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
    parts::sayNoCatalogue(*whole_, desk::refusalSentence(refusal));
    stack_->setCurrentIndex(0);
    emit refused(file, desk::refusalSentence(refusal));
  });
  connect(&thread_, &desk::CatalogueThread::failed, this, [this](const Refusal& refusal) {
    forget();
    parts::sayNoCatalogue(*whole_, desk::refusalSentence(refusal));
    stack_->setCurrentIndex(0);
  });
  settle_.setSingleShot(true);
  settle_.setInterval(kSettleMilliseconds);
  connect(&settle_, &QTimer::timeout, this, [this] { answers_->setCurrentIndex(0); });
  const auto key = [this](const QKeySequence& keys, auto&& what) {
    auto* shortcut = new QShortcut(keys, this);
    shortcut->setContext(Qt::WidgetWithChildrenShortcut);
    connect(shortcut, &QShortcut::activated, this, what);
  };
  key(QKeySequence(Qt::CTRL | Qt::Key_L), [this] { takeKeyboard(); });
  key(QKeySequence(Qt::CTRL | Qt::Key_T), [this] { drawn_->choose(1 - drawn_->chosenIndex()); });
  key(QKeySequence(Qt::CTRL | Qt::Key_PageDown), [this] { halves_->choose(layouts); });
  key(QKeySequence(Qt::CTRL | Qt::Key_PageUp), [this] { halves_->choose(read); });
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
  const auto question = form_->question();
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
  headline_->setText(headlineOf(*answer));
  const QString engine = engineWordsOf(*answer);
  engine_->setText(engine);
  engine_->setVisible(!engine.isEmpty());
  const QString alarm = alarmOf(*answer);
  alarm_->setText(alarm);
  alarm_->setVisible(!alarm.isEmpty());
  const QString decades = decadesInWords(*answer);
  decades_->setText(decades);
  decades_->setVisible(answer->posterior.decades.size() > 2 && decades.contains(QStringLiteral(" · ")));
  meanings_->display(meaningsOf(*answer));
  findings_->display(findingsOf(*answer));
  fitFindings();
  timeLine_->display(timeLineOf(*answer));
  table_->display(tableOf(*answer));
  answers_->setCurrentIndex(1);
}

bool DatePage::eventFilter(QObject* watched, QEvent* event) {
  if (watched == findings_ && event->type() == QEvent::Resize) fitFindings();
  return Page::eventFilter(watched, event);
}

void DatePage::fitFindings() {
  const QWidget* sheet = findings_->widget();
  if (sheet == nullptr || sheet->layout() == nullptr) return;
  findings_->setFixedHeight(std::max(space(24), sheet->layout()->heightForWidth(findings_->width())));
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

QString DatePage::asText() const { return answer_ ? answerAsText(*answer_) : QString(); }

}  // namespace ohmkin::castings
