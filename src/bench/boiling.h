#pragma once
#include <finding/refusal.h>
#include <quantity/quantity.h>

/// When plain water boils: the reference of a bench, and the warning beside a hot mark. Coolant with antifreeze boils
/// higher.
namespace ohmkin::bench {

/// Saturation line of water, IAPWS R7-97(2012) region 4, equation 30. Refuses outside 273.15 to 647.096 K.
Expected<Pressure> saturationPressure(Temperature t);
/// The same line backwards, equation 31. Refuses outside 611.213 Pa to 22.064 MPa. Agrees with equation 30 to rounding.
Expected<Temperature> saturationTemperature(Pressure p);

/// Of the boiling point, either way: 3 kPa of weather, 0.28 K a kPa at sea level (a judgement, from memory).
inline constexpr double kWeatherMoves = 0.8;  ///< K

/// ISO 2533:1975 standard atmosphere, gradient layer from −2000 to 11 000 m of geopotential altitude; refused outside.
/// Weather moves the real pressure: kWeatherMoves. Geometric altitude may be put in its place: below 3000 m the boiling
/// point changes by less than 0.005 K.
Expected<Pressure> standardPressure(Length geopotentialAltitude);

/// Pressure at a place of this altitude for one reduced to sea level: reduced back along the standard atmosphere,
/// whatever the weather. Refuses altitudes as standardPressure() does, and a pressure no weather makes.
Expected<Pressure> stationPressure(Pressure reducedToSeaLevel, Length geopotentialAltitude);

/// Where plain water boils in the open, in the standard atmosphere.
Expected<Temperature> boilingAtAltitude(Length geopotentialAltitude);

/// Where plain water boils under a cap that holds so much above ambient; 0 for an open system. Refuses a cap below 0 or
/// an ambient pressure not above 0.
Expected<Temperature> boilingUnderCap(Pressure capAboveAmbient, Pressure ambient = kilopascals(101.325));

}  // namespace ohmkin::bench
