#include <look/type.h>
#include <match/match_page.h>
#include <match/presenter.h>
#include <parts/words.h>
#include <QHBoxLayout>
#include <QScrollArea>
#include <QShortcut>
#include <QVBoxLayout>

namespace ohmkin::match {
namespace {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

constexpr int kSettleMilliseconds = 500;

/// Bytes of the text as the use case counts them, into the UTF-16 that Qt counts.
int unitsBefore(const QString& text, std::size_t bytes) {
  return static_cast<int>(QString::fromUtf8(text.toUtf8().left(static_cast<qsizetype>(bytes))).size());
}

/// How a person types a field into the line.
QString lead(const std::string& field) {
  if (field == "casting") return MatchPage::tr("casting ");
  if (field == "terminal") return MatchPage::tr("terminal ");
  if (field == "casting-date") return MatchPage::tr("dated ");
  if (field == "engine") return MatchPage::tr("engine ");
  if (field == "port" || field == "port-location") return MatchPage::tr("port ");
  return {};
}

}  // namespace

MatchPage::MatchPage(desk::Settings& settings, QWidget* parent)
    : Page(parent),
      settings_(settings),
      query_(new parts::QueryBox(this)),
      chips_(new parts::ChipRow(this)),
      stack_(new QStackedWidget(this)),
      start_(new StartPage(this)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(space(24), space(24), space(24), space(16));
  column->setSpacing(space(8));
  column->addWidget(query_);
  column->addWidget(chips_);
  column->addSpacing(space(4));
  column->addWidget(stack_, 1);
  chips_->hide();

  stack_->addWidget(start_);
  // At 200 % text, or in a small window, the page scrolls instead of squeezing what it says.
  auto* scroll = new QScrollArea(this);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setWidgetResizable(true);
  scroll->setFocusPolicy(Qt::NoFocus);
  scroll->viewport()->setAutoFillBackground(false);
  QWidget* result = makeResult();
  scroll->setWidget(result);
  result->setAutoFillBackground(false);
  stack_->addWidget(scroll);
  wire();
}

QWidget* MatchPage::makeResult() {
  auto* result = new QWidget;
  branches_ = new parts::Segmented(tr("Which way the facts are"), result);
  branches_->setEven(true);
  chain_ = new parts::ChainView(result);
  count_ = (new parts::Words({}, result))->sized(typeface(Text::small))->painted(Paint::quiet);
  count_->setWordWrap(false);
  refused_ = new QPushButton(tr("Show refused"), result);
  refused_->setCheckable(true);
  refused_->setFont(typeface(Text::small));
  refused_->setFixedHeight(static_cast<int>(look::metrics(Text::small).lineSpacing()) + space(12));
  refused_->setToolTip(parts::plainTip(tr("Senders that are not recommended, and why (Ctrl+R)")));
  note_ = (new parts::Words({}, result))->painted(Paint::ink);
  candidates_ = new parts::CandidateList(result);
  look_ = new parts::LookCard(result);
  cautions_ = new parts::CautionPanel(result);
  needles_ = new NeedlePanel(result);
  details_ = new DetailPanel(result);

  auto* head = new QHBoxLayout;
  head->setSpacing(space(12));
  head->addWidget((new parts::Words(tr("Senders, best first"), result))->sized(typeface(Text::heading)), 1);
  head->addWidget(count_);
  head->addWidget(refused_);
  auto* left = new QVBoxLayout;
  left->setSpacing(space(8));
  left->addLayout(head);
  left->addWidget(note_);
  left->addWidget(candidates_, 100);
  left->addWidget(look_);
  left->addSpacing(space(4));
  left->addWidget(cautions_);
  left->addStretch(1);
  auto* right = new QVBoxLayout;
  right->setSpacing(space(16));
  right->addWidget(needles_, 5);
  right->addWidget(details_, 6);
  auto* both = new QHBoxLayout;
  both->setSpacing(space(24));
  both->addLayout(left, 14);
  both->addLayout(right, 10);
  auto* column = new QVBoxLayout(result);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(12));
  column->addWidget(branches_);
  column->addWidget(chain_);
  column->addLayout(both, 1);
  return result;
}

