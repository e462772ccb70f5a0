// ICU's sentence rules (UAX #29) propose the breaks. A break is taken back when it stands after an
// abbreviation or inside a bracketed remark. ICU reads the UTF-8 in place; its positions are bytes. A single
// line break is a wrapped line and no end of a paragraph, so it is read as a blank. A sentence longer than is
// believable comes from captions without full stops: it is cut before a clause word, the first that leaves
// pieces of a fair length, else at a time mark.
#include "witnessmark/language/sentences.h"

#include <unicode/brkiter.h>
#include <unicode/utext.h>

#include <algorithm>
#include <memory>
#include <stdexcept>

#include "language/caption_clauses.h"
#include "witnessmark/base/ascii.h"
#include "witnessmark/base/code_point_index.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

/// ICU's iterator over one text after another.
class Breaks {
 public:
  Breaks() {
    UErrorCode status = U_ZERO_ERROR;
    iterator_.reset(icu::BreakIterator::createSentenceInstance(icu::Locale::getRoot(), status));
    if (U_FAILURE(status)) throw std::runtime_error("ICU has no sentence rules");
  }
  ~Breaks() {
    if (text_) utext_close(text_);
  }
  Breaks(const Breaks&) = delete;
  Breaks& operator=(const Breaks&) = delete;

  /// Byte ends of the sentences, in order; the last is the text's end.
  void of(std::string_view text, std::vector<std::int64_t>& ends) {
    ends.clear();
    if (text.empty()) return;
    UErrorCode status = U_ZERO_ERROR;
    text_ = utext_openUTF8(text_, text.data(), static_cast<std::int64_t>(text.size()), &status);
    iterator_->setText(text_, status);
    if (U_FAILURE(status)) throw std::runtime_error("ICU cannot read the text");
    iterator_->first();
    for (std::int32_t at = iterator_->next(); at != icu::BreakIterator::DONE; at = iterator_->next()) {
      ends.push_back(at);
    }
  }

 private:
  std::unique_ptr<icu::BreakIterator> iterator_;
  UText* text_ = nullptr;
};

bool is_word_byte(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || is_digit(c) ||
         static_cast<unsigned char>(c) >= 0x80;
}

/// Whether the full stop before the break at `end` belongs to an abbreviation, so that no sentence ends
/// there.
bool stop_of_abbreviation(std::string_view text, std::int64_t end, const Abbreviations& abbreviations,
                          std::size_t longest) {
  auto at = static_cast<std::size_t>(end);
  while (at > 0 && is_space(text[at - 1])) --at;
  if (at == 0 || text[at - 1] != '.') return false;
  const std::size_t stop = at - 1;
  std::size_t begin = stop;
  while (begin > 0 && (is_word_byte(text[begin - 1]) || (text[begin - 1] == '.' && begin < stop))) --begin;
  if (begin == stop || stop - begin > 12) return false;
  const std::string_view written = text.substr(begin, stop - begin);
  const auto is_ascii = [](char c) { return static_cast<unsigned char>(c) < 0x80; };
  if (written.size() > longest && std::all_of(written.begin(), written.end(), is_ascii)) return false;
  const std::string word = fold(written);
  if (abbreviations.never_end.contains(word)) return true;
  const char next = static_cast<std::size_t>(end) < text.size() ? text[static_cast<std::size_t>(end)] : '\0';
  if (is_digit(next) && abbreviations.before_number.contains(word)) return true;
  if (next >= 'a' && next <= 'z' && abbreviations.before_lower.contains(word)) return true;
  const bool capital = written.size() == 1 && written[0] >= 'A' && written[0] <= 'Z';
  return capital && next >= 'A' && next <= 'Z' && abbreviations.initials.contains(word);
}

/// Fewer words are no clause worth cutting off.
constexpr std::size_t kShortestClause = 4;

using ByteSpan = std::pair<std::size_t, std::size_t>;

ByteSpan trimmed(std::string_view text, std::size_t begin, std::size_t end) {
  while (begin < end && is_space(text[begin])) ++begin;
  while (end > begin && is_space(text[end - 1])) --end;
  return {begin, end};
}

std::size_t count_words(std::string_view text) {
  std::size_t words = 0;
  bool inside = false;
  for (const char c : text) {
    const bool word = !is_space(c);
    words += word && !inside;
    inside = word;
  }
  return words;
}

/// Cuts a stretch of more than most_words: before each subject, else before a clause word that leaves a piece of a third of
/// that or more.
void cut_long(std::string_view text, ByteSpan span, std::size_t most_words,
              const Abbreviations& abbreviations, const std::vector<std::size_t>& marks,
              std::vector<ByteSpan>& pieces) {
  std::vector<ClauseStart> starts = clause_starts(text, span.first, span.second, abbreviations.clause_words);
  // Time marks fall anywhere: they serve only where no clause word does.
  for (auto at = std::upper_bound(marks.begin(), marks.end(), span.first);
       at != marks.end() && *at < span.second; ++at) {
    const std::size_t mark = *at;
    const auto next = std::lower_bound(starts.begin(), starts.end(), mark,
                                       [](const ClauseStart& start, std::size_t where) { return start.at < where; });
    const std::size_t before = next == starts.begin() ? span.first : std::prev(next)->at;
    const std::size_t after = next == starts.end() ? span.second : next->at;
    if (count_words(text.substr(before, after - before)) > most_words) starts.insert(next, {mark, false});
  }
  std::size_t begin = span.first;
  std::size_t from = begin;
  std::size_t words = 0;
  for (const ClauseStart& start : starts) {
    words += count_words(text.substr(from, start.at - from));
    from = start.at;
    if (start.clause ? words < kShortestClause : words * 3 < most_words) continue;
    pieces.push_back(trimmed(text, begin, start.at));
    begin = start.at;
    words = 0;
  }
  pieces.push_back(trimmed(text, begin, span.second));
}

