#pragma once
#include <filesystem>
#include <optional>
#include <vector>

#include "witnessmark/base/file_system.h"
#include "witnessmark/model/site.h"
#include "witnessmark/read/unresolved_key.h"

namespace witnessmark {

/// Where the files beside entries.csv lie; see InterviewFilePaths.
struct RegisterFilePaths {
  std::optional<std::filesystem::path> sources, derives, itinerary, events;
};

struct RegisterReading {
  Register evidence;  ///< Ids are nil.
  std::vector<Diagnostic> diagnostics;
  std::vector<UnresolvedKey> unresolved;
  std::vector<std::filesystem::path> files_read;
  /// Entries without a nature whose source none of the files has, as indexes: `done` until default_nature()
  /// of the kind the site file has for that source settles it.
  std::vector<std::size_t> nature_by_source;
  bool ok = false;
};

/// `intended` for drawings and orders, until something shows it done; `done` for the rest.
Nature default_nature(SourceKind kind);

/// Reads the dated evidence from CSV (files as for read_interview_files; siblings sources.csv, derives.csv,
/// itinerary.csv, named-events.csv). Subjects and places are keys or names of the lists and come back as
/// keys; a term neither list has is an error that offers near ones, a name of several terms one that names
/// them. Without lists, terms are kept as written and come back as unresolved. For `located`, the place is
/// kept in words, and the subject is empty for the site (also when a place of the list that lies in no other
/// is named) or a person's key. Nature, when empty, is `intended` for drawings and orders and `done` for the
/// rest.
RegisterReading read_register_files(const FileReader& files, const std::filesystem::path& entries,
                                    const AuthorityLists* lists, const RegisterFilePaths& paths = {});

}  // namespace witnessmark
