#include <desk/catalogue_thread.h>
#include <look/type.h>
#include <match/chain_words.h>
#include <match/match_page.h>
#include <match/wording.h>
#include <parts/scrolling.h>
#include <parts/words.h>
#include <workflow/job_work.h>
#include <QVBoxLayout>

namespace ohmkin::match {
namespace {

using look::space;

constexpr int kSettleMilliseconds = 500;

/// Bytes of the text as the use case counts them, into the UTF-16 that Qt counts.
int unitsBefore(const QString& text, std::size_t bytes) {
  return static_cast<int>(QString::fromUtf8(text.toUtf8().left(static_cast<qsizetype>(bytes))).size());
}

/// How a person types a field into the line: the words a question is made of are the same in every language.
QString lead(const std::string& field) {
  if (field == "casting") return QStringLiteral("casting ");
  if (field == "terminal") return QStringLiteral("terminal ");
  if (field == "casting-date") return QStringLiteral("dated ");
  if (field == "engine") return QStringLiteral("engine ");
  if (field == "port" || field == "port-location") return QStringLiteral("port ");
  return {};
}

}  // namespace

MatchPage::MatchPage(desk::Settings& settings, QWidget* parent)
    : Page(parent),
      settings_(settings),
      query_(new parts::QueryBox(this)),
      chips_(new parts::ChipRow(this)),
      keep_(new QPushButton(tr("&Keep with a job…"), this)),
      told_((new parts::Words({}, this))->painted(look::Paint::accent)->selectable()),
      stack_(new QStackedWidget(this)),
      start_(new StartPage(this)),
      result_(new ResultSheet) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(space(24), space(24), space(24), space(16));
  column->setSpacing(space(8));
  column->addWidget(query_);
  auto* under = new QHBoxLayout;
  under->setSpacing(space(8));
  under->addWidget(chips_, 1);
  under->addWidget(keep_, 0, Qt::AlignRight | Qt::AlignTop);
  column->addLayout(under);
  column->addWidget(told_);
  column->addSpacing(space(4));
  column->addWidget(stack_, 1);
  chips_->hide();
  told_->hide();
  keep_->setFont(look::typeface(look::Text::small));
  keep_->setMinimumHeight(space(28));

  stack_->addWidget(start_);
  stack_->addWidget(parts::scrolling(result_, this));
  wire();
}

void MatchPage::wire() {
  connect(query_, &parts::QueryBox::asked, this, &MatchPage::asked);
  connect(query_, &parts::QueryBox::left, this, [this] {
    if (showsAnswer()) candidates().setFocus(Qt::OtherFocusReason);
    else if (!start_->examples().empty() && start_->examples().front()->isVisible())
      start_->examples().front()->setFocus(Qt::OtherFocusReason);
  });
  connect(start_, &StartPage::exampleChosen, this, [this](const QString& text) {
    query_->setText(text);
    query_->edit()->setFocus(Qt::OtherFocusReason);
  });
  parts::askThrough(*this, *start_);
  connect(result_, &ResultSheet::lookTaken, this, &MatchPage::fillIn);

  connect(&asker_, &Asker::opened, this, [this](const QString& file) {
    file_ = file;
    start_->showEmpty();
    emit opened(file);
    asked(query_->text());
  });
  connect(&asker_, &Asker::examplesFound, start_, &StartPage::setExamples);
  connect(&asker_, &Asker::openingRefused, this, [this](const QString& file, const Refusal& refusal) {
    file_.clear();
    forget();
    chips_->display({});
    start_->showNoCatalogue(refusal);
    emit this->refused(file, desk::refusalSentence(refusal));
  });
  connect(&asker_, &Asker::failed, this, [this](const Refusal& refusal) {
    forget();
    start_->showNoCatalogue(refusal);
  });
  connect(&asker_, &Asker::answered, this, &MatchPage::display);
  settle_.setSingleShot(true);
  settle_.setInterval(kSettleMilliseconds);
  connect(&settle_, &QTimer::timeout, this, [this] { stack_->setCurrentIndex(0); });
  connect(&settings_, &desk::Settings::unitsChanged, this, &MatchPage::unitsChanged);

  offer(tr("Type the question"), QKeySequence(Qt::CTRL | Qt::Key_L), [this] { query_->takeFocus(); });
  offer(tr("Refused senders: show or hide"), QKeySequence(Qt::CTRL | Qt::Key_R), [this] { result_->toggleRefused(); });
  offer(tr("Next reading of the question"), QKeySequence(Qt::CTRL | Qt::Key_PageDown),
        [this] { result_->nextBranch(1); });
  offer(tr("Previous reading of the question"), QKeySequence(Qt::CTRL | Qt::Key_PageUp),
        [this] { result_->nextBranch(-1); });
  offer(tr("Error plot or table"), QKeySequence(Qt::CTRL | Qt::Key_T), [this] {
    if (!showsAnswer()) return;
    details().showTab(DetailPanel::error);
    details().errors().toggleTable();
  });
  keeping_ = offer(tr("Keep the answer with a job"), QKeySequence(Qt::CTRL | Qt::Key_K), [this] { keepWithJob(); });
  keep_->setToolTip(parts::plainTip(desk::tipOf(*keeping_)));
  connect(keep_, &QPushButton::clicked, keeping_, &QAction::trigger);
  connect(stack_, &QStackedWidget::currentChanged, this, &MatchPage::showState);
  showState();
}

