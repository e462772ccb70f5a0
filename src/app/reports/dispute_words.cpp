#include <fmt/core.h>

#include <map>

#include "witnessmark/app/claim_words.h"
#include "witnessmark/app/contradictions.h"
#include "witnessmark/app/remedies.h"
#include "witnessmark/base/counted.h"

namespace witnessmark {
namespace {

std::string short_words(const std::vector<StatementKey>& keys) {
  std::vector<std::string> words;
  for (const StatementKey& key : keys) words.push_back(short_key(key));
  return joined(words, "and");
}

}  // namespace

std::vector<std::string> set_lines(const Dispute& dispute) {
  std::vector<std::string> lines;
  if (dispute.sets.size() == 1) return lines;
  std::map<StatementKey, std::vector<StatementKey>> partners;
  for (const auto& set : dispute.sets)
    if (set.size() == 2) partners[set[0]].push_back(set[1]);
  std::map<std::vector<StatementKey>, std::vector<StatementKey>> by_partners;
  for (const StatementKey& key : dispute.statements)
    if (const auto at = partners.find(key); at != partners.end()) by_partners[at->second].push_back(key);
  for (const auto& [those, with] : by_partners)
    lines.push_back(fmt::format("{}{} with {}{}", with.size() > 1 ? "each of " : "", short_words(with),
                                those.size() > 1 ? "each of " : "", short_words(those)));
  for (const auto& set : dispute.sets)
    if (set.size() != 2) lines.push_back(short_words(set) + " together");
  return lines;
}

std::string limit_words(const SearchLimit& limit) {
  std::string text = fmt::format(
      "{}{}: all sets of up to {} were looked for, larger ones may be missing", one_line(limit.subject),
      limit.place.empty() ? "" : " at " + one_line(limit.place), limit.searched_to);
  if (limit.more > 0) text += fmt::format("; {} not listed", counted(limit.more, "more pair"));
  if (limit.cannot_tell) text += "; of some it cannot be told, there are too many ways to read them";
  return text;
}

}  // namespace witnessmark
