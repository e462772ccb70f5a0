#pragma once
#include <map>
#include <string>
#include <unordered_map>
#include <vector>

#include "groups.h"
#include "statements.h"
#include "tracing.h"

namespace witnessmark {

/// Answers the questions on one subject without writing out who speaks: how they stand to one another is asked pair by
/// pair, but each origin is counted once. An origin that rests on nothing here, and on which nothing here rests, is a
/// group of its own and is only counted; the others, as a rule few, are put into groups.
class SubjectOutlines {
 public:
  /// Everything given must outlive it. The propositions are those on the subject.
  SubjectOutlines(const RegisterIndex& index, const Statements& statements, const Tracing& tracing,
                  const GradeTable& table, const std::vector<const Proposition*>& propositions);

  /// Of one of them; its number is not set.
  CorroborationOutline outline(const Proposition& asked);

 private:
  /// A claim or an entry with what does not depend on the question.
  struct Speaker {
    Voice voice;
    const Testimony* told = nullptr;
    const PreparedEntry* entry = nullptr;
    std::size_t origin = 0;            ///< Among origins_.
    std::vector<LineageLink> links{};  ///< Its own and those of its origin, but for what depends on the question.
  };
  struct KnownOrigin {
    Origin origin;
    bool alone = true;
    SourceKind kind = SourceKind::testimony;  ///< Of one that is alone.
  };
  /// What an origin says on a question, by side.
  struct Spoken {
    bool counted = false, second_hand = false, intention = false;
  };

  std::size_t origin_of(const Voice& voice);
  void add_told(const Testimony& told);
  void add_entries();
  void find_ties();
  const std::vector<std::size_t>& entries_beside(const std::string& place);
  bool said(const Speaker& narrator, const std::string& shown) const;
  void hear(const Speaker& speaker, Stand stand, CorroborationOutline& made);
  void count_alone(CorroborationOutline& made, std::vector<std::set<SourceKind>>& kinds_for,
                   std::vector<std::set<SourceKind>>& kinds_against);
  std::vector<TracedVoice> traced(int side) const;

  const RegisterIndex& index_;
  const Statements& statements_;
  const Tracing& tracing_;
  const GradeTable& table_;
  bool located_ = false;
  std::string subject_;
  std::vector<KnownOrigin> origins_;
  std::map<Origin, std::size_t> origin_numbers_;
  std::vector<Speaker> told_, stated_;
  struct ToldBy {
    const Question* question;
    std::size_t first, past;  ///< In told_.
    bool proposed;
  };
  std::vector<ToldBy> told_by_;
  std::unordered_map<const PreparedEntry*, std::size_t> stated_numbers_;
  std::map<std::string, std::vector<std::size_t>> beside_;        ///< Of stated_, by place.
  std::map<std::string, std::set<Origin>> reached_;               ///< From what was shown to narrators.

  // Of the question being answered.
  std::vector<Spoken> spoken_[2];
  std::vector<std::size_t> heard_origins_;
  std::vector<std::pair<const Speaker*, Stand>> tied_;            ///< For or against, of origins that are not alone.
  std::vector<Voice> stays_;
  std::vector<const Speaker*> comparable_;                        ///< Entries that say something of it.
  std::map<Stand, std::set<Origin>> written_;                     ///< Written entries, by stand.
};

/// What the itinerary says on a question of where somebody was.
std::vector<Voice> stays_beside(const Claim& question, const RegisterIndex& index, const Tracing& tracing);

}  // namespace witnessmark
