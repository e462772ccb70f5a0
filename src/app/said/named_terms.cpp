#include "app/said/named_terms.h"

#include <fmt/core.h>

#include <algorithm>

#include "witnessmark/base/did_you_mean.h"

namespace witnessmark {
namespace {

void look_in(const AuthorityList& list, std::string_view name, std::set<std::string>& keys, NamedTerms& found) {
  std::vector<const Term*> terms = list.named(name);
  const Term* by_key = list.find(name);
  if (by_key != nullptr && std::find(terms.begin(), terms.end(), by_key) == terms.end()) terms.push_back(by_key);
  const std::string_view kind = list.kind() == AuthorityList::Kind::places ? "place" : "equipment";
  for (const Term* term : terms) {
    found.described.push_back(fmt::format("{} ({} {})", term->name, kind, term->key));
    const auto within = list.all_within(term->key);
    keys.insert(within.begin(), within.end());
  }
}

void add_names(const AuthorityList& list, std::vector<std::string>& names) {
  for (const Term& term : list.terms()) {
    names.push_back(term.name);
    names.insert(names.end(), term.spoken.begin(), term.spoken.end());
    for (const FormerName& former : term.former_names) names.push_back(former.name);
  }
}

}  // namespace

Result<NamedTerms> named_terms(const AuthorityLists& lists, std::string_view name, bool equipment_too) {
  NamedTerms found;
  look_in(lists.places, name, found.places, found);
  if (equipment_too) look_in(lists.equipment, name, found.equipment, found);
  if (!found.described.empty()) return found;
  std::vector<std::string> names;
  add_names(lists.places, names);
  if (equipment_too) add_names(lists.equipment, names);
  const std::string near = did_you_mean(near_matches(name, names));
  const std::string what = equipment_too
                               ? fmt::format("neither the list of places nor that of equipment has “{}”", name)
                               : fmt::format("the list of places has no “{}”", name);
  return Error{"", 0, 0, what, near.empty() ? "see the names in the lists taken in" : near};
}

}  // namespace witnessmark
