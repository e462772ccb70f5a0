#include <algorithm>
#include <functional>

#include "store/claim/claim_patch.h"
#include "store/coding/claim_changes.h"
#include "store/coding/passage_place.h"
#include "store/coding/record_changes.h"
#include "store/merge/double_decisions.h"
#include "store/merge/merging.h"

// Three things are known of each target: how it stands here, how it stands there, and who did something about
// it since the copies parted. What only one copy did is so; what both did alike is so, and noted; what they
// did otherwise stays as it is here, and is listed. What is still open there is open here too: nobody has
// decided.

namespace witnessmark {
namespace {

/// One target in both copies. States are JSON, empty where nobody has decided or nothing is there.
struct Target {
  std::string kind;
  std::string target;
  std::string interview;
  std::string here = {};
  std::string there = {};
  std::vector<OwnEvent> done_here = {};
  std::vector<OwnEvent> done_there = {};
  std::function<Result<void>(NewEvent)> take = {};  ///< Puts the other's state in place, with the event.
};

Decided decided_by(const std::vector<OwnEvent>& events, const std::string& state) {
  const OwnEvent& last = events.back();
  return {last.id, last.actor, last.wall_time, last.why, last.blind, state};
}

NewEvent taken_over(const Target& target) {
  NewEvent event{.kind = "taken-over",
                 .target_kind = target.kind,
                 .target = target.target,
                 .interview = target.interview};
  if (!target.done_there.empty()) {
    const OwnEvent& last = target.done_there.back();
    event.why = last.why.empty() ? last.actor : last.actor + ": " + last.why;
    event.blind = last.blind;
  }
  return event;
}

Result<void> merge_target(Merging& merging, const Target& target) {
  if (target.done_there.empty()) return {};
  const bool settled_there = std::any_of(target.done_there.begin(), target.done_there.end(),
                                         [](const OwnEvent& event) { return event.kind == "settled"; });
  const auto open_there = open_on(merging.there, target.kind, target.target, target.there);
  if (!open_there.empty() && target.done_here.empty()) {
    for (DoubleDecision decision : open_there) {
      if (target.here == decision.there.state) std::swap(decision.here, decision.there);
      if (target.here != decision.here.state) {
        if (auto taken = target.take(taken_over(target)); !taken) return taken;
      }
      if (note_double_decision(merging.here, decision)) ++merging.report.differences;
    }
    return {};
  }
  if (target.done_here.empty()) {
    if (target.here == target.there && !(settled_there && is_open(merging.here, target.kind, target.target)))
      return {};
    if (auto taken = target.take(taken_over(target)); !taken) return taken;
    if (target.here != target.there) ++merging.report.taken;
    settle_all_open(merging.here, target.kind, target.target, target.there);
    return {};
  }
  DoubleDecision decision{.target_kind = target.kind,
                          .target = target.target,
                          .interview = target.interview,
                          .here = decided_by(target.done_here, target.here),
                          .there = decided_by(target.done_there, target.there),
                          .alike = is_alike(target.kind, target.here, target.there)};
  if (decision.alike && target.there < target.here) {
    // Whoever brings which into which, the same wording is kept.
    if (auto taken = target.take(taken_over(target)); !taken) return taken;
  }
  if (note_double_decision(merging.here, decision))
    ++(decision.alike ? merging.report.alike : merging.report.differences);
  return {};
}

std::vector<OwnEvent> decisions_in(std::vector<OwnEvent> events, const std::string& name) {
  std::erase_if(
      events, [&](const OwnEvent& event) { return !is_decision(event.kind) || target_name(event) != name; });
  return still_in_force(events);
}

/// Ours for a claim of theirs: the same id, or the one proposed from the same words.
class ClaimMatcher {
 public:
  explicit ClaimMatcher(Merging& merging) : merging_(merging) {}

