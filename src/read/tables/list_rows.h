#pragma once
#include <string_view>

#include "witnessmark/read/list_files.h"

namespace witnessmark {

/// A list from CSV; faults of single rows and repeated keys are told, the hierarchy is not yet checked.
ListReading read_csv_list(std::string_view bytes, std::string_view source, AuthorityList::Kind kind);

/// An error for each circle of broader terms.
void check_circles(const std::vector<Term>& terms, std::string_view source,
                   std::vector<Diagnostic>& diagnostics);

}  // namespace witnessmark
