#include "app/record_maker.h"

#include <algorithm>
#include <tuple>
#include <utility>
#include <vector>

#include "witnessmark/store/evidence.h"
#include "witnessmark/store/interviews.h"
#include "witnessmark/store/journal.h"
#include "witnessmark/store/merge.h"
#include "witnessmark/store/weighings.h"
#include "witnessmark/weigh/agreement.h"

namespace witnessmark {

std::string term_name(const AuthorityList& list, const std::string& key, const std::string& words) {
  const Term* term = list.find(key);
  return term != nullptr ? term->name : words;
}

RecordMaker::RecordMaker(const SiteFile& site, const DatePolicy& policy)
    : site_(site),
      speakers_(load_interviews(site).speakers),
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
  open_.capitals = capitals_of(open_.stored.transcript.reading_text);
  return open_;
}

ClaimRecord RecordMaker::make(const StoredClaim& stored, const Withholding& withholding, Names names) {
  const Claim& claim = stored.claim;
  turn_to(claim.interview, stored.version);
  ClaimRecord record;
  record.claim = claim;
  record.interview = withholding.shown_interview(claim.interview);
  record.place_name = term_name(lists_.places, claim.place, claim.place_words);
  record.narrator = withholding.shown_name(claim.interview, claim.speaker);
  record.quotes = quotes_of(claim);
  for (QuoteRecord& quote : record.quotes)
    quote.speaker = quote.own ? record.narrator : withholding.shown_name(claim.interview, quote.speaker);
  add_subject(withholding, names, record);
  record.interview_date = to_string(open_.held.date);
  record.accession = open_.held.accession;
  record.repository = open_.held.repository;
  record.recording = open_.held.recording;
  record.transcript_version = stored.version;
  record.reading_text_sha256 = open_.stored.version.text_sha256;
  record.original_sha256 = open_.stored.version.original_sha256;
  if (names == Names::as_released) withhold_names(withholding, record);
  add_coder(stored, record);
  add_weighing(withholding, record);
  return record;
}

void RecordMaker::add_subject(const Withholding& withholding, Names names, ClaimRecord& record) const {
  Claim& claim = record.claim;
  record.subject = claim.subject;
  record.subject_name = term_name(lists_.equipment, claim.subject, claim.subject_words);
  if (lists_.equipment.find(claim.subject) != nullptr || !withholding.is_person(claim.subject)) return;
  record.subject = withholding.shown_key(claim.interview, claim.subject);
  const bool renamed = record.subject != claim.subject && names == Names::as_released;
  if (claim.subject == claim.speaker && claim.statement == Statement::located)
    record.subject_name = record.narrator;
  else if (renamed || claim.subject_words.empty())
    record.subject_name = withholding.shown_name(claim.interview, claim.subject);
  if (names == Names::as_released) claim.subject_words = record.subject_name;
}

void RecordMaker::withhold_names(const Withholding& withholding, ClaimRecord& record) const {
  Claim& claim = record.claim;
  const auto clean = [&](std::string& text, WithheldNames::Capitals capitals) {
    WithheldNames::Text made = withholding.without_names(claim.interview, text, capitals);
    text = std::move(made.text);
    return made.names;
  };
  for (QuoteRecord& quote : record.quotes) {
    record.names_withheld += clean(quote.text, open_.capitals);
    clean(quote.speaker, WithheldNames::Capitals::not_needed);
  }
  for (std::string* words : {&claim.subject_words, &claim.place_words, &claim.when.dated.written,
                             &claim.attribute, &claim.knower, &claim.reason})
    clean(*words, open_.capitals);
  if (claim.subject.empty()) record.subject_name = claim.subject_words;
  if (claim.place.empty()) record.place_name = claim.place_words;
  for (std::string* field : {&record.accession, &record.repository, &record.recording})
    clean(*field, WithheldNames::Capitals::not_needed);
  for (Mention& mention : claim.mentions)
    if (withholding.is_person(mention.value) && lists_.equipment.find(mention.value) == nullptr)
      mention.value = withholding.shown_key(claim.interview, mention.value);
}

