#include <catalog/connection.h>
#include <catalog/file_header.h>
#include <sqlite3.h>
#include <array>
#include <cstdlib>
#include <memory>
#include <string_view>

namespace ohmkin::catalog {
namespace {

constexpr std::string_view kMagic{"SQLite format 3\0", 16};
constexpr std::size_t kHeaderSize = 100;
constexpr std::size_t kReadVersionAt = 19;
constexpr char kWriteAheadLog = 2;
constexpr std::size_t kPageSizeAt = 16;
constexpr std::size_t kWriteVersionAt = 18;
constexpr std::size_t kReservedAt = 20;
constexpr std::size_t kPayloadFractionsAt = 21;
constexpr std::size_t kChangeCounterAt = 24;
constexpr std::size_t kPagesAt = 28;
constexpr std::size_t kSchemaFormatAt = 44;
constexpr std::size_t kEncodingAt = 56;
constexpr std::size_t kUserVersionAt = 60;
constexpr std::size_t kApplicationIdAt = 68;
constexpr std::size_t kPagesValidForAt = 92;

using Header = std::array<char, kHeaderSize>;

std::uint32_t bigEndian(const Header& bytes, std::size_t at) {
  std::uint32_t value = 0;
  for (std::size_t i = at; i < at + 4; ++i) value = (value << 8U) | static_cast<unsigned char>(bytes[i]);
  return value;
}

std::uint64_t pageSize(const Header& bytes) {
  const auto first = static_cast<unsigned char>(bytes[kPageSizeAt]);
  const auto second = static_cast<unsigned char>(bytes[kPageSizeAt + 1]);
  const std::uint64_t size = (std::uint64_t{first} << 8U) | second;
  return size == 1 ? 65536 : size;
}

/// What the format demands, and of what it allows only what a catalogue of ours has.
std::string_view flawOf(const Header& bytes) {
  const std::uint64_t size = pageSize(bytes);
  if (size < 512 || (size & (size - 1)) != 0) return "a header with an impossible size of pages";
  if (bytes[kReservedAt] != 0) return "a header that keeps room no catalogue keeps";
  for (const std::size_t at : {kWriteVersionAt, kReadVersionAt})
    if (bytes[at] != 1 && bytes[at] != kWriteAheadLog) return "a header of an unknown version of the format";
  if (std::string_view(&bytes[kPayloadFractionsAt], 3) != "\x40\x20\x20") return "a header with impossible fractions";
  if (bigEndian(bytes, kSchemaFormatAt) > 4) return "a header of an unknown version of the format";
  if (bigEndian(bytes, kEncodingAt) > 1) return "a header that names another encoding than UTF-8";
  return {};
}

/// The number of pages counts where the header says that it is of the last change.
bool shorterThanItSays(const Header& bytes, std::uint64_t size) {
  if (bigEndian(bytes, kChangeCounterAt) != bigEndian(bytes, kPagesValidForAt)) return false;
  return size < pageSize(bytes) * bigEndian(bytes, kPagesAt);
}

/// Through SQLite's own layer for files, which puts off closing while another connection of this program has a lock on
/// the file: closing any opening of a file lets go of all locks a program has on it, and another program would then
/// take the log away from under the connection (sqlite.org/howtocorrupt.html, section 2.2).
int readBeginning(const std::filesystem::path& file, Header& bytes) {
  keepNoStatistics();
  std::error_code error;
  const std::filesystem::path where = std::filesystem::canonical(file, error);  // that layer follows no links
  sqlite3_vfs* vfs = sqlite3_vfs_find(nullptr);
  const std::unique_ptr<char, decltype(&std::free)> room(
      static_cast<char*>(std::calloc(1, static_cast<std::size_t>(vfs->szOsFile))), &std::free);
  const std::unique_ptr<const char, void (*)(const char*)> name(
      sqlite3_create_filename(where.c_str(), "", "", 0, nullptr), sqlite3_free_filename);
  if (error) return SQLITE_CANTOPEN;
  if (!room || !name) return SQLITE_NOMEM;
  auto* open = reinterpret_cast<sqlite3_file*>(room.get());
  const int opened = vfs->xOpen(vfs, name.get(), open, SQLITE_OPEN_READONLY | SQLITE_OPEN_MAIN_DB, nullptr);
  const int outcome = opened == SQLITE_OK ? open->pMethods->xRead(open, bytes.data(), kHeaderSize, 0) : opened;
  if (open->pMethods != nullptr) open->pMethods->xClose(open);
  return outcome;
}

}  // namespace

FileHeader readFileHeader(const std::filesystem::path& file) {
  std::error_code error;
  const auto status = std::filesystem::status(file, error);
  if (status.type() == std::filesystem::file_type::not_found) return {FileNature::missing};
  if (error) return {FileNature::unreadable};
  if (std::filesystem::is_directory(status)) return {FileNature::folder};
  if (!std::filesystem::is_regular_file(status)) return {FileNature::special};  // a pipe would block the read

  const std::uintmax_t size = std::filesystem::file_size(file, error);
  if (!error && size == 0) return {FileNature::empty};
  std::array<char, kHeaderSize> bytes{};
  const int outcome = readBeginning(file, bytes);
  if (outcome == SQLITE_IOERR_SHORT_READ) return {FileNature::notSqlite};
  if (outcome != SQLITE_OK) return {FileNature::unreadable};
  if (std::string_view(bytes.data(), kMagic.size()) != kMagic) return {FileNature::notSqlite};
  return {FileNature::sqlite,
          bytes[kReadVersionAt] == kWriteAheadLog,
          bigEndian(bytes, kApplicationIdAt),
          bigEndian(bytes, kUserVersionAt),
          flawOf(bytes),
          !error && shorterThanItSays(bytes, size)};
}

}  // namespace ohmkin::catalog
