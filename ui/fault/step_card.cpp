#include <fault/step_card.h>
#include <look/style.h>
#include <look/type.h>
#include <parts/words.h>
#include <QEvent>
#include <QFontInfo>
#include <QPainter>
#include <QVBoxLayout>

namespace ohmkin::fault {
namespace {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

constexpr int kLines = 3;

QFont large() {
  QFont font = typeface(Text::headline);
  font.setPixelSize(static_cast<int>(QFontInfo(font).pixelSize() * 1.12));
  return font;
}

double keyWide() { return space(24); }
double wordsWide(double whole) { return whole - 3 * space(12) - keyWide(); }

}  // namespace

OutcomeButton::OutcomeButton(QWidget* parent) : QAbstractButton(parent) {
  setFocusPolicy(Qt::StrongFocus);
  setCursor(Qt::PointingHandCursor);
  QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Minimum);
  policy.setHeightForWidth(true);
  setSizePolicy(policy);
}

void OutcomeButton::display(int key, const StepOutcome& outcome, bool quiet) {
  key_ = key;
  chosen_ = outcome.chosen;
  quiet_ = quiet;
  QString words = outcome.words;
  if (!words.isEmpty()) words[0] = words[0].toUpper();
  setText(words);
  setAccessibleName(words);
  setAccessibleDescription(chosen_ ? tr("Key %1. Your answer so far.").arg(key) : tr("Key %1").arg(key));
  updateGeometry();
  update();
}

int OutcomeButton::heightForWidth(int width) const {
  const double words = parts::wrap(text(), typeface(Text::strong), wordsWide(width), kLines).height;
  return std::max(space(40), static_cast<int>(words) + space(18));
}

QSize OutcomeButton::sizeHint() const { return {space(220), heightForWidth(std::max(width(), space(200)))}; }
QSize OutcomeButton::minimumSizeHint() const { return {space(150), space(40)}; }

bool OutcomeButton::event(QEvent* event) {
  if (event->type() == QEvent::Enter || event->type() == QEvent::Leave) update();
  return QAbstractButton::event(event);
}

void OutcomeButton::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const bool lit = isDown() || underMouse() || chosen_;
  QPen edge(colour(lit ? Paint::accent : Paint::edge), chosen_ ? 2 : 1);
  if (quiet_ && !lit) edge.setDashPattern({4, 3});
  painter.setPen(edge);
  painter.setBrush(colour(lit ? Paint::accentWash : Paint::panel));
  const double inset = edge.widthF() / 2;
  painter.drawRoundedRect(QRectF(rect()).adjusted(inset, inset, -inset, -inset), look::cornerRadius(),
                          look::cornerRadius());
  const QRectF cap(space(12), (height() - keyWide()) / 2, keyWide(), keyWide());
  painter.setPen(Qt::NoPen);
  painter.setBrush(colour(quiet_ ? Paint::unknownWash : Paint::accentWash));
  painter.drawRoundedRect(cap, space(5), space(5));
  painter.setFont(typeface(Text::strong));
  painter.setPen(colour(quiet_ ? Paint::quiet : Paint::accent));
  painter.drawText(cap, Qt::AlignCenter, QString::number(key_));
  const QFont font = typeface(quiet_ ? Text::body : Text::strong);
  const double wide = wordsWide(width());
  const double high = parts::wrap(text(), font, wide, kLines).height;
  parts::drawWords(painter, QRectF(cap.right() + space(12), (height() - high) / 2, wide, high + 1), text(), font,
                   colour(quiet_ ? Paint::quiet : Paint::ink), kLines);
  if (hasFocus()) look::drawFocusRing(painter, rect(), look::cornerRadius());
}

StepCard::StepCard(QWidget* parent)
    : Panel(Kind::sheet, parent),
      above_((new parts::Words({}, this))->sized(typeface(Text::small))->painted(Paint::quiet)),
      title_((new parts::Words({}, this))->sized(large())->selectable()),
      facts_(new QGridLayout),
      note_((new parts::Words({}, this))->sized(typeface(Text::body))->selectable()),
      cautions_(new parts::CautionPanel(this)),
      question_((new parts::Words({}, this))->sized(typeface(Text::strong))),
      grid_(new QGridLayout) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(space(20), space(14), space(20), space(18));
  column->setSpacing(space(8));
  column->addWidget(above_);
  column->addWidget(title_);
  facts_->setHorizontalSpacing(space(20));
  facts_->setVerticalSpacing(space(1));
  column->addLayout(facts_);
  column->addWidget(note_);
  column->addWidget(cautions_);
  column->addSpacing(space(2));
  column->addWidget(question_);
  grid_->setSpacing(space(8));
  column->addLayout(grid_);
  column->addStretch(1);
}

