#include <catalog/change.h>
#include <catalog/pack_parts.h>
#include <catalog/pack_writer.h>
#include <catalog/search_index.h>
#include <catalog/table_sql.h>
#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <stdexcept>

namespace ohmkin::catalog {
namespace {

/// How rows of one table with one choice of columns are written.
struct Insertion {
  const TableShape* shape = nullptr;
  std::vector<std::string> columns;
  std::vector<const Cell*> absent;      ///< for each column
  std::vector<std::size_t> keyAt;       ///< where the key's columns stand among the columns
  std::optional<std::size_t> partOfAt;  ///< where the reference to the whole stands
  std::optional<SQLite::Statement> insert;
  std::optional<SQLite::Statement> owner;         ///< pack of the row with that key
  std::optional<SQLite::Statement> ownerOfWhole;  ///< pack of what the row is a part of
};

std::string insertSql(const TableShape& shape, std::span<const std::string> columns) {
  std::string names;
  std::string marks;
  for (const std::string& column : columns) {
    names += sqlName(column) + ", ";
    marks += "?, ";
  }
  return fmt::format("INSERT INTO {} ({}pack) VALUES ({}?) ON CONFLICT DO NOTHING", sqlName(shape.name), names, marks);
}

std::string ownerSql(const TableShape& shape) {
  return fmt::format("SELECT pack FROM {} WHERE {}", sqlName(shape.name), whereAll(shape.key));
}

}  // namespace

struct PackWriter::Work {
  Work(Catalogue& c, Pack p) : catalogue(c), connection(c.connection()), incoming(std::move(p)) {}

  Catalogue& catalogue;
  Connection& connection;
  Pack incoming;
  std::optional<Pack> before;
  std::vector<TableShape> tables;
  std::map<std::string, Insertion, std::less<>> insertions;
  std::optional<SQLite::Transaction> transaction;
  std::size_t written = 0;

