#include <app/key_sheet.h>
#include <look/type.h>
#include <parts/scrolling.h>
#include <QApplication>
#include <QClipboard>
#include <QVBoxLayout>
#include <algorithm>

namespace ohmkin::app {

using look::space;
using look::Text;
using look::typeface;

KeySheet::KeySheet(QWidget& window)
    : Overlay(tr("Keys"), window),
      box_(new parts::Entry(tr("Find a key"), &panel())),
      copy_(new QPushButton(tr("&Copy as text"), &panel())),
      inner_(new QWidget),
      columns_(new QHBoxLayout),
      none_((new parts::Words(tr("No key does that."), inner_))->painted(look::Paint::quiet)) {
  auto* column = new QVBoxLayout(&panel());
  column->setContentsMargins(space(24), space(20), space(24), space(20));
  column->setSpacing(space(16));
  auto* head = new QHBoxLayout;
  head->setSpacing(space(16));
  auto* title = (new parts::Words(tr("Keys"), &panel()))->sized(typeface(Text::headline));
  title->setWordWrap(false);
  box_->setPlaceholderText(tr("Find a key"));
  box_->setMinimumHeight(space(32));
  copy_->setAutoDefault(false);
  head->addWidget(title);
  head->addWidget(box_, 1);
  head->addWidget(copy_);
  column->addLayout(head);
  auto* sheet = new QVBoxLayout(inner_);
  sheet->setContentsMargins(0, 0, 0, 0);
  columns_->setSpacing(space(32));
  sheet->addWidget(none_);
  sheet->addLayout(columns_);
  sheet->addStretch(1);
  column->addWidget(parts::scrolling(inner_, &panel()), 1);
  connect(box_, &QLineEdit::textChanged, this, &KeySheet::filter);
  connect(copy_, &QPushButton::clicked, this, [this] { QApplication::clipboard()->setText(asText()); });
}

void KeySheet::offer(const std::vector<Offered>& all) {
  for (const Group& group : groups_) delete group.whole;
  groups_.clear();
  std::vector<std::pair<QString, std::vector<Offered>>> byGroup;
  for (const Offered& each : all) {
    if (each.action->shortcut().isEmpty()) continue;
    auto at = std::find_if(byGroup.begin(), byGroup.end(), [&](const auto& g) { return g.first == each.group; });
    if (at == byGroup.end()) at = byGroup.insert(byGroup.end(), {each.group, {}});
    at->second.push_back(each);
  }
  for (auto& [title, rows] : byGroup) addGroup(title, std::move(rows));
  box_->clear();
  filter();
  appear();
  arrange();
  settle();
  box_->setFocus(Qt::PopupFocusReason);
}

void KeySheet::addGroup(const QString& title, std::vector<Offered> rows) {
  auto* whole = new QWidget(inner_);
  auto* column = new QVBoxLayout(whole);
  column->setContentsMargins(0, 0, 0, space(16));
  column->setSpacing(space(4));
  auto* heading = (new parts::Words(title, whole))->sized(typeface(Text::heading))->painted(look::Paint::accent);
  heading->setContentsMargins(space(12), 0, 0, 0);
  auto* list = new ActionRows(title, ActionRows::Show::withoutGroup, whole);
  list->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  list->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  connect(list, &ActionRows::taken, this, [this](QAction* action) {
    vanish();
    QMetaObject::invokeMethod(action, &QAction::trigger, Qt::QueuedConnection);
  });
  column->addWidget(heading);
  column->addWidget(list);
  groups_.push_back({whole, list, std::move(rows)});
}

void KeySheet::filter() {
  bool any = false;
  for (const Group& group : groups_) {
    std::vector<Offered> those;
    std::copy_if(group.all.begin(), group.all.end(), std::back_inserter(those),
                 [this](const Offered& each) { return answersTo(each, box_->text()); });
    group.rows->setRows(those);
    group.rows->setCurrentIndex({});
    group.rows->clearSelection();
    group.rows->setFixedHeight(group.rows->sizeHint().height());
    group.whole->setVisible(!those.empty());
    any = any || !those.empty();
  }
  none_->setVisible(!any);
  arrange();
}

QRect KeySheet::place(const QSize& window) const {
  const int width = std::min(space(1120), window.width() - 2 * space(32));
  const int needs = inner_->sizeHint().height() + box_->sizeHint().height() + space(76);
  const int height = std::min(std::max(needs, space(240)), window.height() - 2 * space(32));
  return {(window.width() - width) / 2, (window.height() - height) / 2, width, height};
}

void KeySheet::resizeEvent(QResizeEvent* event) {
  Overlay::resizeEvent(event);
  arrange();
  settle();
}

void KeySheet::arrange() {
  while (QLayoutItem* item = columns_->takeAt(0)) {
    if (QLayout* column = item->layout()) {
      while (QLayoutItem* each = column->takeAt(0)) delete each;
    }
    delete item;
  }
  const int width = std::min(space(1120), this->width() - 2 * space(32)) - 2 * space(24);
  int widest = space(260);
  for (const Group& group : groups_) widest = std::max(widest, group.rows->sizeHint().width());
  const int count = std::clamp((width + space(32)) / (widest + space(32)), 1, 3);
  std::vector<std::pair<QVBoxLayout*, int>> columns;
  for (int i = 0; i < count; ++i) {
    auto* column = new QVBoxLayout;
    column->setSpacing(0);
    columns_->addLayout(column, 1);
    columns.emplace_back(column, 0);
  }
  for (const Group& group : groups_) {
    if (group.whole->isHidden()) continue;
    auto least = std::min_element(columns.begin(), columns.end(),
                                  [](const auto& a, const auto& b) { return a.second < b.second; });
    least->first->addWidget(group.whole);
    least->second += group.rows->height() + space(48);
  }
  for (const auto& [column, height] : columns) column->addStretch(1);
}

QString KeySheet::asText() const {
  QStringList lines;
  for (const Group& group : groups_) {
    if (group.rows->rows().empty()) continue;
    if (!lines.isEmpty()) lines << QString();
    lines << group.rows->accessibleName();
    for (const Offered& each : group.rows->rows())
      if (each.action != nullptr)
        lines << QStringLiteral("%1\t%2").arg(each.action->shortcut().toString(QKeySequence::NativeText),
                                              nameOf(*each.action));
  }
  return lines.join(QLatin1Char('\n')) + QLatin1Char('\n');
}

}  // namespace ohmkin::app
