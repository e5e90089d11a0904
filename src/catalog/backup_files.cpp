#include <catalog/backup_files.h>
#include <catalog/file_header.h>
#include <fcntl.h>
#include <fmt/chrono.h>
#include <fmt/format.h>
#include <nettle/sha2.h>
#include <unistd.h>
#include <algorithm>
#include <array>
#include <cerrno>
#include <fstream>

namespace ohmkin::catalog {
namespace {

namespace fs = std::filesystem;
using std::chrono::sys_seconds;

constexpr std::array<std::pair<BackupReason, std::string_view>, 4> kEndings{
    {{BackupReason::daily, "daily"},
     {BackupReason::beforeMigration, "before-update"},
     {BackupReason::byHand, "by-hand"},
     {BackupReason::replaced, "replaced"}}};

fs::path hashFile(fs::path backup) { return backup += ".sha256"; }

constexpr std::size_t kMomentSize = 18;  // 2026-11-25T194441Z

std::optional<int> digits(std::string_view text) {
  int value = 0;
  for (const char c : text) {
    if (c < '0' || c > '9') return {};
    value = 10 * value + (c - '0');
  }
  return value;
}

std::optional<sys_seconds> momentIn(std::string_view name) {
  if (name.size() < kMomentSize || name[4] != '-' || name[7] != '-' || name[10] != 'T' || name[17] != 'Z') return {};
  const auto year = digits(name.substr(0, 4));
  const auto month = digits(name.substr(5, 2));
  const auto day = digits(name.substr(8, 2));
  const auto hour = digits(name.substr(11, 2));
  const auto minute = digits(name.substr(13, 2));
  const auto second = digits(name.substr(15, 2));
  if (!year || !month || !day || !hour || !minute || !second) return {};
  const std::chrono::year_month_day date{std::chrono::year(*year), std::chrono::month(static_cast<unsigned>(*month)),
                                         std::chrono::day(static_cast<unsigned>(*day))};
  if (!date.ok()) return {};
  return std::chrono::sys_days(date) + std::chrono::hours(*hour) + std::chrono::minutes(*minute) +
         std::chrono::seconds(*second);
}

}  // namespace

std::string_view text(BackupReason reason) {
  switch (reason) {
    case BackupReason::daily:
      return "daily";
    case BackupReason::beforeMigration:
      return "before an update";
    case BackupReason::byHand:
      return "by hand";
    case BackupReason::replaced:
      return "replaced";
  }
  return {};
}

std::string moment(const Backup& backup) { return fmt::format("{:%Y-%m-%d %H:%M:%S} UTC", fmt::gmtime(backup.taken)); }

void backupFailed(const fs::path& file, std::string found) {
  throw CatalogueError({"backup-failed", file.string(), std::move(found), "a backup beside it; nothing was changed"});
}

std::string hashOf(std::istream& in) {
  in.clear();
  in.seekg(0);
  sha256_ctx context;
  nettle_sha256_init(&context);
  std::vector<char> piece(256U << 10U);
  while (in.read(piece.data(), static_cast<std::streamsize>(piece.size())), in.gcount() > 0)
    nettle_sha256_update(&context, static_cast<std::size_t>(in.gcount()),
                         reinterpret_cast<const std::uint8_t*>(piece.data()));
  if (in.bad() || !in.eof()) return {};
  std::array<std::uint8_t, SHA256_DIGEST_SIZE> digest{};
  nettle_sha256_digest(&context, digest.size(), digest.data());
  return fmt::format("{:02x}", fmt::join(digest, ""));
}

std::string hashOf(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  return in ? hashOf(in) : std::string();
}

fs::path backupFolder(const fs::path& catalogue) {
  fs::path folder = catalogue;
  folder += ".backups";
  return folder;
}

BackupName::BackupName(const fs::path& catalogue, BackupReason reason, const std::string& hash) {
  const auto ending =
      std::find_if(kEndings.begin(), kEndings.end(), [&](const auto& one) { return one.first == reason; })->second;
  auto at = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
  int descriptor = -1;
  for (;; at += std::chrono::seconds(1)) {
    file_ = backupFolder(catalogue) / fmt::format("{:%Y-%m-%dT%H%M%SZ}-{}.ohmkin", fmt::gmtime(at), ending);
    std::error_code error;
    if (fs::exists(file_, error)) continue;
    descriptor = ::open(hashFile(file_).c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
    if (descriptor >= 0 || errno != EEXIST) break;
  }
  const std::string line = fmt::format("{}  {}\n", hash, file_.filename().string());
  const bool written = descriptor >= 0 && !hash.empty() &&
                       ::write(descriptor, line.data(), line.size()) == static_cast<ssize_t>(line.size()) &&
                       fsync(descriptor) == 0;
  if (descriptor >= 0) close(descriptor);
  if (written) return;
  if (descriptor >= 0) unlink(hashFile(file_).c_str());
  backupFailed(catalogue, "a backup whose hash could not be written");
}

BackupName::~BackupName() {
  std::error_code error;
  if (!fs::exists(file_, error)) fs::remove(hashFile(file_), error);
}

std::optional<Backup> backupNamed(const fs::path& file) {
  const std::string name = file.filename().string();
  const auto taken = momentIn(name);
  if (!taken || !name.ends_with(".ohmkin") || name[kMomentSize] != '-') return {};
  const std::string_view ending = std::string_view(name).substr(kMomentSize + 1, name.size() - kMomentSize - 1 - 7);
  const auto reason =
      std::find_if(kEndings.begin(), kEndings.end(), [&](const auto& one) { return one.second == ending; });
  if (reason == kEndings.end()) return {};
  std::error_code error;
  Backup backup{file, *taken, reason->first, static_cast<int>(readFileHeader(file).userVersion),
                fs::file_size(file, error)};
  if (error) return {};
  return backup;
}

std::vector<Backup> backups(const fs::path& catalogue) {
  std::vector<Backup> all;
  std::error_code error;
  for (fs::directory_iterator entry(backupFolder(catalogue), error), end; !error && entry != end;
       entry.increment(error))
    if (auto backup = backupNamed(entry->path())) all.push_back(std::move(*backup));
  std::sort(all.begin(), all.end(),
            [](const Backup& a, const Backup& b) { return a.taken != b.taken ? a.taken > b.taken : a.file < b.file; });
  return all;
}

void syncFile(const fs::path& file) {
  const int descriptor = ::open(file.c_str(), O_RDONLY | O_CLOEXEC);
  if (descriptor < 0) backupFailed(file, "a file that could not be read back");
  const bool synced = fsync(descriptor) == 0;
  close(descriptor);
  if (!synced) backupFailed(file, "a disk that did not keep it");
}

void syncFolder(const fs::path& folder) {
  const int descriptor = ::open(folder.empty() ? "." : folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (descriptor < 0) return;
  fsync(descriptor);
  close(descriptor);
}

}  // namespace ohmkin::catalog
