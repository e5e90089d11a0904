#pragma once
#include "demo_catalogue.h"

#include <sqlite3.h>
#include <workflow/edit_session.h>
#include <QTest>
#include <filesystem>
#include <string>

/// What the tests of editing share: a copy of the demo catalogue to change, and a look at the file by SQLite itself.
namespace ohmkin::test {

inline std::string inFile(const std::filesystem::path& file, const std::string& sql) {
  sqlite3* handle = nullptr;
  sqlite3_stmt* statement = nullptr;
  std::string text = "unreadable";
  if (sqlite3_open(file.c_str(), &handle) == SQLITE_OK &&
      sqlite3_prepare_v2(handle, sql.c_str(), -1, &statement, nullptr) == SQLITE_OK &&
      sqlite3_step(statement) == SQLITE_ROW && sqlite3_column_text(statement, 0) != nullptr)
    text = reinterpret_cast<const char*>(sqlite3_column_text(statement, 0));
  sqlite3_finalize(statement);
  sqlite3_close(handle);
  return text;
}

inline bool sound(const std::filesystem::path& file) {
  return inFile(file, "SELECT count(*) FROM pragma_foreign_key_check") == "0" &&
         inFile(file, "PRAGMA integrity_check") == "ok";
}

inline std::filesystem::path copyOf(const DemoCatalogue& demo, const char* name) {
  const auto file = demo.beside(name);
  for (const char* ending : {"-wal", "-shm"}) std::filesystem::remove(file.string() + ending);
  std::filesystem::copy_file(demo.file(), file, std::filesystem::copy_options::overwrite_existing);
  return file;
}

inline workflow::Thing thing(const catalog::Catalogue& catalogue, const char* kind, const std::vector<std::string>& key,
                             const DisplayUnits& units = {}) {
  auto read = workflow::readThing(catalogue, kind, key, units);
  if (!read) qFatal("%s", read.error().sentence().c_str());
  return std::move(*read);
}

inline std::string why(const workflow::Editing& editing) {
  return editing ? editing->sentence : editing.error().text();
}

inline std::string code(const workflow::Editing& editing) {
  return editing ? std::string("done") : editing.error().reasons.front().code;
}
inline std::string where(const workflow::Editing& editing) {
  return editing ? std::string("done") : editing.error().reasons.front().where;
}

}  // namespace ohmkin::test
