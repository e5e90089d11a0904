#include <look/palette.h>
#include <look/style.h>
#include <look/type.h>
#include <parts/segmented.h>
#include <parts/words.h>
#include <QEvent>
#include <QHBoxLayout>

namespace ohmkin::parts {
namespace {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

class Segment : public QAbstractButton {
 public:
  Segment(const QString& words, QWidget* parent) : QAbstractButton(parent) {
    setCheckable(true);
    setText(words.section(QLatin1Char('\n'), 0, 0));
    second_ = words.section(QLatin1Char('\n'), 1);
    setFocusPolicy(Qt::TabFocus);
    setCursor(Qt::PointingHandCursor);
    setAccessibleName(second_.isEmpty() ? text() : text() + QStringLiteral(", ") + second_);
    setToolTip(plainTip(accessibleName()));
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
  }

  [[nodiscard]] QSize sizeHint() const override {
    const double wide = std::max(look::metrics(Text::strong).horizontalAdvance(text()),
                                 look::metrics(Text::small).horizontalAdvance(second_));
    const double tall = look::metrics(Text::strong).lineSpacing() +
                        (second_.isEmpty() ? 0 : look::metrics(Text::small).lineSpacing() + space(1));
    return {static_cast<int>(wide) + space(24), static_cast<int>(tall) + space(12)};
  }

  [[nodiscard]] QSize minimumSizeHint() const override { return {space(40), sizeHint().height()}; }

 protected:
  void paintEvent(QPaintEvent* /*event*/) override {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF box = QRectF(rect()).adjusted(1.5, 1.5, -1.5, -1.5);
    if (isChecked()) {
      painter.setPen(QPen(colour(Paint::accent), 1));
      painter.setBrush(colour(Paint::accentWash));
      painter.drawRoundedRect(box, space(6), space(6));
    } else if (underMouse()) {
      painter.setPen(Qt::NoPen);
      painter.setBrush(colour(Paint::panel));
      painter.drawRoundedRect(box, space(6), space(6));
    }
    const double inset = space(10);
    const double first = look::metrics(Text::strong).lineSpacing();
    QRectF words(inset, space(6), width() - 2 * inset, first);
    drawWords(painter, words, text(), typeface(isChecked() ? Text::strong : Text::body),
              colour(isChecked() ? Paint::accent : Paint::quiet), 1, Qt::AlignHCenter);
    words.translate(0, first + space(1));
    drawWords(painter, words, second_, typeface(Text::small), colour(isChecked() ? Paint::ink : Paint::quiet), 1,
              Qt::AlignHCenter);
    if (hasFocus()) look::drawFocusRing(painter, rect(), space(7));
  }

  bool event(QEvent* event) override {
    if (event->type() == QEvent::Enter || event->type() == QEvent::Leave) update();
    return QAbstractButton::event(event);
  }

 private:
  QString second_;
};

/// The trough the segments lie in.
class Trough : public QWidget {
 public:
  using QWidget::QWidget;

 protected:
  void paintEvent(QPaintEvent* /*event*/) override {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(Qt::NoPen);
    painter.setBrush(colour(Paint::unknownWash));
    painter.drawRoundedRect(rect(), look::cornerRadius(), look::cornerRadius());
  }
};

}  // namespace

Segmented::Segmented(const QString& name, QWidget* parent) : QWidget(parent), group_(this) {
  setAccessibleName(name);
  group_.setExclusive(true);
  auto* outer = new QHBoxLayout(this);
  outer->setContentsMargins(0, 0, 0, 0);
  outer->setSpacing(0);
  auto* trough = new Trough(this);
  auto* row = new QHBoxLayout(trough);
  row->setContentsMargins(space(2), space(2), space(2), space(2));
  row->setSpacing(space(2));
  outer->addWidget(trough);
  outer->addStretch(0);
  connect(&group_, &QButtonGroup::idToggled, this, [this](int id, bool on) {
    if (on) emit chosen(id);
  });
}

void Segmented::setEven(bool even) {
  even_ = even;
  auto* outer = static_cast<QHBoxLayout*>(layout());  // NOLINT: made in the constructor
  outer->setStretch(0, even ? 1 : 0);
}

void Segmented::setSegments(const QStringList& words) {
  if (words == words_) return;
  words_ = words;
  const QSignalBlocker quiet(group_);
  QWidget* trough = layout()->itemAt(0)->widget();
  const auto old = group_.buttons();
  for (QAbstractButton* button : old) {
    group_.removeButton(button);
    delete button;
  }
  int id = 0;
  for (const QString& word : words) {
    auto* segment = new Segment(word, trough);
    group_.addButton(segment, id++);
    trough->layout()->addWidget(segment);
    if (even_) segment->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);  // all of one width
    segment->show();
  }
  if (QAbstractButton* first = group_.button(0)) first->setChecked(true);
  updateGeometry();
}

void Segmented::choose(int index) {
  if (QAbstractButton* button = group_.button(index)) button->setChecked(true);
}

}  // namespace ohmkin::parts
