#include "kill/lossy_disk.h"

#include <sqlite3.h>

#include <algorithm>
#include <cstring>
#include <stdexcept>

namespace witnessmark {
namespace {

constexpr int kSector = 512;

/// SQLite's file: its methods come first, the rest is ours.
struct OpenFile {
  sqlite3_file base;
  LossyDisk* disk;
  LossyDisk::File* file;
};

OpenFile& opened(sqlite3_file* file) {
  return *reinterpret_cast<OpenFile*>(file);
}

int close_file(sqlite3_file*) {
  return SQLITE_OK;
}

int read_file(sqlite3_file* handle, void* buffer, int amount, sqlite3_int64 at) {
  OpenFile& open = opened(handle);
  if (open.disk->lost()) return SQLITE_IOERR_READ;
  const std::string& seen = open.file->seen;
  const auto size = static_cast<sqlite3_int64>(seen.size());
  const auto have = static_cast<int>(std::clamp<sqlite3_int64>(size - at, 0, amount));
  if (have > 0) std::memcpy(buffer, seen.data() + at, static_cast<std::size_t>(have));
  if (have == amount) return SQLITE_OK;
  std::memset(static_cast<char*>(buffer) + have, 0, static_cast<std::size_t>(amount - have));
  return SQLITE_IOERR_SHORT_READ;
}

int write_file(sqlite3_file* handle, const void* buffer, int amount, sqlite3_int64 at) {
  OpenFile& open = opened(handle);
  // The write that the power loss interrupts may itself have reached the disk in part: so it is noted first.
  if (open.disk->lost()) return SQLITE_IOERR_WRITE;
  open.file->unsynced.push_back(
      {at, std::string(static_cast<const char*>(buffer), static_cast<std::size_t>(amount))});
  LossyDisk::apply(open.file->seen, open.file->unsynced.back());
  return open.disk->operate() ? SQLITE_OK : SQLITE_IOERR_WRITE;
}

int truncate_file(sqlite3_file* handle, sqlite3_int64 size) {
  OpenFile& open = opened(handle);
  if (open.disk->lost()) return SQLITE_IOERR_TRUNCATE;
  open.file->unsynced.push_back({size, "", true});
  LossyDisk::apply(open.file->seen, open.file->unsynced.back());
  return open.disk->operate() ? SQLITE_OK : SQLITE_IOERR_TRUNCATE;
}

int sync_file(sqlite3_file* handle, int) {
  OpenFile& open = opened(handle);
  if (!open.disk->operate()) return SQLITE_IOERR_FSYNC;
  open.file->durable = open.file->seen;
  open.file->unsynced.clear();
  return SQLITE_OK;
}

int size_of_file(sqlite3_file* handle, sqlite3_int64* size) {
  *size = static_cast<sqlite3_int64>(opened(handle).file->seen.size());
  return SQLITE_OK;
}

int lock_file(sqlite3_file*, int) {
  return SQLITE_OK;
}

int check_reserved(sqlite3_file*, int* held) {
  *held = 0;
  return SQLITE_OK;
}

int control_file(sqlite3_file*, int, void*) {
  return SQLITE_NOTFOUND;
}

int sector_size(sqlite3_file*) {
  return kSector;
}

int characteristics(sqlite3_file*) {
  return 0;
}

int map_shared(sqlite3_file* handle, int region, int size, int extend, void volatile** memory) {
  auto& shared = opened(handle).file->shared;
  const auto index = static_cast<std::size_t>(region);
  *memory = nullptr;
  if (index >= shared.size() && extend == 0) return SQLITE_OK;
  while (shared.size() <= index) {
    shared.push_back(std::make_unique<char[]>(static_cast<std::size_t>(size)));
    std::memset(shared.back().get(), 0, static_cast<std::size_t>(size));
  }
  *memory = shared[index].get();
  return SQLITE_OK;
}

int lock_shared(sqlite3_file*, int, int, int) {
  return SQLITE_OK;
}

void barrier(sqlite3_file*) {}

int unmap_shared(sqlite3_file* handle, int remove) {
  if (remove != 0) opened(handle).file->shared.clear();
  return SQLITE_OK;
}

const sqlite3_io_methods kMethods = {
    2,           close_file, read_file,      write_file,   truncate_file, sync_file,       size_of_file,
    lock_file,   lock_file,  check_reserved, control_file, sector_size,   characteristics, map_shared,
    lock_shared, barrier,    unmap_shared,   nullptr,      nullptr};

LossyDisk& disk_of(sqlite3_vfs* vfs) {
  return *static_cast<LossyDisk*>(vfs->pAppData);
}

int open_file(sqlite3_vfs* vfs, const char* name, sqlite3_file* file, int flags, int* out_flags) {
  file->pMethods = nullptr;
  LossyDisk& disk = disk_of(vfs);
  if (disk.lost()) return SQLITE_CANTOPEN;
  LossyDisk::File* found = disk.open(name == nullptr ? "temporary" : name, (flags & SQLITE_OPEN_CREATE) != 0);
  if (found == nullptr) return SQLITE_CANTOPEN;
  opened(file).disk = &disk;
  opened(file).file = found;
  file->pMethods = &kMethods;
  if (out_flags != nullptr) *out_flags = flags;
  return SQLITE_OK;
}

int delete_file(sqlite3_vfs* vfs, const char* name, int sync_folder) {
  LossyDisk& disk = disk_of(vfs);
  if (!disk.operate()) return SQLITE_IOERR_DELETE;
  disk.remove(name, sync_folder != 0);
  return SQLITE_OK;
}

int access_file_by_name(sqlite3_vfs* vfs, const char* name, int, int* found) {
  *found = disk_of(vfs).exists(name) ? 1 : 0;
  return SQLITE_OK;
}

int full_name(sqlite3_vfs*, const char* name, int size, char* out) {
  std::snprintf(out, static_cast<std::size_t>(size), "%s", name);
  return SQLITE_OK;
}

}  // namespace

LossyDisk::LossyDisk(std::string name, std::int64_t operations_until_loss)
    : name_(std::move(name)), until_loss_(operations_until_loss), vfs_(std::make_unique<sqlite3_vfs>()) {
  *vfs_ = *sqlite3_vfs_find(nullptr);  // randomness, sleeping and the clock stay the system's
  vfs_->pNext = nullptr;
  vfs_->zName = name_.c_str();
  vfs_->szOsFile = sizeof(OpenFile);
  vfs_->pAppData = this;
  vfs_->xOpen = open_file;
  vfs_->xDelete = delete_file;
  vfs_->xAccess = access_file_by_name;
  vfs_->xFullPathname = full_name;
  if (sqlite3_vfs_register(vfs_.get(), 0) != SQLITE_OK) throw std::runtime_error("cannot register the VFS");
}

LossyDisk::~LossyDisk() {
  sqlite3_vfs_unregister(vfs_.get());
}

bool LossyDisk::operate() {
  if (!lost_ && ++operations_ > until_loss_) lost_ = true;
  return !lost_;
}

LossyDisk::File* LossyDisk::open(const std::string& name, bool create) {
  auto& file = files_[name];
  if (!file || file->unlinked) {
    if (!create) {
      if (!file) files_.erase(name);
      return nullptr;
    }
    // A new file in the place of one whose deletion was not synced: afterwards either may be found, so the
    // former durable bytes stay until the new one is synced.
    std::string former = file ? file->durable : std::string();
    file = std::make_unique<File>();
    file->durable = std::move(former);
  }
  return file.get();
}

bool LossyDisk::exists(const std::string& name) const {
  const auto found = files_.find(name);
  return found != files_.end() && !found->second->unlinked;
}

void LossyDisk::remove(const std::string& name, bool durably) {
  const auto found = files_.find(name);
  if (found == files_.end()) return;
  if (durably) {
    files_.erase(found);
  } else {
    found->second->unlinked = true;
  }
}

void LossyDisk::apply(std::string& content, const Write& write) {
  const auto at = static_cast<std::size_t>(write.at);
  if (write.truncates) {
    content.resize(at);
    return;
  }
  if (content.size() < at + write.bytes.size()) content.resize(at + write.bytes.size());
  std::copy(write.bytes.begin(), write.bytes.end(), content.begin() + static_cast<std::ptrdiff_t>(at));
}

std::map<std::string, std::string> LossyDisk::survivors(Loss loss, std::uint64_t seed) const {
  std::mt19937_64 random(seed);
  const auto survives = [&random] { return random() % 2 == 0; };
  std::map<std::string, std::string> found;
  for (const auto& [name, file] : files_) {
    if (name == "temporary" || (file->unlinked && (loss == Loss::all || survives()))) continue;
    std::string content = file->durable;
    for (const Write& write : file->unsynced) {
      if (loss == Loss::all) continue;
      if (loss == Loss::some || write.truncates) {
        if (survives()) apply(content, write);
        continue;
      }
      for (std::size_t part = 0; part < write.bytes.size();) {
        const std::size_t into = (static_cast<std::size_t>(write.at) + part) % kSector;
        const std::size_t length = std::min<std::size_t>(kSector - into, write.bytes.size() - part);
        if (survives()) {
          apply(content, {write.at + static_cast<std::int64_t>(part), write.bytes.substr(part, length)});
        }
        part += length;
      }
    }
    found[name] = std::move(content);
  }
  return found;
}

}  // namespace witnessmark
