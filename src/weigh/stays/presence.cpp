// Whether a fixture was there is asked by refuting the contrary: that it lay between two stays for a part of
// the time (or before the first, or after the last), and that one of its stays touched the time. What refutes
// it is on whose word the answer rests. Where statements contradict one another, those that stand in no
// contradiction are asked first, and then each of the others beside them.
#include "witnessmark/weigh/presence.h"

#include <fmt/core.h>

#include <algorithm>
#include <set>

#include "weigh/stays/conflict_search.h"
#include "weigh/stays/stay_problem.h"
#include "witnessmark/time/period.h"

namespace witnessmark {
namespace {

using Numbers = std::vector<std::size_t>;

std::string words(Day day) {
  return describe(exact_period(day, day + 1));
}

class Asker {
 public:
  Asker(const StayEvidence& evidence, const StayGroup& group, Day first, Day last)
      : evidence_(evidence), group_(group), problem_(evidence, group), first_(first), last_(last) {}

  PresenceAnswer ask(std::size_t fixture, Footing weakest) {
    fixture_ = fixture;
    weakest_ = weakest;
    PresenceAnswer answer = ask();
    const bool attested =
        answer.presence == Presence::attested_there || answer.presence == Presence::attested_absent;
    if (answer.presence != Presence::no_evidence && !attested) add_renewals(answer);
    return answer;
  }

 private:
  PresenceAnswer ask() {
    Numbers all;
    for (std::size_t i = 0; i < problem_.size(); ++i)
      if (at(i).footing <= weakest_) all.push_back(i);
    if (!speaks_of_it(all)) return {};
    const Answer consistent = problem_.can_hold(all);
    if (consistent == Answer::cannot_tell)
      return {Presence::cannot_tell, {}, {}, "there are more ways to read the statements than are tried"};
    if (consistent == Answer::yes) return settle(all);
    if (!conflicts_) conflicts_ = find_conflicts(problem_);
    const auto contested = weakest_of_conflicts(evidence_, problem_, *conflicts_, all);
    Numbers rest;
    for (const std::size_t number : all)
      if (!contested.contains(number)) rest.push_back(number);
    if (problem_.can_hold(rest) != Answer::yes) rest.clear();
    const bool of_this = speaks_of_it({contested.begin(), contested.end()});
    return of_this || rest.empty() ? settle_contested(rest, contested) : settle(rest);
  }

  const FixtureStatement& at(std::size_t number) const {
    return evidence_.statements()[problem_.statement(number)];
  }
  int episodes() const { return problem_.episodes(fixture_); }

  bool speaks_of_it(const Numbers& numbers) const {
    const auto& bearings = group_.fixtures[fixture_].bearings;
    return std::any_of(numbers.begin(), numbers.end(), [&](std::size_t number) {
      return std::any_of(bearings.begin(), bearings.end(),
                         [&](const Bearing& one) { return one.statement == problem_.statement(number); });
    });
  }

  DayLimit no_later(bool went, int episode, Day day) const {
    return {{fixture_, episode, went}, {std::nullopt, day.value}};
  }
  DayLimit no_earlier(bool went, int episode, Day day) const {
    return {{fixture_, episode, went}, {day.value, std::nullopt}};
  }

  /// It was not there for all of the time: gone before its end, the next stay begun after its beginning.
  std::vector<std::vector<DayLimit>> ways_not_there() const {
    std::vector<std::vector<DayLimit>> ways;
    for (int next = 0; next <= episodes(); ++next) {
      auto& way = ways.emplace_back();
      if (next > 0) way.push_back(no_later(true, next - 1, last_ - 1));
      if (next < episodes()) way.push_back(no_earlier(false, next, first_ + 1));
    }
    return ways;
  }

  /// It was there at some part of the time.
  std::vector<std::vector<DayLimit>> ways_there() const {
    std::vector<std::vector<DayLimit>> ways;
    for (int episode = 0; episode < episodes(); ++episode)
      ways.push_back({no_later(false, episode, last_), no_earlier(true, episode, first_)});
    return ways;
  }

  /// On whose word none of the ways can be; nothing when one can.
  std::optional<std::set<std::size_t>> refuted(const Numbers& numbers,
                                               const std::vector<std::vector<DayLimit>>& ways) const {
    std::set<std::size_t> by;
    for (const auto& way : ways) {
      if (problem_.can_hold(numbers, way) != Answer::no) return std::nullopt;
      for (const std::size_t number : problem_.refuting(numbers, way)) by.insert(number);
    }
    return by;
  }

  std::vector<StatementKey> keys(const std::set<std::size_t>& numbers) const {
    std::vector<StatementKey> found;
    for (const std::size_t number : numbers) found.push_back(at(number).key);
    return found;
  }

