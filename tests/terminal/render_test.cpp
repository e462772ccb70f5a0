#include <doctest/doctest.h>

#include <random>

#include "terminal/wrapping.h"
#include "witnessmark/base/display_width.h"
#include "witnessmark/terminal/view.h"

using namespace witnessmark;

namespace {

std::string wrapped(const std::string& text, int columns, int indent = 0) {
  std::string all;
  for (const Line& line : wrap({{{text, Role::plain}}, indent, true}, columns)) all += as_text(line) + "|";
  return all;
}

}  // namespace

TEST_CASE("text breaks at blanks, long words between characters") {
  CHECK(wrapped("", 10) == "|");
  CHECK(wrapped("the fog bell", 12) == "the fog bell|");
  CHECK(wrapped("the fog bell", 11) == "the fog|bell|");
  CHECK(wrapped("the fog bell", 9, 2) == "the fog|  bell|");
  CHECK(wrapped("lightvessel", 5) == "light|vesse|l|");
  CHECK(wrapped("the lightvessel", 5) == "the|light|vesse|l|");
  CHECK(wrapped("a\nb\tc", 10) == "a b c|");
  CHECK(wrapped("\u706F\u53F0\u706F", 3) == "\u706F|\u53F0|\u706F|");
  CHECK(wrapped("\u706F", 1) == "|");
}

TEST_CASE("controls and direction marks of a transcript never reach the terminal") {
  CHECK(wrapped("a\x1B[2Jb", 40) == "a<U+001B>[2Jb|");
  CHECK(wrapped("a\u202Eb\u2066", 40) == "a<U+202E>b<U+2066>|");
  CHECK(wrapped("a\u009B31mb", 40) == "a<U+009B>31mb|");
  CHECK(wrapped("a\xFF"
                "b",
                40) == "a<byte FF>b|");
  const Line cut_line = cut({{"a\x1B]0;title\x07"
                              "b",
                              Role::plain}},
                            80);
  CHECK(as_text(cut_line).find('\x1B') == std::string::npos);
  CHECK(as_text(cut_line).find('\x07') == std::string::npos);
}

TEST_CASE("a picture has as many rows as asked for, none wider than asked, whatever is in the view") {
  std::mt19937 random(5);
  const auto any = [&](int most) { return static_cast<int>(random() % static_cast<unsigned>(most)); };
  const char* words[] = {"lamp ",
                         "\u706F\u53F0",
                         "e\u0301",
                         "\x1B[31m",
                         "crane · ",
                         "\u05D0\u05B8 ",
                         "averyverylongwordindeed",
                         "\n",
                         ""};
  const auto text = [&] {
    std::string made;
    for (int i = any(30); i > 0; --i) made += words[any(9)];
    return made;
  };
  for (int round = 0; round < 3000; ++round) {
    View view;
    view.where = text();
    view.standing = text();
    for (int p = any(4); p > 0; --p) {
      Panel panel;
      panel.title = text();
      for (int b = any(12); b > 0; --b)
        panel.blocks.push_back({{{text(), Role::plain}, {text(), Role::mark}}, any(20), any(4) > 0});
      if (any(2) == 1) panel.focus = static_cast<std::size_t>(any(14));
      panel.scroll = any(100) - 20;
      panel.active = any(2) == 1;
      panel.weight = any(4);
      view.panels.push_back(std::move(panel));
    }
    if (any(3) == 0) {
      InputLine input{text(), text(), 0, {}, std::nullopt};
      input.cursor = input.text.size();
      for (int b = any(5); b > 0; --b) input.below.push_back({{{text(), Role::plain}}, 2, true});
      view.input = std::move(input);
    }
    view.message = text();
    view.hint = {{text(), Role::key}};
    const Size size{1 + any(140), 1 + any(50)};
    const Picture picture = render(view, size);
    REQUIRE(picture.lines.size() == static_cast<std::size_t>(size.rows));
    for (const Line& line : picture.lines) {
      const std::string row = as_text(line);
      REQUIRE(display_width(row) <= size.columns);
      REQUIRE(row.find('\x1B') == std::string::npos);
      REQUIRE(row.find('\n') == std::string::npos);
    }
    if (picture.cursor) {
      REQUIRE(picture.cursor->columns < size.columns);
      REQUIRE(picture.cursor->rows < size.rows);
    }
  }
}

TEST_CASE("the focused block is always in sight") {
  View view;
  Panel panel;
  for (int i = 0; i < 100; ++i)
    panel.blocks.push_back({{{"line " + std::to_string(i), Role::plain}}, 0, true});
  for (std::size_t at : {0U, 1U, 50U, 98U, 99U}) {
    panel.focus = at;
    view.panels = {panel};
    for (int rows = 1; rows < 30; ++rows) {
      const std::string shown = as_text(render(view, {20, rows}));
      CAPTURE(rows);
      if (rows == 3) continue;  // heading, one line, nothing else: looked at below
      CHECK(shown.find("> line " + std::to_string(at)) != std::string::npos);
    }
  }
}

TEST_CASE("a long title and a long message are read whole where there is room, and nothing else is lost") {
  View shown;
  shown.where = "The tender / Contradictions";
  shown.message =
      "this is no date: write one date, without other words; two that bound a time as “from 1957 to 1959”";
  shown.hint = {{"? keys", Role::key}};
  Panel panel;
  panel.title =
      "0 sets that cannot all be true; 69 more with proposals; by the register and 12 reviewed claims";
  for (int i = 0; i < 40; ++i) panel.blocks.push_back({{{std::to_string(i), Role::plain}}, 0, true});
  panel.focus = 0;
  shown.panels = {panel};
  const std::string large = as_text(render(shown, {80, 24}));
  CHECK(large.find("“from 1957 to 1959”\n? keys") != std::string::npos);
  CHECK(large.find("== 0 sets that cannot all be true; 69 more with proposals; by the register") !=
        std::string::npos);
  CHECK(large.find("\n   and 12 reviewed claims ==") != std::string::npos);
  CHECK(large.find(" more below\n> 0\n") != std::string::npos);
  // Where rows are few, the list comes first.
  const std::string small = as_text(render(shown, {40, 8}));
  CHECK(small.find("> 0\n  1\n  2\n  3\n") != std::string::npos);
  // What is scrolled can be scrolled to its end.
  shown.panels[0].focus.reset();
  shown.panels[0].scroll = scroll_limit(shown, {80, 24});
  shown.message = "";
  CHECK(as_text(render(shown, {80, 24})).find("\n39\n") != std::string::npos);
}
