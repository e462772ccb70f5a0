#include "witnessmark/app/claim_records.h"

#include <map>

#include "witnessmark/app/date_meaning.h"
#include "witnessmark/base/code_point_index.h"
#include "witnessmark/store/evidence.h"
#include "witnessmark/store/interviews.h"
#include "witnessmark/store/journal.h"
#include "witnessmark/store/transcripts.h"
#include "witnessmark/store/weighings.h"
#include "witnessmark/weigh/agreement.h"

namespace witnessmark {
namespace {

/// What the claims of one version of a transcript have in common.
struct Quoted {
  std::string interview;
  int version = 0;
  StoredTranscript stored;
  std::optional<CodePointIndex> index;
  std::optional<Interview> held;
};

class RecordMaker {
 public:
  RecordMaker(const SiteFile& site, const DatePolicy& policy)
      : site_(site),
        evidence_(load_register(site)),
        lists_(load_lists(site)),
        index_(evidence_, lists_, policy) {}

  ClaimRecord make(const StoredClaim& stored, const Withholding& withholding) {
    const Claim& claim = stored.claim;
    turn_to(claim.interview, stored.version);
    ClaimRecord record;
    record.claim = claim;
    record.subject_name = name(lists_.equipment, claim.subject, claim.subject_words);
    record.place_name = name(lists_.places, claim.place, claim.place_words);
    for (const CodePointRange& range : claim.quotes) record.quotes.push_back(quote(range));
    record.narrator = withholding.shown_name(claim.interview, claim.speaker);
    if (quoted_.held) {
      record.interview_date = to_string(quoted_.held->date);
      record.accession = quoted_.held->accession;
      record.repository = quoted_.held->repository;
      record.recording = quoted_.held->recording;
    }
    record.transcript_version = stored.version;
    record.reading_text_sha256 = quoted_.stored.version.text_sha256;
    record.original_sha256 = quoted_.stored.version.original_sha256;
    add_coder(stored, record);
    add_weighing(claim, record);
    return record;
  }

 private:
  static std::string name(const AuthorityList& list, const std::string& key, const std::string& words) {
    const Term* term = list.find(key);
    return term != nullptr ? term->name : words;
  }

  void turn_to(const std::string& interview, int version) {
    if (quoted_.interview == interview && quoted_.version == version) return;
    quoted_ = {interview, version, {}, std::nullopt, find_interview(site_, interview)};
    if (auto stored = load_transcript(site_, interview, version)) quoted_.stored = std::move(*stored);
    quoted_.index.emplace(quoted_.stored.transcript.reading_text);
  }

  QuoteRecord quote(const CodePointRange& range) const {
    QuoteRecord made{std::string(quoted_.index->slice(range)), range, std::nullopt, Timing::none};
    const auto begin = time_at(quoted_.stored.transcript, range.begin);
    const auto end = time_at(quoted_.stored.transcript, range.end);
    if (begin && end) {
      made.time = TimeRange{begin->time, std::max(begin->time, end->time)};
      made.timing = begin->timing;
    }
    return made;
  }

  void add_coder(const StoredClaim& stored, ClaimRecord& record) const {
    if (!stored.decided) return;
    for (const JournalEvent& event : events_on(site_, "claim", to_string(stored.claim.id))) {
      record.coded_by = event.actor;
      record.coded_at = event.wall_time;
    }
  }

  void add_weighing(const Claim& claim, ClaimRecord& record) const {
    auto weighing = load_weighing(site_, claim.id);
    if (!weighing) return;
    record.recall = weighing->recall;
    record.comparisons = std::move(weighing->comparisons);
    for (Comparison& comparison : record.comparisons)
      comparison.explanation = explain(claim, quoted_.held.value_or(Interview{}), comparison, index_);
  }

  const SiteFile& site_;
  Register evidence_;
  AuthorityLists lists_;
  RegisterIndex index_;
  Quoted quoted_;
};

}  // namespace

Result<void> for_each_record(const SiteFile& site, const ClaimFilter& filter,
                             const Surroundings& surroundings, Withholding& withholding,
                             const std::function<void(const ClaimRecord&)>& visit) {
  const auto policy = load_date_policy(surroundings);
  if (!policy) return policy.error();
  RecordMaker maker(site, *policy);
  for_each_claim(site, filter, [&](const StoredClaim& stored) {
    if (withholding.may_show(stored.claim.interview, stored.claim.quotes))
      visit(maker.make(stored, withholding));
  });
  return {};
}

}  // namespace witnessmark
