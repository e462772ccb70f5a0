#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/time/day.h"
#include "witnessmark/weigh/stays.h"

namespace witnessmark {

/// How it stands with a fixture at a place on a day, or all through a longer time.
enum class Presence {
  attested_there,   ///< It was, and a statement of that very time has it there.
  inferred_there,   ///< Between a day it had come by and a day it had not yet gone.
  attested_absent,  ///< It was not, and a statement of that very time says so.
  inferred_absent,  ///< Before it can have come, or after it must have gone.
  changed,          ///< It came or went within that time.
  cannot_tell,      ///< The statements leave it open.
  contradicted,     ///< Statements that cannot all be true settle it one way and the other.
  no_evidence       ///< No dated statement speaks of it at this place; that is no evidence against it.
};
std::string_view to_string(Presence presence);
/// "attested there that day", "inferred not there" …
std::string_view in_words(Presence presence);
bool is_there(Presence presence);
bool is_absent(Presence presence);

struct PresenceAnswer {
  Presence presence = Presence::no_evidence;
  std::vector<StatementKey> on_whose_word;  ///< In order of presentation.
  std::vector<StatementKey> against;        ///< Where contradicted: those that have it not there.
  /// "come by 20 April 1938, not gone before 29 April 1963"; where the answer hangs on it, with the reason why a coming
  /// is taken for a return (Renewal).
  std::string why;
  /// Where it was not there: what would have something happen to it at that time, which is too little to contradict
  /// anybody. In order of presentation.
  std::vector<StatementKey> yet{};
  bool operator==(const PresenceAnswer&) const = default;
};

struct FixturePresence {
  std::string subject, place;
  std::string property;    ///< See FixturePlace.
  PresenceAnswer settled;  ///< By the register and reviewed claims.
  PresenceAnswer preview;  ///< And proposals nobody has decided on.
};

/// The fixtures of a group from `first` to `last` (inclusive, last no earlier than first). On the day it came
/// or went a fixture counts as there.
std::vector<FixturePresence> presence(const StayEvidence& evidence, const StayGroup& group, Day first,
                                      Day last);

}  // namespace witnessmark
