#include <fmt/core.h>

#include <algorithm>
#include <tuple>

#include "app/coding/desk_state.h"
#include "witnessmark/app/claim_words.h"
#include "witnessmark/app/weigh.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/passages_read.h"
#include "witnessmark/store/transcripts.h"
#include "witnessmark/store/weighings.h"

namespace witnessmark {
namespace {

std::string names_of(const Interview& interview, const Withholding& withholding) {
  std::string names;
  for (const std::string& narrator : interview.narrators)
    names += (names.empty() ? "" : ", ") + withholding.shown_name(interview.key, narrator);
  return names;
}

bool holds(const ClaimQuery& query, const ClaimLine& line) {
  if (query.outcome && line.outcome != query.outcome) return false;
  if (query.recall_least && (!line.recall_distance || line.recall_distance->most < *query.recall_least)) return false;
  return name_has(line.speaker, query.speaker);
}

/// Undecided claims come first, then by rank; within a rank as they were told.
bool review_before(const ClaimLine& a, const ClaimLine& b) {
  const auto key = [](const ClaimLine& line) { return std::tuple(line.decided && !line.proposed_otherwise, line.rank); };
  return key(a) < key(b);
}

}  // namespace

bool ClaimQuery::narrows() const {
  ClaimQuery all;
  all.order = order;
  return !(*this == all);
}

bool name_has(std::string_view name, std::string_view typed) {
  const std::string folded = fold(name);
  std::size_t from = 0;
  const std::string wanted = fold(typed);
  for (std::size_t begin = 0; begin < wanted.size();) {
    const std::size_t end = std::min(wanted.find(' ', begin), wanted.size());
    const std::size_t at = folded.find(wanted.substr(begin, end - begin), from);
    if (at == std::string::npos) return false;
    from = at + (end - begin);
    begin = end + 1;
  }
  return true;
}

ClaimLine CodingDesk::State::line(const StoredClaim& stored) const {
  const Claim& claim = stored.claim;
  ClaimLine made;
  made.id = claim.id;
  made.interview = claim.interview;
  made.speaker = withholding->shown_name(claim.interview, claim.speaker);
  made.quotes = claim.quotes;
  made.statement = claim.statement;
  made.subject = one_line(term_name(maker->lists().equipment, claim.subject, claim.subject_words));
  made.place = one_line(term_name(maker->lists().places, claim.place, claim.place_words));
  made.number = number_words(claim);
  made.when = claim.when.dated.value ? to_string(*claim.when.dated.value) : "";
  made.status = claim.status;
  made.polarity = claim.polarity;
  made.decided = stored.decided;
  made.by_coder = stored.by_coder;
  made.withdrawn = claim.withdrawn;
  made.gone = stored.gone;
  made.lost = stored.lost;
  made.proposed_otherwise = stored.proposed_otherwise;
  made.rank = claim.rank;
  if (const auto weighing = load_weighing(site, claim.id)) {
    made.outcome = foremost(weighing->comparisons);
    made.recall_distance = weighing->recall.recall_distance;
  }
  return made;
}

std::vector<InterviewLine> CodingDesk::interviews() const {
  const State& state = *state_;
  std::vector<InterviewLine> lines;
  std::map<std::string, std::array<std::int64_t, 4>> counts;
  for (const ClaimCount& count : count_claims(state.site))
    counts[count.interview][static_cast<std::size_t>(count.status)] += count.count;
  for (const Interview& interview : state.people->file().interviews) {
    InterviewLine line;
    line.key = interview.key;
    line.withheld = state.withholding->reason(interview.key, {});
    line.opened = state.opened.contains(interview.key);
    line.narrators = line.withheld == Withheld::none ? names_of(interview, *state.withholding) : "";
    line.date = to_string(interview.date);
    line.place = line.withheld == Withheld::none ? interview.place : "";
    line.standing = interview.standing;
    line.length = interview.recording_length;
    if (const auto at = counts.find(interview.key); at != counts.end()) line.claims = at->second;
    const auto versions = reading_versions(state.site, interview.key);
    line.has_transcript = !versions.empty();
    if (line.has_transcript) line.code_points = versions.back().code_points;
    for (const PassagesRead& read : passages_read(state.site, interview.key))
      if (line.has_transcript && read.version == versions.back().version)
        for (const CodePointRange& range : read.ranges) line.read += range.length();
    lines.push_back(std::move(line));
  }
  return lines;
}

ClaimPage CodingDesk::claims(const ClaimQuery& query, std::size_t first, std::size_t most) const {
  const State& state = *state_;
  ClaimFilter filter;
  filter.with_mentions = false;
  if (!query.interview.empty()) filter.interviews = {query.interview};
  if (!query.subject.empty()) filter.subjects = state.maker->lists().equipment.all_within(query.subject);
  if (!query.place.empty()) filter.places = state.maker->lists().places.all_within(query.place);
  if (query.status) filter.statuses = {*query.status};
  Withholding counting = *state.withholding;
  std::vector<ClaimLine> lines;
  for_each_claim(state.site, filter, [&](const StoredClaim& stored) {
    if (query.statement && stored.claim.statement != *query.statement) return;
    if (!counting.may_show(stored.claim.interview, stored.claim.quotes)) return;
    ClaimLine line = state.line(stored);
    if (holds(query, line)) lines.push_back(std::move(line));
  });
  if (query.order == ClaimQuery::Order::review) std::stable_sort(lines.begin(), lines.end(), review_before);
  ClaimPage page;
  page.total = lines.size();
  page.first = std::min(first, lines.size());
  const std::size_t past = std::min(lines.size(), page.first + most);
  page.lines.assign(lines.begin() + static_cast<std::ptrdiff_t>(page.first), lines.begin() + static_cast<std::ptrdiff_t>(past));
  page.withheld = counting.account();
  return page;
}

std::vector<TermMatch> CodingDesk::terms(AuthorityList::Kind kind, std::string_view typed, std::size_t most) const {
  const AuthorityLists& lists = state_->maker->lists();
  const AuthorityList& list = kind == AuthorityList::Kind::places ? lists.places : lists.equipment;
  std::vector<TermMatch> by_name, by_other;
  for (const Term& term : list.terms()) {
    if (name_has(term.name, typed)) {
      by_name.push_back({term.key, term.name, ""});
      continue;
    }
    std::vector<std::string> others = term.spoken;
    for (const FormerName& former : term.former_names) others.push_back(former.name);
    others.push_back(term.number);
    others.push_back(term.key);
    const auto other = std::find_if(others.begin(), others.end(),
                                    [&](const std::string& name) { return !name.empty() && name_has(name, typed); });
    if (other != others.end()) by_other.push_back({term.key, term.name, *other});
  }
  by_name.insert(by_name.end(), by_other.begin(), by_other.end());
  if (by_name.size() > most) by_name.resize(most);
  return by_name;
}

}  // namespace witnessmark
