#include <catalog/change.h>
#include <catalog/search_block.h>
#include <catalog/search_index.h>
#include <sqlite3.h>
#include <algorithm>
#include <bit>
#include <cstring>
#include <map>

namespace ohmkin::catalog {
namespace {

/// One state of the file for all that a search reads; nothing where the caller holds one already.
class OneState {
 public:
  explicit OneState(SQLite::Database& database) : database_(database) {
    if (sqlite3_get_autocommit(database_.getHandle()) == 0) return;
    database_.exec("BEGIN");
    begun_ = true;
  }
  ~OneState() {
    if (begun_) database_.tryExec("COMMIT");
  }
  OneState(const OneState&) = delete;
  OneState& operator=(const OneState&) = delete;

 private:
  SQLite::Database& database_;
  bool begun_ = false;
};

/// Writes the index where it is missing, unless the file cannot be written or somebody else is writing just now.
void writeIndexIfMissing(const Catalogue& catalogue) {
  Connection& own = catalogue.connection();
  if (indexStands(own) || catalogue.immutable() || sqlite3_get_autocommit(own.database().getHandle()) == 0) return;
  try {
    const Catalogue writer = Catalogue::open(catalogue.file(), Access::readWrite);
    writer.connection().database().setBusyTimeout(0);
    Change whole(writer.connection());
    if (!indexStands(writer.connection())) rebuildIndex(writer.connection());
    whole.commit();
  } catch (const CatalogueError&) {  // then a scan answers
  } catch (const SQLite::Exception&) {
  }
}

struct Candidate {
  std::uint64_t order = 0;  // smaller is better: score, then weight
  ThingKind kind = ThingKind::sender;
  std::string_view id;

  friend bool operator<(const Candidate& a, const Candidate& b) {
    if (a.order != b.order) return a.order < b.order;
    if (a.kind != b.kind) return a.kind < b.kind;
    return a.id < b.id;
  }
};

std::uint64_t orderOf(std::uint32_t score, std::uint32_t weight) {
  return (std::uint64_t{score} << 32U) | (UINT32_MAX - weight);
}
std::uint32_t scoreOf(const Candidate& one) { return static_cast<std::uint32_t>(one.order >> 32U); }
std::uint32_t weightOf(const Candidate& one) { return UINT32_MAX - static_cast<std::uint32_t>(one.order); }

using Scores = std::vector<std::uint16_t>;

}  // namespace

struct Search::Work {
  explicit Work(const Catalogue& c) : catalogue(c), connection(c.connection()) {}

  const Catalogue& catalogue;
  Connection& connection;
  SearchBasis basis = SearchBasis::index;
  std::optional<SearchBlock> block;
  std::int64_t build = -1;
  std::int64_t lastTouched = 0;
  std::pair<std::int64_t, std::int64_t> scanned{-1, -1};  // the file's and this connection's count of changes
  std::map<std::pair<ThingKind, std::string>, std::optional<SearchDocument>> touched;  // none: gone
  std::vector<bool> passedOver;        // things of the block that were touched
  std::vector<std::uint64_t> letters;  // of each word; filled when first needed

