#pragma once
#include <iosfwd>
#include <string>

#include "witnessmark/app/corroboration.h"

namespace witnessmark {

/// A question for people: its grade, those for it and those against it, those that go back to one another under one
/// mark. Safe to print.
void print_question(std::ostream& out, const ShownQuestion& shown);

/// One JSON object without line breaks. `preview` marks what rests on proposals.
std::string question_json(const ShownQuestion& shown, bool preview);

}  // namespace witnessmark
