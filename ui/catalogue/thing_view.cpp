#include <catalogue/thing_view.h>
#include <look/type.h>
#include <parts/link.h>
#include <parts/scrolling.h>
#include <QGridLayout>

namespace ohmkin::shelves {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

ThingView::ThingView(QWidget* parent)
    : QWidget(parent), facts_(nullptr), column_(new QVBoxLayout), below_(new QVBoxLayout) {
  auto* inner = new QWidget;
  auto* whole = new QVBoxLayout(inner);
  whole->setContentsMargins(0, 0, space(8), 0);
  whole->setSpacing(space(14));
  whole->addLayout(column_);
  below_->setSpacing(space(14));
  whole->addLayout(below_);
  whole->addStretch(1);
  scroll_ = parts::scrolling(inner, this);
  scroll_->setFocusPolicy(Qt::StrongFocus);
  scroll_->setAccessibleName(tr("What is said about it"));
  auto* outer = new QVBoxLayout(this);
  outer->setContentsMargins(0, 0, 0, 0);
  outer->addWidget(scroll_);
}

void ThingView::addAbove(QWidget* widget) {
  static_cast<QVBoxLayout*>(scroll_->widget()->layout())->insertWidget(0, widget);  // NOLINT: made above
}

void ThingView::addBelow(QWidget* widget) { below_->addWidget(widget); }

void ThingView::display(const ThingShown& thing) {
  const bool same = thing.ref == thing_.ref;
  thing_ = thing;
  if (facts_ != nullptr) {
    facts_->hide();
    facts_->deleteLater();
  }
  facts_ = new QWidget;
  auto* column = new QVBoxLayout(facts_);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(14));
  column_->addWidget(facts_);
  for (const SectionShown& section : thing.sections) addSection(section);
  if (!same) scroll_->ensureVisible(0, 0);
}

void ThingView::addSection(const SectionShown& section) {
  auto* box = new QWidget(facts_);
  auto* grid = new QGridLayout(box);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setHorizontalSpacing(space(14));
  grid->setVerticalSpacing(space(4));
  int line = 0;
  if (!section.title.isEmpty()) {
    grid->addWidget((new parts::Words(section.title, box))->sized(typeface(Text::strong)), line++, 0, 1, -1);
  }
  for (const FactShown& fact : section.facts) {
    if (!fact.label.isEmpty()) {
      auto* label = (new parts::Words(fact.label, box))->sized(typeface(Text::small))->painted(Paint::quiet);
      grid->addWidget(label, line, 0, fact.link.empty() ? Qt::AlignTop : Qt::AlignVCenter);
    }
    if (fact.link.empty()) {
      const bool alone = fact.label.isEmpty();
      grid->addWidget((new parts::Words(fact.value, box))->selectable(), line, alone ? 0 : 1, 1, alone ? 2 : 1);
    } else {
      auto* link = new parts::Link(fact.value, box);
      link->setAccessibleName(fact.label.isEmpty() ? fact.value : fact.label + QStringLiteral(": ") + fact.value);
      connect(link, &parts::Link::clicked, this, [this, ref = fact.link] { emit followed(ref); });
      grid->addWidget(link, line, 1, Qt::AlignLeft);
    }
    ++line;
  }
  if (!section.facts.empty()) {
    grid->setColumnStretch(0, 2);
    grid->setColumnStretch(1, 5);
  }
  for (int column = 0; column < section.headings.size(); ++column)
    grid->addWidget(
        (new parts::Words(section.headings[column], box))->sized(typeface(Text::small))->painted(Paint::quiet), line,
        column);
  for (const QStringList& row : section.rows) {
    ++line;
    for (int column = 0; column < row.size(); ++column)
      grid->addWidget((new parts::Words(row[column], box))->sized(typeface(Text::small)), line, column);
  }
  facts_->layout()->addWidget(box);
}

void ThingView::takeKeyboard() {
  if (facts_ != nullptr)
    if (auto* link = facts_->findChild<parts::Link*>()) {
      link->setFocus(Qt::OtherFocusReason);
      return;
    }
  scroll_->setFocus(Qt::OtherFocusReason);
}

}  // namespace ohmkin::shelves
