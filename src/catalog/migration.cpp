#include <catalog/catalogue.h>
#include <catalog/migration.h>
#include <embedded/ohmkin_schema.h>
#include <fmt/format.h>
#include <sqlite3.h>

namespace ohmkin::catalog {
namespace {

/// A script may rebuild a table others refer to, so references are checked at its end and not meanwhile
/// (sqlite.org/lang_altertable.html#otheralter). The switch does nothing inside a transaction, hence outside.
class ForeignKeysAside {
 public:
  explicit ForeignKeysAside(SQLite::Database& database) : handle_(database.getHandle()) {
    sqlite3_db_config(handle_, SQLITE_DBCONFIG_ENABLE_FKEY, -1, &before_);
    sqlite3_db_config(handle_, SQLITE_DBCONFIG_ENABLE_FKEY, 0, nullptr);
  }
  ~ForeignKeysAside() { sqlite3_db_config(handle_, SQLITE_DBCONFIG_ENABLE_FKEY, before_, nullptr); }
  ForeignKeysAside(const ForeignKeysAside&) = delete;
  ForeignKeysAside& operator=(const ForeignKeysAside&) = delete;

 private:
  sqlite3* handle_;
  int before_ = 0;
};

}  // namespace

std::vector<Migration> migrations() {
  std::vector<Migration> all;
  for (const auto& file : schema::files()) all.push_back({file.name, file.text});
  return all;
}

int userVersion(SQLite::Database& database) { return database.execAndGet("PRAGMA user_version").getInt(); }

void migrate(SQLite::Database& database, std::span<const Migration> all) {
  const ForeignKeysAside aside(database);
  const auto newest = static_cast<int>(all.size());
  while (true) {
    SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
    const int had = userVersion(database);  // asked under the lock: another program may have been faster
    if (had >= newest) return;
    database.exec(std::string(all[static_cast<std::size_t>(had)].sql));
    SQLite::Statement dangling(database, "PRAGMA foreign_key_check");
    if (dangling.executeStep())
      throw SQLite::Exception(fmt::format("{} leaves rows of {} without what they refer to",
                                          all[static_cast<std::size_t>(had)].name, dangling.getColumn(0).getString()),
                              SQLITE_CONSTRAINT);
    dangling.reset();
    database.exec(fmt::format("PRAGMA application_id = {}; PRAGMA user_version = {}",
                              static_cast<std::int32_t>(Catalogue::kApplicationId), had + 1));
    transaction.commit();
  }
}

}  // namespace ohmkin::catalog
