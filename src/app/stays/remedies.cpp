#include "witnessmark/app/remedies.h"

#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "witnessmark/app/claim_words.h"
#include "witnessmark/time/relations.h"

namespace witnessmark {
namespace {

std::string days(std::int64_t number) {
  return in_unit({number, number}, "day");
}

std::string misdating_words(const Resolution::Misdating& one) {
  if (one.earlier && one.later)
    return fmt::format("{} or more earlier, or {} or more later", days(*one.earlier), days(*one.later));
  return fmt::format("{} or more {}", days(one.earlier ? *one.earlier : *one.later),
                     one.earlier ? "earlier" : "later");
}

std::vector<std::string> short_keys_of(const std::vector<StatementKey>& keys) {
  std::vector<std::string> words;
  for (const StatementKey& key : keys) words.push_back(short_key(key));
  return words;
}

using Each = std::vector<std::pair<StatementKey, std::string>>;

/// Statements of which the same is to be said, in one line.
void add_grouped(std::vector<Remedy>& list, std::string_view heading, const Each& each) {
  std::vector<std::pair<std::string, std::vector<StatementKey>>> grouped;
  for (const auto& [key, words] : each) {
    const std::string& same_words = words;
    const auto same = std::find_if(grouped.begin(), grouped.end(),
                                   [&](const auto& one) { return one.first == same_words; });
    if (same == grouped.end())
      grouped.push_back({words, {key}});
    else
      same->second.push_back(key);
  }
  for (const auto& [words, keys] : grouped) {
    list.push_back({std::string(heading), fmt::format("{}: {}", joined(short_keys_of(keys), "and"), one_line(words))});
    heading = "";
  }
}

std::string set_aside_words(const Resolution& resolution) {
  if (!resolution.set_aside.empty())
    return joined(short_keys_of(resolution.set_aside), "or") + " alone would be enough";
  if (!resolution.set_aside_sources.empty())
    return joined(resolution.set_aside_sources, "or") +
           ", with all that rests on it, would be enough; no one statement is";
  return "no single statement or source is enough";
}

}  // namespace

std::string short_key(const StatementKey& key) {
  constexpr std::size_t kTellingDigits = 8;
  return key.kind == StatementKey::Kind::claim ? "claim " + key.key.substr(0, kTellingDigits) : key.key;
}

std::string joined(const std::vector<std::string>& words, std::string_view last) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i)
    text += (i == 0 ? "" : i + 1 == words.size() ? fmt::format(" {} ", last) : std::string(", ")) + words[i];
  return text;
}

std::vector<Remedy> remedies(const Resolution& resolution) {
  std::vector<Remedy> list;
  Each each;
  for (const auto& one : resolution.wrong_identification) each.push_back({one.statement, one.how});
  add_grouped(list, "wrong identification", each);
  if (resolution.another_episode) list.push_back({"another episode", one_line(resolution.episode_words)});
  each.clear();
  for (const auto& one : resolution.misdating)
    each.push_back({one.statement, "if dated " + misdating_words(one) + (one.how.empty() ? "" : "; " + one.how)});
  add_grouped(list, "misdating", each);
  each.clear();
  for (const auto& one : resolution.mishearing)
    each.push_back({one.statement, one.other_date.empty()
                                       ? "hear the recording"
                                       : "hear the recording: the words may also mean " + one.other_date});
  add_grouped(list, "mishearing", each);
  list.push_back({"setting aside", set_aside_words(resolution)});
  return list;
}

}  // namespace witnessmark
