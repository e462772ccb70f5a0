#pragma once
#include <vector>

#include "witnessmark/base/error.h"
#include "witnessmark/read/unresolved_key.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// Looks keys up in the site file; those it does not have come back as diagnostics: when the key may be of an
/// awaited kind, which may be taken in later (interviews name sources, entries name interviews), a note, or a
/// warning where a key there is spells nearly so; else an error. Near matches stand in the advice.
std::vector<Diagnostic> check_keys(const SiteFile& site, const std::vector<UnresolvedKey>& keys,
                                   const std::vector<KeyKind>& awaited);

}  // namespace witnessmark
