#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "witnessmark/model/authority_list.h"
#include "witnessmark/model/claim.h"
#include "witnessmark/weigh/register_index.h"

namespace witnessmark {

/// What is stated, for people: "Electric crane (Foredeck) fitted, 19 March 1957"; of whereabouts "the narrator at Lantern Quay,
/// 1956". A denial is not in the words.
std::string statement_words(const RegisterIndex::Item& item, const RegisterIndex& evidence);
std::string statement_words(const Claim& claim, const RegisterIndex& evidence);

/// "Electric crane (Foredeck)": preferred names, else the words said, else the keys.
std::string thing_words(const AuthorityLists& lists, const std::string& subject, const std::string& subject_words,
                        const std::string& place, const std::string& place_words);

/// The words as written, and the days they were read to mean: "“the spring of 1963” (March to May 1963)".
std::string when_words(const Dated& dated, const std::optional<Period>& period);
/// The same of a time as it is read: "some time up to 8 June 1957" of what held at some time within it, and not "until 8 June
/// 1957", as of what held throughout.
std::string when_words(const Dated& dated, const std::optional<Period>& period, Reading reading);

/// Where a claim of whereabouts has somebody, or the site.
struct Whereabouts {
  enum class Kind {
    place,  ///< Of the list of places or the itinerary, or with a capital, as names have.
    words,  ///< Of the talk: "at Lantern Quay", "ashore", "came home".
    not_named
  };
  Kind kind = Kind::not_named;
  std::string words;
};
Whereabouts whereabouts_of(const Claim& claim, const RegisterIndex& evidence);

/// "at Foredeck"; words of the talk are quoted, for they may be no name: "“ashore”"; "no place named".
std::string to_string(const Whereabouts& where);

/// A quote within a sentence: white space made single blanks and, where it is longer than 100 code points, only some 72 of them
/// around `about` (the date as said, say) or, where it does not hold these, its first words; "…" stands for what is left out.
std::string brief_quote(std::string_view quote, std::string_view about);

}  // namespace witnessmark
