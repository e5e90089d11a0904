#include <look/type.h>
#include <parts/words.h>
#include <plan/plan_head.h>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>

namespace ohmkin::plan {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

PlanHead::PlanHead(printing::MakeSheets sheets, QWidget* parent)
    : QWidget(parent),
      save_(new QPushButton(tr("Save plan…"), this)),
      copy_(new QPushButton(tr("Copy as text"), this)),
      print_(new QPushButton(tr("Print…"), this)),
      told_((new parts::Words({}, this))->sized(typeface(Text::small))->painted(Paint::quiet)) {
  auto* open = new QPushButton(tr("Open plan…"), this);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(space(8));
  auto* heading = (new parts::Words(tr("Plan a swap"), this))->sized(typeface(Text::headline));
  heading->setWordWrap(false);
  row->addWidget(heading, 0);
  row->addSpacing(space(8));
  row->addWidget(told_, 1);
  for (QPushButton* button : {open, save_, copy_, print_}) {
    button->setFont(typeface(Text::small));
    button->setFixedHeight(static_cast<int>(look::metrics(Text::small).lineSpacing()) + space(14));
    row->addWidget(button);
  }
  open->setToolTip(parts::plainTip(tr("A plan saved before (Ctrl+Shift+O)")));
  save_->setToolTip(parts::plainTip(tr("Keeps what is asked, to be opened again (Ctrl+S)")));
  copy_->setToolTip(parts::plainTip(tr("The whole plan as plain text (Ctrl+Shift+C)")));
  print_->setToolTip(parts::plainTip(tr("Look at it, print it, or keep it as PDF or SVG (Ctrl+P)")));
  printing::sheetButton(*print_, tr("Swap plan"), std::move(sheets));
  connect(open, &QPushButton::clicked, this, &PlanHead::chooseOpen);
  connect(save_, &QPushButton::clicked, this, &PlanHead::chooseSave);
  connect(copy_, &QPushButton::clicked, this, &PlanHead::copied);
}

void PlanHead::enable(bool answered) {
  for (QPushButton* button : {save_, copy_, print_}) button->setEnabled(answered);
}

void PlanHead::chooseSave() {
  if (!save_->isEnabled()) return;
  QString file = QFileDialog::getSaveFileName(this, tr("Where to keep the plan"), tr("plan.json"),
                                              tr("Plans (*.json);;All files (*)"));
  if (file.isEmpty()) return;
  if (QFileInfo(file).suffix().isEmpty()) file += QStringLiteral(".json");
  emit saveTo(file);
}

void PlanHead::chooseOpen() {
  const QString file = QFileDialog::getOpenFileName(this, tr("Open a plan"), {}, tr("Plans (*.json);;All files (*)"));
  if (!file.isEmpty()) emit openFrom(file);
}

}  // namespace ohmkin::plan
