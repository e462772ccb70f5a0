#include "taking_in_text.h"

#include <fmt/ostream.h>
#include <fmt/ranges.h>

#include "witnessmark/base/fold.h"

namespace witnessmark {

void print_counts(Command& command, std::string_view what, const RowCounts& counts) {
  if (counts.added + counts.changed + counts.unchanged == 0) return;
  fmt::print(command.out(), "{}: {} new, {} changed, {} as before\n", what, counts.added, counts.changed,
             counts.unchanged);
}

void print_changed(Command& command, const std::vector<ChangedRow>& changed) {
  for (const ChangedRow& row : changed)
    fmt::print(command.out(), "  changed {} {}: {}\n", row.kind, visible(row.key),
               fmt::join(row.fields, ", "));
}

}  // namespace witnessmark
