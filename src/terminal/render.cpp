// From top to bottom: a heading, the panels, what is being typed with its meaning, a message, the keys. Long
// titles of panels and long messages take a second and a third row. On few rows the panels keep what is left
// after the heading, the message and the keys; on fewer than four rows these give way too.
#include <algorithm>

#include "terminal/wrapping.h"
#include "witnessmark/base/display_width.h"
#include "witnessmark/terminal/view.h"

namespace witnessmark {
namespace {

constexpr int kSideBySideColumns = 100;
constexpr int kStackedRows = 18;
constexpr int kInputRows = 8;
constexpr int kMessageRows = 3;  // at most, on a screen with room for them

struct Drawn {
  std::vector<Line> lines;
  int focus_first = -1;  // line of the focused block
  int focus_last = -1;
};

/// A block in front of which stands the cursor, or the blank where it would stand.
Drawn draw_blocks(const std::vector<Block>& blocks, std::optional<std::size_t> focus, bool active,
                  int columns) {
  Drawn drawn;
  const int gutter = focus && columns > 2 ? 2 : 0;
  for (std::size_t i = 0; i < blocks.size(); ++i) {
    const bool focused = focus == i;
    std::vector<Line> lines = wrap(blocks[i], columns - gutter);
    if (focused) drawn.focus_first = static_cast<int>(drawn.lines.size());
    for (std::size_t n = 0; n < lines.size(); ++n) {
      if (gutter > 0) {
        const char* sign = focused && n == 0 ? (active ? "> " : "· ") : "  ";
        lines[n].insert(lines[n].begin(), {sign, focused && active ? Role::chosen : Role::plain});
      }
      drawn.lines.push_back(std::move(lines[n]));
    }
    if (focused) drawn.focus_last = static_cast<int>(drawn.lines.size()) - 1;
  }
  return drawn;
}

/// The first line shown: the focus stands in the middle, and is seen from its first line on.
int first_shown(const Drawn& drawn, int scroll, int rows) {
  const int most = std::max(0, static_cast<int>(drawn.lines.size()) - rows);
  if (drawn.focus_first < 0) return std::clamp(scroll, 0, most);
  const int height = drawn.focus_last - drawn.focus_first + 1;
  const int above = std::max(0, (rows - height) / 2);
  return std::clamp(drawn.focus_first - above, 0, std::max(most, std::min(drawn.focus_first, most)));
}

constexpr int kTitleMargin = 3;  // columns before and after the title's words
constexpr int kTitleRows = 3;    // at most

/// The words of a title in lines; one, cut, where rows are few.
std::vector<std::string> title_words(const Panel& panel, int columns, int rows) {
  std::vector<std::string> lines;
  if (panel.title.empty() || rows < 3) return lines;
  const int room = columns - 2 * kTitleMargin;
  const int most = std::clamp(rows / 4, 1, kTitleRows);
  if (most == 1 || room < 20) return {panel.title};
  for (const Line& line : wrap({{{panel.title, Role::plain}}, 0, true}, room)) lines.push_back(as_text(line));
  if (static_cast<int>(lines.size()) > most) lines.resize(static_cast<std::size_t>(most));
  return lines;
}

/// The last line of a title has what stands above and below the part shown.
std::vector<Line> panel_title(const Panel& panel, const std::vector<std::string>& words, const Drawn& drawn,
                              int first, int rows, int columns) {
  const int total = static_cast<int>(drawn.lines.size());
  const bool above = first > 0, below = first + rows < total;
  std::string more;
  if (above || below) more = above && below ? " more above and below" : above ? " more above" : " more below";
  if (columns < 60 && !more.empty()) more = above && below ? " ^v" : above ? " ^" : " v";
  std::vector<Line> lines;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const bool last = i + 1 == words.size();
    const std::string name = (i > 0 ? "   " : panel.active ? "== " : "-- ") + words[i] + " ";
    std::string line(fit_columns(name, std::max(0, columns - kTitleMargin)));
    const int fill = columns - display_width(line) - static_cast<int>(more.size());
    for (int n = 0; last && n < fill; ++n) line += panel.active ? '=' : '-';
    line = pad_columns(line + (last && fill >= 0 ? more : ""), columns);
    lines.push_back({{line, panel.active ? Role::label : Role::faint}});
  }
  return lines;
}

std::vector<Line> draw_panel(const Panel& panel, int columns, int rows) {
  std::vector<Line> lines;
  if (rows <= 0 || columns <= 0) return lines;
  const Drawn drawn = draw_blocks(panel.blocks, panel.focus, panel.active, columns);
  const std::vector<std::string> words = title_words(panel, columns, rows);
  const int left = rows - static_cast<int>(words.size());
  const int first = first_shown(drawn, panel.scroll, left);
  lines = panel_title(panel, words, drawn, first, left, columns);
  for (int i = first; i < static_cast<int>(drawn.lines.size()) && static_cast<int>(lines.size()) < rows; ++i)
    lines.push_back(drawn.lines[static_cast<std::size_t>(i)]);
  lines.resize(static_cast<std::size_t>(rows));
  return lines;
}

/// Shares of `whole` by weight; the last takes the rest.
std::vector<int> shares(const std::vector<Panel>& panels, int whole) {
  int sum = 0;
  for (const Panel& panel : panels) sum += panel.weight;
  std::vector<int> parts;
  int left = whole;
  for (const Panel& panel : panels) {
    parts.push_back(sum == 0 ? 0 : whole * panel.weight / sum);
    left -= parts.back();
  }
  if (!parts.empty()) parts.back() += left;
  return parts;
}

Line padded(const Line& line, int columns) {
  Line made = cut(line, columns);
  const int left = columns - display_width(as_text(made));
  if (left > 0) made.push_back({std::string(static_cast<std::size_t>(left), ' '), Role::plain});
  return made;
}

std::vector<Line> side_by_side(const std::vector<Panel>& panels, int columns, int rows) {
  const std::vector<int> parts = shares(panels, columns - 3 * (static_cast<int>(panels.size()) - 1));
  std::vector<Line> lines(static_cast<std::size_t>(rows));
  for (std::size_t p = 0; p < panels.size(); ++p) {
    const std::vector<Line> drawn = draw_panel(panels[p], parts[p], rows);
    for (std::size_t i = 0; i < lines.size() && i < drawn.size(); ++i) {
      if (p > 0) lines[i].push_back({" | ", Role::faint});
      const Line part = p + 1 < panels.size() ? padded(drawn[i], parts[p]) : drawn[i];
      lines[i].insert(lines[i].end(), part.begin(), part.end());
    }
  }
  return lines;
}

std::vector<Line> draw_panels(const std::vector<Panel>& panels, int columns, int rows) {
  if (panels.empty()) return std::vector<Line>(static_cast<std::size_t>(std::max(0, rows)));
  if (panels.size() > 1 && columns >= kSideBySideColumns) return side_by_side(panels, columns, rows);
  if (panels.size() > 1 && rows >= kStackedRows) {
    std::vector<Line> lines;
    const std::vector<int> parts = shares(panels, rows);
    for (std::size_t p = 0; p < panels.size(); ++p) {
      const std::vector<Line> drawn = draw_panel(panels[p], columns, parts[p]);
      lines.insert(lines.end(), drawn.begin(), drawn.end());
    }
    return lines;
  }
  const auto active =
      std::find_if(panels.begin(), panels.end(), [](const Panel& panel) { return panel.active; });
  return draw_panel(active == panels.end() ? panels.front() : *active, columns, rows);
}

Line heading(const View& view, int columns) {
  const int right = display_width(view.standing);
  std::string text = view.where;
  if (right > 0 && columns >= right + 20) {
    text = pad_columns(text, columns - right - 1) + " " + view.standing;
  } else {
    text = pad_columns(text, columns);
  }
  return {{text, Role::heading}};
}

struct Input {
  std::vector<Line> lines;  // the meaning above, the typed line last
  int cursor_column = 0;
};

Input draw_input(const InputLine& input, int columns, int rows) {
  Input drawn;
  const int below = std::min(rows - 1, kInputRows);
  if (below > 0 && !input.below.empty()) {
    const Panel panel{"", input.below, input.focus, 0, true, 1};
    const int needed = static_cast<int>(draw_blocks(input.below, input.focus, true, columns).lines.size());
    drawn.lines = draw_panel(panel, columns, std::min(below, needed));
  }
  // A long question has lines of its own above what is typed.
  const bool apart = display_width(input.label) > columns / 2;
  if (apart && rows > 1)
    for (Line& line : wrap({{{input.label, Role::label}}, 2, true}, columns))
      drawn.lines.push_back(std::move(line));
  const std::string label(fit_columns(apart ? "> " : input.label + " ", std::max(0, columns / 2)));
  const int room = std::max(1, columns - display_width(label) - 1);
  // What stands before the cursor is kept in sight.
  std::string_view shown = input.text;
  std::string_view before = shown.substr(0, input.cursor);
  while (display_width(before) > room) {
    const auto first = graphemes(before).front().text.size();
    before.remove_prefix(first);
    shown.remove_prefix(first);
  }
  drawn.cursor_column = std::min(columns - 1, display_width(label) + display_width(before));
  drawn.lines.push_back({{label, Role::label}, {std::string(fit_columns(shown, room)), Role::input}});
  return drawn;
}

}  // namespace

