#pragma once
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>
#include <chrono>
#include <functional>
#include <string>
#include <utility>

/// What is hostile is tried in a process of its own, whose memory and time are bounded: what it says, how long it took,
/// how much memory it had.
namespace ohmkin::test {

#if defined(__has_feature)  // clang's way to say it
#if __has_feature(address_sanitizer) || __has_feature(thread_sanitizer)
#define OHMKIN_SHADOW_MEMORY
#endif
#endif
#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__) || defined(OHMKIN_SHADOW_MEMORY)
inline constexpr bool kBoundMemory = false;  // the sanitizer's shadow is larger than any bound
inline constexpr double kMostSeconds = 20;   // and whoever looks at every access is ten times slower
#else
inline constexpr bool kBoundMemory = true;
inline constexpr double kMostSeconds = 2;
#endif

struct Child {
  std::string said;
  bool ended = false;  ///< by itself, not by a signal
  double seconds = 0;
  long megabytes = 0;  ///< most at once
};

inline Child inAChild(const std::function<std::string()>& task, rlim_t bytes = 512UL << 20U,
                      unsigned seconds = static_cast<unsigned>(5 * kMostSeconds)) {
  int ends[2];
  if (pipe(ends) != 0) return {"no pipe"};
  const auto start = std::chrono::steady_clock::now();
  const pid_t child = fork();
  if (child == 0) {
    close(ends[0]);
    const rlimit memory{bytes, bytes};
    if (kBoundMemory) setrlimit(RLIMIT_AS, &memory);
    alarm(seconds);
    std::string said;
    try {
      said = task();
    } catch (const std::exception& failure) {
      said = std::string("not caught: ") + failure.what();
    }
    for (std::size_t at = 0; at < said.size();) {
      const ssize_t sent = write(ends[1], said.data() + at, said.size() - at);
      if (sent <= 0) break;
      at += static_cast<std::size_t>(sent);
    }
    _exit(0);
  }
  close(ends[1]);
  Child result;
  char piece[4096];
  for (ssize_t got = 0; (got = read(ends[0], piece, sizeof piece)) > 0;)
    result.said.append(piece, static_cast<std::size_t>(got));
  close(ends[0]);
  int status = 0;
  rusage used{};
  wait4(child, &status, 0, &used);
  result.ended = WIFEXITED(status) && WEXITSTATUS(status) == 0;
  result.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
  result.megabytes = used.ru_maxrss / 1024;
  return result;
}

}  // namespace ohmkin::test
