#include "app/taking_in/shared_names.h"

#include <fmt/core.h>

#include <algorithm>
#include <string>
#include <unordered_map>
#include <unordered_set>
#include <utility>

#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

struct Bearer {
  const Term* term = nullptr;
  std::int64_t line = 0;  ///< 0: taken in before.
};

std::string bearer_words(const Bearer& bearer) {
  return bearer.line == 0 ? fmt::format("{} (taken in before)", bearer.term->key)
                          : fmt::format("{} (line {})", bearer.term->key, bearer.line);
}

std::vector<std::string> spoken_names(const Term& term) {
  std::vector<std::string> names{term.name};
  names.insert(names.end(), term.spoken.begin(), term.spoken.end());
  return names;
}

}  // namespace

std::vector<Diagnostic> shared_names(const AuthorityLists& before, AuthorityList::Kind kind,
                                     const ListReading& reading, std::string_view source) {
  std::unordered_set<std::string_view> read;
  for (const Term& term : reading.terms) read.insert(term.key);
  std::vector<Bearer> bearers;
  const AuthorityList& list = kind == AuthorityList::Kind::places ? before.places : before.equipment;
  for (const Term& term : list.terms())
    if (!read.contains(term.key)) bearers.push_back({&term, 0});
  for (std::size_t i = 0; i < reading.terms.size(); ++i)
    bearers.push_back({&reading.terms[i], reading.lines[i]});

  std::unordered_map<std::string, Bearer> first;  // of a folded name
  std::vector<Diagnostic> diagnostics;
  for (const Bearer& bearer : bearers) {
    std::vector<std::pair<Bearer, std::string>> shared;  // the other, and the names
    for (const std::string& name : spoken_names(*bearer.term)) {
      const auto [known, is_new] = first.try_emplace(fold(name), bearer);
      const Bearer& other = known->second;
      if (is_new || other.term == bearer.term || bearer.line == 0) continue;
      const auto same = std::find_if(shared.begin(), shared.end(),
                                     [&](const auto& one) { return one.first.term == other.term; });
      if (same == shared.end())
        shared.emplace_back(other, fmt::format("“{}”", name));
      else
        same->second += fmt::format(", “{}”", name);
    }
    for (const auto& [other, names] : shared)
      diagnostics.push_back(
          {Diagnostic::Severity::warning,
           {std::string(source), bearer.line, 0,
            fmt::format("people speak of both {} and {} as {}", bearer.term->key, bearer_words(other), names),
            "what is said of it may be proposed of each of them; if people mean one only, take the name out "
            "of "
            "the other"}});
  }
  return diagnostics;
}

}  // namespace witnessmark
