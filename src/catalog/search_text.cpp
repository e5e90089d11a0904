#include <catalog/search_text.h>
#include <algorithm>
#include <array>
#include <bit>

namespace ohmkin::catalog {
namespace {

enum class Sort { letters, sign, blank, nothing };

struct Character {
  Sort sort = Sort::sign;
  std::size_t bytes = 1;       // of the text
  std::string_view letters{};  // what it counts as; empty: `codePoint` itself
  char32_t codePoint = 0;
};

/// U+00C0 … U+00FF and U+0100 … U+017F without their marks.
constexpr std::array<std::string_view, 64> kLatin1{
    "a", "a", "a", "a", "a", "a", "ae", "c", "e",  "e",  "e", "e", "i", "i", "i", "i", "d",  "n", "o",  "o", "o", "o",
    "o", "x", "o", "u", "u", "u", "u",  "y", "th", "ss", "a", "a", "a", "a", "a", "a", "ae", "c", "e",  "e", "e", "e",
    "i", "i", "i", "i", "d", "n", "o",  "o", "o",  "o",  "o", "",  "o", "u", "u", "u", "u",  "y", "th", "y"};
struct Run {
  char32_t until;
  std::string_view letters;
};
constexpr std::array<Run, 22> kLatinA{
    {{0x106, "a"}, {0x10E, "c"}, {0x112, "d"}, {0x11C, "e"}, {0x124, "g"}, {0x128, "h"},  {0x132, "i"}, {0x134, "ij"},
     {0x136, "j"}, {0x139, "k"}, {0x143, "l"}, {0x14C, "n"}, {0x152, "o"}, {0x154, "oe"}, {0x15A, "r"}, {0x162, "s"},
     {0x168, "t"}, {0x174, "u"}, {0x176, "w"}, {0x179, "y"}, {0x17F, "z"}, {0x180, "s"}}};

/// The character beginning here; a byte that begins none is a sign.
Character decoded(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char first = byte(at);
  Character c;
  if (first < 0x80) {
    c.codePoint = first;
    return c;
  }
  const std::size_t length = first >= 0xF0 && first < 0xF5 ? 4 : first >= 0xE0 ? 3 : first >= 0xC2 ? 2 : 0;
  if (length == 0 || first >= 0xF5 || at + length > text.size()) return c;
  char32_t point = first & (0xFFU >> (length + 1));
  for (std::size_t i = 1; i < length; ++i) {
    if ((byte(at + i) & 0xC0U) != 0x80U) return c;
    point = (point << 6U) | (byte(at + i) & 0x3FU);
  }
  const bool tooLong = (length == 3 && point < 0x800) || (length == 4 && point < 0x10000);
  if (tooLong || (point >= 0xD800 && point < 0xE000) || point > 0x10FFFF) return c;
  c.codePoint = point;
  c.bytes = length;
  return c;
}

std::string_view withoutMarks(char32_t point) {
  switch (point) {
    case 0xB2:
      return "2";
    case 0xB3:
      return "3";
    case 0xB5:
      return "u";
    case 0xB9:
      return "1";
    case 0xBC:
      return "14";
    case 0xBD:
      return "12";
    case 0xBE:
      return "34";
    default:
      break;
  }
  if (point >= 0xC0 && point < 0x100) return kLatin1[point - 0xC0];
  for (const Run& run : kLatinA)
    if (point < run.until) return point < 0x100 ? std::string_view() : run.letters;
  return {};
}

char32_t lowered(char32_t point) {
  if (point == 0x2126) return 0x3C9;  // the ohm sign is an omega
  if ((point >= 0x391 && point <= 0x3A9) || (point >= 0x410 && point <= 0x42F)) return point + 0x20;
  if (point >= 0x400 && point <= 0x40F) return point + 0x50;
  return point;
}

bool isBlank(char32_t point) {
  return point == ' ' || (point >= 0x09 && point <= 0x0D) || point == 0xA0 || (point >= 0x2000 && point <= 0x200A) ||
         point == 0x202F || point == 0x3000;
}

Character characterAt(std::string_view text, std::size_t at) {
  static constexpr std::string_view kPlain = "abcdefghijklmnopqrstuvwxyz0123456789";
  Character c = decoded(text, at);
  const char32_t point = c.codePoint;
  if (isBlank(point)) {
    c.sort = Sort::blank;
  } else if (point < 0x80) {
    const bool upper = point >= 'A' && point <= 'Z';
    const char32_t lower = upper ? point + 0x20 : point;
    if (lower >= 'a' && lower <= 'z') c.letters = kPlain.substr(lower - 'a', 1);
    else if (point >= '0' && point <= '9') c.letters = kPlain.substr(26 + point - '0', 1);
    c.sort = c.letters.empty() ? Sort::sign : Sort::letters;
  } else if (point < 0x180) {
    c.letters = withoutMarks(point);
    c.sort = c.letters.empty() ? Sort::sign : Sort::letters;
  } else if ((point >= 0x300 && point < 0x370) || point == 0x200B || point == 0xFEFF) {
    c.sort = Sort::nothing;  // a mark of the letter before it
  } else if (point >= 0x2000 && point < 0x2070) {
    c.sort = Sort::sign;
  } else {
    c.codePoint = lowered(point);
    c.sort = Sort::letters;
  }
  return c;
}

void appendUtf8(std::string& out, char32_t point) {
  const auto byte = [&](char32_t b) { out += static_cast<char>(static_cast<unsigned char>(b)); };
  if (point < 0x800) {
    byte(0xC0U | (point >> 6U));
  } else if (point < 0x10000) {
    byte(0xE0U | (point >> 12U));
    byte(0x80U | ((point >> 6U) & 0x3FU));
  } else {
    byte(0xF0U | (point >> 18U));
    byte(0x80U | ((point >> 12U) & 0x3FU));
    byte(0x80U | ((point >> 6U) & 0x3FU));
  }
  byte(0x80U | (point & 0x3FU));
}

std::u32string codePoints(std::string_view utf8) {
  std::u32string points;
  for (std::size_t at = 0; at < utf8.size();) {
    const Character c = decoded(utf8, at);
    points += c.codePoint;
    at += c.bytes;
  }
  return points;
}

bool ascii(std::string_view text) {
  return std::none_of(text.begin(), text.end(), [](char c) { return static_cast<unsigned char>(c) > 127; });
}

constexpr std::size_t kMostOff = 2;

/// Rows of the table of distances, only as wide as what may be off.
template <class Text>
std::optional<std::size_t> banded(const Text& a, const Text& b, std::size_t most) {
  const std::size_t difference = a.size() > b.size() ? a.size() - b.size() : b.size() - a.size();
  if (difference > most || most > kMostOff) return {};
  constexpr std::size_t kWidth = 2 * kMostOff + 1;
  constexpr std::size_t kFar = kMostOff + 1;
  // Column d of a row is b's place i + d − kMostOff.
  std::array<std::size_t, kWidth> before{}, above{}, row{};
  above.fill(kFar);
  before.fill(kFar);
  for (std::size_t j = 0; j <= kMostOff; ++j) above[j + kMostOff] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row.fill(kFar);
    std::size_t least = kFar;
    for (std::size_t d = 0; d < kWidth; ++d) {
      if (i + d < kMostOff || i + d - kMostOff > b.size()) continue;
      const std::size_t j = i + d - kMostOff;
      std::size_t best = d + 1 < kWidth ? above[d + 1] + 1 : kFar;
      if (d > 0) best = std::min(best, row[d - 1] + 1);
      if (j > 0) best = std::min(best, above[d] + (a[i - 1] == b[j - 1] ? 0U : 1U));
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) best = std::min(best, before[d] + 1);
      row[d] = std::min(best, kFar);
      least = std::min(least, row[d]);
    }
    if (least > most) return {};
    before = above;
    above = row;
  }
  const std::size_t off = above[b.size() + kMostOff - a.size()];
  if (off > most) return {};
  return off;
}

}  // namespace

