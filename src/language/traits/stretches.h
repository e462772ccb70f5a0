#pragma once
#include <cstdint>
#include <string>
#include <vector>

#include "language/statements/statements.h"
#include "language/traits/sorts.h"
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
};

/// What shares at least so much with another quote is the same.
inline constexpr double kAlike = 0.5;

/// What stands around a sentence as far as traits tell of it.
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

/// What the traits come to that a word has wherever it stands, kept for words said again.
class WordMemory {
 public:
  /// What was kept for a key that tells such words apart; what was kept in its place before is lost.
  struct Kept {
    std::uint64_t key = 0;
    Scores scores;
  };
  Kept& at(std::uint64_t key) { return kept_[key % kSize]; }

 private:
  static constexpr std::size_t kSize = 1024;
  std::vector<Kept> kept_{kSize};
};

/// The stretches of one sentence after another, with the tallies of their traits.
template <class Book>
class StretchReader {
 public:
  using Tally = typename Book::Tally;

  explicit StretchReader(const Book& book) : book_(book) {}

  void read(const StatementContext& context, const TalkTraits& talk, const std::vector<Draft>& drafts,
            CodePointRange sentence);
  const std::vector<Stretch>& stretches() const { return stretches_; }
  const Tally& tally(std::size_t stretch) const { return tallies_[stretch]; }
  /// The words of a stretch that speak most for a statement, in the order said.
  std::vector<std::string> telling(const Stretch& stretch, Statement statement) const
      requires(!Book::kSpells);

 private:
  struct Piece {
    Span span;
    Part opening;
    bool does = false;  ///< It has a predicate.
  };

  void look_at_tokens();
  void find_pieces();
  void tally_items();
  void tally_predicates();
  void tally_context();
  Part sort_of(std::uint32_t i) const;
  Part word(std::uint32_t i) const;
  Part verb_part(std::string_view base) const;
  Part opening(std::int64_t piece) const;
  bool has_predicate(std::int64_t piece) const;
  bool subject_like(std::uint32_t i) const;
  bool joins(std::uint32_t i) const;
  Part head_before(std::uint32_t from, std::uint32_t begin) const;
  Tally of_word(std::uint32_t i);
  void add_word(std::uint32_t i, Tally& tally) const;
  void past_form(std::uint32_t i, Tally& tally) const;
  void tally_inside(const Stretch& stretch, Tally& tally) const;
  void tally_edges(const Stretch& stretch, Tally& tally) const;
  const Note& note(std::uint32_t i) const { return passage_->notes[i]; }
  std::size_t local(std::uint32_t i) const { return i - span_.first; }
  Part type(std::uint32_t i) const { return types_[local(i)]; }
  Part tag(std::uint32_t i) const { return tags_[local(i)]; }

  const Book book_;
  WordMemory words_said_;
  // Of the sentence.
  const StatementContext* c_ = nullptr;
  const Passage* passage_ = nullptr;
  const TalkTraits* talk_ = nullptr;
  Span span_;
  std::vector<Piece> pieces_;
  std::vector<std::uint32_t> items_;  ///< Tokens that count: no marks, one for each thing or date.
  std::vector<Part> types_;           ///< For each token: what sort it is of.
  std::vector<Part> tags_;            ///< For each token: the word itself, or what it names.
  std::vector<std::string> spelled_words_;
  TallyRow<Tally> of_items_, of_pairs_, of_triples_;  ///< By item; those of items before it, too.
  std::vector<Tally> of_predicates_;
  Tally of_context_;
  std::vector<Stretch> stretches_;
  std::vector<Tally> tallies_;
};

}  // namespace witnessmark::claims
