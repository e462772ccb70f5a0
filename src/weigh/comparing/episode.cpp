#include "witnessmark/weigh/episode.h"

#include <algorithm>

// One episode of a fixture is two days: the day it came and the day it went. A statement allows some pairs of
// such days. Holding two statements against each other is then plain arithmetic on two spans: one follows
// from the other when its spans contain the other's, and they cannot both hold when the spans of the day it
// came, or of the day it went, share no day. Only "not there" is not a pair of spans but two of them, before
// and after the episode.

namespace witnessmark {
namespace {

bool any_disjoint(const EpisodeLimits& a, const EpisodeLimits& b) {
  return disjoint(a.came, b.came) || disjoint(a.went, b.went);
}

/// A thing goes no earlier than it comes, so a limit on one day limits the other.
EpisodeLimits tightened(EpisodeLimits limits) {
  if (limits.came.low && (!limits.went.low || *limits.went.low < *limits.came.low))
    limits.went.low = limits.came.low;
  if (limits.went.high && (!limits.came.high || *limits.came.high > *limits.went.high))
    limits.came.high = limits.went.high;
  return limits;
}

std::vector<EpisodeLimits> there(const DaySpan& days, Reading reading) {
  // Within: came by the last of the days and went not before the first. Throughout: the other way about.
  if (reading == Reading::within) return {tightened({{std::nullopt, days.high}, {days.low, std::nullopt}})};
  return {tightened({{std::nullopt, days.low}, {days.high, std::nullopt}})};
}

std::vector<EpisodeLimits> not_there(const DaySpan& days, Reading reading) {
  const auto first = reading == Reading::within ? days.low : days.high;
  const auto last = reading == Reading::within ? days.high : days.low;
  std::vector<EpisodeLimits> alternatives;
  alternatives.push_back(tightened({{first, std::nullopt}, {}}));  // came only then or later
  alternatives.push_back(tightened({{}, {std::nullopt, last}}));   // had gone by then
  return alternatives;
}

}  // namespace

bool disjoint(const DaySpan& a, const DaySpan& b) {
  return (a.high && b.low && *a.high < *b.low) || (b.high && a.low && *b.high < *a.low);
}

bool inside(const DaySpan& inner, const DaySpan& outer) {
  const bool low = !outer.low || (inner.low && *inner.low >= *outer.low);
  const bool high = !outer.high || (inner.high && *inner.high <= *outer.high);
  return low && high;
}

std::vector<EpisodeLimits> episode_limits(Statement statement, const DaySpan& days, Reading reading) {
  switch (statement) {
    case Statement::begins:
      return {tightened({days, {}})};
    case Statement::ends:
      return {tightened({{}, days})};
    case Statement::present:
    case Statement::count:
    case Statement::attribute:
      return there(days, reading);
    case Statement::absent:
      return not_there(days, reading);
    case Statement::happened:
    case Statement::located:
      return {};
  }
  return {};
}

EpisodeLimits intersection(EpisodeLimits a, const EpisodeLimits& b) {
  const auto narrow = [](DaySpan& span, const DaySpan& by) {
    if (by.low) span.low = span.low ? std::max(*span.low, *by.low) : *by.low;
    if (by.high) span.high = span.high ? std::min(*span.high, *by.high) : *by.high;
  };
  narrow(a.came, b.came);
  narrow(a.went, b.went);
  return tightened(a);
}

bool possible(const EpisodeLimits& limits) {
  const auto sound = [](const DaySpan& span) { return !span.low || !span.high || *span.low <= *span.high; };
  return sound(limits.came) && sound(limits.went);
}

std::vector<EpisodeLimits> other_than(Statement change, const DaySpan& days) {
  std::vector<EpisodeLimits> alternatives;
  const auto add = [&](const DaySpan& span) {
    for (EpisodeLimits& limits : episode_limits(change, span, Reading::within)) alternatives.push_back(limits);
  };
  if (days.low) add({std::nullopt, *days.low - 1});
  if (days.high) add({*days.high + 1, std::nullopt});
  return alternatives;
}

Answer follows(const std::vector<EpisodeLimits>& possible_claim,
               const std::vector<EpisodeLimits>& certain_claim, const std::vector<EpisodeLimits>& given) {
  // The claim is out of the question when none of its alternatives can hold together with any that is given.
  // It follows only when every alternative that is given lies inside one that is certain.
  bool can_both_hold = false;
  bool always = !given.empty();
  for (const EpisodeLimits& fact : given) {
    bool contained = false;
    for (const EpisodeLimits& story : possible_claim)
      can_both_hold = can_both_hold || (!any_disjoint(fact, story) && possible(intersection(fact, story)));
    for (const EpisodeLimits& story : certain_claim)
      contained = contained || (inside(fact.came, story.came) && inside(fact.went, story.went));
    always = always && contained;
  }
  if (!can_both_hold) return Answer::no;
  return always ? Answer::yes : Answer::cannot_tell;
}

}  // namespace witnessmark