FoldedText fold(std::string_view text) {
  FoldedText folded;
  bool newWord = true;
  bool newPiece = true;
  for (std::size_t at = 0; at < text.size();) {
    const Character c = characterAt(text, at);
    if (c.sort == Sort::blank) newWord = newPiece = true;
    if (c.sort == Sort::sign) newPiece = true;
    if (c.sort == Sort::letters) {
      std::string bytes(c.letters);
      if (bytes.empty()) appendUtf8(bytes, c.codePoint);
      if (newWord) folded.words.emplace_back();
      if (newPiece) folded.pieces.emplace_back();
      folded.letters += bytes;
      folded.words.back() += bytes;
      folded.pieces.back() += bytes;
      for (std::size_t i = 0; i < bytes.size(); ++i)
        folded.origins.push_back({at, at + c.bytes, newWord && i == 0, newPiece && i == 0});
      newWord = newPiece = false;
    }
    if (c.sort == Sort::nothing && !folded.origins.empty() && !newPiece) folded.origins.back().end = at + c.bytes;
    at += c.bytes;
  }
  return folded;
}

Typed typed(std::string_view text) {
  FoldedText folded = fold(text);
  Typed t;
  t.joined = std::move(folded.letters);
  t.words = std::move(folded.words);
  std::sort(t.words.begin(), t.words.end());
  t.words.erase(std::unique(t.words.begin(), t.words.end()), t.words.end());
  return t;
}

