#include "witnessmark/app/conclusions.h"

#include <algorithm>
#include <tuple>

#include "app/names_of_events.h"
#include "app/people.h"
#include "app/record_maker.h"
#include "app/shown_register.h"
#include "witnessmark/app/journal_words.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/conclusions.h"
#include "witnessmark/store/evidence.h"
#include "witnessmark/store/interviews.h"

namespace witnessmark {
namespace {

bool names(const std::vector<std::string>& keys, const std::string& key) {
  return std::find(keys.begin(), keys.end(), key) != keys.end();
}

/// Whether a record on subject and place is about one of the terms.
bool about(const std::string& subject, const std::string& place, const std::set<std::string>& equipment,
           const std::set<std::string>& places) {
  return (!subject.empty() && equipment.contains(subject)) || (!place.empty() && places.contains(place));
}

/// Asks for what the conclusion rests on; what may not go out is counted.
bool may_go_out(const SiteFile& site, const Conclusion& conclusion, const std::set<std::string>& interviews,
                Withholding& withholding) {
  if (!conclusion.published.empty()) return true;
  for (const std::string& key : conclusion.evidence) {
    if (interviews.contains(key) && !withholding.may_show(key, {})) return false;
    const auto id = parse_id(key);
    const auto claim = id ? find_claim(site, *id) : std::nullopt;
    if (claim && !withholding.may_show(claim->claim.interview, claim->claim.quotes)) return false;
  }
  return true;
}

/// Keys of the entries that may be shown.
std::set<std::string> entries_shown(const SiteFile& site, const Withholding& withholding) {
  std::int64_t left_out = 0;
  std::set<std::string> keys;
  for (const Entry& entry : shown_register(site, People(site), withholding, left_out).entries)
    keys.insert(entry.key);
  return keys;
}

/// What may not go out is not said, only that something was done.
GroundChange ground_change(const JournalEvent& happened, const AuthorityLists& lists,
                           const Withholding& withholding, const std::set<std::string>& entries) {
  const bool shown =
      happened.target_kind == "entry"
          ? entries.contains(happened.target)
          : happened.interview.empty() || withholding.reason(happened.interview, {}) == Withheld::none;
  JournalEvent event = happened;
  NamesOfEvents(withholding).take_out(event);
  GroundChange change{event.target_kind, event.target, event_words(event), "", event.actor, event.wall_time};
  if (const std::string id = target_words(event); !id.empty()) change.what += " " + id.substr(0, 8);
  if (shown && !event.erased) change.how = change_words(event, lists);
  return change;
}

ConclusionFile to_go_out(const SiteFile& site, Withholding& withholding) {
  ConclusionFile file = load_conclusions(site);
  std::set<std::string> interviews;
  for (const Interview& interview : load_interviews(site).interviews) interviews.insert(interview.key);
  std::erase_if(file.conclusions, [&](const Conclusion& conclusion) {
    return !may_go_out(site, conclusion, interviews, withholding);
  });
  return file;
}

}  // namespace

std::vector<ConclusionHistory> conclusion_histories(const SiteFile& site, Withholding& withholding) {
  const auto changes = changed_since_concluded(site);
  const auto entries = changes.empty() ? std::set<std::string>{} : entries_shown(site, withholding);
  const ConclusionFile file = to_go_out(site, withholding);
  const AuthorityLists lists = load_lists(site);
  std::vector<ConclusionHistory> histories;
  for (const Conclusion& conclusion : file.conclusions) {
    ConclusionHistory history;
    history.conclusion = conclusion;
    for (std::string& key : history.conclusion.evidence) key = withholding.shown_interview(key);
    history.subject_name = term_name(lists.equipment, conclusion.subject, "");
    history.place_name = term_name(lists.places, conclusion.place, "");
    for (const Conclusion& other : file.conclusions) {
      if (names(other.replaces, conclusion.key)) history.replaced_by.push_back(other);
      if (names(conclusion.replaces, other.key)) history.replaces.push_back(other);
    }
    if (const auto changed = changes.find(conclusion.key); changed != changes.end())
      for (const JournalEvent& event : changed->second)
        history.changed_since.push_back(ground_change(event, lists, withholding, entries));
    for (const Enquiry& enquiry : file.enquiries)
      if (names(enquiry.conclusions, conclusion.key)) history.answers.push_back(enquiry);
    histories.push_back(std::move(history));
  }
  std::stable_sort(histories.begin(), histories.end(),
                   [](const ConclusionHistory& a, const ConclusionHistory& b) {
                     const auto order = [](const ConclusionHistory& one) {
                       return std::tuple(!one.stands(), to_string(one.conclusion.date), one.conclusion.key);
                     };
                     return order(a) < order(b);
                   });
  return histories;
}

std::vector<ConclusionHistory> conclusions_on(const SiteFile& site, const std::set<std::string>& equipment,
                                              const std::set<std::string>& places, Withholding& withholding) {
  std::vector<ConclusionHistory> histories = conclusion_histories(site, withholding);
  std::erase_if(histories, [&](const ConclusionHistory& history) {
    return !about(history.conclusion.subject, history.conclusion.place, equipment, places);
  });
  return histories;
}

std::vector<Search> searches_for(const SiteFile& site, const std::set<std::string>& equipment,
                                 const std::set<std::string>& places) {
  std::vector<Search> searches = load_conclusions(site).searches;
  std::erase_if(searches, [&](const Search& search) {
    return !about(search.subject, search.place, equipment, places);
  });
  return searches;
}

}  // namespace witnessmark
