#include "read/tables/references.h"

#include <fmt/format.h>

#include <algorithm>

#include "witnessmark/base/did_you_mean.h"

namespace witnessmark {
namespace {

std::string_view with_article(KeyKind kind) {
  switch (kind) {
    case KeyKind::interview:
      return "an interview";
    case KeyKind::person:
      return "a person";
    case KeyKind::source:
      return "a source";
    case KeyKind::entry:
      return "an entry";
    case KeyKind::stay:
      return "a stay";
    case KeyKind::event:
      return "a named event";
    case KeyKind::place:
      return "a place";
    case KeyKind::conclusion:
      return "a conclusion";
    case KeyKind::claim:
      return "a claim";
    case KeyKind::equipment:
      break;
  }
  return "a piece of equipment";
}

std::string kinds_in_words(const std::vector<KeyKind>& kinds) {
  std::vector<std::string> words;
  for (const KeyKind kind : kinds) words.emplace_back(with_article(kind));
  return one_of_words(words);
}

}  // namespace

std::string_view to_string(KeyKind kind) {
  const std::string_view words = with_article(kind);
  return words.substr(words.find(' ') + 1);
}

void References::define(KeyKind kind, const std::string& key, std::string_view column, RowReader& row) {
  if (key.empty()) return;
  const auto at = static_cast<std::size_t>(kind);
  const auto [found, is_new] = defined_[at].try_emplace(key, Definition{row.source(), row.line()});
  if (is_new) {
    order_[at].push_back(key);
    return;
  }
  const std::string where = found->second.source == row.source()
                                ? fmt::format("line {}", found->second.line)
                                : fmt::format("{}, line {}", found->second.source, found->second.line);
  row.fail(column, fmt::format("repeats the key \"{}\" of {}", key, where), "give each row a key of its own");
}

void References::define(KeyKind kind, const std::string& key) {
  const auto at = static_cast<std::size_t>(kind);
  if (defined_[at].try_emplace(key).second) order_[at].push_back(key);
}

bool References::defines(KeyKind kind, const std::string& key) const {
  return defined_[static_cast<std::size_t>(kind)].contains(key);
}

void References::use(const std::vector<KeyKind>& may_be, const std::vector<std::string>& keys,
                     std::string_view column, const RowReader& row) {
  for (const std::string& key : keys) {
    if (!key.empty()) uses_.push_back({may_be, key, column, &row.table(), &row.row()});
  }
}

void References::use(KeyKind kind, const std::string& key, std::string_view column, const RowReader& row) {
  use(std::vector<KeyKind>{kind}, {key}, column, row);
}

std::vector<UnresolvedKey> References::unresolved() const {
  std::vector<UnresolvedKey> open;
  for (const Use& use : uses_) {
    const auto known = [&](KeyKind kind) { return defines(kind, use.key); };
    if (std::any_of(use.may_be.begin(), use.may_be.end(), known)) continue;
    std::vector<Diagnostic> none;
    const RowReader row(*use.table, *use.row, none);
    open.push_back(
        {use.may_be, use.key,
         row.error_at(use.column, use.key, "is not the key of " + kinds_in_words(use.may_be), "")});
    if (open.size() > kMostWithAdvice) continue;
    std::vector<std::string> candidates;
    for (const KeyKind kind : use.may_be) {
      const auto& keys = order_[static_cast<std::size_t>(kind)];
      candidates.insert(candidates.end(), keys.begin(), keys.end());
    }
    open.back().near = near_matches(use.key, candidates);
    open.back().what.advice =
        open.back().near.empty() ? "add it, or correct the key" : did_you_mean(open.back().near);
  }
  return open;
}

}  // namespace witnessmark
