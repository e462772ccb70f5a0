#include "terminal/update/work.h"

namespace witnessmark {
namespace {

bool is_key(const Event& event) {
  return std::holds_alternative<KeyPressed>(event);
}

void press_key(Work& work, const Key& key) {
  work.state.refused = false;
  if (key == Key{Key::Name::control, "c"}) {  // leaves as q does, from everywhere
    if (keeps_form(work, key)) return;
    work.state.finished = true;
    return work.want(Quit{});
  }
  if (work.state.prompt) {
    for (Place& place : work.state.places)
      if (auto* form = std::get_if<FormPlace>(&place)) form->leaving = false;
    return press_in_prompt(work, key);
  }
  work.say("");
  const bool understood =
      std::visit([&](auto& place) { return press(work, place, key); }, work.state.place()) ||
      press_everywhere(work, key);
  if (!understood) work.refuse("“" + to_string(key) + "” does nothing here; ? shows the keys", Role::faint);
}

}  // namespace

std::optional<Effect> loading(const Place& place) {
  if (std::holds_alternative<InterviewsPlace>(place)) return LoadInterviews{};
  if (const auto* claims = std::get_if<ClaimsPlace>(&place))
    return LoadClaims{claims->query, claims->page.first};
  if (const auto* talk = std::get_if<TranscriptPlace>(&place)) return LoadTranscript{talk->interview};
  if (const auto* claim = std::get_if<ClaimPlace>(&place)) return LoadClaim{claim->id};
  if (const auto* report = std::get_if<ReportPlace>(&place)) return LoadReport{report->kind, report->subject};
  return std::nullopt;
}

void Work::go(Place place) {
  if (auto effect = loading(place)) want(std::move(*effect));
  state.places.push_back(std::move(place));
}

void Work::back() {
  if (state.places.size() > 1) {
    state.places.pop_back();
  } else {
    state.places.back() = InterviewsPlace{};
  }
  if (auto effect = loading(state.place())) want(std::move(*effect));
}

int page_rows(const State& state) {
  return std::max(1, state.size.rows - 6);
}

bool move_in(std::size_t& at, std::size_t count, const Key& key, int page) {
  const auto last = count == 0 ? 0 : count - 1;
  const auto step = static_cast<std::size_t>(page);
  switch (key.name) {
    case Key::Name::up:
      at -= at > 0 ? 1 : 0;
      return true;
    case Key::Name::down:
      at = std::min(last, at + 1);
      return true;
    case Key::Name::page_up:
      at -= std::min(at, step);
      return true;
    case Key::Name::page_down:
      at = std::min(last, at + step);
      return true;
    case Key::Name::home:
      at = 0;
      return true;
    case Key::Name::end:
      at = last;
      return true;
    default:
      return false;
  }
}

const FormPlace* unsaved_form(const State& state) {
  for (const Place& place : state.places) {
    const auto* form = std::get_if<FormPlace>(&place);
    if (form && form->changed && form->purpose != FormPlace::Purpose::filter) return form;
  }
  return nullptr;
}

bool hidden(const State& state, const ClaimLine& claim) {
  return state.blind && !claim.decided && !claim.by_coder;
}

Update update(State state, const Event& event) {
  Update made{std::move(state), {}};
  Work work{made.state, made.effects};
  if (is_key(event)) {
    press_key(work, std::get<KeyPressed>(event).key);
  } else if (const auto* resized = std::get_if<Resized>(&event)) {
    made.state.size = resized->size;
  } else {
    arrive(work, event);
  }
  return made;
}

}  // namespace witnessmark
