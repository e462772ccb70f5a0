#pragma once
#include <filesystem>
#include <optional>
#include <vector>

#include "witnessmark/base/file_system.h"
#include "witnessmark/model/conclusion.h"
#include "witnessmark/model/site.h"
#include "witnessmark/read/unresolved_key.h"

namespace witnessmark {

/// Where the files lie. enquiries.csv and searches.csv are looked for beside conclusions.csv when it is given and they
/// are not; a path given must exist.
struct ConclusionFilePaths {
  std::optional<std::filesystem::path> conclusions, enquiries, searches;
};

struct ConclusionFilesReading {
  ConclusionFile file;                     ///< Ids are nil.
  std::vector<Diagnostic> diagnostics;
  std::vector<UnresolvedKey> unresolved;   ///< Sources, entries, interviews, claims and earlier conclusions.
  std::vector<std::filesystem::path> files_read;
  bool ok = false;
};

/// Reads conclusions, enquiries and searches as schemas/csv describes them, by the rules of read_interview_files. Subjects and
/// places are keys or names of the lists and come back as keys.
ConclusionFilesReading read_conclusion_files(const FileReader& files, const AuthorityLists& lists,
                                             const ConclusionFilePaths& paths);

}  // namespace witnessmark