  Id ours(const ClaimRow& theirs) {
    const Id id = theirs.stored.claim.id;
    if (theirs.stored.by_coder || find_claim_row(merging_.here, id)) return id;
    const ClaimState proposal = proposal_of(theirs);
    if (!same_reading(merging_, proposal.claim.interview, proposal.version)) return id;
    const auto& rows = rows_of(proposal.claim.interview);
    const auto found = std::find_if(rows.begin(), rows.end(), [&](const ClaimRow& row) {
      if (row.stored.by_coder) return false;
      const ClaimState own = proposal_of(row);
      return own.version == proposal.version && own.claim.quotes.at(0) == proposal.claim.quotes.at(0) &&
             own.claim.statement == proposal.claim.statement && own.claim.ordinal == proposal.claim.ordinal;
    });
    if (found == rows.end()) return id;
    merging_.same_claim[id] = found->stored.claim.id;
    return found->stored.claim.id;
  }

 private:
  const std::vector<ClaimRow>& rows_of(const std::string& interview) {
    const auto [at, fresh] = rows_.try_emplace(interview);
    if (fresh) at->second = load_claim_rows(merging_.here, interview);
    return at->second;
  }

  Merging& merging_;
  std::map<std::string, std::vector<ClaimRow>> rows_;
};

std::string with_id(const std::string& json, const Id& id) {
  if (json.empty()) return json;
  ClaimState state = claim_from_json(json);
  state.claim.id = id;
  return claim_json(state.claim, state.version);
}

std::string decided_state(const std::optional<ClaimRow>& row) {
  return row && row->stored.decided ? claim_json(row->stored.claim, row->stored.version) : std::string();
}

Result<void> merge_claim(Merging& merging, ClaimMatcher& matcher, const OwnEvent& about) {
  const Id id = parse_id(about.target).value_or(Id{});
  const auto theirs = find_claim_row(merging.there, id);
  const Id ours = theirs ? matcher.ours(*theirs) : id;
  Target target{.kind = "claim",
                .target = to_string(ours),
                .interview = about.interview,
                .here = decided_state(find_claim_row(merging.here, ours)),
                .there = with_id(decided_state(theirs), ours)};
  if (theirs && theirs->stored.decided && !same_reading(merging, about.interview, theirs->stored.version)) {
    merging.skip("decision", target.target, "the text it was made on is not here");
    return {};
  }
  if (!target.there.empty()) target.there = carried_to_current(merging.here, target.there);
  target.done_there =
      decisions_in(merging.brought_on("claim", about.target, is_decision), target_name(about));
  target.done_here =
      decisions_in(merging.parting.unknown_there("claim", target.target), "claim\n" + target.target);
  target.take = [&](NewEvent event) -> Result<void> {
    if (target.there.empty() && target.here.empty()) return append_unchanged(merging.here, std::move(event));
    if (target.there.empty()) return take_decision_back(merging.here, ours, std::move(event));
    const std::string proposal = theirs->proposal.empty() ? "" : with_id(theirs->proposal, ours);
    return put_decided(merging.here, ours, target.there, theirs->stored.by_coder, proposal, std::move(event));
  };
  return merge_target(merging, target);
}

/// A record's JSON with ids of claims as they are here.
std::string translated(const Merging& merging, const std::string& json) {
  if (json.empty() || merging.same_claim.empty()) return json;
  auto object = nlohmann::ordered_json::parse(json);
  for (const char* member : {"claim", "other"}) {
    const auto id = object.contains(member) ? parse_id(object[member].get<std::string>()) : std::nullopt;
    const auto found = id ? merging.same_claim.find(*id) : merging.same_claim.end();
    if (found != merging.same_claim.end()) object[member] = to_string(found->second);
  }
  return object.dump();
}

/// What a coder read is joined, not weighed against what the same coder read elsewhere.
std::string joined_reading(const std::string& here, const std::string& there) {
  PassagesRead read = record_of<PassagesRead>(here);
  const PassagesRead other = record_of<PassagesRead>(there);
  read.ranges.insert(read.ranges.end(), other.ranges.begin(), other.ranges.end());
  read.ranges = join_ranges(std::move(read.ranges));
  return to_json(read);
}

Result<void> put_record_state(Merging& merging, const Target& target, NewEvent event) {
  event.before = target.here;
  event.after = target.there;
  std::string after = target.there;
  if (target.kind == "passage" && !after.empty()) {
    const auto passage = record_of<RestrictedPassage>(after);
    const CurrentReading current = current_reading(merging.there, passage.interview);
    SqlStatement& select = merging.there.prepared(
        "SELECT first, past FROM passages WHERE interview = ? AND quote = ? AND reading = ?");
    RestrictedPassage placed = passage;
    if (select.bind(passage.interview).bind(passage.quote).bind(current.reading).step() && !select.is_null(0))
      placed.range = {CodePoint{select.integer(0)}, CodePoint{select.integer(1)}};
    select.reset();
    if (!placed.range.empty() && same_reading(merging, passage.interview, current.version))
      event.after = passage_json(placed, current.version);
  }
  const std::int64_t number = append_event(merging.here, event);
  if (!target.here.empty() || !target.there.empty())
    write_record(merging.here, target.kind, target.here, target.there.empty() ? "" : event.after, number);
  return {};
}

Result<void> merge_record(Merging& merging, const OwnEvent& about) {
  const std::string& like = about.after.empty() ? about.before : about.after;
  if (like.empty()) return {};
  Target target{.kind = about.target_kind, .target = about.target, .interview = about.interview};
  target.there = translated(merging, stored_json(merging.there, about.target_kind, like));
  target.here = stored_json(merging.here, about.target_kind, translated(merging, like));
  const std::string& named = target.there.empty() ? target.here : target.there;
  if (!named.empty()) target.target = record_target(about.target_kind, named);
  if (!target.there.empty() && !claims_are_there(merging.here, target.there)) {
    merging.skip(target.kind, target.target, "the claim it is about is not here");
    return {};
  }
  const auto version = target.there.empty() ? 0 : nlohmann::json::parse(target.there).value("version", 0);
  if (version > 0 && !same_reading(merging, target.interview, version)) {
    merging.skip(target.kind, target.target, "the text it was written on is not here");
    return {};
  }
  target.done_there =
      decisions_in(merging.brought_on(about.target_kind, about.target, is_decision), target_name(about));
  OwnEvent own = about;
  own.target = target.target;
  target.done_here =
      decisions_in(merging.parting.unknown_there(target.kind, target.target), target_name(own));
  if (target.kind == Table<PassagesRead>::kind && !target.done_here.empty() && !target.here.empty() &&
      !target.there.empty()) {
    target.there = joined_reading(target.here, target.there);
    target.done_here.clear();
  }
  target.take = [&](NewEvent event) { return put_record_state(merging, target, std::move(event)); };
  return merge_target(merging, target);
}

}  // namespace

bool is_decision(std::string_view kind) {
  return is_coders(kind) || kind == "undone" || kind == "redone";
}

Result<void> merge_decisions(Merging& merging) {
  ClaimMatcher matcher(merging);
  std::vector<const OwnEvent*> claims;
  std::vector<const OwnEvent*> records;
  std::set<std::string> seen;
  for (const OwnEvent& event : merging.brought) {
    const bool is_claim = event.target_kind == "claim";
    if (!is_decision(event.kind) || (!is_claim && !is_coding_record(event.target_kind))) continue;
    if (merging.is_erased_here(event.interview) || !seen.insert(target_name(event)).second) continue;
    (is_claim ? claims : records).push_back(&event);
  }
  // What is written about a claim comes after it and goes before it.
  const auto is_there = [&](const OwnEvent* event) {
    return find_claim_row(merging.there, parse_id(event->target).value_or(Id{})).has_value();
  };
  std::stable_partition(claims.begin(), claims.end(), is_there);
  const auto going = std::find_if_not(claims.begin(), claims.end(), is_there);
  for (auto claim = claims.begin(); claim != going; ++claim) {
    if (auto merged = merge_claim(merging, matcher, **claim); !merged) return merged;
  }
  for (const OwnEvent* record : records) {
    if (auto merged = merge_record(merging, *record); !merged) return merged;
  }
  for (auto claim = going; claim != claims.end(); ++claim) {
    const Id id = parse_id((*claim)->target).value_or(Id{});
    if (is_written_about(merging.here, id)) {
      merging.skip("claim", (*claim)->target,
                   "it was taken back there, and something is written about it here");
      continue;
    }
    if (auto merged = merge_claim(merging, matcher, **claim); !merged) return merged;
  }
  return {};
}

}  // namespace witnessmark
