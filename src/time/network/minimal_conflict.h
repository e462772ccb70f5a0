#pragma once
#include <vector>

#include "time/network/difference_graph.h"

namespace witnessmark {

/// From statements that cannot all be true, an irreducible set of them, ascending. The edges are all those of
/// the statements; without newest they can all hold, as the potentials of their points in graph show.
std::vector<StatementNumber> minimal_conflict(const DifferenceGraph& graph,
                                              const std::vector<DifferenceEdge>& edges,
                                              StatementNumber newest);

}  // namespace witnessmark
