#pragma once
#include <cstdint>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/app/withheld_names.h"
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

  /// The name a person may be shown under in that interview: the pseudonym, or "a narrator" when there is
  /// none, unless the release allows the name. Persons who are no narrators of the interview keep their
  /// names, unless a release of theirs asks for a pseudonym.
  std::string shown_name(std::string_view interview, std::string_view person) const;
  /// The key, where the person may be named; else what shown_name gives.
  std::string shown_key(std::string_view interview, std::string_view person) const;
  bool is_person(std::string_view key) const { return persons_.contains(key); }
  /// The names all persons are shown under outside of any interview, by their keys.
  std::map<std::string, std::string> shown_names() const;

  /// Words of an interview, or on it, without the names that its narrators' release and those of others keep
  /// back: each is replaced by kNameWithheld.
  WithheldNames::Text without_names(std::string_view interview, std::string_view text,
                                    WithheldNames::Capitals capitals = WithheldNames::Capitals::needed) const;
  /// What an interview is called: its key, unless that holds a name that may not be shown; then its accession
  /// number, or the beginning of its id.
  std::string shown_interview(std::string_view interview) const;
  /// All whose keys hold such a name, with what they are called.
  const std::map<std::string, std::string, std::less<>>& plain_interviews() const {
    return plain_interviews_;
  }

  const std::map<Withheld, std::int64_t>& counts() const { return counts_; }
  std::int64_t total() const;

  /// What was asked for and may not go out, and what the site file withholds altogether: "withheld: 3 claims
  /// (restricted 2, closed 1); 1 interview (restricted 1), 2 passages (closed 2)", "withheld: no claim; 1
  /// passage (closed 1)", "nothing withheld". `what` was asked for, in the singular.
  std::string account(std::string_view what = "claim") const;
  /// "1 interview (restricted 1), 2 passages (closed 2)": of one interview, or of all where none is given;
  /// passages of interviews that are withheld altogether are not counted. Empty when there are none.
  std::string withheld_in_file(std::string_view interview = "") const;

 private:
  Day today_;
  std::map<std::string, AccessFile, std::less<>> files_;
  std::map<std::string, Person, std::less<>> persons_;
  std::map<std::string, std::string, std::less<>>
      plain_interviews_;  ///< What stands for a key with a name in it.
  std::map<std::string, std::set<std::string, std::less<>>, std::less<>>
      named_in_;  ///< Narrators, by interview.
  std::set<std::string, std::less<>> under_pseudonym_;
  WithheldNames names_;
  std::set<std::string, std::less<>> opened_;
  std::map<Withheld, std::int64_t> counts_;
};

}  // namespace witnessmark
