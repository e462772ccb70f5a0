#include "read/tables/terms.h"

#include "witnessmark/base/did_you_mean.h"

namespace witnessmark {
namespace {

std::vector<std::string> all_names(const AuthorityList& list) {
  std::vector<std::string> names;
  for (const Term& term : list.terms()) {
    names.push_back(term.key);
    names.push_back(term.name);
    names.insert(names.end(), term.spoken.begin(), term.spoken.end());
    for (const FormerName& former : term.former_names) names.push_back(former.name);
  }
  return names;
}

}  // namespace

std::string Terms::find(AuthorityList::Kind kind, std::string_view column, RowReader& row) {
  const std::string text = row.text(column);
  if (text.empty()) return text;
  const bool places = kind == AuthorityList::Kind::places;
  if (!lists_) {
    references_.use(places ? KeyKind::place : KeyKind::equipment, text, column, row);
    return text;
  }
  const AuthorityList& list = places ? lists_->places : lists_->equipment;
  if (list.find(text)) return text;
  const auto named = list.named(text);
  if (named.size() == 1) return named.front()->key;
  const std::string what = places ? "the list of places" : "the list of equipment";
  if (named.size() > 1) {
    std::vector<std::string> keys;
    for (const Term* term : named) keys.push_back(term->key);
    row.fail(column, "names \"" + text + "\", which several terms of " + what + " bear",
             "write the key: " + one_of_words(keys));
    return "";
  }
  std::vector<std::string> near;
  if (advised_++ < kMostWithAdvice) near = near_matches(text, all_names(list));
  const std::string add = list.empty() ? "take in " + what + " first" : "add it to the list, or correct it";
  row.fail(column, "names \"" + text + "\", which is not in " + what,
           near.empty() ? add : did_you_mean(near));
  return "";
}

bool Terms::is_site(std::string_view text) const {
  if (!lists_) return false;
  const Term* term = lists_->places.find(text);
  if (!term) {
    const auto named = lists_->places.named(text);
    if (named.size() == 1) term = named.front();
  }
  return term && term->broader.empty();
}

}  // namespace witnessmark
