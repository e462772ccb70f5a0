// Any bytes as a transcript; the first byte chooses the brackets and whether the recording's length is known.
#include <cstdint>

#include "transcript_invariants.h"
#include "witnessmark/read/webvtt.h"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace witnessmark;
  if (size == 0) return 0;
  ReadingRules rules;
  rules.brackets.round = static_cast<BracketRules::Round>(data[0] % 3);
  rules.caption_turn = 20;
  rules.longest_turn = 60;
  std::optional<Millisecond> length;
  if (data[0] & 4) length = Millisecond{60'000};
  if (data[0] & 8) rules.speaker_labels = {"Tusk"};
  const std::string_view bytes(reinterpret_cast<const char*>(data) + 1, size - 1);
  check_transcript(read_webvtt(bytes, "talk", length, rules));
  return 0;
}
