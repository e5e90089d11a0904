/// Run by the build: writes down the tables, indexes and so on that the migrations of each version make, for trust.cpp
/// to compare with. Versions end with 1D, objects with 1E, their fields (type, name, table, sql as it is, normalised)
/// with 1F hexadecimal.
#include <SQLiteCpp/SQLiteCpp.h>
#include <catalog/migration.h>
#include <catalog/trust.h>
#include <cstdio>
#include <fstream>

int main(int count, char** arguments) {
  if (count != 2) return 2;
  std::ofstream out(arguments[1], std::ios::binary);
  SQLite::Database database(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
  const auto all = ohmkin::catalog::migrations();
  for (std::size_t version = 0; version <= all.size(); ++version) {
    ohmkin::catalog::migrate(database, std::span(all).first(version));
    SQLite::Statement asked(database,
                            "SELECT type, name, tbl_name, coalesce(sql, '') FROM sqlite_schema ORDER BY type, name");
    while (asked.executeStep())
      out << asked.getColumn(0).getString() << '\x1f' << asked.getColumn(1).getString() << '\x1f'
          << asked.getColumn(2).getString() << '\x1f' << asked.getColumn(3).getString() << '\x1f'
          << ohmkin::catalog::normalisedSql(asked.getColumn(3).getString()) << '\x1e';
    out << '\x1d';
  }
  return out.flush() ? 0 : 1;
}
