#pragma once
#include <iosfwd>

#include "witnessmark/app/conclusions.h"

namespace witnessmark {

/// A conclusion for people: what was concluded, why, by whom and where said, and what took its place. Without the names
/// of those who were answered. Safe to print.
void print_conclusion(std::ostream& out, const ConclusionHistory& history);

}  // namespace witnessmark
