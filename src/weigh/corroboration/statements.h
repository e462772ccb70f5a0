#pragma once
#include <optional>
#include <string>

#include "witnessmark/model/claim.h"
#include "witnessmark/model/comparison.h"
#include "witnessmark/weigh/corroboration.h"
#include "witnessmark/weigh/register_index.h"

namespace witnessmark {

/// Turns claims and entries into questions, and claims into what an entry would state, so that all of them
/// can be held against one another by the one rule there is for a claim and an entry.
class Statements {
 public:
  Statements(const Register& evidence, const RegisterIndex& index) : evidence_(evidence), index_(index) {}

  /// Nothing for a statement without subject or date, or a coming or going of a mere property.
  std::optional<Claim> question_of(const Claim& claim) const;
  std::optional<Claim> question_of(const RegisterIndex::Item& item) const;

  /// The same for statements of one meaning, and only for these.
  std::string key_of(const Claim& question) const;

  /// How what was told stands to a question on the same subject; both as question_of made them.
  Stand stand_of(const Claim& told, const Claim& question) const;
  /// How an entry on the same subject stands to a question; nothing when they say nothing of one another.
  std::optional<Stand> stand_of(const RegisterIndex::Item& item, const Claim& question) const;

 private:
  std::string only_place(const std::string& subject) const;
  std::vector<std::string> names_of(const std::string& location) const;
  Outcome outcome_given(const Claim& claim, const Claim& given) const;

  const Register& evidence_;
  const RegisterIndex& index_;
};

}  // namespace witnessmark
