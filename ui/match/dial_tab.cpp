#include <desk/catalogue_thread.h>
#include <desk/sheet_options.h>
#include <look/type.h>
#include <match/dial_tab.h>
#include <match/wording.h>
#include <workflow/cards.h>
#include <QHBoxLayout>
#include <QVBoxLayout>

namespace ohmkin::match {
namespace {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

constexpr double kRadius = 40;  // mm, of a dial to cut out; to be scaled to the gauge at hand

}  // namespace

DialTab::DialTab(QWidget* parent)
    : QWidget(parent),
      driver_((new parts::Words({}, this))->selectable()),
      paper_(new parts::PaperView(this)),
      remarks_((new parts::Words({}, this))->sized(typeface(Text::small))->painted(Paint::quiet)),
      print_(new QPushButton(tr("Print…"), this)) {
  printing::sheetButton(*print_, {{tr("Offset card"), [this] { return offsetCard(); }},
                                  {tr("Re-marked dial"), [this] { return remarkedDial(); }}});
  print_->setFont(typeface(Text::small));
  print_->setFixedHeight(static_cast<int>(look::metrics(Text::small).lineSpacing()) + space(12));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(8));
  auto* head = new QHBoxLayout;
  head->setSpacing(space(8));
  head->addWidget(driver_, 1);
  head->addWidget(print_, 0, Qt::AlignTop);
  column->addLayout(head);
  column->addWidget(paper_, 100);
  column->addWidget(remarks_);
  column->addStretch(1);
}

void DialTab::display(const workflow::Answer* answer, const workflow::Branch* branch,
                      const workflow::Candidate* candidate, const DisplayUnits& units) {
  answer_ = answer;
  branch_ = branch;
  candidate_ = candidate;
  units_ = units;
  stale_ = true;
  if (isVisible()) draw();
}

void DialTab::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  if (stale_) draw();
}

void DialTab::draw() {
  stale_ = false;
  workflow::DialPreview preview;
  if (candidate_ != nullptr) {
    const auto made = workflow::dialPreview(*answer_, *branch_, *candidate_, units_);
    if (made) preview = *made;
    else preview.whyNot = desk::refusalSentence(made.error()).toStdString();
  }
  driver_->setText(plain(preview.driverLine));
  driver_->setVisible(!preview.driverLine.empty());
  const auto& scale = preview.scale;
  paper_->display(QByteArray::fromStdString(preview.svg), {scale.left, scale.top, scale.width, scale.height});
  paper_->setVisible(!preview.svg.empty());
  paper_->setAccessibleName(candidate_ != nullptr ? tr("Dial re-marked for %1").arg(plain(candidate_->part))
                                                  : QString());
  print_->setVisible(!preview.driverLine.empty());
  QStringList remarks;
  if (!preview.whyNot.empty()) remarks << tr("The dial cannot be re-marked: %1").arg(plain(preview.whyNot));
  for (const std::string& remark : preview.remarks) remarks << plain(remark);
  remarks_->setText(remarks.join(QLatin1Char('\n')));
  remarks_->setVisible(!remarks.isEmpty());
}

QString DialTab::said() const {
  return QStringList{driver_->text(), remarks_->text()}.join(QLatin1Char('\n')).trimmed();
}

Expected<printing::Sheets> DialTab::offsetCard() const {
  const auto dial = workflow::dialOfCandidate(*answer_, *branch_, *candidate_, units_);
  if (!dial) return tl::make_unexpected(dial.error());
  return printing::Sheets{tr("offset card %1").arg(plain(dial->pair.senderName)),
                          workflow::offsetCardSheet(*dial, desk::todaysSheet(units_))};
}

Expected<printing::Sheets> DialTab::remarkedDial() const {
  const auto dial = workflow::dialOfCandidate(*answer_, *branch_, *candidate_, units_);
  if (!dial) return tl::make_unexpected(dial.error());
  auto pages = workflow::remarkedDialSheet(*dial, kRadius, desk::todaysSheet(units_));
  if (!pages) return tl::make_unexpected(pages.error());
  return printing::Sheets{tr("dial for %1").arg(plain(dial->pair.senderName)), std::move(*pages)};
}

}  // namespace ohmkin::match
