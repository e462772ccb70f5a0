#pragma once
#include <string_view>
#include <vector>

#include "witnessmark/model/authority_list.h"
#include "witnessmark/model/site.h"
#include "witnessmark/read/list_files.h"

namespace witnessmark {

/// A warning for each two terms of a list of which people speak by one name (preferred or spoken, compared
/// folded), at the later row: what is said under it may be proposed of each. Terms taken in before that the
/// file does not name count, too. Former names do not: those have their years.
std::vector<Diagnostic> shared_names(const AuthorityLists& before, AuthorityList::Kind kind,
                                     const ListReading& reading, std::string_view source);

}  // namespace witnessmark
