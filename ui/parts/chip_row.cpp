#include <look/palette.h>
#include <look/type.h>
#include <parts/chip_row.h>
#include <parts/flow_layout.h>
#include <parts/words.h>

namespace ohmkin::parts {
namespace {

using look::colour;
using look::Paint;
using look::space;
using look::Text;
using look::typeface;

}  // namespace

Chip::Chip(const ChipWords& words, QWidget* parent) : QWidget(parent), words_(words) {
  setAccessibleName(words.text);
  setToolTip(plainTip(words.text));
}

QSize Chip::sizeHint() const {
  const QFontMetricsF m = look::metrics(Text::small);
  return {static_cast<int>(m.horizontalAdvance(words_.text)) + space(26),
          static_cast<int>(m.lineSpacing()) + space(10)};
}

QSize Chip::minimumSizeHint() const { return {space(80), sizeHint().height()}; }

void Chip::paintEvent(QPaintEvent* /*event*/) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const QRectF box = QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5);
  QPen edge(Qt::NoPen);
  Paint wash = Paint::accentWash;
  Paint ink = Paint::ink;
  switch (words_.kind) {
    case ChipKind::understood:
      break;
    case ChipKind::inferred:  // likely, not certain: the wash without its certainty, an edge instead
      edge = QPen(colour(Paint::accent), 1);
      wash = Paint::ground;
      break;
    case ChipKind::conflict:
      edge = QPen(colour(Paint::warning), 1);
      wash = Paint::warningWash;
      break;
    case ChipKind::unknown:
      edge = QPen(colour(Paint::edge), 1);
      edge.setDashPattern({3, 3});
      wash = Paint::unknownWash;
      ink = Paint::quiet;
      break;
  }
  painter.setPen(edge);
  painter.setBrush(colour(wash));
  painter.drawRoundedRect(box, box.height() / 2, box.height() / 2);
  const double line = look::metrics(Text::small).lineSpacing();
  drawWords(painter, QRectF(space(13), (height() - line) / 2, width() - 2 * space(13) + 2, line), words_.text,
            typeface(Text::small), colour(ink), 1);
}

ChipRow::ChipRow(QWidget* parent) : QWidget(parent) {
  auto* row = new FlowLayout(space(8), this);
  QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Minimum);
  policy.setHeightForWidth(true);
  setSizePolicy(policy);
  setAccessibleName(tr("What was understood"));
  setLayout(row);
}

void ChipRow::display(const std::vector<ChipWords>& chips) {
  if (chips == chips_) return;
  chips_ = chips;
  while (QLayoutItem* item = layout()->takeAt(0)) {
    delete item->widget();
    delete item;
  }
  for (const ChipWords& words : chips_) {
    auto* chip = new Chip(words, this);
    layout()->addWidget(chip);
    chip->show();
  }
  setVisible(!chips_.empty());
  updateGeometry();
}

}  // namespace ohmkin::parts
