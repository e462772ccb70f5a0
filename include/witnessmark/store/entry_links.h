#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/id.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// Whether an entry of the evidence speaks to a claim, in a coder's judgement.
enum class LinkVerdict { linked, ruled_out };

struct EntryLink {
  Id claim;
  std::string entry;      ///< Key of an entry or a stay.
  std::string interview;  ///< Of the claim; set when saved.
  LinkVerdict verdict = LinkVerdict::linked;
  std::string why;
  std::string author;  ///< Set when saved.
  bool operator==(const EntryLink&) const = default;
};

/// One for a claim and an entry: a new one takes the place of the former. An Error when the claim or the
/// entry is not known, or the reason is not UTF-8.
Result<void> link_entry(SiteFile& site, const EntryLink& link);

/// Takes the judgement back, so that neither is said. An Error when there is none.
Result<void> unlink_entry(SiteFile& site, const Id& claim, std::string_view entry, std::string_view why);

/// By entry.
std::vector<EntryLink> links_of_claim(const SiteFile& site, const Id& claim);
/// By claim.
std::vector<EntryLink> links_of_entry(const SiteFile& site, std::string_view entry);

}  // namespace witnessmark
