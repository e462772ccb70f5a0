#include "witnessmark/terminal/review.h"

namespace witnessmark {

Result<void> review(CodingDesk& desk, const ReviewMode& request, std::istream& in, std::ostream& out) {
  if (!request.script_source.empty()) return review_by_script(desk, request, out);
  if (!request.plain) return review_on_terminal(desk, request);
  return review_by_prompts(desk, request, in, out);
}

}  // namespace witnessmark
