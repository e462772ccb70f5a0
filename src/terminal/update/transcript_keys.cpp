#include <fmt/core.h>

#include <algorithm>

#include "terminal/update/work.h"
#include "witnessmark/base/code_point_index.h"

namespace witnessmark {
namespace {

/// The first claim that quotes the sentence, else the first after it: the list of claims follows the talk.
void follow_talk(TranscriptPlace& place) {
  if (!place.page || place.at >= place.sentences.size()) return;
  const CodePointRange here = place.sentences[place.at].range;
  const auto& claims = place.page->claims;
  const auto next = std::find_if(claims.begin(), claims.end(),
                                 [&](const ClaimLine& line) { return line.quotes.front().end > here.begin; });
  if (!claims.empty())
    place.claim = std::min(static_cast<std::size_t>(next - claims.begin()), claims.size() - 1);
}

bool quotes(const ClaimLine& line, CodePointRange range) {
  return std::any_of(line.quotes.begin(), line.quotes.end(),
                     [&](const CodePointRange& quote) { return quote.overlaps(range); });
}

void open_claim(Work& work, const TranscriptPlace& place) {
  const auto& claims = place.page->claims;
  if (place.claim < claims.size() &&
      (place.on_claims || quotes(claims[place.claim], place.sentences[place.at].range)))
    return work.go(ClaimPlace{claims[place.claim].id});
  work.say("no claim rests on this sentence; i adds one", Role::faint);
}

/// The words of the talk in a range, with who says them where it is of several turns.
std::string words_in(const TranscriptPage& page, CodePointRange range) {
  std::string words;
  const auto in_range = [&](const TurnLine& turn) { return turn.range.overlaps(range); };
  const bool several = std::count_if(page.turns.begin(), page.turns.end(), in_range) > 1;
  for (const TurnLine& turn : page.turns) {
    if (!in_range(turn)) continue;
    const std::int64_t first = turn.range.begin.value;
    const CodePoint begin{std::max(range.begin, turn.range.begin).value - first};
    const CodePoint end{std::min(range.end, turn.range.end).value - first};
    words += words.empty() ? "" : " ";
    if (several && !turn.speaker.empty()) words += turn.speaker + ": ";
    words += CodePointIndex(turn.text).slice({begin, end});
  }
  return words;
}

/// Whose claim it is: of the turn at the cursor, or where that only asks, of the last selected that does not.
const TurnLine& told_in(const TranscriptPlace& place, CodePointRange range) {
  const TurnLine* told = &place.page->turns[place.sentences[place.at].turn];
  if (told->role != SpeakerRole::interviewer) return *told;
  for (const TurnLine& turn : place.page->turns)
    if (turn.range.overlaps(range) && turn.role != SpeakerRole::interviewer) told = &turn;
  return *told;
}

void add_claim(Work& work, const TranscriptPlace& place) {
  FormPlace form;
  form.purpose = FormPlace::Purpose::add;
  form.draft.interview = place.interview;
  form.draft.quotes = {picked_range(place)};
  form.draft.speaker = told_in(place, form.draft.quotes.front()).speaker;
  form.quote = words_in(*place.page, form.draft.quotes.front());
  work.go(std::move(form));
}

/// The claim at the cursor of the list rests on the selection from now on.
void requote(Work& work, const TranscriptPlace& place, CodePointRange range) {
  const auto claim = claim_here(work.state);
  if (!claim) return work.refuse("there is no claim here", Role::faint);
  work.want(CodeClaim{CodeClaim::Kind::requote, *claim, {}, "", "", place.interview, range});
}

bool press_passage(Work& work, TranscriptPlace& place, const Key& key) {
  if (!key.is("i") && !key.is("r") && !key.is("z") && !key.is("Z") && !key.is("Q")) return false;
  if (!work.state.can_edit) return work.refuse(work.state.why_reading), true;
  const CodePointRange range = picked_range(place);
  if (key.is("i")) {
    add_claim(work, place);
  } else if (key.is("Q")) {
    requote(work, place, range);
  } else if (key.is("r")) {
    work.want(CodePassage{CodePassage::Kind::read, place.interview, range, ""});
  } else {
    const bool lift = key.is("Z");
    const auto& passages = place.page->passages;
    if (lift && std::none_of(passages.begin(), passages.end(), [&](const RestrictedPassage& passage) {
          return passage.conditions.access != Access::open && passage.range.overlaps(range);
        }))
      return work.refuse("no restricted passage lies here", Role::faint), true;
    Prompt prompt;
    prompt.ask = lift ? Ask::lift : Ask::restrict;
    prompt.label = lift ? "Restriction lifted, because:" : "Restricted, because:";
    prompt.interview = place.interview;
    prompt.range = range;
    work.ask(std::move(prompt));
  }
  place.picked_from.reset();
  return true;
}

bool move(Work& work, TranscriptPlace& place, const Key& key) {
  if (place.on_claims) {
    if (!move_in(place.claim, place.page->claims.size(), key, page_rows(work.state) / 2)) return false;
    if (place.claim < place.page->claims.size()) {
      const std::size_t claim = place.claim;
      go_to(place, place.page->claims[claim].quotes.front().begin);
      place.claim = claim;
    }
    return true;
  }
  if (!move_in(place.at, place.sentences.size(), key, page_rows(work.state) / 2)) return false;
  follow_talk(place);
  return true;
}

}  // namespace

CodePointRange picked_range(const TranscriptPlace& place) {
  if (place.at >= place.sentences.size()) return {};
  const std::size_t other = place.picked_from.value_or(place.at);
  return {place.sentences[std::min(place.at, other)].range.begin,
          place.sentences[std::max(place.at, other)].range.end};
}

void go_to(TranscriptPlace& place, CodePoint position) {
  const auto past =
      std::find_if(place.sentences.begin(), place.sentences.end(),
                   [&](const SentencePlace& sentence) { return sentence.range.begin > position; });
  place.at =
      past == place.sentences.begin() ? 0 : static_cast<std::size_t>(past - place.sentences.begin()) - 1;
  follow_talk(place);
}

bool press(Work& work, TranscriptPlace& place, const Key& key) {
  if (!place.page || place.sentences.empty()) return false;
  if (move(work, place, key)) return true;
  if (press_passage(work, place, key)) return true;
  if (key.name == Key::Name::tab || key.name == Key::Name::back_tab) {
    place.on_claims = !place.on_claims && !place.page->claims.empty();
  } else if (key.name == Key::Name::enter) {
    open_claim(work, place);
  } else if (key.is("v")) {
    place.picked_from = place.picked_from ? std::nullopt : std::optional(place.at);
  } else if (key.is("O")) {
    if (!place.page->hides_passages) return work.refuse("nothing is withheld here", Role::faint), true;
    Prompt prompt;
    prompt.ask = Ask::open_withheld;
    prompt.interview = place.interview;
    prompt.label = fmt::format("Passages are withheld. If you may work on them, type {}:", place.interview);
    work.ask(std::move(prompt));
  } else if (key.is("h")) {
    work.want(HideProposals{!work.state.blind});
  } else if (key.is("g")) {
    Prompt prompt;
    prompt.ask = Ask::go_to_time;
    prompt.label = "Time in the recording (4:05):";
    work.ask(std::move(prompt));
  } else {
    return press_deciding(work, key);
  }
  return true;
}

}  // namespace witnessmark
