#pragma once
#include <quantity/date.h>
#include <quantity/quantity.h>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace ohmkin::workflow {

/// What the person knows about this vehicle, that engine and the sender in hand. Every field may be unknown; nothing is
/// guessed into it. Names are as typed: the match use case looks them up and complains with near misses.
struct Question {
  std::string line;                  ///< vehicle line, by id, name or another name people use
  std::optional<ModelYear> year;     ///< model year, not calendar year
  std::optional<Date> built;         ///< build date of the vehicle
  std::optional<int> serial;         ///< number part of the vehicle's serial
  std::string cluster;               ///< cluster option: "gauge package"
  std::string gauge;                 ///< gauge id, where the dash is not original or the person read it off
  std::optional<bool> dashOriginal;  ///< false: the cluster of the line says nothing

  std::string engine;       ///< engine family, by id or name
  std::string casting;      ///< casting number of head, intake or housing
  std::string castingDate;  ///< date code in the casting, as read; ? for what cannot be read
  std::optional<Date> engineBuilt;

  std::string portThread;                              ///< seen at the port
  std::string portLocation;                            ///< where on the engine
  std::string terminal;                                ///< at the wire end
  std::string fitted;                                  ///< part number of the sender in the head now
  std::vector<std::pair<Temperature, Ohms>> readings;  ///< measured on the sender in hand
  std::optional<TemperatureSpan> band;  ///< where the person looks; default: 11 K below the thermostat to the hot mark
};

}  // namespace ohmkin::workflow
