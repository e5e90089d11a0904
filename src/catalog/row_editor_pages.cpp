#include <catalog/row.h>
#include <catalog/row_editor_pages.h>
#include <catalog/table_sql.h>
#include <fmt/format.h>
#include <algorithm>
#include <set>
#include <stdexcept>

namespace ohmkin::catalog {
namespace {

/// Text for LIKE ... ESCAPE '\', anywhere in the value.
std::string anywhere(std::string_view text) {
  std::string pattern = "%";
  for (const char c : text) {
    if (c == '%' || c == '_' || c == '\\') pattern += '\\';
    pattern += c;
  }
  return pattern + '%';
}

/// Nothing sorts before every value. Its rows and the others are two spans of the order, each asked for alone, so that
/// an index can begin right behind the place.
enum class Span { all, nothing, values };

class Pages {
 public:
  Pages(const Catalogue& catalogue, const PageOfRows& asked)
      : catalogue_(catalogue), asked_(asked), shape_(shapeFor(catalogue, asked.table)) {
    for (const std::string& name : asked.columns) (void)columnOf(shape_, name);
    for (const auto& holds : asked.holds)
      for (const std::string& name : holds.columns) (void)columnOf(shape_, name);
    if (!asked.sortBy.empty() && asked.sortBy != shape_.key.front()) sorted_ = &columnOf(shape_, asked.sortBy);
  }

  std::vector<RowSeen> rows() {
    std::vector<RowSeen> all;
    if (sorted_ == nullptr || sorted_->required) {
      append(all, Span::all);
      return all;
    }
    const bool behindNothing = asked_.after && std::holds_alternative<std::monostate>(asked_.after->sorted);
    const auto first = asked_.descending ? Span::values : Span::nothing;
    const auto second = asked_.descending ? Span::nothing : Span::values;
    const bool pastFirst = asked_.after && behindNothing == (second == Span::nothing);
    if (!pastFirst) append(all, first);
    if (all.size() < asked_.most) append(all, second);
    return all;
  }

 private:
  void append(std::vector<RowSeen>& all, Span span) {
    std::vector<std::string> order = shape_.key;
    const bool bySorted = sorted_ != nullptr && span != Span::nothing;
    if (bySorted) order.insert(order.begin(), sorted_->name);
    std::string where = "1";
    if (span == Span::nothing) where += fmt::format(" AND {} IS NULL", sqlName(sorted_->name));
    if (span == Span::values) where += fmt::format(" AND {} IS NOT NULL", sqlName(sorted_->name));
    const bool placeIsNothing = asked_.after && std::holds_alternative<std::monostate>(asked_.after->sorted);
    const bool behind = asked_.after && (span == Span::all || placeIsNothing == (span == Span::nothing));
    if (behind) {
      std::string marks;
      for (std::size_t i = 0; i < order.size(); ++i) marks += i == 0 ? "?" : ", ?";
      where += fmt::format(" AND ({}) {} ({})", listOf(order), asked_.descending ? "<" : ">", marks);
    }
    if (!asked_.pack.empty()) where += " AND pack = ?";
    for (const auto& holds : asked_.holds) {
      std::string any;
      for (const std::string& name : holds.columns)
        any += fmt::format("{}{} LIKE ? ESCAPE '\\'", any.empty() ? "" : " OR ", sqlName(name));
      where += fmt::format(" AND ({})", any);
    }
    std::vector<std::string> wanted = asked_.columns;
    if (sorted_ != nullptr) wanted.push_back(sorted_->name);
    wanted.insert(wanted.end(), shape_.key.begin(), shape_.key.end());
    try {
      SQLite::Statement statement(
          catalogue_.connection().database(),
          fmt::format("SELECT pack, {} FROM {} WHERE {} ORDER BY {} LIMIT ?", listOf(wanted), sqlName(shape_.name),
                      where, listOf(order, "", asked_.descending ? " DESC" : "")));
      int at = 1;
      if (behind) {
        if (bySorted) bindCellAt(statement, at++, asked_.after->sorted);
        for (const Cell& cell : asked_.after->key) bindCellAt(statement, at++, cell);
      }
      if (!asked_.pack.empty()) statement.bind(at++, asked_.pack);
      for (const auto& holds : asked_.holds)
        for (std::size_t i = 0; i < holds.columns.size(); ++i) statement.bind(at++, anywhere(holds.text));
      statement.bind(at, static_cast<std::int64_t>(asked_.most - all.size()));
      while (statement.executeStep()) all.push_back(seen(statement));
    } catch (const SQLite::Exception& failure) {
      rethrow(failure, catalogue_.file());
    }
  }

