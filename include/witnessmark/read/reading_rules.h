#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/text_position.h"

namespace witnessmark {

/// Which brackets of a transcript hold remarks of the transcriber or an editor and not the speaker's words.
/// Houses differ (common practice, no source), so this is an argument.
struct BracketRules {
  enum class Round {
    never,   ///< Parentheses are punctuation of the speaker's words.
    listed,  ///< A remark when its words begin with one of remark_words: (pause), (laughs softly).
    always
  };
  bool square = true;  ///< [inaudible], [sic: 1958].
  bool curly = true;   ///< {tape turned}.
  Round round = Round::listed;
  /// Compared folded with the first word in the parentheses.
  std::vector<std::string> remark_words = default_remark_words();

  /// Words such as pause, laughs, inaudible, crosstalk, tape, points, sic, nods.
  static std::vector<std::string> default_remark_words();
};

/// What a house does its own way in its transcripts.
struct ReadingRules {
  BracketRules brackets;
  /// Labels known to stand for speakers, as written, without colon (speakers.csv). They are taken as labels
  /// wherever they open a line before a colon, and need not recur.
  std::vector<std::string> speaker_labels;
  /// Talk without any speaker is cut into utterances of at least caption_turn code points, at the end of a
  /// sentence or a pause of caption_pause or more; from longest_turn on at any cue or stamp.
  std::int64_t caption_turn = 600;
  std::int64_t longest_turn = 4000;
  Millisecond caption_pause{1500};
};

/// Remarks in a text, in order, brackets included, not overlapping (of nested brackets the outer). A bracket
/// not closed before the paragraph ends (an empty line) holds no remark. Byte ranges.
std::vector<ByteRange> find_remarks(std::string_view text, const BracketRules& rules);

}  // namespace witnessmark
