#include "witnessmark/read/subrip.h"

#include <fmt/format.h>

#include <algorithm>

#include "read/transcripts/caption_transcript.h"
#include "read/transcripts/character_references.h"
#include "read/transcripts/stamps.h"
#include "read/transcripts/subrip_timing.h"
#include "read/transcripts/text_lines.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

bool is_number(std::string_view line) {
  line = trim(line);
  return !line.empty() && line.size() <= 9 && line.find_first_not_of("0123456789") == line.npos;
}

class SubripParser {
 public:
  SubripParser(std::string_view text, std::string_view source) : lines_(text), source_(source) {}

  Result<SubripFile> parse() {
    while (!lines_.at_end()) take_line();
    end_cue();
    if (file_.cues.empty()) {
      return Error{
          std::string(source_), 0, 0, "no line holds two times as SubRip writes them",
          "a cue has a line such as 00:00:12,500 --> 00:00:16,000; check the file or name its format"};
    }
    return std::move(file_);
  }

 private:
  void take_line() {
    const std::int64_t number = lines_.line();
    const std::string_view line = trim(lines_.next());
    const auto timing = read_subrip_timing(line);
    if (timing) {
      start_cue(*timing, number);
    } else if (line.find("-->") != line.npos) {
      warn(number, "this line with --> holds no two times; the words after it go with the cue before",
           "write 00:00:12,500 --> 00:00:16,000");
      pending_.clear();
    } else if (line.empty()) {
      blank_ = true;
    } else {
      take_text(line, number);
    }
  }

  /// A number after an empty line may be the next cue's: that shows on the line after it.
  void take_text(std::string_view line, std::int64_t number) {
    flush_pending();
    if (is_number(line) && (blank_ || !cue_)) {
      pending_ = line;
      pending_line_ = number;
    } else {
      add_text(line, number);
    }
  }

  void flush_pending() {
    if (pending_.empty()) return;
    const std::string text = std::move(pending_);
    pending_.clear();
    add_text(text, pending_line_);
  }

  void add_text(std::string_view line, std::int64_t number) {
    if (!cue_) {
      warn(number, "words before the first cue are left out", "give them a time line");
      return;
    }
    if (blank_ && !cue_->text.empty()) {
      note(number, "words after an empty line without a time are taken as part of the cue before");
    }
    blank_ = false;
    if (!cue_->text.empty()) cue_->text += '\n';
    cue_->text += line;
  }

  void start_cue(const SubripTiming& timing, std::int64_t number) {
    end_cue();
    SubripCue cue;
    cue.index = std::move(pending_);
    pending_.clear();
    cue.start = timing.start;
    cue.line = number;
    if (timing.end > timing.start) {
      cue.end = timing.end;
    } else {
      warn(number, "the cue ends no later than it starts; its end is left out", "check both times");
    }
    cue_ = std::move(cue);
    blank_ = false;
  }

  void end_cue() {
    if (cue_) {
      // A number with nothing after it, at the end of the file.
      if (lines_.at_end()) flush_pending();
      file_.cues.push_back(*std::move(cue_));
    }
    cue_.reset();
  }

  void warn(std::int64_t line, std::string message, std::string advice) {
    file_.diagnostics.push_back({Diagnostic::Severity::warning,
                                 {std::string(source_), line, 1, std::move(message), std::move(advice)}});
  }
  void note(std::int64_t line, std::string message) {
    file_.diagnostics.push_back(
        {Diagnostic::Severity::note, {std::string(source_), line, 1, std::move(message), ""}});
  }

  LineScanner lines_;
  std::string_view source_;
  SubripFile file_;
  std::optional<SubripCue> cue_;
  bool blank_ = true;    // an empty line came since the last text
  std::string pending_;  // a number that may be an index
  std::int64_t pending_line_ = 0;
};

/// Length of a tag at the place ("<i>", "</font>", "{\an8}", "{i}"), 0 when it is none of SubRip's.
std::size_t tag_length(std::string_view text) {
  const char close = text.front() == '<' ? '>' : '}';
  const std::size_t end = text.substr(0, 200).find(close);
  if (end == text.npos) return 0;
  std::string_view inside = text.substr(1, end - 1);
  if (close == '}' && inside.starts_with('\\')) return end + 1;
  if (inside.starts_with('/')) inside.remove_prefix(1);
  const std::string name = fold(inside.substr(0, inside.find(' ')));
  for (const std::string_view known : {"b", "i", "u", "s"}) {
    if (name == known && inside.size() == 1) return end + 1;
  }
  return close == '>' && name == "font" ? end + 1 : 0;
}

/// A reference with its semicolon; others stay as they are.
std::size_t take_reference(std::string_view text, std::string& out) {
  const std::size_t end = text.substr(0, 34).find(';');
  if (end != text.npos) {
    std::string read;
    if (read_character_reference(text, read) == end + 1) {
      out += read;
      return end + 1;
    }
  }
  out += '&';
  return 1;
}

std::string without_tags(std::string_view text) {
  std::string out;
  out.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) {
    const char c = text[at];
    std::size_t length = 0;
    if (c == '<' || c == '{') length = tag_length(text.substr(at));
    if (length == 0 && c == '&') {
      length = take_reference(text.substr(at), out);
    } else if (length == 0) {
      out += c == '\t' ? ' ' : c;
      length = 1;
    }
    at += length;
  }
  return out;
}

std::vector<CaptionLine> cut_lines(const std::string& text) {
  std::vector<CaptionLine> lines;
  LineScanner scanner(text);
  while (!scanner.at_end()) {
    CaptionLine line;
    line.words = trim(scanner.next());
    lines.push_back(std::move(line));
  }
  return lines;
}

}  // namespace

std::optional<SubripTiming> read_subrip_timing(std::string_view line) {
  const auto skip_spaces = [&] { line.remove_prefix(std::min(line.find_first_not_of(" \t"), line.size())); };
  skip_spaces();
  const auto start = read_stamp(line);
  if (!start || !start->time) return std::nullopt;
  line.remove_prefix(start->length);
  skip_spaces();
  if (!line.starts_with("-->")) return std::nullopt;
  line.remove_prefix(3);
  skip_spaces();
  const auto end = read_stamp(line);
  if (!end || !end->time) return std::nullopt;
  line.remove_prefix(end->length);
  if (!line.empty() && line.front() != ' ' && line.front() != '\t') return std::nullopt;
  return SubripTiming{*start->time, *end->time};
}

Result<SubripFile> parse_subrip(std::string_view text, std::string_view source) {
  return SubripParser(text, source).parse();
}

Result<Transcript> subrip_transcript(const ReadingTask& task) {
  auto file = parse_subrip(task.decoded.text, task.source);
  if (!file) return file.error();
  Transcript transcript = start_transcript(task, "subrip");
  transcript.diagnostics.insert(transcript.diagnostics.end(), file->diagnostics.begin(),
                                file->diagnostics.end());
  std::vector<CaptionCue> cues;
  cues.reserve(file->cues.size());
  for (const SubripCue& cue : file->cues) {
    cues.push_back({cue.start, cue.end, cue.line, cut_lines(without_tags(cue.text))});
  }
  return caption_transcript(task, std::move(transcript), cues, {});
}

Result<Transcript> read_subrip(std::string_view bytes, std::string_view source,
                               std::optional<Millisecond> recording_length, const ReadingRules& rules) {
  auto decoded = decode_transcript(bytes, source);
  if (!decoded) return decoded.error();
  return subrip_transcript({*std::move(decoded), source, recording_length, rules});
}

}  // namespace witnessmark
