#include "store/transcript/transcript_parts.h"

#include <fmt/format.h>

#include "store/record/words.h"
#include "witnessmark/base/code_point_index.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/base/sha256.h"

namespace witnessmark {
namespace {

std::optional<std::int64_t> begin_of(const std::optional<TimeRange>& time) {
  if (!time) return std::nullopt;
  return time->begin.value;
}

std::optional<std::int64_t> end_of(const std::optional<TimeRange>& time) {
  if (!time) return std::nullopt;
  return time->end.value;
}

/// From two columns.
std::optional<TimeRange> time_from(const SqlStatement& row, int column) {
  if (row.is_null(column) || row.is_null(column + 1)) return std::nullopt;
  return TimeRange{Millisecond{row.integer(column)}, Millisecond{row.integer(column + 1)}};
}

std::string time_text(const std::optional<TimeRange>& time, Timing timing) {
  if (!time) return fmt::format("- {}", word_for(timing));
  return fmt::format("{} {} {}", time->begin.value, time->end.value, word_for(timing));
}

void delete_rows(StoreConnection& connection, std::int64_t reading) {
  for (const char* sql :
       {"DELETE FROM sentences WHERE reading = ?", "DELETE FROM time_marks WHERE reading = ?",
        "DELETE FROM remarks WHERE reading = ?", "DELETE FROM utterances WHERE reading = ?"}) {
    connection.prepared(sql).bind(reading).run();
  }
}

}  // namespace

std::string parts_sha256(const Transcript& transcript, const std::vector<Sentence>& sentences) {
  std::string text;
  auto out = std::back_inserter(text);
  for (const Utterance& u : transcript.utterances) {
    fmt::format_to(out, "turn {}:{} {} {} {}\n", u.speaker.size(), u.speaker, u.range.begin.value,
                   u.range.end.value, time_text(u.time, u.timing));
  }
  for (const Sentence& s : sentences) {
    fmt::format_to(out, "sentence {} {} {} {}\n", s.utterance, s.range.begin.value, s.range.end.value,
                   time_text(s.time, s.timing));
  }
  for (const TimeMark& mark : transcript.marks)
    fmt::format_to(out, "mark {} {}\n", mark.at.value, mark.time.value);
  for (const Remark& remark : transcript.remarks) {
    fmt::format_to(out, "remark {} {}\n", remark.range.begin.value, remark.range.end.value);
  }
  return sha256_hex(text);
}

void insert_parts(StoreConnection& connection, std::int64_t reading, const Transcript& transcript,
                  const std::vector<Sentence>& sentences) {
  const CodePointIndex index(transcript.reading_text);
  SqlStatement& turn = connection.prepared("INSERT INTO utterances VALUES (?, ?, ?, ?, ?, ?, ?, ?)");
  SqlStatement& folded = connection.prepared("INSERT INTO utterance_words VALUES (?, ?)");
  SqlStatement& indexed = connection.prepared("INSERT INTO talk (rowid, words) VALUES (?, ?)");
  for (std::size_t n = 0; n < transcript.utterances.size(); ++n) {
    const Utterance& u = transcript.utterances[n];
    turn.bind(reading).bind(n).bind(u.speaker).bind(u.range.begin.value).bind(u.range.end.value);
    turn.bind(begin_of(u.time)).bind(end_of(u.time)).bind(word_for(u.timing)).run();
    const std::string words = fold(index.slice(u.range));
    const std::int64_t number = reading * kMostTurns + static_cast<std::int64_t>(n);
    folded.bind(number).bind(words).run();
    indexed.bind(number).bind(words).run();
  }
  SqlStatement& line = connection.prepared("INSERT INTO sentences VALUES (?, ?, ?, ?, ?, ?, ?, ?)");
  for (std::size_t n = 0; n < sentences.size(); ++n) {
    const Sentence& s = sentences[n];
    line.bind(reading).bind(n).bind(s.utterance).bind(s.range.begin.value).bind(s.range.end.value);
    line.bind(begin_of(s.time)).bind(end_of(s.time)).bind(word_for(s.timing)).run();
  }
  SqlStatement& mark = connection.prepared("INSERT INTO time_marks VALUES (?, ?, ?, ?)");
  for (std::size_t n = 0; n < transcript.marks.size(); ++n) {
    mark.bind(reading).bind(n).bind(transcript.marks[n].at.value).bind(transcript.marks[n].time.value).run();
  }
  SqlStatement& remark = connection.prepared("INSERT INTO remarks VALUES (?, ?, ?, ?)");
  for (std::size_t n = 0; n < transcript.remarks.size(); ++n) {
    const CodePointRange& range = transcript.remarks[n].range;
    remark.bind(reading).bind(n).bind(range.begin.value).bind(range.end.value).run();
  }
}

void delete_words(StoreConnection& connection, std::int64_t reading) {
  const std::int64_t first = reading * kMostTurns;
  const std::int64_t last = first + kMostTurns - 1;
  // The index has no words of its own: it must be told which ones go.
  connection
      .prepared(
          "INSERT INTO talk (talk, rowid, words) SELECT 'delete', turn, words FROM utterance_words "
          "WHERE turn BETWEEN ? AND ?")
      .bind(first)
      .bind(last)
      .run();
  connection.prepared("DELETE FROM utterance_words WHERE turn BETWEEN ? AND ?").bind(first).bind(last).run();
}

void delete_parts(StoreConnection& connection, std::int64_t reading) {
  delete_words(connection, reading);
  delete_rows(connection, reading);
}

void load_parts(StoreConnection& connection, std::int64_t reading, Transcript& transcript,
                std::vector<Sentence>& sentences) {
  SqlStatement turns(*connection.database,
                     "SELECT speaker, first, past, time_begin, time_end, timing FROM utterances "
                     "WHERE reading = ? ORDER BY n");
  turns.bind(reading);
  while (turns.step()) {
    transcript.utterances.push_back({turns.text(0),
                                     {CodePoint{turns.integer(1)}, CodePoint{turns.integer(2)}},
                                     time_from(turns, 3),
                                     value_for<Timing>(turns.text_view(5))});
  }
  SqlStatement lines(*connection.database,
                     "SELECT utterance_n, first, past, time_begin, time_end, timing FROM sentences "
                     "WHERE reading = ? ORDER BY n");
  lines.bind(reading);
  while (lines.step()) {
    sentences.push_back({static_cast<std::size_t>(lines.integer(0)),
                         {CodePoint{lines.integer(1)}, CodePoint{lines.integer(2)}},
                         time_from(lines, 3),
                         value_for<Timing>(lines.text_view(5))});
  }
  SqlStatement marks(*connection.database, "SELECT at, time FROM time_marks WHERE reading = ? ORDER BY n");
  marks.bind(reading);
  while (marks.step())
    transcript.marks.push_back({CodePoint{marks.integer(0)}, Millisecond{marks.integer(1)}});
  SqlStatement remarks(*connection.database, "SELECT first, past FROM remarks WHERE reading = ? ORDER BY n");
  remarks.bind(reading);
  while (remarks.step()) {
    transcript.remarks.push_back({{CodePoint{remarks.integer(0)}, CodePoint{remarks.integer(1)}}});
  }
}

}  // namespace witnessmark
