#include "witnessmark/model/authority_list.h"

#include <algorithm>
#include <unordered_set>

#include "model/names.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

constexpr std::pair<NumberScheme, std::string_view> kSchemes[] = {
    {NumberScheme::none, ""},
    {NumberScheme::since_1949, "since-1949"},
    {NumberScheme::before_1949, "before-1949"},
    {NumberScheme::local, "local"},
};

}  // namespace

std::string_view to_string(NumberScheme scheme) {
  return word_of(kSchemes, scheme);
}
std::optional<NumberScheme> parse_number_scheme(std::string_view text) {
  return value_of(kSchemes, text);
}

AuthorityList::AuthorityList(Kind kind, std::vector<Term> terms) : kind_(kind), terms_(std::move(terms)) {
  const auto bear = [this](const std::string& name, std::size_t index) {
    const std::string folded = fold(name);
    if (folded.empty()) return;
    std::vector<std::size_t>& bearers = by_name_[folded];
    if (bearers.empty() || bearers.back() != index) bearers.push_back(index);
  };
  for (std::size_t i = 0; i < terms_.size(); ++i) {
    const Term& term = terms_[i];
    by_key_.emplace(term.key, i);
    bear(term.name, i);
    bear(term.number, i);
    for (const FormerName& former : term.former_names) bear(former.name, i);
    for (const std::string& spoken : term.spoken) bear(spoken, i);
  }
  narrower_.resize(terms_.size());
  for (std::size_t i = 0; i < terms_.size(); ++i)
    if (const auto broader = by_key_.find(terms_[i].broader); broader != by_key_.end())
      narrower_[broader->second].push_back(i);
}

const Term* AuthorityList::find(std::string_view key) const {
  const auto found = by_key_.find(std::string(key));
  return found == by_key_.end() ? nullptr : &terms_[found->second];
}

std::vector<const Term*> AuthorityList::named(std::string_view name) const {
  std::vector<const Term*> found;
  const auto bearers = by_name_.find(fold(name));
  if (bearers == by_name_.end()) return found;
  for (std::size_t index : bearers->second) found.push_back(&terms_[index]);
  return found;
}

std::vector<std::string> AuthorityList::above(std::string_view key) const {
  std::vector<std::string> keys;
  std::unordered_set<std::string> seen{std::string(key)};
  for (const Term* term = find(key); term;) {
    const Term* broader = find(term->broader);
    if (!broader || !seen.insert(broader->key).second) break;
    keys.push_back(broader->key);
    term = broader;
  }
  return keys;
}

bool AuthorityList::within(std::string_view inner, std::string_view outer) const {
  if (inner == outer) return find(inner) != nullptr;
  const std::vector<std::string> keys = above(inner);
  return std::find(keys.begin(), keys.end(), outer) != keys.end();
}

std::vector<std::string> AuthorityList::all_within(std::string_view key) const {
  const auto top = by_key_.find(std::string(key));
  if (top == by_key_.end()) return {};
  std::unordered_set<std::size_t> seen{top->second};
  std::vector<std::size_t> found, open{top->second};
  while (!open.empty()) {
    const std::size_t at = open.back();
    open.pop_back();
    for (const std::size_t narrower : narrower_[at]) {
      if (!seen.insert(narrower).second) continue;
      found.push_back(narrower);
      open.push_back(narrower);
    }
  }
  // The key itself first, then list order.
  std::sort(found.begin(), found.end());
  std::vector<std::string> keys{std::string(key)};
  for (const std::size_t at : found) keys.push_back(terms_[at].key);
  return keys;
}

}  // namespace witnessmark
