#include <date/date_answer.h>
#include <date/presenter.h>
#include <look/type.h>
#include <parts/words.h>
#include <QEvent>

namespace ohmkin::castings {
namespace {

using look::Paint;
using look::space;
using look::Text;
using look::typeface;

parts::Words* label(const QString& text, QWidget* parent) {
  return (new parts::Words(text, parent))->sized(typeface(Text::small))->painted(Paint::quiet);
}

QFont hero() {
  QFont large = typeface(Text::headline);
  large.setPixelSize(static_cast<int>(QFontInfo(large).pixelSize() * 1.2));
  return large;
}

}  // namespace

DateAnswerView::DateAnswerView(printing::MakeSheets sheets, QWidget* parent)
    : QWidget(parent),
      headline_((new parts::Words({}, this))->sized(hero())->selectable()),
      engine_((new parts::Words({}, this))->sized(typeface(Text::body))->selectable()),
      alarm_((new parts::Words({}, this))->painted(Paint::warning)->selectable()),
      decades_(label({}, this)->selectable()),
      print_(new QPushButton(tr("Print…"), this)),
      meanings_(new MeaningList(this)),
      drawn_(new parts::Segmented(tr("Time line"), this)),
      timeLine_(new TimeLineView(this)),
      table_(new TimeTable(this)),
      findings_(new parts::FindingList(this)) {
  print_->setFont(typeface(Text::small));
  print_->setFixedHeight(static_cast<int>(look::metrics(Text::small).lineSpacing()) + space(12));
  print_->setToolTip(parts::plainTip(tr("Look at it, print it, or keep it as PDF or SVG (Ctrl+P)")));
  printing::sheetButton(*print_, tr("Engine date"), std::move(sheets));
  auto* both = new QHBoxLayout(this);
  both->setContentsMargins(0, 0, 0, 0);
  both->setSpacing(space(24));
  both->addLayout(makeWords(), 10);
  both->addLayout(makePictures(), 12);
}

QVBoxLayout* DateAnswerView::makeWords() {
  auto* head = new QHBoxLayout;
  head->addWidget(label(tr("Engine assembled"), this), 1);
  head->addWidget(print_);
  auto* left = new QVBoxLayout;
  left->setSpacing(space(6));
  left->addLayout(head);
  for (QWidget* each : {headline_, engine_, alarm_, decades_}) left->addWidget(each);
  left->addSpacing(space(10));
  auto* codes = new parts::Panel(parts::Panel::Kind::sheet, this);
  auto* inCodes = new QVBoxLayout(codes);
  inCodes->setContentsMargins(space(16), space(12), space(12), space(12));
  inCodes->setSpacing(space(6));
  inCodes->addWidget(label(tr("What the codes can mean"), codes));
  inCodes->addWidget(meanings_);
  left->addWidget(codes);
  left->addStretch(1);
  return left;
}

QVBoxLayout* DateAnswerView::makePictures() {
  drawn_->setSegments({tr("Time line"), tr("As a table")});
  table_->hide();
  connect(drawn_, &parts::Segmented::chosen, this, [this](int which) {
    timeLine_->setVisible(which == 0);
    table_->setVisible(which == 1);
  });
  auto* times = new parts::Panel(parts::Panel::Kind::sheet, this);
  auto* inTimes = new QVBoxLayout(times);
  inTimes->setContentsMargins(space(16), space(12), space(16), space(12));
  inTimes->setSpacing(space(8));
  inTimes->addWidget(drawn_);
  inTimes->addWidget(timeLine_);
  inTimes->addWidget(table_);
  auto* why = new parts::Panel(parts::Panel::Kind::sheet, this);
  auto* inWhy = new QVBoxLayout(why);
  inWhy->setContentsMargins(space(16), space(12), space(8), space(12));
  inWhy->setSpacing(space(6));
  inWhy->addWidget(label(tr("Why"), why));
  findings_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);  // as high as it is: the page scrolls
  findings_->installEventFilter(this);
  inWhy->addWidget(findings_);
  auto* right = new QVBoxLayout;
  right->setSpacing(space(16));
  right->addWidget(times);
  right->addWidget(why);
  right->addStretch(1);
  return right;
}

void DateAnswerView::display(const workflow::DateAnswer& answer) {
  headline_->setText(headlineOf(answer));
  const QString engine = engineWordsOf(answer);
  engine_->setText(engine);
  engine_->setVisible(!engine.isEmpty());
  const QString alarm = alarmOf(answer);
  alarm_->setText(alarm);
  alarm_->setVisible(!alarm.isEmpty());
  // The headline names the first two; more of them are a line of their own.
  const QString decades = decadesInWords(answer);
  decades_->setText(decades);
  decades_->setVisible(decades.count(QStringLiteral(" · ")) > 1);
  meanings_->display(meaningsOf(answer));
  findings_->display(findingsOf(answer));
  fitFindings();
  timeLine_->display(timeLineOf(answer));
  table_->display(tableOf(answer));
}

bool DateAnswerView::eventFilter(QObject* watched, QEvent* event) {
  if (watched == findings_ && event->type() == QEvent::Resize) fitFindings();
  return QWidget::eventFilter(watched, event);
}

void DateAnswerView::fitFindings() {
  const QWidget* sheet = findings_->widget();
  if (sheet == nullptr || sheet->layout() == nullptr) return;
  findings_->setFixedHeight(std::max(space(24), sheet->layout()->heightForWidth(findings_->width())));
}

}  // namespace ohmkin::castings
