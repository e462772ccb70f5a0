#include "recall_text.h"

#include <fmt/core.h>

namespace witnessmark {

std::string gap_text(const Distance& gap) {
  if (!gap.most) return fmt::format("at least {} days", gap.least);
  if (*gap.most == gap.least) return fmt::format("{} days", gap.least);
  return fmt::format("{} to {} days", gap.least, *gap.most);
}

std::string_view timing_text(Timing timing) {
  switch (timing) {
    case Timing::none:
      return "";
    case Timing::stated:
      return "stated";
    case Timing::interpolated:
      return "interpolated";
  }
  return "";
}

}  // namespace witnessmark
