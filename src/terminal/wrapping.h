#pragma once
#include <vector>

#include "witnessmark/terminal/view.h"

namespace witnessmark {

/// The block in lines of at most `columns`, broken at blanks, words that are too long between characters; at
/// least one line. Text is made visible(): no control or bidirectional character reaches a terminal.
std::vector<Line> wrap(const Block& block, int columns);

/// The line cut to `columns`, between characters.
Line cut(const Line& line, int columns);

}  // namespace witnessmark
