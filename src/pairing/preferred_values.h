#pragma once
#include <finding/refusal.h>
#include <quantity/quantity.h>
#include <optional>
#include <string_view>
#include <vector>

/// Preferred numbers of resistors, IEC 60063.
namespace ohmkin::pairing {

enum class Series { e6, e12, e24, e48, e96 };

std::string_view seriesName(Series series);                                        ///< "E24"
Expected<Series> parseSeries(std::string_view text, std::string_view where = {});  ///< "E24", "e96", "24"

/// Mantissas 1 ≤ v < 10, rising.
const std::vector<double>& mantissas(Series series);

/// Rising values from `lowest` to `highest`, both included where they are members. Ohms.
std::vector<double> preferredOhms(Series series, Ohms lowest, Ohms highest);

}  // namespace ohmkin::pairing
