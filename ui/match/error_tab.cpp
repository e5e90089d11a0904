#include <desk/catalogue_thread.h>
#include <look/type.h>
#include <match/error_tab.h>
#include <match/pictures.h>
#include <match/wording.h>
#include <parts/words.h>
#include <workflow/cards.h>
#include <QHBoxLayout>
#include <QVBoxLayout>

namespace ohmkin::match {
namespace {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

constexpr std::size_t kDraws = 100000;
constexpr double kRoomForWords = 400;  // narrower, the button says less

}  // namespace

ErrorTab::ErrorTab(QWidget* parent)
    : QWidget(parent),
      plot_(new parts::ErrorPlot(this)),
      table_(new ErrorTable(this)),
      busy_(new parts::BusyLine(this)),
      summary_((new parts::Words({}, this))->sized(typeface(Text::small))->painted(Paint::quiet)->selectable()),
      asTable_(new QPushButton(this)),
      check_(new QPushButton(this)),
      escape_(new QShortcut(Qt::Key_Escape, this)) {
  for (QPushButton* button : {asTable_, check_}) {
    button->setFont(typeface(Text::small));
    button->setFixedHeight(static_cast<int>(look::metrics(Text::small).lineSpacing()) + space(12));
  }
  asTable_->setToolTip(tr("The plot in numbers, or the plot again (Ctrl+T)"));
  table_->hide();
  check_->setAccessibleName(tr("Check the band by Monte Carlo"));
  check_->setToolTip(
      parts::plainTip(tr("Draws every input 100,000 times and outlines where 95 % of the errors lie. Esc cancels.")));
  escape_->setContext(Qt::WindowShortcut);
  escape_->setEnabled(false);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(4));
  column->addWidget(plot_, 1);
  column->addWidget(table_, 1);
  column->addWidget(busy_);
  auto* foot = new QHBoxLayout;
  foot->setSpacing(space(8));
  foot->addWidget(summary_, 1);
  foot->addWidget(asTable_, 0, Qt::AlignTop);
  foot->addWidget(check_, 0, Qt::AlignTop);
  column->addLayout(foot);
  connect(asTable_, &QPushButton::clicked, this, &ErrorTab::toggleTable);
  connect(check_, &QPushButton::clicked, this, &ErrorTab::checkOrCancel);
  connect(escape_, &QShortcut::activated, &sampler_, &Sampler::cancel);
  connect(&sampler_, &Sampler::runningChanged, this, [this](bool running) {
    busy_->setRunning(running);
    escape_->setEnabled(running);
    nameCheck();
  });
  connect(&sampler_, &Sampler::done, this, &ErrorTab::showChecked);
  nameCheck();
}

void ErrorTab::display(const workflow::Branch& branch, const workflow::Candidate* candidate,
                       const DisplayUnits& units) {
  sampler_.cancel();
  units_ = units;
  checked_ = false;
  plot_->display(candidate != nullptr ? plotOf(branch, *candidate, units) : parts::PlotPicture{});
  table_->display(plot_->picture());
  words_ = candidate != nullptr ? errorsInWords(*candidate, units) : QString();
  summary_->setText(words_);
  work_ = nullptr;
  if (candidate != nullptr && branch.gauge && candidate->curve) {
    pairing::Draws draws;
    draws.count = kDraws;
    draws.units = units;
    // By value: what is shown may change while the draws are made. The heavy parts are shared.
    workflow::Branch gaugeOnly;
    gaugeOnly.gauge = branch.gauge;
    work_ = [gaugeOnly, sender = *candidate, draws](std::stop_token stop) {
      return workflow::sampled(gaugeOnly, sender, draws, std::move(stop));
    };
  }
  check_->setVisible(work_ != nullptr);
  nameCheck();
}

void ErrorTab::toggleTable() {
  const bool table = table_->isHidden();
  table_->setVisible(table);
  plot_->setVisible(!table);
  nameCheck();
  if (table) table_->setFocus(Qt::OtherFocusReason);
}

void ErrorTab::checkOrCancel() {
  if (sampler_.running()) {
    sampler_.cancel();
  } else if (checked_) {
    checked_ = false;
    plot_->outline({});
    summary_->setText(words_);
    nameCheck();
  } else if (work_) {
    if (!table_->isHidden()) toggleTable();  // the outline is drawn
    sampler_.start(work_);
  }
}

void ErrorTab::showChecked(const std::shared_ptr<const SampledOrNot>& result) {
  if (!*result) {
    summary_->setText(desk::refusalSentence(result->error()));
    return;
  }
  checked_ = true;
  plot_->outline(outlineOf(**result, units_));
  summary_->setText(tr("Outlined: 95 % of 100,000 draws. %1").arg(plain((*result)->comparison)));
  nameCheck();
}

void ErrorTab::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  nameCheck();
}

void ErrorTab::nameCheck() {
  const bool room = width() >= space(kRoomForWords);
  asTable_->setVisible(room);  // the key and the list of actions do it too
  asTable_->setText(table_->isHidden() ? tr("Table") : tr("Plot"));
  check_->setText(sampler_.running() ? tr("Cancel")
                  : checked_         ? tr("Hide check")
                  : room             ? tr("Check by Monte Carlo")
                                     : tr("Check"));
}

}  // namespace ohmkin::match
