#include <fmt/core.h>

#include <algorithm>
#include <map>

#include "app/coding/desk_state.h"
#include "witnessmark/app/claim_words.h"
#include "witnessmark/app/weigh.h"
#include "witnessmark/base/code_point_index.h"
#include "witnessmark/base/counted.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/passages_read.h"
#include "witnessmark/store/review_rows.h"
#include "witnessmark/store/transcripts.h"
#include "witnessmark/store/weighings.h"
#include "witnessmark/weigh/statement_words.h"

namespace witnessmark {
namespace {

std::string names_of(const Interview& interview, const Withholding& withholding) {
  std::string names;
  for (const std::string& narrator : interview.narrators)
    names += (names.empty() ? "" : ", ") + withholding.shown_name(interview.key, narrator);
  return names;
}

/// Persons one of whose names has what was typed, and the labels of transcripts that do.
std::vector<std::string> speakers_named(const InterviewFile& file, const std::string& typed) {
  std::vector<std::string> speakers;
  for (const Person& person : file.persons)
    if (name_has(person.name, typed) || name_has(person.pseudonym, typed)) speakers.push_back(person.key);
  for (const Speaker& speaker : file.speakers)
    if (speaker.person.empty() && name_has(speaker.label, typed)) speakers.push_back(speaker.label);
  return speakers;
}

/// The words claims rest on. Claims of one interview should come one after the other: its text is read once
/// then.
class QuotedWords {
 public:
  QuotedWords(const SiteFile& site, RecordMaker& maker) : site_(site), maker_(maker) {}

  std::string of(const StoredClaim& stored) {
    const Claim& claim = stored.claim;
    if (!index_ || claim.interview != interview_ || stored.version != version_) {
      index_.reset();
      interview_ = claim.interview;
      version_ = stored.version;
      text_ = load_reading_text(site_, interview_, version_).value_or("");
      index_.emplace(text_);
    }
    const std::string_view quote = index_->slice(claim.quotes.front());
    // Only what has a line break can run over turns, and only then the turns are asked for.
    if (quote.find('\n') == std::string_view::npos) return quoted_words(claim, quote);
    const OpenTranscript& open = maker_.turn_to(claim.interview, stored.version);
    return quoted_words(claim, open.index->slice(maker_.pieces_of(claim).front()));
  }

 private:
  const SiteFile& site_;
  RecordMaker& maker_;
  std::string interview_, text_;
  int version_ = 0;
  std::optional<CodePointIndex> index_;
};

}  // namespace

std::string quoted_words(const Claim& claim, std::string_view quote) {
  return one_line(brief_quote(quote, claim.when.dated.written));
}

bool ClaimQuery::narrows() const {
  return !(*this == ClaimQuery{});
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
  made.subject = one_line(
      named_words(claim.subject, term_name(maker->lists().equipment, claim.subject, claim.subject_words)));
  if (claim.statement == Statement::located && claim.subject == claim.speaker && !claim.subject.empty())
    made.subject = made.speaker;
  made.place =
      one_line(named_words(claim.place, term_name(maker->lists().places, claim.place, claim.place_words)));
  made.number = number_words(claim);
  made.when = date_words(claim.when);
  const auto mark = [](bool carried, std::string& words) {
    if (carried && !words.empty()) words += " (carried)";
  };
  mark(claim.subject_carried, made.subject);
  mark(claim.place_carried, made.place);
  mark(claim.when.carried, made.when);
  made.status = claim.status;
  made.polarity = claim.polarity;
  made.decided = stored.decided;
  made.by_coder = stored.by_coder;
  made.withdrawn = claim.withdrawn;
  made.gone = stored.gone;
  made.lost = stored.lost;
  made.proposed_otherwise = stored.proposed_otherwise;
  made.needs = what_it_needs(claim);
  made.rank = claim.rank;
  if (const auto standing = load_standing(site, claim.id)) {
    made.outcome = standing->foremost;
    made.recall_distance = standing->recall.recall_distance;
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
    if (line.has_transcript) {
      line.code_points = versions.back().code_points;
      for (const CodePointRange& range : ranges_read(state.site, interview.key, versions.back().version))
        line.read += range.length();
    }
    lines.push_back(std::move(line));
  }
  return lines;
}

ReviewRequest CodingDesk::State::request_for(const ClaimQuery& query) const {
  ReviewRequest request;
  request.interview = query.interview;
  for (const Interview& interview : people->file().interviews)
    if (withholding->reason(interview.key, {}) != Withheld::none) request.without.push_back(interview.key);
  if (!query.speaker.empty()) {
    request.speakers = speakers_named(people->file(), query.speaker);
    if (request.speakers.empty()) request.speakers = {"\n"};  // no label is a line break: nobody is called so
  }
  if (!query.subject.empty()) request.subjects = maker->lists().equipment.all_within(query.subject);
  if (!query.place.empty()) request.places = maker->lists().places.all_within(query.place);
  request.statement = query.statement;
  request.status = query.status;
  request.outcome = query.outcome;
  if (query.recall_least)
    request.recall_least = static_cast<int>(std::min<std::int64_t>(*query.recall_least, 10'000));
  return request;
}

ClaimPage CodingDesk::claims(const ClaimQuery& query, std::size_t first, std::size_t most) const {
  const State& state = *state_;
  ReviewRequest request = state.request_for(query);
  ClaimPage page;
  page.total = static_cast<std::size_t>(count_review_rows(state.site, request));
  page.first = std::min(first, page.total);
  request.offset = page.first;
  request.limit = most;
  const std::vector<ReviewRow> rows = review_rows(state.site, request);
  ClaimFilter filter;
  filter.with_mentions = false;
  std::map<Id, std::size_t> place;
  for (const ReviewRow& row : rows) {
    place.emplace(row.id, filter.ids.size());
    filter.ids.push_back(row.id);
  }
  if (rows.empty()) return page;
  page.lines.resize(rows.size());
  QuotedWords quoted(state.site, *state.maker);
  for_each_claim(state.site, filter, [&](const StoredClaim& stored) {
    ClaimLine& line = page.lines[place.at(stored.claim.id)];
    line = state.line(stored);
    line.withheld = state.withholding->reason(stored.claim.interview, stored.claim.quotes);
    if (line.withheld == Withheld::none)
      line.words = quoted.of(stored);
    else
      line.subject = line.place = line.number = line.when = "";
  });
  if (const std::string withheld = state.withheld_words(query); !withheld.empty())
    page.withheld = "withheld: " + withheld;
  return page;
}

std::string CodingDesk::State::withheld_words(const ClaimQuery& query) const {
  return withholding->withheld_in_file(query.interview);
}

std::vector<TermMatch> CodingDesk::terms(AuthorityList::Kind kind, std::string_view typed,
                                         std::size_t most) const {
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
    const auto other = std::find_if(others.begin(), others.end(), [&](const std::string& name) {
      return !name.empty() && name_has(name, typed);
    });
    if (other != others.end()) by_other.push_back({term.key, term.name, *other});
  }
  by_name.insert(by_name.end(), by_other.begin(), by_other.end());
  if (by_name.size() > most) by_name.resize(most);
  return by_name;
}

}  // namespace witnessmark
