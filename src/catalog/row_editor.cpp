#include <catalog/change.h>
#include <catalog/row.h>
#include <catalog/row_editor.h>
#include <catalog/search_index.h>
#include <catalog/table_sql.h>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <sqlite3.h>
#include <algorithm>
#include <stdexcept>

namespace ohmkin::catalog {
namespace {

/// The rows of a table under some columns' values, in the order of its key, without those columns.
std::vector<RowCells> partRows(const Catalogue& catalogue, const EditedPart& part, const Cell& whole) {
  const TableShape shape = shapeFor(catalogue, part.table);
  std::vector<std::string> columns = dataColumns(shape);
  columns.erase(std::remove(columns.begin(), columns.end(), part.column), columns.end());
  SQLite::Statement asked(catalogue.connection().database(),
                          fmt::format("SELECT {} FROM {} WHERE {} = ? ORDER BY {}", listOf(columns),
                                      sqlName(part.table), sqlName(part.column), listOf(shape.key)));
  bindCellAt(asked, 1, whole);
  std::vector<RowCells> rows;
  while (asked.executeStep()) {
    RowCells row;
    for (std::size_t c = 0; c < columns.size(); ++c) row[columns[c]] = cellAt(asked.getColumn(static_cast<int>(c)));
    rows.push_back(std::move(row));
  }
  return rows;
}

Cell valueOr(const RowCells& row, const ColumnShape& column) {
  const auto found = row.find(column.name);
  return found == row.end() || std::holds_alternative<std::monostate>(found->second) ? column.absent : found->second;
}

std::vector<Cell> keyIn(const TableShape& shape, const RowCells& row) {
  std::vector<Cell> key;
  for (const std::string& column : shape.key) {
    const auto found = row.find(column);
    key.push_back(found == row.end() ? Cell{} : found->second);
  }
  return key;
}

std::vector<std::string> asTexts(const std::vector<Cell>& key) {
  std::vector<std::string> texts;
  texts.reserve(key.size());
  for (const Cell& cell : key) texts.push_back(keyText(cell));
  return texts;
}

/// Keys of the first few rows of `child` that refer to `key`.
std::vector<std::string> firstKeys(SQLite::Database& database, const TableShape& child, const Reference& reference,
                                   const std::string& key, std::size_t few) {
  std::vector<std::string> names = child.key;
  if (names.empty())
    for (const ColumnShape& column : child.columns)
      if (column.name == "id") names = {"id"};
  if (names.empty()) names = {reference.column};
  SQLite::Statement asked(database, fmt::format("SELECT {} FROM {} WHERE {} = ? ORDER BY {} LIMIT ?", listOf(names),
                                                sqlName(child.name), sqlName(reference.column), listOf(names)));
  asked.bind(1, key);
  asked.bind(2, static_cast<std::int64_t>(few));
  std::vector<std::string> keys;
  while (asked.executeStep()) {
    std::vector<std::string> texts;
    texts.reserve(static_cast<std::size_t>(asked.getColumnCount()));
    for (int c = 0; c < asked.getColumnCount(); ++c) texts.push_back(keyText(cellAt(asked.getColumn(c))));
    keys.push_back(fmt::format("{}", fmt::join(texts, ", ")));
  }
  return keys;
}

bool keyIsTaken(const SQLite::Exception& failure) {
  return failure.getExtendedErrorCode() == SQLITE_CONSTRAINT_PRIMARYKEY ||
         failure.getExtendedErrorCode() == SQLITE_CONSTRAINT_UNIQUE ||
         failure.getExtendedErrorCode() == SQLITE_CONSTRAINT_ROWID;
}

}  // namespace

std::vector<std::string> keyColumns(const Catalogue& catalogue, std::string_view table) {
  return shapeFor(catalogue, table).key;
}

std::vector<std::string> dataColumns(const Catalogue& catalogue, std::string_view table) {
  return dataColumns(shapeFor(catalogue, table));
}

Cell absentCell(const Catalogue& catalogue, std::string_view table, std::string_view column) {
  return columnOf(shapeFor(catalogue, table), column).absent;
}

std::optional<ThingState> thingState(const Catalogue& catalogue, std::string_view table, std::span<const Cell> key) {
  try {
    const TableShape shape = shapeFor(catalogue, table);
    if (key.size() != shape.key.size()) throw std::invalid_argument("a key of another width");
    const std::vector<std::string> columns = dataColumns(shape);
    SQLite::Statement asked(catalogue.connection().database(),
                            fmt::format("SELECT t.pack, (SELECT p.version FROM pack p WHERE p.id = t.pack), {} FROM {} "
                                        "t WHERE {}",
                                        listOf(columns, "t."), sqlName(shape.name), whereAll(shape.key)));
    int at = 1;
    for (const Cell& cell : key) bindCellAt(asked, at++, cell);
    if (!asked.executeStep()) return {};
    ThingState state;
    state.table = shape.name;
    state.pack = asked.getColumn(0).getString();
    state.packVersion = asked.getColumn(1).getString();
    for (std::size_t c = 0; c < columns.size(); ++c)
      state.row[columns[c]] = cellAt(asked.getColumn(static_cast<int>(c) + 2));
    for (const EditedPart& part : editedParts(table)) state.parts[part.table] = partRows(catalogue, part, key.front());
    return state;
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue.file());
  }
}

