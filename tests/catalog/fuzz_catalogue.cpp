#include <catalog/engines.h>
#include <catalog/families.h>
#include <catalog/gauges.h>
#include <catalog/salvage.h>
#include <catalog/senders.h>
#include <catalog/vehicles.h>
#include <unistd.h>
#include <array>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

#include "small_catalogue.h"

using namespace ohmkin;
using catalog::Access;
using catalog::Catalogue;
using catalog::CatalogueError;

namespace {

namespace fs = std::filesystem;

void hold(bool so) {
  if (!so) std::abort();
}

/// In memory where there is such a folder, gone at the end.
class Place {
 public:
  Place() {
    const fs::path root = fs::is_directory("/dev/shm") ? "/dev/shm" : fs::temp_directory_path();
    folder_ = root / ("fuzz-catalogue-" + std::to_string(getpid()));
    fs::create_directories(folder_);
    setenv("HOME", "", 1);  // nothing is remembered as looked through
    unsetenv("XDG_STATE_HOME");
    const auto whole = folder_ / "whole.ohmkin";
    fs::remove(whole);
    { (void)test::smallCatalogue(whole); }
    std::ifstream in(whole, std::ios::binary);
    std::ostringstream all;
    all << in.rdbuf();
    whole_ = all.str();
  }
  ~Place() {
    std::error_code ignored;
    fs::remove_all(folder_, ignored);
  }
  Place(const Place&) = delete;
  Place& operator=(const Place&) = delete;
  [[nodiscard]] const std::string& whole() const { return whole_; }
  [[nodiscard]] fs::path file(const char* name) const { return folder_ / name; }

 private:
  fs::path folder_;
  std::string whole_;
};

void askAll(const Catalogue& catalogue) {
  (void)catalog::lines(catalogue);
  (void)catalog::gauges(catalogue);
  (void)catalog::families(catalogue);
}

/// Refused with a sentence that names the file, or answered.
void open(const fs::path& file) {
  try {
    askAll(Catalogue::open(file, Access::readOnly));
  } catch (const CatalogueError& error) {
    hold(error.refusal().where == file.string() && !error.refusal().found.empty());
  }
}

void salvage(const fs::path& file, const fs::path& salvaged) {
  std::error_code ignored;
  fs::remove(salvaged, ignored);
  try {
    (void)catalog::salvage(file, salvaged);
    askAll(Catalogue::open(salvaged, Access::readOnly));  // what was salvaged is sound
  } catch (const CatalogueError& error) {
    hold(!error.refusal().where.empty() && error.refusal().where != salvaged.string());
  }
}

}  // namespace

/// A first byte of 0: the rest is the file. Else the rest changes a whole one: three bytes of place, one of what. A
/// first byte of 0, 1, 16, 17, 32, …: it is salvaged too, which makes a new catalogue and takes ten times as long.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const Place place;
  if (size == 0) return 0;
  std::string content;
  if (data[0] == 0) {
    content.assign(reinterpret_cast<const char*>(data) + 1, size - 1);
  } else {
    content = place.whole();
    for (std::size_t i = 1; i + 4 <= size; i += 4) {
      const std::size_t at =
          (static_cast<std::size_t>(data[i]) << 16U | static_cast<std::size_t>(data[i + 1]) << 8U | data[i + 2]) %
          content.size();
      content[at] = static_cast<char>(data[i + 3]);
    }
  }
  const fs::path file = place.file("f.ohmkin");
  std::ofstream(file, std::ios::binary | std::ios::trunc) << content;
  open(file);
  if ((data[0] & 0x0E) == 0) salvage(file, place.file("salvaged.ohmkin"));
  return 0;
}
