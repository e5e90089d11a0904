#include <look/type.h>
#include <parts/scrolling.h>
#include <parts/words.h>
#include <plan/line_list.h>
#include <QEvent>
#include <algorithm>

namespace ohmkin::plan {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

LineList::LineList(const QString& title, const QString& example, std::size_t most, QWidget* parent)
    : Panel(Kind::sheet, parent),
      inner_(new QWidget),
      column_(new QVBoxLayout(inner_)),
      scroll_(parts::scrolling(inner_, this)),
      title_(title),
      example_(example),
      most_(most) {
  auto* outer = new QVBoxLayout(this);
  outer->setContentsMargins(space(16), space(12), space(16), space(14));
  outer->setSpacing(space(6));
  outer->addWidget((new parts::Words(title, this))->sized(typeface(Text::small))->painted(Paint::quiet));
  column_->setContentsMargins(0, 0, 0, 0);
  column_->setSpacing(space(6));
  scroll_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  inner_->installEventFilter(this);
  outer->addWidget(scroll_);
  outer->addStretch(1);
  addRow();
}

namespace {

/// What is longer than its line is to be read in a tip.
void elide(parts::Entry& entry) {
  const bool fits = entry.fontMetrics().horizontalAdvance(entry.text()) < entry.width() - space(24);
  entry.setToolTip(fits ? QString() : parts::plainTip(entry.text()));
}

}  // namespace

void LineList::addRow() {
  if (rows_.size() >= most_) return;
  Row row{
      new parts::Entry(tr("%1, line %2").arg(title_).arg(rows_.size() + 1), inner_), new parts::Words({}, inner_), {}};
  row.entry->setPlaceholderText(rows_.empty() ? example_ : tr("a further one"));
  row.note->sized(typeface(Text::small))->painted(Paint::warning);
  row.note->hide();
  row.entry->installEventFilter(this);
  connect(row.entry, &QLineEdit::textChanged, this, [this, entry = row.entry] {
    elide(*entry);
    edited(entry);
  });
  connect(row.entry, &parts::Entry::left, this, [this](int direction) { focusNextPrevChild(direction > 0); });
  if (!rows_.empty()) setTabOrder(rows_.back().entry, row.entry);
  rows_.push_back(row);
  column_->addWidget(row.entry);
  column_->addWidget(row.note);
}

void LineList::edited(parts::Entry* entry) {
  if (filling_) return;
  for (Row& row : rows_)
    if (row.entry == entry) row.opened.reset();
  if (!rows_.back().entry->text().trimmed().isEmpty()) addRow();
  emit changed();
}

void LineList::setLines(const std::vector<Line>& lines) {
  filling_ = true;
  while (rows_.size() > std::max<std::size_t>(1, lines.size())) {
    rows_.back().entry->deleteLater();
    rows_.back().note->deleteLater();
    rows_.back().entry->hide();
    rows_.back().note->hide();
    rows_.pop_back();
  }
  for (std::size_t i = 0; i < std::max(rows_.size(), lines.size()); ++i) {
    if (i >= rows_.size()) addRow();
    if (i >= rows_.size()) break;
    rows_[i].entry->setText(i < lines.size() ? lines[i].text : QString());
    rows_[i].entry->home(false);
    rows_[i].opened = i < lines.size() ? lines[i].opened : std::nullopt;
    rows_[i].note->hide();
  }
  filling_ = false;
  if (!rows_.back().entry->text().trimmed().isEmpty()) addRow();
  emit changed();
}

std::vector<Line> LineList::lines() const {
  std::vector<Line> all;
  for (const Row& row : rows_)
    if (!row.entry->text().trimmed().isEmpty()) all.push_back({row.entry->text().trimmed(), row.opened});
  return all;
}

void LineList::setNotes(const QStringList& notes) {
  int at = 0;
  for (const Row& row : rows_) {
    const QString note = row.entry->text().trimmed().isEmpty() ? QString() : notes.value(at++);
    row.note->setText(note);
    row.note->setVisible(!note.isEmpty());
    row.entry->setAccessibleDescription(note);
  }
}

void LineList::showAtMost(int lines) {
  shown_ = lines;
  fit();
}

int LineList::lineHeight() const { return rows_.front().entry->sizeHint().height() + column_->spacing(); }

void LineList::fit() {
  const int whole = column_->sizeHint().height();
  // Half a line is left to see, so that it is seen that there are more.
  const int most = shown_ * lineHeight() + lineHeight() / 2;
  scroll_->setFixedHeight(std::min(whole, most));
}

bool LineList::eventFilter(QObject* watched, QEvent* event) {
  if (watched == inner_ && event->type() == QEvent::LayoutRequest) fit();
  if (auto* entry = qobject_cast<parts::Entry*>(watched); entry != nullptr) {
    if (event->type() == QEvent::FocusIn) scroll_->ensureWidgetVisible(entry, 0, column_->spacing());
    if (event->type() == QEvent::Resize) elide(*entry);
  }
  return Panel::eventFilter(watched, event);
}

void LineList::takeKeyboard() {
  rows_.front().entry->setFocus(Qt::ShortcutFocusReason);
  rows_.front().entry->selectAll();
}

}  // namespace ohmkin::plan
