#include <look/type.h>
#include <match/chain_words.h>
#include <match/reasons.h>
#include <match/result_sheet.h>
#include <match/row_words.h>
#include <match/wording.h>
#include <parts/words.h>
#include <QHBoxLayout>
#include <QVBoxLayout>

namespace ohmkin::match {
namespace {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

}  // namespace

ResultSheet::ResultSheet(QWidget* parent)
    : QWidget(parent),
      branches_(new parts::Segmented(tr("Which way the facts are"), this)),
      chain_(new parts::ChainView(this)),
      count_((new parts::Words({}, this))->sized(typeface(Text::small))->painted(Paint::quiet)),
      refused_(new QPushButton(tr("Show refused"), this)),
      note_((new parts::Words({}, this))->painted(Paint::ink)),
      candidates_(new parts::CandidateList(this)),
      look_(new parts::LookCard(this)),
      cautions_(new parts::CautionPanel(this)),
      needles_(new NeedlePanel(this)),
      details_(new DetailPanel(this)) {
  branches_->setEven(true);
  count_->setWordWrap(false);
  refused_->setCheckable(true);
  refused_->setFont(typeface(Text::small));
  refused_->setFixedHeight(static_cast<int>(look::metrics(Text::small).lineSpacing()) + space(12));
  refused_->setToolTip(parts::plainTip(tr("Senders that are not recommended, and why (Ctrl+R)")));
  place((new parts::Words(tr("Senders, best first"), this))->sized(typeface(Text::heading)));
  wire();
}

void ResultSheet::place(parts::Words* heading) {
  auto* head = new QHBoxLayout;
  head->setSpacing(space(12));
  head->addWidget(heading, 1);
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
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(12));
  column->addWidget(branches_);
  column->addWidget(chain_);
  column->addLayout(both, 1);
}

void ResultSheet::wire() {
  connect(branches_, &parts::Segmented::chosen, this,
          [this](int index) { displayBranch(static_cast<std::size_t>(index)); });
  connect(candidates_, &parts::CandidateList::chosen, this, &ResultSheet::displayCandidate);
  connect(candidates_, &parts::CandidateList::nudged, needles_, &NeedlePanel::nudge);
  connect(refused_, &QPushButton::toggled, this, [this](bool on) {
    refused_->setText(on ? tr("Hide refused") : tr("Show refused"));
    displayRows();
  });
  connect(look_, &QAbstractButton::clicked, this, [this] {
    if (outcome_ && outcome_->answer->look) emit lookTaken(outcome_->answer->look->field);
  });
  connect(chain_, &parts::ChainView::jointChosen, this,
          [this](int joint) { details_->showTopic(topicOfJoint(joint)); });
  connect(chain_, &parts::ChainView::linkChosen, this, [this](int /*link*/) { details_->showTab(DetailPanel::why); });
  connect(needles_, &NeedlePanel::coolantChanged, this, [this] {
    chosenTemperature_ = true;
    details_->setCoolant(needles_->coolant());
  });
  connect(details_, &DetailPanel::pointed, needles_, &NeedlePanel::setCoolant);
}

void ResultSheet::display(const std::shared_ptr<const Outcome>& outcome, const DisplayUnits& units) {
  // The one shown before is kept until the parts point to the new one.
  const std::shared_ptr<const Outcome> before = outcome_;
  outcome_ = outcome;
  units_ = units;
  const workflow::Answer& answer = *outcome->answer;
  branches_->setVisible(answer.branches.size() > 1);
  branches_->setSegments(branchTitles(answer));
  QStringList cautions;
  for (const std::string& caution : answer.cautions) cautions << plain(caution);
  cautions_->display(cautions);
  if (answer.look) look_->display(plain(answer.look->what), plain(answer.look->because));
  else look_->display({}, {});
  displayBranch(std::min(static_cast<std::size_t>(std::max(0, branches_->chosenIndex())), answer.branches.size() - 1));
}

void ResultSheet::forget() {
  needles_->display(nullptr, nullptr, units_);
  details_->forget();
  outcome_.reset();
}

void ResultSheet::displayBranch(std::size_t index) {
  branch_ = index;
  if (branch() == nullptr) return;
  if (!chosenTemperature_ && branch()->gauge) {
    // Two thirds up the band: where the needle stands on a warm day.
    const TemperatureSpan& band = branch()->band;
    const QSignalBlocker quiet(needles_);
    needles_->display(branch(), nullptr, units_);
    needles_->setCoolant(band.low + (band.high - band.low) * (2.0 / 3.0));
  }
  displayRows();
}

void ResultSheet::displayRows() {
  if (branch() == nullptr) return;
  std::vector<parts::CandidateRow> rows = rowsOf(*branch(), refused_->isChecked(), units_);
  const std::size_t shown = rows.size();
  count_->setText(tr("%1 considered · %2 shown").arg(branch()->considered).arg(shown));
  const auto& ranked = branch()->ranked;
  const bool more = std::any_of(ranked.begin(), ranked.end(), [](const workflow::Candidate& c) {
    return c.rank == pairing::Rank::refused && !c.fittedNow;
  });
  refused_->setVisible(more || refused_->isChecked());
  const QString note = noteOn(*branch());
  note_->setText(note);
  note_->setVisible(!note.isEmpty());
  candidate_ = -1;
  candidates_->setVisible(!rows.empty());
  candidates_->setRows(std::move(rows));
  if (shown == 0) displayCandidate(-1);
}

/// Why nothing is recommended; empty where something is.
QString ResultSheet::noteOn(const workflow::Branch& branch) const {
  const auto recommended = [](const workflow::Candidate& c) { return c.recommended(); };
  if (std::any_of(branch.ranked.begin(), branch.ranked.end(), recommended)) return {};
  QString note;
  for (const Finding& finding : branch.findings)
    if (finding.severity >= Severity::caution) note += plain(finding.sentence) + QLatin1Char(' ');
  return note.isEmpty() ? tr("No sender of this catalogue can be recommended here.") : note.trimmed();
}

void ResultSheet::displayCandidate(int index) {
  candidate_ = index;
  if (branch() == nullptr) return;
  chain_->display(chainOf(*branch(), candidate()));
  needles_->display(branch(), candidate(), units_);
  details_->display(*outcome_->answer, *branch(), candidate(), units_);
  details_->setCoolant(needles_->coolant());
}

const workflow::Branch* ResultSheet::branch() const {
  if (!outcome_ || branch_ >= outcome_->answer->branches.size()) return nullptr;
  return &outcome_->answer->branches[branch_];
}

const workflow::Candidate* ResultSheet::candidate() const {
  const workflow::Branch* here = branch();
  if (here == nullptr || candidate_ < 0 || static_cast<std::size_t>(candidate_) >= here->ranked.size()) return nullptr;
  return &here->ranked[static_cast<std::size_t>(candidate_)];
}

QString ResultSheet::asText() const { return outcome_ ? answerAsText(*outcome_->answer, branch_, units_) : QString(); }

}  // namespace ohmkin::match
