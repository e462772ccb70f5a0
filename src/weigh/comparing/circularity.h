#pragma once
#include "witnessmark/model/claim.h"
#include "witnessmark/model/interview.h"
#include "witnessmark/weigh/register_index.h"

namespace witnessmark {

/// Why an entry is no independent witness for a claim.
enum class Circle {
  none,
  date_rests_on_subject,      ///< The entry is dated by the very fixture, by another entry on it, or by this
                              ///< interview.
  identity_rests_on_subject,  ///< So is its identification or caption.
  same_testimony,             ///< The source derives from this interview.
  shown_beforehand  ///< The narrator was shown the source, or what it derives from, before answering.
};

Circle circle_between(const Claim& claim, const Interview& interview, const RegisterIndex::Item& item,
                      const RegisterIndex& evidence);
/// The same with the lineage of the entry's source at hand.
Circle circle_between(const Claim& claim, const Interview& interview, const RegisterIndex::Item& item,
                      const std::unordered_set<std::string>& lineage, const RegisterIndex& evidence);

}  // namespace witnessmark