Speaker RecordMaker::speaker_of(const std::string& label) const {
  for (const Speaker& speaker : speakers_)
    if (speaker.interview == open_.interview && speaker.label == label) return speaker;
  return {open_.interview, label, "", SpeakerRole::unknown};
}

std::vector<QuoteRecord> RecordMaker::quotes_of(const Claim& claim) const {
  std::vector<QuoteRecord> quotes;
  for (const CodePointRange& range : claim.quotes) {
    const std::vector<TurnPiece> pieces = by_turn(open_.stored.transcript, range);
    for (const TurnPiece& piece : pieces) {
      const Speaker who = speaker_of(open_.stored.transcript.utterances[piece.utterance].speaker);
      QuoteRecord& made = quotes.emplace_back(quote(piece.range));
      made.role = who.role;
      made.speaker = who.person.empty() ? who.label : who.person;
      // Who nobody labels is not told apart.
      made.own = made.speaker == claim.speaker || who.label.empty();
    }
    if (pieces.empty()) quotes.push_back(quote(range));
  }
  const auto is_own = [](const QuoteRecord& quote) { return quote.own; };
  if (std::none_of(quotes.begin(), quotes.end(), is_own))
    for (QuoteRecord& quote : quotes) quote.own = quote.role != SpeakerRole::interviewer;
  std::stable_partition(quotes.begin(), quotes.end(), is_own);
  return quotes;
}

std::vector<CodePointRange> RecordMaker::pieces_of(const Claim& claim) const {
  std::vector<CodePointRange> pieces;
  for (const QuoteRecord& quote : quotes_of(claim)) pieces.push_back(quote.range);
  return pieces;
}

QuoteRecord RecordMaker::quote(const CodePointRange& range) const {
  QuoteRecord made;
  made.text = open_.index->slice(range);
  made.range = range;
  const auto begin = time_at(open_.stored.transcript, range.begin);
  const auto end = time_at(open_.stored.transcript, range.end);
  if (begin && end) {
    made.time = TimeRange{begin->time, std::max(begin->time, end->time)};
    made.timing = begin->timing;
  }
  return made;
}

/// Whose decision is in force: the last that was neither undone nor, in a difference with another copy,
/// passed over. What a merge or a weighing did of itself is nobody's decision.
void RecordMaker::add_coder(const StoredClaim& stored, ClaimRecord& record) const {
  if (!stored.decided) return;
  const std::string id = to_string(stored.claim.id);
  std::vector<std::pair<std::string, std::string>> decisions, undone;
  for (const JournalEvent& event : events_on(site_, "claim", id)) {
    if (event.kind == "decided" || event.kind == "added" || event.kind == "settled") {
      decisions.emplace_back(event.actor, event.wall_time);
      undone.clear();
    } else if (event.kind == "undone" && !decisions.empty()) {
      undone.push_back(decisions.back());
      decisions.pop_back();
    } else if (event.kind == "redone" && !undone.empty()) {
      decisions.push_back(undone.back());
      undone.pop_back();
    }
  }
  if (!decisions.empty()) std::tie(record.coded_by, record.coded_at) = decisions.back();
  for (const DoubleDecision& both : differences_ ? *differences_ : open_differences(site_))
    if (both.target_kind == "claim" && both.target == id)
      record.coded_by = both.here.who, record.coded_at = both.here.when;
}

void RecordMaker::add_weighing(const Withholding& withholding, ClaimRecord& record) const {
  const Claim& claim = record.claim;
  auto weighing = load_weighing(site_, claim.id);
  if (!weighing) return;
  record.recall = weighing->recall;
  record.comparisons = std::move(weighing->comparisons);
  const std::string_view quote = record.quotes.empty() ? std::string_view() : record.quotes.front().text;
  for (Comparison& comparison : record.comparisons) {
    comparison.explanation = explain(claim, quote, open_.held, comparison, index_,
                                     [&](const std::string& key) { return withholding.shown_name("", key); });
    if (const auto* item = index_.find(comparison.entry)) comparison.noted = item->entry->letter_figure;
  }
}

}  // namespace witnessmark
