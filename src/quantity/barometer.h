#pragma once
#include <finding/refusal.h>
#include <quantity/quantity.h>
#include <string_view>

/// Altitudes and what a barometer shows, as people type them. Both need their unit: metres and feet differ by three,
/// hectopascals and millimetres of mercury by a quarter.
namespace ohmkin {

/// "1600 m", "5280 ft" (0.3048 m, exact by definition).
Expected<Length> parseAltitude(std::string_view text, std::string_view where = {});

/// "1013 hPa", "1013 mbar", "101.3 kPa", "29.9 inHg", "760 mmHg"; the two last are the conventional columns of NIST SP
/// 811 (2008), table B.8. Refuses what is not above 0.
Expected<Pressure> parseBarometer(std::string_view text, std::string_view where = {});

}  // namespace ohmkin
