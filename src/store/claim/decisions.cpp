#include <fmt/format.h>

#include <set>

#include "store/claim/claim_patch.h"
#include "store/claim/claim_rows.h"
#include "store/coding/record_changes.h"
#include "store/journal_writer.h"
#include "store/record/json_text.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/store/claims.h"

// A coder's decisions. The first one on a proposal puts the whole proposal into the journal as what was
// before; every one has only what differs as what came after. So the journal alone gives a decided claim
// back, whatever the program proposes later.

namespace witnessmark {
namespace {

Result<void> check_quotes(StoreConnection& connection, const Claim& claim, int version) {
  SqlStatement& select =
      connection.prepared("SELECT code_points FROM readings WHERE interview = ? AND version = ?");
  const bool known = select.bind(claim.interview).bind(version).step();
  const std::int64_t size = known ? select.integer(0) : 0;
  select.reset();
  if (!known)
    return Error{claim.interview, 0, 0, "the interview has no transcript", "take in its transcript first"};
  if (claim.quotes.empty())
    return Error{claim.interview, 0, 0, "a claim needs a quote", "mark the words it rests on"};
  const auto fits = [size](const CodePointRange& range) {
    return range.begin.value >= 0 && !range.empty() && range.end.value <= size;
  };
  for (const CodePointRange& quote : claim.quotes) {
    if (!fits(quote))
      return Error{claim.interview, 0, 0, "the quote lies outside the reading text", "mark it again"};
  }
  for (const Mention& mention : claim.mentions) {
    if (!fits(mention.range)) {
      return Error{claim.interview, 0, 0, "a mention lies outside the reading text", "mark it again"};
    }
  }
  return {};
}

Result<void> check_why(std::string_view why) {
  if (is_valid_utf8(why)) return {};
  return Error{"", 0, 0, "the reason is not UTF-8", "type it again"};
}

Result<void> check_said(const Claim& claim) {
  if (claim.status != ClaimStatus::said_so) return {};
  const std::string_view needs = what_it_needs(claim);
  if (needs.empty()) return {};
  return Error{claim.interview, 0, 0, std::string(needs), "correct the claim"};
}

}  // namespace

Result<void> decide_claim(SiteFile& site, const Claim& after, std::string_view why, ProposalView proposals) {
  StoreConnection& connection = site.connection();
  SiteTransaction transaction(site);
  if (auto checked = check_why(why); !checked) return checked;
  ClaimFilter filter;
  filter.ids = {after.id};
  std::vector<ClaimRow> rows = load_claim_rows(connection, filter);
  if (rows.empty() || rows[0].stored.claim.interview != after.interview) {
    return Error{after.interview, 0, 0, fmt::format("there is no claim {}", to_string(after.id)),
                 "it may have gone when claims were proposed again"};
  }
  ClaimRow& row = rows[0];
  if (auto checked = check_quotes(connection, after, row.stored.version); !checked) return checked;
  if (auto checked = check_said(after); !checked) return checked;

  const std::string before_json = claim_json(row.stored.claim, row.stored.version);
  const std::string after_json = claim_json(after, row.stored.version);
  const bool first = !row.stored.by_coder && !row.stored.decided;
  const ClaimPatch patch = patch_between(before_json, after_json);
  append_event(connection, {.kind = "decided",
                            .target_kind = "claim",
                            .target = to_string(after.id),
                            .interview = after.interview,
                            .before = first ? before_json : patch.before,
                            .after = patch.after,
                            .why = std::string(why),
                            .blind = proposals == ProposalView::hidden});
  if (first) row.proposal = before_json;
  if (after.status != ClaimStatus::set_aside) {
    remove_record(connection, ClaimOrigin{after.id, ClaimRelation::absorbed_into, {}, ""},
                  {.kind = "related", .why = std::string(why)});
  }
  row.stored.decided = true;
  Claim only_status = row.stored.claim;
  only_status.status = after.status;
  row.stored.claim = after;
  if (only_status == after) {
    SqlStatement& update = connection.prepared(
        "UPDATE claims SET status = ?, decided = 1, proposal = nullif(?, '') WHERE claim = ?");
    update.bind(word_for(after.status)).bind(row.proposal).bind(row.row).run();
  } else {
    rewrite_claim_row(connection, row);
  }
  transaction.commit();
  return {};
}

Result<void> decide_many(SiteFile& site, const std::vector<Claim>& after, std::string_view why,
                         ProposalView proposals) {
  SiteTransaction transaction(site);
  std::set<Id> seen;
  for (const Claim& claim : after) {
    if (!seen.insert(claim.id).second)
      return Error{claim.interview, 0, 0, fmt::format("claim {} occurs twice", to_string(claim.id)),
                   "keep one"};
    if (auto decided = decide_claim(site, claim, why, proposals); !decided) return decided;
  }
  transaction.commit();
  return {};
}

Result<Id> split_claim(SiteFile& site, const Claim& original, const Claim& part, std::string_view why,
                       ProposalView proposals) {
  SiteTransaction transaction(site);
  if (original.interview != part.interview)
    return Error{part.interview, 0, 0, "a part of a claim is of another interview", "keep them in one"};
  if (auto decided = decide_claim(site, original, why, proposals); !decided) return decided.error();
  Claim added = part;
  added.id = {};
  auto id = add_claim(site, added, why, proposals);
  if (!id) return id;
  put_record(site.connection(), ClaimOrigin{*id, ClaimRelation::split_from, original.id, part.interview},
             {.kind = "related", .why = std::string(why)});
  transaction.commit();
  return id;
}

Result<void> merge_claims(SiteFile& site, const Claim& kept, const Id& absorbed, std::string_view why,
                          ProposalView proposals) {
  SiteTransaction transaction(site);
  auto other = find_claim(site, absorbed);
  if (!other || absorbed == kept.id || other->claim.interview != kept.interview) {
    return Error{kept.interview, 0, 0,
                 fmt::format("claim {} is the same, of another interview, or not there", to_string(absorbed)),
                 "choose two claims of one interview"};
  }
  if (auto decided = decide_claim(site, kept, why, proposals); !decided) return decided;
  other->claim.status = ClaimStatus::set_aside;
  if (auto decided = decide_claim(site, other->claim, why, proposals); !decided) return decided;
  put_record(site.connection(), ClaimOrigin{absorbed, ClaimRelation::absorbed_into, kept.id, kept.interview},
             {.kind = "related", .why = std::string(why)});
  transaction.commit();
  return {};
}

std::vector<ClaimOrigin> origins_of_claim(const SiteFile& site, const Id& claim) {
  std::vector<ClaimOrigin> origins;
  SqlStatement select(*site.connection().database, "SELECT " + column_list<ClaimOrigin>() +
                                                       " FROM claim_origins WHERE claim = ?1 OR other = ?1 "
                                                       "ORDER BY claim, relation");
  select.bind(claim);
  while (select.step()) {
    ReadColumns reader(select);
    fields(reader, origins.emplace_back());
  }
  return origins;
}

Result<Id> add_claim(SiteFile& site, const Claim& claim, std::string_view why, ProposalView proposals) {
  StoreConnection& connection = site.connection();
  SiteTransaction transaction(site);
  if (auto checked = check_why(why); !checked) return checked.error();
  const CurrentReading current = current_reading(connection, claim.interview);
  if (auto checked = check_quotes(connection, claim, current.version); !checked) return checked.error();
  if (auto checked = check_said(claim); !checked) return checked.error();
  ClaimRow row;
  row.stored.claim = claim;
  if (row.stored.claim.id.is_nil()) row.stored.claim.id = connection.new_id();
  row.stored.version = current.version;
  row.stored.by_coder = true;
  row.stored.decided = true;
  const Id id = row.stored.claim.id;
  if (find_claim(site, id))
    return Error{claim.interview, 0, 0, "there is a claim of that id", "decide on that one"};
  append_event(connection, {.kind = "added",
                            .target_kind = "claim",
                            .target = to_string(id),
                            .interview = claim.interview,
                            .after = claim_json(row.stored.claim, current.version),
                            .why = std::string(why),
                            .blind = proposals == ProposalView::hidden});
  insert_claim_row(connection, row);
  transaction.commit();
  return id;
}

}  // namespace witnessmark
