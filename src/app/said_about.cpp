#include "witnessmark/app/said_about.h"

#include <fmt/core.h>

#include <algorithm>
#include <map>
#include <set>

#include "witnessmark/app/claim_records.h"
#include "witnessmark/base/code_point_index.h"
#include "witnessmark/base/did_you_mean.h"
#include "witnessmark/store/evidence.h"
#include "witnessmark/store/interviews.h"
#include "witnessmark/store/search.h"
#include "witnessmark/store/transcripts.h"

namespace witnessmark {
namespace {

/// The terms a name stands for, with all that lies within them, and every name they have.
struct Asked {
  std::vector<std::string> described;
  std::set<std::string> places, equipment;
  std::set<std::string> names;
  bool empty() const { return described.empty(); }
};

void add_terms(const AuthorityList& list, std::string_view name, std::string_view kind,
               std::set<std::string>& keys, Asked& asked) {
  std::vector<const Term*> terms = list.named(name);
  if (const Term* by_key = list.find(name);
      by_key && std::find(terms.begin(), terms.end(), by_key) == terms.end())
    terms.push_back(by_key);
  for (const Term* term : terms) {
    asked.described.push_back(fmt::format("{} ({} {})", term->name, kind, term->key));
    for (const std::string& key : list.all_within(term->key)) {
      keys.insert(key);
      const Term* within = list.find(key);
      asked.names.insert(within->name);
      for (const FormerName& former : within->former_names) asked.names.insert(former.name);
      asked.names.insert(within->spoken.begin(), within->spoken.end());
    }
  }
}

std::vector<std::string> all_names(const AuthorityLists& lists) {
  std::vector<std::string> names;
  for (const AuthorityList* list : {&lists.places, &lists.equipment}) {
    for (const Term& term : list->terms()) {
      names.push_back(term.name);
      names.insert(names.end(), term.spoken.begin(), term.spoken.end());
      for (const FormerName& former : term.former_names) names.push_back(former.name);
    }
  }
  return names;
}

/// Orders by the first possible day of the event; undated claims come last.
bool earlier_event(const ClaimRecord& a, const ClaimRecord& b) {
  const auto day = [](const ClaimRecord& record) {
    const auto& period = record.claim.when.period;
    const auto first =
        period ? (period->earliest() ? period->earliest() : period->past_latest()) : std::nullopt;
    return std::pair(!first.has_value(), first.value_or(Day{}));
  };
  return day(a) < day(b);
}

/// Orders by when it was told, then by place in the telling.
bool earlier_telling(const ClaimRecord& a, const ClaimRecord& b) {
  const auto key = [](const ClaimRecord& record) {
    return std::tuple(record.interview_date, record.claim.interview, record.claim.quotes.at(0).begin);
  };
  return key(a) < key(b);
}

/// Labels of those who only ask, by interview.
std::set<std::pair<std::string, std::string>> asking(const SiteFile& site) {
  std::set<std::pair<std::string, std::string>> labels;
  for (const Speaker& speaker : load_interviews(site).speakers) {
    if (speaker.role == SpeakerRole::interviewer) labels.emplace(speaker.interview, speaker.label);
  }
  return labels;
}

/// Turns of narrators that name it and that no claim found above quotes.
void add_unread(const SiteFile& site, const Asked& asked, const std::vector<StoredClaim>& claims,
                Withholding& withholding, SaidAbout& said) {
  std::map<std::string, std::vector<CodePointRange>> quoted;
  for (const StoredClaim& stored : claims) {
    auto& ranges = quoted[stored.claim.interview];
    ranges.insert(ranges.end(), stored.claim.quotes.begin(), stored.claim.quotes.end());
  }
  std::map<std::pair<std::string, std::int64_t>, SearchHit> hits;
  for (const std::string& name : asked.names) {
    SearchRequest request;
    request.text = "\"" + name + "\"";
    while (true) {
      const auto page = search_talk(site, request);
      for (const SearchHit& hit : page) hits.emplace(std::pair(hit.interview, hit.range.begin.value), hit);
      if (page.size() < request.limit) break;
      request.after = page.back().number;
    }
  }
  const auto askers = asking(site);
  std::string held_interview;
  std::optional<StoredTranscript> held;
  for (const auto& found : hits) {
    const SearchHit& hit = found.second;
    if (askers.contains({hit.interview, hit.speaker})) continue;
    const auto& ranges = quoted[hit.interview];
    if (std::any_of(ranges.begin(), ranges.end(),
                    [&](const auto& range) { return range.overlaps(hit.range); }))
      continue;
    if (!withholding.may_show(hit.interview, {hit.range})) continue;
    if (held_interview != hit.interview)
      held = load_transcript(site, hit.interview), held_interview = hit.interview;
    if (!held) continue;
    const std::string& text = held->transcript.reading_text;
    const auto begin = time_at(held->transcript, hit.range.begin);
    said.unread.push_back({hit.interview, hit.speaker, std::string(CodePointIndex(text).slice(hit.range)),
                           hit.time, begin ? begin->timing : Timing::none, hit.range});
  }
}

}  // namespace

std::vector<const ClaimRecord*> conflicting(const SaidAbout& said) {
  std::vector<const ClaimRecord*> found;
  for (const auto* records : {&said.reviewed, &said.proposed})
    for (const ClaimRecord& record : *records)
      if (!conflict_words(record).empty()) found.push_back(&record);
  return found;
}

std::string conflict_words(const ClaimRecord& record) {
  std::string words;
  for (const Comparison& comparison : record.comparisons) {
    if (comparison.outcome != Outcome::conflicts) continue;
    words += (words.empty() ? "" : ", ") + comparison.entry;
    const bool apart = comparison.gap && comparison.gap->least > 0;
    if (apart) words += fmt::format(" ({} apart)", in_unit(*comparison.gap, "day"));
  }
  return words;
}

Result<SaidAbout> said_about(const SiteFile& site, std::string_view name, TellingOrder order,
                             const Surroundings& surroundings) {
  const AuthorityLists lists = load_lists(site);
  Asked asked;
  add_terms(lists.places, name, "place", asked.places, asked);
  add_terms(lists.equipment, name, "equipment", asked.equipment, asked);
  if (asked.empty()) {
    const std::string near = did_you_mean(near_matches(name, all_names(lists)));
    return Error{"", 0, 0, fmt::format("neither the list of places nor that of equipment has “{}”", name),
                 near.empty() ? "see the names in the lists taken in" : near};
  }
  SaidAbout said;
  said.terms = asked.described;
  Withholding withholding(site, surroundings.today);
  ClaimFilter filter;
  filter.subjects.assign(asked.equipment.begin(), asked.equipment.end());
  filter.places.assign(asked.places.begin(), asked.places.end());
  filter.subject_or_place = true;
  filter.with_mentions = false;
  const auto seen = for_each_record(site, filter, surroundings, withholding, [&](const ClaimRecord& record) {
    if (record.claim.status == ClaimStatus::said_so) said.reviewed.push_back(record);
    if (record.claim.status == ClaimStatus::proposed) said.proposed.push_back(record);
  });
  if (!seen) return seen.error();
  const auto in_order = order == TellingOrder::event ? earlier_event : earlier_telling;
  std::stable_sort(said.reviewed.begin(), said.reviewed.end(), in_order);
  std::stable_sort(said.proposed.begin(), said.proposed.end(), in_order);
  add_unread(site, asked, load_claims(site, filter), withholding, said);
  for (const Interview& interview : load_interviews(site).interviews) {
    if (reading_versions(site, interview.key).empty()) said.without_transcript.push_back(interview.key);
  }
  said.conclusions = conclusions_on(site, asked.equipment, asked.places, withholding);
  said.withheld = withholding.account();
  return said;
}

}  // namespace witnessmark
