#include <fmt/core.h>

#include <algorithm>

#include "app/coding/desk_state.h"
#include "witnessmark/app/claim_words.h"
#include "witnessmark/app/journal_words.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/entry_links.h"
#include "witnessmark/store/journal.h"
#include "witnessmark/store/notes.h"
#include "witnessmark/store/passages_read.h"
#include "witnessmark/store/quote_checks.h"

namespace witnessmark {
namespace {

constexpr std::int64_t kContext = 400;  // code points of talk shown around a quote

SpeakerRole role_of(const InterviewFile& file, const std::string& interview, const std::string& label) {
  for (const Speaker& speaker : file.speakers)
    if (speaker.interview == interview && speaker.label == label) return speaker.role;
  return SpeakerRole::unknown;
}

/// Puts a block in the place of every letter of a sentence that may not be shown, so that positions stay what
/// they are. Whether there was any.
bool hide_withheld(std::vector<TurnLine>& turns, const std::string& interview,
                   const Withholding& withholding) {
  bool any = false;
  for (TurnLine& turn : turns) {
    if (withholding.reason(interview, {turn.range}) == Withheld::none) continue;
    const CodePointIndex index(turn.text);
    std::string shown;
    for (std::int64_t at = 0; at < index.size().value; ++at) {
      const CodePoint here{turn.range.begin.value + at};
      const std::string_view letter = index.slice({{at}, {at + 1}});
      const bool open = withholding.reason(interview, {{here, {here.value + 1}}}) == Withheld::none;
      shown += open || letter == " " || letter == "\n" ? letter : "\u2592";
    }
    any = true;
    turn.text = std::move(shown);
  }
  return any;
}

std::vector<TurnLine> turns_of(const OpenTranscript& open, const InterviewFile& file) {
  std::vector<TurnLine> turns;
  const Transcript& transcript = open.stored.transcript;
  turns.reserve(transcript.utterances.size());
  for (const Utterance& utterance : transcript.utterances) {
    TurnLine turn;
    turn.speaker = utterance.speaker;
    turn.role = role_of(file, open.interview, utterance.speaker);
    turn.range = utterance.range;
    turn.text = std::string(open.index->slice(utterance.range));
    turn.at = time_at(transcript, utterance.range.begin);
    turns.push_back(std::move(turn));
  }
  for (const Sentence& sentence : open.stored.sentences)
    if (sentence.utterance < turns.size())
      turns[sentence.utterance].sentences.push_back(
          {sentence.range, time_at(transcript, sentence.range.begin)});
  return turns;
}

std::string act_words(const JournalEvent& event, const AuthorityLists& lists) {
  const std::string changes = change_words(event, lists);
  return fmt::format("{} {} {}{}{}{}", event.wall_time.substr(0, 16), event.actor, event_words(event),
                     changes.empty() ? "" : "; ", changes, event.why.empty() ? "" : ": " + event.why);
}

}  // namespace

std::string entry_words(const Entry& entry, const AuthorityLists& lists) {
  std::string words(to_string(entry.statement));
  const auto add = [&](const std::string& more) { words += more.empty() ? "" : " · " + more; };
  add(entry.statement == Statement::located ? entry.subject
                                            : term_name(lists.equipment, entry.subject, entry.subject));
  if (entry.number) add(fmt::format("{}", *entry.number));
  add(entry.attribute);
  add(entry.statement == Statement::located ? entry.place
                                            : term_name(lists.places, entry.place, entry.place));
  return one_line(words);
}

namespace {

void add_source(const Source* source, const std::string& locator, EvidenceLine& line) {
  if (source == nullptr) return;
  line.source = one_line(source->title);
  line.kind = in_words(source->kind);
  line.reference = one_line(source->reference + " " + locator);
}

EvidenceLine evidence_line(const Comparison& comparison, const std::vector<EntryLink>& links,
                           const RecordMaker& maker) {
  EvidenceLine line;
  line.comparison = comparison;
  for (const EntryLink& link : links)
    if (link.entry == comparison.entry)
      line.link = link.verdict == LinkVerdict::linked ? "linked" : "ruled out";
  const RegisterIndex& evidence = maker.evidence();
  if (const RegisterIndex::Item* item = evidence.find(comparison.entry)) {
    line.statement = entry_words(*item->entry, maker.lists());
    line.when = to_string(item->entry->when);
    line.period = item->period;
    add_source(item->source, item->entry->locator, line);
  } else if (const RegisterIndex::StayItem* stay = evidence.find_stay(comparison.entry)) {
    const auto& locations = stay->stay->locations;
    line.statement = "located · " + (locations.empty() ? "" : one_line(locations.front()));
    line.when = to_string(stay->stay->when);
    line.period = stay->period;
    add_source(evidence.source(stay->stay->source), "", line);
  }
  return line;
}

/// An entry the program did not hold the claim against: what they say of one another is for the coder to
/// read.
EvidenceLine linked_by_coder(const Id& claim, const EntryLink& link, const std::vector<EntryLink>& links,
                             const RecordMaker& maker) {
  Comparison comparison;
  comparison.claim = claim;
  comparison.entry = link.entry;
  comparison.outcome = Outcome::cannot_tell;
  EvidenceLine line = evidence_line(comparison, links, maker);
  line.comparison.explanation =
      fmt::format("{}{}{}; linked by {}, not held against one another by the program", line.statement,
                  line.period ? ", " : "", line.period ? describe(*line.period) : "", link.author);
  return line;
}

}  // namespace

Result<TranscriptPage> CodingDesk::transcript(const std::string& interview) const {
  State& state = *state_;
  const auto lines = interviews();
  const auto at = std::find_if(lines.begin(), lines.end(),
                               [&](const InterviewLine& line) { return line.key == interview; });
  if (at == lines.end())
    return Error{"", 0, 0, fmt::format("the site file has no interview “{}”", interview), ""};
  if (at->withheld != Withheld::none)
    return Error{"", 0, 0, fmt::format("{} is withheld: {}", interview, to_string(at->withheld)),
                 "open it only if you may work on it"};
  if (!at->has_transcript)
    return Error{"", 0, 0, fmt::format("{} has no transcript", interview), "take one in"};
  TranscriptPage page;
  page.interview = *at;
  const OpenTranscript& open = state.maker->turn_to(interview, 0);
  page.version = open.stored.version.version;
  page.recording = open.held.recording;
  page.turns = turns_of(open, state.people->file());
  page.hides_passages = hide_withheld(page.turns, interview, *state.withholding);
  const auto read = ranges_read(state.site, interview, page.version);
  for (TurnLine& turn : page.turns)
    turn.read = std::any_of(read.begin(), read.end(), [&](const CodePointRange& range) {
      return range.begin <= turn.range.begin && turn.range.end <= range.end;
    });
  ClaimFilter filter;
  filter.interviews = {interview};
  filter.with_mentions = false;
  Withholding counting = *state.withholding;
  for_each_claim(state.site, filter, [&](const StoredClaim& stored) {
    if (!counting.may_show(interview, stored.claim.quotes)) return;
    ClaimLine line = state.line(stored);
    const CodePointRange main = state.maker->pieces_of(stored.claim).front();
    line.at = time_at(open.stored.transcript, main.begin);
    line.words = quoted_words(stored.claim, open.index->slice(main));
    page.claims.push_back(std::move(line));
  });
  for (const RestrictedPassage& passage : state.people->file().passages)
    if (passage.interview == interview && !passage.range.empty()) page.passages.push_back(passage);
  return page;
}

Result<ClaimPageFull> CodingDesk::claim(const Id& id) const {
  State& state = *state_;
  const auto stored = find_claim(state.site, id);
  if (!stored)
    return Error{"", 0, 0, "this claim is no longer in the site file",
                 "it went when claims were proposed again"};
  const Withheld why = state.withholding->reason(stored->claim.interview, stored->claim.quotes);
  if (why != Withheld::none) return Error{"", 0, 0, fmt::format("withheld: {}", to_string(why)), ""};
  ClaimPageFull page;
  page.record = state.maker->make(*stored, *state.withholding, RecordMaker::Names::as_said);
  page.line = state.line(*stored);
  const OpenTranscript& open = state.maker->turn_to(stored->claim.interview, stored->version);
  const CodePointRange main = page.record.quotes.front().range;
  page.line.at = time_at(open.stored.transcript, main.begin);
  page.before =
      std::string(open.index->slice({{std::max<std::int64_t>(0, main.begin.value - kContext)}, main.begin}));
  page.after = std::string(open.index->slice({main.end, {main.end.value + kContext}}));
  if (const ClaimTime& when = stored->claim.when; when.period)
    page.meaning = when.dated.value ? describe(*when.dated.value, *when.period) : describe(*when.period);
  const std::vector<EntryLink> links = links_of_claim(state.site, id);
  for (const Comparison& comparison : page.record.comparisons)
    page.evidence.push_back(evidence_line(comparison, links, *state.maker));
  std::stable_sort(page.evidence.begin(), page.evidence.end(),
                   [](const EvidenceLine& a, const EvidenceLine& b) {
                     return weight_of(a.comparison) < weight_of(b.comparison);
                   });
  for (const EntryLink& link : links) {
    const bool compared =
        std::any_of(page.evidence.begin(), page.evidence.end(),
                    [&](const EvidenceLine& line) { return line.comparison.entry == link.entry; });
    if (!compared) page.evidence.push_back(linked_by_coder(id, link, links, *state.maker));
  }
  page.bounds = state.bounds_beside(stored->claim);
  for (const Mention& mention : stored->claim.mentions)
    page.cues.push_back(
        {mention.kind, one_line(open.index->slice(mention.range)), mention.value, mention.rule});
  for (const Note& note : notes_on_claim(state.site, id))
    page.notes.push_back({note.id, note.author, note.written.substr(0, 10), one_line(note.text)});
  for (const QuoteCheck& check : quote_checks(state.site, id))
    page.checked += fmt::format("{}against the recording by {} {}: {}", page.checked.empty() ? "" : "; ",
                                check.coder, check.checked.substr(0, 10), one_line(check.result));
  for (const JournalEvent& event : events_on(state.site, "claim", to_string(id)))
    page.history.push_back(act_words(event, state.maker->lists()));
  return page;
}

}  // namespace witnessmark
