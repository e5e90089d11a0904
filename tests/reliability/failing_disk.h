#pragma once
#include <sqlite3.h>
#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <random>
#include <string>
#include <vector>

/// A disk under SQLite, for tests: it writes down what was written and what was synced, so that the state of the files
/// after a loss of power at any moment can be made; and the n-th call of a kind fails, once or from then on.
///
/// Model of a loss of power: of what was written since a file's last sync any part may have reached the disk, in any
/// order, and the last write of all may be cut at a sector; a file whose making or deleting was not followed by a sync
/// of its folder may be there or not.
namespace ohmkin::test {

inline constexpr std::size_t kSector = 512;

enum class DiskCall { none, open, read, write, truncate, sync, remove, any };

/// Files by name, as they would be found after the power is back.
using DiskImage = std::map<std::string, std::string>;

class FailingDisk {
 public:
  /// Becomes SQLite's default file system, for the rest of the process.
  static FailingDisk& install();

  /// From now on what is written and synced is noted; `onWrite` is called before every write, sync, truncation and
  /// deletion.
  void beginNoting(std::function<void()> onWrite);
  void endNoting() { noting_ = false; }
  /// What a loss of power now might leave.
  [[nodiscard]] DiskImage afterPowerLoss(std::mt19937& random) const;

  void failFrom(DiskCall which, int nth, bool forGood);
  void failNever() { failing_ = DiskCall::none; }
  [[nodiscard]] int failures() const { return failures_; }

  // What the file system below calls.
  bool fails(DiskCall which);
  void opened(const std::string& name, bool isNew);
  void written(const std::string& name, std::int64_t at, std::string bytes);
  void truncated(const std::string& name, std::int64_t size);
  void synced(const std::string& name);
  void removed(const std::string& name, bool folderSynced);

 private:
  struct Change {
    std::int64_t at = 0;  ///< or the size it is cut to
    std::string bytes;
    bool isCut = false;
  };
  struct File {
    std::string durable;               ///< what the disk has for certain
    std::vector<Change> pending;       ///< since the last sync
    bool durablyThere = true;          ///< whether the folder knows it for certain
    bool there = true;                 ///< as programs see it
    std::optional<std::string> ghost;  ///< an older file of that name, whose deleting may not have reached the disk
  };
  static void apply(std::string& content, const Change& change);
  void before();

  std::map<std::string, File> files_;
  std::function<void()> onWrite_;
  bool noting_ = false;
  DiskCall failing_ = DiskCall::none;
  int countdown_ = 0;
  bool forGood_ = false;
  int failures_ = 0;
};

}  // namespace ohmkin::test
