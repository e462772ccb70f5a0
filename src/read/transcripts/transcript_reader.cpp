#include "witnessmark/read/transcript_reader.h"

#include <fmt/format.h>

#include "read/transcripts/decoded_readers.h"
#include "read/transcripts/subrip_timing.h"
#include "read/transcripts/text_lines.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

constexpr std::string_view kUtf8Mark = "\xEF\xBB\xBF";
constexpr int kLinesLookedAt = 12;

bool ends_with_folded(std::string_view name, std::string_view ending) {
  return name.size() >= ending.size() && fold(name.substr(name.size() - ending.size())) == ending;
}

bool opens_as_webvtt(std::string_view text) {
  return text.starts_with("WEBVTT") &&
         (text.size() == 6 || std::string_view(" \t\n\r").find(text[6]) != std::string_view::npos);
}

}  // namespace

std::string_view to_string(TranscriptFormat format) {
  switch (format) {
    case TranscriptFormat::webvtt:
      return "webvtt";
    case TranscriptFormat::subrip:
      return "subrip";
    case TranscriptFormat::text:
      break;
  }
  return "text";
}

std::optional<TranscriptFormat> parse_transcript_format(std::string_view text) {
  for (const auto format : {TranscriptFormat::webvtt, TranscriptFormat::subrip, TranscriptFormat::text}) {
    if (text == to_string(format)) return format;
  }
  return std::nullopt;
}

TranscriptFormat detect_format(std::string_view file_name, std::string_view decoded_text) {
  if (opens_as_webvtt(decoded_text)) return TranscriptFormat::webvtt;
  LineScanner lines(decoded_text);
  for (int i = 0; i < kLinesLookedAt && !lines.at_end(); ++i) {
    if (read_subrip_timing(lines.next())) return TranscriptFormat::subrip;
  }
  if (ends_with_folded(file_name, ".vtt")) return TranscriptFormat::webvtt;
  if (ends_with_folded(file_name, ".srt")) return TranscriptFormat::subrip;
  return TranscriptFormat::text;
}

Result<DecodedText> decode_transcript(std::string_view bytes, std::string_view source) {
  const std::string_view unmarked = bytes.starts_with(kUtf8Mark) ? bytes.substr(kUtf8Mark.size()) : bytes;
  if (!opens_as_webvtt(unmarked) || bytes.find('\0') == bytes.npos) return decode_text(bytes, source);
  std::string mended;
  mended.reserve(bytes.size());
  for (const char c : bytes) {
    if (c == '\0') {
      mended += "\uFFFD";
    } else {
      mended += c;
    }
  }
  return decode_text(mended, source);
}

Transcript start_transcript(const ReadingTask& task, std::string_view reader) {
  Transcript transcript;
  transcript.reader = reader;
  transcript.encoding_remark = task.decoded.remark;
  if (task.decoded.assumed) {
    transcript.diagnostics.push_back(
        {Diagnostic::Severity::note,
         {std::string(task.source), 0, 0, fmt::format("encoding: {}", task.decoded.remark),
          "save the file as UTF-8 if letters come out wrong"}});
  }
  return transcript;
}

Result<Transcript> read_transcript(std::string_view bytes, std::string_view source,
                                   std::optional<TranscriptFormat> format,
                                   std::optional<Millisecond> recording_length, const ReadingRules& rules) {
  auto decoded = decode_transcript(bytes, source);
  if (!decoded) return decoded.error();
  const TranscriptFormat as = format ? *format : detect_format(source, decoded->text);
  const ReadingTask task{*std::move(decoded), source, recording_length, rules};
  switch (as) {
    case TranscriptFormat::webvtt:
      return webvtt_transcript(task);
    case TranscriptFormat::subrip:
      return subrip_transcript(task);
    case TranscriptFormat::text:
      break;
  }
  return text_transcript(task);
}

}  // namespace witnessmark
