#pragma once
#include <cstddef>
#include <cstdint>
#include <set>
#include <vector>

#include "weigh/stays/stay_problem.h"

namespace witnessmark {

/// Irreducible sets of statements of one group that cannot all be true.
struct Conflicts {
  std::vector<std::vector<std::size_t>> sets;  ///< Numbers of the problem, ascending; smallest sets first.
  std::int64_t more = 0;                       ///< Sets of two beyond those kept.
  std::size_t searched_to = 0;                 ///< Every set up to this size was found.
  bool all_found = false;                      ///< There are no others.
  bool beyond_limit = false;  ///< Of some statements it could not be told whether they can all be true.
};

struct ConflictLimits {
  std::size_t sets = 400;           ///< Sets kept.
  std::int64_t questions = 20'000;  ///< Asked of one group, in all.
};

Conflicts find_conflicts(const StayProblem& problem, const ConflictLimits& limits = {});

/// Of each set found among these statements, those on the weakest footing in it.
std::set<std::size_t> weakest_of_conflicts(const StayEvidence& evidence, const StayProblem& problem,
                                           const Conflicts& conflicts, const std::vector<std::size_t>& among);

}  // namespace witnessmark
