#pragma once
#include <curve/curve.h>
#include <gauge/dial.h>
#include <gauge/movement.h>

/// A dash gauge: dial, movement where known, and the family of senders it was built for.
namespace ohmkin::gauge {

enum class Where { onTheMarks, belowTheMarks, pastTheMarks };

/// What the needle shows. Off the marks `shown` is the scale continued, for computing only; a person is told it is off the marks.
struct Reading {
  Temperature shown;
  Where where = Where::onTheMarks;
  Angle needle;          ///< held by the stops
  bool extrapolated = false;  ///< the family's curve had to be continued beyond where it is established
};

class Gauge {
 public:
  /// Movement unknown: taken to be true for its own family, so indicated = family inverse of the ohms. Said in the answer.
  static Expected<Gauge> trueForFamily(Dial dial, curve::Curve family);
  /// Movement known: indicated = dial(movement(ohms)).
  static Expected<Gauge> withMovement(Dial dial, Movement movement, curve::Curve family);

  [[nodiscard]] const Dial& dial() const { return dial_; }
  [[nodiscard]] const curve::Curve& family() const { return family_; }
  [[nodiscard]] const std::optional<Movement>& movement() const { return movement_; }
  [[nodiscard]] Temperature hotMark() const { return dial_.hotMark(); }

  [[nodiscard]] Reading indicated(Ohms sender, const Conditions& conditions = {}) const;
  /// Ohms at which the needle stands at this temperature on the dial; none where no resistance puts it there.
  [[nodiscard]] std::optional<Ohms> ohmsAt(Temperature shown) const;

  // For the inner loops of pairing: indicated kelvin for ln of the ohms, scale continued past the marks, standard conditions.
  [[nodiscard]] double shownKelvin(double lnOhms) const;
  [[nodiscard]] double shownSlope(double lnOhms) const;  ///< d shown / d ln R, K

 private:
  Gauge(Dial dial, std::optional<Movement> movement, curve::Curve family);
  Dial dial_;
  std::optional<Movement> movement_;
  curve::Curve family_;  ///< extended over the dial and beyond, so that a needle off the marks still has a number
};

}  // namespace ohmkin::gauge
