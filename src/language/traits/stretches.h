#pragma once
#include <cstdint>
#include <vector>

#include "language/statements/statements.h"
#include "language/traits/tally.h"

namespace witnessmark::claims {

/// Part of a sentence that might be quoted for a claim: one piece, two that follow each other, or the whole.
/// Pieces end at marks, where a clause begins, and before "and it", "but we".
struct Stretch {
  std::uint32_t first_piece = 0, past_piece = 0;
  Span span;
  CodePointRange range;
  std::uint32_t clause = 0;  ///< The first it has part of.
  bool whole = false;
  Tally tally;
};

/// What stands around a sentence as far as traits tell of it; one for each interview.
struct TalkTraits {
  bool after_question = false;
  std::vector<Part> asked_words;  ///< The first two of that question.
  struct Before {
    Part named;  ///< The last kind of thing named in the sentence; empty when none.
    bool asking = false;
    Part stated;  ///< What the last of its drafts stated; empty when none.
  };
  std::vector<Before> before;  ///< The last three sentences, the nearest first.
  int answer_age = 0;          ///< Sentences since the question.
  bool yes_no = false, when = false, where = false, how_many = false, of_people = false, inventory = false;
};

/// A sentence's stretches with the tallies of their traits.
class StretchReader {
 public:
  StretchReader(const StatementContext& context, const TraitBook& book, const TalkTraits& talk);

  std::vector<Stretch> run(const std::vector<Draft>& drafts, CodePointRange sentence) const;
  /// The words of a stretch that speak most for a statement, in the order said.
  std::vector<std::string> telling(const Stretch& stretch, Statement statement) const;

 private:
  void find_pieces();
  void type_tokens();
  void tally_tokens();
  void tally_predicates();
  void tally_context();
  Part tag(std::uint32_t i) const;
  Part word(std::uint32_t i) const;
  Part opening(std::int64_t piece) const;
  bool subject_like(std::uint32_t i) const;
  bool joins(std::uint32_t i) const;
  bool has_predicate(std::int64_t piece) const;
  Part head_before(std::uint32_t from, std::uint32_t begin) const;
  void past_form(std::uint32_t i, Tally& tally) const;
  void tally_inside(Stretch& stretch) const;
  void tally_edges(Stretch& stretch) const;
  const Note& note(std::uint32_t i) const { return passage_.notes[i]; }
  std::size_t local(std::uint32_t i) const { return i - span_.first; }

  const StatementContext& c_;
  const Passage& passage_;
  const TraitBook& book_;
  const TalkTraits& talk_;
  Span span_;
  std::vector<Span> pieces_;
  std::vector<std::uint32_t> items_;  ///< Tokens that count: no marks, one for each thing or date.
  std::vector<Part> types_;           ///< For each token of the sentence: what sort it is of.
  std::vector<std::string> spelled_words_;
  std::vector<Tally> items_tally_, pairs_tally_, triples_tally_;  ///< By item; those of items before it, too.
  std::vector<Tally> predicates_tally_;
  Tally context_tally_;
};

/// What kind of thing is named, as a part of traits.
Part kind_part(ThingKind kind);
Part statement_part(Statement statement);

/// "Hallam": a name of no list, to judge by its capital letter; or any unknown word that opens a sentence.
/// What it is called tells nothing.
bool is_name(const Passage& passage, std::uint32_t i);

/// Whether the token is a pronoun or a word that begins a noun phrase.
bool opens_a_subject(const Flags& flags);

}  // namespace witnessmark::claims
