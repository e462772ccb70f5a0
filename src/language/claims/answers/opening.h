#pragma once
#include "language/statements/statements.h"

namespace witnessmark::claims {

/// How a sentence of the narrator's opens. "Yes" answers a question; "that's right" goes along with whatever
/// was said, with "there was none" too; "it was" says what was so, whichever way the question was put, even
/// behind a "no".
enum class Opening { other, yes, agrees, it_was, maybe, no, no_it_was, unknown };
Opening opening_of(const StatementContext& context);

/// The first token that says something; the sentence's end where none does.
std::uint32_t first_word(const StatementContext& context);

/// "It must have been August.": a sentence that says nothing but a date. Not so "it wasn't August".
bool only_dates(const StatementContext& context);

/// "I couldn't tell you what year": no date of the talk before is meant.
bool forgets_when(const StatementContext& context);

/// A sentence that only denies the one before: what was said ("That it was landed. It wasn't."), or what the
/// narrator did ("We took it off. We didn't."): "I wasn't" denies nothing that others did.
enum class Denial { none, of_what_was_said, of_own_doing };
Denial only_denies(const StatementContext& context);

/// "No well I came in 58": captions have no comma behind the no.
bool opens_with_no(const StatementContext& context);

}  // namespace witnessmark::claims
