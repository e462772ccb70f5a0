#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/text_position.h"

namespace witnessmark {

/// A node of a cue's text: words, a timestamp or a span with children.
struct CueNode {
  enum class Kind { text, timestamp, c, i, b, u, ruby, rt, v, lang };
  Kind kind = Kind::text;
  std::string text;  ///< Of a text node; the annotation of v (a name) and lang (a language).
  std::vector<std::string> classes;
  Millisecond time;  ///< Of a timestamp.
  std::vector<CueNode> children;
  bool operator==(const CueNode&) const = default;
};

/// The cue text parser of the WebVTT standard (sections 6.4 and 6.5: tokenizer and tree building), character
/// references as in HTML. Spans nested deeper than 64 are read as their contents.
std::vector<CueNode> parse_cue_text(std::string_view text);

/// A time as the standard's "collect a WebVTT timestamp" reads it: mm:ss.ttt or h…:mm:ss.ttt, the whole text.
std::optional<Millisecond> parse_webvtt_timestamp(std::string_view text);

/// Character references of the HTML standard replaced (section 13.5 and its numeric rules).
std::string read_character_references(std::string_view text);

}  // namespace witnessmark
