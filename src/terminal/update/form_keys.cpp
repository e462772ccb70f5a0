#include "terminal/form.h"
#include "terminal/update/work.h"

namespace witnessmark {
namespace {

void change(Work& work, FormPlace& form) {
  const Field field = fields_of(form)[form.at];
  if (field.kind == Field::Kind::choice) {
    turn_choice(form, form.at, 1);
    return note_change(form);
  }
  Prompt prompt;
  prompt.ask = Ask::field;
  prompt.label = field.label + ":";
  prompt.reads_date = field.kind == Field::Kind::date;
  if (field.kind == Field::Kind::equipment) prompt.list = AuthorityList::Kind::equipment;
  if (field.kind == Field::Kind::place) prompt.list = AuthorityList::Kind::places;
  prompt.now = field.value;
  if (prompt.list) work.want(FindTerms{prompt.list, ""});
  work.ask(std::move(prompt));
}

/// The list of claims the query was made for, with the query.
void show_query(Work& work, const FormPlace& form) {
  const ClaimQuery query = form.query;
  work.state.places.pop_back();
  if (auto* claims = std::get_if<ClaimsPlace>(&work.state.place())) {
    *claims = ClaimsPlace{query, {}, 0};
    work.want(LoadClaims{query, 0});
  } else {
    work.go(ClaimsPlace{query, {}, 0});
  }
}

void save(Work& work, FormPlace& form) {
  if (form.purpose == FormPlace::Purpose::filter) return show_query(work, FormPlace(form));
  if (form.subject_name.empty() && form.place_name.empty() && form.draft.statement != Statement::located)
    return work.refuse("a claim speaks of something: fill in equipment or place");
  if (const std::string_view needs = what_it_needs(form.draft); !needs.empty())
    return work.refuse(std::string(needs));
  const bool corrected = form.purpose == FormPlace::Purpose::correct;
  if (!corrected) {
    work.want(Add{form.draft, words_of(form)});
  } else if (form.changed) {
    work.want(Correct{form.draft, "", words_of(form)});
  } else if (form.draft.status != ClaimStatus::said_so) {
    work.want(Decide{{form.draft.id}, ClaimStatus::said_so, "", words_of(form)});
  } else {
    work.back();
    return work.say("nothing was changed, and it stands as said so already", Role::faint);
  }
  work.state.places.pop_back();  // what was saved loads the place below
  if (corrected) advance(work);  // as after every decision
}

}  // namespace

namespace {

void take_answer(Work& work, FormPlace& form, const Prompt& prompt) {
  if (prompt.reads_date) {
    if (prompt.date) fill_date(form, prompt.date->when);
    return;
  }
  if (!prompt.list) {
    if (const std::string fault = fill_words(form, form.at, prompt.text); !fault.empty())
      work.refuse(fault);
    return;
  }
  if (prompt.chosen && *prompt.chosen < prompt.matches.size()) {
    const TermMatch& match = prompt.matches[*prompt.chosen];
    return fill_term(form, form.at, match.key, match.name);
  }
  if (form.purpose == FormPlace::Purpose::filter) return work.refuse("the list has no such name");
  fill_term(form, form.at, "", prompt.text);
  work.say("kept in your words: the list has no such name", Role::warning);
}

}  // namespace

void set_field(Work& work, FormPlace& form, const Prompt& prompt) {
  if (prompt.text.empty() && !prompt.chosen)
    return work.say("left as it was; Delete empties a field", Role::faint);
  take_answer(work, form, prompt);
  note_change(form);
}

bool press(Work& work, FormPlace& form, const Key& key) {
  const std::size_t count = fields_of(form).size();
  if (key.name == Key::Name::escape && form.changed && !form.leaving) {
    form.leaving = true;
    work.say("not saved: s saves, Escape once more drops what was changed", Role::warning);
    return true;
  }
  if (!key.is("q") && !key.is("1")) form.leaving = false;
  if (move_in(form.at, count, key, 4)) return true;
  if (key.name == Key::Name::enter) {
    change(work, form);
  } else if (key.name == Key::Name::right || key.name == Key::Name::left) {
    if (turn_choice(form, form.at, key.name == Key::Name::right ? 1 : -1)) note_change(form);
  } else if (key.name == Key::Name::del || key.name == Key::Name::backspace) {
    empty_field(form, form.at);
    note_change(form);
  } else if (key.is("s")) {
    save(work, form);
  } else {
    return false;
  }
  return true;
}

}  // namespace witnessmark
