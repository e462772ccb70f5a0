#pragma once
#include <cstdint>
#include <string>
#include <string_view>

#include "store/connection.h"

namespace witnessmark {

/// An event to be written; who, when and what it follows come from the connection and the journal.
struct NewEvent {
  std::string kind;
  std::string target_kind;
  std::string target;
  std::string interview = "";
  std::string before = "";
  std::string after = "";
  std::string why = "";
};

/// Adds an event that follows all present heads. Inside a transaction. Returns its number in this file.
std::int64_t append_event(StoreConnection& connection, const NewEvent& event);

/// Notes that what claims are weighed against has changed with that event.
void mark_evidence_changed(StoreConnection& connection, std::int64_t event);

/// SHA-256, 32 bytes, of texts each preceded by its length, so that no two rows of texts give the same bytes.
std::string framed_sha256(std::initializer_list<std::string_view> parts);

/// The hash of an event over everything that is the same in every copy of it. `follows` are hashes of the
/// events it follows, sorted and joined.
std::string event_sha256(const Id& session, std::int64_t counter, std::string_view actor,
                         std::string_view wall_time, const NewEvent& event, std::string_view content_sha256,
                         std::string_view follows);

}  // namespace witnessmark
