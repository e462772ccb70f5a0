#include "read/transcripts/sentence_end.h"

#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

bool cut_end(std::string_view& words, std::string_view end) {
  if (!words.ends_with(end)) return false;
  words.remove_suffix(end.size());
  return true;
}

/// Takes a remark in square brackets or parentheses, or a closing quotation mark, off the end.
bool cut_aside_or_quote(std::string_view& words) {
  for (const std::string_view quote : {"\"", "'", "\u2019", "\u201D", "\u00BB"}) {
    if (cut_end(words, quote)) return true;
  }
  if (words.empty() || (words.back() != ']' && words.back() != ')')) return false;
  const std::size_t open = words.rfind(words.back() == ']' ? '[' : '(');
  if (open == words.npos) return false;
  words = words.substr(0, open);
  return true;
}

}  // namespace

bool ends_sentence(std::string_view words) {
  words = trim(words);
  while (cut_aside_or_quote(words)) words = trim(words);
  for (const std::string_view stop : {".", "?", "!", "\u2026"}) {
    if (words.ends_with(stop)) return true;
  }
  return false;
}

}  // namespace witnessmark
