#pragma once
#include <vector>

#include "witnessmark/model/authority_list.h"
#include "witnessmark/model/entry.h"
#include "witnessmark/model/interview.h"

namespace witnessmark {

/// Interviews as read from spreadsheets, not yet with their transcripts.
struct InterviewFile {
  std::vector<Interview> interviews;
  std::vector<Person> persons;          ///< With their service periods.
  std::vector<Speaker> speakers;
  std::vector<NarratorRelease> releases;
  std::vector<RestrictedPassage> passages;  ///< Ranges not yet found.
};

/// The dated evidence.
struct Register {
  std::vector<Source> sources;
  std::vector<Derivation> derivations;
  std::vector<Entry> entries;
  std::vector<Stay> itinerary;
  std::vector<NamedEvent> events;
};

/// The two authority lists.
struct AuthorityLists {
  AuthorityList places;
  AuthorityList equipment;
};

}  // namespace witnessmark
