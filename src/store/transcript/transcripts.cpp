#include "witnessmark/store/transcripts.h"

#include <fmt/format.h>

#include "store/claim/claim_rows.h"
#include "store/journal_writer.h"
#include "store/record/json_text.h"
#include "store/transcript/carry.h"
#include "store/transcript/transcript_parts.h"
#include "witnessmark/base/code_point_index.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/base/sha256.h"
#include "witnessmark/store/interviews.h"

namespace witnessmark {
namespace {

constexpr std::size_t kLargestOriginal = std::size_t{256} << 20;

Error fault(const TranscriptFile& file, std::string message, std::string advice) {
  return {file.name.empty() ? file.interview : file.name, 0, 0, std::move(message), std::move(advice)};
}

/// In order, without overlap, each within the text.
template <typename Part>
bool in_order(const std::vector<Part>& parts, std::int64_t size, bool may_touch_earlier) {
  std::int64_t past = 0;
  for (const Part& part : parts) {
    const CodePointRange& range = part.range;
    if (range.begin.value < (may_touch_earlier ? 0 : past) || range.end < range.begin ||
        range.end.value > size) {
      return false;
    }
    past = range.end.value;
  }
  return true;
}

Result<void> check_file(const SiteFile& site, const TranscriptFile& file) {
  if (!find_interview(site, file.interview)) {
    return fault(file, fmt::format("interview \"{}\" is not known", file.interview), "take in its row first");
  }
  if (file.original.size() > kLargestOriginal)
    return fault(file, "is larger than 256 MiB", "split it into parts");
  const Transcript& transcript = file.transcript;
  if (!is_valid_utf8(transcript.reading_text) || transcript.reading_text.find('\0') != std::string::npos) {
    return fault(file, "the reading text is not UTF-8, or holds NUL", "decode the file anew");
  }
  if (transcript.utterances.size() > static_cast<std::size_t>(kMostTurns)) {
    return fault(file, fmt::format("has more than {} turns", kMostTurns), "split it into parts");
  }
  const std::int64_t size = CodePointIndex(transcript.reading_text).size().value;
  bool sound = in_order(transcript.utterances, size, false) && in_order(file.sentences, size, false) &&
               in_order(transcript.remarks, size, true);
  for (const TimeMark& mark : transcript.marks) sound = sound && mark.at.value >= 0 && mark.at.value <= size;
  for (const Sentence& sentence : file.sentences) {
    sound = sound && sentence.utterance < transcript.utterances.size();
  }
  if (!sound)
    return fault(file, "turns or sentences lie outside the text or out of order", "read the file anew");
  return {};
}

struct FormerReading {
  std::int64_t reading = 0;
  int version = 0;
  std::int64_t original = 0;
  std::string original_sha256;
  std::string sha256;
  std::string parts;
  std::string reader;
  std::string encoding_remark;
};

std::optional<FormerReading> former_reading(StoreConnection& connection, const std::string& interview) {
  SqlStatement& select = connection.prepared(
      "SELECT reading, version, original, originals.sha256, readings.sha256, parts_sha256, reader, "
      "encoding_remark "
      "FROM readings JOIN originals USING (original) WHERE readings.interview = ? ORDER BY version DESC "
      "LIMIT 1");
  std::optional<FormerReading> former;
  if (select.bind(interview).step()) {
    former = {select.integer(0), static_cast<int>(select.integer(1)),
              select.integer(2), select.text(3),
              select.text(4),    select.text(5),
              select.text(6),    select.text(7)};
  }
  select.reset();
  return former;
}

std::int64_t insert_original(StoreConnection& connection, const TranscriptFile& file,
                             const std::string& sha256) {
  SqlStatement& insert = connection.prepared(
      "INSERT INTO originals (interview, name, sha256, bytes) VALUES (?, ?, ?, ?) RETURNING original");
  insert.bind(file.interview).bind(file.name).bind(sha256).bind_blob(file.original);
  insert.step();
  const std::int64_t original = insert.integer(0);
  insert.reset();
  return original;
}

struct Hashes {
  std::string original;
  std::string text;
  std::string parts;
};

std::int64_t insert_reading(StoreConnection& connection, const TranscriptFile& file, int version,
                            std::int64_t original, const Hashes& hashes) {
  const Transcript& transcript = file.transcript;
  SqlStatement& insert = connection.prepared(
      "INSERT INTO readings (interview, version, original, reader, encoding_remark, code_points, "
      "parts_sha256, sha256, "
      "text) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?) RETURNING reading");
  insert.bind(file.interview)
      .bind(version)
      .bind(original)
      .bind(transcript.reader)
      .bind(transcript.encoding_remark);
  insert.bind(CodePointIndex(transcript.reading_text).size().value).bind(hashes.parts).bind(hashes.text);
  insert.bind(transcript.reading_text).step();
  const std::int64_t reading = insert.integer(0);
  insert.reset();
  return reading;
}

std::string text_of_reading(StoreConnection& connection, std::int64_t reading) {
  SqlStatement& select = connection.prepared("SELECT text FROM readings WHERE reading = ?");
  select.bind(reading).step();
  std::string text = select.text(0);
  select.reset();
  return text;
}

/// A text that was read before: only its parts, or the file it came from, differ.
void read_anew(StoreConnection& connection, const TranscriptFile& file, const FormerReading& former,
               const Hashes& hashes) {
  std::int64_t original = former.original;
  if (hashes.original != former.original_sha256)
    original = insert_original(connection, file, hashes.original);
  if (hashes.parts != former.parts) {
    delete_parts(connection, former.reading);
    insert_parts(connection, former.reading, file.transcript, file.sentences);
  }
  connection
      .prepared(
          "UPDATE readings SET original = ?, reader = ?, encoding_remark = ?, parts_sha256 = ? WHERE reading "
          "= ?")
      .bind(original)
      .bind(file.transcript.reader)
      .bind(file.transcript.encoding_remark)
      .bind(hashes.parts)
      .bind(former.reading)
      .run();
}

void append_transcript_event(StoreConnection& connection, const TranscriptFile& file,
                             const TranscriptChanges& changes, const Hashes& hashes) {
  std::string after =
      fmt::format(R"({{"version":{},"original_sha256":"{}","text_sha256":"{}","parts_sha256":"{}")",
                  changes.version, hashes.original, hashes.text, hashes.parts);
  std::string kind = "transcript-read";
  if (changes.kind == TranscriptChanges::Kind::revised) {
    kind = "transcript-revised";
    after += fmt::format(R"(,"carried":{},"lost":[)", changes.carried);
    for (std::size_t i = 0; i < changes.lost.size(); ++i) {
      if (i > 0) after += ',';
      append_json(after, changes.lost[i].claim.is_nil() ? std::string_view(changes.lost[i].quote)
                                                        : std::string_view(to_string(changes.lost[i].claim)));
    }
    after += fmt::format(R"(],"proposals_sha256":"{}")",
                         proposals_sha256(load_claim_rows(connection, file.interview)));
  }
  append_event(connection, {.kind = kind,
                            .target_kind = "interview",
                            .target = file.interview,
                            .interview = file.interview,
                            .after = after + "}"});
}

}  // namespace

Result<TranscriptChanges> save_transcript(SiteFile& site, const TranscriptFile& file) {
  StoreConnection& connection = site.connection();
  SiteTransaction transaction(site);
  if (auto checked = check_file(site, file); !checked) return checked.error();
  const Hashes hashes{sha256_hex(file.original), sha256_hex(file.transcript.reading_text),
                      parts_sha256(file.transcript, file.sentences)};
  const auto former = former_reading(connection, file.interview);

  TranscriptChanges changes;
  if (former && former->sha256 == hashes.text) {
    changes.version = former->version;
    if (former->original_sha256 == hashes.original && former->parts == hashes.parts &&
        former->reader == file.transcript.reader &&
        former->encoding_remark == file.transcript.encoding_remark) {
      return changes;
    }
    changes.kind = TranscriptChanges::Kind::read_anew;
    read_anew(connection, file, *former, hashes);
  } else {
    changes.kind = former ? TranscriptChanges::Kind::revised : TranscriptChanges::Kind::first;
    changes.version = former ? former->version + 1 : 1;
    const std::int64_t original = insert_original(connection, file, hashes.original);
    const std::int64_t reading = insert_reading(connection, file, changes.version, original, hashes);
    insert_parts(connection, reading, file.transcript, file.sentences);
    if (former) {
      delete_words(connection, former->reading);
      carry_anchors(connection, file.interview, file.transcript.reading_text, reading, changes);
    }
  }
  append_transcript_event(connection, file, changes, hashes);
  transaction.commit();
  return changes;
}

std::vector<ReadingVersion> reading_versions(const SiteFile& site, std::string_view interview) {
  std::vector<ReadingVersion> versions;
  SqlStatement select(
      *site.connection().database,
      "SELECT version, readings.sha256, originals.sha256, originals.name, reader, encoding_remark, "
      "code_points FROM readings JOIN originals USING (original) "
      "WHERE readings.interview = ? ORDER BY version");
  select.bind(interview);
  while (select.step()) {
    versions.push_back({static_cast<int>(select.integer(0)), select.text(1), select.text(2), select.text(3),
                        select.text(4), select.text(5), select.integer(6)});
  }
  return versions;
}

namespace {

/// Row of a version, the current one for 0.
std::optional<std::int64_t> reading_row(StoreConnection& connection, std::string_view interview,
                                        int version) {
  SqlStatement& select = connection.prepared(
      "SELECT reading FROM readings WHERE interview = ?1 AND (?2 = 0 OR version = ?2) ORDER BY version DESC "
      "LIMIT 1");
  std::optional<std::int64_t> row;
  if (select.bind(interview).bind(version).step()) row = select.integer(0);
  select.reset();
  return row;
}

}  // namespace

std::optional<StoredTranscript> load_transcript(const SiteFile& site, std::string_view interview,
                                                int version) {
  StoreConnection& connection = site.connection();
  const auto row = reading_row(connection, interview, version);
  if (!row) return std::nullopt;
  StoredTranscript stored;
  for (const ReadingVersion& each : reading_versions(site, interview)) {
    if (version == 0 || each.version == version) stored.version = each;
  }
  stored.transcript.reading_text = text_of_reading(connection, *row);
  stored.transcript.reader = stored.version.reader;
  stored.transcript.encoding_remark = stored.version.encoding_remark;
  load_parts(connection, *row, stored.transcript, stored.sentences);
  return stored;
}

std::optional<std::string> load_reading_text(const SiteFile& site, std::string_view interview, int version) {
  const auto row = reading_row(site.connection(), interview, version);
  if (!row) return std::nullopt;
  return text_of_reading(site.connection(), *row);
}

std::optional<std::string> load_original(const SiteFile& site, std::string_view interview, int version) {
  const auto row = reading_row(site.connection(), interview, version);
  if (!row) return std::nullopt;
  SqlStatement select(*site.connection().database,
                      "SELECT bytes FROM originals JOIN readings USING (original) WHERE reading = ?");
  select.bind(*row).step();
  return select.blob(0);
}

}  // namespace witnessmark
