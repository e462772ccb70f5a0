#include <algorithm>
#include <map>
#include <numeric>
#include <tuple>

#include "witnessmark/weigh/contradictions.h"

namespace witnessmark {
namespace {

/// Sets with a statement in common belong together.
std::vector<std::size_t> heads_of(const std::vector<const Contradiction*>& sets) {
  std::vector<std::size_t> parent(sets.size());
  std::iota(parent.begin(), parent.end(), std::size_t{0});
  const auto root = [&](std::size_t at) {
    while (parent[at] != at) at = parent[at] = parent[parent[at]];
    return at;
  };
  std::map<StatementKey, std::size_t> first;
  for (std::size_t i = 0; i < sets.size(); ++i)
    for (const StatementKey& key : sets[i]->statements) {
      const auto [low, high] = std::minmax({root(i), root(first.emplace(key, i).first->second)});
      parent[high] = low;
    }
  for (std::size_t i = 0; i < sets.size(); ++i) parent[i] = root(i);
  return parent;
}

/// Stays of the itinerary come first; they are none of the statements on fixtures.
void order_statements(const StayEvidence& evidence, std::vector<Dispute>& disputes) {
  std::map<StatementKey, std::size_t> place;
  for (const Dispute& dispute : disputes)
    for (const StatementKey& key : dispute.statements) place.emplace(key, 0);
  for (std::size_t i = 0; i < evidence.statements().size(); ++i)
    if (const auto at = place.find(evidence.statements()[i].key); at != place.end() && at->second == 0)
      at->second = i + 1;
  for (Dispute& dispute : disputes)
    std::stable_sort(dispute.statements.begin(), dispute.statements.end(), [&](const auto& a, const auto& b) {
      return place.at(a) != place.at(b) ? place.at(a) < place.at(b) : a < b;
    });
}

}  // namespace

std::vector<Dispute> disputes(const Contradictions& contradictions, const StayEvidence& evidence) {
  using Part = std::tuple<bool, Contradiction::Kind, std::size_t>;
  std::map<Part, std::vector<const Contradiction*>> parts;
  for (const Contradiction& set : contradictions.sets)
    parts[{set.footing == Footing::proposed, set.kind, set.group}].push_back(&set);
  std::vector<Dispute> found;
  for (const auto& part : parts) {
    const auto& sets = part.second;
    const auto heads = heads_of(sets);
    std::map<std::size_t, Dispute> by_head;
    for (std::size_t i = 0; i < sets.size(); ++i) {
      Dispute& dispute = by_head
                             .try_emplace(heads[i], Dispute{sets[i]->kind,
                                                            sets[i]->subject,
                                                            sets[i]->place,
                                                            sets[i]->property,
                                                            {},
                                                            {},
                                                            sets[i]->footing,
                                                            sets[i]->group})
                             .first->second;
      dispute.sets.push_back(sets[i]->statements);
      dispute.footing = std::max(dispute.footing, sets[i]->footing);
      for (const StatementKey& key : sets[i]->statements)
        if (std::find(dispute.statements.begin(), dispute.statements.end(), key) == dispute.statements.end())
          dispute.statements.push_back(key);
    }
    for (auto& [head, dispute] : by_head) found.push_back(std::move(dispute));
  }
  order_statements(evidence, found);
  std::stable_sort(found.begin(), found.end(), [](const Dispute& a, const Dispute& b) {
    const auto key = [](const Dispute& one) {
      return std::tuple(one.footing == Footing::proposed, one.sets.front().size(), one.sets.size(),
                        std::tie(one.subject, one.place));
    };
    return key(a) < key(b);
  });
  return found;
}

}  // namespace witnessmark
