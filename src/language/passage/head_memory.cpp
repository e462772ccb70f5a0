#include <algorithm>

#include "language/passage/passage.h"
#include "witnessmark/base/fold.h"

namespace witnessmark::claims {

void HeadMemory::learn(const AuthorityList& equipment, const Words& words) {
  list = &equipment;
  for (std::uint32_t t = 0; t < equipment.terms().size(); ++t) {
    const std::vector<std::uint64_t> forms = words.forms_of(equipment.terms()[t].name);
    if (forms.size() < 2 || words.find(forms.back())) continue;
    heads.emplace(forms.back(), t);
    const std::string name = fold(equipment.terms()[t].name);
    const std::string plural = words.plural_of(name.substr(name.rfind(' ') + 1));
    const std::vector<std::uint64_t> more = words.forms_of(plural);
    if (more.size() != 1 || more[0] == forms.back() || words.find(more[0])) continue;
    heads.emplace(more[0], t);
    plurals.insert(more[0]);
  }
}

void HeadMemory::remember(const Passage& passage) {
  for (const Thing& thing : passage.things) {
    if (thing.kind != ThingKind::equipment || thing.near_match) continue;
    for (const std::uint32_t term : thing.terms) named[term] = ++clock;
  }
}

std::optional<std::uint32_t> HeadMemory::term_of(std::uint64_t form, const std::string& near) const {
  std::optional<std::uint32_t> found;
  std::int64_t latest = -1;
  const auto [from, to] = heads.equal_range(form);
  const bool only = from != to && std::next(from) == to;
  for (auto at = from; at != to; ++at) {
    const auto seen = named.find(at->second);
    // The only one of its kind that belongs to the place spoken of needs no earlier mention.
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