  Insertion& insertionFor(std::string_view table, std::span<const std::string> columns);
  std::optional<std::string> ownerOf(SQLite::Statement& statement, const Insertion& into,
                                     std::span<const std::size_t> at, std::span<const Cell> row);
  RowFate fateUnder(const std::string& owner) const {
    return owner == "shop" ? RowFate::keptForShop : RowFate::ownedByOtherPack;
  }
  void begin();
  void takeOutOlder();
  bool insertRow(Insertion& into, std::span<const Cell> row);
  void takeOutShops(const Insertion& into, std::span<const Cell> row);
  std::vector<std::string> gaveWay;  // lines for the change log: which row, what it was
};

void PackWriter::Work::begin() {
  connection.useWriteAheadLog();
  connection.enforceForeignKeys(false);  // rows come in any order; dangling() looks at all of them at the end
  transaction.emplace(connection.database(), SQLite::TransactionBehavior::IMMEDIATE);
  tables = packTables(connection.database());
  before = pack(catalogue, incoming.id);
  takeOutOlder();
}

void PackWriter::Work::takeOutOlder() {
  for (const TableShape& table : tables) {
    SQLite::Statement takeOut(connection.database(), fmt::format("DELETE FROM {} WHERE pack = ?", sqlName(table.name)));
    takeOut.bind(1, incoming.id);
    takeOut.exec();
  }
  SQLite::Statement put(
      connection.database(),
      "INSERT INTO pack (id, title, version, licence, loaded) "
      "VALUES (?, ?, ?, ?, strftime('%Y-%m-%dT%H:%M:%SZ', 'now')) ON CONFLICT (id) DO UPDATE SET "
      "title = excluded.title, version = excluded.version, licence = excluded.licence, loaded = excluded.loaded");
  put.bind(1, incoming.id);
  put.bind(2, incoming.title);
  put.bind(3, incoming.version);
  put.bind(4, incoming.licence);
  put.exec();
}

Insertion& PackWriter::Work::insertionFor(std::string_view table, std::span<const std::string> columns) {
  if (const auto found = insertions.find(table);
      found != insertions.end() &&
      std::equal(columns.begin(), columns.end(), found->second.columns.begin(), found->second.columns.end()))
    return found->second;

  const auto shape = std::find_if(tables.begin(), tables.end(), [&](const TableShape& t) { return t.name == table; });
  if (shape == tables.end()) throw std::invalid_argument("no table of packs: " + std::string(table));
  Insertion into;
  into.shape = &*shape;
  into.columns = std::vector<std::string>(columns.begin(), columns.end());
  for (const std::string& name : columns) {
    const auto column = std::find_if(shape->columns.begin(), shape->columns.end(),
                                     [&](const ColumnShape& c) { return c.name == name; });
    if (column == shape->columns.end() || name == "pack") throw std::invalid_argument("no column to fill: " + name);
    into.absent.push_back(&column->absent);
  }
  const auto placeOf = [&](std::string_view name) {
    const auto at = std::find(columns.begin(), columns.end(), name);
    if (at == columns.end()) throw std::invalid_argument("a key column is left out: " + std::string(name));
    return static_cast<std::size_t>(at - columns.begin());
  };
  for (const std::string& name : shape->key) into.keyAt.push_back(placeOf(name));
  into.insert.emplace(connection.database(), insertSql(*shape, columns));
  into.owner.emplace(connection.database(), ownerSql(*shape));
  for (const Part& part : kParts)
    if (part.table == table) {
      into.partOfAt = placeOf(part.column);
      into.ownerOfWhole.emplace(connection.database(),
                                fmt::format("SELECT pack FROM {} WHERE id = ?", sqlName(part.whole)));
    }
  return insertions.insert_or_assign(std::string(table), std::move(into)).first->second;
}

std::optional<std::string> PackWriter::Work::ownerOf(SQLite::Statement& statement, const Insertion& into,
                                                     std::span<const std::size_t> at, std::span<const Cell> row) {
  const Use use(statement);
  int place = 1;
  for (const std::size_t column : at) {
    const bool empty = std::holds_alternative<std::monostate>(row[column]);
    bindCellAt(statement, place++, empty ? *into.absent[column] : row[column]);
  }
  if (!statement.executeStep()) return {};
  return statement.getColumn(0).getString();
}

PackWriter::PackWriter(Catalogue& catalogue, const Pack& pack) : work_(std::make_unique<Work>(catalogue, pack)) {
  if (pack.id.empty() || pack.id == "shop") throw std::invalid_argument("not the name of a pack: " + pack.id);
  try {
    work_->begin();
  } catch (const SQLite::Exception& failure) {
    work_->transaction.reset();
    work_->connection.enforceForeignKeys(true);
    rethrow(failure, catalogue.file());
  }
}

PackWriter::~PackWriter() {
  work_->insertions.clear();
  work_->transaction.reset();
  work_->connection.enforceForeignKeys(true);
}

bool PackWriter::Work::insertRow(Insertion& into, std::span<const Cell> row) {
  SQLite::Statement& insert = *into.insert;
  const Use use(insert);
  int place = 1;
  for (std::size_t c = 0; c < row.size(); ++c)
    bindCellAt(insert, place++, std::holds_alternative<std::monostate>(row[c]) ? *into.absent[c] : row[c]);
  insert.bind(place, incoming.id);
  if (insert.exec() != 1) return false;
  ++written;
  return true;
}

void PackWriter::Work::takeOutShops(const Insertion& into, std::span<const Cell> row) {
  const TableShape& shape = *into.shape;
  const std::string where = whereAll(shape.key) + " AND pack = 'shop'";
  const auto bindKey = [&](SQLite::Statement& statement) {
    int place = 1;
    for (const std::size_t column : into.keyAt) bindCellAt(statement, place++, row[column]);
  };
  SQLite::Statement was(connection.database(), fmt::format("SELECT * FROM {} WHERE {}", sqlName(shape.name), where));
  bindKey(was);
  if (was.executeStep()) {
    std::string line = shape.name;
    for (int c = 0; c < was.getColumnCount(); ++c)
      line += fmt::format("{}{}={}", c == 0 ? ": " : "; ", was.getColumnName(c), was.getColumn(c).getString());
    gaveWay.push_back(std::move(line));
  }
  for (const Part& part : kParts) {
    if (part.whole != shape.name) continue;
    SQLite::Statement parts(connection.database(), fmt::format("DELETE FROM {} WHERE {} = ? AND pack = 'shop'",
                                                               sqlName(part.table), sqlName(part.column)));
    bindKey(parts);
    parts.exec();
  }
  SQLite::Statement takeOut(connection.database(), fmt::format("DELETE FROM {} WHERE {}", sqlName(shape.name), where));
  bindKey(takeOut);
  takeOut.exec();
}

Expected<RowFate> PackWriter::write(std::string_view table, std::span<const std::string> columns,
                                    std::span<const Cell> row, ShopsRow shops) {
  if (columns.size() != row.size()) throw std::invalid_argument("a row of another width");
  try {
    Insertion& into = work_->insertionFor(table, columns);
    if (into.partOfAt) {
      const std::array<std::size_t, 1> at{*into.partOfAt};
      const auto owner = work_->ownerOf(*into.ownerOfWhole, into, at, row);
      if (owner && *owner != work_->incoming.id) return work_->fateUnder(*owner);
    }
    if (work_->insertRow(into, row)) return RowFate::written;
    const auto owner = work_->ownerOf(*into.owner, into, into.keyAt, row);
    if (owner && *owner == "shop" && shops == ShopsRow::givesWay) {
      work_->takeOutShops(into, row);
      if (work_->insertRow(into, row)) return RowFate::tookTheShops;
    }
    if (owner && *owner != work_->incoming.id) return work_->fateUnder(*owner);
    return refuse("row-refused", std::string(table), "a key that was there before", "a key of its own");
  } catch (const SQLite::Exception& failure) {
    if (breaksRule(failure))
      return refuse("row-refused", std::string(table), "a row that breaks a rule", brokenRule(failure));
    rethrow(failure, work_->catalogue.file());
  }
}

std::vector<Dangling> PackWriter::dangling(std::size_t most) const {
  std::vector<Dangling> all;
  try {
    for (const TableShape& table : work_->tables)
      for (const Reference& reference : table.references) {
        if (all.size() >= most) return all;
        SQLite::Statement asked(
            work_->connection.database(),
            fmt::format("SELECT CAST(c.{0} AS TEXT), c.pack FROM {1} c WHERE c.{0} IS NOT NULL AND NOT EXISTS "
                        "(SELECT 1 FROM {2} p WHERE p.{3} = c.{0}) LIMIT ?",
                        sqlName(reference.column), sqlName(table.name), sqlName(reference.table),
                        sqlName(reference.refersTo)));
        asked.bind(1, static_cast<std::int64_t>(most - all.size()));
        while (asked.executeStep())
          all.push_back({table.name, reference.column, asked.getColumn(0).getString(), reference.table,
                         asked.getColumn(1).getString()});
      }
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, work_->catalogue.file());
  }
  return all;
}

void PackWriter::keep(std::string_view who) {
  if (!dangling(1).empty()) throw std::logic_error("a pack with references that lead nowhere is not kept");
  try {
    logChange(work_->connection, who, "pack loaded", work_->incoming.id,
              work_->before ? "version " + work_->before->version : std::string(),
              fmt::format("version {}, {} rows", work_->incoming.version, work_->written));
    for (const std::string& line : work_->gaveWay)
      logChange(work_->connection, who, "shop row gave way", work_->incoming.id, line, {});
    // A curve that is no longer there: what was measured for it stays.
    work_->connection.database().exec(
        "UPDATE bench_run SET curve = NULL WHERE curve IS NOT NULL AND curve NOT IN (SELECT id FROM curve)");
    work_->insertions.clear();
    rebuildIndex(work_->connection);
    work_->transaction->commit();
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, work_->catalogue.file());
  }
}

}  // namespace ohmkin::catalog