/// Length of the longest abbreviation, in bytes.
std::size_t longest_of(const Abbreviations& abbreviations) {
  std::size_t longest = 1;
  for (const auto* words : {&abbreviations.never_end, &abbreviations.before_number, &abbreviations.before_lower,
                            &abbreviations.initials}) {
    for (const std::string& word : *words) longest = std::max(longest, word.size());
  }
  return longest;
}

struct Task {
  std::string_view text;
  const Abbreviations& abbreviations;
  std::size_t longest;  ///< See longest_of().
  std::size_t most_words;
  std::vector<ByteSpan> closed;    ///< Byte ranges no break may stand in, in order.
  std::vector<std::size_t> marks;  ///< Byte offsets of time marks, in order.
};

/// The text with single line breaks made blanks; wrapped holds it when it had to be copied.
std::string_view unwrapped(std::string_view text, std::string& wrapped) {
  if (text.find('\n') == std::string_view::npos) return text;
  wrapped = text;
  for (std::size_t i = 0; i < wrapped.size(); ++i) {
    if (wrapped[i] != '\n') continue;
    std::size_t past = i;
    std::size_t lines = 0;
    for (; past < wrapped.size() && is_space(wrapped[past]); ++past) lines += wrapped[past] == '\n';
    if (lines == 1) wrapped[i] = ' ';
    i = past;
  }
  return wrapped;
}

void split(Breaks& breaks, const Task& task, std::vector<std::int64_t>& ends,
           std::vector<ByteSpan>& sentences) {
  sentences.clear();
  std::string wrapped;
  breaks.of(unwrapped(task.text, wrapped), ends);
  std::size_t begin = 0;
  auto remark = task.closed.begin();
  for (std::size_t i = 0; i < ends.size(); ++i) {
    const auto end = static_cast<std::size_t>(ends[i]);
    if (i + 1 < ends.size()) {
      if (stop_of_abbreviation(task.text, ends[i], task.abbreviations, task.longest)) continue;
      while (remark != task.closed.end() && remark->second <= end) ++remark;
      if (remark != task.closed.end() && remark->first < end) continue;
    }
    const ByteSpan span = trimmed(task.text, begin, end);
    begin = end;
    if (span.first == span.second) continue;
    const std::string_view piece = task.text.substr(span.first, span.second - span.first);
    if (task.most_words > 0 && piece.size() > task.most_words * 2 && count_words(piece) > task.most_words) {
      cut_long(task.text, span, task.most_words, task.abbreviations, task.marks, sentences);
    } else {
      sentences.push_back(span);
    }
  }
}

}  // namespace

std::vector<CodePointRange> split_sentences(std::string_view text, const Abbreviations& abbreviations,
                                            std::size_t most_words) {
  Breaks breaks;
  std::vector<std::int64_t> ends;
  std::vector<ByteSpan> spans;
  split(breaks, {text, abbreviations, longest_of(abbreviations), most_words, {}, {}}, ends, spans);
  const CodePointIndex index(text);
  std::vector<CodePointRange> ranges;
  ranges.reserve(spans.size());
  for (const auto& [begin, end] : spans) {
    ranges.push_back(index.to_code_points(byte_range(begin, end)));
  }
  return ranges;
}

std::vector<Sentence> split_sentences(const Transcript& transcript, const Abbreviations& abbreviations) {
  Breaks breaks;
  const CodePointIndex index(transcript.reading_text);
  std::vector<std::int64_t> ends;
  std::vector<ByteSpan> spans;
  std::vector<Sentence> sentences;
  const std::size_t longest = longest_of(abbreviations);
  auto remark = transcript.remarks.begin();
  auto mark = transcript.marks.begin();
  for (std::size_t u = 0; u < transcript.utterances.size(); ++u) {
    const CodePointRange range = transcript.utterances[u].range;
    const ByteRange bytes = index.to_bytes(range);
    const auto base = static_cast<std::size_t>(bytes.begin.value);
    Task task{
        std::string_view(transcript.reading_text).substr(base, static_cast<std::size_t>(bytes.length())),
        abbreviations,
        longest,
        kMostWords,
        {},
        {}};
    while (remark != transcript.remarks.end() && remark->range.end <= range.begin) ++remark;
    for (auto r = remark; r != transcript.remarks.end() && r->range.begin < range.end; ++r) {
      const ByteRange inside = index.to_bytes(r->range);
      const std::int64_t first = std::max<std::int64_t>(inside.begin.value - bytes.begin.value, 0);
      task.closed.emplace_back(static_cast<std::size_t>(first),
                               static_cast<std::size_t>(inside.end.value - bytes.begin.value));
    }
    while (mark != transcript.marks.end() && mark->at < range.begin) ++mark;
    for (auto m = mark; m != transcript.marks.end() && m->at < range.end; ++m) {
      task.marks.push_back(static_cast<std::size_t>(index.to_byte(m->at).value) - base);
    }
    split(breaks, task, ends, spans);
    for (const auto& [begin, end] : spans) {
      Sentence sentence;
      sentence.utterance = u;
      const auto first = static_cast<std::int64_t>(begin), past = static_cast<std::int64_t>(end);
      if (bytes.length() == range.length()) {  // ASCII
        sentence.range = {{range.begin.value + first}, {range.begin.value + past}};
      } else {
        sentence.range = index.to_code_points({{bytes.begin.value + first}, {bytes.begin.value + past}});
      }
      sentences.push_back(std::move(sentence));
    }
  }
  place_in_time(transcript, sentences);
  return sentences;
}

}  // namespace witnessmark
