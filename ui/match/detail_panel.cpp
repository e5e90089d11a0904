#include <look/type.h>
#include <match/detail_panel.h>
#include <match/pictures.h>
#include <match/reasons.h>
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

DetailPanel::DetailPanel(QWidget* parent)
    : Panel(Kind::sheet, parent),
      tabs_(new parts::Segmented(tr("What is shown of this sender"), this)),
      title_((new parts::Words({}, this))->sized(typeface(Text::small))->painted(Paint::quiet)),
      sheets_(new QStackedWidget(this)),
      errors_(new ErrorTab(this)),
      findings_(new parts::FindingList(this)),
      dial_(new DialTab(this)),
      trim_(new TrimTab(this)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(space(16), space(10), space(16), space(12));
  column->setSpacing(space(8));
  auto* head = new QHBoxLayout;
  title_->setWordWrap(false);
  title_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
  head->addWidget(title_, 1);
  head->addWidget(tabs_);
  column->addLayout(head);
  column->addWidget(sheets_, 1);
  sheets_->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Ignored);

  // In the order of Tab.
  for (QWidget* sheet : std::initializer_list<QWidget*>{errors_, findings_, dial_, trim_}) sheets_->addWidget(sheet);
  connect(tabs_, &parts::Segmented::chosen, this, [this](int tab) { showTab(static_cast<Tab>(tab)); });
  connect(&errors_->plot(), &parts::ErrorPlot::pointed, this, [this](double at) {
    emit pointed(units_.temperature == TemperatureUnit::celsius ? celsius(at) : fahrenheit(at));
  });
}

void DetailPanel::display(const workflow::Answer& answer, const workflow::Branch& branch,
                          const workflow::Candidate* candidate, const DisplayUnits& units) {
  units_ = units;
  const bool trims = candidate != nullptr && candidate->trim;
  const bool dials = candidate != nullptr && candidate->curve && branch.gauge;
  QStringList tabs{tr("Error"), tr("Why")};
  if (dials) tabs << tr("Dial");
  if (dials && trims) tabs << tr("Trim");
  tabs_->setSegments(tabs);

  errors_->display(branch, candidate, units);
  dial_->display(&answer, &branch, candidate, units);
  present();
  findings_->display(findingsOf(answer, branch, candidate));
  if (trims) trim_->display(&branch, candidate, units);
  else trim_->forget();
}

void DetailPanel::forget() {
  errors_->display({}, nullptr, units_);
  dial_->display(nullptr, nullptr, nullptr, units_);
  trim_->forget();
}

void DetailPanel::setCoolant(Temperature coolant) { errors_->plot().setCursor(inUnit(coolant, units_.temperature)); }

void DetailPanel::showTab(Tab tab) {
  wanted_ = tab;
  present();
}

void DetailPanel::present() {
  // With no curve to draw, the reasons are what there is to see.
  const bool drawn = !errors_->plot().picture().series.empty();
  const bool there = wanted_ < tabs_->count() && (wanted_ != error || drawn);
  const Tab tab = there ? wanted_ : drawn ? error : why;
  const QSignalBlocker quiet(tabs_);
  tabs_->choose(tab);
  sheets_->setCurrentIndex(tab);
  const QString unit = units_.temperature == TemperatureUnit::celsius ? QStringLiteral("K") : QStringLiteral("F°");
  named_ = tab == error  ? tr("Indicated minus true, %1").arg(unit)
           : tab == why  ? tr("Why, from what, and whose word")
           : tab == dial ? tr("The dial this needle would need")
                         : tr("Resistors, and what fails how");
  nameTab();
}

void DetailPanel::nameTab() {
  const int room = width() - 2 * space(16) - space(8) - tabs_->sizeHint().width();
  title_->setText(title_->fontMetrics().elidedText(named_, Qt::ElideRight, std::max(0, room)));
  title_->setToolTip(parts::plainTip(named_));
}

void DetailPanel::resizeEvent(QResizeEvent* event) {
  Panel::resizeEvent(event);
  nameTab();
}

void DetailPanel::showTopic(const QString& topic) {
  showTab(why);
  findings_->showTopic(topic);
}

}  // namespace ohmkin::match
