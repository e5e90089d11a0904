#pragma once
#include <finding/finding.h>
#include <finding/refusal.h>
#include <quantity/quantity.h>
#include <optional>
#include <string>
#include <variant>
#include <vector>

/// The ohmmeter on the bench: how far its reading may be trusted, what its leads add, and how much it warms the sender.
namespace ohmkin::bench {

/// A digital meter drives the same current whatever it measures, up to the end of the range.
struct SteadyCurrent {
  Amperes current;
};
/// A moving-coil ohmmeter is a cell behind its mid-scale resistance.
struct CellAndResistance {
  Volts cell;
  Ohms midScale;
};
/// Not known: then nothing is said of self-heating but that it is not known.
using TestSource = std::variant<std::monostate, SteadyCurrent, CellAndResistance>;

/// One range as its data sheet has it: ±(ofReading · reading + counts · resolution), taken as limits.
struct MeterRange {
  Ohms fullScale;        ///< largest value shown; above 0
  Ohms resolution;       ///< one count; above 0, at most fullScale
  double ofReading = 0;  ///< 0.012 for 1.2 %; 0 to below 1
  double counts = 0;     ///< last digits; 0 or above
  TestSource source;
};

/// The test leads held together, read on the same range.
struct LeadZero {
  Ohms shorted;              ///< 0 where the meter has taken them off itself (relative, null)
  Ohms standardUncertainty;  ///< of the leads and their contacts from one touch to the next; 0 or above
};

/// Rounded off three 1 m copper leads and two probe tips pressed by hand. From memory, no source.
inline const LeadZero kLeadsNotZeroed{ohms(0.2), ohms(0.12)};

class Meter {
 public:
  /// Ranges in any order. Refuses none at all, or numbers outside what MeterRange says.
  static Expected<Meter> make(std::string name, std::vector<MeterRange> ranges);
  [[nodiscard]] const std::string& name() const { return name_; }
  [[nodiscard]] const std::vector<MeterRange>& ranges() const { return ranges_; }  ///< by rising full scale
  /// The lowest range that shows so much; none above the highest.
  [[nodiscard]] const MeterRange* rangeFor(Ohms shown) const;

 private:
  Meter(std::string name, std::vector<MeterRange> ranges) : name_(std::move(name)), ranges_(std::move(ranges)) {}
  std::string name_;
  std::vector<MeterRange> ranges_;
};

/// From memory, no source: what is common on a bench, for a shop that has not written down its own meter. Flagged in
/// every reading taken with one.
Meter usualDigitalMeter();     ///< 3½ digits: 200 Ω, 2 kΩ, 20 kΩ at 0.8 % + 3 counts (200 Ω: + 5); 1, 0.4, 0.07 mA
Meter usualMovingCoilMeter();  ///< 5 % of reading read to 1 Ω below 200 Ω; 1.5 V behind 20 Ω (×1) and behind 200 Ω
                               ///< (×10)

/// Where the sender hangs while it is measured: how much warmer than its surroundings a watt makes it.
enum class Surroundings { stirredWater, stillAir };
/// W/K. 0.15 in stirred water (assumed all through this project), 0.01 in still air; both from memory, no source.
double dissipation(Surroundings surroundings);

/// A reading with what is known of it. `u` is a standard uncertainty (k = 1): limits of the data sheet and of half a
/// count are taken as rectangular, a/√3 (JCGM 100:2008, 4.3.7), and the leads are added in quadrature.
struct MeterReading {
  Ohms ohms;  ///< leads taken off
  Ohms u;
  std::optional<TemperatureDifference> selfHeating;  ///< sender above its bath; none where the source is not known
  std::vector<Finding> findings;
  [[nodiscard]] double uLnOhms() const { return inOhms(u) / inOhms(ohms); }  ///< relative, as curve::Sample wants it
};

/// Refuses what no range shows, a value not above 0, or leads that leave nothing. Findings: self-heating of 0.1 K and
/// more, leads that are more than 1 % of the reading, an uncertainty above 2 %.
Expected<MeterReading> read(const Meter& meter, Ohms shown, const LeadZero& leads,
                            Surroundings surroundings = Surroundings::stirredWater);

/// What the meter says when it shows its overload sign: only that the sender has more ohms than the range. On the
/// highest range a sender's element or its ground is open. Never a number. `range` counts in Meter::ranges(); none: the
/// highest (autoranging). Refuses a range the meter does not have.
Expected<Finding> overload(const Meter& meter, std::optional<std::size_t> range = {});

}  // namespace ohmkin::bench
