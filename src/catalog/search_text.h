#pragma once
#include <catalog/search.h>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Inside this room only: what of a text counts when it is compared, and how near one word is to another.
namespace ohmkin::catalog {

/// Letters and digits of a text: lower case, without accents, ligatures taken apart; UTF-8. Signs and broken bytes are
/// left out.
struct FoldedText {
  std::string letters;              ///< of the whole text, blanks left out too
  std::vector<std::string> words;   ///< parted by blanks, as typed: "10.1 lamp" → 101, lamp
  std::vector<std::string> pieces;  ///< parted by signs too: 10, 1, lamp
  struct Origin {
    std::size_t begin = 0;
    std::size_t end = 0;
    bool startsWord = false;   ///< after a blank
    bool startsPiece = false;  ///< after a blank or sign
  };
  std::vector<Origin> origins;  ///< for each byte of `letters` the bytes of the text it comes from
};
FoldedText fold(std::string_view text);

/// What was typed.
struct Typed {
  std::string joined;              ///< all of it as one number
  std::vector<std::string> words;  ///< each once
  [[nodiscard]] bool empty() const { return joined.empty(); }
};
Typed typed(std::string_view text);

inline constexpr std::size_t kLettersForInside = 3;
inline constexpr std::size_t kLettersForOneOff = 4;
inline constexpr std::size_t kLettersForTwoOff = 8;

/// How many letters of it may be off.
std::size_t lettersThatMayBeOff(std::string_view needle);
std::size_t characters(std::string_view utf8);

/// Letters to put in, leave out, exchange, or swap with their neighbour, to get from one to the other; none where that
/// is more than `most` (at most 2).
std::optional<std::size_t> lettersOff(std::string_view a, std::string_view b, std::size_t most);

/// Which letters and digits occur; two words at most k letters apart differ in k of them at most, either way.
std::uint64_t letterSet(std::string_view word);

/// How `needle` matches a word of a field, or a field as a whole.
enum class Against { whole, word };
std::optional<MatchedHow> matchOf(std::string_view needle, std::string_view term, Against against);

std::vector<MatchedSpan> spansIn(const Typed& typed, std::string_view text);

/// A match's worth: smaller is better. How it matched counts before what was matched.
inline constexpr std::uint32_t kFieldsApart = 16;
static_assert(kSearchFields <= kFieldsApart);
constexpr std::uint32_t scoreOf(MatchedHow how, SearchField field) {
  return static_cast<std::uint32_t>(how) * kFieldsApart + static_cast<std::uint32_t>(field);
}
constexpr MatchedHow howOf(std::uint32_t score) { return static_cast<MatchedHow>(score / kFieldsApart); }
constexpr SearchField fieldOf(std::uint32_t score) { return static_cast<SearchField>(score % kFieldsApart); }
inline constexpr std::uint32_t kNoScore = 0xFFFF;

}  // namespace ohmkin::catalog
