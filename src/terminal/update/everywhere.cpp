#include <fmt/core.h>

#include "terminal/update/work.h"

namespace witnessmark {
namespace {

void ask_for(Work& work, Ask ask, std::string label) {
  Prompt prompt;
  prompt.ask = ask;
  prompt.label = std::move(label);
  work.ask(std::move(prompt));
}

/// Screens that would show what was proposed.
bool shows_proposals(const Key& key) {
  return key.is("3") || key.is("4") || key.is("a") || key.is("w");
}

bool press_screen(Work& work, const Key& key) {
  if (key.is("1")) {
    if (keeps_form(work, key)) return true;
    while (work.state.places.size() > 1) work.state.places.pop_back();
    work.want(LoadInterviews{});
  } else if (key.is("2")) {
    work.go(ClaimsPlace{});
  } else if (key.is("3")) {
    work.go(ReportPlace{ReportKind::contradictions, "", nullptr, 0});
  } else if (key.is("4")) {
    work.go(ReportPlace{ReportKind::open_questions, "", nullptr, 0});
  } else if (key.is("5")) {
    work.go(ReportPlace{ReportKind::journal, "", nullptr, 0});
  } else if (key.is("6")) {
    work.go(ReportPlace{ReportKind::differences, "", nullptr, 0});
  } else {
    return false;
  }
  return true;
}

}  // namespace

bool keeps_form(Work& work, const Key& key) {
  const FormPlace* unsaved = unsaved_form(work.state);
  if (unsaved == nullptr || unsaved->leaving) return false;
  for (Place& place : work.state.places)
    if (auto* form = std::get_if<FormPlace>(&place)) form->leaving = true;
  work.say(fmt::format("a form is not saved: Escape goes back to it, {} once more drops what was changed",
                       to_string(key)),
           Role::warning);
  return true;
}

bool press_everywhere(Work& work, const Key& key) {
  if (work.state.blind && shows_proposals(key)) {
    work.refuse("this would show what was proposed, and you code blind; h in a transcript ends that");
    return true;
  }
  if (press_screen(work, key)) return true;
  if (key.name == Key::Name::escape) {
    work.back();
  } else if (key.is("?")) {
    work.go(KeysPlace{});
  } else if (key.is("!")) {
    work.go(ReportPlace{ReportKind::cautions, "", nullptr, 0});
  } else if (key.is("a")) {
    ask_for(work, Ask::said_about, "Said about (place or equipment):");
  } else if (key.is("w")) {
    ask_for(work, Ask::configuration, "What stood where on (date):");
  } else if (key.is("/")) {
    ask_for(work, Ask::search, "Words said:");
  } else if (key.is("u") || key.is("U")) {
    if (!work.state.can_edit) return work.refuse(work.state.why_reading), true;
    if (key.is("u"))
      work.want(Undo{});
    else
      work.want(Redo{});
  } else if (key == Key{Key::Name::control, "z"}) {
    work.want(Suspend{});
  } else if (key.is("q")) {
    if (keeps_form(work, key)) return true;
    work.state.finished = true;
    work.want(Quit{});
  } else {
    return false;
  }
  return true;
}

}  // namespace witnessmark
