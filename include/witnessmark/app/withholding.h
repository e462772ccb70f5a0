#pragma once
#include <cstdint>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/model/access.h"
#include "witnessmark/model/interview.h"
#include "witnessmark/model/site.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// Decides what may leave the site file on a day, and counts what may not. Every listing and every export asks it for
/// each passage; nothing else decides.
class Withholding {
 public:
  Withholding(const SiteFile& site, Day today);

  /// Whether the ranges of the interview may go out; one that may not is counted once, under its reason.
  bool may_show(std::string_view interview, const std::vector<CodePointRange>& ranges);

  /// From now on nothing of the interview is withheld by this object: a coder opened it on the screen to work on it.
  /// Never for what leaves the site file.
  void open(std::string_view interview) { opened_.emplace(interview); }

  /// The same question, not counted.
  Withheld reason(std::string_view interview, const std::vector<CodePointRange>& ranges) const;

  /// The name a person may be shown under in that interview: the pseudonym, or "a narrator" when there is none, unless
  /// the release allows the name. Persons who are no narrators of the interview keep their names.
  std::string shown_name(std::string_view interview, std::string_view person) const;
  /// The key, where the person may be named; else what shown_name gives.
  std::string shown_key(std::string_view interview, std::string_view person) const;

  const std::map<Withheld, std::int64_t>& counts() const { return counts_; }
  std::int64_t total() const;

  /// "withheld: 3 (restricted 2, closed 1)", "nothing withheld".
  std::string account() const;

 private:
  Day today_;
  std::map<std::string, AccessFile, std::less<>> files_;
  std::map<std::string, Person, std::less<>> persons_;
  std::set<std::string, std::less<>> opened_;
  std::map<Withheld, std::int64_t> counts_;
};

}  // namespace witnessmark
