#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "store/connection.h"
#include "witnessmark/store/undo.h"

namespace witnessmark {

/// An event of this file's own, with its content.
struct OwnEvent {
  std::int64_t number = 0;
  EventId id;
  std::string actor;
  std::string wall_time;
  std::string kind;
  std::string target_kind;
  std::string target;
  std::string interview;
  std::string before;
  std::string after;
  std::string why;
  bool blind = false;
  EventId root;  ///< First event of its act, or of the act that is undone or redone.
};

/// Whether events of that kind are what coders do, and can undo.
bool is_coders(std::string_view kind);

/// The events of one act, in order.
std::vector<OwnEvent> events_of_act(StoreConnection& connection, const EventId& first);

/// The act the coder would undo, or redo, next: its first event.
std::optional<EventId> act_to_undo(StoreConnection& connection, std::string_view actor);
std::optional<EventId> act_to_redo(StoreConnection& connection, std::string_view actor);

/// The last act that did, undid or redid what began as `root`: `root` itself when it was never undone.
EventId last_toggle(StoreConnection& connection, const EventId& root);

/// Whether the act was not in force: not yet done, or undone. After that event of this file, or by now.
bool was_undone(StoreConnection& connection, const EventId& root, std::int64_t after_event);
bool is_undone(StoreConnection& connection, const EventId& root);

/// Events of this file's own on the same target, after one of them.
std::vector<OwnEvent> later_events(StoreConnection& connection, const OwnEvent& event);

CoderAct describe_act(const std::vector<OwnEvent>& events);

}  // namespace witnessmark
