// One claim in full: the words in their talk, what was read from them and why, how it was told, and each
// entry of the register it was held against, with all of them on one scale of time.
#include <fmt/core.h>

#include "terminal/timeline.h"
#include "terminal/view/panels.h"
#include "witnessmark/app/claim_words.h"

namespace witnessmark {
namespace {

using Blocks = std::vector<Block>;

void labelled(Blocks& blocks, std::string_view label, const std::string& text, Role role = Role::plain) {
  if (text.empty()) return;
  constexpr int kLabel = 11;
  blocks.push_back({{{fmt::format("{:<{}}", label, kLabel), Role::label}, {text, role}}, kLabel, true});
}

/// The last words before the quote and the first after it, from a blank on.
std::string tail(const std::string& text) {
  constexpr std::size_t kMost = 160;
  std::string shown = one_line(text);
  if (shown.size() <= kMost) return shown;
  const auto blank = shown.find(' ', shown.size() - kMost);
  return blank == std::string::npos ? "" : "…" + shown.substr(blank);
}

std::string head(const std::string& text) {
  constexpr std::size_t kMost = 120;
  std::string shown = one_line(text);
  if (shown.size() <= kMost) return shown;
  const auto blank = shown.rfind(' ', kMost);
  return blank == std::string::npos ? "" : shown.substr(0, blank) + " …";
}

void add_quote(Blocks& blocks, const ClaimPageFull& page) {
  const ClaimRecord& record = page.record;
  const std::string time =
      page.line.at ? time_words(TimeRange{page.line.at->time, page.line.at->time}, page.line.at->timing) : "";
  blocks.push_back(paragraph(
      fmt::format("{}, {}{}{}", record.narrator, record.interview_date, time.empty() ? "" : ", ", time),
      Role::label));
  const std::string quote = record.quotes.empty() ? "" : one_line(record.quotes.front().text);
  blocks.push_back({{{tail(page.before) + " ", Role::faint},
                     {"“" + quote + "”", Role::mark},
                     {" " + head(page.after), Role::faint}},
                    2,
                    true});
  for (std::size_t i = 1; i < record.quotes.size(); ++i) {
    const QuoteRecord& more = record.quotes[i];
    const std::string who = more.own ? "  and " : "  " + one_line(speaker_words(more)) + ": ";
    blocks.push_back({{{who, Role::label}, {"“" + one_line(more.text) + "”", Role::mark}}, 2, true});
  }
}

void add_reading(Blocks& blocks, const ClaimPageFull& page) {
  const Claim& claim = page.record.claim;
  labelled(blocks, "Statement", what_words(page.record));
  std::string when = page.meaning.empty() ? "no date that could be resolved" : page.meaning;
  if (!claim.when.dated.value && claim.when.dated.written.empty()) when = "no date";
  if (claim.when.dated.value && to_string(*claim.when.dated.value) != when)
    when += fmt::format(" (EDTF {})", to_string(*claim.when.dated.value));
  if (claim.when.carried) when += ", carried from the talk before";
  if (!claim.when.anchor.empty()) when += fmt::format(", from {}", claim.when.anchor);
  for (const std::string& other : claim.when.alternatives) when += "; or " + other;
  constexpr std::string_view kCoder = "coder: ";
  if (claim.when.rule.starts_with(kCoder))
    when += fmt::format(", as a coder has it (typed “{}”)", claim.when.rule.substr(kCoder.size()));
  labelled(blocks, "When", when);
  labelled(blocks, "Knows it", how_words(claim));
  labelled(blocks, "Recall", recall_words(page.record.recall));
  std::string status(in_words(claim.status));
  if (!page.record.coded_by.empty())
    status += fmt::format(", by {} {}", page.record.coded_by, page.record.coded_at.substr(0, 10));
  labelled(blocks, "Status", status, claim.status == ClaimStatus::said_so ? Role::good : Role::plain);
  labelled(blocks, "Checked", page.checked);
  labelled(blocks, "Read from", claim.reason, Role::faint);
  std::string cues;
  for (const CueLine& cue : page.cues)
    if (cue.kind == MentionKind::cue)
      cues += fmt::format("{}“{}” {}", cues.empty() ? "" : ", ", cue.words, cue.value);
  labelled(blocks, "Cues", cues, Role::faint);
  for (const NoteLine& note : page.notes)
    labelled(blocks, "Note", fmt::format("{} ({}, {})", note.text, note.by, note.when));
}

Role role_of(Outcome outcome) {
  if (outcome == Outcome::agrees) return Role::good;
  return outcome == Outcome::conflicts ? Role::bad : Role::plain;
}

Blocks evidence_blocks(const ClaimPageFull& page, int columns) {
  Blocks blocks;
  std::vector<TimelineRow> rows = {{"claim", page.record.claim.when.period, Role::mark}};
  for (const EvidenceLine& line : page.evidence)
    if (!line.comparison.entry.empty())
      rows.push_back({line.comparison.entry, line.period, role_of(line.comparison.outcome)});
  for (const BoundLine& bound : page.bounds) rows.push_back({bound.label, bound.period, Role::plain});
  for (Block& block : timeline(rows, columns)) blocks.push_back(std::move(block));
  std::size_t n = 0;
  for (const EvidenceLine& line : page.evidence) {
    ++n;
    const Comparison& comparison = line.comparison;
    if (comparison.entry.empty()) {
      blocks.push_back(paragraph(comparison.explanation, Role::plain, 2));
      continue;
    }
    std::string words = fmt::format("{}. {}: ", n, in_words(comparison.outcome));
    if (!line.link.empty()) words += fmt::format("({}) ", line.link);
    blocks.push_back(
        {{{words, role_of(comparison.outcome)}, {one_line(comparison.explanation), Role::plain}}, 3, true});
    blocks.push_back({{{fmt::format("   {} {}, {}; {}{}", line.kind, comparison.entry, line.source,
                                    line.reference, comparison.circular ? "; no independent witness" : ""),
                        Role::faint}},
                      3,
                      true});
  }
  for (const BoundLine& bound : page.bounds)
    blocks.push_back(
        paragraph(fmt::format("{}{}, from the register alone: there {}", bound.label,
                              bound.place.empty() ? "" : " at " + bound.place, describe(bound.period)),
                  Role::plain, 3));
  if (page.evidence.empty())
    blocks.push_back(
        paragraph("Not weighed yet: witnessmark weigh holds it against the register.", Role::faint));
  return blocks;
}

}  // namespace

std::vector<Panel> panels_of(const State& state, const ClaimPlace& place) {
  if (!place.page) return {Panel{"", {paragraph("…")}, std::nullopt, 0, true, 1}};
  const ClaimPageFull& page = *place.page;
  Panel told{"What was told", {}, std::nullopt, place.scroll, true, 1};
  add_quote(told.blocks, page);
  add_reading(told.blocks, page);
  const bool beside = state.size.columns >= 100;
  const int columns = beside ? (state.size.columns - 3) / 2 : state.size.columns;
  Panel evidence{"Held against the register", evidence_blocks(page, columns), std::nullopt, 0, false, 1};
  for (const std::string& act : page.history) evidence.blocks.push_back(paragraph(act, Role::faint, 2));
  if (beside) {
    evidence.scroll = place.scroll;
    return {told, evidence};
  }
  // One above the other in a single text, so that all of it can be read on a small screen.
  told.blocks.push_back(paragraph("-- Held against the register", Role::label));
  told.blocks.insert(told.blocks.end(), evidence.blocks.begin(), evidence.blocks.end());
  return {told};
}

}  // namespace witnessmark
