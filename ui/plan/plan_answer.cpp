#include <look/type.h>
#include <plan/plan_answer.h>
#include <QHBoxLayout>
#include <QVBoxLayout>

namespace ohmkin::plan {
namespace {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

parts::Words* label(const QString& text, QWidget* parent) {
  return (new parts::Words(text, parent))->sized(typeface(Text::small))->painted(Paint::quiet);
}

parts::Panel* sheetOf(std::initializer_list<QWidget*> words, QWidget* parent) {
  auto* panel = new parts::Panel(parts::Panel::Kind::sheet, parent);
  auto* column = new QVBoxLayout(panel);
  column->setContentsMargins(space(16), space(12), space(16), space(14));
  column->setSpacing(space(4));
  for (QWidget* each : words) column->addWidget(each);
  column->addStretch(1);
  return panel;
}

}  // namespace

PlanAnswer::PlanAnswer(QWidget* parent)
    : QWidget(parent),
      grid_(new PlanGrid(this)),
      pair_(label({}, this)),
      verdict_((new parts::Words({}, this))->selectable()),
      look_((new parts::Words({}, this))->sized(typeface(Text::small))->painted(Paint::quiet)->selectable()),
      buy_((new parts::Words({}, this))->sized(typeface(Text::strong))->selectable()),
      cautions_(new parts::CautionPanel(this)) {
  auto* under = new QHBoxLayout;
  under->setSpacing(space(16));
  under->addWidget(sheetOf({pair_, verdict_, look_}, this), 3);
  under->addWidget(sheetOf({label(tr("Parts to buy, with the best engine for each dash"), this), buy_}, this), 2);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(12));
  column->addWidget(grid_);
  column->addLayout(under);
  column->addWidget(cautions_);
  column->addStretch(1);
  connect(grid_, &PlanGrid::chosen, this, &PlanAnswer::displayPair);
}

void PlanAnswer::display(GridPicture picture, const QStringList& partsToBuy, const QStringList& cautions) {
  grid_->display(std::move(picture));
  // One a line: a list to take to the counter.
  buy_->setText(partsToBuy.isEmpty() ? tr("none: no pair can be recommended") : partsToBuy.join(QLatin1Char('\n')));
  cautions_->display(cautions);
}

void PlanAnswer::displayPair(int dash, int engine) {
  const GridCell& cell = grid_->picture().at(dash, engine);
  pair_->setText(tr("%1 with %2").arg(grid_->picture().dashes[dash], grid_->picture().engines[engine]));
  QStringList words{cell.sentence};
  if (!cell.era.isEmpty()) words << cell.era.left(1).toUpper() + cell.era.mid(1) + QLatin1Char('.');
  if (!cell.branches.isEmpty()) words << cell.branches;
  verdict_->setText(words.join(QLatin1Char(' ')));
  look_->setText(cell.look.isEmpty() ? QString() : tr("One look would settle it: %1").arg(cell.look));
  look_->setVisible(!cell.look.isEmpty());
}

}  // namespace ohmkin::plan