  RowSeen seen(SQLite::Statement& statement) const {
    RowSeen row;
    int at = 0;
    row.pack = statement.getColumn(at++).getString();
    for (std::size_t c = 0; c < asked_.columns.size(); ++c) row.cells.push_back(cellAt(statement.getColumn(at++)));
    if (sorted_ != nullptr) row.place.sorted = cellAt(statement.getColumn(at++));
    for (std::size_t c = 0; c < shape_.key.size(); ++c) row.place.key.push_back(cellAt(statement.getColumn(at++)));
    if (sorted_ == nullptr) row.place.sorted = row.place.key.front();
    return row;
  }

  const Catalogue& catalogue_;
  const PageOfRows& asked_;
  TableShape shape_;
  const ColumnShape* sorted_ = nullptr;
};

}  // namespace

std::vector<RowSeen> pageOfRows(const Catalogue& catalogue, const PageOfRows& asked) {
  if (asked.most == 0) return {};
  return Pages(catalogue, asked).rows();
}

std::int64_t rowCount(const Catalogue& catalogue, std::string_view table) {
  const TableShape shape = shapeFor(catalogue, table);
  try {
    return catalogue.connection()
        .database()
        .execAndGet(fmt::format("SELECT count(*) FROM {}", sqlName(shape.name)))
        .getInt64();
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue.file());
  }
}

std::vector<KeyAndName> keysLike(const Catalogue& catalogue, std::string_view table, std::string_view nameColumn,
                                 std::string_view typed, std::size_t most) {
  const TableShape shape = shapeFor(catalogue, table);
  if (shape.key.size() != 1) throw std::invalid_argument("no table with one key: " + shape.name);
  const std::string key = sqlName(shape.key.front());
  const std::string name = nameColumn.empty() ? std::string("''") : sqlName(nameColumn);
  std::vector<KeyAndName> all;
  std::set<std::string> had;
  const auto take = [&](SQLite::Statement& statement) {
    while (all.size() < most && statement.executeStep())
      if (had.insert(statement.getColumn(0).getString()).second)
        all.push_back({statement.getColumn(0).getString(), statement.getColumn(1).getString()});
  };
  try {
    SQLite::Database& database = catalogue.connection().database();
    // A span of the key's index; what only differs in case comes with the second question.
    SQLite::Statement begins(database, fmt::format("SELECT {0}, {1} FROM {2} WHERE {0} >= ?1 AND {0} < ?1 || "
                                                   "char(1114111) ORDER BY {0} LIMIT ?2",
                                                   key, name, sqlName(shape.name)));
    begins.bind(1, std::string(typed));
    begins.bind(2, static_cast<std::int64_t>(most));
    take(begins);
    if (all.size() == most || typed.empty()) return all;
    SQLite::Statement holds(database, fmt::format("SELECT {0}, {1} FROM {2} WHERE {0} LIKE ?1 ESCAPE '\\' OR {1} LIKE "
                                                  "?1 ESCAPE '\\' ORDER BY {0} LIMIT ?2",
                                                  key, name, sqlName(shape.name)));
    holds.bind(1, anywhere(typed));
    holds.bind(2, static_cast<std::int64_t>(2 * most));
    take(holds);
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue.file());
  }
  return all;
}

}  // namespace ohmkin::catalog
