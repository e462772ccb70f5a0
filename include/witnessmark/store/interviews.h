#pragma once
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/model/access.h"
#include "witnessmark/model/interview.h"
#include "witnessmark/model/site.h"
#include "witnessmark/store/changes.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

struct InterviewChanges {
  RowCounts interviews, persons, speakers, releases, passages;
  RowCounts service;  ///< Periods of the persons taken in; one that differs takes the place of a former one.
  std::vector<ChangedRow> changed;
  bool any() const;
};

/// Takes in interviews, persons, speakers, releases and passages in one transaction. Rows are known by their
/// keys (speakers by interview and label, releases by interview and person, passages by interview and quote).
/// Ids are made for new rows whose id is nil, and never change. Service periods go with their person: those
/// of the file replace the former ones, unless the file brings none for that person. The same input again
/// changes nothing. An Error when a row refers to an interview or person that neither the input nor the site
/// file has.
Result<InterviewChanges> save_interviews(SiteFile& site, const InterviewFile& file);

/// All of them, sorted by key; passages with the range in the current reading text, empty while not found.
InterviewFile load_interviews(const SiteFile& site);

std::optional<Interview> find_interview(const SiteFile& site, std::string_view key);

/// What judge() needs for one interview. A passage not found in the current reading text covers all of it, so
/// that nothing slips out because its words were revised. Interviews that are not known are withdrawn.
AccessFile access_file(const SiteFile& site, std::string_view interview);
std::map<std::string, AccessFile> access_files(const SiteFile& site);

/// Where the passages of an interview lie in its current reading text, known by their quotes. An Error when
/// one is not a passage of that interview, or its range is empty or outside the text.
Result<void> place_passages(SiteFile& site, std::string_view interview,
                            const std::vector<RestrictedPassage>& found);

/// Keys of interviews erased for good, with the day as text.
struct ErasedInterview {
  std::string interview;
  std::string when;
};
std::vector<ErasedInterview> erased_interviews(const SiteFile& site);

}  // namespace witnessmark
