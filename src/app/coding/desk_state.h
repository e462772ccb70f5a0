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
#include "witnessmark/store/review_rows.h"
#include "witnessmark/store/site_file.h"
#include "witnessmark/store/undo.h"
#include "witnessmark/weigh/bounds.h"

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
  std::set<std::string> opened;  ///< Withheld interviews the coder opened.
  bool blind = false;            ///< Proposals are hidden while decisions are made.
  std::unique_ptr<People> people;
  std::unique_ptr<Withholding> withholding;
  std::unique_ptr<RecordMaker> maker;
  std::unique_ptr<StayEvidence> stays;  ///< Of the register alone; made when first asked for.

  Result<void> check_may_edit() const;
  Result<Claim> claim_to_change(const Id& id) const;
  ProposalView proposals() const { return blind ? ProposalView::hidden : ProposalView::shown; }
  /// Weighs one claim as it now is; nothing when there is no such claim any more.
  Result<void> weigh(const Id& claim);
  Result<TakenBack> taken_back(const Result<std::optional<CoderAct>>& act, std::string_view what);
  /// The key of the person a label of a transcript stands for; the label when it is not known.
  std::string person_of(const std::string& interview, const std::string& label) const;
  /// A claim's quotes in the current reading text, none over several turns; its speaker's words first.
  std::vector<CodePointRange> by_turn(const Claim& claim) const;
  /// The next ordinal among claims of the same main quote and statement.
  int free_ordinal(const Claim& claim) const;
  ClaimLine line(const StoredClaim& stored) const;
  /// The register's bounds of the fixture a claim speaks of.
  std::vector<BoundLine> bounds_beside(const Claim& claim);
  ReviewRequest request_for(const ClaimQuery& query) const;
  /// Interviews and passages that are not looked at; empty for none.
  std::string withheld_words(const ClaimQuery& query) const;
};

/// The words of a claim's main quote for a list.
std::string quoted_words(const Claim& claim, std::string_view quote);

/// "ends · Cargo derrick · Foredeck": what an entry states.
std::string entry_words(const Entry& entry, const AuthorityLists& lists);

/// Letters and digits of both folded and found in order: "aft cr" is in "After crane".
bool name_has(std::string_view name, std::string_view typed);

}  // namespace witnessmark
