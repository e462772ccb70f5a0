// The parser of the WebVTT standard, section 6.1. A file is a header and blocks separated by empty lines; a
// block is a cue when one of its first two lines holds "-->". The standard drops what it cannot read without
// a word; here each thing dropped leaves a diagnostic. Regions and styles are recognised only to be passed
// over.
#include "witnessmark/read/webvtt.h"

#include <fmt/format.h>

#include <algorithm>

#include "read/transcripts/caption_transcript.h"
#include "read/transcripts/text_lines.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/read/webvtt_cue_text.h"

namespace witnessmark {
namespace {

constexpr std::string_view kArrow = "-->";

bool is_space(char c) {
  return c == ' ' || c == '\t' || c == '\f';
}

bool only_spaces(std::string_view text) {
  return std::all_of(text.begin(), text.end(), is_space);
}

bool holds_arrow(std::string_view line) {
  return line.find(kArrow) != line.npos;
}

void skip_spaces(std::string_view& text) {
  while (!text.empty() && is_space(text.front())) text.remove_prefix(1);
}

/// Takes the characters a timestamp can be made of off the front.
std::optional<Millisecond> take_timestamp(std::string_view& text) {
  const std::size_t end = std::min(text.find_first_not_of("0123456789:."), text.size());
  // Settings may follow the second timestamp without a space, so the longest beginning that is one is taken.
  const std::size_t dot = text.substr(0, end).find('.');
  const std::size_t length = dot == text.npos ? end : std::min(end, dot + 4);
  if (length > 40) return std::nullopt;
  const auto time = parse_webvtt_timestamp(text.substr(0, length));
  if (!time || (length < text.size() && text[length] >= '0' && text[length] <= '9')) return std::nullopt;
  text.remove_prefix(length);
  return time;
}

struct Timings {
  Millisecond start;
  Millisecond end;
};

std::optional<Timings> parse_timings(std::string_view line) {
  skip_spaces(line);
  const auto start = take_timestamp(line);
  if (!start) return std::nullopt;
  skip_spaces(line);
  if (!line.starts_with(kArrow)) return std::nullopt;
  line.remove_prefix(kArrow.size());
  skip_spaces(line);
  const auto end = take_timestamp(line);
  if (!end) return std::nullopt;
  return Timings{*start, *end};
}

class WebvttParser {
 public:
  WebvttParser(std::string_view text, std::string_view source) : lines_(text), source_(source) {}

  Result<WebvttFile> parse() {
    if (!lines_.at_end() || !lines_.peek().empty()) {
      const std::string_view first = lines_.next();
      const bool signature =
          first.starts_with("WEBVTT") && (first.size() == 6 || first[6] == ' ' || first[6] == '\t');
      if (signature) {
        parse_blocks();
        return std::move(file_);
      }
    }
    return Error{std::string(source_), 1, 1,
                 "the first line of a WebVTT file is WEBVTT, alone or with a space after it",
                 "check that the file is WebVTT, or name its format"};
  }

 private:
  void parse_blocks() {
    if (!lines_.at_end() && !lines_.peek().empty()) parse_block(true);
    while (true) {
      while (!lines_.at_end() && lines_.peek().empty()) lines_.next();
      if (lines_.at_end()) return;
      parse_block(false);
    }
  }

  void parse_block(bool in_header) {
    std::string buffer;
    std::optional<WebvttCue> cue;
    bool seen_arrow = false;
    const std::int64_t first_line = lines_.line();
    for (int count = 1; !lines_.at_end(); ++count) {
      const std::string_view line = lines_.peek();
      if (holds_arrow(line)) {
        if (in_header || !(count == 1 || (count == 2 && !seen_arrow))) break;
        seen_arrow = true;
        cue = parse_cue_start(line, buffer);
        if (cue) buffer.clear();
        seen_cue_ |= cue.has_value();
      } else if (line.empty()) {
        break;
      } else {
        if (!buffer.empty()) buffer += '\n';
        buffer += line;
      }
      lines_.next();
    }
    finish_block(std::move(cue), std::move(buffer), in_header, seen_arrow, first_line);
  }

  std::optional<WebvttCue> parse_cue_start(std::string_view line, const std::string& id) {
    const auto timings = parse_timings(line);
    if (!timings) {
      warn(lines_.line(), "this line with --> holds no two times, so the cue is left out",
           "write mm:ss.ttt --> mm:ss.ttt or h:mm:ss.ttt --> h:mm:ss.ttt");
      return std::nullopt;
    }
    if (timings->end <= timings->start) {
      warn(lines_.line(), "the cue ends no later than it starts; its words are kept", "check both times");
    }
    return WebvttCue{id, timings->start, timings->end, "", lines_.line()};
  }

