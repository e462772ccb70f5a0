#include "app/said/named_in_talk.h"

#include <algorithm>

#include "witnessmark/language/term_finder.h"
#include "witnessmark/store/interviews.h"

namespace witnessmark {
namespace {

bool overlapped_by_longer(const TermMention& mention, const std::vector<TermMention>& others) {
  return std::any_of(others.begin(), others.end(), [&](const TermMention& other) {
    return other.range.overlaps(mention.range) && other.range.length() > mention.range.length();
  });
}

/// Where the text names any of the keys, in its order.
void add_places(const std::vector<TermMention>& mentions, const std::vector<TermMention>& others,
                const AuthorityList& list, const std::set<std::string>& keys, std::vector<CodePointRange>& found) {
  for (const TermMention& mention : mentions) {
    const bool asked = std::any_of(mention.terms.begin(), mention.terms.end(), [&](std::uint32_t term) {
      return keys.contains(list.terms()[term].key);
    });
    if (asked && !overlapped_by_longer(mention, others)) found.push_back(mention.range);
  }
}

class NamingFinder {
 public:
  NamingFinder(const AuthorityLists& lists, const NamedTerms& named, const Language& language)
      : lists_(lists), named_(named), places_(lists.places, language), equipment_(lists.equipment, language) {
    places_.look_for_misspellings(false);
    equipment_.look_for_misspellings(false);
  }

  std::vector<CodePointRange> find(std::string_view text) const {
    const auto places = places_.find(text), equipment = equipment_.find(text);
    std::vector<CodePointRange> found;
    add_places(places, equipment, lists_.places, named_.places, found);
    add_places(equipment, places, lists_.equipment, named_.equipment, found);
    return found;
  }

 private:
  const AuthorityLists& lists_;
  const NamedTerms& named_;
  TermFinder places_, equipment_;
};

}  // namespace

std::vector<NamingTurn> naming_turns(const SiteFile& site, const AuthorityLists& lists, const NamedTerms& named,
                                     const Language& language) {
  const NamingFinder finder(lists, named, language);
  std::vector<NamingTurn> turns;
  for (const Interview& interview : load_interviews(site).interviews) {
    const auto text = load_reading_text(site, interview.key);
    if (!text) continue;
    const std::vector<CodePointRange> found = finder.find(*text);
    const auto stored = found.empty() ? std::nullopt : load_transcript(site, interview.key);
    if (!stored) continue;
    for (const Utterance& turn : stored->transcript.utterances) {
      const bool names = std::any_of(found.begin(), found.end(),
                                     [&](const CodePointRange& range) { return range.overlaps(turn.range); });
      if (names) turns.push_back({interview.key, turn});
    }
  }
  return turns;
}

}  // namespace witnessmark
