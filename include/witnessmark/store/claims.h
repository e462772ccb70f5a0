#pragma once
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/model/claim.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// A claim and how it stands in the site file.
struct StoredClaim {
  Claim claim;
  int version = 1;        ///< Of the reading text its quotes lie in.
  bool by_coder = false;  ///< Added by a coder, not proposed.
  bool decided = false;   ///< A coder has decided on it or corrected it.
  bool gone = false;      ///< No longer proposed; kept: a coder had decided on it or written about it.
  bool lost = false;      ///< Its words are not in the current reading text.
  bool proposed_otherwise = false;  ///< The program now proposes it with other values than those decided on.
  bool operator==(const StoredClaim&) const = default;
};

/// Which claims. Empty lists do not narrow.
struct ClaimFilter {
  std::vector<std::string> interviews = {};
  std::vector<std::string> subjects = {};  ///< Equipment keys.
  std::vector<std::string> places = {};    ///< Place keys.
  bool subject_or_place = false;  ///< Subject among subjects or place among places; else both must fit.
  std::vector<ClaimStatus> statuses = {};
  std::vector<Statement> statements = {};
  std::vector<Id> ids = {};
  bool reviewed_only = false;  ///< Decided `said_so` by a coder.
  bool to_weigh = false;       ///< Only those of claims_to_weigh().
  bool with_gone = true;
  bool with_lost = true;
  bool with_mentions = true;  ///< Without, mentions stay empty: quicker.
};

/// Claims by interview key, then position of the main quote, statement and ordinal. Nothing is withheld here:
/// judge each by access_file() of its interview and all of its quotes before it leaves.
void for_each_claim(const SiteFile& site, const ClaimFilter& filter,
                    const std::function<void(const StoredClaim&)>& visit);
std::vector<StoredClaim> load_claims(const SiteFile& site, const ClaimFilter& filter = {});
std::optional<StoredClaim> find_claim(const SiteFile& site, const Id& id);

struct ProposalChanges {
  std::size_t added = 0;
  std::size_t gone = 0;  ///< Of these, kept ones had a coder's decision.
  std::size_t gone_kept = 0;
  std::size_t changed =
      0;  ///< Same quote, statement and ordinal, other values. A decided one keeps its values.
  std::size_t unchanged = 0;
  bool any() const { return added + gone + changed > 0; }
  ProposalChanges& operator+=(const ProposalChanges& other);
  bool operator==(const ProposalChanges&) const = default;
};

/// What is proposed for one interview, in the place of what was. Quotes lie in its current reading text. A
/// claim is known again by the span of its main quote, its statement and its ordinal; it then keeps its id
/// and whatever a coder decided. Undecided ones that are no longer proposed are removed, decided ones are
/// kept and marked. One transaction, one journal event with the hash of what is now proposed; nothing is
/// written when nothing changed. Ids of the argument are used for new claims, made when nil. An Error when
/// the interview has no transcript, a claim is of another interview, has no quote, a range lies outside the
/// text, or two have the same span, statement and ordinal.
Result<ProposalChanges> replace_proposals(SiteFile& site, std::string_view interview,
                                          const std::vector<Claim>& claims);

/// Whether the coder saw what the program proposes. Coders who saw the same proposals agree more often, so
/// decisions made without are told apart.
enum class ProposalView { shown, hidden };

/// A coder's decision on a claim: the values it has from now on. Everything may differ but id and interview.
/// On the disk and in the journal (who, when, before, after, why) when it returns. Comparisons of a claim
/// whose values changed are dropped. An Error when there is no such claim, a quote lies outside its
/// reading text, or it is to be said so and lacks what_it_needs().
Result<void> decide_claim(SiteFile& site, const Claim& after, std::string_view why,
                          ProposalView proposals = ProposalView::shown);

/// A claim of the coder's own, over quotes in the current reading text. Returns its id.
Result<Id> add_claim(SiteFile& site, const Claim& claim, std::string_view why,
                     ProposalView proposals = ProposalView::shown);

/// Claims of an interview by status.
struct ClaimCount {
  std::string interview;
  ClaimStatus status = ClaimStatus::proposed;
  Statement statement = Statement::present;
  std::int64_t count = 0;
  bool operator==(const ClaimCount&) const = default;
};
std::vector<ClaimCount> count_claims(const SiteFile& site);

}  // namespace witnessmark
