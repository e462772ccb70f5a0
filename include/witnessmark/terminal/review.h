#pragma once
#include <iosfwd>
#include <string>
#include <string_view>

#include "witnessmark/app/coding_desk.h"
#include "witnessmark/base/result.h"
#include "witnessmark/terminal/session.h"

namespace witnessmark {

/// How the coder works.
struct ReviewSetting {
  bool colour = true;
  bool mouse = false;      ///< The wheel moves; off, the terminal's own selecting of text works.
  Session::Player player;
};

/// On the terminal the process runs in, until the coder ends. Leaves it as it was, whatever happens. An Error when there
/// is none, or it cannot move its cursor.
Result<void> review_on_terminal(CodingDesk& desk, const ReviewSetting& setting);

/// By prompts, line by line: what stands at the cursor is said in a line, and a line is answered with a key, the word for
/// it, or what is asked for. For screen readers, and where no terminal can be drawn on.
void review_by_prompts(CodingDesk& desk, const ReviewSetting& setting, std::istream& in, std::ostream& out);

/// Plays a script of keys and prints the screens it asks for. One order a line: `size 80x24`, `key Down Enter s`,
/// `type late in sixty-two`, `show` (prints the screen), `# …`. An Error, with line and column, for what it cannot read.
Result<void> review_by_script(CodingDesk& desk, const ReviewSetting& setting, std::string_view script,
                              std::string_view source, std::ostream& out);

}  // namespace witnessmark
