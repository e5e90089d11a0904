#pragma once
#include <SQLiteCpp/SQLiteCpp.h>
#include <catalog/connection.h>
#include <catalog/row.h>
#include <string>

/// Inside this room only: statements that write.
namespace ohmkin::catalog {

/// Runs a statement that gives no rows. `sql` must be a string literal.
void change(Connection& connection, const char* sql, const auto&... values) {
  SQLite::Statement& statement = connection.statement(sql);
  const Use use(statement);
  statement.clearBindings();
  bindAll(statement, 1, values...);
  statement.exec();
}

/// A value that may be nothing.
template <class Value>
struct Maybe {
  std::optional<Value> value;
};
template <class Value>
Maybe(std::optional<Value>) -> Maybe<Value>;
template <class Value, class... Rest>
void bindAll(SQLite::Statement& statement, int at, const Maybe<Value>& first, const Rest&... rest) {
  if (first.value) statement.bind(at, *first.value);
  else statement.bind(at);
  bindAll(statement, at + 1, rest...);
}

/// A line of the change log.
inline void logChange(Connection& connection, std::string_view who, const std::string& what, const std::string& subject,
                      const std::string& before, const std::string& after) {
  change(connection,
         "INSERT INTO change_log (at, who, what, subject, before, after) "
         "VALUES (strftime('%Y-%m-%dT%H:%M:%SZ', 'now'), ?, ?, ?, ?, ?)",
         std::string(who), what, subject, before, after);
}

/// One transaction with the write lock from its beginning; rolls back unless committed. From now on readers and the
/// writer keep out of each other's way.
class Change {
 public:
  explicit Change(Connection& connection) {
    // A reader would get its transaction and fail at the first row only.
    if (connection.access() == Access::readOnly) throw SQLite::Exception("opened for reading", kReadOnly);
    connection.useWriteAheadLog();
    transaction_.emplace(connection.database(), SQLite::TransactionBehavior::IMMEDIATE);
  }
  void commit() { transaction_->commit(); }

 private:
  static constexpr int kReadOnly = 8;  // SQLITE_READONLY
  std::optional<SQLite::Transaction> transaction_;
};

inline bool breaksRule(const SQLite::Exception& failure) {
  constexpr int kConstraint = 19;  // SQLITE_CONSTRAINT, SQLITE_MISMATCH
  constexpr int kMismatch = 20;
  const int code = failure.getErrorCode() & 0xFF;
  return code == kConstraint || code == kMismatch;
}

/// What rule a row breaks: SQLite's words without its preface.
inline std::string brokenRule(const SQLite::Exception& failure) {
  const std::string_view said = failure.what();
  const auto colon = said.find(": ");
  return std::string(colon == std::string_view::npos ? said : said.substr(colon + 2));
}

}  // namespace ohmkin::catalog
