#include "witnessmark/store/merge.h"

#include <fmt/format.h>

#include "store/coding/claim_changes.h"
#include "store/coding/passage_place.h"
#include "store/coding/record_changes.h"
#include "store/merge/double_decisions.h"
#include "store/merge/merging.h"

namespace witnessmark {
namespace {

Error no_copy(const SiteFile& other, std::string message, std::string advice) {
  return {other.path().string(), 0, 0, std::move(message), std::move(advice)};
}

/// Interviews erased there stand here until somebody erases them here.
void report_erasures(Merging& merging) {
  for (const OwnEvent& event : merging.brought) {
    if (event.kind == "erased" && !merging.is_erased_here(event.target))
      merging.skip("erasure", event.target,
                   "it was erased in the other copy: erase it here too, if so decided");
  }
}

std::string summary(const MergeReport& report) {
  return fmt::format(
      R"({{"events":{},"taken":{},"alike":{},"differences":{},"rows":{},"transcripts":{},"proposals":{},"not_taken":{}}})",
      report.events, report.taken, report.alike, report.differences, report.rows, report.transcripts,
      report.proposals, report.not_taken.size());
}

}  // namespace

Result<MergeReport> merge_site_file(SiteFile& site, const SiteFile& other) {
  if (site.info().id != other.info().id)
    return no_copy(other, "is no copy of this site file: it is of another site", "name a copy made by copy");
  std::error_code code;
  if (std::filesystem::equivalent(site.path(), other.path(), code))
    return no_copy(other, "is this site file itself", "name another copy of it");
  SiteTransaction transaction(site);
  Merging merging{.site = site,
                  .other = other,
                  .here = site.connection(),
                  .there = other.connection(),
                  .parting = Parting(site.connection(), other.connection())};
  if (auto checked = merging.parting.check_common(); !checked) return checked.error();
  auto brought = merging.parting.bring_in();
  if (!brought) return brought.error();
  merging.brought = std::move(*brought);
  if (merging.brought.empty()) return merging.report;
  merging.report.events = merging.brought.size();
  for (const auto step :
       {merge_rows, merge_transcripts, merge_proposals, place_merged_passages, merge_decisions}) {
    if (auto merged = step(merging); !merged) return merged.error();
  }
  report_erasures(merging);
  append_event(merging.here, {.kind = "merged",
                              .target_kind = "site",
                              .target = to_string(site.info().id),
                              .after = summary(merging.report)});
  transaction.commit();
  return merging.report;
}

std::vector<DoubleDecision> double_decisions(const SiteFile& site) {
  return load_double_decisions(site.connection(), false);
}
std::vector<DoubleDecision> open_differences(const SiteFile& site) {
  return load_double_decisions(site.connection(), true);
}

namespace {

Result<DoubleDecision> open_difference(const SiteFile& site, std::int64_t number) {
  for (DoubleDecision& decision : open_differences(site)) {
    if (decision.number == number) return std::move(decision);
  }
  return Error{"", 0, 0, fmt::format("there is no open difference {}", number), "it may be settled by now"};
}

Result<void> settle_claim(SiteFile& site, const DoubleDecision& difference, const std::string& state,
                          std::string_view why) {
  StoreConnection& connection = site.connection();
  const Id id = parse_id(difference.target).value_or(Id{});
  NewEvent event{.kind = "settled",
                 .target_kind = "claim",
                 .target = difference.target,
                 .interview = difference.interview,
                 .why = std::string(why)};
  const auto row = find_claim_row(connection, id);
  if (!state.empty()) {
    if (claim_from_json(state).claim.status != ClaimStatus::set_aside) {
      remove_record(connection, ClaimOrigin{id, ClaimRelation::absorbed_into, {}, ""},
                    {.kind = "related", .why = std::string(why)});
    }
    const bool by_coder = row ? row->stored.by_coder : was_added(connection, id);
    return put_decided(connection, id, state, by_coder, decided_on(connection, id), std::move(event));
  }
  if (row && row->stored.decided) return take_decision_back(connection, id, std::move(event));
  return append_unchanged(connection, std::move(event));
}

Result<void> settle_record(SiteFile& site, const DoubleDecision& difference, const std::string& state,
                           std::string_view why) {
  StoreConnection& connection = site.connection();
  const std::string& like = difference.here.state.empty() ? difference.there.state : difference.here.state;
  const std::string before = stored_json(connection, difference.target_kind, like);
  const std::int64_t event = append_event(connection, {.kind = "settled",
                                                       .target_kind = difference.target_kind,
                                                       .target = difference.target,
                                                       .interview = difference.interview,
                                                       .before = before,
                                                       .after = state,
                                                       .why = std::string(why)});
  if (!before.empty() || !state.empty())
    write_record(connection, difference.target_kind, before, state, event);
  return {};
}

Result<void> settle(SiteFile& site, const DoubleDecision& difference, const std::string& state,
                    std::string_view why) {
  SiteTransaction transaction(site);
  auto settled = difference.target_kind == "claim" ? settle_claim(site, difference, state, why)
                                                   : settle_record(site, difference, state, why);
  if (!settled) return settled;
  settle_all_open(site.connection(), difference.target_kind, difference.target,
                  difference.here.state.empty() ? difference.there.state : difference.here.state);
  transaction.commit();
  return {};
}

}  // namespace

Result<void> settle_difference(SiteFile& site, std::int64_t number, Side side, std::string_view why) {
  const auto difference = open_difference(site, number);
  if (!difference) return difference.error();
  return settle(site, *difference, side == Side::here ? difference->here.state : difference->there.state,
                why);
}

Result<void> settle_difference(SiteFile& site, std::int64_t number, const Claim& values,
                               std::string_view why) {
  const auto difference = open_difference(site, number);
  if (!difference) return difference.error();
  const auto row = find_claim_row(site.connection(), values.id);
  if (difference->target_kind != "claim" || difference->target != to_string(values.id) || !row)
    return Error{"", 0, 0, "the difference is not on that claim", "settle it with values of its claim"};
  SiteTransaction transaction(site);
  // The same checks as for every decision, without leaving a trace of their own.
  {
    SiteTransaction trial(site);
    if (auto decided = decide_claim(site, values, why); !decided) return decided;
  }
  if (auto settled = settle(site, *difference, claim_json(values, row->stored.version), why); !settled)
    return settled;
  transaction.commit();
  return {};
}

}  // namespace witnessmark
