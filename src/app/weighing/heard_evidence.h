#pragma once
#include <memory>
#include <string>
#include <unordered_map>
#include <vector>

#include "app/people.h"
#include "app/record_maker.h"
#include "witnessmark/app/surroundings.h"
#include "witnessmark/app/withholding.h"
#include "witnessmark/base/result.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/site_file.h"
#include "witnessmark/weigh/corroboration.h"

namespace witnessmark {

/// What may be heard on the day: claims neither taken back, misread nor set aside, of passages that may go out, and the
/// register without the entries of interviews that may not. What is worked out from it holds nothing of what is withheld,
/// neither in words nor in numbers.
class HeardEvidence {
 public:
  static Result<std::unique_ptr<HeardEvidence>> load(const SiteFile& site, const Surroundings& surroundings);
  HeardEvidence(const HeardEvidence&) = delete;  // the index points into the register
  HeardEvidence& operator=(const HeardEvidence&) = delete;

  const Register& evidence() const { return evidence_; }
  const AuthorityLists& lists() const { return lists_; }
  const RegisterIndex& index() const { return index_; }
  const People& people() const { return people_; }
  const DatePolicy& policy() const { return index_.policy(); }
  const Withholding& withholding() const { return withholding_; }
  /// How many entries have no part in it, as they rest on withheld testimony.
  std::int64_t entries_left_out() const { return entries_left_out_; }
  /// What was left out, in words.
  std::string withheld() const;

  /// By interview and position.
  const std::vector<StoredClaim>& claims() const { return claims_; }
  std::int64_t reviewed_claims() const;
  /// Nothing when it is not among them.
  const StoredClaim* find(const Id& claim) const;

  /// Reviewed claims, or these and proposals.
  std::vector<Testimony> testimony(bool with_proposals) const;

  /// With quotes, provenance and weighing. Of a claim among claims().
  ClaimRecord record(const StoredClaim& stored);

 private:
  HeardEvidence(const SiteFile& site, const DatePolicy& policy, Day today);

  Withholding withholding_;
  People people_;
  std::int64_t entries_left_out_ = 0;
  Register evidence_;
  AuthorityLists lists_;
  RegisterIndex index_;
  RecordMaker records_;
  std::vector<StoredClaim> claims_;
  std::unordered_map<Id, std::size_t> by_id_;
};

}  // namespace witnessmark
