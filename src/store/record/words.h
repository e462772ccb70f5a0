#pragma once
#include <array>
#include <stdexcept>
#include <string>
#include <string_view>

#include "witnessmark/model/access.h"
#include "witnessmark/model/authority_list.h"
#include "witnessmark/model/claim.h"
#include "witnessmark/model/comparison.h"
#include "witnessmark/model/conclusion.h"
#include "witnessmark/model/dated.h"
#include "witnessmark/model/entry.h"
#include "witnessmark/model/interview.h"
#include "witnessmark/model/mention.h"
#include "witnessmark/model/statement.h"
#include "witnessmark/model/transcript.h"
#include "witnessmark/store/claim_acts.h"
#include "witnessmark/store/entry_links.h"
#include "witnessmark/time/period.h"

namespace witnessmark {

/// The words a site file has for the values of an enumeration, in their order. They are the file's own, apart
/// from what is shown to people: a site file must be readable when the wording on screens has changed.
template <typename E>
struct Words;

// NOLINTBEGIN
#define WITNESSMARK_WORDS(E, ...)                                             \
  template <>                                                                 \
  struct Words<E> {                                                           \
    static constexpr auto all = std::to_array<std::string_view>(__VA_ARGS__); \
  }
WITNESSMARK_WORDS(Access, {"open", "restricted", "closed"});
WITNESSMARK_WORDS(Release, {"none", "signed", "withdrawn"});
WITNESSMARK_WORDS(Naming, {"name", "pseudonym"});
WITNESSMARK_WORDS(NumberScheme, {"none", "since-1949", "before-1949", "local"});
WITNESSMARK_WORDS(Basis, {"unstated", "first-hand", "told", "read", "inferred"});
WITNESSMARK_WORDS(Firmness, {"firm", "hedged", "guess"});
WITNESSMARK_WORDS(Polarity, {"affirmed", "denied"});
WITNESSMARK_WORDS(ClaimStatus, {"proposed", "said-so", "misread", "set-aside"});
WITNESSMARK_WORDS(Calendar, {"gregorian", "julian"});
WITNESSMARK_WORDS(SourceKind, {"physical-trace", "photograph", "drawing", "order", "log", "correspondence",
                               "publication", "testimony", "object-record"});
WITNESSMARK_WORDS(Nature, {"done", "intended"});
WITNESSMARK_WORDS(Identification, {"certain", "probable", "possible"});
WITNESSMARK_WORDS(SpotVisible, {"not-stated", "yes", "no", "partly"});
WITNESSMARK_WORDS(Fabric, {"unknown", "original", "restored"});
WITNESSMARK_WORDS(Search::Found, {"nothing", "something"});
WITNESSMARK_WORDS(SpeakerRole, {"narrator", "interviewer", "other", "unknown"});
WITNESSMARK_WORDS(Standing, {"draft", "audited", "narrator-reviewed"});
WITNESSMARK_WORDS(MentionKind, {"date", "place", "equipment", "quantity", "action", "cue"});
WITNESSMARK_WORDS(Statement,
                  {"begins", "ends", "present", "absent", "count", "attribute", "happened", "located"});
WITNESSMARK_WORDS(Timing, {"none", "stated", "interpolated"});
WITNESSMARK_WORDS(Reading, {"throughout", "within"});
WITNESSMARK_WORDS(Boundary::Kind, {"known", "unknown", "open"});
WITNESSMARK_WORDS(Answer, {"yes", "no", "cannot-tell"});
WITNESSMARK_WORDS(LinkVerdict, {"linked", "ruled-out"});
WITNESSMARK_WORDS(ClaimRelation, {"absorbed-into", "split-from"});
#undef WITNESSMARK_WORDS
// NOLINTEND

template <typename E>
constexpr std::string_view word_for(E value) {
  return Words<E>::all.at(static_cast<std::size_t>(value));
}

/// Throws std::runtime_error for a word that is none of them: the file is damaged.
template <typename E>
E value_for(std::string_view word) {
  for (std::size_t i = 0; i < Words<E>::all.size(); ++i) {
    if (Words<E>::all[i] == word) return static_cast<E>(i);
  }
  throw std::runtime_error("site file: unknown word \"" + std::string(word) + "\"");
}

}  // namespace witnessmark
