#include <fmt/core.h>

#include <algorithm>

#include <deque>
#include <stdexcept>

#include "app/coding/desk_state.h"
#include "app/coding/report_lines.h"
#include "witnessmark/app/claim_words.h"
#include "witnessmark/app/journal_listing.h"
#include "witnessmark/app/journal_words.h"
#include "witnessmark/app/open_questions.h"
#include "witnessmark/app/said_about.h"
#include "witnessmark/base/counted.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/search.h"

namespace witnessmark {
namespace {

using Weight = ReportLine::Weight;

Report cautions() {
  Report report;
  report.title = "Before anything is done with what is found here";
  for (const char* text : {"Interviews are about living people. What is closed, restricted or not released "
                           "is withheld by every list and export, and "
                           "counted; opening it here opens it to you alone, at this sitting.",
                           "A story about a named person is not a finding of fact.",
                           "Said so means that the narrator did say it. Whether it was so is what the "
                           "evidence is weighed for, and the curator says.",
                           "Age and recall distance are facts about the telling. No date is corrected by "
                           "them, and no narrator is graded.",
                           "Findings about the fabric (hazardous materials, confined spaces, live systems, "
                           "ordnance) are historical only: before "
                           "anyone enters, opens or handles anything, site safety rules, local codes and "
                           "licensed people decide."})
    add_line(report, Weight::item, text);
  return report;
}

/// What follows from other acts by itself is left out.
bool of_itself(const JournalEvent& event) {
  return event.kind == "weighed" || event.target_kind == "claim-origin";
}

/// Of what was done on a claim: the claim in a few words, and what became otherwise; nothing of what is
/// withheld.
std::string claim_words(const CodingDesk::State& state, const JournalEvent& event) {
  const auto id = event.target_kind == "claim" ? parse_id(event.target) : std::nullopt;
  const auto stored = id ? find_claim(state.site, *id) : std::nullopt;
  if (!stored || state.withholding->reason(stored->claim.interview, stored->claim.quotes) != Withheld::none)
    return "";
  const ClaimLine line = state.line(*stored);
  std::string words =
      fmt::format(": {} · {}", to_string(line.statement), line.subject.empty() ? line.place : line.subject);
  if (const std::string changes = change_words(event, state.maker->lists()); !changes.empty())
    words += "; " + changes;
  return words;
}

/// The newest acts first, so many at most.
Report journal(const CodingDesk::State& state) {
  constexpr std::size_t kMost = 500;
  Report report;
  std::deque<ReportLine> newest;
  std::size_t all = 0;
  const std::string withheld =
      list_journal(state.site, "", state.surroundings.today, [&](const ListedEvent& listed) {
        const JournalEvent& event = listed.event;
        if (of_itself(event)) return;
        ++all;
        ReportLine entry{
            Weight::item,
            fmt::format("{}  {} {}", event.wall_time.substr(0, 16), event.actor, event_words(event)),
            std::nullopt,
            listed.interview,
            std::nullopt,
            "",
            ""};
        entry.text += claim_words(state, event);
        if (!event.why.empty()) entry.text += ": " + event.why;
        entry.text = one_line(entry.text);
        if (event.target_kind == "claim") entry.claim = parse_id(event.target);
        newest.push_front(std::move(entry));
        if (newest.size() > kMost) newest.pop_back();
      });
  report.lines.assign(newest.begin(), newest.end());
  report.title = all > kMost ? fmt::format("The last {} of {} acts, newest first; {}", kMost, all, withheld)
                             : fmt::format("{}, newest first; {}", counted(all, "act"), withheld);
  return report;
}

/// The sentence of a turn that holds the first of the words, else its first.
Sentence sentence_with(const OpenTranscript& open, const SearchHit& hit, const std::string& words) {
  std::string first = fold(words.substr(0, words.find(' ')));
  std::erase_if(first, [](char c) { return c == '"' || c == '*'; });
  Sentence found;
  found.range = hit.range;
  bool any = false;
  for (const Sentence& sentence : open.stored.sentences) {
    if (sentence.utterance != hit.utterance) continue;
    const bool holds = fold(open.index->slice(sentence.range)).find(first) != std::string::npos;
    if (!any || holds) found = sentence;
    any = true;
    if (holds) break;
  }
  return found;
}

/// The talk around the words found.
Report found_words(const CodingDesk::State& state, const std::string& words) {
  constexpr std::size_t kMost = 500;
  Report report;
  Withholding counting = *state.withholding;
  SearchRequest request;
  request.text = words;
  request.limit = kMost;
  const auto hits = search_talk(state.site, request);
  for (const SearchHit& hit : hits) {
    if (!counting.may_show(hit.interview, {hit.range})) continue;
    const OpenTranscript& open = state.maker->turn_to(hit.interview, 0);
    const Sentence sentence = sentence_with(open, hit, words);
    const auto at = time_at(open.stored.transcript, sentence.range.begin);
    report.lines.push_back({Weight::item,
                            fmt::format("{} {}{}: {}", hit.interview, at ? to_timecode(at->time) + " " : "",
                                        hit.speaker, one_line(open.index->slice(sentence.range))),
                            std::nullopt, hit.interview, sentence.range.begin, "", ""});
  }
  // What was left out is not counted by the words: that would tell what a closed interview holds.
  const std::string withheld = state.withheld_words({});
  report.title =
      fmt::format("{}{}{}{}", counted(report.lines.size(), "turn"), hits.size() == kMost ? " or more" : "",
                  withheld.empty() ? "" : "; not searched: ", withheld);
  if (report.lines.empty())
    add_line(report, Weight::caution,
             "Nobody says this in what may be shown. A word that ends in * is a beginning.");
  return report;
}

}  // namespace

Result<Report> CodingDesk::report(ReportKind kind, const std::string& subject) const {
  const State& state = *state_;
  switch (kind) {
    case ReportKind::said_about: {
      const auto said = said_about(state.site, subject, TellingOrder::event, state.surroundings);
      if (!said) return said.error();
      return said_report(*said);
    }
    case ReportKind::search:
      return found_words(state, subject);
    case ReportKind::journal:
      return journal(state);
    case ReportKind::cautions:
      return cautions();
    case ReportKind::contradictions:
      return contradiction_report(state.site, state.surroundings);
    case ReportKind::entry:
      return entry_report(state, subject);
    case ReportKind::differences:
      return difference_report(state);
    case ReportKind::configuration:
      return configuration_report_on(state.site, subject, state.surroundings);
    case ReportKind::open_questions: {
      const auto open = open_questions(state.site, state.surroundings);
      if (!open) return open.error();
      return question_report(*open, open->questions.size(), "");
    }
  }
  throw std::logic_error("a kind of report without a report");
}

}  // namespace witnessmark
