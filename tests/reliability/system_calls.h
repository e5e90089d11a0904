#pragma once
#include <filesystem>
#include <functional>
#include <map>
#include <random>
#include <string>
#include <vector>

/// The system calls by which a program reads and changes files, in a test's hand: it stands between the C library and
/// all others, SQLite and the C++ library among them. One thread. Nothing is really synced: what reaches the disk is
/// the test's to say, and it would only cost time.
namespace ohmkin::test {

enum class CallKind { reading, changing, syncing };  ///< changing: names or bytes of files

class SystemCalls {
 public:
  /// Called before every call there is; where it returns false the call fails. What it calls itself is not watched, and
  /// must not be SQLite, which may hold its own locks then.
  using Before = std::function<bool(CallKind kind, int descriptor)>;
  static void watch(Before before);
  static void watchNoMore();
};

/// What a folder may hold after the power was lost amid the work of a program.
///
/// Model: names reach the disk in the order they were given and taken, all of them with the next sync of a folder (file
/// systems with a journal; POSIX promises no more); of what was written into a file since its last sync each sector may
/// have reached the disk or not.
class PowerCut {
 public:
  explicit PowerCut(std::filesystem::path folder);
  /// Before every call that changes or syncs.
  void before();
  void synced(int descriptor);
  /// One of the states that may be found now: path within the folder → bytes.
  using Image = std::map<std::string, std::string>;
  [[nodiscard]] Image image(std::mt19937& random) const;

 private:
  using Names = std::map<std::string, int>;  ///< path within the folder → which file
  struct Content {
    std::string durable;
    std::string now;
  };
  Names scan();
  std::filesystem::path folder_;
  std::vector<Names> states_;
  std::size_t durable_ = 0;  ///< the first of them that may be found
  std::map<unsigned long, int> numbers_;
  std::map<int, Content> contents_;
  int files_ = 0;
};

}  // namespace ohmkin::test
