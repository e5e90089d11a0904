#pragma once
#include <gauge/movement.h>
#include <Eigen/Dense>
#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

/// A crossed-coil gauge as a circuit, solved by Kirchhoff's current law at its nodes: the independent side of the
/// tests. Nodes: feed post, sender post, gauge ground post; the battery feeds through `feedOhms`, the gauge ground
/// reaches the chassis through `groundOhms`, into which other loads may push a current; the sender hangs between sender
/// post and chassis.
namespace ohmkin::test {

enum Post { kFeed = 0, kSender = 1, kGround = 2 };

struct Coil {
  Post from;
  Post to;
  double ohms;
  Eigen::Vector2d fieldPerAmpere;  ///< x to the right, y up on the dial
};

struct NodalGauge {
  std::vector<Coil> coils;
  double shunt[3][3] = {};  ///< ohms between posts, 0 for none; upper half used
  double feedOhms = 0;
  double groundOhms = 0;
  double loadAmperes = 0;
  Eigen::Vector2d constantField{0, 0};

  [[nodiscard]] Eigen::Vector2d field(double senderOhms, double supply = 12) const {
    Eigen::Matrix3d conductance = Eigen::Matrix3d::Zero();
    Eigen::Vector3d current(0, 0, loadAmperes);
    const auto join = [&](int a, int b, double siemens) {
      conductance(a, a) += siemens;
      conductance(b, b) += siemens;
      conductance(a, b) -= siemens;
      conductance(b, a) -= siemens;
    };
    for (const Coil& coil : coils) join(coil.from, coil.to, 1 / coil.ohms);
    for (int a = 0; a < 3; ++a)
      for (int b = a + 1; b < 3; ++b)
        if (shunt[a][b] > 0) join(a, b, 1 / shunt[a][b]);
    // No ohms: the node's voltage is given instead of its sum of currents.
    const auto tie = [&](int node, double ohms, double volts) {
      if (ohms > 0) {
        conductance(node, node) += 1 / ohms;
        current(node) += volts / ohms;
      } else {
        conductance.row(node) = Eigen::RowVector3d::Unit(node);
        current(node) = volts;
      }
    };
    tie(kFeed, feedOhms, supply);
    tie(kSender, senderOhms, 0);
    tie(kGround, groundOhms, 0);
    const Eigen::Vector3d at = conductance.fullPivLu().solve(current);
    Eigen::Vector2d sum = constantField;
    for (const Coil& coil : coils) sum += coil.fieldPerAmpere * (at(coil.from) - at(coil.to)) / coil.ohms;
    return sum;
  }

  /// Needle angle, clockwise from straight up.
  [[nodiscard]] double degrees(double senderOhms, double volts = 12) const {
    return degreesOf(field(senderOhms, volts));
  }
  static double degreesOf(const Eigen::Vector2d& field) {
    return std::atan2(field.x(), field.y()) * 180 / std::numbers::pi;
  }
};

inline double turned(double degrees) { return std::remainder(degrees, 360.0); }

/// The three numbers as a person finds them at the posts: lead grounded, lead open, and one resistor.
inline gauge::CrossedCoil measured(double grounded, double open, double resistor, double withResistor) {
  constexpr double radian = std::numbers::pi / 180;
  const double sweep = turned(open - grounded);
  const double part = turned(withResistor - grounded);
  const double x = std::sin(part * radian) / std::sin((sweep - part) * radian);
  return {{grounded}, {sweep}, ohms(resistor / x), {}, {}, {}};
}

inline gauge::CrossedCoil measured(const NodalGauge& gauge, double resistor = 100) {
  return measured(gauge.degrees(0), gauge.degrees(std::numeric_limits<double>::infinity()), resistor,
                  gauge.degrees(resistor));
}

}  // namespace ohmkin::test
