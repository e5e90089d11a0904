#include "system_calls.h"

#include <dlfcn.h>
#include <fcntl.h>
#include <sys/sendfile.h>
#include <sys/stat.h>
#include <sys/uio.h>
#include <unistd.h>
#include <algorithm>
#include <cerrno>
#include <cstdarg>
#include <cstdio>
#include <fstream>
#include <sstream>

namespace ohmkin::test {
namespace {

SystemCalls::Before* watcher = nullptr;
bool within = false;

/// False: the call is to fail.
bool mayGoOn(CallKind kind, int descriptor = -1) {
  if (watcher == nullptr || within || (descriptor >= 0 && descriptor <= 2)) return true;
  within = true;
  const bool may = (*watcher)(kind, descriptor);
  within = false;
  return may;
}

template <class Function>
Function* real(const char* name) {
  return reinterpret_cast<Function*>(dlsym(RTLD_NEXT, name));
}

template <class Result>
Result failed(int error) {
  errno = error;
  return static_cast<Result>(-1);
}

bool changes(int flags) { return (flags & (O_CREAT | O_TRUNC)) != 0; }

unsigned modeOf(int flags, va_list arguments) { return (flags & O_CREAT) != 0 ? va_arg(arguments, unsigned) : 0; }

std::string contentOf(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  std::ostringstream all;
  all << in.rdbuf();
  return all.str();
}

}  // namespace

void SystemCalls::watch(Before before) {
  watchNoMore();
  watcher = new Before(std::move(before));
}

void SystemCalls::watchNoMore() {
  delete watcher;
  watcher = nullptr;
}

PowerCut::PowerCut(std::filesystem::path folder) : folder_(std::move(folder)) {
  states_.push_back(scan());
  for (auto& [number, content] : contents_) content.durable = content.now;
}

PowerCut::Names PowerCut::scan() {
  Names names;
  std::map<unsigned long, int> present;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(folder_)) {
    struct stat status {};
    const std::string path = entry.path().string().substr(folder_.string().size() + 1);
    if (lstat(entry.path().c_str(), &status) != 0 || path.ends_with("-shm")) continue;
    if (S_ISDIR(status.st_mode)) {
      names[path + '/'] = 0;
      continue;
    }
    const auto known = numbers_.find(status.st_ino);
    const auto again = present.find(status.st_ino);
    const int number = again != present.end() ? again->second : known != numbers_.end() ? known->second : ++files_;
    present[status.st_ino] = number;
    names[path] = number;
    contents_[number].now = contentOf(entry.path());
  }
  numbers_ = std::move(present);
  return names;
}

void PowerCut::before() {
  Names now = scan();
  if (now != states_.back()) states_.push_back(std::move(now));
}

void PowerCut::synced(int descriptor) {
  struct stat status {};
  if (fstat(descriptor, &status) != 0) return;
  if (S_ISDIR(status.st_mode)) durable_ = states_.size() - 1;
  else if (const auto file = numbers_.find(status.st_ino); file != numbers_.end())
    contents_[file->second].durable = contents_[file->second].now;
}

PowerCut::Image PowerCut::image(std::mt19937& random) const {
  constexpr std::size_t kSector = 512;
  Image image;
  const Names& names = states_[durable_ + random() % (states_.size() - durable_)];
  for (const auto& [path, number] : names) {
    if (path.back() == '/') continue;
    const Content& content = contents_.at(number);
    std::string bytes = random() % 2 == 0 ? content.durable : content.now;
    const bool mixed = random() % 2 == 0;
    for (std::size_t at = 0; mixed && at < bytes.size(); at += kSector) {
      const std::string& from = random() % 2 == 0 ? content.durable : content.now;
      if (at < from.size()) bytes.replace(at, std::min(kSector, bytes.size() - at), from.substr(at, kSector));
    }
    image.emplace(path, std::move(bytes));
  }
  return image;
}

}  // namespace ohmkin::test

// The C library's own, each with what the test says before.
// NOLINTBEGIN
using ohmkin::test::CallKind;
using ohmkin::test::failed;
using ohmkin::test::mayGoOn;
using ohmkin::test::real;

#define OHMKIN_CALL(result, name, kind, descriptor, error, parameters, arguments)  \
  extern "C" result name parameters {                                              \
    static auto* const original = real<result parameters>(#name);                  \
    return mayGoOn(kind, descriptor) ? original arguments : failed<result>(error); \
  }
#define OHMKIN_OPEN(name)                                                                    \
  extern "C" int name(const char* path, int flags, ...) {                                    \
    static auto* const original = real<int(const char*, int, ...)>(#name);                   \
    va_list arguments;                                                                       \
    va_start(arguments, flags);                                                              \
    const unsigned mode = ohmkin::test::modeOf(flags, arguments);                            \
    va_end(arguments);                                                                       \
    const auto kind = ohmkin::test::changes(flags) ? CallKind::changing : CallKind::reading; \
    return mayGoOn(kind) ? original(path, flags, mode) : failed<int>(EIO);                   \
  }
OHMKIN_OPEN(open)
OHMKIN_OPEN(open64)
extern "C" FILE* fopen64(const char* path, const char* mode) {
  static auto* const original = real<FILE*(const char*, const char*)>("fopen64");
  if (mayGoOn(*mode == 'r' ? CallKind::reading : CallKind::changing)) return original(path, mode);
  errno = EIO;
  return nullptr;
}
OHMKIN_CALL(ssize_t, read, CallKind::reading, fd, EIO, (int fd, void* into, size_t size), (fd, into, size))
OHMKIN_CALL(ssize_t, pread64, CallKind::reading, fd, EIO, (int fd, void* into, size_t size, off64_t at),
            (fd, into, size, at))
OHMKIN_CALL(ssize_t, write, CallKind::changing, fd, ENOSPC, (int fd, const void* bytes, size_t size), (fd, bytes, size))
OHMKIN_CALL(ssize_t, writev, CallKind::changing, fd, ENOSPC, (int fd, const iovec* bytes, int count),
            (fd, bytes, count))
OHMKIN_CALL(ssize_t, pwrite64, CallKind::changing, fd, ENOSPC, (int fd, const void* bytes, size_t size, off64_t at),
            (fd, bytes, size, at))
OHMKIN_CALL(ssize_t, sendfile, CallKind::changing, to, ENOSPC, (int to, int from, off_t* at, size_t size),
            (to, from, at, size))
OHMKIN_CALL(int, ftruncate64, CallKind::changing, fd, EIO, (int fd, off64_t size), (fd, size))
extern "C" int fsync(int fd) { return mayGoOn(CallKind::syncing, fd) ? 0 : failed<int>(EIO); }
extern "C" int fdatasync(int fd) { return mayGoOn(CallKind::syncing, fd) ? 0 : failed<int>(EIO); }
OHMKIN_CALL(int, rename, CallKind::changing, -1, EIO, (const char* from, const char* to) noexcept, (from, to))
OHMKIN_CALL(int, link, CallKind::changing, -1, EIO, (const char* from, const char* to) noexcept, (from, to))
OHMKIN_CALL(int, unlink, CallKind::changing, -1, EIO, (const char* path) noexcept, (path))
OHMKIN_CALL(int, remove, CallKind::changing, -1, EIO, (const char* path) noexcept, (path))
OHMKIN_CALL(int, mkdir, CallKind::changing, -1, EIO, (const char* path, mode_t mode) noexcept, (path, mode))
// NOLINTEND
