#include "witnessmark/app/propose.h"

#include <fmt/core.h>

#include <algorithm>

#include "witnessmark/app/date_meaning.h"
#include "witnessmark/language/claims.h"
#include "witnessmark/store/evidence.h"
#include "witnessmark/store/interviews.h"
#include "witnessmark/store/transcripts.h"

namespace witnessmark {
namespace {

/// The interviews to read: those named, or all. An Error for a name the site file does not have.
Result<std::vector<Interview>> chosen(const InterviewFile& file, const std::vector<std::string>& keys) {
  if (keys.empty()) return file.interviews;
  std::vector<Interview> interviews;
  for (const std::string& key : keys) {
    const auto at = std::find_if(file.interviews.begin(), file.interviews.end(),
                                 [&](const Interview& one) { return one.key == key; });
    if (at == file.interviews.end())
      return Error{"", 0, 0, fmt::format("the site file has no interview “{}”", key), "see the keys in interviews.csv"};
    interviews.push_back(*at);
  }
  return interviews;
}

}  // namespace

Result<ProposalAccount> propose(SiteFile& site, const std::vector<std::string>& keys,
                                const Surroundings& surroundings) {
  const auto policy = load_date_policy(surroundings);
  if (!policy) return policy.error();
  const auto language = Language::load(surroundings.files, surroundings.language);
  if (!language) return language.error();
  const InterviewFile file = load_interviews(site);
  const auto interviews = chosen(file, keys);
  if (!interviews) return interviews.error();

  const AuthorityLists lists = load_lists(site);
  const Register evidence = load_register(site);
  const TermFinder places(lists.places, *language);
  const TermFinder equipment(lists.equipment, *language);
  std::vector<std::vector<std::string>> locations;
  for (const Stay& stay : evidence.itinerary) locations.push_back(stay.locations);
  ReadingContext context;
  context.language = &*language;
  context.places = &places;
  context.equipment = &equipment;
  context.persons = file.persons;
  context.speakers = file.speakers;
  context.events = evidence.events;
  context.locations = locations;
  context.policy = *policy;
  const SiteNames names(context);
  context.names = &names;

  ProposalAccount account;
  SiteTransaction work(site);
  for (const Interview& interview : *interviews) {
    if (surroundings.progress) surroundings.progress("reading " + interview.key);
    const auto stored = load_transcript(site, interview.key);
    if (!stored) {
      account.without_transcript.push_back(interview.key);
      continue;
    }
    context.interview = &interview;
    context.century = century_before(interview.date.value, *policy);
    std::vector<Claim> claims = propose_claims(context, stored->transcript, stored->sentences);
    auto changes = replace_proposals(site, interview.key, claims);
    if (!changes) return changes.error();
    for (const Claim& claim : claims) ++account.by_statement[claim.statement];
    account.changes += *changes;
    account.interviews.push_back({interview.key, claims.size(), *changes});
  }
  work.commit();
  if (surroundings.progress) surroundings.progress("");
  return account;
}

}  // namespace witnessmark
