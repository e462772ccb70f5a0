// The keys of the interviews, the claims, one claim, reports and the list of keys. The transcript and the
// form have files of their own.
#include <fmt/core.h>

#include "terminal/key_table.h"
#include "terminal/update/work.h"

namespace witnessmark {

bool press(Work& work, InterviewsPlace& place, const Key& key) {
  const auto& interviews = work.state.interviews;
  if (move_in(place.at, interviews.size(), key, page_rows(work.state))) return true;
  if (place.at >= interviews.size()) return false;
  const InterviewLine& line = interviews[place.at];
  if (key.name == Key::Name::enter) {
    if (line.withheld == Withheld::none) {
      TranscriptPlace talk;
      talk.interview = line.key;
      work.go(std::move(talk));
      return true;
    }
    Prompt prompt;
    prompt.ask = Ask::open_withheld;
    prompt.interview = line.key;
    prompt.label =
        fmt::format("Withheld ({}). If you may work on it, type {}:", to_string(line.withheld), line.key);
    work.ask(std::move(prompt));
    return true;
  }
  if (key.is("c")) {
    ClaimsPlace claims;
    claims.query.interview = line.key;
    work.go(std::move(claims));
    return true;
  }
  return false;
}

namespace {

/// The window is loaded anew when the cursor leaves it.
void keep_window(Work& work, const ClaimsPlace& place) {
  const std::size_t past = place.page.first + place.page.lines.size();
  const bool inside = place.at >= place.page.first && (place.at < past || past >= place.page.total);
  constexpr std::size_t kBefore = 100;
  if (!inside) work.want(LoadClaims{place.query, place.at - std::min(place.at, kBefore)});
}

void decide_all(Work& work, const ClaimsPlace& place) {
  if (place.page.lines.empty()) return work.refuse("no claim is shown", Role::faint);
  if (place.page.lines.size() < place.page.total)
    return work.refuse(fmt::format("{} claims are too many at once: narrow them with f", place.page.total));
  Prompt prompt;
  prompt.ask = Ask::decide_all;
  for (const ClaimLine& line : place.page.lines)
    if (!line.decided && line.withheld == Withheld::none && !hidden(work.state, line))
      prompt.pending.claims.push_back(line.id);
  if (prompt.pending.claims.empty()) return work.refuse("all that are shown are decided already", Role::faint);
  prompt.label = fmt::format("All {} undecided of {} shown: s said so, m misread, x set aside:",
                             prompt.pending.claims.size(), place.page.lines.size());
  work.ask(std::move(prompt));
}

void go_to_talk(Work& work, const std::string& interview, CodePoint position) {
  TranscriptPlace talk;
  talk.interview = interview;
  talk.wanted = position;
  work.go(std::move(talk));
}

}  // namespace

bool press(Work& work, ClaimsPlace& place, const Key& key) {
  if (move_in(place.at, place.page.total, key, page_rows(work.state))) {
    keep_window(work, place);
    return true;
  }
  const auto id = claim_here(work.state);
  if (key.name == Key::Name::enter && id) {
    work.go(ClaimPlace{*id});
  } else if (key.is("t") && id) {
    const ClaimLine& line = place.page.lines[place.at - place.page.first];
    go_to_talk(work, line.interview, line.quotes.front().begin);
  } else if (key.is("f")) {
    FormPlace form;
    form.purpose = FormPlace::Purpose::filter;
    form.query = place.query;
    work.go(std::move(form));
  } else if (key.is("A")) {
    if (!work.state.can_edit) return work.refuse(work.state.why_reading), true;
    decide_all(work, place);
  } else {
    return press_deciding(work, key);
  }
  return true;
}

namespace {

void turn_to(Work& work, ClaimPlace& place, int steps) {
  const auto id = claim_after(work.state, steps);
  if (!id) return work.refuse(steps > 0 ? "no claim follows" : "no claim before this one", Role::faint);
  Place& list = work.state.places[work.state.places.size() - 2];
  if (auto* claims = std::get_if<ClaimsPlace>(&list)) claims->at += static_cast<std::size_t>(steps);
  if (auto* talk = std::get_if<TranscriptPlace>(&list)) talk->claim += static_cast<std::size_t>(steps);
  place = ClaimPlace{*id};
  work.want(LoadClaim{*id});
}

void ask_entry(Work& work, Ask ask, const ClaimPageFull& page) {
  if (ask != Ask::entry && !work.state.can_edit) return work.refuse(work.state.why_reading);
  const bool none = page.evidence.empty() || page.evidence.front().comparison.entry.empty();
  if (none && ask != Ask::link)
    return work.refuse("no entry speaks to this claim; l links one by its key", Role::faint);
  if (ask == Ask::entry && page.evidence.size() == 1)
    return work.go(ReportPlace{ReportKind::entry, page.evidence.front().comparison.entry, nullptr, 0});
  Prompt prompt;
  prompt.ask = ask;
  prompt.label = ask == Ask::entry  ? "Entry numbered:"
                 : ask == Ask::link ? "Link with an entry, by its number here or its key in the register:"
                                    : "Rule out the entry numbered:";
  work.ask(std::move(prompt));
}

}  // namespace

bool press(Work& work, ClaimPlace& place, const Key& key) {
  const int page = page_rows(work.state);
  switch (key.name) {
    case Key::Name::up:
    case Key::Name::page_up:
      place.scroll = std::max(0, place.scroll - (key.name == Key::Name::up ? 1 : page));
      return true;
    case Key::Name::down:
    case Key::Name::page_down:
      place.scroll = std::min(scroll_limit(view(work.state), work.state.size),
                              place.scroll + (key.name == Key::Name::down ? 1 : page));
      return true;
    case Key::Name::right:
      return turn_to(work, place, 1), true;
    case Key::Name::left:
      return turn_to(work, place, -1), true;
    default:
      break;
  }
  if (place.page && key.is("t")) {
    go_to_talk(work, place.page->line.interview, place.page->line.quotes.front().begin);
  } else if (place.page && key.name == Key::Name::enter) {
    ask_entry(work, Ask::entry, *place.page);
  } else if (place.page && (key.is("l") || key.is("L"))) {
    ask_entry(work, key.is("l") ? Ask::link : Ask::rule_out, *place.page);
  } else if (place.page && key.is("b") && !place.page->record.subject_name.empty()) {
    work.go(ReportPlace{ReportKind::said_about, place.page->record.subject_name, nullptr, 0});
  } else {
    return press_deciding(work, key);
  }
  return true;
}

namespace {

/// The next line that leads somewhere, or the one at the end: headings are passed over.
void settle_on_line(const ReportPlace& before, ReportPlace& place) {
  const auto& lines = place.report->lines;
  const bool down = place.at >= before.at;
  while (place.at < lines.size() && lines[place.at].weight == ReportLine::Weight::heading) {
    if (down ? place.at + 1 >= lines.size() : place.at == 0) return;
    place.at += down ? 1 : static_cast<std::size_t>(-1);
  }
}

void settle_difference(Work& work, const ReportLine& line, bool theirs) {
  if (!work.state.can_edit) return work.refuse(work.state.why_reading);
  work.want(Settle{line.difference, theirs});
}

}  // namespace

bool press(Work& work, ReportPlace& place, const Key& key) {
  if (!place.report) return false;
  const ReportPlace before = place;
  if (move_in(place.at, place.report->lines.size(), key, page_rows(work.state))) {
    settle_on_line(before, place);
    return true;
  }
  if (place.at >= place.report->lines.size()) return false;
  const ReportLine& line = place.report->lines[place.at];
  if (!line.difference.empty() && (key.is("s") || key.is("o"))) {
    settle_difference(work, line, key.is("o"));
    return true;
  }
  if (key.name != Key::Name::enter) return false;
  if (line.claim) {
    work.go(ClaimPlace{*line.claim});
  } else if (!line.entry.empty()) {
    work.go(ReportPlace{ReportKind::entry, line.entry, nullptr, 0});
  } else if (line.position) {
    go_to_talk(work, line.interview, *line.position);
  } else {
    work.refuse("this line leads nowhere further", Role::faint);
  }
  return true;
}

bool press(Work& work, KeysPlace& place, const Key& key) {
  std::size_t at = static_cast<std::size_t>(place.scroll);
  const auto most = static_cast<std::size_t>(scroll_limit(view(work.state), work.state.size)) + 1;
  if (!move_in(at, most, key, page_rows(work.state))) return false;
  place.scroll = static_cast<int>(at);
  return true;
}

}  // namespace witnessmark
