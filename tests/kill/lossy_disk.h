#pragma once
#include <cstdint>
#include <map>
#include <memory>
#include <random>
#include <string>
#include <vector>

struct sqlite3_vfs;

namespace witnessmark {

/// What becomes of writes that were not yet synced when the power goes.
enum class Loss {
  all,   ///< None of them reached the disk.
  some,  ///< Each reached it or did not, whatever its order.
  torn   ///< Each sector of 512 bytes of each of them reached it or did not.
};

/// A disk in memory behind a SQLite VFS of its own. Writes are seen at once, but last only once the file is
/// synced. After a set number of operations (writes, truncations, syncs, deletions) the power goes:
/// everything from then on fails, and survivors() is what a machine would find when it starts again.
///
/// It promises no more than the weakest disk SQLite supports: no atomic writes, no order between writes, a
/// sector may be damaged by a write to its neighbour bytes (no SQLITE_IOCAP_POWERSAFE_OVERWRITE).
class LossyDisk {
 public:
  /// Registers the VFS under that name for as long as it lives.
  LossyDisk(std::string name, std::int64_t operations_until_loss);
  ~LossyDisk();
  LossyDisk(const LossyDisk&) = delete;  // SQLite holds a pointer to it
  LossyDisk& operator=(const LossyDisk&) = delete;

  const std::string& name() const { return name_; }
  bool lost() const { return lost_; }
  std::int64_t operations() const { return operations_; }

  /// Files as they are found afterwards, by name.
  std::map<std::string, std::string> survivors(Loss loss, std::uint64_t seed) const;

  struct Write {
    std::int64_t at = 0;
    std::string bytes;
    bool truncates = false;  ///< To `at`; then there are no bytes.
  };
  struct File {
    std::string seen;     ///< As the running program sees it.
    std::string durable;  ///< As it was last synced.
    std::vector<Write> unsynced;
    std::vector<std::unique_ptr<char[]>> shared;  ///< The -shm file: memory only.
    bool unlinked = false;                        ///< Deleted, but the deletion not synced.
  };

  // For the VFS.
  /// False once the power is gone; counts.
  bool operate();
  File* open(const std::string& name, bool create);
  bool exists(const std::string& name) const;
  void remove(const std::string& name, bool durably);
  static void apply(std::string& content, const Write& write);

 private:
  std::string name_;
  std::int64_t until_loss_;
  std::int64_t operations_ = 0;
  bool lost_ = false;
  std::map<std::string, std::unique_ptr<File>> files_;
  std::unique_ptr<sqlite3_vfs> vfs_;
};

}  // namespace witnessmark
