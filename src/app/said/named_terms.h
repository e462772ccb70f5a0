#pragma once
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/result.h"
#include "witnessmark/model/site.h"

namespace witnessmark {

/// What a name stands for in the lists.
struct NamedTerms {
  std::vector<std::string> described;       ///< "Electric crane (equipment crane)", those that bear the name.
  std::set<std::string> places, equipment;  ///< Keys of these and of all that lies within them.
};

/// Terms by key, preferred, former or spoken name, or number. An Error with near names when no list asked has the name.
Result<NamedTerms> named_terms(const AuthorityLists& lists, std::string_view name, bool equipment_too);

}  // namespace witnessmark
