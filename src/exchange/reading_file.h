#pragma once
#include <exchange/complaints.h>
#include <filesystem>
#include <optional>
#include <quantity/parse.h>
#include <string>
#include <vector>

/// Readings of one sender from a plain CSV file: a header line, then a reading a line.
namespace ohmkin::exchange {

struct FileReading {
  Temperature at;
  Ohms ohms;
  bool cooling = false;
};

/// Columns by their headings, in any order: temperature (or temp, t, with _c, _f, _k or °C, °F, K for the unit), ohms (or r, resistance,
/// with k for kΩ), and where it is there direction (heating, cooling). A temperature column without a unit is in `bare`.
/// Either every line is read, or the complaints name file:line:column of each that is not; nothing is left out silently.
tl::expected<std::vector<FileReading>, Complaints> readReadings(std::string_view text, const std::string& file, TemperatureUnit bare);

inline constexpr std::size_t kLargestReadingFile = 16U << 20U;  ///< bytes
inline constexpr std::size_t kMostReadings = 100'000;

}  // namespace ohmkin::exchange
