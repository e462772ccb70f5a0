#pragma once
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "store/coding/acts.h"
#include "store/connection.h"
#include "witnessmark/base/result.h"

// Where two copies parted: which events each has that the other has not.

namespace witnessmark {

/// Names what an event is about, so that two events on one thing have the same. Passages are told apart by
/// their words, which their target does not have.
std::string target_name(const OwnEvent& event);

class Parting {
 public:
  /// Looks at both journals as they are now.
  Parting(StoreConnection& here, StoreConnection& there);

  bool here_knew(const EventId& id) const { return knew(here_last_, id); }
  bool there_knows(const EventId& id) const { return knew(there_last_, id); }

  /// An Error when an event that both have is not the same in both.
  Result<void> check_common() const;

  /// Brings the other's events that were not here into the journal; they change nothing else. Content of what
  /// was erased here stays out. In order, numbered as they are here.
  /// An Error when one is not what its hash says.
  Result<std::vector<OwnEvent>> bring_in();

  /// Events here on a target that the other copy does not know.
  std::vector<OwnEvent> unknown_there(std::string_view target_kind, std::string_view target) const;

 private:
  using LastCounters = std::map<Id, std::int64_t>;
  static bool knew(const LastCounters& last, const EventId& id) {
    const auto found = last.find(id.session);
    return found != last.end() && id.counter <= found->second;
  }
  std::int64_t session_row(const Id& id, const std::string& actor);

  StoreConnection& here_;
  StoreConnection& there_;
  LastCounters here_last_;
  LastCounters there_last_;
};

/// Those that were not done and undone again among themselves.
std::vector<OwnEvent> still_in_force(const std::vector<OwnEvent>& events);

}  // namespace witnessmark
