#pragma once
#include <exchange/reading_cell.h>

namespace ohmkin::exchange {

/// A time column's cell in seconds from any start (a day's for clock, 1970's for dates). None where it is not one.
/// ms, s, min, h are plain numbers; clock is h:mm or h:mm:ss, minuteClock m:ss or h:mm:ss, both go on beyond a day;
/// dates take a time of day behind a blank or T. AM and PM are heeded, Z and an offset from it are passed over.
std::optional<double> momentCell(std::string_view cell, ColumnUnit unit, Marks marks);

}  // namespace ohmkin::exchange
