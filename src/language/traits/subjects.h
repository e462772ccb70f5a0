#pragma once
#include <array>
#include <cstdint>
#include <deque>
#include <optional>
#include <string>
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

/// Equipment or a place that a sentence may speak of: one meaning of what was named in it or before.
struct Candidate {
  ThingKind kind = ThingKind::equipment;
  std::uint32_t term = 0;
  const Referent* from = nullptr;     ///< What was named, with all its meanings.
  std::vector<const Thing*> named{};  ///< In the sentence.
  std::uint32_t carried = 0;          ///< Bits of Carried.
  std::array<int, 4> ago{};           ///< Words since, for thing, things, she, topic.
  int recent_ago = 0;                 ///< Sentences since it was named last.
  int nearness = 0;                   ///< How many things of its kind were named since; 9 when it was not.
  std::optional<bool> plural{};

  bool is_carried_by(Carried how) const { return (carried >> static_cast<unsigned>(how) & 1U) != 0; }
  /// Whether that speaks of it, in one of its meanings.
  bool is(const Referent& other) const;
  Referent referent() const;
};

/// What was named in the sentences before, each once, the nearest first.
class RecentlyNamed {
 public:
  struct Named {
    Referent referent;  ///< With one term.
    int sentence = 0;
  };
  void sentence(const StatementContext& context);
  const std::deque<Named>& named() const { return named_; }
  int now() const { return now_; }

 private:
  std::deque<Named> named_;
  int now_ = 0;
};

/// Everything a sentence may speak of, in a fixed order. What they were named as lives as long as the
/// sentence is the last one given.
class Candidates {
 public:
  void find(const StatementContext& context, const RecentlyNamed& recent);
  const std::vector<Candidate>& list() const { return list_; }

 private:
  Candidate* add(const Referent& referent, std::uint32_t term);
  void carried(const Referent* referent, Carried how, int ago = 0);

  std::vector<Candidate> list_;
  std::deque<Referent> made_;  ///< Of this sentence.
};

/// The traits of the candidates as what a stretch speaks of.
template <class Book>
class SubjectReader {
 public:
  using Tally = typename Book::Tally;

  explicit SubjectReader(const Book& book) : book_(book) {}

  /// Goes on to a sentence; what is given must live until the next.
  void read(const StatementContext& context, const std::vector<Candidate>& candidates,
            const std::vector<Draft>& drafts);
  /// Goes on to a stretch of it.
  void read(const Stretch& stretch);
  /// Of a candidate in that stretch.
  Tally tally(std::size_t candidate);

 private:
  /// A draft whose quote touches the stretch.
  struct Beside {
    const Draft* draft;
    const Referent* about;  ///< Nothing when it has no subject or place.
    double shared;
  };

  void add_carried(const Candidate& it, int rank, Tally& tally) const;
  void add_carried_here(const Candidate& it, Tally& tally) const;
  void add_named_here(const Candidate& it, const Thing& thing, Tally& tally) const;
  void add_named_elsewhere(const Candidate& it, Tally& tally) const;
  void add_beside_rule(const Candidate& it, const Beside& beside, Tally& tally) const;
  int others(const Candidate& it) const;
  Part word_at(std::int64_t i) const;
  Part spoken(std::uint32_t token) const;

  const Book book_;
  // Of the sentence.
  const StatementContext* c_ = nullptr;
  const std::vector<Candidate>* candidates_ = nullptr;
  const std::vector<Draft>* drafts_ = nullptr;
  std::vector<Tally> own_;  ///< Of each candidate, whatever the stretch.
  mutable std::deque<std::string> spelled_;
  // Of the stretch.
  const Stretch* stretch_ = nullptr;
  std::vector<const Thing*> equipment_;  ///< Named in it.
  int nearby_ = 0;                       ///< Equipment and places named in it.
  bool one_ = false, many_ = false;
  std::vector<std::uint32_t> pronouns_;
  Tally of_carried_;  ///< Of everything that is carried.
  std::vector<Beside> beside_;
};

/// Where the candidate is named in the stretch itself.
const Thing* named_in(const Candidate& candidate, const Stretch& stretch);

}  // namespace witnessmark::claims
