#pragma once
#include <string>
#include <string_view>

namespace ohmkin::exchange {

/// Text of a hostile file made fit for a terminal: in quotes, at most 60 bytes of it, control characters and broken
/// UTF-8 as \xNN.
std::string shown(std::string_view text);

/// Where `text` stops being UTF-8 (Unicode 15, table 3-7), or npos where it is sound.
std::size_t brokenUtf8At(std::string_view text);

}  // namespace ohmkin::exchange
