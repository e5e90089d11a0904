#include <look/type.h>
#include <plan/plan_page.h>
#include <plan/presenter.h>
#include <QApplication>
#include <QClipboard>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QSaveFile>
#include <QScrollArea>
#include <QShortcut>

namespace ohmkin::plan {
namespace {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

constexpr int kSettleMilliseconds = 500;
constexpr std::size_t kMostDashes = 20;
constexpr std::size_t kMostEngines = 50;
constexpr qint64 kLargestDocument = 1 << 20;
enum Lane { asking, examples, opening };

parts::Words* label(const QString& text, QWidget* parent) {
  return (new parts::Words(text, parent))->sized(typeface(Text::small))->painted(Paint::quiet);
}

/// Lines into questions; what was not understood is noted beside each.
std::vector<workflow::Question> read(const workflow::Vocabulary& vocabulary, const std::vector<Line>& lines,
                                     QStringList& notes) {
  std::vector<workflow::Question> all;
  for (const Line& line : lines) {
    if (line.opened) {
      all.push_back(*line.opened);
      notes << QString();
      continue;
    }
    const workflow::TextReading reading = workflow::readQuestion(vocabulary, line.text.toStdString());
    all.push_back(reading.question);
    notes << notUnderstood(line.text, reading);
  }
  return all;
}

QStringList texts(const std::vector<Line>& lines) {
  QStringList all;
  for (const Line& line : lines) all << line.text;
  return all;
}

}  // namespace

PlanPage::PlanPage(desk::Settings& settings, QWidget* parent)
    : Page(parent), settings_(settings), whole_(new parts::BlankSheet(this)), stack_(new QStackedWidget(this)) {
  auto* scroll = new QScrollArea(this);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setWidgetResizable(true);
  scroll->setFocusPolicy(Qt::NoFocus);
  scroll->viewport()->setAutoFillBackground(false);
  QWidget* work = makeWork();
  scroll->setWidget(work);
  work->setAutoFillBackground(false);
  stack_->addWidget(whole_);
  stack_->addWidget(scroll);
  auto* outer = new QVBoxLayout(this);
  outer->setContentsMargins(space(24), space(24), space(24), space(16));
  outer->addWidget(stack_);
  parts::sayNoCatalogue(*whole_, {});
  wire();
}

QWidget* PlanPage::makeWork() {
  auto* work = new QWidget;
  dashes_ = new LineList(tr("Dashes: year, vehicle line, cluster option"), tr("1968 ridgeway utility gauge package"),
                         kMostDashes, work);
  engines_ = new LineList(tr("Donor engines: casting number, date in the casting, engine"),
                          tr("casting 30418 dated H 22 1"), kMostEngines, work);
  auto* open = new QPushButton(tr("Open plan…"), work);
  save_ = new QPushButton(tr("Save plan…"), work);
  copy_ = new QPushButton(tr("Copy as text"), work);
  told_ = (new parts::Words({}, work))->sized(typeface(Text::small))->painted(Paint::quiet);
  answers_ = new QStackedWidget(work);
  sheet_ = new parts::BlankSheet(work);
  answers_->addWidget(sheet_);
  answers_->addWidget(makeAnswer());

  auto* head = new QHBoxLayout;
  head->setSpacing(space(8));
  head->addWidget((new parts::Words(tr("Plan a swap"), work))->sized(typeface(Text::headline)), 0);
  head->addSpacing(space(8));
  head->addWidget(told_, 1);
  for (QPushButton* button : {open, save_, copy_}) {
    button->setFont(typeface(Text::small));
    button->setFixedHeight(static_cast<int>(look::metrics(Text::small).lineSpacing()) + space(14));
    head->addWidget(button);
  }
  open->setToolTip(tr("A plan saved before (Ctrl+Shift+O)"));
  save_->setToolTip(tr("Keeps what is asked, to be opened again (Ctrl+S)"));
  copy_->setToolTip(tr("The whole plan as plain text (Ctrl+Shift+C)"));
  auto* sides = new QHBoxLayout;
  sides->setSpacing(space(16));
  sides->addWidget(dashes_, 1);
  sides->addWidget(engines_, 1);
  auto* column = new QVBoxLayout(work);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(12));
  column->addLayout(head);
  column->addLayout(sides);
  column->addWidget(answers_, 1);
  connect(open, &QPushButton::clicked, this, &PlanPage::chooseOpen);
  connect(save_, &QPushButton::clicked, this, &PlanPage::chooseSave);
  connect(copy_, &QPushButton::clicked, this, [this] {
    if (answered_) QApplication::clipboard()->setText(asText());
  });
  return work;
}