  /// What is in a part of the place is in the place; what is not in a place around it is not in it.
  bool of_the_place(std::size_t statement, bool there) const {
    const auto& bearings = group_.fixtures[fixture_].bearings;
    const auto bearing = std::find_if(bearings.begin(), bearings.end(),
                                      [&](const Bearing& one) { return one.statement == statement; });
    if (bearing == bearings.end()) return false;
    return bearing->relation == PlaceRelation::same ||
           bearing->relation == (there ? PlaceRelation::inside : PlaceRelation::around);
  }

  /// Statements whose own time is the time asked about: within it, or throughout all of it.
  std::set<std::size_t> of_that_time(const Numbers& numbers, bool there) const {
    std::set<std::size_t> found;
    for (const std::size_t number : numbers) {
      const FixtureStatement& one = at(number);
      if (one.denied || !one.period || (one.statement == Statement::absent) == there) continue;
      if (!of_the_place(problem_.statement(number), there)) continue;
      const auto earliest = one.period->earliest(), past = one.period->past_latest();
      const bool inside = earliest && past && first_ <= *earliest && *past <= last_ + 1;
      const bool covers = one.reading == Reading::throughout && one.period->surely_covers(first_, last_ + 1);
      if (inside || covers) found.insert(number);
    }
    return found;
  }

  PresenceAnswer settle(const Numbers& numbers) const {
    if (const auto by = refuted(numbers, ways_not_there())) {
      const auto attesting = of_that_time(numbers, true);
      if (attesting.empty()) return {Presence::inferred_there, keys(*by), {}, why_there(numbers)};
      return {Presence::attested_there, keys(attesting), {}, ""};
    }
    if (const auto by = refuted(numbers, ways_there())) {
      const auto attesting = of_that_time(numbers, false);
      PresenceAnswer answer{Presence::attested_absent, keys(attesting), {}, ""};
      if (attesting.empty()) answer = {Presence::inferred_absent, keys(*by), {}, why_absent(numbers)};
      answer.yet = events_while_absent(numbers);
      return answer;
    }
    return open(numbers);
  }

  /// As many of the contested statements as can be true together with the rest, taken up in order of
  /// presentation but for the one that is taken up first.
  Numbers most_with(std::size_t first, const Numbers& rest, const std::set<std::size_t>& contested) const {
    Numbers together = rest;
    const auto take_up = [&](std::size_t number) {
      Numbers with = together;
      with.insert(std::upper_bound(with.begin(), with.end(), number), number);
      if (problem_.can_hold(with) == Answer::yes) together = std::move(with);
    };
    take_up(first);
    for (const std::size_t number : contested)
      if (!std::binary_search(together.begin(), together.end(), number)) take_up(number);
    return together;
  }

  /// What follows whichever of the contested statements one goes by.
  PresenceAnswer settle_contested(const Numbers& rest, const std::set<std::size_t>& contested) const {
    std::set<Numbers> choices;
    for (const std::size_t first : contested) choices.insert(most_with(first, rest, contested));
    std::set<std::size_t> there, absent;
    bool open_too = false;
    for (const Numbers& choice : choices) {
      const auto by_there = refuted(choice, ways_not_there());
      const auto by_absent = by_there ? std::nullopt : refuted(choice, ways_there());
      const auto keep = [&](const std::set<std::size_t>& by, bool is_there, std::set<std::size_t>& all) {
        all.insert(by.begin(), by.end());
        for (const std::size_t number : of_that_time(choice, is_there)) all.insert(number);
      };
      if (by_there) keep(*by_there, true, there);
      if (by_absent) keep(*by_absent, false, absent);
      open_too = open_too || (!by_there && !by_absent);
    }
    if (!there.empty() && !absent.empty())
      return {Presence::contradicted, keys(there), keys(absent), "not all of these can be true"};
    constexpr std::string_view kWhichever =
        "whichever of the statements that contradict one another is right";
    if (!there.empty() && !open_too) return {attested(there, true), keys(there), {}, std::string(kWhichever)};
    if (!absent.empty() && !open_too)
      return {attested(absent, false), keys(absent), {}, std::string(kWhichever)};
    there.insert(absent.begin(), absent.end());
    return {Presence::cannot_tell, keys(there), {}, "statements that contradict one another leave it open"};
  }

  Presence attested(const std::set<std::size_t>& by, bool there) const {
    const bool of_the_time = !of_that_time({by.begin(), by.end()}, there).empty();
    if (there) return of_the_time ? Presence::attested_there : Presence::inferred_there;
    return of_the_time ? Presence::attested_absent : Presence::inferred_absent;
  }

