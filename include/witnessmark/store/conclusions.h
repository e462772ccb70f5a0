#pragma once
#include <map>
#include <string>
#include <vector>

#include "witnessmark/model/conclusion.h"
#include "witnessmark/store/changes.h"
#include "witnessmark/store/journal.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

struct ConclusionChanges {
  RowCounts conclusions, enquiries, searches;
  std::vector<ChangedRow> changed;
  bool any() const;
};

/// Takes in conclusions, enquiries and searches in one transaction, by the rules of save_interviews. An Error when a
/// search names a source, or a conclusion or enquiry a conclusion, that neither the input nor the site file has, or when
/// conclusions replace one another in a circle.
Result<ConclusionChanges> save_conclusions(SiteFile& site, const ConclusionFile& file);

/// What was done to what a conclusion rests on after it was taken in or last changed, as the journal has it,
/// by key of the conclusion: an entry, a stay, a source, an interview or a claim was changed, decided on
/// otherwise, revised or erased. Conclusions on which nothing changed are not there.
std::map<std::string, std::vector<JournalEvent>> changed_since_concluded(const SiteFile& site);

/// All of them, each part sorted by key.
ConclusionFile load_conclusions(const SiteFile& site);

}  // namespace witnessmark
