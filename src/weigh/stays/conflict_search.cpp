// Sets are looked for by size: all pairs, then all sets of three and of four that hold no smaller one found
// (of any size where there are few statements), for as long as the number of questions lasts. In a simple
// group every set of three or more holds an either/or: without one, a contradiction is a path of limits
// through the two days of the stay, and two statements give its two ends. What is then left is asked as a
// whole: the statements taken up one after the other in order of presentation, less one of each set found;
// while they cannot all be true a least core of them is one more set.
#include "weigh/stays/conflict_search.h"

#include <algorithm>
#include <functional>
#include <numeric>

#include "weigh/stays/least_core.h"

namespace witnessmark {
namespace {

using Numbers = std::vector<std::size_t>;

class Search {
 public:
  Search(const StayProblem& problem, const ConflictLimits& limits)
      : problem_(problem), limits_(limits), left_(limits.questions) {
    for (std::size_t i = 0; i < problem.size(); ++i) {
      either_or_.push_back(problem.either_or(i));
      if (either_or_.back()) past_either_or_ = i + 1;
    }
  }

  Conflicts run() {
    constexpr std::size_t kFewStatements = 12, kLargestOfMany = 4;
    const std::size_t largest =
        problem_.size() <= kFewStatements ? problem_.size() : std::min(problem_.size(), kLargestOfMany);
    for (std::size_t size = 1; size <= largest; ++size) {
      if (size > 2 && problem_.simple() && past_either_or_ == 0) {
        found_.all_found = true;
        return found_;
      }
      if (!all_of_size(size)) break;
      found_.searched_to = size;
      if (size == 2 && holds_without_conflicts()) break;
    }
    found_.all_found = found_.all_found || found_.searched_to == problem_.size();
    if (!found_.all_found) larger();
    if (found_.more > 0) found_.all_found = false;
    return found_;
  }

 private:
  bool refuted(const Numbers& numbers) {
    --left_;
    const Answer answer = problem_.can_hold(numbers);
    found_.beyond_limit = found_.beyond_limit || answer == Answer::cannot_tell;
    return answer == Answer::no;
  }

  /// No set was found, and all statements can be true.
  bool holds_without_conflicts() {
    if (!found_.sets.empty() || found_.more > 0) return false;
    Numbers all(problem_.size());
    std::iota(all.begin(), all.end(), std::size_t{0});
    --left_;
    found_.all_found = problem_.can_hold(all) == Answer::yes;
    return found_.all_found;
  }

  void keep(const Numbers& set) {
    if (found_.sets.size() >= limits_.sets) {
      ++found_.more;
      return;
    }
    for (const std::size_t number : set) {
      by_member_.resize(problem_.size());
      by_member_[number].push_back(found_.sets.size());
    }
    found_.sets.push_back(set);
  }

  /// Whether the set, whose last member was just added, holds a set found before.
  bool holds_known(const Numbers& set) const {
    if (by_member_.empty()) return false;
    const auto& with_last = by_member_[set.back()];
    return std::any_of(with_last.begin(), with_last.end(), [&](std::size_t known) {
      const Numbers& smaller = found_.sets[known];
      return std::includes(set.begin(), set.end(), smaller.begin(), smaller.end());
    });
  }

  /// A set of three or more of a simple group holds an either/or, and this one has none yet.
  bool lacks_either_or(const Numbers& set, std::size_t size) const {
    return size > 2 && problem_.simple() &&
           std::none_of(set.begin(), set.end(), [&](std::size_t number) { return either_or_[number]; });
  }

  bool all_of_size(std::size_t size) {
    if (found_.more > 0 && size > 2) return false;
    Numbers set;
    return extend(set, 0, size);
  }

  /// In order of presentation; false when the questions have run out.
  bool extend(Numbers& set, std::size_t from, std::size_t size) {
    if (set.size() == size) {
      if (left_ <= 0) return false;
      if (refuted(set)) keep(set);
      return true;
    }
    const bool lacks = lacks_either_or(set, size);
    const std::size_t all = problem_.size() - (size - set.size()) + 1;
    const std::size_t past = lacks ? std::min(all, past_either_or_) : all;
    const bool last = set.size() + 1 == size;
    for (std::size_t next = from; next < past; ++next) {
      if (last && lacks && !either_or_[next]) continue;
      set.push_back(next);
      const bool skip = holds_known(set);
      const bool going = skip || extend(set, next + 1, size);
      set.pop_back();
      if (!going) return false;
    }
    return true;
  }

  /// Sets larger than those searched for by size. Each statement in turn is taken up first, so that each that
  /// stands in such a set has the chance to show it.
  void larger() {
    for (std::size_t first = 0; first < problem_.size() && left_ > 0; ++first) {
      while (left_ > 0 && found_.sets.size() < limits_.sets) {
        const Numbers together = most_without_known(first);
        if (!refuted(together)) break;
        keep(least_core(together, [&](const Numbers& some) { return refuted(some); }));
      }
    }
    std::stable_sort(found_.sets.begin(), found_.sets.end(), [](const Numbers& a, const Numbers& b) {
      return a.size() != b.size() ? a.size() < b.size() : a < b;
    });
  }

  /// Statements in order, less those that would complete a set already known.
  Numbers most_without_known(std::size_t first) const {
    std::vector<bool> in(problem_.size(), false);
    in[first] = true;
    const auto completes = [&](std::size_t number) {
      if (by_member_.empty()) return false;
      return std::any_of(by_member_[number].begin(), by_member_[number].end(), [&](std::size_t known) {
        const Numbers& set = found_.sets[known];
        return std::all_of(set.begin(), set.end(),
                           [&](std::size_t member) { return member == number || in[member]; });
      });
    };
    for (std::size_t number = 0; number < problem_.size(); ++number)
      if (!in[number] && !completes(number)) in[number] = true;
    Numbers together;
    for (std::size_t number = 0; number < problem_.size(); ++number)
      if (in[number]) together.push_back(number);
    return together;
  }

  const StayProblem& problem_;
  ConflictLimits limits_;
  std::int64_t left_;
  std::vector<bool> either_or_;
  std::size_t past_either_or_ = 0;  ///< One more than the number of the last.
  std::vector<std::vector<std::size_t>> by_member_;
  Conflicts found_;
};

}  // namespace

Conflicts find_conflicts(const StayProblem& problem, const ConflictLimits& limits) {
  return Search(problem, limits).run();
}

std::set<std::size_t> weakest_of_conflicts(const StayEvidence& evidence, const StayProblem& problem,
                                           const Conflicts& conflicts,
                                           const std::vector<std::size_t>& among) {
  const auto footing = [&](std::size_t number) {
    return evidence.statements()[problem.statement(number)].footing;
  };
  std::set<std::size_t> weakest;
  for (const Numbers& set : conflicts.sets) {
    if (!std::includes(among.begin(), among.end(), set.begin(), set.end())) continue;
    for (const std::size_t number : set)
      if (footing(number) == footing(set.back())) weakest.insert(number);
  }
  return weakest;
}

}  // namespace witnessmark
