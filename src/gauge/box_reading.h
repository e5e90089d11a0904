#pragma once
#include <gauge/movement.h>

/// On the bench: a decade box in the sender's place, the gauge fed and warm, the needle read against a
/// protractor (or against marks, whose angles the dial knows).
namespace ohmkin::gauge {

/// How the needle stood.
enum class Rests {
  free,
  onRightStop,  ///< it would have gone on clockwise
  onLeftStop    ///< it would have gone on anticlockwise
};

struct BoxReading {
  Ohms box;                ///< 0 for a grounded lead, infinite for an open one
  Angle needle;            ///< that of the stop, where it rests on one
  double uncertainty = 1;  ///< standard, degrees: reading and friction
  Rests rests = Rests::free;
  Volts supply = volts(kStandardVolts);  ///< at the gauge's feed; matters to a coil with a return magnet only
};

/// Those with the needle free. Refuses a reading that is no number, ohms below 0 and an uncertainty not above 0.
Expected<std::vector<BoxReading>> freeReadings(const std::vector<BoxReading>& readings);

/// Bench points through the free readings, repeats at the same ohms averaged: no law assumed, so nothing is smoothed.
/// Refuses fewer than four points and a needle that turns to and fro.
Expected<BenchPoints> benchPointsOf(const std::vector<BoxReading>& readings);

}  // namespace ohmkin::gauge
