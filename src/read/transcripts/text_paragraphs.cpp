// Three passes. The first reads what each line opens with, by shape, and counts the names. The second finds
// which names are speakers and where the heading ends. The third cuts paragraphs: at empty lines and before a
// line that opens with a stamp or a speaker.
#include "read/transcripts/text_paragraphs.h"

#include <fmt/format.h>

#include <algorithm>

#include "read/transcripts/text_lines.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

struct Line {
  std::size_t at = 0;
  std::string_view text;
  bool blank = false;
  bool opens = false;  ///< First line, or after an empty one.
  bool heading = false;
  bool time_of_above = false;  ///< Nothing but the time of the name on the line above, if that speaks.
  bool speaks = false;         ///< Its label is a speaker.
  LineOpening opening;
};

bool is_role(std::string_view name) {
  const std::string folded = fold(name);
  for (const std::string_view role :
       {"narrator", "narrators", "interviewer", "interviewers", "interviewee", "speakers"}) {
    if (folded == role) return true;
  }
  return false;
}

/// Length without white space at the end.
std::size_t trim_end(std::string_view text) {
  const std::string_view trimmed = trim(text);
  return trimmed.empty() ? 0 : static_cast<std::size_t>(trimmed.data() - text.data()) + trimmed.size();
}

std::size_t count_words(std::string_view text) {
  std::size_t words = 0;
  bool inside = false;
  for (const char c : text) {
    const bool space = c == ' ' || c == '\t';
    if (!space && !inside) ++words;
    inside = !space;
  }
  return words;
}

class ParagraphCutter {
 public:
  ParagraphCutter(std::string_view text, std::string_view source, const ReadingRules& rules,
                  std::vector<Diagnostic>& diagnostics)
      : source_(source), diagnostics_(diagnostics), labels_(rules.speaker_labels) {
    read_lines(text);
  }

  TextParagraphs cut() {
    mark_heading_blocks();
    accept_labels();
    mark_lines_before_first();
    for (const Line& line : lines_) add(line);
    end_paragraph();
    return std::move(out_);
  }

 private:
  void read_lines(std::string_view text) {
    LineScanner scanner(text);
    bool after_blank = true;
    while (!scanner.at_end()) {
      Line line;
      line.at = scanner.offset();
      line.text = scanner.next();
      line.blank = trim(line.text).empty();
      line.opens = after_blank;
      if (!line.blank) line.opening = read_line_opening(line.text);
      if (!line.blank && !lines_.empty() && lines_.back().opens && !lines_.back().blank) {
        Line& name = lines_.back();
        line.time_of_above = take_time_below(name.text, line.opening, trim_end(line.text), name.opening);
      }
      after_blank = line.blank;
      lines_.push_back(line);
    }
  }

  /// Blocks at the head that hold a field of a heading ("Date: …"), or nothing but short roles ("NARRATOR:
  /// Nora Tallis").
  void mark_heading_blocks() {
    std::size_t at = 0;
    while (at < lines_.size()) {
      while (at < lines_.size() && lines_[at].blank) ++at;
      std::size_t end = at;
      while (end < lines_.size() && !lines_[end].blank) ++end;
      if (at == end || !is_heading_block(at, end)) break;
      for (; at < end; ++at) lines_[at].heading = true;
    }
    for (const Line& line : lines_) {
      if (line.opening.label && !line.heading) labels_.add(line.opening.label->name);
    }
  }

  bool is_heading_block(std::size_t begin, std::size_t end) const {
    bool field = false;
    bool only_roles = end - begin > 1;
    for (std::size_t i = begin; i < end; ++i) {
      const LineOpening& opening = lines_[i].opening;
      if (opening.stamp || opening.label_stamp) return false;
      const bool role = opening.label && is_role(opening.label->name);
      field |= opening.label && !role && is_heading_field(opening.label->name);
      only_roles &= role && count_words(lines_[i].text.substr(opening.after_label)) <= 5;
    }
    return field || only_roles;
  }

  bool opens_paragraph(const Line& line) const { return line.opens || line.opening.stamp; }

