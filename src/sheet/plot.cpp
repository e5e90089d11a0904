#include <fmt/format.h>
#include <sheet/plot.h>

#include <algorithm>
#include <cmath>

namespace ohmkin::sheet {
namespace {

constexpr double kHair = 0.12;
constexpr double kGrid = 0.06;
constexpr double kFigure = 2.3;

std::string figure(double value, double step) {
  const int decimals = step < 0.099 ? 2 : step < 0.99 ? 1 : 0;
  std::string text = fmt::format("{:.{}f}", std::abs(value) < step / 1e6 ? 0.0 : std::abs(value), decimals);
  return value < -step / 1e6 ? "−" + text : text;
}

/// The part of a segment between two levels of y; false where there is none.
bool cut(Spot& from, Spot& to, Range y) {
  for (const bool upper : {false, true}) {
    const double edge = upper ? y.high : y.low;
    const auto outside = [&](const Spot& s) { return upper ? s.y > edge : s.y < edge; };
    if (outside(from) && outside(to)) return false;
    if (!outside(from) && !outside(to)) continue;
    Spot& moved = outside(from) ? from : to;
    const Spot& kept = outside(from) ? to : from;
    const double part = (edge - kept.y) / (moved.y - kept.y);
    moved = {kept.x + part * (moved.x - kept.x), edge};
  }
  return true;
}

}  // namespace

void Range::take(double value) {
  low = std::min(low, value);
  high = std::max(high, value);
}

Ticks ticksOver(Range range, int count) {
  const double span = std::max(range.high - range.low, 1e-6);
  const double rough = span / std::max(count, 1);
  const double power = std::pow(10, std::floor(std::log10(rough)));
  double step = 10 * power;
  for (const double factor : {1.0, 2.0, 5.0}) {
    if (factor * power >= rough * 0.999) {
      step = factor * power;
      break;
    }
  }
  const double first = std::floor(range.low / step + 1e-9) * step;
  return {first, step, std::max(1, static_cast<int>(std::ceil((range.high - first) / step - 1e-9)))};
}

Plot::Plot(Canvas& canvas, const Box& where, Range x, Range y, int stepsX, int stepsY)
    : canvas_(canvas), where_(where), x_(ticksOver(x, stepsX)), y_(ticksOver(y, stepsY)) {}

Spot Plot::at(double x, double y) const {
  return {where_.x + where_.width * (x - x_.first) / (x_.last() - x_.first),
          where_.bottom() - where_.height * (y - y_.first) / (y_.last() - y_.first)};
}

void Plot::axes(std::string_view nameX, std::string_view nameY) {
  const Face face{kFigure, Weight::regular};
  for (int i = 0; i <= x_.count; ++i) {
    const double value = x_.first + i * x_.step;
    const Spot foot = at(value, y_.first);
    canvas_.line(foot, {foot.x, where_.y}, kGrid);
    canvas_.text({foot.x, foot.y + 3.4}, face, figure(value, x_.step), Anchor::middle);
  }
  for (int i = 0; i <= y_.count; ++i) {
    const double value = y_.first + i * y_.step;
    const Spot left = at(x_.first, value);
    const bool zero = std::abs(value) < y_.step / 1e6;
    canvas_.line(left, {where_.right(), left.y}, zero ? 2 * kHair : kGrid);
    canvas_.text({left.x - 1.2, left.y + 0.36 * kFigure}, face, figure(value, y_.step), Anchor::end);
  }
  canvas_.line({where_.x, where_.bottom()}, {where_.right(), where_.bottom()}, 2 * kHair);
  canvas_.line({where_.x, where_.bottom()}, {where_.x, where_.y}, 2 * kHair);
  canvas_.text({where_.right(), where_.bottom() + 7.2}, face, nameX, Anchor::end);
  canvas_.text({where_.x, where_.y - 2}, face, nameY);
}

void Plot::curve(const std::vector<Spot>& values, double stroke, std::string_view dashes) {
  std::vector<Spot> drawn;
  const auto end = [&] {
    canvas_.polyline(drawn, stroke, dashes);
    drawn.clear();
  };
  for (std::size_t i = 1; i < values.size(); ++i) {
    Spot from = values[i - 1];
    Spot to = values[i];
    if (!cut(from, to, y())) {
      end();
      continue;
    }
    if (drawn.empty() || from.x > values[i - 1].x) {
      end();
      drawn.push_back(at(from.x, from.y));
    }
    drawn.push_back(at(to.x, to.y));
    if (to.x < values[i].x) end();
  }
  end();
}

void Plot::levelLine(double y, std::string_view words) {
  if (y < y_.first || y > y_.last()) return;
  const Spot left = at(x_.first, y);
  canvas_.line(left, {where_.right(), left.y}, 2 * kHair, "0.3 0.9");
  canvas_.blank({where_.x + 0.8, left.y - 3.1, widthOf(words, kFigure) + 1, 2.7});
  canvas_.text({where_.x + 1.3, left.y - 0.9}, {kFigure, Weight::regular}, words);
}

void Plot::uprightLine(double x, std::string_view words) {
  if (x < x_.first || x > x_.last()) return;
  const Spot foot = at(x, y_.first);
  canvas_.line(foot, {foot.x, where_.y}, 2 * kHair, "0.3 0.9");
  const double length = widthOf(words, kFigure);
  canvas_.blank({foot.x - 3.1, where_.y + 0.5, 2.7, length + 1});
  canvas_.upright({foot.x - 0.9, where_.y + 1}, {kFigure, Weight::regular}, words, Anchor::end);
}

}  // namespace ohmkin::sheet