  void refresh();
  void readBlock(SearchBlock fresh);
  std::optional<SearchBlock> keptBlock();
  void readTouched();
  void scan();
  void matchWords(std::string_view needle, std::uint32_t against, Scores& scores);
  void matchLettersOff(std::string_view needle, std::uint32_t against, Scores& scores);
  /// How the word matched as a field's whole text, and as a word of one.
  void take(std::size_t word, MatchedHow asWhole, MatchedHow asWord, std::uint32_t against, Scores& scores) const;
  bool score(const Typed& typed, Scores& scores, const std::stop_token& stop);
  std::vector<Candidate> candidates(const Typed& typed, const SearchWish& wish, const Scores& scores) const;
  std::optional<SearchHit> hit(const Typed& typed, const Candidate& candidate);
};

void Search::Work::readBlock(SearchBlock fresh) {
  block = std::move(fresh);
  touched.clear();
  letters.clear();
  passedOver.assign(block->things(), false);
  lastTouched = 0;
}

std::optional<SearchBlock> Search::Work::keptBlock() {
  SQLite::Statement& statement = connection.statement("SELECT data FROM search_index");
  const Use use(statement);
  if (!statement.executeStep()) return {};
  const SQLite::Column data = statement.getColumn(0);
  const void* const bytes = data.getBlob();
  std::vector<std::uint32_t> numbers(static_cast<std::size_t>(data.getBytes()) / sizeof(std::uint32_t));
  if (!numbers.empty()) std::memcpy(numbers.data(), bytes, numbers.size() * sizeof(std::uint32_t));
  return SearchBlock::read(std::move(numbers));
}

void Search::Work::readTouched() {
  SQLite::Statement& statement =
      connection.statement("SELECT id, thing, key FROM search_touched WHERE id > ? ORDER BY id");
  std::vector<std::pair<ThingKind, std::string>> fresh;
  {
    const Use use(statement);
    statement.bind(1, lastTouched);
    while (statement.executeStep()) {
      lastTouched = statement.getColumn(0).getInt64();
      if (const auto kind = thingOfTable(statement.getColumn(1).getString()))
        fresh.emplace_back(*kind, statement.getColumn(2).getString());
    }
  }
  std::sort(fresh.begin(), fresh.end());
  fresh.erase(std::unique(fresh.begin(), fresh.end()), fresh.end());
  for (auto& one : fresh) {
    if (const auto thing = block->thing(one.first, one.second)) passedOver[*thing] = true;
    auto document = documentOf(connection, one.first, one.second);
    touched.insert_or_assign(std::move(one), std::move(document));
  }
}

void Search::Work::scan() {
  const std::pair now{connection.database().execAndGet("PRAGMA data_version").getInt64(),
                      static_cast<std::int64_t>(sqlite3_total_changes64(connection.database().getHandle()))};
  if (basis == SearchBasis::scan && block && now == scanned) return;
  SearchBlockBuilder builder;
  for (std::size_t kind = 0; kind < kThingKinds; ++kind)
    eachDocument(connection, static_cast<ThingKind>(kind), [&](SearchDocument&& one) { builder.add(one); });
  readBlock(*SearchBlock::read(std::move(builder).block()));
  basis = SearchBasis::scan;
  build = -1;
  scanned = now;
}

void Search::Work::refresh() {
  std::int64_t version = 0;
  std::int64_t kept = -1;
  {
    SQLite::Statement& statement = connection.statement("SELECT version, build FROM search_index");
    const Use use(statement);
    if (statement.executeStep()) {
      version = statement.getColumn(0).getInt64();
      kept = statement.getColumn(1).getInt64();
    }
  }
  if (version != kSearchBlockVersion || kept < 0) return scan();
  if (kept != build) {
    auto fresh = keptBlock();
    if (!fresh) return scan();  // damaged, or of another machine
    readBlock(*std::move(fresh));
    build = kept;
    basis = SearchBasis::index;
  }
  readTouched();
  // What is read inside an open change may be taken back, and its numbers given to something else.
  if (sqlite3_txn_state(connection.database().getHandle(), "main") == SQLITE_TXN_WRITE) build = -1;
}

void Search::Work::take(std::size_t word, MatchedHow asWhole, MatchedHow asWord, std::uint32_t against,
                        Scores& scores) const {
  for (const std::uint32_t bits : block->places(word)) {
    const SearchPosting place{bits};
    std::uint16_t& best = scores[place.thing()];
    if ((place.bits & against & SearchPosting::kWhole) != 0)
      best = std::min(best, static_cast<std::uint16_t>(catalog::scoreOf(asWhole, place.field())));
    if ((place.bits & against & SearchPosting::kWord) != 0)
      best = std::min(best, static_cast<std::uint16_t>(catalog::scoreOf(asWord, place.field())));
  }
}

void Search::Work::matchWords(std::string_view needle, std::uint32_t against, Scores& scores) {
  const SearchBlock& b = *block;
  for (std::size_t word = b.firstNotBefore(needle); word < b.words() && b.word(word).starts_with(needle); ++word) {
    const bool equal = b.word(word).size() == needle.size();
    take(word, equal ? MatchedHow::exactly : MatchedHow::beginning,
         equal ? MatchedHow::words : MatchedHow::wordBeginnings, against, scores);
  }
  if (characters(needle) >= kLettersForInside) {
    const std::string_view text = b.text();
    std::size_t at = 0;
    while (const void* const found = memmem(text.data() + at, text.size() - at, needle.data(), needle.size())) {
      at = static_cast<std::size_t>(static_cast<const char*>(found) - text.data());
      const std::size_t word = b.wordAt(at);
      take(word, MatchedHow::inside, MatchedHow::inside, against, scores);
      at = static_cast<std::size_t>(b.word(word).data() - text.data()) + b.word(word).size() + 1;
    }
  }
  matchLettersOff(needle, against, scores);
}

void Search::Work::matchLettersOff(std::string_view needle, std::uint32_t against, Scores& scores) {
  const SearchBlock& b = *block;
  const std::size_t may = lettersThatMayBeOff(needle);
  if (may == 0) return;
  if (letters.empty()) {
    letters.reserve(b.words());
    for (std::size_t word = 0; word < b.words(); ++word) letters.push_back(letterSet(b.word(word)));
  }
  const std::uint64_t wanted = letterSet(needle);
  constexpr std::uint64_t kOthers = std::uint64_t{1} << 36U;  // letters of two bytes and more: lengths say nothing
  for (std::size_t word = 0; word < b.words(); ++word) {
    const std::uint64_t set = letters[word];
    if (static_cast<std::size_t>(std::popcount(set & ~wanted)) > may ||
        static_cast<std::size_t>(std::popcount(wanted & ~set)) > may)
      continue;
    const std::string_view candidate = b.word(word);
    if (((set | wanted) & kOthers) == 0 &&
        (candidate.size() > needle.size() + may || needle.size() > candidate.size() + may))
      continue;
    if (const auto off = lettersOff(needle, candidate, may)) {
      const MatchedHow how = *off <= 1 ? MatchedHow::oneLetterOff : MatchedHow::twoLettersOff;
      take(word, how, how, against, scores);
    }
  }
}

/// False where it was stopped.
bool Search::Work::score(const Typed& typed, Scores& scores, const std::stop_token& stop) {
  scores.assign(block->things(), static_cast<std::uint16_t>(kNoScore));
  if (typed.words.size() == 1 && typed.words.front() == typed.joined) {
    matchWords(typed.joined, SearchPosting::kWhole | SearchPosting::kWord, scores);
    return !stop.stop_requested();
  }
  matchWords(typed.joined, SearchPosting::kWhole, scores);
  std::vector<std::string> words = typed.words;  // the longest leaves the fewest
  std::stable_sort(words.begin(), words.end(), [](const auto& a, const auto& b) { return a.size() > b.size(); });
  Scores worst(block->things(), 0);
  Scores ofWord;
  for (const std::string& word : words) {
    if (stop.stop_requested()) return false;
    ofWord.assign(block->things(), static_cast<std::uint16_t>(kNoScore));
    matchWords(word, SearchPosting::kWord, ofWord);
    bool some = false;
    for (std::size_t i = 0; i < worst.size(); ++i) {
      worst[i] = std::max(worst[i], ofWord[i]);
      some |= worst[i] != kNoScore;
    }
    if (!some) return true;
  }
  for (std::size_t i = 0; i < worst.size(); ++i) scores[i] = std::min(scores[i], worst[i]);
  return true;
}

std::vector<Candidate> Search::Work::candidates(const Typed& typed, const SearchWish& wish,
                                                const Scores& scores) const {
  const auto wanted = [&](ThingKind kind) {
    return wish.kinds.empty() || std::find(wish.kinds.begin(), wish.kinds.end(), kind) != wish.kinds.end();
  };
  std::array<bool, kThingKinds> kinds{};
  for (std::size_t k = 0; k < kThingKinds; ++k) kinds[k] = wanted(static_cast<ThingKind>(k));
  std::vector<Candidate> all;
  for (std::size_t i = 0; i < scores.size(); ++i) {
    if (scores[i] == kNoScore || passedOver[i] || !kinds[static_cast<std::size_t>(block->kind(i))]) continue;
    all.push_back({orderOf(scores[i], block->weight(i)), block->kind(i), block->id(i)});
  }
  for (const auto& [key, document] : touched) {
    if (!document || !kinds[static_cast<std::size_t>(key.first)]) continue;
    const DocumentMatch match = matchDocument(typed, *document);
    if (match.score != kNoScore) all.push_back({orderOf(match.score, document->weight), key.first, key.second});
  }
  return all;
}

std::optional<SearchHit> Search::Work::hit(const Typed& typed, const Candidate& candidate) {
  SearchHit hit;
  hit.kind = candidate.kind;
  hit.id = candidate.id;
  auto document = documentOf(connection, hit.kind, hit.id);
  if (!document) return {};
  const DocumentMatch match = matchDocument(typed, *document);
  if (match.score == kNoScore) return {};
  hit.how = howOf(match.score);
  hit.field = fieldOf(match.score);
  hit.matched = document->fields[match.field].text;
  if (hit.how < MatchedHow::oneLetterOff) hit.spans = spansIn(typed, hit.matched);
  hit.inStock = (document->weight & kInStock) != 0;
  hit.uses = static_cast<std::int64_t>(document->weight & ~kInStock);
  hit.fields = std::move(document->fields);
  return hit;
}

Search::Search(const Catalogue& catalogue) : work_(std::make_unique<Work>(catalogue)) {
  try {
    writeIndexIfMissing(catalogue);
    const OneState state(work_->connection.database());
    work_->refresh();
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue.file());
  }
}

