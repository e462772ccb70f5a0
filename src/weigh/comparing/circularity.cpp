#include "circularity.h"

#include <algorithm>

namespace witnessmark {
namespace {

bool rests_on_claim(const std::vector<std::string>& rests_on, const Claim& claim,
                    const RegisterIndex& evidence) {
  return std::any_of(rests_on.begin(), rests_on.end(), [&](const std::string& key) {
    if (key == claim.interview) return true;
    if (!claim.subject.empty() && key == claim.subject) return true;
    if (const auto* other = evidence.find(key))
      return !claim.subject.empty() && other->entry->subject == claim.subject;
    return evidence.source(key) != nullptr && evidence.lineage(key).contains(claim.interview);
  });
}

}  // namespace

Circle circle_between(const Claim& claim, const Interview& interview, const RegisterIndex::Item& item,
                      const RegisterIndex& evidence) {
  return circle_between(claim, interview, item, evidence.lineage(item.entry->source), evidence);
}

Circle circle_between(const Claim& claim, const Interview& interview, const RegisterIndex::Item& item,
                      const std::unordered_set<std::string>& lineage, const RegisterIndex& evidence) {
  const Entry& entry = *item.entry;
  if (lineage.contains(claim.interview)) return Circle::same_testimony;
  if (rests_on_claim(entry.date_rests_on, claim, evidence)) return Circle::date_rests_on_subject;
  if (rests_on_claim(entry.identification_rests_on, claim, evidence) ||
      rests_on_claim(entry.caption_rests_on, claim, evidence))
    return Circle::identity_rests_on_subject;
  const auto& shown = interview.shown_beforehand;
  if (std::any_of(shown.begin(), shown.end(), [&](const std::string& key) { return lineage.contains(key); }))
    return Circle::shown_beforehand;
  return Circle::none;
}

}  // namespace witnessmark
