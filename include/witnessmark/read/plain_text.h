#pragma once
#include <optional>
#include <string_view>

#include "witnessmark/base/result.h"
#include "witnessmark/base/text_position.h"
#include "witnessmark/model/transcript.h"
#include "witnessmark/read/reading_rules.h"

namespace witnessmark {

/// Reads a plain-text transcript; the reading text is the decoded text as it is. (Conventions: common
/// practice, no source, where none is named.)
///
/// Stamps: [m:ss], [h:mm:ss], with decimals or not, anywhere; in parentheses, or bare as h:mm:ss, only at the
/// start of a line, or alone on it. Seconds and, after hours, minutes run to 59, else a diagnostic. Stamps
/// that run backwards lose their marks (the fewest that leave the rest in order), with a diagnostic.
///
/// Paragraphs end at empty lines and before a line with a stamp or a label. Labels stand at the start of a
/// line, before or after a stamp, end in a colon followed by a space or the line's end, and have at most five
/// words and 40 code points:
/// - those named in rules.speaker_labels;
/// - capitals (AMORY, AG, SPEAKER 2, MR TALLIS) at the start of a paragraph, or anywhere when they recur; a
///   single letter (Q, A) has to recur;
/// - words that all begin with a capital (Mr. Hale, Nora Tallis) when they recur and are not openers of
///   speech (Well, So, Note, …); or when they stand once but look like a name (title or two words) and half
///   the paragraphs have labels.
/// "12:30", "three things:" and a colon inside a sentence are none. A parenthesis after the name, TUSK
/// (laughing):, is a remark. Speakers keep the label as written. A name and a time alone on a line, AMORY
/// 0:14, are a label too.
///
/// Heading lines are no utterances: all before the first label or stamp, and before that whole blocks that
/// hold a field (Date: …, Place: …) or nothing but short roles (Narrator: Nora Tallis). A paragraph of
/// nothing but a remark ([END OF TRACK 1]) or END OF … in capitals is none either. A paragraph without label
/// continues the speaker before it; where it opens with a stamp in the middle of a sentence it is joined with
/// the utterance before.
///
/// Times: an utterance that begins at a stamp is `stated`; others between stamps are interpolated by code
/// points.
Result<Transcript> read_plain_text(std::string_view bytes, std::string_view source,
                                   std::optional<Millisecond> recording_length = std::nullopt,
                                   const ReadingRules& rules = {});

}  // namespace witnessmark