void MatchPage::showState() {
  keeping_->setEnabled(showsAnswer());
  keep_->setVisible(showsAnswer());
}

void MatchPage::tell(const QString& sentence) {
  told_->setText(sentence);
  told_->setVisible(!sentence.isEmpty());
}

/// The answer as it is shown now, whatever is typed or changed while the dialog is open.
void MatchPage::keepWithJob() {
  if (!outcome_ || !outcome_->answer) return;
  parts::keepWithJob(
      file_, outcome_->text,
      [outcome = outcome_](catalog::Catalogue& catalogue, catalog::JobNumber id, std::string_view who) {
        return workflow::keepMatch(catalogue, id, *outcome->answer, who);
      },
      this, [this](const QString& sentence) { tell(sentence); });
}

void MatchPage::openCatalogue(const QString& file) {
  start_->showOpening(file);
  asker_.open(file);
}

void MatchPage::showNoCatalogue() {
  forget();
  start_->showNoCatalogue({});
}

void MatchPage::asked(const QString& text) {
  tell({});
  if (file_.isEmpty()) return;
  if (!text.trimmed().isEmpty()) {
    asker_.ask(text, settings_.units());
    return;
  }
  asker_.drop();
  forget();
  chips_->display({});
  start_->showEmpty();
}

void MatchPage::forget() {
  result_->forget();
  outcome_.reset();
  settle_.stop();
  stack_->setCurrentIndex(0);
}

void MatchPage::display(const std::shared_ptr<const Outcome>& outcome) {
  outcome_ = outcome;
  std::vector<parts::CompletionWords> ways;
  for (const workflow::Completion& way : outcome->ways)
    ways.push_back({plain(way.insert), unitsBefore(outcome->text, way.from), plain(way.kind), plain(way.note)});
  query_->offer(outcome->text, ways);
  if (!outcome->answer || outcome->answer->branches.empty()) {
    chips_->display(chipsOf(outcome->text, outcome->reading, {}));
    QString why = outcome->answer ? QString() : desk::refusalSentence(outcome->answer.error());
    if (outcome->answer)
      for (const Finding& finding : outcome->answer->findings) why += plain(finding.sentence) + QLatin1Char(' ');
    start_->showRefused(why);
    // Half a word is often a refusal: what is shown stays a moment, so that the page does not flicker under the typing.
    if (showsAnswer()) settle_.start();
    return;
  }
  settle_.stop();
  chips_->display(chipsOf(outcome->text, outcome->reading, outcome->answer->chips));
  result_->display(outcome, settings_.units());
  stack_->setCurrentIndex(1);
}

void MatchPage::fillIn(const std::string& field) {
  QString text = query_->text().trimmed();
  if (!text.isEmpty()) text += QLatin1Char(' ');
  query_->setText(text + lead(field));
  query_->edit()->setFocus(Qt::OtherFocusReason);
  query_->edit()->end(false);
}

void MatchPage::unitsChanged() {
  // The sentences hold temperatures too, so the question is asked again in the new unit.
  if (outcome_) asked(outcome_->text);
}

QString MatchPage::asText() const { return showsAnswer() ? result_->asText() : QString(); }

}  // namespace ohmkin::match
