#pragma once
#include <optional>
#include <vector>

#include "language/statements/statements.h"

namespace witnessmark::claims {

/// Finds what a predicate is about: subjects, objects, places.
class Arguments {
 public:
  explicit Arguments(const StatementContext& context) : c_(context) {}

  /// The first group of things joined by "and" in a range that can be a subject or object.
  std::vector<const Thing*> group_in(Span span, bool from_right = false) const;
  /// What a verb is done to: right of it, before any mark but around a parenthesis ("took off, I think, the
  /// crane").
  std::vector<const Thing*> objects(const Predicate& p) const;
  std::vector<const Thing*> subjects(const Predicate& p) const;
  /// Things set against the others: "not the capstan".
  std::vector<const Thing*> contrasted(Span span) const;
  /// The things after a role word in a range.
  std::vector<const Thing*> with_role(Span span, Role role) const;

  const Thing* place_in(Span span, std::initializer_list<Role> roles, bool locations = false) const;
  /// A place for a statement of the clause; from-places only where wanted.
  std::optional<Referent> place_for(const Predicate* p, std::uint32_t clause, bool ending) const;
  /// "just aft of the crane", "on the port side"; empty when nothing of the kind is said.
  std::string relative_place(Span span, const Thing* subject) const;

  /// What "it", "they" or "that one" stands for.
  std::optional<Referent> pronoun(bool plural, std::uint32_t at) const;
  /// "the hooter that was put up": the thing right before the relative clause the predicate stands in.
  const Thing* antecedent(const Predicate& p) const;
  /// Whether what follows the verb leaves room for an object elsewhere: a mark, a preposition, a date,
  /// nothing.
  bool open_after(const Predicate& p) const;
  bool stands_for_noun(std::uint32_t i, bool& plural) const;
  bool pronoun_object(const Predicate& p, bool& plural) const;
  /// A person, or a capitalised word of no list behind the first ("I met Vera there, she was …").
  bool names_somebody(Span span) const;
  /// "She", "her", before or behind a predicate, of equipment with a name of its own.
  std::optional<Referent> she(const Predicate& p, bool object) const;
  bool pronoun_subject(const Predicate& p, bool& plural) const;

  bool has(std::uint32_t i, WordClass w) const { return c_.passage.has(i, w); }
  bool is_mark(std::uint32_t i) const { return c_.passage.is_mark(i); }
  bool any_in(Span span, WordClass w) const;
  const StatementContext& context() const { return c_; }

 private:
  bool candidate(const Thing& thing) const;
  bool other_noun_between(std::uint32_t from, std::uint32_t verb) const;
  bool joined(const Thing& before, const Thing& after) const;
  const StatementContext& c_;
};

}  // namespace witnessmark::claims
