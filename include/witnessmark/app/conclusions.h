#pragma once
#include <set>
#include <string>
#include <vector>

#include "witnessmark/app/withholding.h"
#include "witnessmark/model/conclusion.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// A conclusion with what it stands beside: what it took the place of, what took its place, and the answers
/// that rest on it. Something done to what a conclusion rests on, after it was drawn.
struct GroundChange {
  std::string kind, key;  ///< "entry", "e4".
  std::string what;       ///< "changed the entry e4".
  std::string
      how;  ///< "when 1949-11-12 → 1947-11-12"; empty where the journal does not say or it is withheld.
  std::string by, at;
};

struct ConclusionHistory {
  Conclusion conclusion;
  std::string subject_name, place_name;
  std::vector<Conclusion> replaced_by;
  std::vector<Conclusion> replaces;
  std::vector<Enquiry> answers;   ///< Those given on it; when it was replaced, the people to be told.
  std::vector<GroundChange> changed_since;  ///< Of what it rests on, in the order in which it was done.
  bool stands() const { return replaced_by.empty(); }
};

/// All conclusions, those that stand first, then by date and key. They are the institution's own records and say what
/// it said. One that was not published and rests on testimony that may not go out is withheld and counted.
std::vector<ConclusionHistory> conclusion_histories(const SiteFile& site, Withholding& withholding);

/// Of these the ones about any of the terms (equipment or place).
std::vector<ConclusionHistory> conclusions_on(const SiteFile& site, const std::set<std::string>& equipment,
                                              const std::set<std::string>& places, Withholding& withholding);

/// Searches in sources for any of the terms.
std::vector<Search> searches_for(const SiteFile& site, const std::set<std::string>& equipment,
                                 const std::set<std::string>& places);

}  // namespace witnessmark
