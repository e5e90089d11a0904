#include <jobs/document_card.h>
#include <look/type.h>
#include <parts/fit.h>
#include <QPainter>
#include <QVBoxLayout>

namespace ohmkin::jobs {
namespace {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

/// The shape of the verdict, beside its part.
class FitMark : public QWidget {
 public:
  FitMark(parts::Fit fit, QWidget* parent) : QWidget(parent), fit_(fit) {
    setFixedSize(space(18), static_cast<int>(look::metrics(Text::heading).lineSpacing()));
    setAccessibleName(parts::spoken(fit));
  }

 protected:
  void paintEvent(QPaintEvent* /*event*/) override {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    parts::drawFit(painter, QRectF(rect()).center(), space(12), fit_);
  }

 private:
  parts::Fit fit_;
};

parts::Fit fitOf(DocumentWords::Mark mark) {
  switch (mark) {
    case DocumentWords::Mark::fits:
      return parts::Fit::fits;
    case DocumentWords::Mark::withPart:
      return parts::Fit::withPart;
    case DocumentWords::Mark::cut:
      return parts::Fit::cut;
    case DocumentWords::Mark::none:
    case DocumentWords::Mark::look:
      break;
  }
  return parts::Fit::look;
}

}  // namespace

DocumentCard::DocumentCard(const DocumentWords& words, QWidget* parent)
    : Panel(Kind::sheet, parent),
      today_(new parts::Words({}, this)),
      because_((new parts::Words({}, this))->sized(typeface(Text::small))->painted(Paint::quiet)->selectable()),
      remove_(new QPushButton(tr("Remove"), this)),
      head_(new QHBoxLayout) {
  remove_->setFont(typeface(Text::small));
  remove_->setMinimumSize(space(64), space(28));
  remove_->setAccessibleName(tr("Remove: %1, %2").arg(words.kind, words.headline));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(space(16), space(12), space(16), space(12));
  column->setSpacing(space(4));
  head_->setSpacing(space(8));
  head_->addWidget((new parts::Words(tr("%1 of %2").arg(words.kind, words.made), this))
                       ->sized(typeface(Text::small))
                       ->painted(Paint::quiet),
                   1);
  head_->addWidget(remove_, 0, Qt::AlignTop);
  column->addLayout(head_);
  if (!words.headline.isEmpty()) {
    auto* line = new QHBoxLayout;
    line->setSpacing(space(6));
    if (words.mark != DocumentWords::Mark::none) line->addWidget(new FitMark(fitOf(words.mark), this));
    line->addWidget((new parts::Words(words.headline, this))->sized(typeface(Text::heading))->selectable(), 1);
    column->addLayout(line);
  }
  if (!words.sentence.isEmpty()) column->addWidget((new parts::Words(words.sentence, this))->selectable());
  for (const QString& each : words.lines)
    column->addWidget(
        (new parts::Words(each, this))->sized(typeface(Text::small))->painted(Paint::quiet)->selectable());
  if (!words.warning.isEmpty()) column->addWidget((new parts::Words(words.warning, this))->painted(Paint::warning));
  column->addWidget(today_);
  column->addWidget(because_);
  today_->hide();
  because_->hide();
  QStringList all{tr("%1 of %2").arg(words.kind, words.made), words.headline, words.sentence};
  all << words.lines << words.warning;
  all.removeAll(QString());
  said_ = all.join(QLatin1Char('\n'));
  setAccessibleName(words.kind + QStringLiteral(", ") + words.headline);
}

QPushButton& DocumentCard::offerToGoOn() {
  auto* goOn = new QPushButton(tr("Go on with it"), this);
  goOn->setFont(typeface(Text::small));
  goOn->setMinimumSize(space(64), space(28));
  head_->insertWidget(1, goOn, 0, Qt::AlignTop);
  return *goOn;
}

void DocumentCard::sayToday(const QString& sentence, const QStringList& because, bool differs) {
  today_->painted(differs ? Paint::warning : Paint::quiet);
  today_->sized(typeface(differs ? Text::body : Text::small));
  today_->setText(sentence);
  today_->setVisible(!sentence.isEmpty());
  because_->setText(because.join(QLatin1Char('\n')));
  because_->setVisible(!because.isEmpty());
}

}  // namespace ohmkin::jobs
