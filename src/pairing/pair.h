#pragma once
#include <curve/curve.h>
#include <finding/refusal.h>
#include <gauge/gauge.h>
#include <pairing/trim_network.h>
#include <optional>

/// One gauge, one sender, the resistors between: from the true temperature to what the needle shows, in bare kelvin.
namespace ohmkin::pairing {

class Pair {
 public:
  /// Keeps references to gauge and sender. Refuses what trimmed() refuses.
  static Expected<Pair> make(const gauge::Gauge& gauge, const curve::Curve& sender, const TrimNetwork& trim,
                             const gauge::Conditions& conditions);

  /// With the feed resistor, where there is one.
  [[nodiscard]] const gauge::Gauge& gauge() const { return altered_ ? *altered_ : *gauge_; }
  [[nodiscard]] const gauge::Gauge& original() const { return *gauge_; }  ///< as it came
  [[nodiscard]] const curve::Curve& sender() const { return *sender_; }
  [[nodiscard]] const TrimNetwork& trim() const { return trim_; }
  [[nodiscard]] const gauge::Conditions& conditions() const { return conditions_; }

  [[nodiscard]] bool standard() const { return standard_; }  ///< standard conditions

  [[nodiscard]] Ohms senderOhms(double kelvin) const;
  [[nodiscard]] Ohms seenOhms(double kelvin) const { return trim_.seen(senderOhms(kelvin)); }
  [[nodiscard]] gauge::Reading reading(double kelvin) const { return gauge().indicated(seenOhms(kelvin), conditions_); }
  [[nodiscard]] double shown(double kelvin) const { return shownFor(seenOhms(kelvin)); }
  [[nodiscard]] double shownFor(Ohms seen) const;
  /// d shown / d ln of the ohms seen, K
  [[nodiscard]] double shownSlope(Ohms seen) const;
  /// d shown / d T of the sender, K/K
  [[nodiscard]] double gain(double kelvin) const;

 private:
  Pair(const gauge::Gauge& gauge, const curve::Curve& sender, const TrimNetwork& trim,
       const gauge::Conditions& conditions);
  const gauge::Gauge* gauge_;
  std::optional<gauge::Gauge> altered_;
  const curve::Curve* sender_;
  TrimNetwork trim_;
  gauge::Conditions conditions_;
  bool standard_ = true;  ///< standard conditions: the gauge's short way serves
};

}  // namespace ohmkin::pairing
