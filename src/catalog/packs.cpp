#include <catalog/pack_writer.h>
#include <catalog/row.h>
#include <catalog/table_shape.h>
#include <fmt/format.h>
#include <map>
#include <stdexcept>

namespace ohmkin::catalog {
namespace {

Pack readPack(Row& row) {
  Pack p;
  p.id = row.text();
  p.title = row.text();
  p.version = row.text();
  p.licence = row.text();
  return p;
}

}  // namespace

std::optional<Pack> pack(const Catalogue& catalogue, std::string_view id) {
  return first(ask(catalogue, "SELECT id, title, version, licence FROM pack WHERE id = ?", readPack, std::string(id)));
}

std::vector<Pack> packs(const Catalogue& catalogue) {
  return ask(catalogue, "SELECT id, title, version, licence FROM pack WHERE id <> 'shop' ORDER BY id", readPack);
}

RowFinder::RowFinder(const Catalogue& catalogue) : catalogue_(catalogue) {}
RowFinder::~RowFinder() = default;

struct RowFinder::Statements {
  std::map<std::string, SQLite::Statement, std::less<>> byTable;
};

bool RowFinder::holds(std::string_view table, std::string_view key, std::string_view exceptPack) {
  SQLite::Database& database = catalogue_.connection().database();
  try {
    if (!statements_) {
      statements_ = std::make_unique<Statements>();
      for (const TableShape& shape : packTables(database))
        if (shape.key.size() == 1)
          statements_->byTable.emplace(
              shape.name, SQLite::Statement(database, fmt::format("SELECT 1 FROM {} WHERE {} = ? AND pack <> ?",
                                                                  sqlName(shape.name), sqlName(shape.key.front()))));
    }
    const auto found = statements_->byTable.find(table);
    if (found == statements_->byTable.end())
      throw std::invalid_argument("no table with one key: " + std::string(table));
    const Use use(found->second);
    found->second.bind(1, std::string(key));
    found->second.bind(2, std::string(exceptPack));
    return found->second.executeStep();
  } catch (const SQLite::Exception& failure) {
    rethrow(failure, catalogue_.file());
  }
}

}  // namespace ohmkin::catalog
