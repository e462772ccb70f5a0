#include "witnessmark/app/said_about.h"

#include <fmt/core.h>

#include <algorithm>
#include <map>
#include <set>

#include "app/said/named_in_talk.h"
#include "app/shown_register.h"
#include "app/stays/shown_evidence.h"
#include "witnessmark/app/claim_records.h"
#include "witnessmark/base/code_point_index.h"
#include "witnessmark/store/evidence.h"
#include "witnessmark/store/interviews.h"
#include "witnessmark/store/transcripts.h"

namespace witnessmark {
namespace {

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

/// What labels stand for, by interview and label.
std::map<std::pair<std::string, std::string>, Speaker> speakers_of(const SiteFile& site) {
  std::map<std::pair<std::string, std::string>, Speaker> speakers;
  for (Speaker& speaker : load_interviews(site).speakers)
    speakers.emplace(std::pair(speaker.interview, speaker.label), std::move(speaker));
  return speakers;
}

/// Turns of narrators that name it and that no claim found quotes.
void add_unread(const SiteFile& site, const std::vector<NamingTurn>& turns,
                const std::vector<StoredClaim>& claims, Withholding& withholding, SaidAbout& said) {
  std::map<std::string, std::vector<CodePointRange>> quoted;
  for (const StoredClaim& stored : claims) {
    auto& ranges = quoted[stored.claim.interview];
    ranges.insert(ranges.end(), stored.claim.quotes.begin(), stored.claim.quotes.end());
  }
  const auto speakers = speakers_of(site);
  std::string held;
  std::optional<std::string> text;
  for (const auto& [interview, turn] : turns) {
    const auto speaker = speakers.find({interview, turn.speaker});
    const bool known = speaker != speakers.end();
    if (known && speaker->second.role == SpeakerRole::interviewer) continue;
    const auto& ranges = quoted[interview];
    if (std::any_of(ranges.begin(), ranges.end(),
                    [&, range = turn.range](const auto& quote) { return quote.overlaps(range); }))
      continue;
    if (!withholding.may_show(interview, {turn.range})) continue;
    if (held != interview) text = load_reading_text(site, interview), held = interview;
    const std::string_view words = CodePointIndex(text.value()).slice(turn.range);
    said.unread.push_back(
        {interview, withholding.shown_interview(interview),
         withholding.shown_name(
             interview, known && !speaker->second.person.empty() ? speaker->second.person : turn.speaker),
         withholding.without_names(interview, words, capitals_of(*text)).text, turn.time, turn.timing,
         turn.range});
  }
}

/// Entries on the things or in the places, by the first day they can be of; undated ones last.
Result<std::vector<StatementLine>> entries_on(const ShownEvidence& shown, const NamedTerms& asked) {
  std::vector<const RegisterIndex::Item*> items;
  std::set<StatementKey> keys;
  for (const RegisterIndex::Item& item : shown.index().items()) {
    const Entry& entry = *item.entry;
    if (entry.statement == Statement::located ||
        (!asked.equipment.contains(entry.subject) && !asked.places.contains(entry.place)))
      continue;
    items.push_back(&item);
    keys.insert({StatementKey::Kind::entry, entry.key});
  }
  std::stable_sort(items.begin(), items.end(), [](const auto* a, const auto* b) {
    const auto day = [](const auto* item) {
      const auto& period = item->period;
      const auto first =
          period ? (period->earliest() ? period->earliest() : period->past_latest()) : std::nullopt;
      return std::pair(!first.has_value(), first.value_or(Day{}));
    };
    return day(a) < day(b);
  });
  auto lines = shown.lines(keys);
  if (!lines) return lines.error();
  std::vector<StatementLine> entries;
  for (const auto* item : items)
    entries.push_back(std::move(lines->at({StatementKey::Kind::entry, item->entry->key})));
  return entries;
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
  const auto asked = named_terms(lists, name, true);
  if (!asked) return asked.error();
  const auto language = Language::load(surroundings.files, surroundings.language);
  if (!language) return language.error();
  SaidAbout said;
  said.terms = asked->described;
  Withholding withholding(site, surroundings.today);
  ClaimFilter filter;
  filter.subjects.assign(asked->equipment.begin(), asked->equipment.end());
  filter.places.assign(asked->places.begin(), asked->places.end());
  filter.subject_or_place = true;
  filter.with_mentions = false;
  const auto seen = for_each_record(site, filter, surroundings, withholding, [&](const ClaimRecord& record) {
    (record.claim.status == ClaimStatus::said_so    ? said.reviewed
     : record.claim.status == ClaimStatus::proposed ? said.proposed
                                                    : said.put_aside)
        .push_back(record);
  });
  if (!seen) return seen.error();
  const auto in_order = order == TellingOrder::event ? earlier_event : earlier_telling;
  for (auto* records : {&said.reviewed, &said.proposed, &said.put_aside})
    std::stable_sort(records->begin(), records->end(), in_order);
  add_unread(site, naming_turns(site, lists, *asked, *language), load_claims(site, filter), withholding, said);
  for (const Interview& interview : load_interviews(site).interviews) {
    if (reading_versions(site, interview.key).empty())
      said.without_transcript.push_back(withholding.shown_interview(interview.key));
  }
  said.conclusions = conclusions_on(site, asked->equipment, asked->places, withholding);
  const auto shown = ShownEvidence::load(site, surroundings);
  if (!shown) return shown.error();
  auto entries = entries_on(**shown, *asked);
  if (!entries) return entries.error();
  said.entries = std::move(*entries);
  said.withheld = withheld_words(withholding, (*shown)->entries_withheld(), "mention");
  return said;
}

}  // namespace witnessmark
