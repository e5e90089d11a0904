#include <catalog/backup_files.h>
#include <fmt/format.h>
#include <signal.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>
#include <array>
#include <atomic>
#include <cerrno>
#include <charconv>
#include <fstream>
#include <sstream>

namespace ohmkin::catalog {
namespace {

namespace fs = std::filesystem;
using std::chrono::system_clock;

constexpr std::string_view kDraft = "part-";
constexpr std::string_view kHash = ".sha256";
constexpr std::chrono::minutes kUntouched{10};
constexpr std::array kBeside{"", "-journal", "-wal", "-shm"};

/// The process that made a draft: the number after the prefix. None: it is no draft.
std::optional<pid_t> makerIn(std::string_view name, std::string_view prefix) {
  if (!name.starts_with(prefix)) return {};
  name.remove_prefix(prefix.size());
  pid_t maker = 0;
  const auto [end, error] = std::from_chars(name.data(), name.data() + name.size(), maker);
  if (error != std::errc() || maker <= 0) return {};
  // Nothing follows but a number of its own and what SQLite adds.
  const std::string_view rest(end, static_cast<std::size_t>(name.data() + name.size() - end));
  return rest.empty() || rest.front() == '-' ? std::optional(maker) : std::nullopt;
}

/// When a process began; none where that cannot be known (proc(5), the 22nd field of stat: ticks since the start).
std::optional<system_clock::time_point> beginningOf(pid_t process) {
  std::ifstream in(fmt::format("/proc/{}/stat", process));
  std::string line;
  std::getline(in, line);
  const auto nameEnd = line.rfind(')');  // the second field is any text in brackets
  if (nameEnd == std::string::npos) return {};
  std::istringstream fields(line.substr(nameEnd + 1));
  std::string skipped;
  for (int field = 3; field < 22; ++field) fields >> skipped;
  long long ticks = 0;
  timespec sinceStart{};
  const long perSecond = sysconf(_SC_CLK_TCK);
  if (!(fields >> ticks) || perSecond <= 0 || clock_gettime(CLOCK_BOOTTIME, &sinceStart) != 0) return {};
  return system_clock::now() - std::chrono::seconds(sinceStart.tv_sec) + std::chrono::seconds(ticks / perSecond);
}

bool worksOn(pid_t maker, system_clock::time_point lastWritten) {
  if (kill(maker, 0) != 0 && errno == ESRCH) return false;
  const auto began = beginningOf(maker);
  return !began || *began <= lastWritten + std::chrono::minutes(1);
}

std::optional<system_clock::time_point> lastWritten(const fs::path& file) {
  struct stat status {};
  if (lstat(file.c_str(), &status) != 0 || !S_ISREG(status.st_mode)) return {};
  return system_clock::from_time_t(status.st_mtime);
}

/// A clock set back makes what was written just now look like the future.
bool isUntouched(system_clock::time_point written) {
  const auto now = system_clock::now();
  return written < now - kUntouched || written > now + kUntouched;
}

void clearDrafts(const fs::path& folder, std::string_view prefix) {
  std::error_code error;
  for (fs::directory_iterator entry(folder, error), end; !error && entry != end; entry.increment(error)) {
    const auto maker = makerIn(entry->path().filename().native(), prefix);
    if (!maker) continue;
    const auto written = lastWritten(entry->path());
    std::error_code ignored;
    if (written && isUntouched(*written) && !worksOn(*maker, *written)) fs::remove(entry->path(), ignored);
  }
}

/// Of backups that never came: a process ended between the two.
void clearHashes(const fs::path& folder) {
  std::error_code error;
  for (fs::directory_iterator entry(folder, error), end; !error && entry != end; entry.increment(error)) {
    const fs::path& file = entry->path();
    if (file.extension() != kHash) continue;
    fs::path backup = file;
    backup.replace_extension();
    std::error_code ignored;
    if (backup.extension() != ".ohmkin" || fs::exists(backup, ignored)) continue;
    const auto written = lastWritten(file);
    if (written && isUntouched(*written)) fs::remove(file, ignored);
  }
}

/// The file itself under a second name: a restore ended after it had put the old file aside and before the new one was
/// in place. What is written into the file would be written into that backup.
void clearAliases(const fs::path& catalogue) {
  for (const Backup& backup : backups(catalogue)) {
    std::error_code error;
    const fs::path hash = backup.file.string() + std::string(kHash);
    const auto written = lastWritten(hash);
    if (backup.reason != BackupReason::replaced || !written || !isUntouched(*written) ||
        !fs::equivalent(backup.file, catalogue, error))
      continue;
    if (fs::remove(backup.file, error)) fs::remove(hash, error);
  }
}

}  // namespace

BackupDraft BackupDraft::among(const fs::path& catalogue) {
  static std::atomic<int> drafts = 0;  // threads of one program may open the same older file at once
  const fs::path folder = backupFolder(catalogue);
  std::error_code error;
  fs::create_directory(folder, fs::absolute(catalogue).parent_path(), error);  // with the access rights of its folder
  return BackupDraft(folder / fmt::format("{}{}-{}", kDraft, getpid(), ++drafts));
}

BackupDraft BackupDraft::beside(const fs::path& catalogue) {
  return BackupDraft(catalogue.string() + fmt::format(".{}{}", kDraft, getpid()));
}

BackupDraft::BackupDraft(fs::path path) : path_(std::move(path)) { clear(); }
BackupDraft::~BackupDraft() { clear(); }

void BackupDraft::clear() const {
  std::error_code ignored;
  for (const char* ending : kBeside) fs::remove(path_.string() + ending, ignored);
}

void clearLeftovers(const fs::path& catalogue) {
  clearAliases(catalogue);
  clearDrafts(backupFolder(catalogue), kDraft);
  clearHashes(backupFolder(catalogue));
  clearDrafts(fs::absolute(catalogue).parent_path(), catalogue.filename().string() + "." + std::string(kDraft));
}

}  // namespace ohmkin::catalog
