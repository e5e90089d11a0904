#pragma once
#include <math.h>  // before boost's pchip, which calls isnan unqualified

#include <gauge/movement.h>
#include <boost/math/interpolators/pchip.hpp>

/// A movement made ready for inner loops, in bare numbers: ohms, degrees. What the conditions do is folded into the
/// ohms the movement feels in the sender's place and into how hard it is driven, 1 being standard conditions.
namespace ohmkin::gauge {

struct Felt {
  double ohms = 0;
  double drive = 1;
};
Felt felt(const Movement& movement, double senderOhms, const Conditions& conditions);
/// The sender behind the ohms felt.
double senderBehind(const Movement& movement, double feltOhms, const Conditions& conditions);

class CoilLaw {
 public:
  explicit CoilLaw(const CrossedCoil& coil);
  [[nodiscard]] double degrees(double ohms, double drive = 1) const;
  [[nodiscard]] double slope(double ohms) const;  ///< d degrees / d ln ohms at drive 1
  /// Ohms felt; none where neither `grounded`, what is felt with the lead grounded, nor more ohms turn the needle so
  /// far.
  [[nodiscard]] std::optional<double> ohmsFor(double degrees, Felt grounded) const;

 private:
  // Along the grounded direction and across it: coils (1 + x·cos, x·sin)/(1 + R/weakening), magnet (along, across).
  double grounded_;
  double sweep_;
  double sin_;
  double cos_;
  double perHalf_;
  double perWeakening_ = 0;
  double along_ = 0;
  double across_ = 0;
  bool magnet_ = false;
};

class BimetalLaw {
 public:
  explicit BimetalLaw(const Bimetal& bimetal);
  [[nodiscard]] double degrees(double ohms, double drive = 1) const;
  [[nodiscard]] double slope(double ohms) const;
  [[nodiscard]] std::optional<double> ohmsFor(double degrees, Felt grounded) const;

 private:
  double rest_;
  double span_;
  double heater_;
};

class BenchLaw {
 public:
  explicit BenchLaw(const BenchPoints& bench);
  [[nodiscard]] double degrees(double ohms, double drive = 1) const;
  [[nodiscard]] double slope(double ohms) const;
  [[nodiscard]] std::optional<double> ohmsFor(double degrees, Felt grounded) const;

 private:
  struct End {
    double u;
    double degrees;
    double slope;
  };
  [[nodiscard]] double at(double u) const;
  double scale_;
  End first_;
  End last_;
  boost::math::interpolators::pchip<std::vector<double>> between_;
};

using NeedleLaw = std::variant<CoilLaw, BimetalLaw, BenchLaw>;
NeedleLaw lawOf(const Movement& movement);
/// gauge::ohmsFor(), with the movement's law where it was made ready before.
std::optional<double> ohmsFor(const Movement& movement, const NeedleLaw& law, double degrees,
                              const Conditions& conditions);

}  // namespace ohmkin::gauge
