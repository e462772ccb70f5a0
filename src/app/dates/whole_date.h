#pragma once
#include <string_view>

#include "witnessmark/base/result.h"
#include "witnessmark/language/date_expression.h"
#include "witnessmark/language/date_lexicon.h"

namespace witnessmark {

/// The date that a text typed for one is, in words, with its EDTF value and period. An Error when none can be
/// read, when it is meant as EDTF and is none, and when the text says more than the date that is read of it:
/// a part of what a person typed is never taken for all of it.
Result<DateExpression> read_whole_date(std::string_view text, const DateLexicon& lexicon,
                                       const Discourse& discourse);

}  // namespace witnessmark
