#pragma once
#include <iosfwd>

#include "witnessmark/app/coding_desk.h"
#include "witnessmark/app/review_mode.h"
#include "witnessmark/base/result.h"

namespace witnessmark {

/// Lets a coder work at the desk in the way asked for: on the terminal, by prompts, or by a script.
Result<void> review(CodingDesk& desk, const ReviewMode& request, std::istream& in, std::ostream& out);

/// On the terminal the process runs in, until the coder ends. Leaves it as it was, whatever happens. An Error
/// when there is none, or it cannot move its cursor.
Result<void> review_on_terminal(CodingDesk& desk, const ReviewMode& request);

/// By prompts, line by line: what stands at the cursor is said in a line, and a line is answered with a key,
/// the word for it, or what is asked for. For screen readers, and where no terminal can be drawn on. Of answers
/// that nobody types (ReviewMode::typed) an Error, with its line, for the first that is not understood or cannot
/// be done, and where they end before a question or a form is: what was decided before it is saved.
Result<void> review_by_prompts(CodingDesk& desk, const ReviewMode& request, std::istream& in, std::ostream& out);

/// Plays a script of keys and prints the screens it asks for. One order a line: `size 80x24`, `key Down Enter
/// s`, `try Right` (keys that may be of no use just now), `type late in sixty-two`, `show` (prints the screen),
/// `say` (prints what was said last), `# …`. An Error, with line and column, for what it cannot read and for the
/// first key that is not understood or cannot do what it is for; what was decided before it is saved.
Result<void> review_by_script(CodingDesk& desk, const ReviewMode& request, std::ostream& out);

}  // namespace witnessmark
