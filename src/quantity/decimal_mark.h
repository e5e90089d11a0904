#pragma once
#include <string>

/// How decimals are written by print.h, for a person who reads a language that writes them with a comma. The point
/// unless something else is said; the window says it once at its start, the terminal and JSON never. Reading
/// (parse.h) takes both, always.
namespace ohmkin {

enum class DecimalMark { point, comma };
void writeDecimalsWith(DecimalMark mark);               ///< for the whole program; before the first number is printed
std::string fixedDecimals(double value, int decimals);  ///< "4.70", or "4,70"

}  // namespace ohmkin
