#pragma once
#include <filesystem>
#include <string>
#include <vector>

#include "witnessmark/base/file_system.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// A row of expected/situations.csv against what the program made of it.
struct SituationResult {
  std::string situation;
  std::string quote;
  bool claimed = false;   ///< A claim over these words, with this statement, subject and place.
  bool dated = false;     ///< Its time is the one expected.
  bool weighed = false;   ///< Outcome, and gap where one is given.
  bool recalled = false;  ///< Service, age and recall distance.
  std::string found;      ///< What was found instead, for people.
  bool right() const { return claimed && dated && weighed && recalled; }
};

/// Holds a site file against the conclusions a careful reader wrote down by hand.
std::vector<SituationResult> check_situations(const SiteFile& site, const FileReader& files,
                                              const std::filesystem::path& situations);

}  // namespace witnessmark