  struct Limits {
    std::optional<Day> came_earliest, came_latest, went_earliest, went_latest;
  };
  std::vector<Limits> limits(const Numbers& numbers) const {
    std::vector<Limits> found;
    const auto solution = problem_.solve(numbers);
    for (const auto& stay : solution.stays[fixture_])
      found.push_back(stay.came && stay.went ? Limits{stay.came->earliest, stay.came->latest,
                                                      stay.went->earliest, stay.went->latest}
                                             : Limits{});
    return found;
  }

  std::string why_there(const Numbers& numbers) const {
    for (const Limits& stay : limits(numbers))
      if (stay.came_latest && stay.went_earliest && *stay.came_latest <= first_ &&
          *stay.went_earliest >= last_)
        return fmt::format("come by {}, not gone before {}", words(*stay.came_latest),
                           words(*stay.went_earliest));
    return "";
  }

  std::string why_absent(const Numbers& numbers) const {
    std::string text;
    for (const Limits& stay : limits(numbers)) {
      if (stay.went_latest && *stay.went_latest < first_)
        text = fmt::format("gone by {}", words(*stay.went_latest));
      if (stay.came_earliest && *stay.came_earliest > last_)
        return text +
               fmt::format("{}not come before {}", text.empty() ? "" : ", ", words(*stay.came_earliest));
    }
    return text;
  }

  const FixtureStatement& stated(const Bearing& bearing) const {
    return evidence_.statements()[bearing.statement];
  }

  /// What happened to it in the stretch, about the time asked, in which it was not there.
  std::vector<StatementKey> events_while_absent(const Numbers& numbers) const {
    std::optional<Day> gone, come;
    for (const Limits& stay : limits(numbers)) {
      if (stay.went_latest && *stay.went_latest <= first_) gone = stay.went_latest;
      if (stay.came_earliest && *stay.came_earliest >= last_ && !come) come = stay.came_earliest;
    }
    std::vector<StatementKey> found;
    for (const Bearing& bearing : group_.fixtures[fixture_].bearings) {
      const FixtureStatement& one = stated(bearing);
      const bool event = one.no_limit == NoLimit::event || one.no_limit == NoLimit::property;
      const bool surely_of_it = one.key.kind == StatementKey::Kind::claim || !one.days.empty();
      if (!event || !surely_of_it || bearing.shows_there || one.denied || one.footing > weakest_ ||
          bearing.relation == PlaceRelation::around || !one.period)
        continue;
      const auto first = one.period->earliest(), past = one.period->past_latest();
      if (first && past && (!gone || *first > *gone) && (!come || *past <= *come)) found.push_back(one.key);
    }
    return found;
  }

  /// Whether the time asked about may be of the stay before the coming: before it, and not before that stay came.
  bool asked_before(const Renewal& renewal) const {
    const auto past = evidence_.statements()[renewal.come].period->past_latest();
    if (past && first_ >= *past) return false;
    const auto& bearings = group_.fixtures[fixture_].bearings;
    return std::none_of(bearings.begin(), bearings.end(), [&](const Bearing& one) {
      const bool came = stated(one).statement == Statement::begins && !one.shows_there;
      return came && one.episode == renewal.episode - 1 && stated(one).days.front().low && *stated(one).days.front().low > last_.value;
    });
  }

  /// Why a coming after the time asked about is none of this stay.
  void add_renewals(PresenceAnswer& answer) const {
    for (const Renewal& renewal : group_.fixtures[fixture_].renewals) {
      if (!asked_before(renewal)) continue;
      const FixtureStatement& there = evidence_.statements()[renewal.there];
      const FixtureStatement& come = evidence_.statements()[renewal.come];
      answer.why += fmt::format(
          "{}taken to have come again {}, for it was there before ({}) and no entry shows it gone between",
          answer.why.empty() ? "" : "; ", describe(*come.period), describe(*there.period));
      for (const FixtureStatement* one : {&there, &come})
        if (std::find(answer.on_whose_word.begin(), answer.on_whose_word.end(), one->key) ==
            answer.on_whose_word.end())
          answer.on_whose_word.push_back(one->key);
    }
    if (group_.fixtures[fixture_].renewals.empty()) return;
    const auto& bearings = group_.fixtures[fixture_].bearings;
    const auto place = [&](const StatementKey& key) {
      return std::find_if(bearings.begin(), bearings.end(), [&](const Bearing& one) { return stated(one).key == key; });
    };
    std::stable_sort(answer.on_whose_word.begin(), answer.on_whose_word.end(),
                     [&](const StatementKey& a, const StatementKey& b) { return place(a) < place(b); });
  }

