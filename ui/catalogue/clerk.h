#pragma once
#include <catalog/catalogue.h>
#include <desk/file_thread.h>
#include <workflow/edit_session.h>
#include <workflow/find.h>

/// The catalogue page: find anything, look at it, edit it, sell it. Its namespace is ohmkin::shelves: ohmkin::catalog
/// is the room that keeps the file.
namespace ohmkin::shelves {

/// What lives on a clerk's thread: one connection that reads, and from the first change on one that writes.
class OpenFile {
 public:
  explicit OpenFile(const std::filesystem::path& file);  ///< throws catalog::CatalogueError, as the others here
  OpenFile(const OpenFile&) = delete;
  OpenFile& operator=(const OpenFile&) = delete;

  [[nodiscard]] const catalog::Catalogue& catalogue() const { return read_; }
  catalog::Catalogue& reading() { return read_; }  ///< opened readOnly
  workflow::Finder& finder();                      ///< made at the first question
  catalog::Catalogue& writable();
  workflow::EditSession& session(const DisplayUnits& units);
  [[nodiscard]] const std::string& who() const { return who_; }

 private:
  catalog::Catalogue read_;
  std::string who_;
  std::optional<workflow::Finder> finder_;
  std::optional<catalog::Catalogue> write_;
  std::optional<workflow::EditSession> session_;
};

using Clerk = desk::ThreadWith<OpenFile>;

/// The window's one refusal of a change, from that of the file.
workflow::EditRefusal refusalOf(const catalog::CatalogueError& error);

}  // namespace ohmkin::shelves
