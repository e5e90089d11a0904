#include <exchange/package.h>
#include <exchange/zip_package.h>
#include <unistd.h>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>
#include <string_view>

using namespace ohmkin;
using namespace ohmkin::exchange;

namespace {

void hold(bool so) {
  if (!so) std::abort();
}

constexpr Limits kLimits{1U << 16U, 1U << 18U, 2000, 256, 20};

void readAll(const PackageSource& source) {
  const auto package = readPackage(source, {}, kLimits);
  if (!package) {
    hold(!package.error().text().empty());
    return;
  }
  hold(package->descriptor.id != "shop" && !package->descriptor.id.empty());
  for (const Table& table : package->tables) {
    hold(table.definition != nullptr && table.cells.size() == table.size() * table.columns.size());
    hold(table.size() <= kLimits.rows);
  }
}

}  // namespace

/// A first byte of 0: the rest is a zip. Else it is files of a package, parted by a line "=== NAME".
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  const std::string_view text(reinterpret_cast<const char*>(data) + 1, size - 1);
  if (data[0] == 0) {
    static const std::filesystem::path file =
        std::filesystem::path(std::filesystem::is_directory("/dev/shm") ? "/dev/shm" : "/tmp") /
        ("fuzz-package-" + std::to_string(getpid()) + ".zip");
    std::ofstream(file, std::ios::binary | std::ios::trunc) << text;
    ZipPackage::Limits limits;
    if (const auto zip = ZipPackage::open(file, limits)) readAll(zip->source());
    std::filesystem::remove(file);
    return 0;
  }
  std::vector<PackageFile> files;
  std::string_view rest = text;
  while (!rest.empty() && files.size() < 16) {
    const std::size_t end = rest.find("\n=== ");
    const std::string_view part = rest.substr(0, end);
    const std::size_t nameEnd = part.find('\n');
    if (nameEnd != std::string_view::npos) files.push_back({part.substr(0, nameEnd), part.substr(nameEnd + 1)});
    if (end == std::string_view::npos) break;
    rest.remove_prefix(end + 5);
  }
  readAll(PackageSource::memory(std::move(files)));
  return 0;
}
