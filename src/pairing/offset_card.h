#pragma once
#include <gauge/dial.h>
#include <pairing/error_table.h>
#include <quantity/print.h>
#include <optional>
#include <string>
#include <vector>

/// For a pair that is left as it is: a card for the driver, and the dial the needle would need to tell the truth.
namespace ohmkin::pairing {

struct CardRow {
  Temperature trueTemperature;
  gauge::Reading indicated;
  TemperatureDifference error;
  TemperatureDifference uncertainty;  ///< all of it, k = 2
  std::string shown;                  ///< as a person reads it: "84 °C", "below the first mark"
};

struct OffsetCard {
  std::vector<CardRow> rows;        ///< round temperatures of the unit chosen
  std::optional<CardRow> warmedUp;  ///< at the thermostat's temperature
  std::string driverLine;           ///< "Warmed up with the 91 °C thermostat the needle stands at 84 °C."
  std::vector<std::string> cautions;
};

/// Rows every 5 °C or 10 °F over the part of the dial on the sender's curve. Refuses what errorTable refuses.
Expected<OffsetCard> offsetCard(const gauge::Gauge& gauge, const curve::Curve& sender, const TrimNetwork& trim,
                                std::optional<Temperature> thermostat, const PairOptions& options = {},
                                const DisplayUnits& units = {});

/// The scale the existing needle needs to read true with this sender: numbered marks at round temperatures of the unit,
/// and the old dial's own hot temperature as the hot mark.
struct RemarkedDial {
  gauge::Dial dial;
  bool extrapolated = false;         ///< a mark lies beyond where the sender's curve is established (by up to 25 K)
  std::vector<Temperature> leftOut;  ///< round temperatures at which the needle would lie on a stop
};
/// Refuses where the needle cannot show the hot temperature, or fewer than two marks remain.
Expected<RemarkedDial> remarkedDial(const gauge::Gauge& gauge, const curve::Curve& sender, const TrimNetwork& trim,
                                    const DisplayUnits& units = {});

}  // namespace ohmkin::pairing
