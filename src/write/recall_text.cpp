#include "recall_text.h"

namespace witnessmark {

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
