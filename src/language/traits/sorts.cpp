#include "language/traits/sorts.h"

#include <algorithm>
#include <array>

namespace witnessmark::claims {
namespace {

template <WordClass... classes>
constexpr Flags flags_of() {
  Flags made;
  (made.set(classes), ...);
  return made;
}
bool any(const Flags& flags, const Flags& of) {
  return (flags.low & of.low) != 0 || (flags.high & of.high) != 0;
}

constexpr Flags kPronouns =
    flags_of<WordClass::we, WordClass::us, WordClass::they, WordClass::it, WordClass::she, WordClass::this_,
             WordClass::them, WordClass::pronoun, WordClass::you, WordClass::there, WordClass::one,
             WordClass::self, WordClass::question_word, WordClass::relative, WordClass::exist>();
/// Skipped on the way from a verb to what it speaks of.
constexpr Flags kSkipped =
    flags_of<WordClass::determiner, WordClass::indefinite, WordClass::adverb, WordClass::negative>();
/// Stand for themselves among their neighbours.
constexpr Flags kGrammar =
    flags_of<WordClass::determiner, WordClass::indefinite, WordClass::article, WordClass::be,
             WordClass::present_be, WordClass::have, WordClass::had_or_would, WordClass::do_,
             WordClass::modal, WordClass::would, WordClass::in_there, WordClass::at, WordClass::from,
             WordClass::to, WordClass::of, WordClass::by, WordClass::with, WordClass::for_,
             WordClass::relation, WordClass::coordinator, WordClass::subordinator, WordClass::when,
             WordClass::where, WordClass::as, WordClass::before, WordClass::after, WordClass::until,
             WordClass::if_, WordClass::then, WordClass::terminator, WordClass::both, WordClass::only,
             WordClass::more, WordClass::negative, WordClass::negative_determiner, WordClass::never,
             WordClass::still, WordClass::already, WordClass::got, WordClass::off, WordClass::like,
             WordClass::way, WordClass::used_to, WordClass::everything, WordClass::nothing>();
constexpr Flags kJoining =
    flags_of<WordClass::coordinator, WordClass::subordinator, WordClass::when, WordClass::where,
             WordClass::then, WordClass::before, WordClass::after, WordClass::until, WordClass::terminator>();
constexpr Flags kJoinedOn =
    flags_of<WordClass::then, WordClass::when, WordClass::if_, WordClass::coordinator>();

/// Classes that are a sort of word, the more telling first.
constexpr std::array kSorts = {WordClass::colour,
                               WordClass::material,
                               WordClass::quality,
                               WordClass::condition,
                               WordClass::shade,
                               WordClass::person,
                               WordClass::event_noun,
                               WordClass::measure,
                               WordClass::abstract,
                               WordClass::activity,
                               WordClass::type,
                               WordClass::negative,
                               WordClass::indefinite,
                               WordClass::determiner,
                               WordClass::at,
                               WordClass::from,
                               WordClass::to,
                               WordClass::of,
                               WordClass::by,
                               WordClass::with,
                               WordClass::for_,
                               WordClass::relation,
                               WordClass::adverb,
                               WordClass::whereabouts,
                               WordClass::negative_determiner};

constexpr Flags kAnySort = [] {
  Flags made;
  for (const WordClass sort : kSorts) made.set(sort);
  return made;
}();

}  // namespace

Part class_part(WordClass word) {
  static const std::array<Part, static_cast<std::size_t>(WordClass::count_)> kNames = [] {
    std::array<Part, static_cast<std::size_t>(WordClass::count_)> made;
    for (std::size_t i = 0; i < made.size(); ++i) made[i] = named(to_string(static_cast<WordClass>(i)));
    return made;
  }();
  return kNames[static_cast<std::size_t>(word)];
}

Part predicate_kind(const Predicate& p) {
  static constexpr std::array kVerbs = {
      named("begins"),   named("ends"),    named("move"),  named("replace"), named("swap"),
      named("takeover"), named("present"), named("paint"), named("unpaint"), named("name"),
      named("happened"), named("located"), named("built"), named("does")};
  switch (p.kind) {
    case Predicate::Kind::be:
      return named("be");
    case Predicate::Kind::exist:
      return named("exist");
    case Predicate::Kind::have:
      return named("have");
    case Predicate::Kind::verb:
      break;
  }
  return kVerbs[static_cast<std::size_t>(p.verb->kind)];
}

Part kind_part(ThingKind kind) {
  static constexpr std::array kKinds = {named("equipment"), named("place"), named("location"),
                                        named("person")};
  return kKinds[static_cast<std::size_t>(kind)];
}

Part statement_part(Statement statement) {
  static const std::array<Part, kStatements> kNames = [] {
    std::array<Part, kStatements> made;
    for (std::size_t s = 0; s < made.size(); ++s) made[s] = named(to_string(static_cast<Statement>(s)));
    return made;
  }();
  return kNames[static_cast<std::size_t>(statement)];
}

bool opens_a_subject(const Flags& flags) {
  static constexpr Flags kSubjects =
      flags_of<WordClass::we, WordClass::they, WordClass::it, WordClass::she, WordClass::this_,
               WordClass::self, WordClass::you, WordClass::there, WordClass::exist, WordClass::determiner,
               WordClass::indefinite, WordClass::article, WordClass::relative, WordClass::one>();
  return any(flags, kSubjects);
}

bool is_name(const Passage& passage, std::uint32_t i) {
  return passage.capitalised(i) && !passage.notes[i].flags.any() && !passage.notes[i].info &&
         passage.tokens[i].end - passage.tokens[i].begin > 1;
}

std::optional<Part> sort_part(const Flags& flags) {
  if (!any(flags, kAnySort)) return std::nullopt;
  return class_part(*std::find_if(kSorts.begin(), kSorts.end(), [&](WordClass c) { return flags.has(c); }));
}

bool is_pronoun(const Flags& flags) {
  return any(flags, kPronouns);
}
bool is_grammar(const Flags& flags) {
  return any(flags, kGrammar);
}
bool is_passed_over(const Flags& flags) {
  return any(flags, kSkipped) && !is_pronoun(flags);
}
bool joins_on(const Flags& flags) {
  return any(flags, kJoining);
}
bool follows_joining(const Flags& flags) {
  return any(flags, kJoinedOn);
}

}  // namespace witnessmark::claims
