#include <desk/catalogue_thread.h>
#include <look/type.h>
#include <measure/answer_view.h>
#include <measure/curve_picture.h>
#include <QVBoxLayout>

namespace ohmkin::measure {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

namespace {
constexpr int kSideBySide = 640;  // from this width on the two answers stand beside each other

/// Whether another reading would tell anything at all.
bool tells(const bench::NextReading& next) { return !next.finding || next.finding->code != "next-reading-useless"; }
}  // namespace

parts::Panel* headedPanel(const QString& heading, const std::vector<QWidget*>& below, QWidget* parent) {
  auto* panel = new parts::Panel(parts::Panel::Kind::sheet, parent);
  auto* column = new QVBoxLayout(panel);
  column->setContentsMargins(space(16), space(12), space(16), space(14));
  column->setSpacing(space(8));
  if (!heading.isEmpty()) column->addWidget((new parts::Words(heading, panel))->sized(typeface(Text::heading)));
  for (QWidget* widget : below) column->addWidget(widget);
  return panel;
}

AnswerView::AnswerView(QWidget* parent)
    : QWidget(parent),
      plot_(new CurvePlot),
      fit_((new parts::Words)->sized(typeface(Text::small))->painted(Paint::quiet)->selectable()),
      next_(new parts::LookCard(this)),
      bars_(new SuspectBars),
      noBars_((new parts::Words(tr("One reading suffices to begin.")))->painted(Paint::quiet)),
      verdict_(new VerdictCard),
      remarks_(new parts::FindingList),
      pair_(new QBoxLayout(QBoxLayout::TopToBottom)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(12));
  auto* plot = headedPanel({}, {plot_, fit_}, this);
  plot->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
  column->addWidget(plot, 3);
  column->addWidget(next_);
  pair_->setSpacing(space(12));
  auto* whose = headedPanel(tr("Whose curve is it?"), {bars_, noBars_}, this);
  auto* good = headedPanel(tr("Is it good?"), {verdict_}, this);
  for (parts::Panel* panel : {whose, good}) static_cast<QVBoxLayout*>(panel->layout())->addStretch(1);
  pair_->addWidget(whose, 1);
  pair_->addWidget(good, 1);
  column->addLayout(pair_);
  remarks_->setMinimumHeight(space(150));
  auto* why = headedPanel(tr("Remarks"), {remarks_}, this);
  column->addWidget(why, 2);
  next_->setFocusPolicy(Qt::NoFocus);
  next_->setCursor(Qt::ArrowCursor);
}

void AnswerView::display(const workflow::BenchFamilies& families, const workflow::BenchAnswer& answer,
                         const DisplayUnits& units) {
  Pictured pictured;
  pictured.fit = answer.fit ? &*answer.fit : nullptr;
  pictured.whose = answer.whose ? &*answer.whose : nullptr;
  pictured.claimed = answer.claimed;
  if (answer.next && tells(*answer.next)) pictured.next = answer.next->best.at;
  for (const bench::Reading& reading : answer.readings) pictured.samples.push_back(bench::sampleOf(reading));
  plot_->display(pictureOf(families, pictured, units));
  fit_->setText(measure::fitWords(answer.fit, answer.noFit, units));
  fit_->setVisible(!fit_->text().isEmpty());
  displayNext(answer, units);
  bars_->setVisible(answer.whose.has_value());
  noBars_->setVisible(!answer.whose);
  noBars_->setText(families.empty() ? tr("This catalogue has no resistance families to compare with.")
                                    : tr("One reading suffices to begin."));
  if (answer.whose) bars_->display(suspectsOf(families, *answer.whose, answer.claimed));
  verdict_->display(verdictOf(answer));
  remarks_->display(remarksOf(answer));
  remarks_->parentWidget()->setVisible(!remarks_->findings().empty());
}

void AnswerView::displayNext(const workflow::BenchAnswer& answer, const DisplayUnits& units) {
  if (!answer.next) return next_->display({}, {});
  const QString because = answer.next->finding ? desk::shown(answer.next->finding->sentence) : QString();
  const QString at = desk::shown(print(answer.next->best.at, units));
  next_->display(!tells(*answer.next)      ? tr("Whose curve it is needs no further reading")
                 : answer.readings.empty() ? tr("Begin at %1").arg(at)
                                           : tr("Measure next at %1").arg(at),
                 because);
}

void AnswerView::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  pair_->setDirection(width() >= space(kSideBySide) ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
}

}  // namespace ohmkin::measure
