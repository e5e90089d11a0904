#include <look/type.h>
#include <match/detail_panel.h>
#include <match/pictures.h>
#include <match/reasons.h>
#include <match/trim_words.h>
#include <match/wording.h>
#include <QHBoxLayout>
#include <QVBoxLayout>

namespace ohmkin::match {
namespace {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

QVBoxLayout* columnIn(QWidget* sheet) {
  auto* column = new QVBoxLayout(sheet);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(6));
  return column;
}

}  // namespace

DetailPanel::DetailPanel(QWidget* parent)
    : Panel(Kind::sheet, parent),
      tabs_(new parts::Segmented(tr("What is shown of this sender"), this)),
      title_((new parts::Words({}, this))->sized(typeface(Text::small))->painted(Paint::quiet)),
      sheets_(new QStackedWidget(this)),
      plot_(new parts::ErrorPlot(this)),
      summary_((new parts::Words({}, this))->sized(typeface(Text::small))->painted(Paint::quiet)),
      findings_(new parts::FindingList(this)),
      circuit_(new parts::CircuitView(this)),
      trimWords_((new parts::Words({}, this))->sized(typeface(Text::strong))->selectable()),
      failures_(new parts::FailureTable(this)),
      ratings_((new parts::Words({}, this))->sized(typeface(Text::small))->painted(Paint::quiet)->selectable()),
      minds_((new parts::Words({}, this))->selectable()) {
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

  auto* errorSheet = new QWidget(this);
  auto* errorColumn = columnIn(errorSheet);
  errorColumn->addWidget(plot_, 1);
  errorColumn->addWidget(summary_);
  auto* trimSheet = new QWidget;
  auto* trimColumn = columnIn(trimSheet);
  trimColumn->addWidget(circuit_);
  trimColumn->addWidget(trimWords_);
  trimColumn->addWidget(failures_);
  trimColumn->addWidget(minds_);
  trimColumn->addWidget(ratings_);
  trimColumn->addStretch(1);
  auto* trimScroll = new QScrollArea(this);
  trimScroll->setFrameShape(QFrame::NoFrame);
  trimScroll->setWidgetResizable(true);
  trimScroll->setFocusPolicy(Qt::StrongFocus);
  trimScroll->setAccessibleName(tr("Resistors, and what fails how"));
  trimScroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  trimScroll->viewport()->setAutoFillBackground(false);
  trimScroll->setWidget(trimSheet);
  trimSheet->setAutoFillBackground(false);
  sheets_->addWidget(errorSheet);
  sheets_->addWidget(findings_);
  sheets_->addWidget(trimScroll);
  connect(tabs_, &parts::Segmented::chosen, this, [this](int tab) { showTab(static_cast<Tab>(tab)); });
  connect(plot_, &parts::ErrorPlot::pointed, this, [this](double at) {
    emit pointed(units_.temperature == TemperatureUnit::celsius ? celsius(at) : fahrenheit(at));
  });
}

void DetailPanel::display(const workflow::Answer& answer, const workflow::Branch& branch,
                          const workflow::Candidate* candidate, const DisplayUnits& units) {
  units_ = units;
  const bool trims = candidate != nullptr && candidate->trim;
  tabs_->setSegments(trims ? QStringList{tr("Error"), tr("Why"), tr("Trim")} : QStringList{tr("Error"), tr("Why")});

  const parts::PlotPicture picture = candidate != nullptr ? plotOf(branch, *candidate, units) : parts::PlotPicture{};
  plot_->display(picture);
  // With no curve to draw, the reasons are what there is to see.
  present(wanted_ == error && picture.series.empty() ? why : wanted_ == trim && !trims ? error : wanted_);
  summary_->setText(candidate != nullptr ? errorsInWords(*candidate, units) : QString());
  findings_->display(findingsOf(answer, branch, candidate));
  displayTrim(candidate);
}

void DetailPanel::displayTrim(const workflow::Candidate* candidate) {
  if (candidate == nullptr || !candidate->trim) return;
  circuit_->display(circuitOf(*candidate));
  trimWords_->setText(trimInWords(*candidate->trim, units_));
  failures_->display(failuresOf(*candidate->trim, units_));
  QStringList minds;
  for (const parts::FindingWords& finding : trimFindings(*candidate->trim)) minds << finding.sentence;
  minds_->setText(minds.join(QLatin1Char('\n')));
  ratings_->setText(ratingsInWords(*candidate->trim));
}

void DetailPanel::setCoolant(Temperature coolant) { plot_->setCursor(inUnit(coolant, units_.temperature)); }

void DetailPanel::showTab(Tab tab) {
  wanted_ = tab;
  present(tab);
}

void DetailPanel::present(Tab tab) {
  const QSignalBlocker quiet(tabs_);
  tabs_->choose(tab);
  sheets_->setCurrentIndex(tab);
  const QString unit = units_.temperature == TemperatureUnit::celsius ? QStringLiteral("K") : QStringLiteral("F°");
  title_->setText(tab == error ? tr("Indicated minus true, %1").arg(unit)
                  : tab == why ? tr("Why, from what, and whose word")
                               : tr("Resistors, and what fails how"));
}

void DetailPanel::showTopic(const QString& topic) {
  showTab(why);
  findings_->showTopic(topic);
}

}  // namespace ohmkin::match