  void finish_block(std::optional<WebvttCue> cue, std::string buffer, bool in_header, bool seen_arrow,
                    std::int64_t first_line) {
    if (cue) {
      cue->text = std::move(buffer);
      file_.cues.push_back(*std::move(cue));
      return;
    }
    if (in_header || seen_arrow) return;
    const std::string_view text = buffer;
    const std::string_view head = text.substr(0, text.find('\n'));
    if (head.starts_with("NOTE") && (head.size() == 4 || is_space(head[4]))) {
      const std::string_view words = trim(text.substr(4));
      if (!words.empty()) file_.notes.push_back({std::string(words), file_.cues.size(), first_line});
      return;
    }
    const bool style = head.starts_with("STYLE") && only_spaces(head.substr(5));
    const bool region = head.starts_with("REGION") && only_spaces(head.substr(6));
    if ((style || region) && !seen_cue_) return;
    warn(first_line, "this block has no times and is left out",
         "give it a line mm:ss.ttt --> mm:ss.ttt, or open it with NOTE if it is a comment");
  }

  void warn(std::int64_t line, std::string message, std::string advice) {
    file_.diagnostics.push_back({Diagnostic::Severity::warning,
                                 {std::string(source_), line, 1, std::move(message), std::move(advice)}});
  }

  LineScanner lines_;
  std::string_view source_;
  WebvttFile file_;
  bool seen_cue_ = false;
};

/// Cuts a cue's tree into lines, at line breaks and where the voice changes.
class CueLines {
 public:
  std::vector<CaptionLine> cut(const std::vector<CueNode>& nodes) {
    add(nodes, std::nullopt);
    end_line();
    return std::move(lines_);
  }

 private:
  void add(const std::vector<CueNode>& nodes, const std::optional<std::string>& voice) {
    for (const CueNode& node : nodes) {
      if (node.kind == CueNode::Kind::text) {
        add_words(node.text, voice);
      } else if (node.kind == CueNode::Kind::timestamp) {
        line_.times.emplace_back(line_.words.size(), node.time);
      } else if (node.kind == CueNode::Kind::v) {
        add(node.children, node.text);
      } else if (node.kind != CueNode::Kind::rt) {  // an rt repeats the word it stands over
        add(node.children, voice);
      }
    }
  }

  void add_words(std::string_view words, const std::optional<std::string>& voice) {
    if (voice != voice_ && !trim(words).empty()) {
      end_line();
      voice_ = voice;
    }
    for (const char c : words) {
      if (c == '\n') {
        end_line();
      } else {
        line_.words += c == '\t' || c == '\f' ? ' ' : c;
      }
    }
  }

  void end_line() {
    const std::string_view words = trim(line_.words);
    const std::size_t cut = words.empty() ? 0 : static_cast<std::size_t>(words.data() - line_.words.data());
    for (auto& [offset, time] : line_.times) offset = std::clamp(offset, cut, cut + words.size()) - cut;
    line_.words = std::string(words);
    line_.voice = voice_;
    if (!line_.words.empty()) lines_.push_back(std::move(line_));
    line_ = {};
  }

  CaptionLine line_;
  std::optional<std::string> voice_;
  std::vector<CaptionLine> lines_;
};

/// Line breaks of a comment made spaces.
std::string one_line(std::string text) {
  std::replace(text.begin(), text.end(), '\n', ' ');
  return text;
}

}  // namespace

Result<WebvttFile> parse_webvtt(std::string_view text, std::string_view source) {
  return WebvttParser(text, source).parse();
}

Result<Transcript> webvtt_transcript(const ReadingTask& task) {
  auto file = parse_webvtt(task.decoded.text, task.source);
  if (!file) return file.error();
  Transcript transcript = start_transcript(task, "webvtt");
  transcript.diagnostics.insert(transcript.diagnostics.end(), file->diagnostics.begin(),
                                file->diagnostics.end());
  std::vector<CaptionCue> cues;
  cues.reserve(file->cues.size());
  for (const WebvttCue& cue : file->cues) {
    const auto end = cue.end > cue.start ? std::optional(cue.end) : std::nullopt;
    cues.push_back({cue.start, end, cue.line, CueLines().cut(parse_cue_text(cue.text))});
  }
  std::vector<CaptionNote> notes;
  for (WebvttNote& note : file->notes) notes.push_back({one_line(std::move(note.text)), note.before_cue});
  return caption_transcript(task, std::move(transcript), cues, notes);
}

Result<Transcript> read_webvtt(std::string_view bytes, std::string_view source,
                               std::optional<Millisecond> recording_length, const ReadingRules& rules) {
  auto decoded = decode_transcript(bytes, source);
  if (!decoded) return decoded.error();
  return webvtt_transcript({*std::move(decoded), source, recording_length, rules});
}

}  // namespace witnessmark
