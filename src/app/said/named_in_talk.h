#pragma once
#include <map>
#include <string>
#include <vector>

#include "app/said/named_terms.h"
#include "witnessmark/language/language.h"
#include "witnessmark/store/site_file.h"
#include "witnessmark/store/transcripts.h"

namespace witnessmark {

/// A turn that names a place or a piece of equipment.
struct NamingTurn {
  std::string interview;
  Utterance turn;
};

/// Every turn, whoever speaks, that names one of the terms as they are found when claims are proposed: in the plural, with
/// numbers in words, as one word or two; not in a likely misspelling, and not inside a longer name ("lamp" in "lamp
/// room"). In the order of load_interviews, then of the text. Nothing is withheld here.
std::vector<NamingTurn> naming_turns(const SiteFile& site, const AuthorityLists& lists, const NamedTerms& named,
                                     const Language& language);

}  // namespace witnessmark
