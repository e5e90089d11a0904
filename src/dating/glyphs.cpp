#include <dating/glyphs.h>
#include <algorithm>

namespace ohmkin::dating {
namespace {

using Pairs = std::string_view;  ///< two characters a pair

/// Worn, shallow or badly cast characters taken for one another, and single ones set upside down in the mould (6 9, M
/// W); the last four are figures and letters typed for each other. General trade knowledge from memory, no source.
constexpr Pairs kLookAlikes =
    "3817690D2Z5608CGEFMW"
    "0O1I5S8B";

/// Half a turn: what a character looks like upside down, both ways round.
constexpr Pairs kUpsideDown = "0011225588HHIINNOOSSXXZZ..--//**69MW7L3E()";

/// What a mirrored character may be taken for, besides itself.
constexpr Pairs kMirrored = "253EJL";

void add(std::array<Likeness, 128>& at, char c, Likeness likeness) { at[static_cast<unsigned char>(c)] = likeness; }

/// Calls f(other) for every character paired with c.
template <class F>
void eachPartner(Pairs pairs, char c, F f) {
  for (std::size_t i = 0; i + 1 < pairs.size(); i += 2) {
    if (pairs[i] == c) f(pairs[i + 1]);
    if (pairs[i + 1] == c && pairs[i] != c) f(pairs[i]);
  }
}

std::array<Likeness, 128> anyCharacter() {
  std::array<Likeness, 128> at{};
  for (char c = '!'; c <= '~'; ++c)
    if (c != '?') add(at, c, Likeness::filled);
  return at;
}

std::array<Likeness, 128> likenesses(char c, Turned turned, bool lookAlikes) {
  if (c == '?') return anyCharacter();
  std::array<Likeness, 128> at{};
  if (c == kForeign) return at;
  const auto same = [&](char other) { add(at, other, Likeness::same); };
  switch (turned) {
    case Turned::upright:
      if (lookAlikes) eachPartner(kLookAlikes, c, [&](char other) { add(at, other, Likeness::lookAlike); });
      same(c);
      break;
    case Turned::upsideDown:
      eachPartner(kUpsideDown, c, same);
      break;
    case Turned::mirrored:
      eachPartner(kMirrored, c, same);
      same(c == '(' ? ')' : c == ')' ? '(' : c);
      break;
  }
  return at;
}

/// Bytes of the UTF-8 character at the front; 1 for a byte that begins none.
std::size_t bytesOfFirst(std::string_view text) {
  const auto lead = static_cast<unsigned char>(text.front());
  const std::size_t length = lead < 0xC2 ? 1 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : lead < 0xF5 ? 4 : 1;
  if (length > text.size()) return 1;
  for (std::size_t i = 1; i < length; ++i)
    if ((static_cast<unsigned char>(text[i]) & 0xC0U) != 0x80U) return 1;
  return length;
}

/// The character as a glyph; 0 for a space.
char glyphOf(std::string_view character) {
  if (character == "\u00B7" || character == "\u2022" || character == "\u2219") return '.';
  if (character == "\u2010" || character == "\u2011" || character == "\u2012" || character == "\u2013" ||
      character == "\u2014")
    return '-';
  if (character == "\u00A0") return 0;
  if (character.size() > 1) return kForeign;
  const char c = character.front();
  if (c == ' ' || ('\t' <= c && c <= '\r')) return 0;
  if ('a' <= c && c <= 'z') return static_cast<char>(c - 'a' + 'A');
  return '!' <= c && c <= '~' ? c : kForeign;
}

}  // namespace

SeenText seen(std::string_view text) {
  SeenText result;
  bool space = false;
  while (!text.empty()) {
    const std::string_view character = text.substr(0, bytesOfFirst(text));
    text.remove_prefix(character.size());
    const char glyph = glyphOf(character);
    if (glyph == 0) {
      space = true;
      continue;
    }
    const bool damaged = character.size() == 1 && static_cast<unsigned char>(character.front()) >= 0x80;
    const bool control = glyph == kForeign && character.size() == 1 && !damaged;
    const std::string_view shown = damaged || control ? "\uFFFD" : character;
    if (glyph == kForeign && result.foreign.empty()) result.foreign = shown;
    result.lowerCase |= 'a' <= character.front() && character.front() <= 'z';
    if (space && !result.glyphs.empty()) result.plain += ' ';
    result.spaceBefore.push_back(space && !result.glyphs.empty());
    result.plain += shown;
    result.glyphs += glyph;
    space = false;
  }
  return result;
}

Sight sight(const SeenText& text, Turned turned, bool lookAlikes) {
  Sight result;
  for (const char glyph : text.glyphs) result.at.push_back(likenesses(glyph, turned, lookAlikes));
  result.spaceBefore = text.spaceBefore;
  if (turned == Turned::upright || text.glyphs.empty()) return result;
  std::ranges::reverse(result.at);
  // A space before the second character stands before the last once the order is reversed.
  std::reverse(result.spaceBefore.begin() + 1, result.spaceBefore.end());
  return result;
}

Sight blurred(Sight sight, std::size_t place) {
  sight.at[place] = anyCharacter();
  return sight;
}

}  // namespace ohmkin::dating
