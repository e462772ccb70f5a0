// Machine captions run on without stops: "it leaked you baled with one hand". A clause begins before a subject, and before
// what leads it in ("and", "oh no"), unless the word before asks for something to follow it ("because", "he said", "the day").
#include "language/caption_clauses.h"


#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

struct Word {
  std::size_t begin = 0;
  std::string folded;
};

std::vector<Word> words_of(std::string_view text, std::size_t begin, std::size_t end) {
  std::vector<Word> words;
  for (std::size_t i = begin; i < end;) {
    while (i < end && is_space(text[i])) ++i;
    const std::size_t first = i;
    while (i < end && !is_space(text[i])) ++i;
    if (i > first) words.push_back({first, fold(text.substr(first, i - first))});
  }
  return words;
}

class Starts {
 public:
  Starts(const std::vector<Word>& words, const ClauseWords& classes) : words_(words), classes_(classes) {}

  std::vector<ClauseStart> run() {
    std::vector<ClauseStart> starts;
    std::size_t last = 0;  // Word of the last start.
    for (std::size_t w = 1; w < words_.size(); ++w) {
      if (begins_clause(w)) {
        std::size_t first = w;
        while (first > last + 1 && classes_.openers.contains(words_[first - 1].folded)) --first;
        while (!starts.empty() && starts.back().at >= words_[first].begin) starts.pop_back();
        starts.push_back({words_[first].begin, true});
        last = w;
      } else if (cut_word(w)) {
        starts.push_back({words_[w].begin, false});
      }
    }
    return starts;
  }

 private:
  std::string pair(std::size_t w) const {
    return w + 1 < words_.size() ? words_[w].folded + ' ' + words_[w + 1].folded : std::string();
  }

  bool cut_word(std::size_t w) const {
    return classes_.cuts.contains(words_[w].folded) || classes_.cuts.contains(pair(w));
  }

  bool begins_clause(std::size_t w) const {
    if (classes_.closed.contains(words_[w - 1].folded)) return false;
    if (classes_.subjects.contains(words_[w].folded) || classes_.subjects.contains(pair(w))) return true;
    return classes_.weak.contains(words_[w].folded) && w + 1 < words_.size() &&
           classes_.verbs.contains(words_[w + 1].folded);
  }

  const std::vector<Word>& words_;
  const ClauseWords& classes_;
};

}  // namespace

std::vector<ClauseStart> clause_starts(std::string_view text, std::size_t begin, std::size_t end,
                                       const ClauseWords& words) {
  const std::vector<Word> all = words_of(text, begin, end);
  return Starts(all, words).run();
}

}  // namespace witnessmark