void StepCard::display(const StepWords& words) {
  const bool hadKeyboard = isAncestorOf(focusWidget()) && focusWidget()->hasFocus();
  const bool another = words.title != words_.title;
  words_ = words;
  above_->setText(words.above);
  above_->setVisible(!words.above.isEmpty());
  title_->setText(words.title);
  setAccessibleName(words.title);
  fillFacts();
  note_->setText(words.note);
  note_->setVisible(!words.note.isEmpty());
  cautions_->display(words.cautions);
  cautions_->setVisible(!words.cautions.isEmpty());
  question_->setText(words.question);
  question_->setVisible(!words.question.isEmpty());
  while (buttons_.size() < count()) {
    auto* button = new OutcomeButton(this);
    const auto at = static_cast<int>(buttons_.size());
    connect(button, &QAbstractButton::clicked, this, [this, at] {
      if (at < static_cast<int>(words_.outcomes.size())) emit chosen(at);
      else emit unsure();
    });
    buttons_.push_back(button);
  }
  const std::size_t outcomes = words.outcomes.size();
  for (std::size_t i = 0; i < buttons_.size(); ++i) {
    buttons_[i]->setVisible(i < count());
    if (i >= count()) continue;
    if (i < outcomes) buttons_[i]->display(static_cast<int>(i) + 1, words.outcomes[i], false);
    else buttons_[i]->display(0, {words.unsure, false}, true);
  }
  columns_ = 0;
  placeButtons();
  if (hadKeyboard && another) takeKeyboard();
}

void StepCard::fillFacts() {
  while (factWords_.size() < words_.facts.size()) {
    const auto at = static_cast<int>(factWords_.size());
    auto* name = (new parts::Words({}, this))->sized(typeface(Text::small))->painted(Paint::quiet);
    auto* fact = new parts::Words({}, this);
    facts_->addWidget(name, 0, at);
    facts_->addWidget(fact, 1, at, Qt::AlignTop);
    factWords_.emplace_back(name, fact);
  }
  for (std::size_t i = 0; i < factWords_.size(); ++i) {
    const bool there = i < words_.facts.size();
    factWords_[i].first->setVisible(there);
    factWords_[i].second->setVisible(there);
    facts_->setColumnStretch(static_cast<int>(i), there ? 1 : 0);
    if (!there) continue;
    factWords_[i].first->setText(words_.facts[i].name);
    factWords_[i].second->setText(words_.facts[i].words);
    factWords_[i].second->setAccessibleName(words_.facts[i].name + QStringLiteral(": ") + words_.facts[i].words);
  }
}

/// Side by side where there are several and the words have room.
void StepCard::placeButtons() {
  const int columns = count() >= 3 && width() >= space(420) ? 2 : 1;
  if (columns == columns_) return;
  columns_ = columns;
  for (OutcomeButton* button : buttons_) grid_->removeWidget(button);
  for (std::size_t i = 0; i < count(); ++i)
    grid_->addWidget(buttons_[i], static_cast<int>(i) / columns, static_cast<int>(i) % columns);
  for (int i = 0; i < 2; ++i) grid_->setColumnStretch(i, i < columns ? 1 : 0);
}

void StepCard::resizeEvent(QResizeEvent* event) {
  Panel::resizeEvent(event);
  placeButtons();
}

void StepCard::press(int key) {
  const auto outcomes = static_cast<int>(words_.outcomes.size());
  if (key >= 1 && key <= outcomes) emit chosen(key - 1);
  else if (key == 0 && !words_.unsure.isEmpty()) emit unsure();
}

void StepCard::takeKeyboard() {
  if (count() > 0) buttons_.front()->setFocus(Qt::OtherFocusReason);
}

}  // namespace ohmkin::fault
