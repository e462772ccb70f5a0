#include <fmt/format.h>

#include <map>
#include <utility>

#include "store/claim/claim_rows.h"
#include "store/transcript/transcript_parts.h"
#include "store/verify/checks.h"
#include "witnessmark/base/code_point_index.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/base/sha256.h"

namespace witnessmark {
namespace {

void check_originals(Verification& verification) {
  SqlStatement select(*verification.connection.database, "SELECT interview, sha256, bytes FROM originals");
  while (select.step()) {
    ++verification.report.originals;
    if (sha256_hex(select.blob(2)) != select.text_view(1)) {
      verification.find("transcript", select.text(0), "the original is not what its hash says");
    }
  }
}

struct ReadingRow {
  std::int64_t reading;
  std::string interview;
  int version;
  bool current;
  std::int64_t code_points;
  std::string parts;
  std::string sha256;
  std::string text;
};

/// The words for searching of each turn: there for the current version, and not for those before.
void check_words(Verification& verification, const ReadingRow& row, const Transcript& transcript) {
  const CodePointIndex index(transcript.reading_text);
  SqlStatement select(
      *verification.connection.database,
      "SELECT n, words FROM utterances LEFT JOIN utterance_words ON turn = 1048576 * reading + n "
      "WHERE reading = ? ORDER BY n");
  select.bind(row.reading);
  while (select.step()) {
    const auto n = static_cast<std::size_t>(select.integer(0));
    if (n >= transcript.utterances.size())
      break;  // a gap in the numbers, which the hash of the parts tells of
    const bool right = row.current ? select.text_view(1) == fold(index.slice(transcript.utterances[n].range))
                                   : select.is_null(1);
    if (!right) {
      verification.find("search", row.interview,
                        fmt::format("the words of turn {} are not those of the text", n + 1));
      return;
    }
  }
}

void check_reading(Verification& verification, const ReadingRow& row) {
  const std::string where = fmt::format("{} version {}", row.interview, row.version);
  Transcript transcript;
  std::vector<Sentence> sentences;
  load_parts(verification.connection, row.reading, transcript, sentences);
  transcript.reading_text = row.text;
  ++verification.report.reading_texts;
  verification.report.utterances += transcript.utterances.size();
  if (sha256_hex(row.text) != row.sha256)
    verification.find("transcript", where, "the text is not what its hash says");
  if (CodePointIndex(row.text).size().value != row.code_points) {
    verification.find("transcript", where, "the text is not as long as noted");
  }
  if (parts_sha256(transcript, sentences) != row.parts) {
    verification.find("transcript", where, "turns, sentences or times are not what their hash says");
  }
  const auto check_ranges = [&](const auto& parts, const char* name) {
    std::int64_t past = 0;
    for (const auto& part : parts) {
      if (part.range.begin.value < past || part.range.end < part.range.begin ||
          part.range.end.value > row.code_points) {
        verification.find("transcript", where, fmt::format("{} lie outside the text or out of order", name));
        return;
      }
      past = part.range.end.value;
    }
  };
  check_ranges(transcript.utterances, "turns");
  check_ranges(sentences, "sentences");
  check_words(verification, row, transcript);
}

}  // namespace

void check_transcripts(Verification& verification) {
  check_originals(verification);
  SqlStatement strays(*verification.connection.database,
                      "SELECT count(*) FROM utterance_words LEFT JOIN utterances "
                      "ON reading = turn / 1048576 AND n = turn % 1048576 WHERE reading IS NULL");
  strays.step();
  if (strays.integer(0) > 0) verification.find("search", "", "there are words of turns that are not there");
  SqlStatement select(
      *verification.connection.database,
      "SELECT reading, interview, version, "
      "version = (SELECT max(version) FROM readings AS r WHERE r.interview = readings.interview), "
      "code_points, parts_sha256, sha256, text FROM readings ORDER BY interview, version");
  std::string interview;
  int expected = 1;
  while (select.step()) {
    const ReadingRow row{select.integer(0), select.text(1),    static_cast<int>(select.integer(2)),
                         select.flag(3),    select.integer(4), select.text(5),
                         select.text(6),    select.text(7)};
    if (row.interview != interview) expected = 1;
    interview = row.interview;
    if (row.version != expected++)
      verification.find("transcript", interview, "a version of the text is missing");
    check_reading(verification, row);
  }
}

void check_quotes(Verification& verification) {
  std::map<std::pair<std::string, int>, std::int64_t> sizes;
  std::map<std::string, int> current;
  SqlStatement readings(*verification.connection.database,
                        "SELECT interview, version, code_points FROM readings");
  while (readings.step()) {
    const int version = static_cast<int>(readings.integer(1));
    sizes[{readings.text(0), version}] = readings.integer(2);
    current[readings.text(0)] = std::max(current[readings.text(0)], version);
  }
  for (const ClaimRow& row : load_claim_rows(verification.connection, ClaimFilter{})) {
    ++verification.report.claims;
    const Claim& claim = row.stored.claim;
    const std::string where = to_string(claim.id);
    const auto size = sizes.find({claim.interview, row.stored.version});
    const std::int64_t limit = size == sizes.end() ? 0 : size->second;
    const auto fits = [limit](const CodePointRange& range) {
      return range.begin.value >= 0 && !range.empty() && range.end.value <= limit;
    };
    bool sound = true;
    for (const CodePointRange& quote : claim.quotes) sound = sound && fits(quote);
    for (const Mention& mention : claim.mentions) sound = sound && fits(mention.range);
    if (!sound) verification.find("claim", where, "a quote or mention lies outside its text");
    if (row.stored.lost == (row.stored.version == current[claim.interview])) {
      verification.find("claim", where, "its quote lies in another version of the text than it should");
    }
  }
  SqlStatement passages(*verification.connection.database,
                        "SELECT passages.interview, quote FROM passages JOIN readings USING (reading) "
                        "WHERE first < 0 OR past <= first OR past > code_points");
  while (passages.step()) {
    verification.find("interview", passages.text(0),
                      "a restricted passage lies outside its text: " + passages.text(1));
  }
}

}  // namespace witnessmark
