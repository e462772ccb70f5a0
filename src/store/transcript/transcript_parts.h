#pragma once
#include <cstdint>
#include <string>

#include "store/connection.h"
#include "witnessmark/store/transcripts.h"

namespace witnessmark {

/// Turns of one reading, at most. A turn's number in the index is kMostTurns times its reading, plus its
/// place.
constexpr std::int64_t kMostTurns = std::int64_t{1} << 20;

/// SHA-256 over turns, sentences, time marks and remarks.
std::string parts_sha256(const Transcript& transcript, const std::vector<Sentence>& sentences);

/// Writes them and the words for searching under a reading.
void insert_parts(StoreConnection& connection, std::int64_t reading, const Transcript& transcript,
                  const std::vector<Sentence>& sentences);
/// Removes them, out of the index too.
void delete_parts(StoreConnection& connection, std::int64_t reading);
/// Takes a reading's words out of the index; its turns stay.
void delete_words(StoreConnection& connection, std::int64_t reading);

void load_parts(StoreConnection& connection, std::int64_t reading, Transcript& transcript,
                std::vector<Sentence>& sentences);

}  // namespace witnessmark
