#pragma once
#include <map>
#include <optional>
#include <string>

#include "language/claims/draft.h"
#include "language/passage/finders.h"
#include "witnessmark/language/claims.h"

namespace witnessmark::claims {

/// Who speaks in an interview, and whose life its dates are reckoned from. What it is made of must outlive
/// it.
class Talkers {
 public:
  Talkers(const ReadingContext& context, const Finders& finders) : context_(context), finders_(finders) {}

  const SpeakerIdentity& at(const std::string& label);
  /// The person of the list who speaks, for "I".
  std::optional<Referent> as_referent(const SpeakerIdentity& speaker) const;
  /// Key of the narrator whose life dates are reckoned from when this speaker talks: of the first one when an
  /// interviewer does ("when you were nineteen").
  std::string life_of(const SpeakerIdentity& speaker) const;
  /// Nothing when the key is empty or no person's.
  const Person* person(const std::string& key) const;

 private:
  std::optional<std::uint32_t> index_of(const std::string& key) const;

  const ReadingContext& context_;
  const Finders& finders_;
  std::map<std::string, SpeakerIdentity, std::less<>> known_;
};

}  // namespace witnessmark::claims
