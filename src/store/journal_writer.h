#pragma once
#include <cstdint>
#include <string>
#include <string_view>

#include "store/connection.h"

namespace witnessmark {

/// An event to be written; who, when and what it follows come from the connection and the journal.
struct NewEvent {
  std::string kind = "";
  std::string target_kind = "";
  std::string target = "";
  std::string interview = "";
  std::string before = "";
  std::string after = "";
  std::string why = "";
  std::string reverses = "";  ///< Of one that undoes or redoes: the first event of the act it is about.
  bool blind = false;         ///< Decided while proposals were hidden.
};

/// Adds an event that follows all present heads. Inside a transaction, whose outermost makes its events one
/// act. Returns its number in this file.
std::int64_t append_event(StoreConnection& connection, const NewEvent& event);

/// Notes that what claims are weighed against has changed with that event.
void mark_evidence_changed(StoreConnection& connection, std::int64_t event);

/// SHA-256, 32 bytes, of texts each preceded by its length, so that no two rows of texts give the same bytes.
std::string framed_sha256(std::initializer_list<std::string_view> parts);

/// What names an event and says who and when, beside what it is about.
struct EventOrigin {
  Id session;
  std::int64_t counter = 0;
  std::int64_t act = 0;  ///< Number of the first event of its act, 0 when it is that itself.
  std::string actor;
  std::string wall_time;
};

/// The hash of an event over everything that is the same in every copy of it. `follows` are hashes of the
/// events it follows, sorted and joined. Events as version 2 of the structure had them (one to an act,
/// undoing nothing, not blind) have the hash they had there.
std::string event_sha256(const EventOrigin& origin, const NewEvent& event, std::string_view content_sha256,
                         std::string_view follows);

/// An event as a row of this file.
struct EventRow {
  std::int64_t number = 0;   ///< In this file.
  std::int64_t session = 0;  ///< Row of its session.
  EventOrigin origin;
  NewEvent event;
  std::string content_sha256;
  std::string sha256;
  bool imported = false;  ///< Came from another copy.
};
/// Writes the row and its content as they are; what it follows and the heads are left to the caller.
void insert_event_row(StoreConnection& connection, const EventRow& row);

}  // namespace witnessmark
