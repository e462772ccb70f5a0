#pragma once
#include <doctest/doctest.h>

#include <string>

#include "witnessmark/base/code_point_index.h"
#include "witnessmark/model/transcript.h"
#include "witnessmark/read/transcript_reader.h"

/// All of a transcript for tables: utterances, then "@time word" for each mark, then remarks, then
/// diagnostics.
inline std::string dump(const witnessmark::Result<witnessmark::Transcript>& read) {
  using namespace witnessmark;
  if (!read) return to_string(read.error()) + "\n";
  std::string out;
  const CodePointIndex index(read->reading_text);
  for (const Utterance& utterance : read->utterances) out += dump(*read, utterance) + "\n";
  for (const TimeMark& mark : read->marks) {
    std::string_view rest = index.slice({mark.at, {mark.at.value + 12}});
    rest = rest.substr(0, rest.find_first_of(" \n"));
    out += "@" + to_timecode(mark.time) + " " + std::string(rest.empty() ? "|" : rest) + "\n";
  }
  for (const Remark& remark : read->remarks) out += "remark " + std::string(index.slice(remark.range)) + "\n";
  for (const Diagnostic& diagnostic : read->diagnostics) out += to_string(diagnostic) + "\n";
  return out;
}

struct TranscriptRow {
  const char* name;
  const char* text;
  const char* dump;
};

template <std::size_t count>
void check_transcripts(const TranscriptRow (&rows)[count], witnessmark::TranscriptFormat format,
                       const witnessmark::ReadingRules& rules = {},
                       std::optional<witnessmark::Millisecond> length = std::nullopt) {
  for (const TranscriptRow& row : rows) {
    CAPTURE(row.name);
    CHECK(dump(witnessmark::read_transcript(row.text, "talk", format, length, rules)) == row.dump);
  }
}
