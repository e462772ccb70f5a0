#pragma once
#include <optional>
#include <string>
#include <vector>

#include "language/traits/subjects.h"

namespace witnessmark::claims {

/// Is shown every stretch of the narrator's talk and everything it may speak of, with their traits spelled
/// out: to learn weights from.
class TraitObserver {
 public:
  virtual ~TraitObserver() = default;
  virtual void stretch(CodePointRange range, const std::vector<std::string>& traits) = 0;
  /// Of the stretch shown last. The key is that of the list.
  virtual void subject(ThingKind kind, const std::string& key, const std::vector<std::string>& traits) = 0;
};

/// A statement the weights find in a stretch.
struct Judged {
  Finding finding;
  double odds = 0;                   ///< Natural logarithm of the odds, by the weights.
  std::vector<std::string> telling;  ///< The words that spoke most for it.
};

/// What the weights make of a sentence.
struct Judgement {
  std::vector<Judged> found;  ///< What it states besides what rules read; the likeliest first.
  /// Of the rules' drafts: what coders hardly ever took for a claim.
  std::vector<bool> doubted;
  /// Of the rules' drafts: natural logarithms of odds, where a stretch is quoted like them.
  std::vector<std::optional<double>> odds;
  /// Of the rules' drafts: the part of the sentence that coders would rather quote for it; nothing where it is
  /// the rule's own quote.
  std::vector<std::optional<CodePointRange>> quotes;
};

/// Weighs each stretch of a sentence by its traits. Remembers of the talk before what those ask for; every
/// sentence must be given to it, in order.
class Judge {
 public:
  /// Without an observer the weights decide; with one they are not asked, and nothing is found.
  Judge(const TraitWeights& weights, TraitObserver* observer);

  void interviewer(const StatementContext& context);
  /// The drafts are what rules read, with their quotes.
  Judgement narrator(const StatementContext& context, TalkTraits asked, CodePointRange sentence,
                     const std::vector<Draft>& drafts);

 private:
  /// What a stretch may state; of no candidate with `located`.
  struct Choice {
    std::int32_t odds;  ///< In hundredths.
    Statement statement;
    const Stretch* stretch;
    const Candidate* candidate;
  };

  /// What the weights make of a rule's draft, in hundredths.
  struct OfDraft {
    std::optional<std::int32_t> odds;  ///< Best of stretches like its quote.
    std::optional<std::int32_t> best;  ///< Best of stretches with its clause in them.
    const Stretch* quoted = nullptr;   ///< That stretch.
  };

  void show(const StatementContext& context, const TalkTraits& asked, CodePointRange sentence,
            const std::vector<Draft>& drafts);
  Judgement judge(const StatementContext& context, const std::vector<Draft>& drafts);
  void weigh(const StatementContext& context, const std::vector<Draft>& drafts);
  void remember(const StatementContext& context, const std::vector<Draft>& drafts, bool asking);

  const TraitWeights& weights_;
  TraitObserver* observer_;
  StretchReader<WeighingBook> stretches_;
  SubjectReader<WeighingBook> subjects_;
  RecentlyNamed recent_;
  Candidates candidates_;
  std::vector<Choice> choices_;                         ///< Of the sentence.
  std::vector<OfDraft> of_drafts_;
  std::vector<TalkTraits::Before> before_;
  bool after_question_ = false;
  std::vector<std::pair<std::uint64_t, std::string>> question_words_;
};

}  // namespace witnessmark::claims
