#pragma once
#include <optional>
#include <vector>

#include "language/claims/draft.h"

namespace witnessmark::claims {

struct StatementContext;

/// What talk is about, from sentence to sentence. Mentions are aged in words from the end of their sentence;
/// which of two came last is told by where they stand in it.
struct Focus {
  static constexpr int kLongAgo = -10000;
  struct Mentioned {
    std::optional<Referent> referent;
    int at = kLongAgo;     ///< Words said by the end of the sentence that named it.
    int where = kLongAgo;  ///< Words said before it.
  };

  Mentioned thing;             ///< Last equipment spoken of.
  Mentioned things;            ///< Last in the plural.
  Mentioned named_she;         ///< Last equipment with a name of its own ("Edith"), for "she".
  Mentioned topic;             ///< What the interviewer last asked about.
  Mentioned counted;           ///< What was last counted, or asked how many of.
  Mentioned place_topic;       ///< Last place named in a sentence that names no equipment.
  int unlisted_at = kLongAgo;  ///< Where something of no list was brought in ("a washing machine").
  std::optional<Referent> place;
  int place_sentence = kLongAgo;  ///< Sentence that named it.
  Boxed<ChosenDate> date;         ///< Last date said in this turn or its question.
  int date_age = 0;               ///< Sentences since.
  bool date_asked = false;        ///< It stands in the interviewer's words of this exchange.
  bool when_unknown = false;      ///< Said in this answer: "I couldn't tell you what year."
  std::optional<Draft> last;      ///< Last claim, for "no, it was 1964".
  int last_sentence = kLongAgo;
  int words = 0, sentences = 0;  ///< Said so far.

  /// What "it" or "they" stands for: the nearest equipment, or the place when that is what is spoken of
  /// (never for "they"). Nothing when something of no list came between.
  std::optional<Referent> pronoun(bool plural, bool asking) const;
  /// "She" of equipment with a name of its own; nothing where none was spoken of.
  std::optional<Referent> she() const;
  /// What a bare number counts ("there were six").
  std::optional<Referent> counted_now() const;
  /// The place spoken of, if it was named within so many sentences.
  const Referent* place_within(int sentences_ago) const;
  /// The last claim, while "that was 1962" can still mean it.
  const Draft* repeatable() const;

  /// The interviewer takes his turn.
  void begin_exchange();
  /// Takes in a sentence and what was read from it.
  void bring_up_to_date(const StatementContext& context, std::vector<Draft> drafts);

 private:
  void name(const StatementContext& context, const Referent& referent, int at);
};

}  // namespace witnessmark::claims
