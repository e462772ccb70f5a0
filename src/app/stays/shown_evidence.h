#pragma once
#include <memory>
#include <set>
#include <string>
#include <vector>

#include "app/people.h"
#include "witnessmark/app/statement_line.h"
#include "witnessmark/app/surroundings.h"
#include "witnessmark/app/withholding.h"
#include "witnessmark/base/result.h"
#include "witnessmark/store/site_file.h"
#include "witnessmark/weigh/stays.h"

namespace witnessmark {

/// The register, the lists and the claims of a site file as far as they may be shown, ready to be weighed
/// together. A claim that may not go out is left out and counted, and so is an entry of a testimony that is
/// withheld as a whole, or whose date or identification rests on one.
class ShownEvidence {
 public:
  static Result<std::unique_ptr<ShownEvidence>> load(const SiteFile& site, const Surroundings& surroundings);

  const AuthorityLists& lists() const { return lists_; }
  const RegisterIndex& index() const { return index_; }
  const std::vector<HeldClaim>& claims() const { return claims_; }
  const StayEvidence& stays() const { return stays_; }
  std::int64_t reviewed_claims() const;
  std::int64_t entries_withheld() const { return entries_withheld_; }

  /// The statements as they are shown; those asked for twice are there once.
  Result<StatementLines> lines(const std::set<StatementKey>& keys) const;

  /// Of equipment; of a person as releases allow.
  std::string subject_name(const std::string& key) const;
  /// The key; of a person who may not be named, what stands for the name.
  std::string subject_key(const std::string& key) const { return withholding_.shown_key("", key); }
  /// What a source or an interview may be called.
  std::string source_name(const std::string& key) const { return withholding_.shown_interview(key); }
  std::string place_name(const std::string& key) const;

  /// "withheld: 3 claims (…); 1 entry that rests on withheld testimony", "nothing withheld".
  std::string withheld() const;

 private:
  ShownEvidence(const SiteFile& site, const Surroundings& surroundings, const DatePolicy& policy);
  std::vector<HeldClaim> shown_claims(const SiteFile& site, const DatePolicy& policy);

  const SiteFile& site_;
  const Surroundings& surroundings_;
  Withholding withholding_;
  People people_;
  std::int64_t entries_withheld_ = 0;
  Register register_;
  AuthorityLists lists_;
  RegisterIndex index_;
  std::vector<HeldClaim> claims_;
  StayEvidence stays_;
};

/// "Funnel, colour: buff" where a value of a property is meant; else the name.
std::string value_name(const std::string& subject_name, const std::string& property);

}  // namespace witnessmark
