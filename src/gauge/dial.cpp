#include <gauge/dial.h>

#include <fmt/core.h>
#include <algorithm>
#include <cmath>

namespace ohmkin::gauge {
namespace {

using Scale = Dial::Scale;

std::string named(const Mark& mark) {
  return mark.text.empty() ? fmt::format("a mark at {:g}°", mark.angle.degrees)
                           : fmt::format("the mark '{}' at {:g}°", mark.text, mark.angle.degrees);
}

tl::unexpected<Refusal> wrong(std::string code, std::string found, std::string expected) {
  return refuse(std::move(code), "dial", std::move(found), std::move(expected));
}

const Mark* hot(const std::vector<Mark>& marks) {
  const auto at = std::find_if(marks.begin(), marks.end(), [](const Mark& m) { return m.kind == MarkKind::hot; });
  return at == marks.end() ? nullptr : &*at;
}

Scale scaleOf(const std::vector<Mark>& marks) {
  Scale scale;
  for (const Mark& mark : marks)
    if (mark.at) scale.emplace_back(*mark.at, mark.angle);
  return scale;
}

Expected<void> checkMarks(const std::vector<Mark>& marks, Angle lowStop, Angle highStop) {
  if (marks.size() < 2) return wrong("dial-without-marks", fmt::format("{} marks", marks.size()), "two marks or more");
  const bool clockwise = marks[1].angle > marks[0].angle;
  const auto [left, right] = std::minmax(lowStop, highStop);
  if (!std::isfinite(left.degrees) || !std::isfinite(right.degrees) || left == right)
    return wrong("dial-stops", fmt::format("stops at {:g}° and {:g}°", lowStop.degrees, highStop.degrees),
                 "two angles");
  for (std::size_t i = 0; i < marks.size(); ++i) {
    const Mark& mark = marks[i];
    if (!std::isfinite(mark.angle.degrees)) return wrong("dial-angle", named(mark), "an angle in degrees");
    if (mark.angle < left || mark.angle > right)
      return wrong("dial-stops", named(mark),
                   fmt::format("marks between the stops, {:g}° to {:g}°", left.degrees, right.degrees));
    if (i > 0 && (mark.angle == marks[i - 1].angle || (mark.angle > marks[i - 1].angle) != clockwise))
      return wrong("dial-order", named(mark), "marks listed by rising temperature, their angles going one way");
  }
  const Mark* hotMark = hot(marks);
  if (hotMark == nullptr)
    return wrong("dial-without-hot-mark", "no hot mark", "one mark of the kind hot, where a driver would stop");
  if (!hotMark->at)
    return wrong("dial-without-numbers", named(*hotMark) + " without a temperature",
                 "the temperature of the hot mark and one other, or a known movement and family to find them from");
  return {};
}

Expected<void> checkScale(const Scale& scale, bool clockwise) {
  if (scale.size() < 2)
    return wrong("dial-without-numbers", fmt::format("{} marks with a temperature", scale.size()),
                 "two or more, or a known movement and family to find them from");
  for (std::size_t i = 0; i < scale.size(); ++i) {
    const auto& [t, angle] = scale[i];
    if (!std::isfinite(inKelvin(t)) || !std::isfinite(angle.degrees))
      return wrong("dial-order", "a temperature or angle that is not a number", "numbers");
    if (i == 0) continue;
    const auto& [before, angleBefore] = scale[i - 1];
    if (t <= before)
      return wrong("dial-order", fmt::format("{:g} °C after {:g} °C", inCelsius(t), inCelsius(before)),
                   "marks listed by rising temperature");
    if (angle == angleBefore || (angle > angleBefore) != clockwise)
      return wrong("dial-order", fmt::format("{:g} °C at {:g}°", inCelsius(t), angle.degrees),
                   "angles of the scale going the way the marks run");
  }
  return {};
}

}  // namespace

bool numbered(const std::vector<Mark>& marks) {
  const Mark* hotMark = hot(marks);
  return hotMark != nullptr && hotMark->at && scaleOf(marks).size() >= 2;
}

Expected<Dial> Dial::make(std::vector<Mark> marks, Angle lowStop, Angle highStop) {
  const Scale scale = scaleOf(marks);
  return withScale(std::move(marks), lowStop, highStop, scale);
}

Expected<Dial> Dial::withScale(std::vector<Mark> marks, Angle lowStop, Angle highStop, const Scale& scale) {
  if (const auto sound = checkMarks(marks, lowStop, highStop); !sound) return tl::make_unexpected(sound.error());
  const bool clockwise = marks[1].angle > marks[0].angle;
  // The marks' own temperatures must be in order whatever the scale says between them.
  for (const Scale& steps : {scaleOf(marks), scale})
    if (const auto sound = checkScale(steps, clockwise); !sound) return tl::make_unexpected(sound.error());
  return Dial(std::move(marks), lowStop, highStop, scale);
}

Dial::Dial(std::vector<Mark> marks, Angle lowStop, Angle highStop, const Scale& scale)
    : marks_(std::move(marks)), lowStop_(lowStop), highStop_(highStop) {
  const Scale numbers = scaleOf(marks_);
  marked_ = {numbers.front().first, numbers.back().first};
  clockwise_ = scale[1].second > scale[0].second;
  for (const auto& [t, angle] : scale) steps_.push_back({inKelvin(t), angle.degrees, 0});
  for (std::size_t i = 0; i + 1 < steps_.size(); ++i)
    steps_[i].kelvinPerDegree = (steps_[i + 1].kelvin - steps_[i].kelvin) / (steps_[i + 1].degrees - steps_[i].degrees);
  steps_.back().kelvinPerDegree = steps_[steps_.size() - 2].kelvinPerDegree;
}

Temperature Dial::hotMark() const { return *hot(marks_)->at; }

Angle Dial::onStops(Angle angle) const {
  const auto [left, right] = std::minmax(lowStop_, highStop_);
  return std::clamp(angle, left, right);
}

Angle Dial::angleOf(Temperature t) const {
  const auto next =
      std::find_if(steps_.begin() + 1, steps_.end() - 1, [&](const Step& s) { return inKelvin(t) <= s.kelvin; });
  const Step& step = *(next - 1);
  return {step.degrees + (inKelvin(t) - step.kelvin) / step.kelvinPerDegree};
}

Temperature Dial::temperatureAt(Angle angle) const {
  const Step& step = stepAt(angle.degrees);
  return kelvin(step.kelvin + (angle.degrees - step.degrees) * step.kelvinPerDegree);
}

}  // namespace ohmkin::gauge
