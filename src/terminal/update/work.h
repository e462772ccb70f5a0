#pragma once
#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "witnessmark/terminal/state.h"

namespace witnessmark {

/// A state being changed by one event, and what is to be done.
struct Work {
  State& state;
  std::vector<Effect>& effects;

  void want(Effect effect) { effects.push_back(std::move(effect)); }
  void say(std::string words, Role role = Role::plain) {
    state.message = std::move(words);
    state.message_role = role;
  }
  /// Says why what was asked for is not done.
  void refuse(std::string words, Role role = Role::warning) {
    say(std::move(words), role);
    state.refused = true;
  }
  /// Goes there and loads what it shows.
  void go(Place place);
  /// Back to where one came from; from the first place, to the interviews.
  void back();
  void ask(Prompt prompt) { state.prompt = std::move(prompt); }
};

/// What loads a place again; nothing for places that show nothing of the site file.
std::optional<Effect> loading(const Place& place);

// One function for the keys of each place; false when the key means nothing there.
bool press(Work& work, InterviewsPlace& place, const Key& key);
bool press(Work& work, ClaimsPlace& place, const Key& key);
bool press(Work& work, TranscriptPlace& place, const Key& key);
bool press(Work& work, ClaimPlace& place, const Key& key);
bool press(Work& work, FormPlace& place, const Key& key);
bool press(Work& work, ReportPlace& place, const Key& key);
bool press(Work& work, KeysPlace& place, const Key& key);

/// Keys that decide on the claim at the cursor.
bool press_deciding(Work& work, const Key& key);
/// Keys of all screens.
bool press_everywhere(Work& work, const Key& key);
/// The first time with a form that is not saved: says so and keeps it. The same key again goes on, and drops it.
bool keeps_form(Work& work, const Key& key);
/// A key while something is being typed.
void press_in_prompt(Work& work, const Key& key);

/// Asks for the reason of a decision.
inline std::string_view why_label(ClaimStatus status) {
  return status == ClaimStatus::misread ? "Misread, because:"
                                        : "Set aside, because (Enter alone: no reason):";
}

/// What came of an effect.
void arrive(Work& work, const Event& event);

/// The claim at the cursor; nothing when there is none.
std::optional<Id> claim_here(const State& state);
/// The claim after it in the same list.
std::optional<Id> claim_after(const State& state, int steps = 1);
/// Opens the form that corrects a claim.
void open_form(Work& work, const ClaimPageFull& page);
/// Goes on to the next claim after a decision.
void advance(Work& work);
/// Moves the list shown, and a claim opened from it, to a claim: the next key is for that one.
void go_to_claim(State& state, const Id& claim);
/// The sentences selected, or the one at the cursor, as one range.
CodePointRange picked_range(const TranscriptPlace& place);
/// Puts the cursor on the sentence that holds the position.
void go_to(TranscriptPlace& place, CodePoint position);

/// Takes what was typed or chosen for a field of a form.
void set_field(Work& work, FormPlace& place, const Prompt& prompt);

/// Moves in a list of `count`; false for other keys.
bool move_in(std::size_t& at, std::size_t count, const Key& key, int page);
/// Lines of a page on this screen.
int page_rows(const State& state);

}  // namespace witnessmark
