#include <look/palette.h>
#include <look/role.h>
#include <look/style.h>
#include <look/type.h>
#include <parts/finding_list.h>
#include <parts/panel.h>
#include <QGridLayout>
#include <QPainter>
#include <QScrollBar>

namespace ohmkin::parts {
namespace {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

/// A rising weight as a shape: a thin line, a dot, a triangle, a filled triangle with a bar.
class WeightMark : public QWidget {
 public:
  WeightMark(Weight weight, QWidget* parent) : QWidget(parent), weight_(weight) {
    setFixedSize(space(18), static_cast<int>(look::metrics(Text::body).lineSpacing()));
  }

 protected:
  void paintEvent(QPaintEvent* /*event*/) override {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double r = space(6);
    const QPointF c(r + 1, height() / 2.0);
    const QPolygonF triangle({c + QPointF(0, -r), c + QPointF(r, r * 0.8), c + QPointF(-r, r * 0.8)});
    switch (weight_) {
      case Weight::note:
        painter.setPen(Qt::NoPen);
        painter.setBrush(colour(Paint::accent));
        painter.drawEllipse(c, r * 0.5, r * 0.5);
        break;
      case Weight::caution:
        painter.setPen(QPen(colour(Paint::ink), space(1.6), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
        painter.drawPolygon(triangle);
        break;
      case Weight::warning:
        painter.setPen(QPen(colour(Paint::warning), space(1.6), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
        painter.setBrush(colour(Paint::warning));
        painter.drawPolygon(triangle);
        break;
      case Weight::refusal:
        painter.setPen(QPen(colour(Paint::warning), space(2), Qt::SolidLine, Qt::RoundCap));
        painter.drawLine(c + QPointF(-r * 0.8, -r * 0.8), c + QPointF(r * 0.8, r * 0.8));
        painter.drawLine(c + QPointF(-r * 0.8, r * 0.8), c + QPointF(r * 0.8, -r * 0.8));
        break;
    }
  }

 private:
  Weight weight_;
};

QString grounds(const FindingWords& finding) {
  QStringList both;
  if (!finding.evidence.isEmpty()) both << finding.evidence;
  if (!finding.source.isEmpty()) both << FindingList::tr("source: %1").arg(finding.source);
  return both.join(QStringLiteral(" · "));
}

}  // namespace

FindingList::FindingList(QWidget* parent) : QScrollArea(parent) {
  look::setRole(*this, QAccessible::List);
  setFrameShape(QFrame::NoFrame);
  setWidgetResizable(true);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setFocusPolicy(Qt::StrongFocus);
  viewport()->setAutoFillBackground(false);
  verticalScrollBar()->setSingleStep(space(24));
  setAccessibleName(tr("Why"));
}

void FindingList::display(const std::vector<FindingWords>& findings) {
  findings_ = findings;
  topics_.clear();
  auto* sheet = new QWidget;
  auto* grid = new QGridLayout(sheet);
  grid->setContentsMargins(space(2), 0, space(10), 0);
  grid->setHorizontalSpacing(space(8));
  grid->setVerticalSpacing(space(1));
  grid->setColumnStretch(1, 1);
  QStringList all;
  int row = 0;
  for (const FindingWords& finding : findings_) {
    if (!finding.topic.isEmpty()) {
      if (row > 0) grid->setRowMinimumHeight(row++, space(6));
      auto* topic = (new Words(finding.topic, sheet))->sized(typeface(Text::small))->painted(Paint::quiet);
      topics_.insert(finding.topic, topic);
      grid->addWidget(topic, row++, 0, 1, 2);
      grid->setRowMinimumHeight(row++, space(2));
    }
    grid->addWidget(new WeightMark(finding.weight, sheet), row, 0, Qt::AlignTop);
    const bool heavy = finding.weight == Weight::warning || finding.weight == Weight::refusal;
    grid->addWidget((new Words(finding.sentence, sheet))->painted(heavy ? Paint::warning : Paint::ink)->selectable(),
                    row++, 1);
    const QString why = grounds(finding);
    if (!why.isEmpty())
      grid->addWidget((new Words(why, sheet))->sized(typeface(Text::small))->painted(Paint::quiet)->selectable(), row++,
                      1);
    grid->setRowMinimumHeight(row++, space(6));
    all << finding.sentence;
  }
  grid->setRowStretch(row, 1);
  setWidget(sheet);
  sheet->setAutoFillBackground(false);  // setWidget turns it on
  setAccessibleDescription(all.join(QLatin1Char(' ')));
}

void FindingList::showTopic(const QString& topic) {
  const QWidget* heading = topics_.value(topic);
  if (heading == nullptr) return;
  widget()->layout()->activate();
  verticalScrollBar()->setValue(heading->y());
}

QSize FindingList::minimumSizeHint() const { return {space(200), space(80)}; }

void FindingList::focusInEvent(QFocusEvent* event) {
  QScrollArea::focusInEvent(event);
  viewport()->update();
}

void FindingList::focusOutEvent(QFocusEvent* event) {
  QScrollArea::focusOutEvent(event);
  viewport()->update();
}

void FindingList::paintEvent(QPaintEvent* event) {
  QScrollArea::paintEvent(event);
  if (!hasFocus()) return;
  QPainter painter(viewport());
  look::drawFocusRing(painter, viewport()->rect(), space(6));
}

}  // namespace ohmkin::parts
