#include <fmt/core.h>

#include <algorithm>
#include <charconv>

#include "terminal/update/work.h"
#include "witnessmark/base/display_width.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

void type(Prompt& prompt, const Key& key) {
  switch (key.name) {
    case Key::Name::text:
      prompt.text.insert(prompt.cursor, key.text);
      prompt.cursor += key.text.size();
      break;
    case Key::Name::backspace:
      if (prompt.cursor > 0) {
        const auto size =
            graphemes(std::string_view(prompt.text).substr(0, prompt.cursor)).back().text.size();
        prompt.cursor -= size;
        prompt.text.erase(prompt.cursor, size);
      }
      break;
    case Key::Name::del:
      if (prompt.cursor < prompt.text.size())
        prompt.text.erase(prompt.cursor,
                          graphemes(std::string_view(prompt.text).substr(prompt.cursor)).front().text.size());
      break;
    case Key::Name::left:
      if (prompt.cursor > 0)
        prompt.cursor -= graphemes(std::string_view(prompt.text).substr(0, prompt.cursor)).back().text.size();
      break;
    case Key::Name::right:
      if (prompt.cursor < prompt.text.size())
        prompt.cursor += graphemes(std::string_view(prompt.text).substr(prompt.cursor)).front().text.size();
      break;
    case Key::Name::home:
      prompt.cursor = 0;
      break;
    case Key::Name::end:
      prompt.cursor = prompt.text.size();
      break;
    case Key::Name::control:
      if (key.text != "u") break;
      prompt.text.clear();
      prompt.cursor = 0;
      break;
    default:
      break;
  }
}

/// "12", "4:05", "1:02:03" as milliseconds.
std::optional<Millisecond> parse_time(std::string_view text) {
  std::int64_t seconds = 0;
  while (!text.empty()) {
    const std::size_t colon = std::min(text.find(':'), text.size());
    std::int64_t part = 0;
    const auto [end, fault] = std::from_chars(text.data(), text.data() + colon, part);
    if (fault != std::errc{} || end != text.data() + colon || part < 0 || part > 100000) return std::nullopt;
    seconds = seconds * 60 + part;
    text.remove_prefix(std::min(colon + 1, text.size()));
  }
  return Millisecond{seconds * 1000};
}

void answer_time(Work& work, const Prompt& prompt) {
  auto* talk = std::get_if<TranscriptPlace>(&work.state.place());
  const auto time = parse_time(prompt.text);
  if (talk == nullptr || !talk->page) return;
  if (!time || prompt.text.empty()) return work.refuse("a time is written 4:05 or 1:02:03");
  std::optional<CodePoint> found;
  for (const SentencePlace& sentence : talk->sentences)
    if (sentence.at && sentence.at->time <= *time) found = sentence.range.begin;
  if (!found) return work.refuse("the transcript has no times to go by");
  go_to(*talk, *found);
}

std::optional<ClaimStatus> status_of_letter(std::string_view letter) {
  if (letter == "s") return ClaimStatus::said_so;
  if (letter == "m") return ClaimStatus::misread;
  if (letter == "x") return ClaimStatus::set_aside;
  return std::nullopt;
}

void answer_decide_all(Work& work, const Prompt& prompt) {
  const auto status = status_of_letter(prompt.text);
  if (!status) return work.refuse("nothing decided: s, m or x was asked for", Role::faint);
  Decide decision = prompt.pending;
  decision.status = *status;
  if (*status == ClaimStatus::said_so) return work.want(std::move(decision));
  Prompt why;
  why.ask = Ask::why;
  why.label = std::string(why_label(*status));
  why.pending = std::move(decision);
  work.ask(std::move(why));
}

void answer_why(Work& work, const Prompt& prompt) {
  Decide decision = prompt.pending;
  decision.why = prompt.text;
  const bool one = decision.claims.size() == 1;
  if (one) work.state.last = decision;
  work.want(std::move(decision));
  if (one) advance(work);
}

void answer_open_withheld(Work& work, const Prompt& prompt) {
  if (prompt.text != prompt.interview) return work.refuse("left withheld", Role::faint);
  work.want(OpenWithheld{prompt.interview});
  if (std::holds_alternative<TranscriptPlace>(work.state.place())) return;  // it is loaded anew
  TranscriptPlace talk;
  talk.interview = prompt.interview;
  work.go(std::move(talk));
}

/// The place or equipment that was chosen among those offered, else what was typed.
std::string named(const Prompt& prompt) {
  return prompt.chosen && *prompt.chosen < prompt.matches.size() ? prompt.matches[*prompt.chosen].name : prompt.text;
}

/// The key of the entry whose number was typed, or the key that was typed; empty, and said so, when there is
/// none. An entry the claim was not held against can be linked, and only by its key: the desk says when the
/// register has none such.
std::string entry_meant(Work& work, const Prompt& prompt) {
  const auto* place = std::get_if<ClaimPlace>(&work.state.place());
  std::size_t number = 0;
  const char* end = prompt.text.data() + prompt.text.size();
  const auto read = std::from_chars(prompt.text.data(), end, number);
  if (!place || !place->page) return "";
  const auto& evidence = place->page->evidence;
  if (read.ec == std::errc{} && read.ptr == end && number >= 1 && number <= evidence.size())
    return evidence[number - 1].comparison.entry;
  const bool known = std::any_of(evidence.begin(), evidence.end(), [&](const EvidenceLine& line) {
    return line.comparison.entry == prompt.text;
  });
  if (!prompt.text.empty() && (known || prompt.ask == Ask::link)) return prompt.text;
  work.refuse(fmt::format("the entries are numbered 1 to {}", evidence.size()));
  return "";
}

