#pragma once
#include <sheet/lettering.h>

#include <cstdint>

namespace ohmkin::sheet {

/// Ems from this character to the next; a whole em for characters not in the table.
double advance(char32_t character, Weight weight);

}  // namespace ohmkin::sheet