std::string subjectOf(std::string_view table, std::span<const Cell> key) {
  std::vector<std::string> texts;
  for (const Cell& cell : key) texts.push_back(keyText(cell));
  return fmt::format("{} {}", table, fmt::join(texts, ", "));
}

std::vector<Referring> referringTo(const Catalogue& catalogue, std::string_view table, const std::string& key,
                                   std::size_t few) {
  std::vector<Referring> all;
  const auto parts = editedParts(table);
  const auto isPart = [&](const std::string& child, const std::string& column) {
    return std::any_of(parts.begin(), parts.end(),
                       [&](const EditedPart& p) { return p.table == child && p.column == column; });
  };
  SQLite::Database& database = catalogue.connection().database();
  try {
    for (const TableShape& child : allTables(database))
      for (const Reference& reference : child.references) {
        if (reference.table != table || isPart(child.name, reference.column)) continue;
        const bool owned = std::any_of(child.columns.begin(), child.columns.end(),
                                       [](const ColumnShape& c) { return c.name == "pack"; });
        SQLite::Statement count(database, fmt::format("SELECT count(*), {} FROM {} WHERE {} = ?",
                                                      owned ? "coalesce(sum(pack <> 'shop'), 0)" : "0",
                                                      sqlName(child.name), sqlName(reference.column)));
        count.bind(1, key);
        count.executeStep();
        Referring found{child.name, reference.column, count.getColumn(0).getInt64(), count.getColumn(1).getInt64(), {}};
        if (found.count == 0) continue;
        found.first = firstKeys(database, child, reference, key, few);
        all.push_back(std::move(found));
      }
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue.file());
  }
  return all;
}

std::vector<std::string> circleOfReplacements(const Catalogue& catalogue, const std::string& sender,
                                              const std::string& replaces) {
  // Breadth first; a path is kept as text to be told, parts between it with a character no key holds.
  const auto paths = ask(
      catalogue,
      "WITH RECURSIVE newer (part, path) AS (SELECT ?1, ?1 UNION SELECT i.sender, newer.path || char(31) || i.sender "
      "FROM stands_in_for i JOIN newer ON i.replaces = newer.part WHERE instr(char(31) || newer.path || char(31), "
      "char(31) || i.sender || char(31)) = 0) SELECT path FROM newer WHERE part = ?2 LIMIT 1",
      onlyText, sender, replaces);
  std::vector<std::string> chain;
  if (paths.empty()) return chain;
  std::string::size_type from = 0;
  for (auto at = paths.front().find('\x1F'); at != std::string::npos; at = paths.front().find('\x1F', from)) {
    chain.push_back(paths.front().substr(from, at - from));
    from = at + 1;
  }
  chain.push_back(paths.front().substr(from));
  return chain;
}

