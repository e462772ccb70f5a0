#pragma once
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "read/transcripts/decoded_readers.h"

namespace witnessmark {

/// Writes the reading text of captions, a line for each utterance, and notes where utterances, marks and
/// comments stand in it, in bytes; finish() makes code points of them.
class CaptionText {
 public:
  explicit CaptionText(Transcript transcript) : out_(std::move(transcript)) {}

  bool is_open() const { return open_; }
  /// The words of the open utterance so far.
  std::string_view words() const { return std::string_view(out_.reading_text).substr(begin_); }

  /// Opens an utterance, with its label when there is one.
  void open(std::string_view speaker);
  /// Adds words to the open utterance; gives the byte they start at.
  std::size_t add(std::string_view words);
  void close(std::string_view speaker, std::optional<TimeRange> time, Timing timing);

  /// A comment on a line of its own. Only while no utterance is open.
  void add_comment(std::string_view text);

  /// Left out when it would not run forward.
  void mark(std::size_t byte, Millisecond time);
  std::size_t size() const { return out_.reading_text.size(); }
  std::vector<Diagnostic>& diagnostics() { return out_.diagnostics; }
  bool has_utterances() const { return !out_.utterances.empty(); }

  Transcript finish(const BracketRules& brackets);

 private:
  void start_line();

  Transcript out_;
  bool open_ = false;
  std::size_t begin_ = 0;
  std::vector<ByteRange> ranges_;
  std::vector<ByteRange> comments_;
  std::vector<std::pair<std::size_t, Millisecond>> marks_;
};

}  // namespace witnessmark
