#include <fmt/core.h>

#include "terminal/form.h"
#include "terminal/update/work.h"

namespace witnessmark {
namespace {

const ClaimLine* line_at(const ClaimsPlace& place, std::size_t at) {
  if (at < place.page.first || at - place.page.first >= place.page.lines.size()) return nullptr;
  return &place.page.lines[at - place.page.first];
}

/// The claims a transcript shows: all, or without what was only proposed.
const ClaimLine* line_at(const TranscriptPlace& place, std::size_t at) {
  return place.page && at < place.page->claims.size() ? &place.page->claims[at] : nullptr;
}

struct ClaimAt {
  int steps;
  std::optional<Id> operator()(const ClaimsPlace& place) const { return id(place, place.at); }
  std::optional<Id> operator()(const TranscriptPlace& place) const { return id(place, place.claim); }
  std::optional<Id> operator()(const ClaimPlace& place) const {
    return steps == 0 ? std::optional(place.id) : std::nullopt;
  }
  template <typename Other>
  std::optional<Id> operator()(const Other&) const {
    return std::nullopt;
  }

  template <typename Kind>
  std::optional<Id> id(const Kind& place, std::size_t at) const {
    if (steps < 0 && at < static_cast<std::size_t>(-steps)) return std::nullopt;
    const ClaimLine* line = line_at(place, at + static_cast<std::size_t>(steps));
    return line == nullptr ? std::nullopt : std::optional(line->id);
  }
};

/// The list that a claim shown in full was opened from.
Place* list_under(State& state) {
  if (!std::holds_alternative<ClaimPlace>(state.place()) || state.places.size() < 2) return nullptr;
  return &state.places[state.places.size() - 2];
}

void step(Place& list, int steps) {
  const auto moved = [steps](std::size_t at) {
    return static_cast<std::size_t>(std::max<std::ptrdiff_t>(0, static_cast<std::ptrdiff_t>(at) + steps));
  };
  if (auto* claims = std::get_if<ClaimsPlace>(&list)) claims->at = moved(claims->at);
  if (auto* talk = std::get_if<TranscriptPlace>(&list); talk && talk->page) {
    talk->claim = moved(talk->claim);
    if (const ClaimLine* line = line_at(*talk, talk->claim)) go_to(*talk, line->quotes.front().begin);
  }
}

/// The line at the cursor of the list shown, or of the one a claim was opened from, so many steps on.
const ClaimLine* line_near(const Place& place, int steps) {
  const auto at = [steps](std::size_t cursor) { return cursor + static_cast<std::size_t>(steps); };
  if (const auto* claims = std::get_if<ClaimsPlace>(&place)) return line_at(*claims, at(claims->at));
  if (const auto* talk = std::get_if<TranscriptPlace>(&place)) return line_at(*talk, at(talk->claim));
  return nullptr;
}

const Place& list_of(const State& state) {
  const bool under = std::holds_alternative<ClaimPlace>(state.place()) && state.places.size() > 1;
  return under ? state.places[state.places.size() - 2] : state.place();
}

/// What a claim says, in a few words.
std::string words_of(const ClaimLine& line) {
  std::string words =
      (line.polarity == Polarity::denied ? "not " : "") + std::string(to_string(line.statement));
  for (const std::string* part : {&line.subject, &line.number, &line.place, &line.when})
    if (!part->empty()) words += " · " + *part;
  return words;
}

/// The claim at the cursor, where it is shown.
const ClaimLine* line_here(const State& state) {
  if (const auto* claim = std::get_if<ClaimPlace>(&state.place()))
    return claim->page ? &claim->page->line : nullptr;
  return line_near(state.place(), 0);
}

void correct(Work& work, const Id& id);

/// A claim that lacks what would make it one is opened in the form instead, where that is asked for.
void decide(Work& work, Decide decision) {
  if (const ClaimLine* line = line_here(work.state)) {
    if (decision.status == ClaimStatus::said_so && !line->needs.empty()) {
      work.say(fmt::format("{}: fill it in, s saves", line->needs), Role::warning);
      return correct(work, line->id);
    }
    decision.what = words_of(*line);
  }
  work.state.last = decision;
  work.want(std::move(decision));
  advance(work);
}

void ask_why(Work& work, const Id& claim, ClaimStatus status) {
  Prompt prompt;
  prompt.ask = Ask::why;
  prompt.label = std::string(why_label(status));
  prompt.pending = {{claim}, status, "", ""};
  if (const ClaimLine* line = line_here(work.state)) prompt.pending.what = words_of(*line);
  work.ask(std::move(prompt));
}

void ask_about(Work& work, Ask ask, const Id& claim, std::string label) {
  Prompt prompt;
  prompt.ask = ask;
  prompt.label = std::move(label);
  prompt.claim = claim;
  work.ask(std::move(prompt));
}

void repeat(Work& work, const Id& claim) {
  if (!work.state.last) return work.refuse("no decision yet to repeat", Role::faint);
  Decide again = *work.state.last;
  again.claims = {claim};
  decide(work, std::move(again));
}

/// The form needs all of the claim: from a list it is opened first.
void correct(Work& work, const Id& id) {
  const auto* shown = std::get_if<ClaimPlace>(&work.state.place());
  if (shown && shown->page) return open_form(work, *shown->page);
  ClaimPlace claim{id};
  claim.to_correct = true;
  work.go(std::move(claim));
}

void play(Work& work) {
  const auto* claim = std::get_if<ClaimPlace>(&work.state.place());
  const auto* talk = std::get_if<TranscriptPlace>(&work.state.place());
  std::optional<TimeAt> at;
  std::string recording;
  if (claim && claim->page) {
    at = claim->page->line.at;
    recording = claim->page->record.recording;
  } else if (talk && talk->page && talk->at < talk->sentences.size()) {
    at = talk->sentences[talk->at].at;
    recording = talk->page->recording;
  }
  if (!work.state.can_play) return work.refuse("name a player first: review --player PROGRAM");
  if (!at || recording.empty()) return work.refuse("nothing says where in a recording this is");
  work.want(Play{recording, at->time});
}

}  // namespace

std::optional<Id> claim_here(const State& state) {
  const ClaimLine* line = line_near(state.place(), 0);
  if (line != nullptr && (hidden(state, *line) || line->withheld != Withheld::none)) return std::nullopt;
  // In the talk the claim must rest on the sentence at the cursor: one far off in the list is not meant.
  const auto* talk = std::get_if<TranscriptPlace>(&state.place());
  if (talk != nullptr && line != nullptr && !talk->on_claims) {
    const CodePointRange here =
        talk->at < talk->sentences.size() ? talk->sentences[talk->at].range : CodePointRange{};
    if (std::none_of(line->quotes.begin(), line->quotes.end(),
                     [&](const auto& quote) { return quote.overlaps(here); }))
      return std::nullopt;
  }
  return std::visit(ClaimAt{0}, state.place());
}

std::optional<Id> claim_after(const State& state, int steps) {
  const ClaimLine* line = line_near(list_of(state), steps);
  if (line != nullptr && hidden(state, *line)) return std::nullopt;
  return std::visit(ClaimAt{steps}, list_of(state));
}

void advance(Work& work) {
  State& state = work.state;
  if (Place* list = list_under(state)) {
    const auto next = claim_after(state);
    if (!next) return;
    step(*list, 1);
    std::get<ClaimPlace>(state.place()) = ClaimPlace{*next};
    return;  // what was decided loads the place shown
  }
  // In a list of undecided claims the next one takes its place by itself.
  const auto* claims = std::get_if<ClaimsPlace>(&state.place());
  const bool leaves = claims != nullptr && claims->query.status == ClaimStatus::proposed;
  if (!leaves && claim_after(state)) step(state.place(), 1);
}

void go_to_claim(State& state, const Id& claim) {
  const auto has_id = [&](const ClaimLine& line) { return line.id == claim; };
  Place* list = list_under(state);
  if (!list) list = &state.place();
  if (auto* claims = std::get_if<ClaimsPlace>(list)) {
    const auto found = std::find_if(claims->page.lines.begin(), claims->page.lines.end(), has_id);
    if (found != claims->page.lines.end())
      claims->at = claims->page.first + static_cast<std::size_t>(found - claims->page.lines.begin());
  } else if (auto* talk = std::get_if<TranscriptPlace>(list); talk && talk->page) {
    const auto found = std::find_if(talk->page->claims.begin(), talk->page->claims.end(), has_id);
    if (found != talk->page->claims.end())
      step(*list, static_cast<int>(found - talk->page->claims.begin()) - static_cast<int>(talk->claim));
  }
  if (auto* shown = std::get_if<ClaimPlace>(&state.place()); shown && shown->id != claim)
    *shown = ClaimPlace{claim};
}

namespace {

/// Only what says the same of the same thing is joined.
void join(Work& work, const Id& claim) {
  const ClaimLine* line = line_here(work.state);
  const ClaimLine* next = line_near(list_of(work.state), 1);
  const auto id = claim_after(work.state);
  if (line == nullptr || next == nullptr || !id)
    return work.refuse("no claim follows that it could be joined with", Role::faint);
  if (line->statement != next->statement || line->subject != next->subject ||
      line->interview != next->interview)
    return work.refuse("the next claim says something else: " + words_of(*next));
  work.want(CodeClaim{CodeClaim::Kind::join, claim, *id, "", ""});
}

}  // namespace

void open_form(Work& work, const ClaimPageFull& page) {
  FormPlace form;
  form.draft = form.original = page.record.claim;
  form.subject_name = page.record.subject_name;
  form.place_name = page.record.place_name;
  if (!page.record.quotes.empty()) form.quote = page.record.quotes.front().text;
  form.at = field_to_fill(form.draft);
  work.go(std::move(form));
}

bool press_deciding(Work& work, const Key& key) {
  if (key.is("p")) return play(work), true;
  constexpr std::string_view kDeciding = "smxe.nkjd";
  if (key.name != Key::Name::text || key.text.size() != 1 ||
      kDeciding.find(key.text[0]) == std::string_view::npos)
    return false;
  if (!work.state.can_edit) return work.refuse(work.state.why_reading), true;
  const auto id = claim_here(work.state);
  if (!id)
    return work.refuse("no claim rests on what is at the cursor; Tab goes to the list", Role::faint), true;
  switch (key.text[0]) {
    case 's':
      decide(work, {{*id}, ClaimStatus::said_so, "", ""});
      break;
    case 'm':
      ask_why(work, *id, ClaimStatus::misread);
      break;
    case 'x':
      ask_why(work, *id, ClaimStatus::set_aside);
      break;
    case 'e':
      correct(work, *id);
      break;
    case '.':
      repeat(work, *id);
      break;
    case 'n':
      ask_about(work, Ask::note, *id, "Note:");
      break;
    case 'k':
      ask_about(work, Ask::checked, *id,
                "Checked against the recording; heard (Enter alone: as transcribed):");
      break;
    case 'd':
      work.want(CodeClaim{CodeClaim::Kind::divide, *id, {}, "", ""});
      break;
    default:
      join(work, *id);
  }
  return true;
}

}  // namespace witnessmark
