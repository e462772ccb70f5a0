#include "app/names_of_events.h"

namespace witnessmark {
namespace {

void replace_all(std::string& text, const std::string& what, const std::string& with) {
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + with.size()))
    text.replace(at, what.size(), with);
}

}  // namespace

NamesOfEvents::NamesOfEvents(const Withholding& withholding) : withholding_(withholding) {
  const auto note = [&](const std::string& key, const std::string& shown) {
    if (shown != key) keys_.emplace_back(key, shown);
  };
  for (const auto& [key, name] : withholding.shown_names()) note(key, withholding.shown_key("", key));
  for (const auto& [key, shown] : withholding.plain_interviews()) note(key, shown);
}

void NamesOfEvents::take_out(JournalEvent& event) const {
  const std::string interview = event.interview;
  event.interview = withholding_.shown_interview(interview);
  if (event.target_kind == "person")
    event.target = withholding_.shown_key("", event.target);
  else if (event.target_kind != "claim")
    take_out_keys(event.target, interview);
  event.why = withholding_.without_names(interview, event.why).text;
  for (std::string* content : {&event.before, &event.after}) {
    take_out_keys(*content, interview);
    *content = withholding_.without_names(interview, *content).text;
  }
}

void NamesOfEvents::take_out_keys(std::string& text, const std::string& interview) const {
  const std::string shown = withholding_.shown_interview(interview);
  if (!interview.empty() && shown != interview) replace_all(text, interview, shown);
  for (const auto& [key, name] : keys_) {
    replace_all(text, '"' + key + '"', '"' + name + '"');
    if (text == key) text = name;
    if (text.ends_with(" " + key)) text.replace(text.size() - key.size(), key.size(), name);
  }
}

}  // namespace witnessmark
