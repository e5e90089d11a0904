#pragma once
#include <sheet/canvas.h>

namespace ohmkin::sheet {

struct Range {
  double low = 0;
  double high = 1;
  void take(double value);
};

/// Round steps (1, 2 or 5 of a power of ten) that cover low … high in about `count`.
struct Ticks {
  double first = 0;
  double step = 1;
  int count = 1;  ///< steps from the first to the last
  [[nodiscard]] double last() const { return first + step * count; }
};
Ticks ticksOver(Range range, int count);

/// Axes and curves, by strokes alone: what is true is dashed, what the needle does is heavy, what is doubtful is thin.
class Plot {
 public:
  /// Ranges are widened to round steps; figures and names are written left of and below `where`.
  Plot(Canvas& canvas, const Box& where, Range x, Range y, int stepsX, int stepsY);

  void axes(std::string_view nameX, std::string_view nameY);
  [[nodiscard]] Spot at(double x, double y) const;
  /// Parts outside the axes are cut off.
  void curve(const std::vector<Spot>& values, double stroke, std::string_view dashes = {});
  void levelLine(double y, std::string_view words);    ///< across, named at its left end
  void uprightLine(double x, std::string_view words);  ///< from axis to top, named at the top; nothing outside the axes
  [[nodiscard]] Range x() const { return {x_.first, x_.last()}; }
  [[nodiscard]] Range y() const { return {y_.first, y_.last()}; }

 private:
  Canvas& canvas_;
  Box where_;
  Ticks x_;
  Ticks y_;
};

}  // namespace ohmkin::sheet
