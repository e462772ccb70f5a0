#pragma once
#include <filesystem>
#include <optional>
#include <vector>

#include "witnessmark/base/file_system.h"
#include "witnessmark/model/site.h"
#include "witnessmark/read/unresolved_key.h"

namespace witnessmark {

/// Where the files beside interviews.csv lie; what is not given is looked for beside it under its own name
/// and may be missing. A path given must exist.
struct InterviewFilePaths {
  std::optional<std::filesystem::path> persons, service, speakers, releases, passages;
};

/// Where a person's dates stand: the message is the text and the cell, for whoever finds something wrong with
/// them.
struct PersonCells {
  Error birth, death;
  std::vector<Error> service;  ///< Of each period the cell of its dates.
};

struct InterviewFilesReading {
  InterviewFile file;                   ///< Ids are nil: whoever stores it makes them.
  std::vector<Diagnostic> diagnostics;  ///< By file and line.
  std::vector<UnresolvedKey>
      unresolved;  ///< Persons, interviews or sources to be looked for in the site file.
  /// Where each interview of `file` names its transcript and its date, each speaker the label, and each
  /// passage the quote: as the cells of a person.
  std::vector<Error> transcript_cells, date_cells, label_cells, quote_cells;
  std::vector<PersonCells> person_cells;  ///< Of each person of `file`.
  std::vector<std::filesystem::path> files_read;
  bool ok = false;  ///< No diagnostic is an error. Rows with an error are left out of `file`.
};

/// Reads interviews.csv and the files beside it as schemas/csv describes them. Comma or semicolon, encodings
/// as decode_text. Cell errors name file, line, column and the cell as a spreadsheet does (D7). Columns that
/// are not described are kept in notes as "column: value", each with a note; one spelt nearly as a described
/// column that is missing, a required column that is missing and the columns of another table are errors.
/// Dates a spreadsheet has changed (12/03/1958, 3-Dec-58, 21234, 1958-12-03 00:00:00) are refused with
/// advice.
InterviewFilesReading read_interview_files(const FileReader& files, const std::filesystem::path& interviews,
                                           const InterviewFilePaths& paths = {});

}  // namespace witnessmark