void MatchPage::wire() {
  connect(query_, &parts::QueryBox::asked, this, &MatchPage::asked);
  connect(query_, &parts::QueryBox::left, this, [this] {
    if (showsAnswer()) candidates_->setFocus(Qt::OtherFocusReason);
    else if (!start_->examples().empty() && start_->examples().front()->isVisible())
      start_->examples().front()->setFocus(Qt::OtherFocusReason);
  });
  connect(start_, &StartPage::exampleChosen, this, [this](const QString& text) {
    query_->setText(text);
    query_->edit()->setFocus(Qt::OtherFocusReason);
  });
  connect(start_, &StartPage::openRequested, this, &Page::openRequested);
  connect(start_, &StartPage::demoRequested, this, &Page::demoRequested);

  connect(branches_, &parts::Segmented::chosen, this,
          [this](int index) { displayBranch(static_cast<std::size_t>(index)); });
  connect(candidates_, &parts::CandidateList::chosen, this, &MatchPage::displayCandidate);
  connect(candidates_, &parts::CandidateList::nudged, needles_, &NeedlePanel::nudge);
  connect(refused_, &QPushButton::toggled, this, [this](bool on) {
    refused_->setText(on ? tr("Hide refused") : tr("Show refused"));
    displayRows();
  });
  connect(look_, &QAbstractButton::clicked, this, [this] {
    if (outcome_ && outcome_->answer && outcome_->answer->look) fillIn(outcome_->answer->look->field);
  });
  connect(chain_, &parts::ChainView::jointChosen, this,
          [this](int joint) { details_->showTopic(topicOfJoint(joint)); });
  connect(chain_, &parts::ChainView::linkChosen, this, [this](int /*link*/) { details_->showTab(DetailPanel::why); });
  connect(needles_, &NeedlePanel::coolantChanged, this, [this] {
    chosenTemperature_ = true;
    details_->setCoolant(needles_->coolant());
  });
  connect(details_, &DetailPanel::pointed, needles_, &NeedlePanel::setCoolant);

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
    start_->showNoCatalogue(refusalWords(refusal));
    emit this->refused(file, refusalWords(refusal));
  });
  connect(&asker_, &Asker::failed, this, [this](const Refusal& refusal) {
    forget();
    start_->showNoCatalogue(refusalWords(refusal));
  });
  connect(&asker_, &Asker::answered, this, &MatchPage::display);
  settle_.setSingleShot(true);
  settle_.setInterval(kSettleMilliseconds);
  connect(&settle_, &QTimer::timeout, this, [this] { stack_->setCurrentIndex(0); });
  connect(&settings_, &desk::Settings::unitsChanged, this, &MatchPage::unitsChanged);

  const auto key = [this](const QKeySequence& keys, auto&& what) {
    auto* shortcut = new QShortcut(keys, this);
    shortcut->setContext(Qt::WidgetWithChildrenShortcut);
    connect(shortcut, &QShortcut::activated, this, what);
  };
  key(QKeySequence(Qt::CTRL | Qt::Key_L), [this] { query_->takeFocus(); });
  key(QKeySequence(Qt::CTRL | Qt::Key_R), [this] { refused_->toggle(); });
  key(QKeySequence(Qt::CTRL | Qt::Key_PageDown), [this] { branches_->choose(branches_->chosenIndex() + 1); });
  key(QKeySequence(Qt::CTRL | Qt::Key_PageUp), [this] { branches_->choose(branches_->chosenIndex() - 1); });
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
  needles_->display(nullptr, nullptr, settings_.units());
  outcome_.reset();
  settle_.stop();
  stack_->setCurrentIndex(0);
}

