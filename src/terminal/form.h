#pragma once
#include <string>
#include <vector>

#include "witnessmark/terminal/state.h"

namespace witnessmark {

/// A field of a form and how it is filled.
struct Field {
  enum class Kind {
    words,      ///< Typed.
    equipment,  ///< Typed, offered from the list.
    place,
    date,   ///< As people say it, or EDTF; its meaning is shown while it is typed.
    choice  ///< One of a few values, turned with the arrow keys.
  };
  std::string label;
  std::string value;  ///< For people; empty for none.
  Kind kind = Kind::words;
};

/// In the order they are shown.
std::vector<Field> fields_of(const FormPlace& form);

/// What the claim of a form says, in a few words: "ends · Cargo derrick · March 1957".
std::string words_of(const FormPlace& form);

/// Where a form that corrects a claim begins: at what_it_needs(), else at the first field.
std::size_t field_to_fill(const Claim& claim);

/// The next or the previous value of a choice; false for other fields.
bool turn_choice(FormPlace& form, std::size_t field, int steps);

/// Takes a term (nothing: none), typed words, or a date. A term the claim had before comes back with the
/// words it was said in; of what was filled in between nothing stays.
void fill_term(FormPlace& form, std::size_t field, const std::string& key, const std::string& name);
/// An explanation when the words do not fit the field; empty when they were taken.
std::string fill_words(FormPlace& form, std::size_t field, const std::string& words);
void fill_date(FormPlace& form, const ClaimTime& when);
void empty_field(FormPlace& form, std::size_t field);

/// After something was filled in: notes whether anything is now to be saved. A claim that is back at what it
/// was is not changed.
void note_change(FormPlace& form);

}  // namespace witnessmark
