#pragma once
#include <memory>
#include <optional>
#include <string>
#include <unordered_map>

#include "weigh/comparing/evidence_beside.h"
#include "witnessmark/model/claim.h"
#include "witnessmark/model/comparison.h"
#include "witnessmark/weigh/corroboration.h"
#include "witnessmark/weigh/register_index.h"

namespace witnessmark {

/// A question with all that is worked out from it once, whatever it is held against.
struct Question {
  explicit Question(Claim put) : claim(std::move(put)) {}
  Question(const Question&) = delete;  // its parts point into it
  Question& operator=(const Question&) = delete;

  Claim claim;
  std::string key;       ///< The same for statements of one meaning, and only for these.
  TimedClaim timed{};
  std::unique_ptr<Claim> affirmed{};   ///< Of one that is denied, what it denies.
  TimedClaim timed_affirmed{};
  Entry stating;         ///< What an entry would say if it stated what it affirms or denies.
  TimedEntry as_fact{};
  /// Of `located`: the place as told, folded, and the stay it tells of.
  std::string folded_place{};
  std::vector<std::string> stay_at{};
  std::optional<Period> stay_during{};
};

/// Statements of one meaning with those who make them.
struct Proposition {
  std::unique_ptr<Question> question;
  std::vector<const Testimony*> told;
  bool stated = false;  ///< By an entry.
};

/// Turns claims and entries into questions, and claims into what an entry would state, so that all of them
/// can be held against one another by the one rule there is for a claim and an entry.
class Statements {
 public:
  explicit Statements(const RegisterIndex& index);

  /// Nothing for a statement without subject or date, or a coming or going of a mere property.
  std::optional<Claim> question_of(const Claim& claim) const;
  std::optional<Claim> question_of(const RegisterIndex::Item& item) const;

  /// The same for statements of one meaning, and only for these.
  std::string key_of(const Claim& question) const;

  /// Of what question_of made.
  std::unique_ptr<Question> prepared(Claim question) const;

  /// How what was told stands to a question on the same subject.
  Stand stand_of(const Question& told, const Question& question) const;
  /// How an entry on the same subject stands to a question; nothing when they say nothing of one another.
  std::optional<Stand> stand_of(const PreparedEntry& entry, const Question& question) const;

 private:
  std::string only_place(const std::string& subject) const;
  std::vector<std::string> names_of(const std::string& location) const;
  Outcome outcome_given(const TimedClaim& claim, const Question& given) const;
  Outcome outcome_given_stay(const Question& asked, bool denied, const Question& given) const;

  const RegisterIndex& index_;
  std::unordered_map<const Entry*, std::string> stated_;  ///< Keys of the questions that entries put.
};

}  // namespace witnessmark
