#include <exchange/package.h>
#include <exchange/shown.h>
#include <fmt/format.h>
#include <algorithm>
#include <fstream>

namespace ohmkin::exchange {
namespace {

namespace fs = std::filesystem;

/// A name that cannot lead out of the package's folder.
bool plainName(std::string_view name) {
  return !name.empty() && name.size() <= 200 && name.front() != '.' &&
         std::none_of(name.begin(), name.end(), [](char c) {
           return c == '/' || c == '\\' || c == ':' || static_cast<unsigned char>(c) < 0x20U;
         });
}

Expected<std::string> readFile(const fs::path& file, std::string_view name, std::size_t largest) {
  std::error_code error;
  const auto status = fs::symlink_status(file, error);
  if (status.type() == fs::file_type::not_found)
    return refuse("file-missing", std::string(name), "no such file", "a file in the package's folder");
  if (!fs::is_regular_file(status))
    return refuse("file-not-plain", std::string(name), "something that is not a plain file", "a plain file");
  std::ifstream in(file, std::ios::binary);
  if (!in) return refuse("file-unreadable", std::string(name), "a file that may not be read", "a file you may read");
  std::string text;
  std::string block(std::size_t{1} << 16U, '\0');
  while (in.read(block.data(), static_cast<std::streamsize>(block.size())) || in.gcount() > 0) {
    text.append(block, 0, static_cast<std::size_t>(in.gcount()));
    if (text.size() > largest) break;
  }
  if (in.bad())
    return refuse("file-unreadable", std::string(name), "a file that could not be read to its end",
                  "a disk that works");
  return text;
}

}  // namespace

PackageSource PackageSource::folder(fs::path folder) {
  PackageSource source;
  source.where_ = std::move(folder);
  return source;
}

PackageSource PackageSource::memory(std::vector<PackageFile> files) {
  PackageSource source;
  source.where_ = std::move(files);
  return source;
}

Expected<std::string> PackageSource::read(std::string_view name, std::size_t largest) const {
  if (!plainName(name))
    return refuse("file-name", "datapackage.json", shown(name), "the plain name of a file in the package's folder");
  Expected<std::string> text;
  if (const auto* folder = std::get_if<fs::path>(&where_)) {
    text = readFile(*folder / fs::path(name), name, largest);
  } else {
    const auto& files = std::get<std::vector<PackageFile>>(where_);
    const auto found = std::find_if(files.begin(), files.end(), [&](const PackageFile& f) { return f.name == name; });
    if (found == files.end()) return refuse("file-missing", std::string(name), "no such file", "a file in the package");
    text = std::string(found->text);
  }
  if (text && text->size() > largest)
    return refuse("file-too-large", std::string(name), "a file that is too large",
                  fmt::format("at most {} bytes", largest));
  return text;
}

}  // namespace ohmkin::exchange
