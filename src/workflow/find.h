#pragma once
#include <catalog/search.h>
#include <finding/finding.h>
#include <finding/refusal.h>
#include <memory>
#include <optional>
#include <stop_token>
#include <string>
#include <string_view>
#include <vector>

/// One box over the whole catalogue: numbers, old numbers, vehicle lines, clusters, castings, engines, families,
/// threads, connectors and whatever else has a name.
namespace ohmkin::workflow {

using FoundKind = catalog::ThingKind;  ///< text() names it; kThingKinds of them
using catalog::MatchedHow;
using catalog::SearchField;

/// A text and the bytes of it to be shown bold; spans in order, apart from each other, on character boundaries.
struct Marked {
  std::string text;
  std::vector<catalog::MatchedSpan> spans;
};

/// Towards the part that is sold today.
struct LeadsTo {
  std::vector<std::string> parts;    ///< current ones, the best first (in stock, then fewest steps); none in a circle
  std::vector<std::string> through;  ///< superseded ones on the way to the first of them, nearest first
  bool circle = false;               ///< parts on the way stand in for each other: `sentence` says which
  std::string sentence;              ///< "superseded by SN-103 (through SN-102)"
};

struct Found {
  FoundKind kind = FoundKind::sender;
  std::string id;     ///< what `show` and every other command takes
  Marked number;      ///< the id, as it is to be shown
  Marked title;       ///< its name in words: "coolant sender, blade 6.3 mm"; may be empty
  std::string about;  ///< one line more: "family A · 1/8-27 NPT · 14 uses · 3 in stock"
  MatchedHow how = MatchedHow::exactly;
  SearchField field = SearchField::number;
  Marked matched;                  ///< the text that was matched; the same as number or title where it was one of those
  std::string why;                 ///< "number", "old number SN-10.1", "one letter off: Ridgeway", …
  std::size_t rank = 0;            ///< 1 for the best of all, counted on through pages
  std::optional<LeadsTo> leadsTo;  ///< of a sender that another part stands in for
  std::int64_t inStock = 0;        ///< pieces, all bins
  std::int64_t uses = 0;
};

struct FindQuestion {
  std::string text;              ///< as typed so far; empty finds nothing
  std::vector<FoundKind> kinds;  ///< none: all
  std::size_t limit = 20;        ///< 1 … 1,000
  std::string after;             ///< FindAnswer::next of the page before
};

struct FindAnswer {
  std::vector<Found> found;       ///< best first
  std::size_t total = 0;          ///< how many there are, whatever the limit
  std::string next;               ///< hand it over as `after`; empty: there are no more
  std::vector<Finding> findings;  ///< "search-scans", "search-nothing", …
};

/// Answers as one types. Keep it as long as the catalogue is open; it holds a few megabytes and sees changes made
/// meanwhile. One thread at a time, with a catalogue of its own.
class Finder {
 public:
  /// Throws catalog::CatalogueError.
  explicit Finder(const catalog::Catalogue& catalogue);
  ~Finder();
  Finder(Finder&&) noexcept;
  Finder& operator=(Finder&&) noexcept;

  /// Refuses limit-out-of-range, place-unreadable (`after`), cancelled. Throws catalog::CatalogueError.
  Expected<FindAnswer> find(const FindQuestion& question, const std::stop_token& stop = {});

 private:
  struct Work;
  std::unique_ptr<Work> work_;
};

/// "sender", "vehicle line" or "vehicle-line" → kind; none for other words.
std::optional<FoundKind> foundKindNamed(std::string_view word);
/// Where the current part is, from any sender; none where nothing stands in for it.
std::optional<LeadsTo> leadsTo(const catalog::Catalogue& catalogue, const std::string& part);

}  // namespace ohmkin::workflow
