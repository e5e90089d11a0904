#include <look/palette.h>
#include <look/style.h>
#include <look/type.h>
#include <match/start_page.h>
#include <parts/fit.h>
#include <parts/words.h>
#include <QEvent>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QPainter>

namespace ohmkin::match {
namespace {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

/// How to read a joint, for those who see the chain for the first time.
class Legend : public QWidget {
 public:
  explicit Legend(QWidget* parent) : QWidget(parent) {
    setFixedHeight(static_cast<int>(look::metrics(Text::small).lineSpacing()) * 2 + space(40));
    QStringList all;
    for (const parts::Fit fit : kAll) all << parts::spoken(fit);
    setAccessibleName(all.join(QStringLiteral(", ")));
  }

 protected:
  void paintEvent(QPaintEvent* /*event*/) override {
    QPainter painter(this);
    const double each = width() / static_cast<double>(kAll.size());
    double x = 0;
    for (const parts::Fit fit : kAll) {
      parts::drawWire(painter, QRectF(x + space(8), 0, each - space(16), space(32)), fit);
      parts::drawWords(painter, QRectF(x + space(8), space(34), each - space(16), height()), parts::spoken(fit),
                       typeface(Text::small), colour(Paint::quiet), 2, Qt::AlignHCenter);
      x += each;
    }
  }

 private:
  static constexpr std::array<parts::Fit, 4> kAll{parts::Fit::fits, parts::Fit::withPart, parts::Fit::cut,
                                                  parts::Fit::look};
};

/// A question to try: reads as a line of text, works as a button.
class Example : public QPushButton {
 public:
  Example(const QString& text, QWidget* parent) : QPushButton(text, parent) {
    setCursor(Qt::PointingHandCursor);
    setToolTip(parts::plainTip(text));
  }
  [[nodiscard]] QSize sizeHint() const override {
    return {space(400), static_cast<int>(look::metrics(Text::body).lineSpacing()) + space(18)};
  }

 protected:
  void paintEvent(QPaintEvent* /*event*/) override {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(colour(underMouse() || hasFocus() ? Paint::accent : Paint::line));
    painter.setBrush(colour(underMouse() ? Paint::accentWash : Paint::panel));
    painter.drawRoundedRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5), look::cornerRadius(), look::cornerRadius());
    const double line = look::metrics(Text::body).lineSpacing();
    parts::drawWords(painter, QRectF(space(16), (height() - line) / 2, width() - space(32), line), text(),
                     typeface(Text::body), colour(Paint::ink), 1);
    if (hasFocus()) look::drawFocusRing(painter, rect(), look::cornerRadius());
  }
};

}  // namespace

StartPage::StartPage(QWidget* parent)
    : QWidget(parent),
      heading_(new parts::Words({}, this)),
      text_(new parts::Words({}, this)),
      buttons_(new QWidget(this)),
      exampleHeading_((new parts::Words(tr("For example"), this))->sized(typeface(Text::small))->painted(Paint::quiet)),
      legend_(new Legend(this)) {
  QFont large = typeface(Text::headline);
  large.setPixelSize(static_cast<int>(QFontInfo(large).pixelSize() * 1.3));
  heading_->sized(large);
  auto* sheet = new QWidget(this);
  sheet->setMaximumWidth(space(640));
  auto* column = new QVBoxLayout(sheet);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(space(8));
  column->addWidget(heading_);
  column->addWidget(text_);

  auto* open = new QPushButton(tr("&Open a catalogue…"), buttons_);
  auto* demo = new QPushButton(tr("&New demo catalogue…"), buttons_);
  auto* row = new QHBoxLayout(buttons_);
  row->setContentsMargins(0, space(8), 0, 0);
  row->setSpacing(space(8));
  row->addWidget(open);
  row->addWidget(demo);
  row->addStretch(1);
  for (QPushButton* button : {open, demo}) button->setMinimumHeight(space(36));
  connect(open, &QPushButton::clicked, this, &StartPage::openRequested);
  connect(demo, &QPushButton::clicked, this, &StartPage::demoRequested);
  column->addWidget(buttons_);
  column->addSpacing(space(16));
  column->addWidget(exampleHeading_);
  exampleColumn_ = new QVBoxLayout;
  exampleColumn_->setSpacing(space(8));
  column->addLayout(exampleColumn_);
  column->addSpacing(space(24));
  column->addWidget(legend_);

  auto* outer = new QVBoxLayout(this);
  outer->setContentsMargins(0, space(24), 0, 0);
  auto* middle = new QHBoxLayout;
  middle->addStretch(1);
  middle->addWidget(sheet, 8);
  middle->addStretch(1);
  outer->addStretch(1);
  outer->addLayout(middle);
  outer->addStretch(3);
  showNoCatalogue({});
}

void StartPage::say(const QString& heading, const QString& text, bool buttons, bool examples) {
  heading_->setText(heading);
  text_->setText(text);
  text_->setVisible(!text.isEmpty());
  buttons_->setVisible(buttons);
  wantsExamples_ = examples;
  tellExamples();
}

void StartPage::tellExamples() {
  const bool some = wantsExamples_ && !examples_.empty();
  exampleHeading_->setVisible(some);
  for (QPushButton* example : examples_) example->setVisible(some);
  legend_->setVisible(wantsExamples_);
}

void StartPage::showNoCatalogue(const QString& sentence) {
  if (sentence.isEmpty())
    say(tr("No catalogue is open"),
        tr("Senders, gauges and castings are kept in one file that ends in .ohmkin. Open yours, or make the demo "
           "catalogue "
           "to try everything on."),
        true, false);
  else say(tr("This catalogue cannot be opened"), sentence, true, false);
}

void StartPage::showOpening(const QString& file) {
  say(tr("Opening %1").arg(QFileInfo(file).fileName()), {}, false, false);
}

void StartPage::showEmpty() {
  say(tr("What do you have?"),
      tr("Type it above as it comes, in any order: model year, vehicle line, cluster option, casting number of the "
         "head, the "
         "date cast beside it. The more you say the fewer answers are left."),
      false, true);
}

void StartPage::showRefused(const QString& sentence) { say(tr("Not enough to go on yet"), sentence, false, true); }

void StartPage::setExamples(const QStringList& examples) {
  for (QPushButton* old : examples_) delete old;
  examples_.clear();
  for (const QString& text : examples) {
    auto* example = new Example(text, this);
    example->setAccessibleName(tr("Example: %1").arg(text));
    connect(example, &QPushButton::clicked, this, [this, text] { emit exampleChosen(text); });
    exampleColumn_->addWidget(example);
    examples_.push_back(example);
  }
  tellExamples();
}

QString StartPage::said() const { return heading_->text() + QLatin1Char('\n') + text_->text(); }

}  // namespace ohmkin::match
