// One pass with a stack of open brackets. An empty line closes the paragraph and forgets what is open. A
// closing bracket looks for its own kind in the stack and drops what was opened inside and not closed. Each
// bracket enters and leaves the stack once, so the pass is linear.
#include <algorithm>
#include <array>

#include "witnessmark/base/fold.h"
#include "witnessmark/read/reading_rules.h"

namespace witnessmark {
namespace {

constexpr std::string_view kOpening = "[{(";
constexpr std::string_view kClosing = "]})";
constexpr std::size_t kRound = 2;

struct OpenBracket {
  std::size_t kind;
  std::size_t at;
};

/// The first word inside the brackets, folded.
std::string first_word(std::string_view inside) {
  inside = trim(inside);
  std::size_t end = 0;
  while (end < inside.size() && std::string_view(" \t\n.,;:!?)-").find(inside[end]) == std::string_view::npos)
    ++end;
  return fold(inside.substr(0, end));
}

class RemarkFinder {
 public:
  RemarkFinder(std::string_view text, const BracketRules& rules) : text_(text), rules_(rules) {
    for (const std::string& word : rules.remark_words) words_.push_back(fold(word));
    std::sort(words_.begin(), words_.end());
  }

  std::vector<ByteRange> find() {
    std::size_t at = text_.find_first_of("[]{}()\n");
    while (at != text_.npos) {
      const char c = text_[at];
      if (c == '\n') {
        if (ends_paragraph(at)) forget_open();
      } else if (const std::size_t kind = kOpening.find(c); kind != kOpening.npos) {
        open_.push_back({kind, at});
        ++open_count_[kind];
      } else {
        close(kClosing.find(c), at + 1);
      }
      at = text_.find_first_of("[]{}()\n", at + 1);
    }
    return std::move(found_);
  }

 private:
  bool ends_paragraph(std::size_t line_break) const {
    const std::size_t next = text_.find_first_not_of(" \t", line_break + 1);
    return next == text_.npos || text_[next] == '\n';
  }

  void forget_open() {
    open_.clear();
    open_count_ = {};
  }

  void close(std::size_t kind, std::size_t end) {
    if (open_count_[kind] == 0) return;
    OpenBracket opened = open_.back();
    do {
      opened = open_.back();
      open_.pop_back();
      --open_count_[opened.kind];
    } while (opened.kind != kind);
    if (!is_remark(kind, text_.substr(opened.at + 1, end - opened.at - 2))) return;
    const auto begin = static_cast<std::int64_t>(opened.at);
    while (!found_.empty() && found_.back().begin.value > begin) found_.pop_back();
    found_.push_back({{begin}, {static_cast<std::int64_t>(end)}});
  }

  bool is_remark(std::size_t kind, std::string_view inside) const {
    if (kind == 0) return rules_.square;
    if (kind != kRound) return rules_.curly;
    if (rules_.round != BracketRules::Round::listed) return rules_.round == BracketRules::Round::always;
    return std::binary_search(words_.begin(), words_.end(), first_word(inside));
  }

  std::string_view text_;
  const BracketRules& rules_;
  std::vector<std::string> words_;
  std::vector<OpenBracket> open_;
  std::array<std::size_t, 3> open_count_{};
  std::vector<ByteRange> found_;
};

}  // namespace

std::vector<std::string> BracketRules::default_remark_words() {
  return {"pause",      "pauses",    "laughs",    "laughter",  "laughing",    "chuckles",     "inaudible",
          "indistinct", "unclear",   "crosstalk", "cross",     "overlapping", "coughs",       "sighs",
          "phone",      "telephone", "tape",      "recording", "recorder",    "interruption", "interrupted",
          "break",      "silence",   "whispers",  "points",    "pointing",    "gestures",     "demonstrates",
          "applause",   "knocks",    "knocking",  "door",      "background",  "affirmative",  "negative",
          "sic",        "nods",      "both",      "sings",     "reads",       "reading",      "shows",
          "looking",    "looks",     "clears",    "audio",     "side",        "music"};
}

std::vector<ByteRange> find_remarks(std::string_view text, const BracketRules& rules) {
  return RemarkFinder(text, rules).find();
}

}  // namespace witnessmark
