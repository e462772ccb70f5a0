#include "app/people.h"

#include "witnessmark/store/interviews.h"

namespace witnessmark {

People::People(const SiteFile& site) : file_(load_interviews(site)) {
  for (const Interview& interview : file_.interviews) interviews_.emplace(interview.key, &interview);
  for (const Person& person : file_.persons) persons_.emplace(person.key, &person);
}

const Interview& People::interview(const std::string& key) const {
  static const Interview kNone;
  const auto at = interviews_.find(key);
  return at == interviews_.end() ? kNone : *at->second;
}

const std::vector<ServicePeriod>& People::service(const std::string& person) const {
  static const std::vector<ServicePeriod> kNone;
  const auto at = persons_.find(person);
  return at == persons_.end() ? kNone : at->second->service;
}

const Person& People::narrator(const Claim& claim) const {
  static const Person kNobody;
  if (const auto at = persons_.find(claim.speaker); at != persons_.end()) return *at->second;
  const auto& narrators = interview(claim.interview).narrators;
  if (narrators.size() != 1) return kNobody;
  const auto at = persons_.find(narrators.front());
  return at == persons_.end() ? kNobody : *at->second;
}

}  // namespace witnessmark
