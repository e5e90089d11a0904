#include <desk/sheet_options.h>
#include <look/type.h>
#include <match/trim_tab.h>
#include <match/trim_words.h>
#include <match/wording.h>
#include <parts/scrolling.h>
#include <QHBoxLayout>
#include <QVBoxLayout>

namespace ohmkin::match {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

TrimTab::TrimTab(QWidget* parent)
    : QWidget(parent),
      words_((new parts::Words({}, this))->sized(typeface(Text::strong))->selectable()),
      print_(new QPushButton(tr("Print…"), this)),
      circuit_(new parts::CircuitView(this)),
      failures_(new parts::FailureTable(this)),
      minds_((new parts::Words({}, this))->selectable()),
      ratings_((new parts::Words({}, this))->sized(typeface(Text::small))->painted(Paint::quiet)->selectable()) {
  printing::sheetButton(*print_, tr("Trim sheet"), [this] { return sheet(); });
  print_->setFont(typeface(Text::small));
  print_->setFixedHeight(static_cast<int>(look::metrics(Text::small).lineSpacing()) + space(12));
  auto* head = new QHBoxLayout;
  head->setSpacing(space(8));
  head->addWidget(words_, 1);
  head->addWidget(print_, 0, Qt::AlignTop);
  auto* inner = new QWidget;
  auto* column = new QVBoxLayout(inner);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(6));
  column->addLayout(head);
  for (QWidget* each : std::initializer_list<QWidget*>{circuit_, failures_, minds_, ratings_}) column->addWidget(each);
  column->addStretch(1);
  auto* scroll = parts::scrolling(inner, this);
  scroll->setFocusPolicy(Qt::StrongFocus);
  scroll->setAccessibleName(tr("Resistors, and what fails how"));
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  auto* outer = new QVBoxLayout(this);
  outer->setContentsMargins(0, 0, 0, 0);
  outer->addWidget(scroll);
}

void TrimTab::display(const workflow::Branch* branch, const workflow::Candidate* candidate, const DisplayUnits& units) {
  branch_ = branch;
  candidate_ = candidate;
  units_ = units;
  const pairing::TrimProposal& trim = *candidate->trim;
  circuit_->display(circuitOf(*candidate));
  words_->setText(trimInWords(trim, units));
  failures_->display(failuresOf(trim, units));
  QStringList minds;
  for (const parts::FindingWords& finding : trimFindings(trim)) minds << finding.sentence;
  minds_->setText(minds.join(QLatin1Char('\n')));
  ratings_->setText(ratingsInWords(trim));
}

void TrimTab::forget() {
  branch_ = nullptr;
  candidate_ = nullptr;
}

Expected<printing::Sheets> TrimTab::sheet() const {
  if (candidate_ == nullptr)
    return refuse("nothing-to-print", tr("Trim sheet").toStdString(), tr("no sender").toStdString(),
                  tr("a sender with resistors").toStdString());
  const auto trim = workflow::trimOfCandidate(*branch_, *candidate_);
  if (!trim) return tl::make_unexpected(trim.error());
  auto pages = workflow::trimSheet(*trim, desk::todaysSheet(units_));
  if (!pages) return tl::make_unexpected(pages.error());
  return printing::Sheets{tr("trim sheet %1").arg(plain(candidate_->part)), std::move(*pages)};
}

}  // namespace ohmkin::match
