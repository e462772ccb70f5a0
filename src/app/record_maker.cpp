#include "app/record_maker.h"

#include <algorithm>

#include "witnessmark/store/evidence.h"
#include "witnessmark/store/interviews.h"
#include "witnessmark/store/journal.h"
#include "witnessmark/store/weighings.h"
#include "witnessmark/weigh/agreement.h"

namespace witnessmark {

std::string term_name(const AuthorityList& list, const std::string& key, const std::string& words) {
  const Term* term = list.find(key);
  return term != nullptr ? term->name : words;
}

RecordMaker::RecordMaker(const SiteFile& site, const DatePolicy& policy)
    : site_(site),
      evidence_(load_register(site)),
      lists_(load_lists(site)),
      index_(evidence_, lists_, policy) {}

const OpenTranscript& RecordMaker::turn_to(const std::string& interview, int version) {
  if (open_.interview == interview && open_.version == version) return open_;
  open_.index.reset();
  open_.interview = interview;
  open_.version = version;
  open_.held = find_interview(site_, interview).value_or(Interview{});
  open_.stored = load_transcript(site_, interview, version).value_or(StoredTranscript{});
  open_.index.emplace(open_.stored.transcript.reading_text);
  return open_;
}

ClaimRecord RecordMaker::make(const StoredClaim& stored, const Withholding& withholding) {
  const Claim& claim = stored.claim;
  turn_to(claim.interview, stored.version);
  ClaimRecord record;
  record.claim = claim;
  record.subject_name = term_name(lists_.equipment, claim.subject, claim.subject_words);
  record.place_name = term_name(lists_.places, claim.place, claim.place_words);
  for (const CodePointRange& range : claim.quotes) record.quotes.push_back(quote(range));
  record.narrator = withholding.shown_name(claim.interview, claim.speaker);
  record.interview_date = to_string(open_.held.date);
  record.accession = open_.held.accession;
  record.repository = open_.held.repository;
  record.recording = open_.held.recording;
  record.transcript_version = stored.version;
  record.reading_text_sha256 = open_.stored.version.text_sha256;
  record.original_sha256 = open_.stored.version.original_sha256;
  add_coder(stored, record);
  add_weighing(claim, record);
  return record;
}

QuoteRecord RecordMaker::quote(const CodePointRange& range) const {
  QuoteRecord made{std::string(open_.index->slice(range)), range, std::nullopt, Timing::none};
  const auto begin = time_at(open_.stored.transcript, range.begin);
  const auto end = time_at(open_.stored.transcript, range.end);
  if (begin && end) {
    made.time = TimeRange{begin->time, std::max(begin->time, end->time)};
    made.timing = begin->timing;
  }
  return made;
}

void RecordMaker::add_coder(const StoredClaim& stored, ClaimRecord& record) const {
  if (!stored.decided) return;
  for (const JournalEvent& event : events_on(site_, "claim", to_string(stored.claim.id))) {
    record.coded_by = event.actor;
    record.coded_at = event.wall_time;
  }
}

void RecordMaker::add_weighing(const Claim& claim, ClaimRecord& record) const {
  auto weighing = load_weighing(site_, claim.id);
  if (!weighing) return;
  record.recall = weighing->recall;
  record.comparisons = std::move(weighing->comparisons);
  for (Comparison& comparison : record.comparisons)
    comparison.explanation = explain(claim, open_.held, comparison, index_);
}

}  // namespace witnessmark
