#include "failing_disk.h"

#include <algorithm>
#include <fstream>
#include <sstream>

namespace ohmkin::test {
namespace {

FailingDisk* disk = nullptr;
sqlite3_vfs* below = nullptr;

/// An open file: SQLite's own behind ours.
struct OpenFile {
  sqlite3_file base;
  sqlite3_file* real;
  std::string* name;  ///< null: a temporary file
};

OpenFile* ours(sqlite3_file* file) { return reinterpret_cast<OpenFile*>(file); }

int closeFile(sqlite3_file* file) {
  OpenFile* open = ours(file);
  const int outcome = open->real->pMethods != nullptr ? open->real->pMethods->xClose(open->real) : SQLITE_OK;
  delete open->name;
  open->name = nullptr;
  return outcome;
}

int readFile(sqlite3_file* file, void* into, int size, sqlite3_int64 at) {
  if (disk->fails(DiskCall::read)) return SQLITE_IOERR_READ;
  return ours(file)->real->pMethods->xRead(ours(file)->real, into, size, at);
}

int writeFile(sqlite3_file* file, const void* bytes, int size, sqlite3_int64 at) {
  if (disk->fails(DiskCall::write)) return SQLITE_IOERR_WRITE;
  if (ours(file)->name != nullptr)
    disk->written(*ours(file)->name, at, std::string(static_cast<const char*>(bytes), static_cast<std::size_t>(size)));
  return ours(file)->real->pMethods->xWrite(ours(file)->real, bytes, size, at);
}

int truncateFile(sqlite3_file* file, sqlite3_int64 size) {
  if (disk->fails(DiskCall::truncate)) return SQLITE_IOERR_TRUNCATE;
  if (ours(file)->name != nullptr) disk->truncated(*ours(file)->name, size);
  return ours(file)->real->pMethods->xTruncate(ours(file)->real, size);
}

int syncFile(sqlite3_file* file, int flags) {
  if (disk->fails(DiskCall::sync)) return SQLITE_IOERR_FSYNC;
  if (ours(file)->name != nullptr) disk->synced(*ours(file)->name);
  (void)flags;  // what reaches the disk is ours to say: a real sync would only cost time
  return SQLITE_OK;
}

int sizeOf(sqlite3_file* f, sqlite3_int64* size) { return ours(f)->real->pMethods->xFileSize(ours(f)->real, size); }
int lock(sqlite3_file* f, int level) { return ours(f)->real->pMethods->xLock(ours(f)->real, level); }
int unlock(sqlite3_file* f, int level) { return ours(f)->real->pMethods->xUnlock(ours(f)->real, level); }
int reserved(sqlite3_file* f, int* is) { return ours(f)->real->pMethods->xCheckReservedLock(ours(f)->real, is); }
int control(sqlite3_file* f, int what, void* with) {
  return ours(f)->real->pMethods->xFileControl(ours(f)->real, what, with);
}
int sectorSize(sqlite3_file*) { return static_cast<int>(kSector); }
int promises(sqlite3_file*) { return 0; }  // no atomic writes, no order, no safe append
int mapShared(sqlite3_file* f, int region, int size, int extend, void volatile** at) {
  return ours(f)->real->pMethods->xShmMap(ours(f)->real, region, size, extend, at);
}
int lockShared(sqlite3_file* f, int at, int count, int flags) {
  return ours(f)->real->pMethods->xShmLock(ours(f)->real, at, count, flags);
}
void barrier(sqlite3_file* f) { ours(f)->real->pMethods->xShmBarrier(ours(f)->real); }
int unmapShared(sqlite3_file* f, int remove) { return ours(f)->real->pMethods->xShmUnmap(ours(f)->real, remove); }

constexpr sqlite3_io_methods kMethods{2,          closeFile, readFile,    writeFile, truncateFile, syncFile, sizeOf,
                                      lock,       unlock,    reserved,    control,   sectorSize,   promises, mapShared,
                                      lockShared, barrier,   unmapShared, nullptr,   nullptr};

int openFile(sqlite3_vfs*, sqlite3_filename name, sqlite3_file* file, int flags, int* outFlags) {
  OpenFile* open = ours(file);
  open->base.pMethods = nullptr;
  open->real = reinterpret_cast<sqlite3_file*>(open + 1);
  open->name = nullptr;
  if (disk->fails(DiskCall::open)) return SQLITE_CANTOPEN;
  int there = 0;
  if (name != nullptr) below->xAccess(below, name, SQLITE_ACCESS_EXISTS, &there);
  const int outcome = below->xOpen(below, name, open->real, flags, outFlags);
  if (outcome != SQLITE_OK) return outcome;
  open->base.pMethods = &kMethods;
  if (name != nullptr) {
    open->name = new std::string(name);
    disk->opened(*open->name, there == 0);
  }
  return SQLITE_OK;
}

int removeFile(sqlite3_vfs*, const char* name, int syncFolder) {
  if (disk->fails(DiskCall::remove)) return SQLITE_IOERR_DELETE;
  disk->removed(name, syncFolder != 0);
  return below->xDelete(below, name, 0);
}

std::string contentOf(const std::string& name) {
  std::ifstream in(name, std::ios::binary);
  std::ostringstream all;
  all << in.rdbuf();
  return all.str();
}

}  // namespace

FailingDisk& FailingDisk::install() {
  static FailingDisk one;
  if (disk != nullptr) return one;
  disk = &one;
  below = sqlite3_vfs_find(nullptr);
  static sqlite3_vfs vfs = *below;
  vfs.zName = "failing-disk";
  vfs.szOsFile = static_cast<int>(sizeof(OpenFile)) + below->szOsFile;
  vfs.xOpen = openFile;
  vfs.xDelete = removeFile;
  sqlite3_vfs_register(&vfs, 1);
  return one;
}

void FailingDisk::beginNoting(std::function<void()> onWrite) {
  files_.clear();
  onWrite_ = std::move(onWrite);
  noting_ = true;
}

void FailingDisk::apply(std::string& content, const Change& change) {
  const auto at = static_cast<std::size_t>(change.at);
  if (change.isCut) {
    content.resize(at);
    return;
  }
  if (content.size() < at + change.bytes.size()) content.resize(at + change.bytes.size());
  content.replace(at, change.bytes.size(), change.bytes);
}

void FailingDisk::before() {
  if (!noting_ || !onWrite_) return;
  noting_ = false;
  onWrite_();
  noting_ = true;
}

void FailingDisk::opened(const std::string& name, bool isNew) {
  if (!noting_) return;
  const auto [entry, first] = files_.try_emplace(name);
  if (first) {
    entry->second.durable = contentOf(name);
    entry->second.durablyThere = !isNew;
  } else if (isNew && !entry->second.there) {
    std::optional<std::string> ghost;
    if (entry->second.durablyThere) ghost = entry->second.durable;
    entry->second = File{};
    entry->second.ghost = std::move(ghost);
    entry->second.durablyThere = false;
  }
  entry->second.there = true;
}

void FailingDisk::written(const std::string& name, std::int64_t at, std::string bytes) {
  before();
  if (noting_) files_[name].pending.push_back({at, std::move(bytes), false});
}

void FailingDisk::truncated(const std::string& name, std::int64_t size) {
  before();
  if (noting_) files_[name].pending.push_back({size, {}, true});
}

void FailingDisk::synced(const std::string& name) {
  before();
  if (!noting_) return;
  File& file = files_[name];
  for (const Change& change : file.pending) apply(file.durable, change);
  file.pending.clear();
  file.ghost.reset();
  file.durablyThere = true;  // SQLite syncs the folder with a new journal's first sync
}

void FailingDisk::removed(const std::string& name, bool folderSynced) {
  before();
  if (!noting_) return;
  File& file = files_[name];
  file.there = false;
  if (folderSynced) {
    file = File{};
    file.there = false;
    file.durablyThere = false;
  }
}

DiskImage FailingDisk::afterPowerLoss(std::mt19937& random) const {
  DiskImage image;
  for (const auto& [name, file] : files_) {
    if (file.ghost && random() % 2 == 0) {
      image.emplace(name, *file.ghost);
      continue;
    }
    const bool certain = file.there == file.durablyThere;
    if (certain ? !file.there : random() % 2 == 0) continue;
    std::string content = file.durable;
    std::vector<Change> some;
    const unsigned share = random() % 4;  // none, half, all but the last, all
    for (std::size_t i = 0; i < file.pending.size(); ++i) {
      if (share == 0 || (share == 1 && random() % 2 == 0) || (share == 2 && i + 1 == file.pending.size())) continue;
      some.push_back(file.pending[i]);
    }
    if (share == 1) std::shuffle(some.begin(), some.end(), random);
    if (!some.empty() && !some.back().isCut && random() % 2 == 0) {
      Change& last = some.back();
      last.bytes.resize(last.bytes.size() / kSector / 2 * kSector);  // cut at a sector
    }
    for (const Change& change : some) apply(content, change);
    image.emplace(name, std::move(content));
  }
  return image;
}

void FailingDisk::failFrom(DiskCall which, int nth, bool forGood) {
  failing_ = which;
  countdown_ = nth;
  forGood_ = forGood;
  failures_ = 0;
}

bool FailingDisk::fails(DiskCall which) {
  if (failing_ == DiskCall::none || (failing_ != which && failing_ != DiskCall::any)) return false;
  if (countdown_ > 0) --countdown_;
  const bool now = countdown_ == 0 && (failures_ == 0 || forGood_);
  if (now) ++failures_;
  return now;
}

}  // namespace ohmkin::test