int scroll_limit(const View& view, Size size) {
  const bool beside = view.panels.size() > 1 && size.columns >= kSideBySideColumns;
  const int columns = beside ? (size.columns - 3) / 2 : size.columns;
  int limit = 0;
  for (const Panel& panel : view.panels) {
    if (panel.focus || !(panel.active || beside)) continue;
    const int lines = static_cast<int>(draw_blocks(panel.blocks, std::nullopt, true, columns).lines.size());
    const int title = static_cast<int>(title_words(panel, columns, size.rows - 3).size());
    limit = std::max(limit, lines - std::max(1, size.rows - 3 - title));
  }
  return limit;
}

Picture render(const View& view, Size size) {
  const int columns = std::max(1, size.columns);
  const int rows = std::max(1, size.rows);
  Picture picture{{columns, rows}, {}, std::nullopt};
  const int top = rows >= 3 ? 1 : 0;
  const int hint = rows >= 6 ? 1 : 0;
  std::vector<Line> messages;
  if (rows >= 4) messages = wrap({{{view.message, view.message_role}}, 0, true}, columns);
  messages.resize(std::min<std::size_t>(messages.size(), rows < kMessageRows * 5 ? 1 : kMessageRows));
  const int message = static_cast<int>(messages.size());
  Input input;
  if (view.input) input = draw_input(*view.input, columns, rows - top - hint - message);
  const int middle = std::max(0, rows - top - hint - message - static_cast<int>(input.lines.size()));
  if (top > 0) picture.lines.push_back(heading(view, columns));
  for (Line& line : draw_panels(view.panels, columns, middle)) picture.lines.push_back(std::move(line));
  for (Line& line : input.lines) picture.lines.push_back(std::move(line));
  if (view.input) picture.cursor = Size{input.cursor_column, static_cast<int>(picture.lines.size()) - 1};
  for (Line& line : messages) picture.lines.push_back(std::move(line));
  if (hint > 0) picture.lines.push_back(view.hint);
  picture.lines.resize(static_cast<std::size_t>(rows));
  for (Line& line : picture.lines) line = cut(line, columns);
  if (picture.cursor && picture.cursor->rows >= rows) picture.cursor.reset();
  return picture;
}

std::string as_text(const Line& line) {
  std::string text;
  for (const Span& span : line) text += span.text;
  return text;
}

std::string as_text(const Picture& picture) {
  std::string text;
  for (const Line& line : picture.lines) {
    std::string row = as_text(line);
    row.erase(row.find_last_not_of(' ') + 1);
    text += row + "\n";
  }
  return text;
}

}  // namespace witnessmark
