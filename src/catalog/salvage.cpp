#include <catalog/connection.h>
#include <catalog/salvage.h>
#include <catalog/table_shape.h>
#include <catalog/trust.h>
#include <fmt/format.h>
#include <sqlite3.h>
#include <algorithm>
#include <array>
#include <chrono>
#include <numeric>
#include <regex>
#include <set>

namespace ohmkin::catalog {
namespace {

namespace fs = std::filesystem;

constexpr std::chrono::seconds kLongestTable{60};

std::vector<std::string> namesOf(SQLite::Database& database, const char* sql, const std::string& value = {}) {
  std::vector<std::string> names;
  SQLite::Statement asked(database, sql);
  if (!value.empty()) asked.bind(1, value);
  while (asked.executeStep()) names.push_back(asked.getColumn(0).getString());
  return names;
}

std::vector<std::string> tablesOf(SQLite::Database& database) {
  return namesOf(
      database,
      "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%' AND sql NOT LIKE "
      "'CREATE VIRTUAL%' AND name NOT IN (SELECT shadow.name FROM sqlite_schema shadow JOIN sqlite_schema "
      "virtual ON virtual.sql LIKE 'CREATE VIRTUAL%' AND shadow.name LIKE virtual.name || '\\_%' ESCAPE '\\') "
      "ORDER BY name");
}

/// Columns that are stored, not computed.
std::vector<std::string> columnsOf(SQLite::Database& database, const std::string& table) {
  return namesOf(database, "SELECT name FROM pragma_table_xinfo(?) WHERE hidden = 0 ORDER BY cid", table);
}

bool isReadable(SQLite::Database& database, const std::string& table) {
  SQLite::Statement asked(
      database,
      "SELECT count(*) FROM sqlite_schema WHERE type = 'table' AND name = ? AND sql NOT LIKE 'CREATE "
      "VIRTUAL%'");
  asked.bind(1, table);
  return asked.executeStep() && asked.getColumn(0).getInt() == 1;
}

struct Copying {
  SQLite::Database& from;
  SQLite::Database& to;
  const std::string& table;
  std::vector<std::string> columns;
  bool hasRowid = true;
};

std::string joined(const std::vector<std::string>& columns) {
  std::string text;
  for (const std::string& column : columns) text += (text.empty() ? "" : ", ") + sqlName(column);
  return text;
}

/// Puts one row in; false where a rule of the table forbids it or it is in already.
bool put(SQLite::Statement& insert, SQLite::Statement& row, int columns) {
  for (int c = 0; c < columns; ++c) {
    const SQLite::Column value = row.getColumn(c);
    if (value.isInteger()) insert.bind(c + 1, value.getInt64());
    else if (value.isFloat()) insert.bind(c + 1, value.getDouble());
    else if (value.isText())
      insert.bind(c + 1, std::string(value.getText(), static_cast<std::size_t>(value.getBytes())));
    else if (value.isBlob()) insert.bind(c + 1, value.getBlob(), value.getBytes());
    else insert.bind(c + 1);
  }
  const int outcome = insert.tryExecuteStep();
  const bool added = outcome == SQLITE_DONE && insert.getChanges() == 1;
  insert.tryReset();
  return added;
}

/// Reads in one direction until the end or a fault; returns the fault.
std::string copyOneWay(const Copying& copying, SalvagedTable& result, const char* direction, bool countBroken) {
  const std::string names = joined(copying.columns);
  const std::string order = copying.hasRowid ? fmt::format(" ORDER BY rowid {}", direction) : std::string();
  std::string marks;
  for (std::size_t c = 0; c < copying.columns.size(); ++c) marks += c == 0 ? "?" : ", ?";
  const TimeBound bound(copying.from.getHandle(), kLongestTable);
  try {
    SQLite::Statement row(copying.from,
                          fmt::format("SELECT {} FROM {} NOT INDEXED{}", names, sqlName(copying.table), order));
    SQLite::Statement insert(
        copying.to, fmt::format("INSERT OR IGNORE INTO {} ({}) VALUES ({})", sqlName(copying.table), names, marks));
    while (true) {
      const int outcome = row.tryExecuteStep();
      if (outcome == SQLITE_DONE) return {};
      if (outcome != SQLITE_ROW) return copying.from.getErrorMsg();
      if (put(insert, row, static_cast<int>(copying.columns.size()))) ++result.rows;
      else if (countBroken) ++result.broken;
    }
  } catch (const SQLite::Exception& failure) {
    return failure.what();
  }
}

SalvagedTable copyTable(SQLite::Database& from, SQLite::Database& to, const std::string& table) {
  SalvagedTable result;
  result.table = table;
  if (!isReadable(from, table)) {
    result.fault = "it is not in the list of tables";
    return result;
  }
  Copying copying{from, to, table, {}};
  const auto there = columnsOf(from, table);
  for (const std::string& column : columnsOf(to, table))
    if (std::find(there.begin(), there.end(), column) != there.end()) copying.columns.push_back(column);
  if (copying.columns.empty()) return result;
  copying.hasRowid =
      namesOf(to, "SELECT name FROM sqlite_schema WHERE name = ? AND sql LIKE '%WITHOUT ROWID%'", table).empty();
  result.fault = copyOneWay(copying, result, "ASC", true);
  result.whole = result.fault.empty() && result.broken == 0;
  if (!result.fault.empty() && copying.hasRowid) (void)copyOneWay(copying, result, "DESC", false);
  return result;
}

void leaveOut(SalvagedTable& table, std::int64_t rows) {
  if (rows == 0) return;
  table.rows -= rows;
  table.broken += rows;
  table.whole = false;
}

/// Rows go whose dates are none. The tables say `column = date(column, …)`, but date() of other text is NULL, and a
/// rule that comes to NULL is not broken: what was damaged there would be let in, and then refused by whoever reads it.
void dropFalseDates(SQLite::Database& database, std::vector<SalvagedTable>& tables) {
  static const std::regex rule(R"((\w+) = date\()");
  for (SalvagedTable& one : tables) {
    SQLite::Statement asked(database, "SELECT sql FROM sqlite_schema WHERE type = 'table' AND name = ?");
    asked.bind(1, one.table);
    if (!asked.executeStep()) continue;
    const std::string definition = asked.getColumn(0).getString();
    for (std::sregex_iterator found(definition.begin(), definition.end(), rule), end; found != end; ++found) {
      const std::string column = sqlName((*found)[1].str());
      leaveOut(one, database.exec(fmt::format("DELETE FROM {} WHERE {} IS NOT date({}, '+0 days')", sqlName(one.table),
                                              column, column)));
    }
  }
}

/// Rows that refer to what was lost go, and what refers to those, until none is left.
void dropDangling(SQLite::Database& database, std::vector<SalvagedTable>& tables) {
  constexpr int kMostRounds = 50;
  for (int round = 0; round < kMostRounds; ++round) {
    std::set<std::string> hurt;
    SQLite::Statement dangling(database, "SELECT DISTINCT \"table\" FROM pragma_foreign_key_check");
    while (dangling.executeStep()) hurt.insert(dangling.getColumn(0).getString());
    if (hurt.empty()) return;
    for (const std::string& table : hurt) {
      std::int64_t gone = 0;
      SQLite::Statement references(
          database, "SELECT \"from\", \"table\", coalesce(\"to\", 'id') FROM pragma_foreign_key_list(?)");
      references.bind(1, table);
      while (references.executeStep()) {
        const std::string column = sqlName(references.getColumn(0).getString());
        const std::string parent = sqlName(references.getColumn(1).getString());
        std::string key = references.getColumn(2).getString();
        const auto primary = namesOf(database, "SELECT name FROM pragma_table_info(?) WHERE pk = 1",
                                     references.getColumn(1).getString());
        if (!primary.empty()) key = primary.front();
        gone += database.exec(fmt::format("DELETE FROM {} WHERE {} IS NOT NULL AND {} NOT IN (SELECT {} FROM {})",
                                          sqlName(table), column, column, sqlName(key), parent));
      }
      for (SalvagedTable& one : tables)
        if (one.table == table) leaveOut(one, gone);
    }
  }
}

}  // namespace

std::int64_t Salvage::rows() const {
  return std::accumulate(tables.begin(), tables.end(), std::int64_t{0},
                         [](std::int64_t sum, const SalvagedTable& table) { return sum + table.rows; });
}

bool Salvage::whole() const {
  return std::all_of(tables.begin(), tables.end(), [](const SalvagedTable& table) { return table.whole; });
}

Salvage salvage(const fs::path& damaged, const fs::path& into) {
  Salvage result;
  checkCompanions(damaged);
  (void)Catalogue::create(into, [&](Catalogue& fresh) {
    SQLite::Database& to = fresh.connection().database();
    try {
      // Immutable: not even a journal beside it is played back.
      Connection source(damaged, Access::readOnly, true);
      SQLite::Database& from = source.database();
      try {
        (void)tablesOf(from);
      } catch (const SQLite::Exception& failure) {
        throw CatalogueError({"salvage-nothing", damaged.string(),
                              fmt::format("a file whose list of tables does not read ({})", failure.what()),
                              "a backup to go back to; 'ohmkin backup list' shows them"});
      }
      fresh.connection().enforceForeignKeys(false);
      SQLite::Transaction whole(to);
      to.exec("DELETE FROM pack");  // its own 'shop' comes from the damaged file
      for (const std::string& table : tablesOf(to)) result.tables.push_back(copyTable(from, to, table));
      to.exec(
          "INSERT OR IGNORE INTO pack (id, title, version, loaded) "
          "VALUES ('shop', 'The shop''s own rows', '', strftime('%Y-%m-%dT%H:%M:%SZ', 'now'))");
      dropFalseDates(to, result.tables);
      dropDangling(to, result.tables);
      whole.commit();
      fresh.connection().enforceForeignKeys(true);
    } catch (const SQLite::Exception& failure) {
      if (to.getErrorCode() != SQLITE_OK) throw;
      throw CatalogueError({"salvage-nothing", damaged.string(),
                            fmt::format("a file of which nothing reads ({})", failure.what()),
                            "a backup to go back to; 'ohmkin backup list' shows them"});
    }
  });
  return result;
}

}  // namespace ohmkin::catalog
