#pragma once
#include <cstdio>
#include <cstdlib>

#include "witnessmark/base/code_point_index.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/read/transcript_reader.h"

/// What holds of every transcript a reader gives, whatever the bytes were.
inline void check_transcript(const witnessmark::Result<witnessmark::Transcript>& read) {
  using namespace witnessmark;
  const auto require = [](bool holds, const char* what) {
    if (holds) return;
    std::fprintf(stderr, "broken: %s\n", what);
    std::abort();
  };
  if (!read) {
    require(!read.error().message.empty(), "an error says what is wrong");
    return;
  }
  const Transcript& transcript = *read;
  require(is_valid_utf8(transcript.reading_text), "the reading text is UTF-8");
  require(transcript.reading_text.find('\r') == std::string::npos, "lines end in LF");
  require(!transcript.utterances.empty(), "there are utterances");
  const CodePointIndex index(transcript.reading_text);
  CodePoint at{0};
  std::optional<Millisecond> time;
  for (const Utterance& utterance : transcript.utterances) {
    require(at <= utterance.range.begin && !utterance.range.empty(),
            "utterances are in order and hold something");
    at = utterance.range.end;
    const std::string_view words = index.slice(utterance.range);
    require(trim(words).size() == words.size(), "an utterance begins and ends with words");
    require((utterance.timing == Timing::none) == !utterance.time, "timing says whether there is a time");
    if (!utterance.time) continue;
    require(utterance.time->begin <= utterance.time->end, "an utterance does not end before it begins");
    require(!time || *time <= utterance.time->begin, "utterances begin one after another");
    time = utterance.time->begin;
  }
  require(at <= index.size(), "utterances lie in the text");
  for (std::size_t i = 1; i < transcript.marks.size(); ++i) {
    require(transcript.marks[i - 1].at < transcript.marks[i].at, "marks are in order of the text");
    require(transcript.marks[i - 1].time <= transcript.marks[i].time, "marks do not run backwards");
  }
  for (std::size_t i = 1; i < transcript.remarks.size(); ++i) {
    require(transcript.remarks[i - 1].range.end <= transcript.remarks[i].range.begin,
            "remarks do not overlap");
  }
}
