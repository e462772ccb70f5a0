#include <fmt/core.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "app/coding/desk_state.h"
#include "witnessmark/store/claim_acts.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/entry_links.h"
#include "witnessmark/store/notes.h"
#include "witnessmark/store/passages_read.h"
#include "witnessmark/store/quote_checks.h"
#include "witnessmark/store/restricted_passages.h"
#include "witnessmark/store/undo.h"
#include "witnessmark/store/workplace.h"

namespace witnessmark {
namespace {

Error no_longer_there() {
  return {"", 0, 0, "a claim is no longer in the site file", "go back and look again"};
}

}  // namespace

Result<void> CodingDesk::State::check_may_edit() const {
  if (site.can_edit()) return {};
  return Error{"", 0, 0, "nothing can be decided here", why_reading};
}

Result<Claim> CodingDesk::State::claim_to_change(const Id& id) const {
  if (auto may = check_may_edit(); !may) return may.error();
  auto stored = find_claim(site, id);
  if (!stored) return no_longer_there();
  return std::move(stored->claim);
}

Result<std::size_t> CodingDesk::decide(const std::vector<Id>& claims, ClaimStatus status,
                                       const std::string& why) {
  State& state = *state_;
  if (auto may = state.check_may_edit(); !may) return may.error();
  std::vector<Claim> decided;
  for (const Id& id : claims) {
    auto claim = state.claim_to_change(id);
    if (!claim) return claim.error();
    claim->status = status;
    const bool lacks = status == ClaimStatus::said_so && !what_it_needs(*claim).empty();
    if (claims.size() == 1 || !lacks) decided.push_back(std::move(claim).value());
  }
  if (auto done = decide_many(state.site, decided, why, state.proposals()); !done) return done.error();
  return decided.size();
}

Result<void> CodingDesk::correct(const Claim& claim, const std::string& why) {
  State& state = *state_;
  if (auto may = state.check_may_edit(); !may) return may;
  Claim corrected = claim;
  corrected.status = ClaimStatus::said_so;
  if (auto done = decide_claim(state.site, corrected, why, state.proposals()); !done) return done;
  return state.weigh(corrected.id);
}

Result<Id> CodingDesk::add(Claim claim, const std::string& why) {
  State& state = *state_;
  if (auto may = state.check_may_edit(); !may) return may.error();
  claim.status = ClaimStatus::said_so;
  claim.speaker = state.person_of(claim.interview, claim.speaker);
  claim.quotes = state.by_turn(claim);
  claim.ordinal = state.free_ordinal(claim);
  auto id = add_claim(state.site, claim, why, state.proposals());
  if (!id) return id;
  if (auto weighed = state.weigh(*id); !weighed) return weighed.error();
  return id;
}

Result<void> CodingDesk::join(const Id& claim, const Id& other) {
  State& state = *state_;
  auto kept = state.claim_to_change(claim);
  if (!kept) return kept.error();
  const auto absorbed = state.claim_to_change(other);
  if (!absorbed) return absorbed.error();
  for (const CodePointRange& quote : absorbed->quotes)
    if (std::find(kept->quotes.begin(), kept->quotes.end(), quote) == kept->quotes.end())
      kept->quotes.push_back(quote);
  if (auto done = merge_claims(state.site, *kept, other, "", state.proposals()); !done) return done;
  return state.weigh(claim);
}

Result<void> CodingDesk::divide(const Id& claim) {
  State& state = *state_;
  const auto original = state.claim_to_change(claim);
  if (!original) return original.error();
  Claim part = *original;
  part.id = Id{};
  part.ordinal = state.free_ordinal(part);
  const auto made = split_claim(state.site, *original, part, "", state.proposals());
  if (!made) return made.error();
  return state.weigh(*made);
}

Result<void> CodingDesk::note(const Id& claim, const std::string& text) {
  const auto about = state_->claim_to_change(claim);
  if (!about) return about.error();
  Note note;
  note.interview = about->interview;
  note.claim = claim;
  note.text = text;
  const auto written = add_note(state_->site, note);
  if (!written) return written.error();
  return {};
}

Result<void> CodingDesk::check_quote(const Id& claim, const std::string& heard) {
  if (auto may = state_->check_may_edit(); !may) return may;
  return witnessmark::check_quote(state_->site, claim, heard);
}

Result<void> CodingDesk::requote(const Id& claim, CodePointRange range) {
  auto held = state_->claim_to_change(claim);
  if (!held) return held.error();
  held->quotes = {range};
  held->quotes = state_->by_turn(*held);
  return correct(*held, "");
}

Result<void> CodingDesk::link(const Id& claim, const std::string& entry, bool speaks_of_it) {
  State& state = *state_;
  if (auto may = state.check_may_edit(); !may) return may;
  const LinkVerdict verdict = speaks_of_it ? LinkVerdict::linked : LinkVerdict::ruled_out;
  for (const EntryLink& held : links_of_claim(state.site, claim))
    if (held.entry == entry && held.verdict == verdict) return unlink_entry(state.site, claim, entry, "");
  return link_entry(state.site, {claim, entry, "", verdict, "", ""});
}

Result<void> CodingDesk::mark_read(const std::string& interview, CodePointRange range) {
  if (auto may = state_->check_may_edit(); !may) return may;
  return witnessmark::mark_read(state_->site, interview, range);
}

Result<void> CodingDesk::restrict_passage(const std::string& interview, CodePointRange range,
                                          const std::string& why) {
  State& state = *state_;
  if (auto may = state.check_may_edit(); !may) return may;
  RestrictedPassage passage;
  passage.interview = interview;
  passage.range = range;
  passage.conditions.access = Access::restricted;
  passage.reason = why;
  auto done = mark_passage(state.site, passage, why);
  if (done) state.read_anew();
  return done;
}

Result<void> CodingDesk::lift_restriction(const std::string& interview, CodePointRange range,
                                          const std::string& why) {
  State& state = *state_;
  if (auto may = state.check_may_edit(); !may) return may;
  if (const Withheld why_not = state.withholding->reason(interview, {range}); why_not != Withheld::none)
    return Error{interview, 0, 0, fmt::format("withheld: {}", to_string(why_not)), "open it first, with O"};
  bool any = false;
  SiteTransaction together(state.site);
  for (RestrictedPassage passage : state.people->file().passages) {
    if (passage.interview != interview || passage.conditions.access == Access::open ||
        !passage.range.overlaps(range))
      continue;
    any = true;
    passage.conditions = {Access::open, std::nullopt, ""};
    if (auto done = mark_passage(state.site, passage, why); !done) return done;
  }
  if (!any)
    return Error{interview, 0, 0, "no restricted passage lies here", "go to the passage and try again"};
  together.commit();
  state.read_anew();
  return {};
}

std::string CodingDesk::last_act() const {
  const auto act = state_->site.can_edit() ? next_undo(state_->site) : std::nullopt;
  return act ? to_string(act->id) : "";
}

Result<CodingDesk::TakenBack> CodingDesk::undo() {
  if (auto may = state_->check_may_edit(); !may) return may.error();
  return state_->taken_back(witnessmark::undo(state_->site), "undone");
}

Result<CodingDesk::TakenBack> CodingDesk::redo() {
  if (auto may = state_->check_may_edit(); !may) return may.error();
  return state_->taken_back(witnessmark::redo(state_->site), "done again");
}

/// What an undo or a redo was about; claims it changed are weighed again.
Result<CodingDesk::TakenBack> CodingDesk::State::taken_back(const Result<std::optional<CoderAct>>& act,
                                                            std::string_view what) {
  if (!act) return act.error();
  if (!*act) return TakenBack{};
  TakenBack made;
  std::string about;
  for (const ActTarget& target : (*act)->targets) {
    if (target.target_kind == "passage") read_anew();
    const auto id = target.target_kind == "claim" ? parse_id(target.target) : std::nullopt;
    if (!id) continue;
    if (auto weighed = weigh(*id); !weighed) return weighed.error();
    const auto stored = find_claim(site, *id);
    if (!stored || !about.empty()) continue;
    const ClaimLine shown = line(*stored);
    about = fmt::format(" ({} · {})", to_string(shown.statement),
                        shown.subject.empty() ? shown.place : shown.subject);
    made.claim = *id;
  }
  made.words = fmt::format("{}: {}{}", what, (*act)->words, about);
  return made;
}

void CodingDesk::code_blind(bool blind) {
  state_->blind = blind;
}

std::string CodingDesk::standing() const {
  const auto kept = load_workplace(state_->site, state_->surroundings.coder);
  if (!kept) return "";
  const auto object = nlohmann::json::parse(*kept, nullptr, false);
  return object.is_object() ? object.value("stands", "") : "";
}

void CodingDesk::keep_standing(const std::string& text) {
  if (!state_->site.can_edit()) return;
  const auto kept =
      save_workplace(state_->site, state_->surroundings.coder, nlohmann::json{{"stands", text}}.dump());
  if (!kept) throw std::logic_error(to_string(kept.error()));
}

}  // namespace witnessmark
