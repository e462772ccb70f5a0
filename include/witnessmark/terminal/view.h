#pragma once
#include <optional>
#include <string>
#include <vector>

#include "witnessmark/terminal/picture.h"

namespace witnessmark {

/// A paragraph of a panel: one item of a list, one turn of talk.
struct Block {
  Line spans;
  int indent = 0;     ///< Columns its second and later lines stand in.
  bool wraps = true;  ///< Else it is cut to one line.
};

/// A part of the screen with a heading. With a focus it is moved so that the focused block is seen; without,
/// by `scroll`.
struct Panel {
  std::string title;
  std::vector<Block> blocks;
  std::optional<std::size_t> focus;
  int scroll = 0;
  bool active = true;  ///< The keys go here.
  int weight = 1;      ///< Its share of the screen.
};

/// A line that is being typed.
struct InputLine {
  std::string label;
  std::string text;
  std::size_t cursor = 0;    ///< Byte offset into text.
  std::vector<Block> below;  ///< What it means so far: matching terms, the date read.
  std::optional<std::size_t> focus;
};

/// Everything shown, without knowing where on a terminal it comes to stand.
struct View {
  std::string where;     ///< Site, screen, item.
  std::string standing;  ///< At the right: who codes, whether only reading.
  std::vector<Panel> panels;
  std::optional<InputLine> input;
  std::string message;
  Role message_role = Role::plain;
  std::vector<Span> hint;  ///< What the next key does.
};

/// Places a view on a terminal of any size, 1 x 1 up. Two panels stand side by side from 100 columns, above
/// one another from 20 rows; on less only the active one is shown.
Picture render(const View& view, Size size);

/// How far the active panel, or those beside one another, can be moved until the last line is seen; panels
/// with a focus do not count.
int scroll_limit(const View& view, Size size);

}  // namespace witnessmark
