#include <algorithm>

#include "language/passage/passage.h"
#include "witnessmark/base/fold.h"

namespace witnessmark::claims {

namespace {

/// Grammar words are no heads; nouns and adjectives that are also classed, and verbs, may be.
bool is_grammar(const Words& words, std::uint64_t form) {
  const WordInfo* info = words.find(form);
  if (!info) return false;
  Flags flags = info->flags;
  flags.clear(WordClass::abstract);
  flags.clear(WordClass::quality);
  return flags.any() || info->cue >= 0 || info->quantity >= 0;
}

std::uint64_t pair_key(std::uint64_t word, std::uint64_t head) {
  return word * 0x9E3779B97F4A7C15ULL ^ head;
}

}  // namespace

void HeadMemory::learn(const AuthorityList& equipment, const Words& words) {
  list = &equipment;
  for (std::uint32_t t = 0; t < equipment.terms().size(); ++t) {
    const Term& term = equipment.terms()[t];
    std::vector<std::string> names{term.name};
    names.insert(names.end(), term.spoken.begin(), term.spoken.end());
    for (const std::string& name : names) {
      const std::vector<std::uint64_t> parts = words.forms_of(name);
      if (parts.empty()) continue;
      heads_of[t].push_back(parts.back());
      for (std::size_t i = 0; i + 1 < parts.size(); ++i) pairs.emplace(pair_key(parts[i], parts.back()), t);
    }
    const std::vector<std::uint64_t> forms = words.forms_of(term.name);
    if (forms.size() < 2 || is_grammar(words, forms.back())) continue;
    heads.emplace(forms.back(), t);
    const std::string name = fold(equipment.terms()[t].name);
    const std::string plural = words.plural_of(name.substr(name.rfind(' ') + 1));
    const std::vector<std::uint64_t> more = words.forms_of(plural);
    if (more.size() != 1 || more[0] == forms.back() || is_grammar(words, more[0])) continue;
    heads.emplace(more[0], t);
    plurals.insert(more[0]);
  }
}

void HeadMemory::remember(const Passage& passage) {
  for (const Thing& thing : passage.things) {
    if (thing.kind != ThingKind::equipment || thing.near_match) continue;
    for (const std::uint32_t term : thing.terms) {
      named[term] = ++clock;
      std::erase(recent, term);
      recent.push_back(term);
      constexpr std::size_t kRecent = 4;
      if (recent.size() > kRecent) recent.erase(recent.begin());
    }
  }
}

std::optional<std::uint32_t> HeadMemory::one_of(std::uint64_t word) const {
  for (std::size_t r = recent.size(); r > 0; --r) {
    const auto of = heads_of.find(recent[r - 1]);
    if (of == heads_of.end()) continue;
    for (const std::uint64_t head : of->second) {
      const auto [from, to] = pairs.equal_range(pair_key(word, head));
      if (from != to) return from->second;
    }
  }
  return std::nullopt;
}

std::optional<std::uint32_t> HeadMemory::term_of(std::uint64_t form, const std::string& near) const {
  std::optional<std::uint32_t> found;
  std::int64_t latest = -1;
  const auto [from, to] = heads.equal_range(form);
  // One of its kind that alone belongs to the place spoken of needs no earlier mention.
  std::size_t here_of_kind = 0;
  for (auto at = from; at != to; ++at) {
    const std::string& home = list->terms()[at->second].place;
    here_of_kind += !home.empty() && (home == place || home == near);
  }
  const bool only = here_of_kind == 1;
  for (auto at = from; at != to; ++at) {
    const auto seen = named.find(at->second);
    const std::string& home = list->terms()[at->second].place;
    const bool here = !home.empty() && (home == place || home == near);
    const std::int64_t when = seen != named.end() ? seen->second : here && only ? 0 : -1;
    if (when > latest) {
      latest = when;
      found = at->second;
    }
  }
  return found;
}

}  // namespace witnessmark::claims
