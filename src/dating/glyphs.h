#pragma once
#include <dating/decode.h>
#include <array>
#include <cstdint>

/// What each character of a code may really be. Inner header of the room.
namespace ohmkin::dating {

/// Characters seen, in capitals, without spaces.
struct SeenText {
  std::string plain;              ///< trimmed, single spaces, as typed; damaged UTF-8 shown as U+FFFD
  std::string glyphs;             ///< one byte each: printable ASCII, `?` unreadable, kForeign for anything else
  std::vector<bool> spaceBefore;  ///< one for each glyph
  bool lowerCase = false;
  std::string foreign;  ///< first character that no layout can hold, as typed
};
inline constexpr char kForeign = '\x01';

/// Reads any bytes. Raised and bold dots count as stops, dashes as hyphens.
SeenText seen(std::string_view text);

enum class Likeness : std::uint8_t { none, same, lookAlike, filled };

/// For each place, how well each ASCII character explains what is seen there.
struct Sight {
  std::vector<std::array<Likeness, 128>> at;
  std::vector<bool> spaceBefore;
};

Sight sight(const SeenText& text, Turned turned, bool lookAlikes);

/// The same with one character taken as unreadable.
Sight blurred(Sight sight, std::size_t place);

}  // namespace ohmkin::dating
