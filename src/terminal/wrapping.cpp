#include "terminal/wrapping.h"

#include <algorithm>
#include <string>

#include "witnessmark/base/display_width.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

struct Cell {
  std::string text;
  int columns = 0;
  Role role = Role::plain;
};

bool is_blank(const Cell& cell) {
  return cell.text == " ";
}

/// White space of a transcript becomes a blank, other controls visible marks.
std::string shown_text(std::string text) {
  std::replace_if(
      text.begin(), text.end(), [](char c) { return c == '\n' || c == '\t' || c == '\r'; }, ' ');
  return visible(text);
}

std::vector<Cell> cells_of(const Line& spans) {
  std::vector<Cell> cells;
  for (const Span& span : spans) {
    const std::string shown = shown_text(span.text);
    for (const Grapheme& grapheme : graphemes(shown))
      cells.push_back({std::string(grapheme.text), grapheme.columns, span.role});
  }
  return cells;
}

Line line_of(const std::vector<Cell>& cells, std::size_t begin, std::size_t end, int indent) {
  Line line;
  if (indent > 0) line.push_back({std::string(static_cast<std::size_t>(indent), ' '), Role::plain});
  for (std::size_t i = begin; i < end; ++i) {
    if (line.empty() || line.back().role != cells[i].role || (indent > 0 && line.size() == 1))
      line.push_back({"", cells[i].role});
    line.back().text += cells[i].text;
  }
  return line;
}

/// Past the last cell of the line that begins at `begin`; at least one cell.
std::size_t line_end(const std::vector<Cell>& cells, std::size_t begin, int columns) {
  int used = 0;
  std::size_t end = begin, blank = begin;
  while (end < cells.size() && used + cells[end].columns <= columns) {
    used += cells[end].columns;
    if (is_blank(cells[end])) blank = end;
    ++end;
  }
  if (end == cells.size() || is_blank(cells[end])) return end;
  if (blank > begin) return blank;
  return std::max(end, begin + 1);
}

}  // namespace

std::vector<Line> wrap(const Block& block, int columns) {
  const std::vector<Cell> cells = cells_of(block.spans);
  std::vector<Line> lines;
  if (!block.wraps || columns < 1) return {cut(line_of(cells, 0, cells.size(), 0), columns)};
  const int indent = block.indent < columns / 2 ? block.indent : 0;
  for (std::size_t begin = 0; begin < cells.size();) {
    const int margin = lines.empty() ? 0 : indent;
    const std::size_t end = line_end(cells, begin, columns - margin);
    lines.push_back(line_of(cells, begin, end, margin));
    begin = end;
    while (begin < cells.size() && is_blank(cells[begin])) ++begin;
  }
  if (lines.empty()) lines.emplace_back();
  for (Line& line : lines) line = cut(line, columns);
  return lines;
}

Line cut(const Line& line, int columns) {
  Line made;
  for (const Span& span : line) {
    const std::string text = shown_text(span.text);
    const std::string_view fits = fit_columns(text, columns);
    if (!fits.empty()) made.push_back({std::string(fits), span.role});
    columns -= display_width(fits);
    if (fits.size() < text.size()) break;
  }
  return made;
}

}  // namespace witnessmark
