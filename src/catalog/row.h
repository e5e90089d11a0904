#pragma once
#include <SQLiteCpp/SQLiteCpp.h>
#include <catalog/connection.h>
#include <catalog/source.h>
#include <quantity/date.h>
#include <quantity/quantity.h>
#include <algorithm>
#include <array>
#include <cstdint>
#include <iterator>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// Inside this room only: asking a question and reading its rows, column after column in the order of the statement.
namespace ohmkin::catalog {

template <class Kind, std::size_t N>
using Words = std::array<std::pair<Kind, std::string_view>, N>;

template <class Kind, std::size_t N>
constexpr std::string_view wordFor(const Words<Kind, N>& words, Kind kind) {
  for (const auto& [k, word] : words)
    if (k == kind) return word;
  return {};
}

/// The columns every fact's statement ends with; `source` must be the alias s.
#define OHMKIN_SOURCE_COLUMNS "s.id, s.kind, s.citation, s.confidence"

class Row {
 public:
  Row(SQLite::Statement& statement, const Connection& connection) : statement_(statement), connection_(connection) {}

  std::string text();
  double number();
  int whole();
  std::int64_t longWhole();
  bool flag() { return whole() != 0; }
  std::optional<double> maybeNumber();
  std::optional<int> maybeWhole();
  std::vector<double> numbers();  ///< text holding numbers separated by blanks
  std::optional<Date> maybeDate();
  Date date();
  ModelYearSpan modelYears();  ///< two columns
  DateSpan dates();            ///< two columns
  Source source();             ///< OHMKIN_SOURCE_COLUMNS

  template <class K>
  K key() {
    return K{text()};
  }
  template <class K>
  std::optional<K> maybeKey() {
    std::string t = text();
    if (t.empty()) return {};
    return K{std::move(t)};
  }
  /// An optional quantity: `as` makes it from the bare number, for example ohms.
  template <class Maker>
  auto maybe(Maker as) -> std::optional<decltype(as(0.0))> {
    const auto bare = maybeNumber();
    if (!bare) return {};
    return as(*bare);
  }
  template <class Kind, std::size_t N>
  Kind oneOf(const Words<Kind, N>& words) {
    const std::string found = text();
    for (const auto& [kind, word] : words)
      if (word == found) return kind;
    damaged(found);
  }

  [[noreturn]] void damaged(const std::string& found) const;  ///< a value that the tables' own rules do not allow

 private:
  SQLite::Column next() { return statement_.getColumn(column_++); }
  SQLite::Statement& statement_;
  const Connection& connection_;
  int column_ = 0;
};

inline void bindAll(SQLite::Statement&, int) {}
template <class First, class... Rest>
void bindAll(SQLite::Statement& statement, int at, const First& first, const Rest&... rest) {
  statement.bind(at, first);
  bindAll(statement, at + 1, rest...);
}

/// push_back() that moves what is there already when it needs more room. A vector alone copies records with quantities
/// in them, since Boost's quantities do not promise to move without a throw.
template <class Record>
void append(std::vector<Record>& all, Record one) {
  if (all.size() == all.capacity()) {
    std::vector<Record> larger;
    larger.reserve(std::max<std::size_t>(4, 2 * all.size()));
    larger.insert(larger.end(), std::make_move_iterator(all.begin()), std::make_move_iterator(all.end()));
    all.swap(larger);
  }
  all.push_back(std::move(one));
}

/// All rows of a statement, each made by `read`. `sql` must be a string literal.
template <class Read, class... Values>
auto ask(const Catalogue& catalogue, const char* sql, Read read, const Values&... values) {
  std::vector<decltype(read(std::declval<Row&>()))> all;
  Connection& connection = catalogue.connection();
  try {
    SQLite::Statement& statement = connection.statement(sql);
    const Use use(statement);
    bindAll(statement, 1, values...);
    while (statement.executeStep()) {
      Row row(statement, connection);
      append(all, read(row));
    }
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue.file());
  }
  return all;
}

template <class Record>
std::optional<Record> first(std::vector<Record> all) {
  if (all.empty()) return {};
  // cppcheck-suppress returnStdMoveLocal ; an element, not what is returned
  return std::move(all.front());
}

inline std::string onlyText(Row& row) { return row.text(); }

/// Lower case of A–Z, blanks at the ends gone: what SQL's lower() makes of a name.
std::string loweredName(std::string_view name);
/// Upper case without blanks and - . / : what the indexes …_by_plain_number hold.
std::string plainNumber(std::string_view number);

}  // namespace ohmkin::catalog
