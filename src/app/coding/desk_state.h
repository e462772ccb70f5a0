#pragma once
#include <memory>
#include <optional>
#include <set>
#include <string>

#include "app/people.h"
#include "app/record_maker.h"
#include "witnessmark/app/coding_desk.h"
#include "witnessmark/app/withholding.h"
#include "witnessmark/language/date_lexicon.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// What a desk keeps at hand: the site file, and what of it changes rarely.
struct CodingDesk::State {
  State(SiteFile opened, const Surroundings& surroundings, DatePolicy policy, DateLexicon lexicon);

  /// Reads people, lists, register and conditions of access again.
  void read_anew();

  SiteFile site;
  const Surroundings& surroundings;
  DatePolicy policy;
  DateLexicon lexicon;
  std::string why_reading;
  std::set<std::string> opened;       ///< Withheld interviews the coder opened.
  std::unique_ptr<People> people;
  std::unique_ptr<Withholding> withholding;
  std::unique_ptr<RecordMaker> maker;

  Result<void> check_may_edit() const;
  /// Weighs one claim as it now is.
  Result<void> weigh(const Claim& claim);
  ClaimLine line(const StoredClaim& stored) const;
};

/// "ends · Cargo derrick · Foredeck": what an entry states.
std::string entry_words(const Entry& entry, const AuthorityLists& lists);

/// Letters and digits of both folded and found in order: "aft cr" is in "After crane".
bool name_has(std::string_view name, std::string_view typed);

}  // namespace witnessmark
