#include "language/claims/talkers.h"

#include <algorithm>

namespace witnessmark::claims {

const SpeakerIdentity& Talkers::at(const std::string& label) {
  const auto found = known_.find(label);
  if (found != known_.end()) return found->second;
  return known_.emplace(label, identify_speaker(context_, label)).first->second;
}

std::optional<Referent> Talkers::as_referent(const SpeakerIdentity& speaker) const {
  const std::optional<std::uint32_t> index = index_of(speaker.person);
  if (!index) return std::nullopt;
  Referent referent;
  referent.kind = ThingKind::person;
  referent.terms = {*index};
  return referent;
}

std::string Talkers::life_of(const SpeakerIdentity& speaker) const {
  if (!context_.interview || context_.interview->narrators.empty()) return speaker.person;
  const auto& all = context_.interview->narrators;
  const bool narrates = std::find(all.begin(), all.end(), speaker.person) != all.end();
  return narrates ? speaker.person : all.front();
}

const Person* Talkers::person(const std::string& key) const {
  const std::optional<std::uint32_t> index = index_of(key);
  return index ? &context_.persons[*index] : nullptr;
}

std::optional<std::uint32_t> Talkers::index_of(const std::string& key) const {
  const Term* term = finders_.persons && !key.empty() ? finders_.persons->list().find(key) : nullptr;
  if (!term) return std::nullopt;
  return static_cast<std::uint32_t>(term - finders_.persons->list().terms().data());
}

}  // namespace witnessmark::claims
