#include <sheet/canvas.h>
#include <sheet/shelf_label.h>

#include <algorithm>

namespace ohmkin::sheet {
namespace {

constexpr double kLabelWidth = 62;
constexpr double kLabelHeight = 29;
constexpr double kLabelInside = 3;
constexpr std::size_t kLabelsBeside = 3;
constexpr double kLongestBin = 20;

void draw(Canvas& canvas, const ShelfLabel& label, Spot corner) {
  const double left = corner.x + kLabelInside;
  const double right = corner.x + kLabelWidth - kLabelInside;
  const double inner = right - left;
  // A bin of a long name gets a line of its own.
  const double whole = widthOf(label.bin, kTitle.size, kTitle.weight);
  const bool beside = whole <= kLongestBin;
  const double binWidth = beside ? whole : 0;
  canvas.text({left, corner.y + 8}, kTitle, elided(label.part, kTitle.size, kTitle.weight, inner - binWidth - 3));
  if (beside) canvas.text({right, corner.y + 8}, kTitle, label.bin, Anchor::end);
  canvas.line({left, corner.y + 10}, {right, corner.y + 10}, 0.25);
  double y = corner.y + 14.4;
  const auto row = [&](Face face, const std::string& words) {
    if (words.empty()) return;
    canvas.text({left, y}, face, elided(words, face.size, face.weight, inner));
    y += face.size * 1.4;
  };
  if (!beside) row({3.4, Weight::bold}, label.bin);
  row(kStrong, label.family);
  row(kStrong, label.ohms);
  row(kSmall, label.thread + (label.thread.empty() || label.terminal.empty() ? "" : " · ") + label.terminal);
}

}  // namespace

Pages drawShelfLabels(const std::vector<ShelfLabel>& labels, Paper paper) {
  const PaperSize size = sizeOf(paper);
  const auto down = static_cast<std::size_t>((size.height - 20) / kLabelHeight);
  const double left = (size.width - kLabelsBeside * kLabelWidth) / 2;
  const double top = (size.height - static_cast<double>(down) * kLabelHeight) / 2;
  Pages pages;
  for (std::size_t from = 0; from < labels.size(); from += kLabelsBeside * down) {
    Canvas canvas(size);
    for (std::size_t i = from; i < std::min(labels.size(), from + kLabelsBeside * down); ++i) {
      const std::size_t column = (i - from) % kLabelsBeside;
      const std::size_t row = (i - from) / kLabelsBeside;
      const Spot corner{left + kLabelWidth * static_cast<double>(column),
                        top + kLabelHeight * static_cast<double>(row)};
      canvas.box({corner.x, corner.y, kLabelWidth, kLabelHeight}, 0.08);
      draw(canvas, labels[i], corner);
    }
    pages.push_back(canvas.finish());
  }
  return pages;
}

Pages drawSmallLabels(const std::vector<ShelfLabel>& labels) {
  Pages pages;
  for (const ShelfLabel& label : labels) {
    Canvas canvas({kLabelWidth, kLabelHeight});
    draw(canvas, label, {0, 0});
    pages.push_back(canvas.finish());
  }
  return pages;
}

}  // namespace ohmkin::sheet