Search::~Search() = default;
Search::Search(Search&&) noexcept = default;
Search& Search::operator=(Search&&) noexcept = default;

SearchBasis Search::basis() const { return work_->basis; }

SearchAnswer Search::find(const SearchWish& wish, const std::stop_token& stop) {
  SearchAnswer answer;
  const Typed asked = typed(wish.text);
  if (asked.empty()) return answer;
  Work& w = *work_;
  try {
    const OneState state(w.connection.database());
    w.refresh();
    Scores scores;
    if (!w.score(asked, scores, stop)) {
      answer.stopped = true;
      return answer;
    }
    std::vector<Candidate> all = w.candidates(asked, wish, scores);
    answer.total = all.size();
    if (wish.after) {
      const Candidate last{orderOf(wish.after->score, wish.after->weight), wish.after->kind, wish.after->id};
      std::erase_if(all, [&](const Candidate& one) { return !(last < one); });
    }
    const std::size_t shown = std::min(all.size(), wish.limit);
    std::partial_sort(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(shown), all.end());
    for (std::size_t i = 0; i < shown; ++i) {
      if (stop.stop_requested()) {
        answer.stopped = true;
        return answer;
      }
      if (auto hit = w.hit(asked, all[i])) answer.hits.push_back(*std::move(hit));
    }
    if (shown > 0 && shown < all.size()) {
      const Candidate& last = all[shown - 1];
      answer.next = SearchPlace{scoreOf(last), weightOf(last), last.kind, std::string(last.id)};
    }
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, w.catalogue.file());
  }
  return answer;
}

}  // namespace ohmkin::catalog