  void accept_labels() {
    std::int64_t paragraphs = 0;
    std::int64_t labelled = 0;
    for (Line& line : lines_) {
      if (line.blank || line.heading) continue;
      line.speaks =
          line.opening.label && labels_.accepts(line.opening.label->name, opens_paragraph(line), false);
      const bool time_only = line.time_of_above && (&line)[-1].speaks;
      paragraphs += !time_only && (opens_paragraph(line) || line.speaks) ? 1 : 0;
      labelled += line.speaks ? 1 : 0;
    }
    if (labelled < 2 || labelled * 2 < paragraphs) return;
    bool begun = false;
    for (Line& line : lines_) {
      begun |= line.speaks || line.opening.stamp;
      if (!begun || line.speaks || line.blank || line.heading || !line.opening.label) continue;
      line.speaks = labels_.accepts(line.opening.label->name, opens_paragraph(line), true);
      if (line.speaks) note_lone_label(line);
    }
  }

  void note_lone_label(const Line& line) {
    const auto number = static_cast<std::int64_t>(&line - lines_.data()) + 1;
    diagnostics_.push_back(
        {Diagnostic::Severity::note,
         {std::string(source_), number, static_cast<std::int64_t>(line.opening.label_begin) + 1,
          fmt::format("\"{}:\" stands only once and is taken as a speaker", line.opening.label->name),
          "list the speakers of the interview to settle it"}});
  }

  /// What stands before the first speaker or stamp. A text without either has no heading.
  void mark_lines_before_first() {
    const auto first = std::find_if(lines_.begin(), lines_.end(), [](const Line& line) {
      return !line.heading && (line.speaks || line.opening.stamp || line.opening.bad_stamp_end > 0);
    });
    if (first != lines_.end()) {
      std::for_each(lines_.begin(), first, [](Line& line) { line.heading = true; });
    }
    out_.heading_lines = std::count_if(lines_.begin(), lines_.end(),
                                       [](const Line& line) { return line.heading && !line.blank; });
  }

  void add(const Line& line) {
    if (line.heading || (line.time_of_above && (&line)[-1].speaks)) return;
    if (line.blank) {
      end_paragraph();
      return;
    }
    const LineOpening& opening = line.opening;
    if (opening.bad_stamp_end > 0) warn_bad_stamp(line);
    std::size_t words = opening.stamp ? opening.after_stamp : opening.stamp_begin;
    if (line.speaks) {
      words = opening.after_label;
    } else if (opening.bad_stamp_end > 0) {
      words = line.text.find_first_not_of(" \t", opening.bad_stamp_end);
      words = std::min(words, line.text.size());
    }
    if (line.speaks || opening.stamp || opening.bad_stamp_end > 0) {
      end_paragraph();
      open_paragraph(line, words);
    } else if (!open_) {
      open_paragraph(line, words);
    }
    const std::string_view said = trim(line.text.substr(words));
    if (said.empty()) return;
    const std::size_t begin = line.at + static_cast<std::size_t>(said.data() - line.text.data());
    if (current_.begin == current_.end) current_.begin = begin;
    current_.end = begin + said.size();
  }

  void open_paragraph(const Line& line, std::size_t words) {
    current_ = {};
    current_.begin = current_.end = line.at + words;
    current_.opening_begin = line.at + line.opening.stamp_begin;
    current_.stamp = line.opening.stamp;
    if (line.speaks) {
      current_.label = line.opening.label->name;
      current_.aside = line.opening.label->aside;
      if (line.opening.label_stamp) current_.stamp = line.opening.label_stamp;
    }
    open_ = true;
  }

  void end_paragraph() {
    if (open_) out_.paragraphs.push_back(current_);
    open_ = false;
  }

  void warn_bad_stamp(const Line& line) {
    const auto number = static_cast<std::int64_t>(&line - lines_.data()) + 1;
    const std::string_view stamp =
        line.text.substr(line.opening.stamp_begin, line.opening.bad_stamp_end - line.opening.stamp_begin);
    diagnostics_.push_back(
        {Diagnostic::Severity::warning,
         {std::string(source_), number, static_cast<std::int64_t>(line.opening.stamp_begin) + 1,
          fmt::format("{} is no time and is left out", stamp),
          "write m:ss or h:mm:ss, with seconds, and minutes after hours, from 00 to 59"}});
  }

  std::string_view source_;
  std::vector<Diagnostic>& diagnostics_;
  SpeakerLabels labels_;
  std::vector<Line> lines_;
  TextParagraphs out_;
  TextParagraph current_;
  bool open_ = false;
};

}  // namespace

TextParagraphs cut_paragraphs(std::string_view text, std::string_view source, const ReadingRules& rules,
                              std::vector<Diagnostic>& diagnostics) {
  return ParagraphCutter(text, source, rules, diagnostics).cut();
}

}  // namespace witnessmark
