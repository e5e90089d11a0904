#include "demo_catalogue.h"

#include <embedded/ohmkin_seed_data.h>
#include <workflow/load_pack.h>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace ohmkin::test {

DemoCatalogue::DemoCatalogue() : file_(std::filesystem::path(folder_.path().toStdString()) / "demo.ohmkin") {
  std::vector<exchange::PackageFile> files;
  for (const auto& file : seed_data::files()) files.push_back({file.name, file.text});
  const auto loaded = workflow::createWithPack(file_, exchange::PackageSource::memory(std::move(files)), "test");
  if (!loaded) throw std::runtime_error(loaded.error().text());
}

std::string bytesOf(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  std::ostringstream out;
  out << in.rdbuf();
  return out.str();
}

}  // namespace ohmkin::test