struct RowEditor::Work {
  explicit Work(Catalogue& c) : catalogue(c), connection(c.connection()), change(connection) {
    // What is renamed and what refers to it change one after the other.
    connection.database().exec("PRAGMA defer_foreign_keys = ON");
  }
  Catalogue& catalogue;
  Connection& connection;
  Change change;
  bool renamed = false;  // rows of any table may name it

  void insert(const TableShape& shape, const RowCells& row, const std::string& pack);
  void update(const TableShape& shape, const RowCells& row, const std::vector<Cell>& key, const std::string& pack);
  void takeOutParts(const std::string& table, const Cell& whole);
  void writeParts(const ThingState& state, const Cell& whole);
  void carryReferences(const std::string& table, const Cell& from, const Cell& to);
};

void RowEditor::Work::insert(const TableShape& shape, const RowCells& row, const std::string& pack) {
  std::vector<std::string> columns;
  std::vector<Cell> cells;
  for (const std::string& name : dataColumns(shape)) {
    columns.push_back(name);
    cells.push_back(valueOr(row, columnOf(shape, name)));
  }
  std::string marks;
  for (std::size_t c = 0; c < columns.size(); ++c) marks += "?, ";
  SQLite::Statement put(connection.database(), fmt::format("INSERT INTO {} ({}, pack) VALUES ({}?)",
                                                           sqlName(shape.name), listOf(columns), marks));
  int at = 1;
  for (const Cell& cell : cells) bindCellAt(put, at++, cell);
  put.bind(at, pack);
  put.exec();
}

void RowEditor::Work::update(const TableShape& shape, const RowCells& row, const std::vector<Cell>& key,
                             const std::string& pack) {
  const std::vector<std::string> columns = dataColumns(shape);
  SQLite::Statement put(connection.database(), fmt::format("UPDATE {} SET {}, pack = ? WHERE {}", sqlName(shape.name),
                                                           listOf(columns, "", " = ?"), whereAll(shape.key)));
  int at = 1;
  for (const std::string& name : columns) bindCellAt(put, at++, valueOr(row, columnOf(shape, name)));
  put.bind(at++, pack);
  for (const Cell& cell : key) bindCellAt(put, at++, cell);
  put.exec();
}

void RowEditor::Work::takeOutParts(const std::string& table, const Cell& whole) {
  for (const EditedPart& part : editedParts(table)) {
    SQLite::Statement takeOut(connection.database(),
                              fmt::format("DELETE FROM {} WHERE {} = ?", sqlName(part.table), sqlName(part.column)));
    bindCellAt(takeOut, 1, whole);
    takeOut.exec();
  }
}

void RowEditor::Work::writeParts(const ThingState& state, const Cell& whole) {
  for (const EditedPart& part : editedParts(state.table)) {
    const auto rows = state.parts.find(part.table);
    if (rows == state.parts.end()) continue;
    const TableShape shape = shapeFor(catalogue, part.table);
    for (RowCells row : rows->second) {
      row[part.column] = whole;
      insert(shape, row, state.pack);
    }
  }
}

void RowEditor::Work::carryReferences(const std::string& table, const Cell& from, const Cell& to) {
  const auto parts = editedParts(table);
  for (const TableShape& child : allTables(connection.database()))
    for (const Reference& reference : child.references) {
      const bool part = std::any_of(parts.begin(), parts.end(), [&](const auto& p) { return p.table == child.name; });
      if (reference.table != table || part) continue;
      SQLite::Statement carry(connection.database(), fmt::format("UPDATE {0} SET {1} = ? WHERE {1} = ?",
                                                                 sqlName(child.name), sqlName(reference.column)));
      bindCellAt(carry, 1, to);
      bindCellAt(carry, 2, from);
      carry.exec();
    }
}

