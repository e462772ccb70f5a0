#pragma once
#include <string>
#include <vector>

#include "witnessmark/model/site.h"
#include "witnessmark/store/journal.h"
#include "witnessmark/store/merge.h"

namespace witnessmark {

/// What was done, as after a name: "decided on a claim in lind-1", "proposed claims of lind-1", "took in the
/// list of places". Of a claim, a note and whatever else has only an id, that is left out.
std::string event_words(const JournalEvent& event);

/// The id of what it was done to, where `event_words` leaves it out; else empty.
std::string target_words(const JournalEvent& event);

/// What a decision on a claim made otherwise, and what it was before: "status proposed → said so; when
/// 1957-03 (“March”) → 1957-04; place none → Foredeck". Dates in EDTF, things and places by their names in
/// the lists. Of a row of the register taken in anew what it has otherwise, of an interview the columns.
/// Empty for a claim that was added, and where the content is withheld or erased.
std::string change_words(const JournalEvent& event, const AuthorityLists& lists);

/// What two copies have otherwise, a line each: "status: here said so, there misread". Of a claim, what was coded and
/// not what follows from it; of other records every value.
std::vector<std::string> difference_words(const DoubleDecision& difference, const AuthorityLists& lists);

}  // namespace witnessmark
