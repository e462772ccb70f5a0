// The same screens, said instead of drawn: after every line what has changed is printed, once, and in the
// order in which one would want to hear it: where one is, what stands at the cursor, what came of it.
#include <fmt/ostream.h>

#include <istream>
#include <string>

#include "terminal/key_table.h"
#include "witnessmark/base/display_width.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/terminal/player.h"
#include "witnessmark/terminal/review.h"

namespace witnessmark {
namespace {

std::string text_of(const Block& block) {
  return visible(trim(as_text(block.spans)));
}

const Panel* active_panel(const View& view) {
  for (const Panel& panel : view.panels)
    if (panel.active) return &panel;
  return view.panels.empty() ? nullptr : &view.panels.front();
}

/// The key for a word: a key's own name, or the word at the foot of the screen ("said so").
std::optional<Key> key_for(const State& state, const std::string& word) {
  if (word.empty()) return Key{Key::Name::enter, ""};
  if (auto key = parse_key(word)) return key;
  for (const KeyHelp& help : keys_of(state)) {
    if (help.brief != word) continue;
    return parse_key(help.key.substr(0, help.key.find(' ')));
  }
  return std::nullopt;
}

class Prompts {
 public:
  Prompts(Session& session, std::ostream& out) : session_(session), out_(out) {}

  void say() {
    const View shown = view(session_.state());
    if (shown.where != where_) fmt::print(out_, "{}\n", visible(shown.where));
    where_ = shown.where;
    if (shown.input) return say_input(*shown.input);
    say_panel(shown);
    if (!session_.state().message.empty()) fmt::print(out_, "{}\n", visible(session_.state().message));
  }

  /// All of the screen, for `list`.
  void list() {
    for (const Panel& panel : view(session_.state()).panels) {
      if (!panel.title.empty()) fmt::print(out_, "{}\n", visible(panel.title));
      for (std::size_t i = 0; i < panel.blocks.size(); ++i)
        fmt::print(out_, "{}{}\n", panel.focus == i ? "> " : "  ", text_of(panel.blocks[i]));
    }
  }

  /// What stands beside what is being read, for `beside`: the register beside a claim, the claims beside the
  /// talk.
  void beside() {
    const View shown = view(session_.state());
    const Panel* active = active_panel(shown);
    bool any = false;
    for (const Panel& panel : shown.panels) {
      if (&panel == active) continue;
      any = true;
      if (!panel.title.empty()) fmt::print(out_, "{}\n", visible(panel.title));
      for (const Block& block : panel.blocks) fmt::print(out_, "  {}\n", text_of(block));
    }
    if (!any) fmt::print(out_, "nothing stands beside this\n");
  }

  /// What is wrong with the answer, or why it cannot be done; empty when it was.
  std::string answer(const std::string& line) {
    if (session_.state().prompt) return answer_prompt(line);
    if (line == "list") return list(), "";
    if (line == "beside") return beside(), "";
    const auto key = key_for(session_.state(), line);
    if (!key) {
      fmt::print(out_,
                 "“{}” is no key here; ? tells the keys, list the whole screen, beside the other half\n",
                 visible(line));
      return fmt::format("“{}” is no key here", line);
    }
    session_.press(*key);
    say();
    return why_refused(line);
  }

  /// What is still to be answered or saved; empty when nothing is.
  std::string unfinished() const {
    const State& state = session_.state();
    if (state.finished) return "";
    if (state.prompt) return "the answers end before this is answered: " + state.prompt->label;
    return unsaved_form(state) != nullptr ? "the answers end before the form is saved" : "";
  }

 private:
  void say_input(const InputLine& input) {
    for (const Block& block : input.below) fmt::print(out_, "  {}\n", text_of(block));
    fmt::print(out_, "{}\n", visible(input.label));
  }

  void say_panel(const View& shown) {
    const Panel* panel = active_panel(shown);
    if (panel == nullptr) return;
    if (panel->focus && *panel->focus < panel->blocks.size()) {
      const std::string text = text_of(panel->blocks[*panel->focus]);
      if (text != said_) fmt::print(out_, "{}\n", text);
      said_ = text;
      return;
    }
    std::string all;
    for (const Block& block : panel->blocks) all += text_of(block) + "\n";
    if (all != said_) fmt::print(out_, "{}", all);
    said_ = all;
  }

  /// The line takes the place of what stands there; an empty one keeps it; a single "-" leaves the question.
  std::string answer_prompt(const std::string& line) {
    if (line == "-") {
      session_.press({Key::Name::escape, ""});
      return say(), "";
    }
    if (!line.empty()) {
      session_.press({Key::Name::end, ""});
      while (session_.state().prompt && !session_.state().prompt->text.empty())
        session_.press({Key::Name::backspace, ""});
      for (const Grapheme& grapheme : graphemes(line))
        session_.press({Key::Name::text, std::string(grapheme.text)});
    }
    session_.press({Key::Name::enter, ""});
    say();
    return why_refused(line);
  }

  std::string why_refused(const std::string& line) const {
    const State& state = session_.state();
    return state.refused ? fmt::format("“{}”: {}", line, state.message) : "";
  }

  Session& session_;
  std::ostream& out_;
  std::string where_, said_;
};

}  // namespace

Result<void> review_by_prompts(CodingDesk& desk, const ReviewMode& request, std::istream& in, std::ostream& out) {
  Session session(desk, Size{100, 1000}, player_program(request.player));
  Prompts prompts(session, out);
  prompts.say();
  fmt::print(out,
             "Type a key or its word and Enter; ? tells the keys, list the whole screen, beside the other "
             "half, q ends.\n");
  std::int64_t number = 0;
  const auto fault = [&number](std::string message) {
    return Error{"standard input", number, 0, std::move(message),
                 "what comes before it is done and saved, what follows is not; mend it and go on from there"};
  };
  std::string line;
  while (!session.finished() && std::getline(in, line)) {
    ++number;
    std::string wrong = "this is not UTF-8";
    if (is_valid_utf8(line)) {
      line = trim(line);
      wrong = prompts.answer(line);
    } else {
      fmt::print(out, "{}\n", wrong);
    }
    out.flush();
    if (!wrong.empty() && !request.typed) return fault(wrong);
  }
  if (const std::string left = prompts.unfinished(); !left.empty() && !request.typed) return fault(left);
  return {};
}

}  // namespace witnessmark