  /// It may have been there: when it can have come and gone about that time.
  PresenceAnswer open(const Numbers& numbers) const {
    PresenceAnswer answer{Presence::cannot_tell, {}, {}, ""};
    const auto add = [&](std::string text) {
      answer.why += (answer.why.empty() ? "" : "; ") + std::move(text);
    };
    const auto about = [&](std::string_view what, const std::optional<Day>& from,
                           const std::optional<Day>& to) {
      const bool within = from && to && first_ <= *from && *to <= last_;
      if (within) answer.presence = Presence::changed;
      if (within && *from == *to)
        add(fmt::format("{} on {}", what, words(*from)));
      else if (from && to)
        add(fmt::format("{} between {} and {}", what, words(*from), words(*to)));
      else if (from)
        add(fmt::format("{} no earlier than {}", what, words(*from)));
      else if (to)
        add(fmt::format("{} by {}", what, words(*to)));
    };
    std::set<std::size_t> by;
    const auto rests_on = [&](const DayLimit& opposite) {
      for (const std::size_t number : problem_.refuting(numbers, {opposite})) by.insert(number);
    };
    int episode = 0;
    for (const Limits& stay : limits(numbers)) {
      const bool may_come = (!stay.came_latest || *stay.came_latest > first_) &&
                            (!stay.came_earliest || *stay.came_earliest <= last_);
      const bool may_go = (!stay.went_earliest || *stay.went_earliest < last_) &&
                          (!stay.went_latest || *stay.went_latest >= first_);
      if (may_come && stay.came_latest && !stay.came_earliest) {
        add(fmt::format("first known there {}, nothing says when it came", words(*stay.came_latest)));
        rests_on(no_earlier(false, episode, *stay.came_latest + 1));
      } else if (may_come) {
        about(episode == 0 ? "came" : "came again", stay.came_earliest, stay.came_latest);
        if (stay.came_latest) rests_on(no_earlier(false, episode, *stay.came_latest + 1));
        if (stay.came_earliest) rests_on(no_later(false, episode, *stay.came_earliest - 1));
      }
      if (may_go && stay.went_earliest && !stay.went_latest) {
        add(fmt::format("not gone before {}, nothing says when it went", words(*stay.went_earliest)));
        rests_on(no_later(true, episode, *stay.went_earliest - 1));
      } else if (may_go) {
        about("went", stay.went_earliest, stay.went_latest);
        if (stay.went_latest) rests_on(no_earlier(true, episode, *stay.went_latest + 1));
        if (stay.went_earliest) rests_on(no_later(true, episode, *stay.went_earliest - 1));
      }
      ++episode;
    }
    if (answer.why.empty()) answer.why = "nothing says when it came or whether it ever did";
    for (const bool there : {true, false})
      for (const std::size_t number : of_that_time(numbers, there)) by.insert(number);
    answer.on_whose_word = keys(by);
    return answer;
  }

  const StayEvidence& evidence_;
  const StayGroup& group_;
  StayProblem problem_;
  Day first_, last_;
  std::size_t fixture_ = 0;
  Footing weakest_ = Footing::reviewed;
  std::optional<Conflicts> conflicts_;
};

}  // namespace

std::string_view to_string(Presence presence) {
  switch (presence) {
    case Presence::attested_there:
      return "attested there";
    case Presence::inferred_there:
      return "inferred there";
    case Presence::attested_absent:
      return "attested absent";
    case Presence::inferred_absent:
      return "inferred absent";
    case Presence::changed:
      return "changed";
    case Presence::cannot_tell:
      return "cannot tell";
    case Presence::contradicted:
      return "contradicted";
    case Presence::no_evidence:
      return "no evidence";
  }
  return "";
}

std::string_view in_words(Presence presence) {
  switch (presence) {
    case Presence::attested_there:
      return "there, by a statement of that time";
    case Presence::inferred_there:
      return "there, between dates";
    case Presence::attested_absent:
      return "not there, by a statement of that time";
    case Presence::inferred_absent:
      return "not there, by other dates";
    case Presence::changed:
      return "came or went within that time";
    case Presence::cannot_tell:
      return "cannot tell";
    case Presence::contradicted:
      return "contradicted";
    case Presence::no_evidence:
      return "no evidence";
  }
  return "";
}

bool is_there(Presence presence) {
  return presence == Presence::attested_there || presence == Presence::inferred_there;
}

bool is_absent(Presence presence) {
  return presence == Presence::attested_absent || presence == Presence::inferred_absent;
}

std::vector<FixturePresence> presence(const StayEvidence& evidence, const StayGroup& group, Day first,
                                      Day last) {
  Asker asker(evidence, group, first, last);
  std::vector<FixturePresence> found;
  for (std::size_t f = 0; f < group.fixtures.size(); ++f)
    found.push_back({group.fixtures[f].subject, group.fixtures[f].place, group.fixtures[f].property,
                     asker.ask(f, Footing::reviewed), asker.ask(f, Footing::proposed)});
  return found;
}

}  // namespace witnessmark
