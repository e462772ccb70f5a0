#include "app/stays/shown_evidence.h"

#include "app/shown_register.h"

#include <fmt/core.h>

#include <algorithm>

#include "witnessmark/app/date_meaning.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/evidence.h"
#include "witnessmark/store/interviews.h"
#include "witnessmark/weigh/recall.h"

namespace witnessmark {
std::vector<HeldClaim> ShownEvidence::shown_claims(const SiteFile& site, const DatePolicy& policy) {
  std::vector<HeldClaim> claims;
  ClaimFilter filter;
  filter.with_mentions = false;
  for_each_claim(site, filter, [&](const StoredClaim& stored) {
    const Claim& claim = stored.claim;
    if (claim.withdrawn || claim.status == ClaimStatus::misread || claim.status == ClaimStatus::set_aside)
      return;
    if (!withholding_.may_show(claim.interview, claim.quotes)) return;
    claims.push_back(
        {claim, claim.status == ClaimStatus::said_so ? Footing::reviewed : Footing::proposed,
         recall_of(claim.when, people_.interview(claim.interview), people_.narrator(claim), policy)});
  });
  return claims;
}

ShownEvidence::ShownEvidence(const SiteFile& site, const Surroundings& surroundings, const DatePolicy& policy)
    : site_(site),
      surroundings_(surroundings),
      withholding_(site, surroundings.today),
      people_(site),
      register_(shown_register(site, people_, withholding_, entries_withheld_)),
      lists_(load_lists(site)),
      index_(register_, lists_, policy),
      claims_(shown_claims(site, policy)),
      stays_(index_, claims_) {}

Result<std::unique_ptr<ShownEvidence>> ShownEvidence::load(const SiteFile& site,
                                                           const Surroundings& surroundings) {
  const auto policy = load_date_policy(surroundings);
  if (!policy) return policy.error();
  return std::unique_ptr<ShownEvidence>(new ShownEvidence(site, surroundings, *policy));
}

std::int64_t ShownEvidence::reviewed_claims() const {
  return std::count_if(claims_.begin(), claims_.end(),
                       [](const HeldClaim& held) { return held.footing == Footing::reviewed; });
}

std::string ShownEvidence::subject_name(const std::string& key) const {
  const Term* term = lists_.equipment.find(key);
  return term != nullptr ? term->name : withholding_.shown_name("", key);
}

std::string ShownEvidence::place_name(const std::string& key) const {
  const Term* term = lists_.places.find(key);
  return term != nullptr ? term->name : key;
}

std::string ShownEvidence::withheld() const {
  return withheld_words(withholding_, entries_withheld_);
}

std::string value_name(const std::string& subject_name, const std::string& property) {
  return property.empty() ? subject_name : subject_name + ", " + property;
}

}  // namespace witnessmark
