#pragma once
#include <exchange/reading_rows.h>

namespace ohmkin::exchange {

/// heating, up, rising, warming, h, ↑ — cooling, down, falling, c, ↓; none for other words.
std::optional<Run> runWord(std::string_view word);

}  // namespace ohmkin::exchange