QWidget* PlanPage::makeAnswer() {
  auto* answer = new QWidget;
  grid_ = new PlanGrid(answer);
  auto* chosen = new parts::Panel(parts::Panel::Kind::sheet, answer);
  pair_ = label({}, chosen);
  verdict_ = (new parts::Words({}, chosen))->selectable();
  pairLook_ = (new parts::Words({}, chosen))->sized(typeface(Text::small))->painted(Paint::quiet)->selectable();
  auto* inChosen = new QVBoxLayout(chosen);
  inChosen->setContentsMargins(space(16), space(12), space(16), space(14));
  inChosen->setSpacing(space(4));
  for (QWidget* each :
       {static_cast<QWidget*>(pair_), static_cast<QWidget*>(verdict_), static_cast<QWidget*>(pairLook_)})
    inChosen->addWidget(each);
  inChosen->addStretch(1);
  auto* shopping = new parts::Panel(parts::Panel::Kind::sheet, answer);
  buy_ = (new parts::Words({}, shopping))->sized(typeface(Text::strong))->selectable();
  auto* inShopping = new QVBoxLayout(shopping);
  inShopping->setContentsMargins(space(16), space(12), space(16), space(14));
  inShopping->setSpacing(space(4));
  inShopping->addWidget(label(tr("Parts to buy, with the best engine for each dash"), shopping));
  inShopping->addWidget(buy_);
  inShopping->addStretch(1);
  cautions_ = new parts::CautionPanel(answer);
  auto* under = new QHBoxLayout;
  under->setSpacing(space(16));
  under->addWidget(chosen, 3);
  under->addWidget(shopping, 2);
  auto* column = new QVBoxLayout(answer);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(12));
  column->addWidget(grid_);
  column->addLayout(under);
  column->addWidget(cautions_);
  column->addStretch(1);
  return answer;
}

void PlanPage::wire() {
  for (parts::BlankSheet* each : {whole_, sheet_}) {
    connect(each, &parts::BlankSheet::openRequested, this, &Page::openRequested);
    connect(each, &parts::BlankSheet::demoRequested, this, &Page::demoRequested);
  }
  connect(sheet_, &parts::BlankSheet::exampleTaken, this, [this] {
    dashes_->setLines(example_.first);
    engines_->setLines(example_.second);
    takeKeyboard();
  });
  connect(dashes_, &LineList::changed, this, &PlanPage::asked);
  connect(engines_, &LineList::changed, this, &PlanPage::asked);
  connect(grid_, &PlanGrid::chosen, this, &PlanPage::displayPair);
  connect(&settings_, &desk::Settings::unitsChanged, this, &PlanPage::asked);
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
  key(QKeySequence(Qt::CTRL | Qt::Key_L), [this] { dashes_->takeKeyboard(); });
  key(QKeySequence(Qt::CTRL | Qt::Key_E), [this] { engines_->takeKeyboard(); });
  key(QKeySequence(Qt::CTRL | Qt::Key_G), [this] { grid_->setFocus(Qt::ShortcutFocusReason); });
  key(QKeySequence(Qt::CTRL | Qt::Key_S), [this] { chooseSave(); });
  key(QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_O), [this] { chooseOpen(); });
  forget();
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

/// A line of the catalogue in a year of its own, against two castings.
void PlanPage::findExample() {
  thread_.ask(examples, [this](const desk::OpenCatalogue& open) -> desk::CatalogueThread::Then {
    QString dash;
    std::vector<Line> engines;
    for (const workflow::Word& word : open.vocabulary.words()) {
      // "model years 1967–78": the year after the first.
      const int from = desk::plain(word.note).section(QStringLiteral("model years "), 1).left(4).toInt();
      if (dash.isEmpty() && word.field == "line" && word.text != word.id && from > 0)
        dash = QStringLiteral("%1 %2").arg(from + 1).arg(desk::plain(word.text));
      if (word.field == "casting" && engines.size() < 2)
        engines.push_back(Line{tr("casting %1").arg(desk::plain(word.text)), std::nullopt});
    }
    if (dash.isEmpty() || engines.empty()) return {};
    return [this, dash, engines] {
      example_.first = std::vector<Line>{Line{dash, std::nullopt}};
      example_.second = engines;
      sheet_->offer(tr("Try: %1 with %2").arg(dash, texts(engines).join(tr(" and "))));
    };
  });
}

