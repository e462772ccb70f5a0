#pragma once
#include <array>
#include <cstdint>
#include <deque>
#include <optional>
#include <vector>

#include "language/traits/stretches.h"

namespace witnessmark::claims {

/// How something came up that a sentence may speak of.
enum class Carried : std::uint8_t {
  thing,
  things,
  she,
  topic,
  counted,
  place_topic,
  it,
  them,
  place,
  asked_place,
  last,
  recent,
  count_
};

/// Equipment or a place that a sentence may speak of: named in it or before.
struct Candidate {
  Referent referent;                  ///< With one term.
  std::vector<const Thing*> named{};  ///< In the sentence.
  std::uint32_t carried = 0;          ///< Bits of Carried.
  std::array<int, 4> ago{};           ///< Words since, for thing, things, she, topic.
  int recent_ago = 0;                 ///< Sentences since it was named last.
  std::optional<bool> plural{};
  bool is_carried_by(Carried how) const { return (carried >> static_cast<unsigned>(how) & 1U) != 0; }
};

/// What was named in the sentences before, the nearest first.
class RecentlyNamed {
 public:
  struct Named {
    Referent referent;
    int sentence = 0;
  };
  void sentence(const StatementContext& context);
  const std::deque<Named>& named() const { return named_; }
  int now() const { return now_; }
  /// How many things of its kind were named since this one; 9 when it was not.
  int nearness(const Referent& referent) const;

 private:
  std::deque<Named> named_;
  int now_ = 0;
};

/// Everything a sentence may speak of, in a fixed order.
std::vector<Candidate> candidates_for(const StatementContext& context, const RecentlyNamed& recent);

/// The traits of a candidate as what a stretch speaks of.
Tally subject_tally(const StatementContext& context, const TraitBook& book, const Stretch& stretch,
                    const std::vector<Candidate>& candidates, std::size_t which, const RecentlyNamed& recent,
                    const std::vector<Draft>& drafts);

/// Whether the candidate is named in the stretch itself.
const Thing* named_in(const Candidate& candidate, const Stretch& stretch);

bool same_referent(const Referent& a, const Referent& b);

}  // namespace witnessmark::claims
