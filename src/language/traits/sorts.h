#pragma once
#include <optional>

#include "language/clauses/sentence_reading.h"
#include "language/passage/passage.h"
#include "language/traits/tally.h"

namespace witnessmark::claims {

// What words and verbs are called in traits.

Part class_part(WordClass word);
/// The most telling of its classes that are a sort of word: a colour, a person, "at".
std::optional<Part> sort_part(const Flags& flags);
/// What the predicate is of, as far as the lists say.
Part predicate_kind(const Predicate& p);
/// What kind of thing is named.
Part kind_part(ThingKind kind);
Part statement_part(Statement statement);

/// "Hallam": a name of no list, to judge by its capital letter; or any unknown word that opens a sentence.
/// What it is called tells nothing.
bool is_name(const Passage& passage, std::uint32_t i);

/// Whether the token is a pronoun or a word that begins a noun phrase.
bool opens_a_subject(const Flags& flags);
bool is_pronoun(const Flags& flags);
/// Stands for itself among its neighbours.
bool is_grammar(const Flags& flags);
/// Skipped on the way from a verb to what it speaks of.
bool is_passed_over(const Flags& flags);
bool joins_on(const Flags& flags);
/// Behind a joining word begins a clause: "and then", "but when".
bool follows_joining(const Flags& flags);

}  // namespace witnessmark::claims
