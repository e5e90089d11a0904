#include <catalogue/clerk.h>
#include <workflow/person.h>

namespace ohmkin::shelves {

OpenFile::OpenFile(const std::filesystem::path& file)
    : read_(catalog::Catalogue::openToRead(file)), who_(workflow::personLoggedIn()) {}

workflow::Finder& OpenFile::finder() {
  if (!finder_) finder_.emplace(read_);
  return *finder_;
}

catalog::Catalogue& OpenFile::writable() {
  if (!write_) write_.emplace(catalog::Catalogue::open(read_.file(), catalog::Access::readWrite));
  return *write_;
}

workflow::EditSession& OpenFile::session(const DisplayUnits& units) {
  if (!session_) session_.emplace(writable(), who_, units);
  session_->setUnits(units);
  return *session_;
}

workflow::EditRefusal refusalOf(const catalog::CatalogueError& error) {
  workflow::EditRefusal refused;
  refused.reasons.push_back(error.refusal());
  return refused;
}

}  // namespace ohmkin::shelves
