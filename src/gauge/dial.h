#pragma once
#include <finding/refusal.h>
#include <optional>
#include <quantity/quantity.h>
#include <string>
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

/// Marks in the order of rising temperature, angles strictly monotone. The scale is linear in angle between neighbouring marks with
/// temperatures, as a printed dial is.
class Dial {
 public:
  /// Refuses fewer than two marks with a temperature, no hot mark, or angles or temperatures out of order.
  static Expected<Dial> make(std::vector<Mark> marks, Angle lowStop, Angle highStop);

  [[nodiscard]] const std::vector<Mark>& marks() const { return marks_; }
  [[nodiscard]] Temperature hotMark() const;
  [[nodiscard]] TemperatureSpan marked() const;  ///< first to last mark with a temperature
  [[nodiscard]] Angle lowStop() const { return lowStop_; }
  [[nodiscard]] Angle highStop() const { return highStop_; }
  [[nodiscard]] Angle onStops(Angle angle) const;  ///< where the needle really rests: held between the stops

  /// Angle of a temperature on the scale; outside the marks the outermost interval is continued.
  [[nodiscard]] Angle angleOf(Temperature t) const;
  /// The scale read backwards, continued likewise; use where() to say so.
  [[nodiscard]] Temperature temperatureAt(Angle angle) const;

 private:
  Dial(std::vector<Mark> marks, Angle lowStop, Angle highStop);
  std::vector<Mark> marks_;
  Angle lowStop_;
  Angle highStop_;
};

}  // namespace ohmkin::gauge