RowEditor::RowEditor(Catalogue& catalogue) {
  try {
    work_ = std::make_unique<Work>(catalogue);
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue.file());
  }
}

RowEditor::~RowEditor() = default;

Expected<void> RowEditor::put(const std::optional<ThingState>& before, const ThingState& now) {
  const TableShape shape = shapeFor(work_->catalogue, now.table);
  const std::vector<Cell> key = keyIn(shape, now.row);
  try {
    if (before) {
      const std::vector<Cell> was = keyIn(shape, before->row);
      unindexRow(work_->connection, now.table, asTexts(was));
      work_->takeOutParts(now.table, was.front());
      work_->update(shape, now.row, was, now.pack);
      if (was != key && shape.key.size() == 1) {
        work_->carryReferences(now.table, was.front(), key.front());
        work_->renamed = true;
      }
    } else {
      work_->insert(shape, now.row, now.pack);
    }
    work_->writeParts(now, key.front());
    indexRow(work_->connection, now.table, asTexts(key));
    return {};
  } catch (const SQLite::Exception& failure) {
    if (keyIsTaken(failure))
      return refuse("key-taken", fmt::format("{}", fmt::join(shape.key, ", ")), subjectOf(now.table, key),
                    "a key that is free");
    if (breaksRule(failure))
      return refuse("row-refused", now.table, "values that break a rule of the table", brokenRule(failure));
    rethrow(failure, work_->catalogue.file());
  }
}

void RowEditor::remove(const ThingState& state) {
  try {
    const TableShape shape = shapeFor(work_->catalogue, state.table);
    const std::vector<Cell> key = keyIn(shape, state.row);
    unindexRow(work_->connection, state.table, asTexts(key));
    work_->takeOutParts(state.table, key.front());
    SQLite::Statement takeOut(work_->connection.database(),
                              fmt::format("DELETE FROM {} WHERE {}", sqlName(shape.name), whereAll(shape.key)));
    int at = 1;
    for (const Cell& cell : key) bindCellAt(takeOut, at++, cell);
    takeOut.exec();
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, work_->catalogue.file());
  }
}

Expected<bool> RowEditor::addSource(const RowCells& source) {
  const TableShape shape = shapeFor(work_->catalogue, "source");
  try {
    if (thingState(work_->catalogue, "source", keyIn(shape, source))) return false;
    work_->insert(shape, source, "shop");
    return true;
  } catch (const SQLite::Exception& failure) {
    if (breaksRule(failure)) return refuse("row-refused", "source", "values that break a rule", brokenRule(failure));
    rethrow(failure, work_->catalogue.file());
  }
}

void RowEditor::removeSourceIfUnused(const RowCells& source) {
  const TableShape shape = shapeFor(work_->catalogue, "source");
  const auto key = keyIn(shape, source);
  const auto there = thingState(work_->catalogue, "source", key);
  if (!there || there->pack != "shop" || there->row != source ||
      !referringTo(work_->catalogue, "source", keyText(key.front()), 1).empty())
    return;
  remove(*there);
}

std::int64_t RowEditor::log(std::string_view who, const std::string& what, const std::string& subject,
                            const std::string& before, const std::string& after) {
  try {
    logChange(work_->connection, who, what, subject, before, after);
    return work_->connection.database().getLastInsertRowid();
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, work_->catalogue.file());
  }
}

Expected<void> RowEditor::keep() {
  try {
    if (work_->renamed) rebuildIndex(work_->connection);
    work_->change.commit();
    return {};
  } catch (const SQLite::Exception& failure) {
    if (breaksRule(failure))
      return refuse("reference-dangling", "", "a reference that leads nowhere", "rows that are there");
    rethrow(failure, work_->catalogue.file());
  }
}

}  // namespace ohmkin::catalog
