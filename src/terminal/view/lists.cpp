// Interviews, claims, reports, forms and keys: everything that is a list of lines.
#include <fmt/core.h>

#include "terminal/form.h"
#include "terminal/key_table.h"
#include "terminal/view/panels.h"
#include "witnessmark/app/claim_words.h"
#include "witnessmark/base/counted.h"
#include "witnessmark/base/display_width.h"

namespace witnessmark {
namespace {

std::string per_hundred(std::int64_t part, std::int64_t whole) {
  return whole == 0 ? "" : fmt::format("{} %", part * 100 / whole);
}

Block interview_block(const InterviewLine& line) {
  const std::string name = pad_columns(line.key, 10) + " ";
  if (line.withheld != Withheld::none)
    return {{{name, Role::plain},
             {fmt::format("withheld: {}", to_string(line.withheld)), Role::warning},
             {"  " + counted(line.all_claims(), "claim"), Role::faint}},
            11,
            true};
  std::string work = line.has_transcript
                         ? fmt::format("{:>3} of {:>3} decided", line.decided(), line.all_claims())
                         : std::string("no transcript");
  if (line.has_transcript) work += fmt::format(", read {:>5}", per_hundred(line.read, line.code_points));
  std::string rest = fmt::format("  {}, {}", line.narrators, line.date);
  rest += fmt::format(", {}{}", to_string(line.standing), line.opened ? ", opened though withheld" : "");
  return {{{name, Role::plain}, {work, Role::label}, {rest, Role::faint}}, 11, true};
}

std::string_view outcome_word(const std::optional<Outcome>& outcome) {
  return outcome ? in_words(*outcome) : std::string_view("not weighed");
}

Role role_of(const std::optional<Outcome>& outcome) {
  if (outcome == Outcome::agrees) return Role::good;
  if (outcome == Outcome::conflicts) return Role::bad;
  return Role::faint;
}

}  // namespace

Line claim_line(const ClaimLine& line) {
  if (line.withheld != Withheld::none)
    return {{fmt::format("  withheld: {}", to_string(line.withheld)), Role::warning}};
  std::string text =
      fmt::format("{}{}", line.polarity == Polarity::denied ? "not " : "", to_string(line.statement));
  for (const std::string* part : {&line.subject, &line.number, &line.place, &line.when})
    if (!part->empty()) text += " · " + *part;
  Line made = {{fmt::format("{} ", sign_of(line.status)),
                line.status == ClaimStatus::said_so ? Role::good : Role::label},
               {text, Role::plain},
               {fmt::format("  [{}]", outcome_word(line.outcome)), role_of(line.outcome)}};
  std::string more;
  if (line.by_coder) more += ", added by a coder";
  if (line.withdrawn) more += ", taken back by the narrator";
  if (line.proposed_otherwise) more += ", now proposed otherwise";
  if (line.gone) more += ", no longer proposed";
  if (line.lost) more += ", its words are lost";
  if (!more.empty()) made.push_back({more.substr(1), Role::warning});
  return made;
}

void add_words(Line& line, const ClaimLine& claim) {
  if (!claim.words.empty()) line.push_back({fmt::format("  “{}”", claim.words), Role::quote});
}

std::vector<Panel> panels_of(const State& state, const InterviewsPlace& place) {
  Panel panel;
  std::int64_t all = 0, decided = 0;
  for (const InterviewLine& line : state.interviews) {
    all += line.all_claims();
    decided += line.decided();
    panel.blocks.push_back(interview_block(line));
  }
  panel.title = fmt::format("{}, {} of {} decided", counted(state.interviews.size(), "interview"), decided,
                            counted(all, "claim"));
  panel.focus = place.at;
  if (panel.blocks.empty())
    panel.blocks.push_back(paragraph("No interviews yet: take some in first (witnessmark take-in)."));
  return {panel};
}

std::vector<Panel> panels_of(const State& state, const ClaimsPlace& place) {
  Panel panel;
  const ClaimPage& page = place.page;
  // Only what can come to be seen is drawn: the lines around the cursor.
  constexpr std::size_t kAround = 100;
  const std::size_t at = place.at < page.first ? 0 : place.at - page.first;
  const std::size_t begin = at - std::min(at, kAround);
  const std::size_t past = std::min(page.lines.size(), at + kAround);
  for (std::size_t i = begin; i < past; ++i) {
    if (hidden(state, page.lines[i])) {
      panel.blocks.push_back(paragraph("proposed; hidden while you code blind", Role::faint));
      continue;
    }
    Line line = claim_line(page.lines[i]);
    line.push_back({fmt::format("  {}, {}", page.lines[i].interview, page.lines[i].speaker), Role::faint});
    constexpr int kRoomForWords = 60;  // columns: on less the list would show next to nothing else
    if (state.size.columns >= kRoomForWords) add_words(line, page.lines[i]);
    panel.blocks.push_back({std::move(line), 4, true});
  }
  panel.title = fmt::format("{}{}, in review order{}{}", counted(page.total, "claim"),
                            place.query.narrows() ? " of those asked for" : "",
                            page.withheld.empty() ? "" : "; ", page.withheld);
  panel.focus = at - begin;
  if (panel.blocks.empty())
    panel.blocks.push_back(paragraph(
        place.query.narrows()   ? "No claim is of this kind. f asks for others."
        : page.withheld.empty() ? "No claims yet: witnessmark propose finds them."
                                : "No claims that may be shown. For what is withheld give the release, or "
                                  "open the interview for this sitting."));
  return {panel};
}

std::vector<Panel> panels_of(const State&, const ReportPlace& place) {
  Panel panel;
  if (!place.report) return {Panel{"", {paragraph("…")}, std::nullopt, 0, true, 1}};
  panel.title = place.report->title;
  constexpr std::size_t kAround = 150;
  const auto& lines = place.report->lines;
  const std::size_t begin = place.at - std::min(place.at, kAround);
  for (std::size_t i = begin; i < std::min(lines.size(), place.at + kAround); ++i) {
    const ReportLine& line = lines[i];
    switch (line.weight) {
      case ReportLine::Weight::heading:
        panel.blocks.push_back(paragraph(line.text, Role::label));
        break;
      case ReportLine::Weight::item:
        panel.blocks.push_back(paragraph(line.text, Role::plain, 2));
        break;
      case ReportLine::Weight::detail:
        panel.blocks.push_back({{{"    " + line.text, Role::faint}}, 4, true});
        break;
      case ReportLine::Weight::caution:
        panel.blocks.push_back(paragraph(line.text, Role::warning, 2));
        break;
    }
  }
  panel.focus = place.at - begin;
  return {panel};
}

std::vector<Panel> panels_of(const State& state, const FormPlace& place) {
  Panel panel;
  const auto fields = fields_of(place);
  int wide = 0;
  for (const Field& field : fields) wide = std::max(wide, display_width(field.label));
  wide = std::min(wide, state.size.columns / 3);
  for (const Field& field : fields) {
    const bool empty = field.value.empty();
    const char* none = place.purpose == FormPlace::Purpose::filter ? "any" : "none";
    panel.blocks.push_back({{{pad_columns(field.label, wide) + "  ", Role::label},
                             {empty ? none : field.value, empty ? Role::faint : Role::plain}},
                            wide + 2,
                            true});
  }
  panel.focus = place.at;
  panel.title = place.purpose == FormPlace::Purpose::filter ? "Show only claims with" : "The claim";
  if (place.quote.empty()) return {panel};
  Panel quote{"Its quote", {{{{place.quote, Role::quote}}, 2, true}}, std::nullopt, 0, false, 1};
  panel.weight = 3;
  return {panel, quote};
}

std::vector<Panel> panels_of(const State& state, const KeysPlace& place) {
  Panel panel;
  State behind = state;
  if (behind.places.size() > 1) behind.places.pop_back();
  panel.title = fmt::format("Keys of “{}”", name_of(behind.place()));
  for (const KeyHelp& help : keys_of(behind))
    panel.blocks.push_back(
        {{{help.key.size() > 10 ? std::string(help.key) : pad_columns(help.key, 10), Role::key},
          {"  " + std::string(help.words), Role::plain}},
         12,
         true});
  panel.blocks.push_back(paragraph(""));
  panel.blocks.push_back(
      paragraph("Before a claim: . proposed, + said so, - misread, x set aside. Said so means that the "
                "narrator did say it, not that "
                "it is true. Every decision is on the disk when the screen shows it."));
  panel.scroll = place.scroll;
  return {panel};
}

std::string item_of(const State&, const Place& place) {
  if (const auto* talk = std::get_if<TranscriptPlace>(&place)) {
    if (!talk->page) return talk->interview;
    return fmt::format("{}, {}", talk->interview, talk->page->interview.narrators);
  }
  if (const auto* claims = std::get_if<ClaimsPlace>(&place)) return claims->query.interview;
  if (const auto* report = std::get_if<ReportPlace>(&place)) return report->subject;
  if (const auto* claim = std::get_if<ClaimPlace>(&place); claim && claim->page)
    return claim->page->line.interview;
  return "";
}

}  // namespace witnessmark