void MatchPage::display(const std::shared_ptr<const Outcome>& outcome) {
  // The one shown before is kept until the parts point to the new one.
  const std::shared_ptr<const Outcome> before = outcome_;
  outcome_ = outcome;
  std::vector<parts::CompletionWords> ways;
  for (const workflow::Completion& way : outcome->ways)
    ways.push_back({plain(way.insert), unitsBefore(outcome->text, way.from), plain(way.kind), plain(way.note)});
  query_->offer(outcome->text, ways);
  if (!outcome->answer || outcome->answer->branches.empty()) {
    chips_->display(chipsOf(outcome->text, outcome->reading, {}));
    QString why = outcome->answer ? QString() : refusalWords(outcome->answer.error());
    if (outcome->answer)
      for (const Finding& finding : outcome->answer->findings) why += plain(finding.sentence) + QLatin1Char(' ');
    needles_->display(nullptr, nullptr, settings_.units());
    start_->showRefused(why);
    // Half a word is often a refusal: what is shown stays a moment, so that the page does not flicker under the typing.
    if (showsAnswer()) settle_.start();
    return;
  }
  const workflow::Answer& answer = *outcome->answer;
  settle_.stop();
  chips_->display(chipsOf(outcome->text, outcome->reading, answer.chips));
  branches_->setVisible(answer.branches.size() > 1);
  branches_->setSegments(branchTitles(answer));
  QStringList cautions;
  for (const std::string& caution : answer.cautions) cautions << plain(caution);
  cautions_->display(cautions);
  if (answer.look) look_->display(plain(answer.look->what), plain(answer.look->because));
  else look_->display({}, {});
  displayBranch(std::min(static_cast<std::size_t>(std::max(0, branches_->chosenIndex())), answer.branches.size() - 1));
  stack_->setCurrentIndex(1);
}

void MatchPage::displayBranch(std::size_t index) {
  branch_ = index;
  if (branch() == nullptr) return;
  if (!chosenTemperature_ && branch()->gauge) {
    // Two thirds up the band: where the needle stands on a warm day.
    const TemperatureSpan& band = branch()->band;
    const QSignalBlocker quiet(needles_);
    needles_->display(branch(), nullptr, settings_.units());
    needles_->setCoolant(band.low + (band.high - band.low) * (2.0 / 3.0));
  }
  displayRows();
}

void MatchPage::displayRows() {
  if (branch() == nullptr) return;
  const auto& ranked = branch()->ranked;
  std::vector<parts::CandidateRow> rows = rowsOf(*branch(), refused_->isChecked(), settings_.units());
  const std::size_t shown = rows.size();
  count_->setText(tr("%1 considered · %2 shown").arg(branch()->considered).arg(shown));
  const bool more = std::any_of(ranked.begin(), ranked.end(), [](const workflow::Candidate& c) {
    return c.rank == pairing::Rank::refused && !c.fittedNow;
  });
  refused_->setVisible(more || refused_->isChecked());
  const bool none =
      std::none_of(ranked.begin(), ranked.end(), [](const workflow::Candidate& c) { return c.recommended(); });
  QString note;
  if (none)
    for (const Finding& finding : branch()->findings)
      if (finding.severity >= Severity::caution) note += plain(finding.sentence) + QLatin1Char(' ');
  if (none && note.isEmpty()) note = tr("No sender of this catalogue can be recommended here.");
  note_->setText(note.trimmed());
  note_->setVisible(!note.isEmpty());
  candidate_ = -1;
  candidates_->setVisible(!rows.empty());
  candidates_->setRows(std::move(rows));
  if (shown == 0) displayCandidate(-1);
}

void MatchPage::displayCandidate(int index) {
  candidate_ = index;
  if (branch() == nullptr) return;
  chain_->display(chainOf(*branch(), candidate()));
  needles_->display(branch(), candidate(), settings_.units());
  details_->display(*outcome_->answer, *branch(), candidate(), settings_.units());
  details_->setCoolant(needles_->coolant());
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

const workflow::Branch* MatchPage::branch() const {
  if (!outcome_ || !outcome_->answer || branch_ >= outcome_->answer->branches.size()) return nullptr;
  return &outcome_->answer->branches[branch_];
}

const workflow::Candidate* MatchPage::candidate() const {
  const workflow::Branch* here = branch();
  if (here == nullptr || candidate_ < 0 || static_cast<std::size_t>(candidate_) >= here->ranked.size()) return nullptr;
  return &here->ranked[static_cast<std::size_t>(candidate_)];
}

QString MatchPage::asText() const {
  return outcome_ && outcome_->answer ? answerAsText(*outcome_->answer, branch_, settings_.units()) : QString();
}

}  // namespace ohmkin::match
