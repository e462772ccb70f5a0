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

/// "crane" of "the crane on tyres": the part of a name before its preposition.
std::string before_preposition(const std::string& name, const Words& words) {
  std::size_t begin = 0;
  while ((begin = name.find(' ', begin)) != std::string::npos) {
    const std::size_t end = name.find(' ', begin + 1);
    if (end == std::string::npos) break;
    const std::vector<std::uint64_t> forms = words.forms_of(name.substr(begin + 1, end - begin - 1));
    const WordInfo* info = forms.size() == 1 ? words.find(forms[0]) : nullptr;
    if (info && (info->flags.has(WordClass::at) || info->flags.has(WordClass::of) ||
                 info->flags.has(WordClass::with) || info->flags.has(WordClass::for_) ||
                 info->flags.has(WordClass::to) || info->flags.has(WordClass::relation))) {
      return name.substr(0, begin);
    }
    begin = end;
  }
  return name;
}

}  // namespace

HeadNames::HeadNames(const AuthorityList& equipment, const Words& words)
    : list_(&equipment), heads_of_(equipment.terms().size()) {
  for (std::uint32_t t = 0; t < equipment.terms().size(); ++t) {
    const Term& term = equipment.terms()[t];
    std::vector<std::string> names{before_preposition(term.name, words)};
    for (const std::string& spoken : term.spoken) names.push_back(before_preposition(spoken, words));
    for (const std::string& name : names) {
      const std::vector<std::uint64_t> parts = words.forms_of(name);
      if (parts.empty()) continue;
      heads_of_[t].push_back(parts.back());
      for (std::size_t i = 0; i + 1 < parts.size(); ++i) {
        std::vector<std::uint32_t>& terms = pairs_[pair_key(parts[i], parts.back())];
        if (terms.empty() || terms.back() != t) terms.push_back(t);
      }
    }
    for (const std::string& name : names) learn_head(name, t, &name != &names.front(), words);
  }
}

/// The last word of a name of several words, and its plural.
void HeadNames::learn_head(const std::string& name, std::uint32_t t, bool spoken, const Words& words) {
  const std::vector<std::uint64_t> forms = words.forms_of(name);
  if (forms.size() < 2 || is_grammar(words, forms.back())) return;
  const auto add = [&](std::uint64_t form) {
    std::vector<Head>& known = heads_[form];
    if (known.empty() || known.back().term != t) known.push_back({t, spoken});
  };
  add(forms.back());
  const std::string folded = fold(name);
  const std::vector<std::uint64_t> more =
      words.forms_of(words.plural_of(folded.substr(folded.rfind(' ') + 1)));
  if (more.size() != 1 || more[0] == forms.back() || is_grammar(words, more[0])) return;
  add(more[0]);
  plurals_.insert(more[0]);
}

void HeadMemory::remember(const Thing& thing) {
  if (thing.kind != ThingKind::equipment || thing.near_match) return;
  for (const std::uint32_t term : thing.terms) {
    named_[term] = ++clock_;
    std::erase(recent_, term);
    recent_.push_back(term);
    constexpr std::size_t kRecent = 4;
    if (recent_.size() > kRecent) recent_.erase(recent_.begin());
  }
}

std::vector<std::uint32_t> HeadMemory::one_of(std::uint64_t word) const {
  for (std::size_t r = recent_.size(); r > 0; --r) {
    for (const std::uint64_t head : names_.heads_of(recent_[r - 1])) {
      const std::vector<std::uint32_t>& terms = names_.with_both(word, head);
      if (terms.empty()) continue;
      const auto when = [&](std::uint32_t term) {
        const auto seen = named_.find(term);
        return seen == named_.end() ? 0 : seen->second;
      };
      const std::uint32_t last = *std::max_element(
          terms.begin(), terms.end(), [&](std::uint32_t a, std::uint32_t b) { return when(a) < when(b); });
      return when(last) > 0 ? std::vector<std::uint32_t>{last} : terms;
    }
  }
  return {};
}

bool HeadMemory::is_here(const HeadNames::Head& head, const std::string& near) const {
  const std::string& home = names_.list().terms()[head.term].place;
  return !head.spoken && !home.empty() && (home == place_ || home == near);
}

bool HeadMemory::only_here(std::uint64_t form, const std::string& near) const {
  const std::vector<HeadNames::Head>& heads = names_.ending_in(form);
  return std::count_if(heads.begin(), heads.end(),
                       [&](const HeadNames::Head& head) { return is_here(head, near); }) == 1;
}

std::optional<std::uint32_t> HeadMemory::term_of(std::uint64_t form, const std::string& near) const {
  std::optional<std::uint32_t> found;
  std::int64_t latest = -1;
  const std::vector<HeadNames::Head>& heads = names_.ending_in(form);
  // One of its kind that alone belongs to the place spoken of needs no earlier mention.
  const bool only = only_here(form, near);
  const bool only_one = heads.size() == 1;
  for (const HeadNames::Head& head : heads) {
    // "the lamp" for an arc lamp only while it is spoken of.
    if (head.spoken && std::find(recent_.begin(), recent_.end(), head.term) == recent_.end()) continue;
    const auto seen = named_.find(head.term);
    const std::int64_t when = seen != named_.end()                                          ? seen->second
                              : (only && is_here(head, near)) || (only_one && !head.spoken) ? 0
                                                                                            : -1;
    if (when > latest) {
      latest = when;
      found = head.term;
    }
  }
  return found;
}

}  // namespace witnessmark::claims
