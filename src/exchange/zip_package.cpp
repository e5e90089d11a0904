#include <exchange/archive_library.h>
#include <exchange/shown.h>
#include <exchange/zip_package.h>
#include <fmt/format.h>
#include <algorithm>
#include <array>
#include <fstream>
#include <memory>
#include <set>

namespace ohmkin::exchange {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t kBlock = std::size_t{1} << 16;
constexpr std::size_t kDenseFrom = std::size_t{1} << 20;  // small files may pack as densely as they like
constexpr std::size_t kLongestName = 200;

Expected<std::string> packedBytes(const fs::path& file, std::size_t largest) {
  std::error_code error;
  if (!fs::exists(file, error)) return refuse("file-missing", file.string(), "no such file", "a zip");
  if (!fs::is_regular_file(file, error))
    return refuse("zip-unreadable", file.string(), "something that is not a file", "a zip");
  std::ifstream in(file, std::ios::binary);
  std::string bytes;
  std::string block(kBlock, '\0');
  while (in.read(block.data(), static_cast<std::streamsize>(block.size())) || in.gcount() > 0) {
    bytes.append(block, 0, static_cast<std::size_t>(in.gcount()));
    if (bytes.size() > largest)
      return refuse("zip-too-large", file.string(), "a zip that is too large",
                    fmt::format("at most {} bytes", largest));
  }
  if (!in.eof()) return refuse("zip-unreadable", file.string(), "a file that cannot be read", "one you may read");
  return bytes;
}

bool plainPart(std::string_view part) {
  return !part.empty() && part.size() <= kLongestName && part.front() != '.' &&
         std::none_of(part.begin(), part.end(), [](char c) {
           return c == '/' || c == '\\' || c == ':' || static_cast<unsigned char>(c) < 0x20U || c == 0x7F;
         });
}

std::string lowered(std::string text) {
  for (char& c : text)
    if ('A' <= c && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return text;
}

/// Unpacks one zip; each question of the format is a member.
class Unpacking {
 public:
  using Files = std::map<std::string, std::string, std::less<>>;
  Unpacking(const ArchiveLibrary& a, const fs::path& file, std::string_view bytes, const ZipPackage::Limits& limits)
      : a_(a), file_(file), bytes_(bytes), limits_(limits), zip_(a.read_new(), a.read_free) {}

  Expected<Files> all() {
    if (a_.read_support_format_zip(zip_.get()) != ARCHIVE_OK ||
        a_.read_open_memory(zip_.get(), bytes_.data(), bytes_.size()) != ARCHIVE_OK)
      return unreadable();
    archive_entry* entry = nullptr;
    std::size_t entries = 0;
    while (true) {
      const int header = a_.read_next_header(zip_.get(), &entry);
      if (header == ARCHIVE_EOF) break;
      if (header < ARCHIVE_WARN) return unreadable();
      if (++entries > limits_.files) return tooLarge(fmt::format("at most {} files", limits_.files));
      if (auto taken = take(entry); !taken) return tl::make_unexpected(taken.error());
    }
    if (entries == 0) return unreadable();
    return std::move(files_);
  }

 private:
  tl::unexpected<Refusal> unreadable() const {
    const char* said = a_.error_string(zip_.get());
    return refuse("zip-unreadable", file_.string(),
                  fmt::format("a zip that cannot be read{}", said == nullptr ? "" : fmt::format(" ({})", said)),
                  "a whole zip");
  }
  tl::unexpected<Refusal> tooLarge(std::string limit) const {
    return refuse("zip-too-large", file_.string(), "a zip that holds too much", std::move(limit));
  }
  tl::unexpected<Refusal> wrongName(std::string_view name) const {
    return refuse("zip-name", file_.string(), shown(name), "plain names of files, all at the top or all in one folder");
  }

  Expected<void> take(archive_entry* entry) {
    const char* given = a_.entry_pathname(entry);
    if (given == nullptr) return wrongName("a name that cannot be read");
    std::string name = given;
    if (a_.entry_symlink(entry) != nullptr || a_.entry_hardlink(entry) != nullptr ||
        a_.entry_filetype(entry) == AE_IFLNK)
      return refuse("zip-link", file_.string(), shown(name), "plain files; a link may lead anywhere");
    const auto type = a_.entry_filetype(entry);
    if (type == AE_IFDIR) return takeFolder(std::move(name));
    if (type != AE_IFREG) return refuse("zip-link", file_.string(), shown(name), "plain files");
    if (a_.entry_is_encrypted(entry) != 0)
      return refuse("zip-locked", file_.string(), shown(name), "a zip without a password");
    const auto slash = name.find('/');
    if (slash != std::string::npos) {
      if (auto inside = takeFolder(name.substr(0, slash)); !inside) return inside;
      name.erase(0, slash + 1);
    } else {
      atTop_ = true;
    }
    if (!plainPart(name) || (atTop_ && inFolder_)) return wrongName(given);
    if (!names_.insert(lowered(name)).second)
      return refuse("zip-twice", file_.string(), shown(name), "each name once, letter case aside");
    return unpack(name);
  }

  Expected<void> takeFolder(std::string name) {
    if (!name.empty() && name.back() == '/') name.pop_back();
    if (!plainPart(name) || (inFolder_ && folder_ != name)) return wrongName(name);
    folder_ = std::move(name);
    inFolder_ = true;
    return {};
  }

  Expected<void> unpack(const std::string& name) {
    std::string& text = files_[name];
    std::string block(kBlock, '\0');
    while (true) {
      const la_ssize_t got = a_.read_data(zip_.get(), block.data(), block.size());
      if (got < 0) return unreadable();
      if (got == 0) return {};
      text.append(block, 0, static_cast<std::size_t>(got));
      total_ += static_cast<std::size_t>(got);
      if (text.size() > limits_.fileBytes) return tooLarge(fmt::format("at most {} bytes a file", limits_.fileBytes));
      if (total_ > limits_.totalBytes) return tooLarge(fmt::format("at most {} bytes unpacked", limits_.totalBytes));
      if (total_ > kDenseFrom && static_cast<double>(total_) > limits_.ratio * static_cast<double>(bytes_.size()))
        return refuse("zip-too-dense", file_.string(),
                      fmt::format("a zip that unpacks to more than {} times its size", limits_.ratio),
                      "tables of a catalogue, which pack less densely");
    }
  }

  const ArchiveLibrary& a_;
  const fs::path& file_;
  std::string_view bytes_;
  const ZipPackage::Limits& limits_;
  std::unique_ptr<archive, int (*)(archive*)> zip_;
  Files files_;
  std::set<std::string> names_;
  std::string folder_;
  bool inFolder_ = false;
  bool atTop_ = false;
  std::size_t total_ = 0;
};

}  // namespace

Expected<ZipPackage> ZipPackage::open(const fs::path& file, const Limits& limits) {
  const auto bytes = packedBytes(file, limits.packedBytes);
  if (!bytes) return tl::make_unexpected(bytes.error());
  const auto library = ArchiveLibrary::loaded();
  if (!library) return tl::make_unexpected(library.error());
  auto files = Unpacking(**library, file, *bytes, limits).all();
  if (!files) return tl::make_unexpected(files.error());
  ZipPackage package;
  package.files_ = std::move(*files);
  return package;
}

PackageSource ZipPackage::source() const {
  std::vector<PackageFile> views;
  views.reserve(files_.size());
  for (const auto& [name, text] : files_) views.push_back({name, text});
  return PackageSource::memory(std::move(views));
}

Expected<PackageAt> PackageAt::open(const fs::path& path) {
  PackageAt package;
  if (!isZip(path)) {
    package.folder_ = path;
    return package;
  }
  auto zip = ZipPackage::open(path);
  if (!zip) return tl::make_unexpected(zip.error());
  package.zip_ = std::move(*zip);
  return package;
}

bool isZip(const fs::path& file) {
  std::string ending = lowered(file.extension().string());
  std::error_code error;
  if (fs::is_directory(file, error)) return false;
  if (ending == ".zip") return true;
  std::ifstream in(file, std::ios::binary);
  std::array<char, 4> first{};
  return in.read(first.data(), first.size()) && std::string_view(first.data(), 4) == "PK\x03\x04";
}

}  // namespace ohmkin::exchange