void answer_entry(Work& work, const Prompt& prompt) {
  const std::string entry = entry_meant(work, prompt);
  if (entry.empty()) return;
  if (prompt.ask == Ask::entry) return work.go(ReportPlace{ReportKind::entry, entry, nullptr, 0});
  const auto kind = prompt.ask == Ask::link ? CodeClaim::Kind::link : CodeClaim::Kind::rule_out;
  work.want(CodeClaim{kind, std::get<ClaimPlace>(work.state.place()).id, {}, entry, ""});
}

void answer(Work& work, const Prompt& prompt) {
  switch (prompt.ask) {
    case Ask::why:
      return answer_why(work, prompt);
    case Ask::search:
      if (!prompt.text.empty()) work.go(ReportPlace{ReportKind::search, prompt.text, nullptr, 0});
      return;
    case Ask::said_about:
      if (const std::string name = named(prompt); !name.empty())
        work.go(ReportPlace{ReportKind::said_about, name, nullptr, 0});
      return;
    case Ask::configuration:
      if (!prompt.text.empty()) work.go(ReportPlace{ReportKind::configuration, prompt.text, nullptr, 0});
      return;
    case Ask::go_to_time:
      return answer_time(work, prompt);
    case Ask::open_withheld:
      return answer_open_withheld(work, prompt);
    case Ask::decide_all:
      return answer_decide_all(work, prompt);
    case Ask::field:
      if (auto* form = std::get_if<FormPlace>(&work.state.place())) set_field(work, *form, prompt);
      return;
    case Ask::note:
      if (!prompt.text.empty())
        work.want(CodeClaim{CodeClaim::Kind::note, prompt.claim.value_or(Id{}), {}, "", prompt.text});
      return;
    case Ask::checked:
      return work.want(CodeClaim{CodeClaim::Kind::checked,
                                 prompt.claim.value_or(Id{}),
                                 {},
                                 "",
                                 prompt.text.empty() ? "as transcribed" : prompt.text});
    case Ask::restrict:
      work.want(CodePassage{CodePassage::Kind::restrict, prompt.interview, prompt.range, prompt.text});
      return;
    case Ask::lift:
      work.want(CodePassage{CodePassage::Kind::lift, prompt.interview, prompt.range, prompt.text});
      return;
    case Ask::entry:
    case Ask::link:
    case Ask::rule_out:
      return answer_entry(work, prompt);
  }
}

/// Why an empty answer is none; empty where it is one.
std::string_view needs_words(const Prompt& prompt) {
  if (!trim(prompt.text).empty()) return "";
  if (prompt.ask == Ask::why && prompt.pending.status == ClaimStatus::misread)
    return "a misreading needs its reason; Escape leaves it undecided";
  if (prompt.ask == Ask::restrict) return "a restriction needs its reason; Escape leaves it as it is";
  if (prompt.ask == Ask::lift) return "lifting a restriction needs its reason; Escape leaves it as it is";
  return "";
}

/// What the text so far means is asked for at once.
void ask_meaning(Work& work, const Prompt& prompt) {
  if (prompt.list) work.want(FindTerms{*prompt.list, prompt.text});
  if (prompt.ask == Ask::said_about && prompt.text.size() > 1)
    work.want(FindTerms{std::nullopt, prompt.text});
  const auto* form = std::get_if<FormPlace>(&work.state.place());
  if (prompt.reads_date && form) work.want(ReadDate{prompt.text, form->draft});
}

/// Moves among the names offered; the first move goes to the first of them. False for other keys.
bool choose(Prompt& prompt, const Key& key) {
  std::size_t at = prompt.chosen.value_or(0);
  if (!move_in(at, prompt.matches.size(), key, 5)) return false;
  prompt.chosen = prompt.chosen ? at : 0;
  return true;
}

}  // namespace

void press_in_prompt(Work& work, const Key& key) {
  Prompt& prompt = *work.state.prompt;
  if (key.name == Key::Name::escape) {
    work.state.prompt.reset();
    return work.say("left as it was", Role::faint);
  }
  if (key.name == Key::Name::enter) {
    if (prompt.reads_date && !prompt.fault.empty())
      return work.refuse("not taken: what is typed is no date yet; Escape leaves it");
    if (const std::string_view needs = needs_words(prompt); !needs.empty())
      return work.refuse(std::string(needs));
    const Prompt answered = std::move(prompt);
    work.state.prompt.reset();
    work.say("");
    return answer(work, answered);
  }
  if (!prompt.matches.empty() && choose(prompt, key)) return;
  const std::string before = prompt.text;
  type(prompt, key);
  if (prompt.text == before) return;
  work.say("");  // what was wrong with the text before
  if (!prompt.list && prompt.ask != Ask::said_about) prompt.matches.clear();
  ask_meaning(work, prompt);
}

}  // namespace witnessmark
