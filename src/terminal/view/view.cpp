#include <fmt/core.h>

#include "terminal/key_table.h"
#include "terminal/view/panels.h"
#include "witnessmark/base/display_width.h"

namespace witnessmark {
namespace {

InputLine input_of(const Prompt& prompt) {
  InputLine input{prompt.label, prompt.text, prompt.cursor, {}, std::nullopt};
  if (!prompt.now.empty() && !prompt.chosen && prompt.text.empty())
    input.below.push_back(paragraph("now " + prompt.now + "; Enter alone keeps it", Role::faint, 2));
  if (prompt.reads_date && prompt.text.empty())
    input.below.push_back(paragraph(
        "as people say it (late in sixty-two, the spring of 1957) or in EDTF (1957-21, [1962,1963])",
        Role::faint, 2));
  for (const TermMatch& match : prompt.matches) {
    Line line = {{match.name, Role::plain}};
    if (!match.by.empty()) line.push_back({"  (" + match.by + ")", Role::faint});
    input.below.push_back({std::move(line), 2, false});
  }
  if (prompt.chosen && *prompt.chosen < prompt.matches.size()) input.focus = prompt.chosen;
  if (!prompt.meaning.empty()) input.below.push_back(paragraph("means " + prompt.meaning, Role::good, 2));
  if (!prompt.fault.empty()) input.below.push_back(paragraph(prompt.fault, Role::warning, 2));
  if (prompt.list && prompt.matches.empty() && !prompt.text.empty())
    input.below.push_back(paragraph("no name of the list holds this", Role::faint));
  return input;
}

std::vector<Span> prompt_hint(const Prompt& prompt) {
  std::vector<Span> hint = {
      {"Enter", Role::key}, {" take  ", Role::faint}, {"Escape", Role::key}, {" leave it  ", Role::faint}};
  if (!prompt.matches.empty()) {
    hint.push_back({"Up Down", Role::key});
    hint.push_back({" choose", Role::faint});
  }
  return hint;
}

/// As many of the keys as fit, the most used first; the keys of help and of leaving always.
std::vector<Span> hint_of(const State& state) {
  std::vector<Span> hint;
  int room = state.size.columns - 14;
  for (const KeyHelp& help : keys_of(state)) {
    if (help.brief.empty() || help.key == "?" || help.key == "q") continue;
    const std::string_view key = help.key;
    const int wide = display_width(key) + display_width(help.brief) + 3;
    if (wide > room) continue;
    room -= wide;
    hint.push_back({std::string(key), Role::key});
    hint.push_back({fmt::format(" {}  ", help.brief), Role::faint});
  }
  hint.push_back({"?", Role::key});
  hint.push_back({" keys  ", Role::faint});
  hint.push_back({"q", Role::key});
  hint.push_back({" quit", Role::faint});
  return hint;
}

}  // namespace

Block paragraph(std::string text, Role role, int indent) {
  return {{{std::move(text), role}}, indent, true};
}

char sign_of(ClaimStatus status) {
  switch (status) {
    case ClaimStatus::proposed:
      return '.';
    case ClaimStatus::said_so:
      return '+';
    case ClaimStatus::misread:
      return '-';
    case ClaimStatus::set_aside:
      return 'x';
  }
  return ' ';
}

View view(const State& state) {
  View made;
  const Place& place = state.place();
  const std::string item = item_of(state, place);
  made.where = fmt::format("{} / {}{}{}", state.site, name_of(place), item.empty() ? "" : " / ", item);
  made.standing = state.can_edit ? state.coder : state.coder + ", reading only";
  if (state.blind) made.standing += ", blind";
  made.panels = std::visit([&](const auto& shown) { return panels_of(state, shown); }, place);
  made.message = state.message;
  made.message_role = state.message_role;
  if (made.message.empty() && unsaved_form(state)) {
    const bool here = std::holds_alternative<FormPlace>(place);
    made.message =
        here ? "Not saved yet: s saves." : "Not saved yet: Escape goes back to the form, s saves there.";
    made.message_role = Role::warning;
  }
  if (made.message.empty() && state.can_edit) made.message = "All is saved.", made.message_role = Role::faint;
  if (made.message.empty())
    made.message = "Only reading: " + state.why_reading, made.message_role = Role::warning;
  if (state.prompt) {
    made.input = input_of(*state.prompt);
    made.hint = prompt_hint(*state.prompt);
  } else {
    made.hint = hint_of(state);
  }
  return made;
}

}  // namespace witnessmark
