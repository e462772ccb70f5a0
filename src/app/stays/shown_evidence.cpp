#include "app/stays/shown_evidence.h"

#include <fmt/core.h>

#include <algorithm>

#include "witnessmark/app/date_meaning.h"
#include "witnessmark/base/did_you_mean.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/evidence.h"
#include "witnessmark/store/interviews.h"
#include "witnessmark/weigh/recall.h"

namespace witnessmark {
namespace {

/// The interviews an entry tells of: a testimony's own, and those its date or identification rests on.
std::set<std::string> interviews_beneath(const Entry& entry,
                                         const std::map<std::string, const Source*>& sources) {
  std::set<std::string> interviews;
  const auto add = [&](const std::string& key) {
    const auto source = sources.find(key);
    if (source == sources.end())
      interviews.insert(key);
    else if (!source->second->interview.empty())
      interviews.insert(source->second->interview);
  };
  if (const auto source = sources.find(entry.source);
      source != sources.end() && source->second->kind == SourceKind::testimony)
    add(entry.source);
  for (const auto* keys : {&entry.date_rests_on, &entry.identification_rests_on, &entry.caption_rests_on})
    for (const std::string& key : *keys) add(key);
  return interviews;
}

}  // namespace

Register ShownEvidence::shown_register(const SiteFile& site) {
  Register evidence = load_register(site);
  std::map<std::string, const Source*> sources;
  for (const Source& source : evidence.sources) sources.emplace(source.key, &source);
  std::set<std::string> erased;
  for (const ErasedInterview& one : erased_interviews(site)) erased.insert(one.interview);
  const auto removed = std::erase_if(evidence.entries, [&](const Entry& entry) {
    const auto interviews = interviews_beneath(entry, sources);
    return std::any_of(interviews.begin(), interviews.end(), [&](const std::string& key) {
      const bool known = people_.knows_interview(key) || erased.contains(key);
      return known && withholding_.reason(key, {}) != Withheld::none;
    });
  });
  entries_withheld_ = static_cast<std::int64_t>(removed);
  return evidence;
}

std::vector<HeldClaim> ShownEvidence::shown_claims(const SiteFile& site, const DatePolicy& policy) {
  std::vector<HeldClaim> claims;
  ClaimFilter filter;
  filter.with_mentions = false;
  for_each_claim(site, filter, [&](const StoredClaim& stored) {
    const Claim& claim = stored.claim;
    if (claim.withdrawn || claim.status == ClaimStatus::misread || claim.status == ClaimStatus::set_aside)
      return;
    if (!withholding_.may_show(claim.interview, claim.quotes)) return;
    claims.push_back(
        {claim, claim.status == ClaimStatus::said_so ? Footing::reviewed : Footing::proposed,
         recall_of(claim.when, people_.interview(claim.interview), people_.narrator(claim), policy)});
  });
  return claims;
}

ShownEvidence::ShownEvidence(const SiteFile& site, const Surroundings& surroundings, const DatePolicy& policy)
    : site_(site),
      surroundings_(surroundings),
      withholding_(site, surroundings.today),
      people_(site),
      register_(shown_register(site)),
      lists_(load_lists(site)),
      index_(register_, lists_, policy),
      claims_(shown_claims(site, policy)),
      stays_(index_, claims_) {}

Result<std::unique_ptr<ShownEvidence>> ShownEvidence::load(const SiteFile& site,
                                                           const Surroundings& surroundings) {
  const auto policy = load_date_policy(surroundings);
  if (!policy) return policy.error();
  return std::unique_ptr<ShownEvidence>(new ShownEvidence(site, surroundings, *policy));
}

std::string ShownEvidence::subject_name(const std::string& key) const {
  const Term* term = lists_.equipment.find(key);
  return term != nullptr ? term->name : key;
}

std::string ShownEvidence::place_name(const std::string& key) const {
  const Term* term = lists_.places.find(key);
  return term != nullptr ? term->name : key;
}

std::string ShownEvidence::withheld() const {
  std::string text = withholding_.account();
  if (entries_withheld_ > 0)
    text += fmt::format("; {} {} on withheld testimony left out", entries_withheld_,
                        entries_withheld_ == 1 ? "entry that rests" : "entries that rest");
  return text;
}

Result<NamedTerms> named_terms(const AuthorityLists& lists, std::string_view name, bool equipment_too) {
  NamedTerms found;
  std::vector<std::string> names;
  const auto look_in = [&](const AuthorityList& list, std::set<std::string>& keys) {
    std::vector<const Term*> terms = list.named(name);
    if (const Term* by_key = list.find(name)) terms.push_back(by_key);
    for (const Term* term : terms)
      for (const std::string& key : list.all_within(term->key)) keys.insert(key);
    for (const Term& term : list.terms()) {
      names.push_back(term.name);
      names.insert(names.end(), term.spoken.begin(), term.spoken.end());
    }
  };
  look_in(lists.places, found.places);
  if (equipment_too) look_in(lists.equipment, found.equipment);
  if (!found.places.empty() || !found.equipment.empty()) return found;
  const std::string near = did_you_mean(near_matches(name, names));
  const std::string what =
      equipment_too ? fmt::format("neither the list of places nor that of equipment has “{}”", name)
                    : fmt::format("the list of places has no “{}”", name);
  return Error{"", 0, 0, what, near.empty() ? "see the names in the lists taken in" : near};
}

}  // namespace witnessmark
