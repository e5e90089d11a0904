#pragma once
#include <catalog/catalogue.h>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <optional>
#include <stop_token>
#include <string>
#include <string_view>
#include <vector>

/// Finding anything in the catalogue by what somebody types: numbers in any punctuation, words, beginnings, parts of
/// them, and with letters wrong.
namespace ohmkin::catalog {

/// In the order in which equals are listed.
enum class ThingKind {
  sender,
  gauge,
  family,
  line,
  cluster,
  casting,
  engine,
  make,
  thread,
  terminal,
  adapter,
  pigtail,
  dateLayout
};
inline constexpr std::size_t kThingKinds = 13;
std::string_view text(ThingKind kind);  ///< "sender", "vehicle line", "date layout", …

/// What of a thing was matched, the most telling first.
enum class SearchField { number, oldNumber, name, alsoName, make, coldAndHot, line, part, example };
inline constexpr std::size_t kSearchFields = 9;
std::string_view text(SearchField field);  ///< "number", "old number", …

/// How, the best first. Letter case, accents and every sign but letters and digits never count.
enum class MatchedHow {
  exactly,         ///< the whole field
  beginning,       ///< the field begins with it
  words,           ///< every word typed is a word of the thing
  wordBeginnings,  ///< every word typed begins one
  inside,          ///< three characters or more, inside a number or word
  oneLetterOff,    ///< four characters or more; two neighbours swapped are one letter
  twoLettersOff    ///< eight characters or more
};
std::string_view text(MatchedHow how);

/// Bytes of the field's text that were typed.
struct MatchedSpan {
  std::size_t begin = 0;
  std::size_t length = 0;
  friend bool operator==(const MatchedSpan&, const MatchedSpan&) = default;
};

/// What a thing is found by, as the catalogue has it.
struct SearchedText {
  SearchField field = SearchField::number;
  std::string text;
};

struct SearchHit {
  ThingKind kind = ThingKind::sender;
  std::string id;  ///< the row's key
  MatchedHow how = MatchedHow::exactly;
  SearchField field = SearchField::number;
  std::string matched;             ///< the field's text as the catalogue has it: "SN-10.1"
  std::vector<MatchedSpan> spans;  ///< in `matched`, in order, none touching another; none for letters that are off
  bool inStock = false;
  /// Rows that name it: where-used rows of a sender or line, senders of a family, castings of an engine.
  std::int64_t uses = 0;
  std::vector<SearchedText> fields;  ///< all of them; the number first
};

/// Where a list was left off. Opaque; valid as long as one likes, also when rows change meanwhile.
struct SearchPlace {
  std::uint32_t score = 0;
  std::uint32_t weight = 0;
  ThingKind kind = ThingKind::sender;
  std::string id;
};

struct SearchWish {
  std::string text;              ///< as typed, any bytes of any length; blanks part words
  std::vector<ThingKind> kinds;  ///< none: all
  std::size_t limit = 20;
  std::optional<SearchPlace> after;
};

struct SearchAnswer {
  std::vector<SearchHit> hits;      ///< best first: how, field, in stock, uses, kind, id
  std::size_t total = 0;            ///< things that match, whatever the limit
  std::optional<SearchPlace> next;  ///< where there are more
  bool stopped = false;             ///< by the token; then nothing above is to be used
};

/// Where in any text the typed words stand, for showing them; on character boundaries. None where they do not.
std::vector<MatchedSpan> spansIn(std::string_view typedText, std::string_view text);

/// Where a search gets its answers from.
enum class SearchBasis {
  index,  ///< kept in the file, beside what changed since
  scan    ///< the file has no index that is right and could not be written: all rows were read once, which is slower
};

/// Answers typed text on one catalogue, each key anew. Holds a few megabytes for a million where-used rows. Sees what
/// this and other connections have changed at its next answer. The catalogue outlives it; one thread at a time.
class Search {
 public:
  /// Reads the index. Where it is missing or of another version it is written first, if the file can be written now.
  /// Throws CatalogueError.
  explicit Search(const Catalogue& catalogue);
  ~Search();
  Search(Search&&) noexcept;
  Search& operator=(Search&&) noexcept;

  /// Nothing typed finds nothing.
  SearchAnswer find(const SearchWish& wish, const std::stop_token& stop = {});
  [[nodiscard]] SearchBasis basis() const;

 private:
  struct Work;
  std::unique_ptr<Work> work_;
};

}  // namespace ohmkin::catalog
