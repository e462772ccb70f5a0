#pragma once
#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/id.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// Names an event for good, also in copies: a session's random id and the event's number in that session,
/// from 1.
struct EventId {
  Id session;
  std::int64_t counter = 0;
  auto operator<=>(const EventId&) const = default;
};
/// "0123…:7".
std::string to_string(const EventId& id);
std::optional<EventId> parse_event_id(std::string_view text);

/// One thing done to one target. Events are ordered by what they follow, never by clocks.
struct JournalEvent {
  EventId id;
  std::vector<EventId> follows;     ///< Sorted. Empty only for the first of a site file.
  EventId act;                      ///< The first event of its act: of what was done in one go.
  std::optional<EventId> reverses;  ///< Of one that undoes or redoes: the first event of that act.
  bool blind = false;               ///< Decided while proposals were hidden.
  bool imported = false;            ///< Done in another copy, whose journal was brought in.
  std::string actor;
  std::string wall_time;  ///< Text for people.
  std::string kind;       ///< "created", "taken-in", "changed", "proposed", "decided", "added", "weighed" …
  std::string target_kind;  ///< "site", "interview", "person", "entry", "claim" …
  std::string target;       ///< A key, or a claim's id.
  std::string interview;    ///< Key of the interview its content is about; empty when of none.
  std::string before;       ///< JSON, or empty.
  std::string after;        ///< JSON, or empty.
  std::string why;
  bool erased = false;  ///< Its content was erased with its interview or person.
  bool operator==(const JournalEvent&) const = default;
};

/// In the order in which they came into this file: an event always after those it follows.
void for_each_event(const SiteFile& site, const std::function<void(const JournalEvent&)>& visit);

/// Events on one target, the same order.
std::vector<JournalEvent> events_on(const SiteFile& site, std::string_view target_kind,
                                    std::string_view target);

std::int64_t count_events(const SiteFile& site);

/// Events that no other follows.
std::vector<EventId> journal_heads(const SiteFile& site);

}  // namespace witnessmark
