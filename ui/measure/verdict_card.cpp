#include <look/type.h>
#include <measure/verdict_card.h>
#include <QGridLayout>

namespace ohmkin::measure {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

class VerdictCard::Mark : public QWidget {
 public:
  explicit Mark(QWidget* parent) : QWidget(parent) {
    setFixedSize(space(28), static_cast<int>(look::metrics(Text::headline).lineSpacing()));
  }
  void show(parts::Fit fit) {
    fit_ = fit;
    update();
  }

 protected:
  void paintEvent(QPaintEvent* /*event*/) override {
    QPainter painter(this);
    parts::drawFit(painter, QPointF(space(11), height() / 2.0), space(20), fit_);
  }

 private:
  parts::Fit fit_ = parts::Fit::look;
};

VerdictCard::VerdictCard(QWidget* parent)
    : QWidget(parent),
      mark_(new Mark(this)),
      word_((new parts::Words({}, this))->sized(typeface(Text::headline))),
      sentence_((new parts::Words({}, this))->selectable()),
      risk_((new parts::Words({}, this))->sized(typeface(Text::small))->painted(Paint::quiet)->selectable()) {
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setHorizontalSpacing(space(6));
  grid->setVerticalSpacing(space(3));
  grid->addWidget(mark_, 0, 0);
  grid->addWidget(word_, 0, 1);
  grid->addWidget(sentence_, 1, 1);
  grid->addWidget(risk_, 2, 1);
  grid->setColumnStretch(1, 1);
  setAccessibleName(tr("Is it good?"));
}

void VerdictCard::display(const VerdictWords& words) {
  words_ = words;
  mark_->show(words.fit);
  mark_->setVisible(!words.word.isEmpty());
  word_->setText(words.word);
  word_->setVisible(!words.word.isEmpty());
  word_->painted(words.fit == parts::Fit::cut ? Paint::warning : Paint::ink);
  sentence_->setText(words.sentence);
  risk_->setText(words.risk);
  risk_->setVisible(!words.risk.isEmpty());
  setAccessibleDescription(QStringList{words.word, words.sentence, words.risk}.join(QLatin1Char(' ')));
}

}  // namespace ohmkin::measure
