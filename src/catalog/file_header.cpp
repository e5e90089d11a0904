#include <catalog/file_header.h>
#include <array>
#include <fstream>
#include <string_view>

namespace ohmkin::catalog {
namespace {

constexpr std::string_view kMagic{"SQLite format 3\0", 16};
constexpr std::size_t kHeaderSize = 100;
constexpr std::size_t kReadVersionAt = 19;
constexpr char kWriteAheadLog = 2;
constexpr std::size_t kUserVersionAt = 60;
constexpr std::size_t kApplicationIdAt = 68;

std::uint32_t bigEndian(const std::array<char, kHeaderSize>& bytes, std::size_t at) {
  std::uint32_t value = 0;
  for (std::size_t i = at; i < at + 4; ++i) value = (value << 8U) | static_cast<unsigned char>(bytes[i]);
  return value;
}

}  // namespace

FileHeader readFileHeader(const std::filesystem::path& file) {
  std::error_code error;
  const auto status = std::filesystem::status(file, error);
  if (status.type() == std::filesystem::file_type::not_found) return {FileNature::missing};
  if (error) return {FileNature::unreadable};
  if (std::filesystem::is_directory(status)) return {FileNature::folder};
  if (!std::filesystem::is_regular_file(status)) return {FileNature::notSqlite};  // a pipe would block the read

  std::filebuf in;
  if (in.open(file, std::ios::in | std::ios::binary) == nullptr) return {FileNature::unreadable};
  std::array<char, kHeaderSize> bytes{};
  const auto got = static_cast<std::size_t>(in.sgetn(bytes.data(), static_cast<std::streamsize>(bytes.size())));
  if (got == 0) return {FileNature::empty};
  if (got < kHeaderSize || std::string_view(bytes.data(), kMagic.size()) != kMagic) return {FileNature::notSqlite};
  return {FileNature::sqlite, bytes[kReadVersionAt] == kWriteAheadLog, bigEndian(bytes, kApplicationIdAt),
          bigEndian(bytes, kUserVersionAt)};
}

}  // namespace ohmkin::catalog
