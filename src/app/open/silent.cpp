// Silence means something only where one has looked: for each thing told that the register has nothing on,
// the sources that cover its time are named, with the searches in them that are on record.

#include <fmt/core.h>

#include <algorithm>
#include <map>

#include "app/open/open_finders.h"
#include "app/weighing/question_words.h"
#include "witnessmark/base/counted.h"
#include "witnessmark/app/claim_words.h"
#include "witnessmark/app/weigh.h"
#include "witnessmark/store/weighings.h"
#include "witnessmark/time/relations.h"
#include "witnessmark/weigh/statement_words.h"

namespace witnessmark {
namespace {

constexpr std::size_t kMostSources = 6;

/// Sources that run over a time, as logs and files of letters do, and could have spoken of it.
bool covers(const Source& source, const Claim& claim, const DatePolicy& policy) {
  const bool running = source.kind == SourceKind::log || source.kind == SourceKind::correspondence ||
                       source.kind == SourceKind::order;
  if (!running || !source.date.value || !claim.when.period || !source.interview.empty()) return false;
  return overlap(to_period(*source.date.value, policy), *claim.when.period) != Answer::no;
}

bool is_for(const Search& search, const Claim& claim, const AuthorityLists& lists) {
  const bool thing = search.subject.empty() || lists.equipment.within(claim.subject, search.subject);
  const bool place = search.place.empty() || claim.place.empty() ||
                     lists.places.within(claim.place, search.place) ||
                     lists.places.within(search.place, claim.place);
  return thing && place;
}

/// Whether the time looked through, all of the source where none is named, may hold the time told.
bool looked_through(const Search& search, const Claim& claim, const DatePolicy& policy) {
  if (!search.when.value || !claim.when.period) return true;
  return overlap(*claim.when.period, to_period(*search.when.value, policy)) != Answer::no;
}

std::string search_words(const Search& search, const Source& source) {
  const std::string when = search.when.value ? ", " + to_string(search.when) : "";
  const std::string date = search.date.value ? " in " + to_string(search.date) : "";
  return one_line(fmt::format(
      "{} looked through {}{}{} and found {}", search.author, source_words(&source, source.key, ""), when,
      date, search.found == Search::Found::nothing ? "nothing" : "something: see the entries"));
}

void add_where_looked(const Claim& claim, const OpenGround& ground, OpenQuestion& open) {
  std::vector<std::string> unlooked;
  const HeardEvidence& heard = ground.heard;
  for (const Source& source : heard.evidence().sources) {
    bool looked = false;
    for (const Search& search : ground.searches) {
      if (search.source != source.key || !is_for(search, claim, heard.lists()) ||
          !looked_through(search, claim, heard.policy()))
        continue;
      looked = true;
      open.looked_at.push_back(search_words(search, source));
    }
    if (!looked && covers(source, claim, heard.policy()))
      unlooked.push_back(source_words(&source, source.key, ""));
  }
  if (open.looked_at.empty())
    open.looked_at.push_back("no search is on record: that nothing speaks of it means nothing yet");
  if (unlooked.size() > kMostSources) {
    const std::size_t more = unlooked.size() - kMostSources;
    unlooked.resize(kMostSources);
    unlooked.push_back(fmt::format("{} more", more));
  }
  std::string names;
  for (const std::string& name : unlooked) names += (names.empty() ? "" : "; ") + name;
  if (!names.empty()) open.would_decide.push_back("a search in what covers that time: " + names);
}

}  // namespace

void add_silent(const SiteFile& site, const OpenGround& ground, std::vector<OpenQuestion>& found) {
  std::map<std::string, OpenQuestion> by_words;  // the same told by several is one question
  std::map<std::string, std::vector<std::string>> tellers;
  std::vector<std::string> order;
  for_each_standing(site, [&](const ClaimStanding& standing) {
    if (standing.foremost != Outcome::silent) return;
    const StoredClaim* stored = ground.heard.find(standing.claim);
    if (stored == nullptr) return;
    const Claim& claim = stored->claim;
    if (!claim.when.period || (claim.subject.empty() && claim.statement != Statement::located)) return;
    const bool preview = claim.status != ClaimStatus::said_so;
    const std::string words = question_words(claim, ground.heard);
    const std::string key = (preview ? "1" : "0") + words;
    if (!by_words.contains(key)) {
      OpenQuestion open;
      open.because = OpenBecause::silent;
      open.preview = preview;
      open.subject = claim.subject;
      open.place = claim.place;
      open.question = words;
      open.would_decide = deciding_evidence(claim, ground.heard.lists());
      add_where_looked(claim, ground, open);
      by_words.emplace(key, std::move(open));
      order.push_back(key);
    }
    by_words[key].claims.push_back(claim.id);
    auto& told = tellers[key];
    if (std::find(told.begin(), told.end(), claim.speaker) == told.end()) told.push_back(claim.speaker);
  });
  for (const std::string& key : order) {
    OpenQuestion& open = by_words[key];
    open.told_by = static_cast<std::int64_t>(tellers[key].size());
    open.standing = fmt::format("told by {}, nothing in the register", counted(open.told_by, "narrator"));
    found.push_back(std::move(open));
  }
}

}  // namespace witnessmark
