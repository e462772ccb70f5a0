#pragma once
#include <cstddef>
#include <functional>
#include <vector>

namespace witnessmark {

/// A least part of `candidates` for which `refuted` still says true, given that it does for all of them;
/// earlier candidates are preferred. (QuickXplain: U. Junker, Preferred explanations and relaxations for
/// over-constrained problems, AAAI 2004.) Costs about twice the size of the part times the logarithm of the
/// candidates in questions. `refuted` must not turn false when something is added.
std::vector<std::size_t> least_core(const std::vector<std::size_t>& candidates,
                                    const std::function<bool(const std::vector<std::size_t>&)>& refuted);

}  // namespace witnessmark
