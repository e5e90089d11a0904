#include <catalog/row.h>
#include <catalog/search_documents.h>
#include <algorithm>
#include <array>

namespace ohmkin::catalog {
namespace {

/// How one kind is read. Every statement gives id, in stock (0 or 1), uses, then the fields' texts in the order named.
struct KindRows {
  ThingKind kind;
  std::string_view word;
  std::string_view table;
  const char* all;
  const char* one;
  std::vector<SearchField> fields;
};

#define OHMKIN_KIND(select) select " ORDER BY t.id", select " WHERE t.id = ?"

const std::array<KindRows, kThingKinds>& kindRows() {
  using F = SearchField;
  static const std::array<KindRows, kThingKinds> rows{
      {{ThingKind::sender,
        "sender",
        "sender",
        OHMKIN_KIND("SELECT t.id, EXISTS (SELECT 1 FROM stock k WHERE k.sender = t.id AND k.quantity > 0), "
                    "(SELECT count(*) FROM original_sender o WHERE o.sender = t.id), t.id, t.name FROM sender t"),
        {F::number, F::name}},
       {ThingKind::gauge,
        "gauge",
        "gauge",
        OHMKIN_KIND("SELECT t.id, 0, 0, t.id, t.name FROM gauge t"),
        {F::number, F::name}},
       {ThingKind::family,
        "family",
        "family",
        OHMKIN_KIND("SELECT t.id, 0, (SELECT count(*) FROM sender p WHERE p.family = t.id), t.id, t.name, "
                    "printf('%.15g', t.cold_ohms) || '-' || printf('%.15g', t.hot_ohms) FROM family t"),
        {F::number, F::name, F::coldAndHot}},
       {ThingKind::line,
        "vehicle line",
        "vehicle_line",
        OHMKIN_KIND("SELECT t.id, 0, (SELECT count(*) FROM original_sender o WHERE o.line = t.id), t.id, t.name, "
                    "m.name || ' ' || t.name, m.name, t.also FROM vehicle_line t JOIN make m ON m.id = t.make"),
        {F::number, F::name, F::name, F::make, F::alsoName}},
       {ThingKind::cluster,
        "cluster",
        "cluster",
        OHMKIN_KIND("SELECT t.id, 0, 0, t.id, t.option, l.name, m.name FROM cluster t "
                    "JOIN vehicle_line l ON l.id = t.line JOIN make m ON m.id = l.make"),
        {F::number, F::name, F::line, F::make}},
       {ThingKind::casting,
        "casting",
        "casting",
        OHMKIN_KIND("SELECT t.id, 0, 0, t.id, t.role FROM casting t"),
        {F::number, F::name}},
       {ThingKind::engine,
        "engine",
        "engine_family",
        OHMKIN_KIND("SELECT t.id, 0, (SELECT count(*) FROM casting c WHERE c.engine = t.id), t.id, t.name, "
                    "m.name || ' ' || t.name, m.name FROM engine_family t JOIN make m ON m.id = t.make"),
        {F::number, F::name, F::name, F::make}},
       {ThingKind::make,
        "make",
        "make",
        OHMKIN_KIND("SELECT t.id, 0, 0, t.id, t.name FROM make t"),
        {F::number, F::name}},
       {ThingKind::thread,
        "thread",
        "thread",
        OHMKIN_KIND("SELECT t.id, 0, 0, t.id, t.standard FROM thread t"),
        {F::number, F::name}},
       {ThingKind::terminal,
        "connector",
        "terminal",
        OHMKIN_KIND("SELECT t.id, 0, 0, t.id, t.name FROM terminal t"),
        {F::number, F::name}},
       {ThingKind::adapter,
        "adapter",
        "adapter",
        OHMKIN_KIND("SELECT t.id, 0, 0, t.id, t.port, t.sender FROM adapter t"),
        {F::number, F::part, F::part}},
       {ThingKind::pigtail,
        "pigtail",
        "pigtail",
        OHMKIN_KIND("SELECT t.id, 0, 0, t.id, t.harness, t.sender FROM pigtail t"),
        {F::number, F::part, F::part}},
       {ThingKind::dateLayout,
        "date layout",
        "date_layout",
        OHMKIN_KIND("SELECT t.id, 0, 0, t.id, t.name, t.found_on, t.example FROM date_layout t"),
        {F::number, F::name, F::part, F::example}}}};
  return rows;
}

#undef OHMKIN_KIND

const KindRows& rowsOf(ThingKind kind) { return kindRows()[static_cast<std::size_t>(kind)]; }

void addField(SearchDocument& document, SearchField field, std::string text) {
  if (!text.empty()) document.fields.push_back({field, std::move(text)});
}

/// Names separated by ';' are fields of their own.
void addEach(SearchDocument& document, SearchField field, std::string_view text) {
  while (!text.empty()) {
    const auto end = text.find(';');
    std::string_view one = text.substr(0, end);
    while (!one.empty() && one.front() == ' ') one.remove_prefix(1);
    while (!one.empty() && one.back() == ' ') one.remove_suffix(1);
    addField(document, field, std::string(one));
    text = end == std::string_view::npos ? std::string_view{} : text.substr(end + 1);
  }
}

SearchDocument readDocument(SQLite::Statement& statement, const KindRows& rows) {
  SearchDocument document;
  document.kind = rows.kind;
  document.id = statement.getColumn(0).getString();
  document.weight = weightOf(statement.getColumn(1).getInt() != 0, statement.getColumn(2).getInt64());
  int column = 3;
  for (const SearchField field : rows.fields) {
    std::string text = statement.getColumn(column++).getString();
    if (field == SearchField::alsoName) addEach(document, field, text);
    else addField(document, field, std::move(text));
  }
  return document;
}

void addOldNumbers(Connection& connection, SearchDocument& document) {
  static const char* const kOlder =
      "WITH RECURSIVE old (id) AS (SELECT replaces FROM stands_in_for WHERE sender = ?1 UNION "
      "SELECT i.replaces FROM stands_in_for i JOIN old ON i.sender = old.id LIMIT 200) "
      "SELECT id FROM old WHERE id <> ?1 ORDER BY id";
  static_assert(kMostOldNumbers == 200);
  SQLite::Statement& statement = connection.statement(kOlder);
  const Use use(statement);
  statement.bind(1, document.id);
  while (statement.executeStep()) addField(document, SearchField::oldNumber, statement.getColumn(0).getString());
}

}  // namespace

std::string_view text(ThingKind kind) { return rowsOf(kind).word; }
std::string_view tableOf(ThingKind kind) { return rowsOf(kind).table; }

std::string_view text(SearchField field) {
  static constexpr std::array<std::string_view, kSearchFields> kWords{
      "number", "old number", "name", "other name", "make", "cold and hot ohms", "vehicle line", "part", "example"};
  return kWords[static_cast<std::size_t>(field)];
}

std::string_view text(MatchedHow how) {
  static constexpr std::array<std::string_view, 7> kWords{
      "exactly", "beginning", "words", "word beginnings", "inside", "one letter off", "two letters off"};
  return kWords[static_cast<std::size_t>(how)];
}

std::optional<ThingKind> thingOfTable(std::string_view table) {
  for (const KindRows& rows : kindRows())
    if (rows.table == table) return rows.kind;
  return {};
}

void eachDocument(Connection& connection, ThingKind kind, const std::function<void(SearchDocument&&)>& take) {
  const KindRows& rows = rowsOf(kind);
  std::vector<std::string> standIns;  // by id
  if (kind == ThingKind::sender) {
    SQLite::Statement newer(connection.database(), "SELECT DISTINCT sender FROM stands_in_for ORDER BY sender");
    while (newer.executeStep()) standIns.push_back(newer.getColumn(0).getString());
  }
  SQLite::Statement statement(connection.database(), rows.all);
  while (statement.executeStep()) {
    SearchDocument document = readDocument(statement, rows);
    if (std::binary_search(standIns.begin(), standIns.end(), document.id)) addOldNumbers(connection, document);
    take(std::move(document));
  }
}

std::optional<SearchDocument> documentOf(Connection& connection, ThingKind kind, const std::string& id) {
  const KindRows& rows = rowsOf(kind);
  SQLite::Statement& statement = connection.statement(rows.one);
  const Use use(statement);
  statement.bind(1, id);
  if (!statement.executeStep()) return {};
  SearchDocument document = readDocument(statement, rows);
  if (kind == ThingKind::sender) addOldNumbers(connection, document);
  return document;
}

FieldTerms termsOf(std::string_view text) {
  FoldedText folded = fold(text);
  FieldTerms terms;
  terms.whole = std::move(folded.letters);
  terms.words = std::move(folded.words);
  for (std::string& piece : folded.pieces) terms.words.push_back(std::move(piece));
  std::sort(terms.words.begin(), terms.words.end());
  terms.words.erase(std::unique(terms.words.begin(), terms.words.end()), terms.words.end());
  return terms;
}

DocumentMatch matchDocument(const Typed& typed, const SearchDocument& document) {
  DocumentMatch best;
  if (typed.empty()) return best;
  const auto better = [](DocumentMatch& than, std::optional<MatchedHow> how, SearchField field, std::size_t at) {
    if (how && scoreOf(*how, field) < than.score) than = {scoreOf(*how, field), at};
  };
  std::vector<DocumentMatch> ofWord(typed.words.size());
  for (std::size_t at = 0; at < document.fields.size(); ++at) {
    const SearchField field = document.fields[at].field;
    const FieldTerms terms = termsOf(document.fields[at].text);
    better(best, matchOf(typed.joined, terms.whole, Against::whole), field, at);
    for (std::size_t w = 0; w < ofWord.size(); ++w)
      for (const std::string& word : terms.words)
        better(ofWord[w], matchOf(typed.words[w], word, Against::word), field, at);
  }
  const auto worst =
      std::max_element(ofWord.begin(), ofWord.end(), [](const auto& a, const auto& b) { return a.score < b.score; });
  return worst != ofWord.end() && worst->score < best.score ? *worst : best;
}

}  // namespace ohmkin::catalog
