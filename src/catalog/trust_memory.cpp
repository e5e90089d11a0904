#include <catalog/trust_memory.h>
#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>
#include <algorithm>
#include <array>
#include <chrono>
#include <cstdlib>
#include <ctime>
#include <string>
#include <string_view>
#include <thread>

namespace ohmkin::catalog {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t kMostFiles = 50;
constexpr std::size_t kLongestMemory = 16384;
constexpr int kLongestTick = 30;  // milliseconds; Linux ticks in 1 to 10

/// $XDG_STATE_HOME, else ~/.local/state (XDG Base Directory Specification); empty: there is no place.
fs::path folder() {
  const auto said = [](const char* variable) {
    const char* value = std::getenv(variable);
    return fs::path(value != nullptr && *value == '/' ? value : "");
  };
  if (const fs::path state = said("XDG_STATE_HOME"); !state.empty()) return state / "ohmkin";
  const fs::path home = said("HOME");
  return home.empty() ? home : home / ".local" / "state" / "ohmkin";
}

std::int64_t nanoseconds(const timespec& time) { return time.tv_sec * 1'000'000'000LL + time.tv_nsec; }

struct Identity {
  std::string which;         ///< the file
  std::string line;          ///< the file and its state
  std::int64_t changed = 0;  ///< the later of the times in it, nanoseconds
};

/// A log beside the file belongs to its state. The time of change cannot be set back by whoever made the file.
Identity identityOf(const fs::path& file) {
  struct stat main {};
  if (stat(file.c_str(), &main) != 0) return {};
  struct stat log {};
  fs::path beside = file;
  beside += "-wal";
  if (stat(beside.c_str(), &log) != 0) log = {};
  const std::int64_t logChanged = log.st_size > 0 ? nanoseconds(log.st_mtim) : 0;
  std::string which = fmt::format("{:x} {:x} ", main.st_dev, main.st_ino);
  std::string line = which + fmt::format("{} {} {} {} {}\n", main.st_size, nanoseconds(main.st_mtim),
                                         nanoseconds(main.st_ctim), log.st_size, logChanged);
  return {std::move(which), std::move(line), std::max(nanoseconds(main.st_ctim), logChanged)};
}

/// Waits for the clock that stamps files to be past this time: some milliseconds after a change, else not at all. False
/// where it does not come: it was set back.
bool tickIsOver(std::int64_t changed) {
  for (int waited = 0; waited < kLongestTick; ++waited) {
    timespec now{};
    clock_gettime(CLOCK_REALTIME_COARSE, &now);
    if (nanoseconds(now) > changed) return true;
    std::this_thread::sleep_for(std::chrono::milliseconds(1));
  }
  return false;
}

std::string memory(const fs::path& kept) {
  const int descriptor = open(kept.c_str(), O_RDONLY | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK);
  if (descriptor < 0) return {};
  std::string text(kLongestMemory, '\0');
  const ssize_t got = read(descriptor, text.data(), text.size());
  close(descriptor);
  text.resize(got > 0 ? static_cast<std::size_t>(got) : 0);
  return text;
}

/// The line of this file goes first, the oldest ones go.
std::string with(const Identity& identity, std::string_view before) {
  std::string text = identity.line;
  for (std::size_t files = 1; files < kMostFiles && !before.empty(); ++files) {
    const std::string_view line = before.substr(0, before.find('\n') + 1);
    if (line.empty()) break;  // cut off
    if (!line.starts_with(identity.which)) text += line;
    before.remove_prefix(line.size());
  }
  return text;
}

}  // namespace

bool isRemembered(const fs::path& file) {
  const fs::path where = folder();
  const Identity identity = identityOf(file);
  if (where.empty() || identity.line.empty()) return false;
  const std::string all = memory(where / "looked-through");
  const std::size_t at = all.find(identity.line);
  return at != std::string::npos && (at == 0 || all[at - 1] == '\n');
}

void remember(const fs::path& file) {
  const fs::path where = folder();
  const Identity identity = identityOf(file);
  if (where.empty() || identity.line.empty()) return;
  const std::string before = memory(where / "looked-through");
  if (before.starts_with(identity.line)) return;
  // What is changed within the same tick of the clock has the same times: only what outlived its tick is remembered.
  if (!tickIsOver(identity.changed) || identityOf(file).line != identity.line) return;
  std::error_code error;
  fs::create_directories(where, error);
  const std::string after = with(identity, before);
  const fs::path draft = where / fmt::format("looked-through.{}", getpid());
  const int descriptor = open(draft.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC | O_NOFOLLOW, 0600);
  if (descriptor < 0) return;
  const bool whole = write(descriptor, after.data(), after.size()) == static_cast<ssize_t>(after.size());
  close(descriptor);
  if (whole) fs::rename(draft, where / "looked-through", error);
  if (!whole || error) fs::remove(draft, error);
}

}  // namespace ohmkin::catalog
