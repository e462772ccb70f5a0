#include "witnessmark/app/date_reading.h"

#include "app/dates/whole_date.h"
#include "witnessmark/app/date_meaning.h"
#include "witnessmark/base/code_point_index.h"
#include "witnessmark/read/transcript_reader.h"

namespace witnessmark {
namespace {

struct Reader {
  DateLexicon lexicon;
  Discourse discourse;
};

Result<Reader> reader_for(const DateQuestion& question, const Surroundings& surroundings) {
  auto policy = load_date_policy(surroundings);
  if (!policy) return policy.error();
  auto lexicon = DateLexicon::load(surroundings.files, surroundings.language);
  if (!lexicon) return lexicon.error();
  Discourse discourse;
  discourse.policy = std::move(policy).value();
  discourse.speech_time = question.interview;
  discourse.birth = question.birth;
  discourse.century = century_before(question.interview, discourse.policy);
  discourse.prose = question.prose;
  discourse.events = question.events;
  if (question.reference) {
    discourse.reference = question.reference;
    if (const auto day = to_period(*question.reference, discourse.policy).earliest()) {
      discourse.reference_year = to_civil(*day).year;
      discourse.decade = *discourse.reference_year - (*discourse.reference_year % 10 + 10) % 10;
    }
  }
  return Reader{std::move(lexicon).value(), std::move(discourse)};
}

}  // namespace

Result<std::vector<DateExpression>> dates_in_text(std::string_view text, const DateQuestion& question,
                                                  const Surroundings& surroundings) {
  const auto reader = reader_for(question, surroundings);
  if (!reader) return reader.error();
  return read_dates(text, reader->lexicon, reader->discourse).expressions;
}

Result<DateExpression> typed_date_in_words(std::string_view text, const DateQuestion& question,
                                           const Surroundings& surroundings) {
  const auto reader = reader_for(question, surroundings);
  if (!reader) return reader.error();
  return read_whole_date(text, reader->lexicon, reader->discourse);
}

Result<TranscriptDates> dates_in_transcript(const std::filesystem::path& path, const DateQuestion& question,
                                            const Surroundings& surroundings) {
  auto reader = reader_for(question, surroundings);
  if (!reader) return reader.error();
  const auto bytes = surroundings.files.read(path);
  if (!bytes) return bytes.error();
  auto transcript = read_transcript(*bytes, path.string());
  if (!transcript) return transcript.error();
  TranscriptDates dates;
  const CodePointIndex index(transcript->reading_text);
  DateReader turns(reader->lexicon, std::move(reader->discourse));
  std::vector<DateExpression> found;
  for (const Utterance& utterance : transcript->utterances) {
    turns.read(index.slice(utterance.range), found);
    for (DateExpression& expression : found) {
      expression.range.begin.value += utterance.range.begin.value;
      expression.range.end.value += utterance.range.begin.value;
      dates.expressions.push_back(std::move(expression));
    }
  }
  dates.reading_text = std::move(transcript->reading_text);
  return dates;
}

}  // namespace witnessmark
