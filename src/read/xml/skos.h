#pragma once
#include <string_view>

#include "witnessmark/read/list_files.h"

namespace witnessmark {

/// A list from SKOS in RDF/XML, as list_files.h describes it; circles are not yet checked.
ListReading read_skos_list(std::string_view bytes, std::string_view source, AuthorityList::Kind kind);

}  // namespace witnessmark
