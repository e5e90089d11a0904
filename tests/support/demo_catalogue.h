#pragma once
#include <catalog/catalogue.h>
#include <QTemporaryDir>
#include <filesystem>
#include <string>

namespace ohmkin::test {

/// The demo catalogue, written once a test program into a folder that goes away with it.
class DemoCatalogue {
 public:
  DemoCatalogue();
  [[nodiscard]] std::filesystem::path file() const { return file_; }
  [[nodiscard]] catalog::Catalogue open(catalog::Access access = catalog::Access::readOnly) const {
    return catalog::Catalogue::open(file_, access);
  }
  [[nodiscard]] std::filesystem::path beside(const char* name) const { return file_.parent_path() / name; }

 private:
  QTemporaryDir folder_;
  std::filesystem::path file_;
};

/// The whole of a file, to see that nothing in it changed.
std::string bytesOf(const std::filesystem::path& file);

}  // namespace ohmkin::test
