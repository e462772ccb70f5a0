#pragma once
#include <optional>
#include <string>
#include <vector>

namespace witnessmark {

/// What a piece of text is, on the screen. How a role looks is the terminal's business; no role says anything
/// that the text does not say too.
enum class Role {
  plain,
  heading,  ///< Where one is.
  label,    ///< Names of things shown.
  faint,    ///< Of less weight.
  quote,    ///< A narrator's words.
  mark,     ///< Words of the talk that a claim rests on.
  chosen,   ///< Where the cursor is.
  picked,   ///< Selected text.
  good,     ///< Agrees, said so.
  bad,      ///< Conflicts.
  warning,  ///< Withheld, cannot be done.
  key,      ///< A key to press.
  input     ///< What is being typed.
};

struct Span {
  std::string text;
  Role role = Role::plain;
  bool operator==(const Span&) const = default;
};
using Line = std::vector<Span>;

/// Columns and rows of a terminal.
struct Size {
  int columns = 80;
  int rows = 24;
  bool operator==(const Size&) const = default;
};

/// What a terminal shows: exactly `rows` lines of at most `columns`.
struct Picture {
  Size size;
  std::vector<Line> lines;
  std::optional<Size> cursor;  ///< Where typing goes, counted from 0.
};

/// The text alone, blanks at line ends cut, one line each.
std::string as_text(const Picture& picture);
std::string as_text(const Line& line);

}  // namespace witnessmark
