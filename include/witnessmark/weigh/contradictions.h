#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "witnessmark/weigh/stays.h"

namespace witnessmark {

/// Statements that cannot all be true, though without any one of them the rest can.
struct Contradiction {
  enum class Kind {
    stay,        ///< When a fixture came, stood there and went.
    property,    ///< Two numbers or two values of one property at one time, or the coming and going of one
                 ///< value.
    whereabouts  ///< A party at a place while the itinerary has it elsewhere.
  };
  Kind kind = Kind::stay;
  std::string subject, place;            ///< Of the first statement; what it is about.
  std::string property;  ///< The value whose stays they are of (FixturePlace), for property; or empty.
  std::vector<StatementKey> statements;  ///< In order of presentation.
  Footing footing = Footing::evidence;   ///< The weakest among them: proposed makes it a preview.
  std::size_t group = 0;                 ///< Among StayEvidence::groups(), for stays and values.
  bool operator==(const Contradiction&) const = default;
};
std::string_view to_string(Contradiction::Kind kind);

/// The sets of a group could not all be gone through.
struct SearchLimit {
  std::string subject, place;
  std::size_t searched_to = 0;  ///< Every set of up to so many statements was found.
  std::int64_t more = 0;        ///< Sets of two found and not kept.
  bool cannot_tell = false;     ///< Some statements have more ways to be read than are tried.
};

struct Contradictions {
  /// Smallest first, then those without proposals, then by subject and place, then in order of presentation.
  std::vector<Contradiction> sets;
  std::vector<SearchLimit> limits;
};

/// Finds the irreducible sets among statements about stays (one stay of a fixture at a place, or as many as
/// the register shows), about numbers and properties at one time, and of located claims against the
/// itinerary. Irreducible by statement: one statement may limit several days. Pairs are all found; of larger
/// sets all up to four statements (all, where a fixture has no more than twelve) as long as a limit of
/// questions lasts; larger ones as they turn up.
Contradictions find_contradictions(const StayEvidence& evidence, const std::vector<HeldClaim>& claims);

/// Contradictions on one footing that hang together by the statements they share: one question with all its
/// voices.
struct Dispute {
  Contradiction::Kind kind = Contradiction::Kind::stay;
  std::string subject, place, property;
  std::vector<StatementKey> statements;         ///< Of all its sets, each once, in order of presentation.
  std::vector<std::vector<StatementKey>> sets;  ///< Smallest first.
  Footing footing = Footing::evidence;          ///< proposed: each of its sets holds a proposal.
  std::size_t group = 0;
  bool operator==(const Dispute&) const = default;
};

/// Those without proposals first, then by the size of their smallest set, the number of their sets, subject
/// and place.
std::vector<Dispute> disputes(const Contradictions& contradictions, const StayEvidence& evidence);

/// What would resolve a dispute, in the order it should be thought of. It passes no judgement on a person,
/// and none of it is a finding.
struct Resolution {
  struct OfStatement {
    StatementKey statement;
    std::string how;  ///< "its identification rests on log-62".
  };
  /// 1. If it showed or meant another thing, or another site.
  std::vector<OfStatement> wrong_identification;

  /// 2. All can be true if the thing came and went once more than the register shows.
  bool another_episode = false;
  std::string episode_words;  ///< "if it had gone by … and was back by …".

  /// 3. How far its date would have to be out, at least, for it to stand with all it contradicts here, each
  /// set taken by itself. Nothing when no other date will do.
  struct Misdating {
    StatementKey statement;
    std::optional<std::int64_t> earlier, later;  ///< Days, positive.
    std::string how{};  ///< "its date is taken from earlier in the talk"; empty where the date is of the statement's own words.
  };
  std::vector<Misdating> misdating;

  /// 4. Claims, whose words may have been misheard or misread; with the other date the words may mean under
  /// which it stands with all it contradicts here, if there is one.
  struct Mishearing {
    StatementKey statement;
    std::string other_date;  ///< EDTF; empty when none of the other readings will do.
  };
  std::vector<Mishearing> mishearing;

  /// 5. Statements that, set aside alone, leave no contradiction in all that is said of it on this footing;
  /// and sources or interviews that do, set aside with all that rests on them.
  std::vector<StatementKey> set_aside;
  std::vector<std::string> set_aside_sources;
};

Resolution resolve(const Dispute& dispute, const StayEvidence& evidence,
                   const std::vector<HeldClaim>& claims);

}  // namespace witnessmark
