#pragma once
#include <curve/assumed_tolerance.h>
#include <curve/curve.h>
#include <finding/refusal.h>
#include <gauge/gauge.h>
#include <pairing/trim_network.h>
#include <quantity/quantity.h>
#include <cstddef>
#include <optional>
#include <variant>
#include <vector>

/// What the needle shows against what is true, for one gauge with one sender. True is the coolant at the sender's tip;
/// error = indicated − true, so below 0 reads low, the dangerous way. Uncertainties are expanded, k = 2 (JCGM 100).
namespace ohmkin::pairing {

/// How well the rest is known: half-widths of rectangular distributions (JCGM 100, 4.3.7). Defaults are judgements.
struct Inputs {
  std::optional<double> senderTolerance;  ///< of ohms, as a part; none: curve::kAssumedTolerance is taken and flagged
  double resistorTolerance = 0.01;        ///< of trim resistors, as a part
  double gaugeTolerance = 0.05;           ///< as a part of the dial's marked span; a good gauge may be 5 to 10 % out
  TemperatureDifference cluster = kelvins(20);  ///< of the cluster's temperature around options.conditions.cluster
  TemperatureDifference location = kelvins(2);  ///< coolant at the sender's tip against the coolant that matters
  Volts supply = volts(1.5);  ///< around options.conditions.supply; acts on unregulated movements only
};

struct PairOptions {
  Inputs inputs;
  /// The sender is of the gauge's own family: both use one curve, and how well it is known cancels.
  bool sameFamily = false;
  gauge::Conditions conditions;
  std::size_t rows = 60;  ///< temperatures in the table, both ends of the band included; at least 2
  /// How far past its established end the sender's curve may be continued to find where the hot mark is met. Said in
  /// the answer.
  TemperatureDifference reach = kelvins(25);
};

/// Expanded (k = 2) uncertainty of an error, in two parts: what the verdict looks at and what every candidate shares.
struct Uncertainty {
  TemperatureDifference mismatch;  ///< how well the curves are known, and the trim resistors' tolerance
  TemperatureDifference shared;    ///< tolerance of sender and gauge, location, cluster temperature, supply
  [[nodiscard]] TemperatureDifference total() const;  ///< root of the sum of squares
};

struct ErrorRow {
  Temperature trueTemperature;
  gauge::Reading indicated;
  TemperatureDifference error;  ///< indicated − true; off the marks the scale is continued, indicated.where says so
  Uncertainty uncertainty;
  bool extrapolated = false;  ///< the sender's curve is continued here beyond where it is established
};

/// True temperature when the needle reaches the hot mark.
struct Reaches {
  Temperature at;
  TemperatureDifference late;  ///< minus the same for the matched pair; above 0 is late, the dangerous way
  Uncertainty uncertainty;     ///< of `late`; what the matched pair shares (gauge, location, cluster) cancels
  bool extrapolated = false;   ///< the sender's curve had to be continued to say so
};
/// The needle is still below the mark where the sender's curve ends.
struct NeverReaches {
  Temperature curveEnds;
  TemperatureDifference atLeastLate;
};
/// The needle is past the mark already where the sender's curve begins.
struct PastAlready {
  Temperature curveBegins;
  TemperatureDifference atLeastEarly;  ///< above 0
};
using HotWarning = std::variant<Reaches, NeverReaches, PastAlready>;

/// Below what anyone can read or set, K: a needle this late or early is on time.
inline constexpr double kOnTime = 0.05;

/// Whether the warning comes early or late, as far as the curves are known (k = 2).
enum class HotSign {
  onTime,     ///< same family, or within kOnTime and known as well
  early,      ///< safe
  late,       ///< dangerous
  notSettled  ///< the curves are not known well enough to tell
};

struct Extreme {
  TemperatureDifference error;
  Temperature at;
  Uncertainty uncertainty;
};

struct ErrorTable {
  TrimNetwork trim;
  TemperatureSpan asked;    ///< band as given
  TemperatureSpan covered;  ///< the part of it on the sender's curve; rows lie here
  std::vector<ErrorRow> rows;
  Extreme worst;        ///< largest |error| over the covered band, between rows too
  Extreme low;          ///< most negative error (may be above 0 where nothing reads low)
  Extreme high;         ///< most positive error (may be below 0)
  Temperature hotMark;  ///< as printed, or as the dial was found to mean
  HotWarning hot;
  HotSign hotSign = HotSign::notSettled;
  bool backwards = false;  ///< the needle falls as the coolant warms: the sender turns the other way than the family
  bool senderToleranceAssumed = false;
  bool movementAssumed = false;  ///< movement unknown: the gauge is taken to be true for its own family
  PairOptions options;

  /// True where a part of the band asked for is not on the sender's curve.
  [[nodiscard]] bool partial() const { return covered != asked; }
};

/// The table's temperatures, kelvin: both ends and evenly between. `count` is at least 2.
std::vector<double> evenly(TemperatureSpan span, std::size_t count);

/// The part of a band on the sender's curve. Refuses a band reversed, empty or not finite, and one that does not meet
/// the curve.
Expected<TemperatureSpan> coveredPart(TemperatureSpan band, const curve::Curve& sender);

/// Refuses what coveredPart() refuses, fewer than two rows, uncertainties below 0, and a network the gauge cannot take.
/// Costs about 0.1 µs a row and evaluation of the gauge.
Expected<ErrorTable> errorTable(const gauge::Gauge& gauge, const curve::Curve& sender, const TrimNetwork& trim,
                                TemperatureSpan band, const PairOptions& options = {});

}  // namespace ohmkin::pairing
