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

/// "That it was landed. It wasn't.": a sentence that only denies the one before.
bool only_denies(const StatementContext& context);

/// "No well I came in 58": captions have no comma behind the no.
bool opens_with_no(const StatementContext& context);

}  // namespace witnessmark::claims
