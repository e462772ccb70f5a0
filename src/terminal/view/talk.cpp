// The transcript: each turn's speaker and time, its sentences beneath, with the claims that rest on them;
// beside it the claims in the order of the talk.
#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "terminal/view/panels.h"
#include "witnessmark/base/code_point_index.h"
#include "witnessmark/base/counted.h"

namespace witnessmark {
namespace {

constexpr std::size_t kAround = 60;           // sentences and claims drawn before and after the cursor
constexpr std::int64_t kTimedEvery = 30'000;  // within a turn the time stands at least so often

/// The ranges of quotes within a sentence, in order, joined where they touch.
std::vector<CodePointRange> quoted(const State& state, const TranscriptPage& page, CodePointRange sentence) {
  std::vector<CodePointRange> ranges;
  for (const ClaimLine& claim : page.claims) {
    if (hidden(state, claim)) continue;
    for (const CodePointRange& quote : claim.quotes) {
      const CodePointRange part{std::max(quote.begin, sentence.begin), std::min(quote.end, sentence.end)};
      if (part.begin < part.end) ranges.push_back(part);
    }
  }
  std::sort(ranges.begin(), ranges.end());
  std::vector<CodePointRange> joined;
  for (const CodePointRange& range : ranges) {
    if (!joined.empty() && range.begin <= joined.back().end)
      joined.back().end = std::max(joined.back().end, range.end);
    else
      joined.push_back(range);
  }
  return joined;
}

/// The signs of the claims that begin in a sentence, such as ".+".
std::string signs(const State& state, const TranscriptPage& page, CodePointRange sentence) {
  std::string text;
  for (const ClaimLine& claim : page.claims)
    if (!hidden(state, claim) && sentence.contains(claim.quotes.front().begin)) text += sign_of(claim.status);
  return text;
}

bool restricted(const TranscriptPage& page, CodePointRange range) {
  return std::any_of(page.passages.begin(), page.passages.end(), [&](const RestrictedPassage& passage) {
    return passage.conditions.access != Access::open && passage.range.overlaps(range);
  });
}

Block sentence_block(const State& state, const TranscriptPlace& place, std::size_t n) {
  const TranscriptPage& page = *place.page;
  const SentencePlace& sentence = place.sentences[n];
  const TurnLine& turn = page.turns[sentence.turn];
  const std::int64_t first = turn.range.begin.value;
  const CodePointIndex index(turn.text);
  const auto words = [&](CodePoint begin, CodePoint end) {
    return std::string(index.slice({{begin.value - first}, {end.value - first}}));
  };
  const std::size_t from = place.picked_from.value_or(place.at);
  const bool picked = place.picked_from && n >= std::min(from, place.at) && n <= std::max(from, place.at);
  Block block{{}, 5, true};
  const std::string mark =
      fmt::format("{:<3}{} ", signs(state, page, sentence.range).substr(0, 3), picked ? "#" : " ");
  block.spans.push_back({mark, Role::label});
  if (restricted(page, sentence.range)) block.spans.push_back({"[restricted] ", Role::warning});
  CodePoint at = sentence.range.begin;
  const Role plain = picked                                  ? Role::picked
                     : turn.role == SpeakerRole::interviewer ? Role::faint
                                                             : Role::plain;
  for (const CodePointRange& quote : quoted(state, page, sentence.range)) {
    block.spans.push_back({words(at, quote.begin), plain});
    block.spans.push_back({words(quote.begin, quote.end), Role::mark});
    at = quote.end;
  }
  block.spans.push_back({words(at, sentence.range.end), plain});
  return block;
}

std::string time_of(const std::optional<TimeAt>& at) {
  return at ? fmt::format("{}{} ", at->timing == Timing::interpolated ? "about " : "", to_timecode(at->time))
            : "";
}

/// Who speaks, and when; within a long turn only the time.
Block turn_block(const TurnLine& turn, const SentencePlace& sentence, bool goes_on) {
  const std::string time = time_of(sentence.at);
  if (goes_on) return {{{time, Role::faint}}, 0, false};
  const std::string speaker = turn.speaker.empty() ? "(no speaker named)" : turn.speaker;
  return {{{time, Role::faint}, {speaker, Role::label}, {turn.read ? "  read" : "", Role::faint}}, 0, false};
}

Panel talk_panel(const State& state, const TranscriptPlace& place) {
  Panel panel;
  const TranscriptPage& page = *place.page;
  const std::size_t begin = place.at - std::min(place.at, kAround);
  const std::size_t past = std::min(place.sentences.size(), place.at + kAround);
  std::optional<Millisecond> timed;
  for (std::size_t n = begin; n < past; ++n) {
    const SentencePlace& sentence = place.sentences[n];
    const bool new_turn = n == begin || sentence.turn != place.sentences[n - 1].turn;
    const bool late = timed && sentence.at && sentence.at->time.value - timed->value >= kTimedEvery;
    if (new_turn || late) {
      panel.blocks.push_back(turn_block(page.turns[sentence.turn], sentence, !new_turn));
      timed = sentence.at ? std::optional(sentence.at->time) : std::nullopt;
    }
    if (n == place.at) panel.focus = panel.blocks.size();
    panel.blocks.push_back(sentence_block(state, place, n));
  }
  panel.title = fmt::format("What was said, version {}{}", page.version,
                            page.hides_passages ? "; passages withheld, O opens them" : "");
  panel.active = !place.on_claims;
  panel.weight = 3;
  return panel;
}

Panel claims_panel(const State& state, const TranscriptPlace& place) {
  Panel panel;
  const auto& claims = place.page->claims;
  const auto left_out = static_cast<std::size_t>(std::count_if(
      claims.begin(), claims.end(), [&](const ClaimLine& claim) { return hidden(state, claim); }));
  const std::size_t begin = place.claim - std::min(place.claim, kAround);
  for (std::size_t n = begin; n < std::min(claims.size(), place.claim + kAround); ++n) {
    if (hidden(state, claims[n])) continue;
    if (n == place.claim) panel.focus = panel.blocks.size();
    Line line = claim_line(claims[n]);
    if (n == place.claim && place.on_claims) add_words(line, claims[n]);
    if (claims[n].at) line.insert(line.begin(), {to_timecode(claims[n].at->time) + " ", Role::faint});
    panel.blocks.push_back({std::move(line), 4, true});
  }
  panel.title = fmt::format("{}{}", counted(claims.size() - left_out, "claim"),
                            left_out > 0 ? ", proposals hidden" : "");
  if (panel.blocks.empty())
    panel.blocks.push_back(paragraph("None. i adds one over the sentence at the cursor.", Role::faint));
  panel.active = place.on_claims;
  panel.weight = 2;
  return panel;
}

}  // namespace

std::vector<Panel> panels_of(const State& state, const TranscriptPlace& place) {
  if (!place.page) return {Panel{"", {paragraph("…")}, std::nullopt, 0, true, 1}};
  return {talk_panel(state, place), claims_panel(state, place)};
}

}  // namespace witnessmark