std::size_t characters(std::string_view utf8) {
  return static_cast<std::size_t>(
      std::count_if(utf8.begin(), utf8.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

std::size_t lettersThatMayBeOff(std::string_view needle) {
  const std::size_t n = characters(needle);
  return n >= kLettersForTwoOff ? 2 : n >= kLettersForOneOff ? 1 : 0;
}

std::optional<std::size_t> lettersOff(std::string_view a, std::string_view b, std::size_t most) {
  if (ascii(a) && ascii(b)) return banded(a, b, most);
  return banded(codePoints(a), codePoints(b), most);
}

std::uint64_t letterSet(std::string_view word) {
  std::uint64_t set = 0;
  for (const char c : word) {
    const int bit = c >= 'a' && c <= 'z' ? c - 'a' : c >= '0' && c <= '9' ? 26 + c - '0' : 36;
    set |= std::uint64_t{1} << static_cast<unsigned>(bit);
  }
  return set;
}

std::optional<MatchedHow> matchOf(std::string_view needle, std::string_view term, Against against) {
  if (needle.empty()) return {};
  const bool whole = against == Against::whole;
  if (needle == term) return whole ? MatchedHow::exactly : MatchedHow::words;
  if (term.starts_with(needle)) return whole ? MatchedHow::beginning : MatchedHow::wordBeginnings;
  const std::size_t n = characters(needle);
  if (n >= kLettersForInside && term.find(needle) != std::string_view::npos) return MatchedHow::inside;
  const std::size_t may = lettersThatMayBeOff(needle);
  if (may == 0) return {};
  const auto off = lettersOff(needle, term, may);
  if (!off) return {};
  return *off <= 1 ? MatchedHow::oneLetterOff : MatchedHow::twoLettersOff;
}

namespace {

/// Marks one place of the needle among the letters: at a beginning, else inside where it is long enough for that.
bool markPlace(const FoldedText& folded, std::string_view needle, std::vector<bool>& marked) {
  std::optional<std::size_t> place;
  for (std::size_t at = folded.letters.find(needle); at != std::string::npos;
       at = folded.letters.find(needle, at + 1)) {
    const bool begins = folded.origins[at].startsPiece;
    if (begins || (!place && characters(needle) >= kLettersForInside)) place = at;
    if (begins) break;
  }
  if (!place) return false;
  std::fill_n(marked.begin() + static_cast<std::ptrdiff_t>(*place), needle.size(), true);
  return true;
}

}  // namespace

std::vector<MatchedSpan> spansIn(const Typed& typed, std::string_view text) {
  if (typed.empty()) return {};
  const FoldedText folded = fold(text);
  std::vector<bool> marked(folded.letters.size(), false);
  if (!markPlace(folded, typed.joined, marked))
    for (const std::string& word : typed.words) markPlace(folded, word, marked);
  std::vector<MatchedSpan> spans;
  for (std::size_t i = 0; i < marked.size(); ++i) {
    if (!marked[i]) continue;
    const FoldedText::Origin& from = folded.origins[i];
    if (i > 0 && marked[i - 1]) spans.back().length = from.end - spans.back().begin;
    else spans.push_back({from.begin, from.end - from.begin});
  }
  return spans;
}

std::vector<MatchedSpan> spansIn(std::string_view typedText, std::string_view text) {
  return spansIn(typed(typedText), text);
}

}  // namespace ohmkin::catalog
