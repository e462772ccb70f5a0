#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/app/surroundings.h"
#include "witnessmark/base/result.h"
#include "witnessmark/language/date_expression.h"

namespace witnessmark {

/// What is known before the first word: nothing of it is taken from the clock.
struct DateQuestion {
  std::optional<Edtf> reference;   ///< Date under discussion.
  std::optional<Edtf> interview;   ///< When it was spoken or written.
  std::optional<Edtf> birth;       ///< The speaker's.
  bool prose = false;              ///< Written narrative rather than talk.
  std::vector<NamedEvent> events;  ///< By which people date.
};

/// A text in one piece: what is typed, a TimeML file's text.
Result<std::vector<DateExpression>> dates_in_text(std::string_view text, const DateQuestion& question,
                                                  const Surroundings& surroundings);

/// The one date that is typed, in words: read whole or refused.
Result<DateExpression> typed_date_in_words(std::string_view text, const DateQuestion& question,
                                           const Surroundings& surroundings);

/// A transcript of any format, turn by turn; ranges lie in its reading text.
struct TranscriptDates {
  std::string reading_text;
  std::vector<DateExpression> expressions;
};
Result<TranscriptDates> dates_in_transcript(const std::filesystem::path& path, const DateQuestion& question,
                                            const Surroundings& surroundings);

}  // namespace witnessmark
