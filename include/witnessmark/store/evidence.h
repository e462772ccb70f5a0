#pragma once
#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/model/site.h"
#include "witnessmark/store/changes.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

struct RegisterChanges {
  RowCounts sources, derivations, entries, stays, events;
  std::vector<ChangedRow> changed;
  bool any() const;
};

/// Takes in the dated evidence in one transaction, by the rules of save_interviews (derivations are known by
/// source and derives_from). An Error when an entry, stay or derivation names a source, or an entry lies over
/// an entry, that neither the input nor the site file has.
Result<RegisterChanges> save_register(SiteFile& site, const Register& evidence);

/// All of it, each part sorted by key.
Register load_register(const SiteFile& site);

/// What of it a claim on one of these things (equipment keys, empty for none) can be held against: their entries, the
/// entries on which these rest, all stays, sources and derivations. No named events.
Register load_register_on(const SiteFile& site, const std::set<std::string>& subjects);

struct ListChanges {
  RowCounts terms;
  std::vector<ChangedRow> changed;
  bool any() const { return terms.written() > 0; }
};

/// Takes in an authority list in one transaction, by the same rules; the order of terms is kept, new ones
/// come last.
Result<ListChanges> save_list(SiteFile& site, const AuthorityList& list);

AuthorityLists load_lists(const SiteFile& site);

/// Grows whenever evidence, lists, persons or interviews change: what was weighed under an earlier number is
/// stale.
std::int64_t evidence_revision(const SiteFile& site);

}  // namespace witnessmark
