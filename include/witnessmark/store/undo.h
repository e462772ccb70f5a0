#pragma once
#include <optional>
#include <string>
#include <vector>

#include "witnessmark/store/journal.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// What one event of an act was about.
struct ActTarget {
  std::string event_kind;   ///< "decided", "added", "noted" …
  std::string target_kind;  ///< "claim", "note" …
  std::string target;
  std::string interview;  ///< Key; may be empty.
  bool operator==(const ActTarget&) const = default;
};

/// What a coder did in one go: a decision, a note, a split, the same decision on many claims.
struct CoderAct {
  EventId id;  ///< Its first event.
  std::string actor;
  std::string wall_time;  ///< Text for people.
  std::string why;
  std::vector<ActTarget> targets;  ///< In the order in which they were done.
  std::string words;               ///< For a status line: "decision on a claim", "note on 2 claims".
  bool operator==(const CoderAct&) const = default;
};

/// Reverses the present coder's own latest act that is not undone, in this or an earlier session with this
/// file, by events "undone" that carry what they restore. Acts of others are left alone, and so is what was
/// done in another copy. Without limit. Nothing when there is none left. An Error, with nothing written, when
/// somebody changed one of its targets since: it says who; and when something else of this transaction was
/// written before. A claim nobody has decided on any more is what the program now proposes.
Result<std::optional<CoderAct>> undo(SiteFile& site);

/// Does again what was undone last; nothing when nothing is left, and always after a new act. Errors as undo.
Result<std::optional<CoderAct>> redo(SiteFile& site);

/// What undo() and redo() would be about.
std::optional<CoderAct> next_undo(const SiteFile& site);
std::optional<CoderAct> next_redo(const SiteFile& site);

}  // namespace witnessmark
