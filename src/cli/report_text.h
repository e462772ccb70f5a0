#pragma once
#include <iosfwd>

#include "witnessmark/app/report.h"

namespace witnessmark {

/// The lines of a report below its title; an empty line stands before each heading.
void print_lines(std::ostream& out, const Report& report);

}  // namespace witnessmark
