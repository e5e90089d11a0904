#pragma once
#include <pairing/error_table.h>
#include <pairing/pair.h>

/// The uncertainty budget of one error by first-order propagation (JCGM 100, 5.1.2): standard uncertainties, k = 1,
/// kelvin.
namespace ohmkin::pairing {

struct Budget {
  double curves = 0;  ///< how well the sender's curve and, where the movement is unknown, the family's are known
  double resistors = 0;
  double senderTolerance = 0;
  double gaugeTolerance = 0;
  double cluster = 0;
  double supply = 0;
  double location = 0;

  [[nodiscard]] double mismatch() const;
  [[nodiscard]] double shared() const;
};

Budget budgetAt(const Pair& pair, double kelvin, const PairOptions& options);

/// Standard uncertainty of ln R; past the ends of the curve that at the end.
double knowledgeNear(const curve::Curve& curve, double kelvin);

/// True where the needle of this gauge moves with the supply under these conditions.
bool supplyActs(const gauge::Gauge& gauge, const gauge::Conditions& conditions);

Uncertainty expanded(const Budget& budget);  ///< k = 2

}  // namespace ohmkin::pairing
