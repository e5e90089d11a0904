#include <look/palette.h>
#include <look/style.h>
#include <look/type.h>
#include <match/start_page.h>
#include <parts/fit.h>
#include <parts/words.h>
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

StartPage::StartPage(QWidget* parent) : BlankSheet(parent), below_(new QWidget(this)), legend_(new Legend(this)) {
  auto* column = new QVBoxLayout(below_);
  column->setContentsMargins(0, space(8), 0, space(16));
  column->setSpacing(space(8));
  column->addWidget((new parts::Words(tr("For example"), below_))->sized(typeface(Text::small))->painted(Paint::quiet));
  exampleColumn_ = new QVBoxLayout;
  exampleColumn_->setSpacing(space(8));
  column->addLayout(exampleColumn_);
  addBelow(below_);
  addBelow(legend_);
  showNoCatalogue({});
}

void StartPage::tellExamples(bool wanted) {
  wanted_ = wanted;
  below_->setVisible(wanted && !examples_.empty());
  legend_->setVisible(wanted);
}

void StartPage::showNoCatalogue(const std::optional<Refusal>& whyNot) {
  parts::sayNoCatalogue(*this, whyNot);
  tellExamples(false);
}

void StartPage::showOpening(const QString& file) {
  parts::sayOpening(*this, file);
  tellExamples(false);
}

void StartPage::showEmpty() {
  say(tr("What do you have?"),
      tr("Type it above as it comes, in any order: model year, vehicle line, cluster option, casting number of the "
         "head, the date cast beside it. The more you say the fewer answers are left."));
  tellExamples(true);
}

void StartPage::showRefused(const QString& sentence) {
  say(tr("Not enough to go on yet"), sentence);
  tellExamples(true);
}

void StartPage::setExamples(const QStringList& examples) {
  for (QPushButton* old : examples_) delete old;
  examples_.clear();
  for (const QString& text : examples) {
    auto* example = new Example(text, below_);
    example->setAccessibleName(tr("Example: %1").arg(text));
    connect(example, &QPushButton::clicked, this, [this, text] { emit exampleChosen(text); });
    exampleColumn_->addWidget(example);
    examples_.push_back(example);
  }
  tellExamples(wanted_);
}

}  // namespace ohmkin::match
