#pragma once
#include <finding/refusal.h>
#include <quantity/quantity.h>
#include <optional>
#include <string>
#include <utility>
#include <vector>

/// The marks behind the needle.
namespace ohmkin::gauge {

enum class MarkKind { tick, numbered, cold, normalLow, normalHigh, hot };

struct Mark {
  MarkKind kind = MarkKind::tick;
  std::string text;               ///< "C", "H", "100"; empty for a bare tick
  std::optional<Temperature> at;  ///< none where the dial does not say
  Angle angle;
};

/// Marks in the order of rising temperature, angles strictly monotone. The scale is linear in angle between
/// neighbouring marks with temperatures, as a printed dial is; a dial without numbers may be given a scale of its own
/// (Gauge::make finds it).
class Dial {
 public:
  using Scale = std::vector<std::pair<Temperature, Angle>>;

  /// Refuses fewer than two marks with a temperature, no hot mark or one without a temperature, angles or temperatures
  /// out of order, and marks beyond the stops. The stops may be given either way round.
  static Expected<Dial> make(std::vector<Mark> marks, Angle lowStop, Angle highStop);
  /// The same with a scale that need not be that of the marks: at least two points, temperature rising, angles strictly
  /// monotone the way the marks run.
  static Expected<Dial> withScale(std::vector<Mark> marks, Angle lowStop, Angle highStop, const Scale& scale);

  [[nodiscard]] const std::vector<Mark>& marks() const { return marks_; }
  [[nodiscard]] Temperature hotMark() const;                        ///< the first of them, where a red field has two
  [[nodiscard]] TemperatureSpan marked() const { return marked_; }  ///< first to last mark with a temperature
  [[nodiscard]] Angle lowStop() const { return lowStop_; }
  [[nodiscard]] Angle highStop() const { return highStop_; }
  [[nodiscard]] Angle onStops(Angle angle) const;  ///< where the needle really rests: held between the stops
  [[nodiscard]] bool turnsClockwise() const { return clockwise_; }  ///< as the temperature rises

  /// Angle of a temperature on the scale; outside the marks the outermost interval is continued.
  [[nodiscard]] Angle angleOf(Temperature t) const;
  /// The scale read backwards, continued likewise; use where() of the gauge's reading to say so.
  [[nodiscard]] Temperature temperatureAt(Angle angle) const;

  // For inner loops, in bare numbers.
  struct Step {
    double kelvin;
    double degrees;
    double kelvinPerDegree;  ///< from this point to the next; the last carries that of the one before
  };
  [[nodiscard]] const Step& stepAt(double degrees) const;

 private:
  Dial(std::vector<Mark> marks, Angle lowStop, Angle highStop, const Scale& scale);
  std::vector<Mark> marks_;
  Angle lowStop_;
  Angle highStop_;
  std::vector<Step> steps_;
  TemperatureSpan marked_;  ///< kept, since inner loops ask for it
  bool clockwise_ = true;
};

inline const Dial::Step& Dial::stepAt(double degrees) const {
  std::size_t i = 0;
  const std::size_t last = steps_.size() - 2;
  if (clockwise_)
    while (i < last && degrees > steps_[i + 1].degrees) ++i;
  else
    while (i < last && degrees < steps_[i + 1].degrees) ++i;
  return steps_[i];
}

/// Whether marks alone make a scale: the hot mark and at least one other have a temperature.
bool numbered(const std::vector<Mark>& marks);

}  // namespace ohmkin::gauge
