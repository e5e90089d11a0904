#pragma once
#include <finding/refusal.h>
#include <stdexcept>

namespace ohmkin::catalog {

/// The one exception of the database, caught in main and at the window's edge. Its refusal's `where` is the file;
/// what() is its sentence. Codes of opening and creating:
///   catalogue-missing, catalogue-is-folder, catalogue-empty, catalogue-not-sqlite, catalogue-not-ours,
///   catalogue-newer, catalogue-older (read-only and a migration is due),
///   catalogue-interrupted (read-only and a change was cut short), catalogue-read-only, catalogue-unreadable (no
///   permission), catalogue-exists, catalogue-cannot-be-made, catalogue-companion (something beside it that SQLite must
///   not touch), catalogue-foreign-tables (its tables are not those of its version), catalogue-endless (too long to
///   look over).
/// Later on: catalogue-busy, catalogue-moved (deleted or replaced while open), catalogue-not-written,
/// catalogue-damaged, catalogue-full, catalogue-no-memory, catalogue-failed. The file is left as it was.
class CatalogueError : public std::runtime_error {
 public:
  explicit CatalogueError(Refusal refusal) : std::runtime_error(refusal.sentence()), refusal_(std::move(refusal)) {}
  [[nodiscard]] const Refusal& refusal() const { return refusal_; }

 private:
  Refusal refusal_;
};

}  // namespace ohmkin::catalog
