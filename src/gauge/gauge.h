#pragma once
#include <curve/curve.h>
#include <gauge/dial.h>
#include <gauge/movement.h>
#include <gauge/needle_law.h>

/// A dash gauge: dial, movement where known, and the family of senders it was built for.
namespace ohmkin::gauge {

enum class Where { onTheMarks, belowTheMarks, pastTheMarks };

/// What the needle shows. Off the marks `shown` is the scale continued, for computing only; a person is told it is off
/// the marks.
struct Reading {
  Temperature shown;
  Where where = Where::onTheMarks;
  Angle needle;  ///< held by the stops
  /// The family's curve, or the bench points, had to be continued beyond where they are established.
  bool extrapolated = false;
};

class Gauge {
 public:
  /// Movement unknown: taken to be true for its own family, so indicated = family inverse of the ohms. Said in the
  /// answer. Conditions are left out, since nothing tells how they act. Refuses a family that does not go one way over
  /// the dial.
  static Expected<Gauge> trueForFamily(Dial dial, const curve::Curve& family);
  /// Movement known: indicated = dial(movement(ohms)). Refuses what checked() refuses, and a movement that turns
  /// against the dial as its family warms up.
  static Expected<Gauge> withMovement(Dial dial, const Movement& movement, const curve::Curve& family);
  /// Any dial as it is, with numbers or without. The rule:
  ///  1. The hot mark and one other have temperatures: the scale is that of the numbers, and one of the two factories
  ///     above makes the gauge.
  ///  2. Otherwise (C, H, a normal band) the movement must be known, and a place on the dial means the temperature at
  ///     which the gauge's own family puts the needle there, with a good ground and a cluster at 20 °C; the marks get
  ///     those temperatures.
  ///  3. Neither: refused, since nothing says what C and H mean. Refused too where a mark has a number more than 10 K
  ///     from the one so found, or where the movement never takes the needle to a mark.
  static Expected<Gauge> make(std::vector<Mark> marks, Angle lowStop, Angle highStop,
                              const std::optional<Movement>& movement, const curve::Curve& family);

  [[nodiscard]] const Dial& dial() const { return dial_; }
  [[nodiscard]] const curve::Curve& family() const { return family_; }
  [[nodiscard]] const std::optional<Movement>& movement() const { return movement_; }
  [[nodiscard]] Temperature hotMark() const { return dial_.hotMark(); }
  /// No numbers, or no movement: places on the dial mean temperatures of the family.
  [[nodiscard]] bool readByFamily() const { return byFamily_; }

  /// `sender` from 0 (lead grounded) to infinite (lead open).
  [[nodiscard]] Reading indicated(Ohms sender, const Conditions& conditions = {}) const;
  /// Ohms at which the needle stands at this temperature on the dial; none where no resistance puts it there.
  [[nodiscard]] std::optional<Ohms> ohmsAt(Temperature shown) const;

  // For the inner loops of pairing: indicated kelvin for ln of the ohms, scale continued past the marks, standard
  // conditions. Finite for every ohms from 0 to infinite. shownAtOhms spares the logarithm where a movement with a
  // numbered dial does not need it.
  [[nodiscard]] double shownKelvin(double lnOhms) const;
  [[nodiscard]] double shownAtOhms(double ohms) const;
  [[nodiscard]] double shownSlope(double lnOhms) const;  ///< d shown / d ln R, K

 private:
  Gauge(Dial dial, std::optional<Movement> movement, curve::Curve family, bool byFamily);
  static Expected<Gauge> withoutNumbers(std::vector<Mark> marks, Angle lowStop, Angle highStop,
                                        const Movement& movement, const curve::Curve& family);
  [[nodiscard]] double familyKelvin(double lnOhms) const;

  Dial dial_;
  std::optional<Movement> movement_;
  std::optional<NeedleLaw> law_;
  curve::Curve family_;  ///< extended over the dial and beyond, so that a needle off the marks still has a number
  bool byFamily_ = true;
  double lnAtLow_ = 0;  ///< ends of the extended family, and how it is continued past them: straight in ln R
  double lnAtHigh_ = 0;
  double kelvinPerLnAtLow_ = 0;
  double kelvinPerLnAtHigh_ = 0;
};

}  // namespace ohmkin::gauge
