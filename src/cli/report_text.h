#pragma once
#include <iosfwd>

#include "witnessmark/app/report.h"

namespace witnessmark {

/// A report with its title.
void print_report(std::ostream& out, const Report& report);

/// The lines of a report below its title; an empty line stands before each heading and before what closes it.
void print_lines(std::ostream& out, const Report& report);

}  // namespace witnessmark
