#include <look/type.h>
#include <match/needle_panel.h>
#include <match/pictures.h>
#include <match/wording.h>
#include <QHBoxLayout>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

namespace ohmkin::match {
namespace {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

constexpr double kBeyondMarks = 10;  // K: far enough to see the needle leave the marks

/// Where a needle stands and what it says.
struct Pointing {
  std::optional<double> degrees;
  QString says;
};

Pointing pointingOf(const workflow::Branch& branch, const workflow::Candidate& candidate, Temperature t,
                    const DisplayUnits& units) {
  const workflow::Needles needles = workflow::needlesAt(
      branch, candidate, t, recommendedTrim(candidate) ? workflow::Fitted::withTrim : workflow::Fitted::asItIs);
  const QString name = nameOf(candidate);
  if (!needles.shown)
    return {{},
            candidate.curve ? NeedlePanel::tr("%1: its curve does not reach %2").arg(name, plain(print(t, units)))
                            : NeedlePanel::tr("%1: no curve to show").arg(name)};
  const double degrees = needles.shown->needle.degrees;
  switch (needles.shown->where) {
    case gauge::Where::belowTheMarks:
      return {degrees, NeedlePanel::tr("%1: below the first mark").arg(name)};
    case gauge::Where::pastTheMarks:
      return {degrees, NeedlePanel::tr("%1: past the last mark").arg(name)};
    case gauge::Where::onTheMarks:
      break;
  }
  QString says = NeedlePanel::tr("%1 shows %2").arg(name, plain(print(needles.shown->shown, units)));
  if (needles.uncertainty) says += QStringLiteral(" ± ") + plain(printAmount(*needles.uncertainty, units));
  return {degrees, says};
}

}  // namespace

NeedlePanel::NeedlePanel(QWidget* parent)
    : Panel(Kind::sheet, parent),
      nothing_(
          (new parts::Words(tr("There is no gauge here whose needle could be shown."), this))->painted(Paint::quiet)),
      dial_(new parts::DialView(this)),
      truth_(new parts::NeedleKey(parts::Needle::truth, this)),
      shown_(new parts::NeedleKey(parts::Needle::shown, this)),
      now_(new parts::NeedleKey(parts::Needle::now, this)),
      slider_(new QSlider(Qt::Horizontal, this)) {
  auto* column = new QVBoxLayout(this);
  setAccessibleName(tr("What the needle shows"));
  column->setContentsMargins(space(16), space(12), space(16), space(8));
  column->setSpacing(space(6));
  column->addWidget(dial_, 1);
  column->addWidget(nothing_, 1, Qt::AlignCenter);
  auto* keys = new QVBoxLayout;
  keys->setSpacing(0);
  keys->addWidget(shown_);
  keys->addWidget(now_);
  column->addLayout(keys);
  // What is true stands at the end of the slider that sets it.
  auto* foot = new QHBoxLayout;
  foot->setSpacing(space(16));
  foot->addWidget(slider_, 1);
  foot->addWidget(truth_);
  truth_->setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
  truth_->setMinimumWidth(space(112));
  column->addLayout(foot);
  nothing_->hide();
  slider_->setAccessibleName(tr("Coolant temperature"));
  slider_->setPageStep(10);
  connect(slider_, &QSlider::valueChanged, this, [this](int value) {
    coolant_ = units_.temperature == TemperatureUnit::celsius ? celsius(value) : fahrenheit(value);
    turnNeedles();
    emit coolantChanged();
  });
}

void NeedlePanel::display(const workflow::Branch* branch, const workflow::Candidate* candidate,
                          const DisplayUnits& units) {
  branch_ = branch;
  candidate_ = candidate;
  units_ = units;
  const bool gauge = branch != nullptr && branch->gauge;
  for (QWidget* part : std::initializer_list<QWidget*>{dial_, truth_, shown_, now_, slider_}) part->setVisible(gauge);
  nothing_->setVisible(!gauge);
  if (!gauge) return;
  dial_->display(dialOf(*branch, units));
  scaleSlider();
  turnNeedles();
}

void NeedlePanel::scaleSlider() {
  const TemperatureSpan marked = branch_->gauge->dial().marked();
  const QSignalBlocker quiet(slider_);
  slider_->setRange(static_cast<int>(std::floor(inUnit(marked.low - kelvins(kBeyondMarks), units_.temperature))),
                    static_cast<int>(std::ceil(inUnit(marked.high + kelvins(kBeyondMarks), units_.temperature))));
  slider_->setValue(static_cast<int>(std::lround(inUnit(coolant_, units_.temperature))));
  const int held = slider_->value();
  coolant_ = units_.temperature == TemperatureUnit::celsius ? celsius(held) : fahrenheit(held);
}

void NeedlePanel::setCoolant(Temperature coolant) {
  slider_->setValue(static_cast<int>(std::lround(inUnit(coolant, units_.temperature))));
}

void NeedlePanel::nudge(int steps) { slider_->setValue(slider_->value() + steps); }

void NeedlePanel::turnNeedles() {
  if (branch_ == nullptr || !branch_->gauge) return;
  const gauge::Dial& marks = branch_->gauge->dial();
  truth_->say(tr("true %1").arg(plain(print(coolant_, units_))), false);
  Pointing shown;
  Pointing now;
  const workflow::Candidate* inHead = fittedNow(*branch_);
  if (candidate_ != nullptr) shown = pointingOf(*branch_, *candidate_, coolant_, units_);
  if (inHead != nullptr && inHead != candidate_) {
    now = pointingOf(*branch_, *inHead, coolant_, units_);
    now.says = now.says.section(QStringLiteral(" ± "), 0, 0);
    now.says = (inHead->fittedNowSaid ? tr("fitted now: %1") : tr("likely fitted: %1")).arg(now.says);
  }
  const bool wrong = candidate_ != nullptr && misreads(*candidate_);
  shown_->say(shown.says, wrong);
  const bool nowWrong = inHead != nullptr && misreads(*inHead);
  now_->say(now.says, nowWrong);
  parts::DialPicture needles;
  needles.truth = marks.onStops(marks.angleOf(coolant_)).degrees;
  needles.shown = shown.degrees;
  needles.now = now.degrees;
  needles.misreads = wrong;
  needles.nowMisreads = nowWrong;
  dial_->setNeedles(needles);
  dial_->setAccessibleDescription(said());
  slider_->setAccessibleDescription(said());
}

QString NeedlePanel::said() const {
  QStringList all;
  for (const parts::NeedleKey* key : {truth_, shown_, now_})
    if (!key->words().isEmpty()) all << key->words();
  return all.join(QStringLiteral("; "));
}

}  // namespace ohmkin::match
