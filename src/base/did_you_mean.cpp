#include "witnessmark/base/did_you_mean.h"

#include <algorithm>

#include "witnessmark/base/fold.h"

namespace witnessmark {

// Three rows of the usual table; a row whose least value is over the limit ends the search.
std::size_t edit_distance(std::string_view a, std::string_view b, std::size_t limit) {
  if (a.size() > b.size()) std::swap(a, b);
  if (b.size() - a.size() > limit) return limit + 1;
  std::vector<std::size_t> before_last(a.size() + 1);
  std::vector<std::size_t> last(a.size() + 1);
  std::vector<std::size_t> row(a.size() + 1);
  for (std::size_t i = 0; i <= a.size(); ++i) last[i] = i;
  for (std::size_t j = 1; j <= b.size(); ++j) {
    row[0] = j;
    std::size_t least = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
      const bool same = a[i - 1] == b[j - 1];
      row[i] = std::min({row[i - 1] + 1, last[i] + 1, last[i - 1] + (same ? 0 : 1)});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        row[i] = std::min(row[i], before_last[i - 2] + 1);
      least = std::min(least, row[i]);
    }
    if (least > limit) return limit + 1;
    std::swap(before_last, last);
    std::swap(last, row);
  }
  return std::min(last[a.size()], limit + 1);
}

std::vector<std::string> near_matches(std::string_view text, const std::vector<std::string>& candidates,
                                      std::size_t most) {
  const std::string wanted = fold(text.substr(0, 200));
  const std::size_t limit = wanted.size() <= 4 ? 1 : wanted.size() <= 8 ? 2 : 3;
  std::vector<std::pair<std::size_t, std::string>> found;
  for (const std::string& candidate : candidates) {
    const std::size_t distance = edit_distance(wanted, fold(candidate), limit);
    if (distance <= limit) found.emplace_back(distance, candidate);
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<std::string> near;
  for (auto& [distance, candidate] : found) {
    if (near.size() < most && std::find(near.begin(), near.end(), candidate) == near.end())
      near.push_back(std::move(candidate));
  }
  return near;
}

std::string one_of_words(const std::vector<std::string>& words) {
  std::string list;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) list += i + 1 == words.size() ? " or " : ", ";
    list += words[i];
  }
  return list;
}

std::string did_you_mean(const std::vector<std::string>& near) {
  return near.empty() ? "" : "did you mean " + one_of_words(near) + "?";
}

}  // namespace witnessmark
