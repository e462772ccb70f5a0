#include "weigh/stays/least_core.h"

#include <algorithm>

namespace witnessmark {
namespace {

using Numbers = std::vector<std::size_t>;
using Refuted = std::function<bool(const Numbers&)>;

Numbers joined(Numbers a, const Numbers& b) {
  a.insert(a.end(), b.begin(), b.end());
  return a;
}

/// `given` is kept; `grown` says that it has grown since it was last asked about.
Numbers core(const Numbers& given, bool grown, const Numbers& candidates, const Refuted& refuted) {
  if (grown && refuted(given)) return {};
  if (candidates.size() == 1) return candidates;
  const auto middle = candidates.begin() + static_cast<std::ptrdiff_t>(candidates.size() / 2);
  const Numbers first(candidates.begin(), middle);
  const Numbers second(middle, candidates.end());
  const Numbers of_second = core(joined(given, first), true, second, refuted);
  const Numbers of_first = core(joined(given, of_second), !of_second.empty(), first, refuted);
  return joined(of_first, of_second);
}

}  // namespace

Numbers least_core(const Numbers& candidates, const Refuted& refuted) {
  if (candidates.empty() || refuted({})) return {};
  Numbers found = core({}, false, candidates, refuted);
  std::sort(found.begin(), found.end());
  return found;
}

}  // namespace witnessmark