void PlanPage::asked() {
  if (file_.isEmpty()) return;
  const auto dashes = dashes_->lines();
  const auto engines = engines_->lines();
  told_->clear();
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
                workflow::PlanQuestion question{read(open.vocabulary, dashes, made->dashNotes),
                                                read(open.vocabulary, engines, made->engineNotes)};
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
  grid_->display(gridOf(answered->plan, answered->dashes, answered->engines, settings_.units()));
  QStringList parts;
  for (const std::string& part : answered->plan.partsToBuy) parts << desk::plain(part);
  buy_->setText(parts.isEmpty() ? tr("none: no pair can be recommended") : parts.join(QStringLiteral(", ")));
  QStringList cautions;
  for (const std::string& caution : answered->plan.cautions) cautions << desk::plain(caution);
  cautions_->display(cautions);
  save_->setEnabled(true);
  copy_->setEnabled(true);
  answers_->setCurrentIndex(1);
}

void PlanPage::displayPair(int dash, int engine) {
  const GridCell& cell = grid_->picture().at(dash, engine);
  pair_->setText(tr("%1 with %2").arg(grid_->picture().dashes[dash], grid_->picture().engines[engine]));
  QStringList words{cell.sentence};
  if (!cell.era.isEmpty()) words << cell.era.left(1).toUpper() + cell.era.mid(1) + QLatin1Char('.');
  if (!cell.branches.isEmpty()) words << cell.branches;
  verdict_->setText(words.join(QLatin1Char(' ')));
  pairLook_->setText(cell.look.isEmpty() ? QString() : tr("One look would settle it: %1").arg(cell.look));
  pairLook_->setVisible(!cell.look.isEmpty());
}

void PlanPage::displayRefused(const QString& sentence) {
  answered_.reset();
  save_->setEnabled(false);
  copy_->setEnabled(false);
  sheet_->say(tr("Not enough to go on yet"), sentence);
  if (showsAnswer()) settle_.start();
}

void PlanPage::forget() {
  settle_.stop();
  answered_.reset();
  save_->setEnabled(false);
  copy_->setEnabled(false);
  sheet_->say(tr("Which engine for which dash?"),
              tr("Write the dashes on the left and the engines you could have on the right, a line each, as on the "
                 "match page. Every pair is answered: the "
                 "sender to buy, how far the needle is off, and the one look that would settle it."));
  answers_->setCurrentIndex(0);
}

QString PlanPage::asText() const {
  return answered_ ? planAsText(answered_->plan, answered_->dashes, answered_->engines, settings_.units()) : QString();
}

QString PlanPage::savePlan(const QString& file) const {
  if (!answered_) return tr("There is no plan to save yet.");
  QSaveFile out(file);
  const std::string document = workflow::planDocument(answered_->plan.question);
  const bool done =
      out.open(QIODevice::WriteOnly) &&
      out.write(document.data(), static_cast<qint64>(document.size())) == static_cast<qint64>(document.size()) &&
      out.commit();
  return done ? QString() : tr("%1 cannot be written: %2.").arg(QFileInfo(file).fileName(), out.errorString());
}

QString PlanPage::openPlan(const QString& file) {
  QFile in(file);
  if (!in.open(QIODevice::ReadOnly))
    return tr("%1 cannot be read: %2.").arg(QFileInfo(file).fileName(), in.errorString());
  const QByteArray bytes = in.read(kLargestDocument + 1);
  auto question =
      workflow::readPlanDocument(std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size())),
                                 QFileInfo(file).fileName().toStdString());
  if (!question) return desk::refusalSentence(question.error());
  thread_.ask(opening,
              [this, asked = std::move(*question)](const desk::OpenCatalogue& open) -> desk::CatalogueThread::Then {
                const auto lines = [&](const std::vector<workflow::Question>& side) {
                  std::vector<Line> all;
                  for (const workflow::Question& each : side) all.push_back({lineOf(open.vocabulary, each), each});
                  return all;
                };
                return [this, dashes = lines(asked.dashes), engines = lines(asked.engines)] {
                  dashes_->setLines(dashes);
                  engines_->setLines(engines);
                };
              });
  return {};
}

void PlanPage::chooseSave() {
  if (!answered_) return;
  QString file = QFileDialog::getSaveFileName(this, tr("Where to keep the plan"), tr("plan.json"),
                                              tr("Plans (*.json);;All files (*)"));
  if (file.isEmpty()) return;
  if (QFileInfo(file).suffix().isEmpty()) file += QStringLiteral(".json");
  const QString whyNot = savePlan(file);
  told_->setText(whyNot.isEmpty() ? tr("Saved as %1").arg(QFileInfo(file).fileName()) : whyNot);
}

void PlanPage::chooseOpen() {
  if (file_.isEmpty()) return;
  const QString file = QFileDialog::getOpenFileName(this, tr("Open a plan"), {}, tr("Plans (*.json);;All files (*)"));
  if (file.isEmpty()) return;
  const QString whyNot = openPlan(file);
  if (!whyNot.isEmpty()) told_->setText(tr("Not opened. %1").arg(whyNot));
}

}  // namespace ohmkin::plan
