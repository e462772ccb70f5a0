#include "witnessmark/time/period.h"

#include <fmt/format.h>

#include <algorithm>

namespace witnessmark {
namespace {

std::string limits_text(const Boundary& boundary) {
  if (!boundary.earliest && !boundary.latest) {
    return boundary.kind == Boundary::Kind::unknown ? "?" : "..";
  }
  const std::string mark = boundary.kind == Boundary::Kind::unknown ? "?" : "";
  return mark + (boundary.earliest ? to_string(*boundary.earliest) : "") + ".." +
         (boundary.latest ? to_string(*boundary.latest) : "");
}

}  // namespace

bool Period::surely_covers(Day first, Day past) const {
  return begin.latest && end.earliest && *begin.latest <= first && past <= *end.earliest;
}

bool Period::possibly_touches(Day first, Day past) const {
  if (past <= first) return false;
  return (!begin.earliest || *begin.earliest < past) && (!end.latest || first < *end.latest);
}

std::string to_string(const Period& period) {
  return fmt::format("[{} | {})", limits_text(period.begin), limits_text(period.end));
}

Period exact_period(Day first, Day past) {
  Period period;
  period.begin.earliest = period.begin.latest = first;
  period.end.earliest = period.end.latest = past;
  return period;
}

Period some_time_within(const Period& period) {
  Period inside = period;
  inside.begin.latest.reset();
  inside.end.earliest.reset();
  if (period.end.latest) inside.begin.latest = *period.end.latest - 1;
  if (period.begin.earliest) inside.end.earliest = *period.begin.earliest + 1;
  if (inside.begin.earliest) inside.begin.kind = Boundary::Kind::known;
  if (inside.end.latest) inside.end.kind = Boundary::Kind::known;
  return inside;
}

}  // namespace witnessmark
