#pragma once
#include <set>
#include <vector>

#include "witnessmark/weigh/corroboration.h"

namespace witnessmark {

/// A voice with everything it rests on.
struct TracedVoice {
  std::size_t place = 0;  ///< In Corroboration::voices.
  const Voice* voice = nullptr;
  std::set<SourceKind> kinds;            ///< Of what it goes back to.
  std::vector<LineageLink> behind;  ///< As Lineage::behind gives it, with links of the voice's own.
};

/// What one side comes to.
struct SideTally {
  std::int64_t groups = 0;
  std::int64_t kinds = 0;
  std::int64_t second_hand = 0;
  std::int64_t intentions = 0;
};

struct GroupedSide {
  std::vector<LineageGroup> groups;
  SideTally tally;
};

/// The most different kinds that as many groups can bring, one each.
std::int64_t most_kinds(const std::vector<std::set<SourceKind>>& of_groups);

/// Puts the voices of one side into groups; `other` are those of the other side.
GroupedSide group_side(const std::vector<TracedVoice>& side, const std::vector<TracedVoice>& other);

}  // namespace witnessmark
