#include <catalog/change.h>
#include <catalog/search_block.h>
#include <catalog/search_index.h>
#include <array>

namespace ohmkin::catalog {
namespace {

/// So many rows may be touched until the whole is written anew: reading them again is what the first search of a
/// program pays, 10 to 20 µs each.
constexpr std::int64_t kMostTouched = 1000;
/// Newer parts that are found by an old number; more in one chain and all is written anew.
constexpr std::size_t kMostNewer = 1000;

void touch(Connection& connection, ThingKind kind, const std::string& id) {
  change(connection, "INSERT INTO search_touched (thing, key) VALUES (?, ?)", std::string(tableOf(kind)), id);
}

/// `sql` must be a string literal.
std::vector<std::string> keys(Connection& connection, const char* sql, const std::string& of) {
  SQLite::Statement& statement = connection.statement(sql);
  const Use use(statement);
  statement.bind(1, of);
  std::vector<std::string> all;
  while (statement.executeStep()) all.push_back(statement.getColumn(0).getString());
  return all;
}

void touchEach(Connection& connection, ThingKind kind, const std::vector<std::string>& ids) {
  for (const std::string& id : ids) touch(connection, kind, id);
}

void touchLine(Connection& connection, const std::string& line) {
  touch(connection, ThingKind::line, line);
  touchEach(connection, ThingKind::cluster, keys(connection, "SELECT id FROM cluster WHERE line = ?", line));
}

/// What is found differently once the row of this table is another.
void touchAll(Connection& connection, std::string_view table, std::span<const std::string> key) {
  if (key.empty()) return;
  if (const auto kind = thingOfTable(table)) touch(connection, *kind, key[0]);
  if (table == "sender") {
    touchEach(connection, ThingKind::family,
              keys(connection, "SELECT family FROM sender WHERE id = ? AND family IS NOT NULL", key[0]));
  } else if (table == "stands_in_for" && key.size() == 2) {  // replaces, sender
    const auto newer = keys(connection,
                            "WITH RECURSIVE newer (id) AS (SELECT ?1 UNION SELECT i.sender FROM stands_in_for i JOIN "
                            "newer ON i.replaces = newer.id LIMIT 1001) SELECT id FROM newer",
                            key[1]);
    if (newer.size() > kMostNewer) change(connection, "UPDATE search_index SET version = 0");
    else touchEach(connection, ThingKind::sender, newer);
  } else if (table == "stock") {
    touch(connection, ThingKind::sender, key[0]);
  } else if (table == "original_sender" && key.size() == 4) {  // line, engine, year_from, sender
    touch(connection, ThingKind::line, key[0]);
    touch(connection, ThingKind::sender, key[3]);
  } else if (table == "casting") {
    touchEach(connection, ThingKind::engine, keys(connection, "SELECT engine FROM casting WHERE id = ?", key[0]));
  } else if (table == "vehicle_line") {
    touchLine(connection, key[0]);
  } else if (table == "make") {
    touchEach(connection, ThingKind::engine, keys(connection, "SELECT id FROM engine_family WHERE make = ?", key[0]));
    for (const std::string& line : keys(connection, "SELECT id FROM vehicle_line WHERE make = ?", key[0]))
      touchLine(connection, line);
  }
}

std::int64_t touched(Connection& connection) {
  SQLite::Statement& statement = connection.statement("SELECT coalesce(max(id), 0) FROM search_touched");
  const Use use(statement);
  return statement.executeStep() ? statement.getColumn(0).getInt64() : 0;
}

}  // namespace

bool indexStands(Connection& connection) {
  SQLite::Statement& statement = connection.statement("SELECT version FROM search_index");
  const Use use(statement);
  return statement.executeStep() && statement.getColumn(0).getInt64() == kSearchBlockVersion;
}

void rebuildIndex(Connection& connection) {
  SearchBlockBuilder builder;
  for (std::size_t kind = 0; kind < kThingKinds; ++kind)
    eachDocument(connection, static_cast<ThingKind>(kind), [&](SearchDocument&& one) { builder.add(one); });
  const std::vector<std::uint32_t> block = std::move(builder).block();
  const auto bytes = static_cast<std::int64_t>(block.size() * sizeof(std::uint32_t));
  SQLite::Statement& statement = connection.statement(
      "INSERT INTO search_index (id, version, build, data) VALUES (1, ?, 1, ?) ON CONFLICT (id) DO UPDATE SET "
      "version = excluded.version, build = build + 1, data = excluded.data");
  const Use use(statement);
  statement.bind(1, static_cast<std::int64_t>(kSearchBlockVersion));
  statement.bindNoCopy(2, block.data(), static_cast<int>(bytes));
  statement.exec();
  statement.clearBindings();
  change(connection, "DELETE FROM search_touched");
}

void indexRow(Connection& connection, std::string_view table, std::span<const std::string> key) {
  touchAll(connection, table, key);
  // Made now it may miss what the same transaction still changes, which is why the rows are touched all the same.
  if (indexStands(connection) && touched(connection) <= kMostTouched) return;
  rebuildIndex(connection);
  touchAll(connection, table, key);
}

void indexRow(Connection& connection, std::string_view table, const std::string& key) {
  indexRow(connection, table, std::span<const std::string>(&key, 1));
}

void unindexRow(Connection& connection, std::string_view table, std::span<const std::string> key) {
  indexRow(connection, table, key);
}

void unindexRow(Connection& connection, std::string_view table, const std::string& key) {
  indexRow(connection, table, key);
}

}  // namespace ohmkin::catalog
