#include "read/transcripts/speaker_labels.h"

#include <algorithm>
#include <iterator>

#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

constexpr std::size_t kMostWords = 5;
constexpr std::int64_t kMostCodePoints = 40;

std::int64_t count_code_points(std::string_view text) {
  return std::count_if(text.begin(), text.end(),
                       [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; });
}

/// Bytes of the first code point of valid UTF-8.
std::size_t first_length(std::string_view text) {
  std::size_t length = 1;
  while (length < text.size() && (static_cast<unsigned char>(text[length]) & 0xC0) == 0x80) ++length;
  return length;
}

bool is_blank(char c) {
  return c == ' ' || c == '\t';
}
bool is_ascii_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

enum class LetterCase { none, capital, small };

/// Of the first code point. Outside ASCII a letter is a capital when folding changes it.
LetterCase case_of(std::string_view text, std::size_t& length) {
  length = first_length(text);
  const char c = text.front();
  if (static_cast<unsigned char>(c) < 0x80) {
    if (c >= 'A' && c <= 'Z') return LetterCase::capital;
    return is_ascii_letter(c) ? LetterCase::small : LetterCase::none;
  }
  const std::string_view letter = text.substr(0, length);
  if (letter == "\u2019" || letter == "\u00B7") return LetterCase::none;
  return fold(letter) == letter ? LetterCase::small : LetterCase::capital;
}

struct Letters {
  int capitals = 0;
  int small = 0;
  bool first_is_capital = false;
  int total() const { return capitals + small; }
};

Letters letters_of(std::string_view word) {
  Letters letters;
  for (std::size_t at = 0, length = 0; at < word.size(); at += length) {
    const LetterCase letter = case_of(word.substr(at), length);
    if (letter == LetterCase::none) continue;
    if (letters.total() == 0) letters.first_is_capital = letter == LetterCase::capital;
    ++(letter == LetterCase::capital ? letters.capitals : letters.small);
  }
  return letters;
}

std::vector<std::string_view> split_words(std::string_view text) {
  std::vector<std::string_view> words;
  std::size_t at = 0;
  while ((at = text.find_first_not_of(" \t", at)) != text.npos) {
    const std::size_t end = std::min(text.find_first_of(" \t", at), text.size());
    words.push_back(text.substr(at, end - at));
    at = end;
  }
  return words;
}

/// Mc and Mac before capitals keep their small letters in a label of capitals: McKAY.
std::string_view without_mac(std::string_view word) {
  for (const std::string_view prefix : {"Mac", "Mc"}) {
    if (word.size() > prefix.size() && word.starts_with(prefix)) return word.substr(prefix.size());
  }
  return word;
}

bool all_capitals(std::string_view name) {
  Letters all;
  for (const std::string_view word : split_words(name)) {
    const Letters letters = letters_of(without_mac(word));
    all.capitals += letters.capitals;
    all.small += letters.small;
  }
  return all.capitals > 0 && all.small == 0;
}

bool one_of(std::string_view word, std::initializer_list<std::string_view> list) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

/// Small words that stand inside names and labels: van, of, "Second speaker".
bool is_joining_word(std::string_view word) {
  return one_of(word, {"van", "von", "der", "den", "de", "du", "la", "le", "of", "the", "and", "at",
                       "speaker", "voice", "man", "woman", "person", "narrator", "interviewer"});
}

bool all_begin_with_capitals(std::string_view name) {
  bool first = true;
  for (const std::string_view word : split_words(name)) {
    const Letters letters = letters_of(word);
    if (letters.total() == 0 ? first : !letters.first_is_capital && (first || !is_joining_word(word)))
      return false;
    first = false;
  }
  return true;
}

/// Words that open speech and stand before a colon without being anybody's name.
bool opens_speech(const std::string& folded) {
  return one_of(folded, {"well",     "so",    "now",  "and",     "but",      "yes",       "no",      "oh",
                         "anyway",   "then",  "look", "listen",  "right",    "okay",      "ok",      "anyhow",
                         "remember", "see",   "also", "first",   "second",   "third",     "example", "again",
                         "because",  "still", "mind", "he said", "she said", "they said", "i said",  "note",
                         "nb",       "n.b.",  "ps",   "p.s.",    "end",      "warning",   "caution"});
}

bool is_title(std::string_view word) {
  std::string folded = fold(word);
  if (folded.ends_with('.')) folded.pop_back();
  return one_of(folded, {"mr", "mrs", "ms", "miss", "dr", "capt", "captain", "lt", "cdr", "prof", "professor",
                         "rev", "sir", "lady", "father", "sister", "chief", "bosun", "master"});
}

bool looks_like_name(std::string_view name) {
  const auto words = split_words(name);
  return words.size() >= 2 && (words.size() <= 3 || is_title(words.front())) && all_begin_with_capitals(name);
}

bool is_label_text(std::string_view name) {
  bool has_letter = false;
  for (const char c : name) {
    const bool letter = is_ascii_letter(c) || static_cast<unsigned char>(c) >= 0x80;
    if (!letter && !(c >= '0' && c <= '9') && std::string_view(" \t.'-&/").find(c) == std::string_view::npos)
      return false;
    has_letter |= letter;
  }
  return has_letter;
}

/// Cuts "(laughing)" or "[0:14]" off the end of the name.
std::string_view cut_aside(std::string_view& name) {
  if (name.empty() || (name.back() != ')' && name.back() != ']')) return {};
  const std::size_t open = name.rfind(name.back() == ')' ? '(' : '[');
  if (open == name.npos || open == 0) return {};
  const std::string_view aside = name.substr(open);
  name = trim(name.substr(0, open));
  return aside;
}

/// The colon that ends the label: the first one outside brackets; npos when there is none near.
std::size_t find_colon(std::string_view line) {
  int depth = 0;
  const std::size_t limit = std::min<std::size_t>(line.size(), 200);
  for (std::size_t i = 0; i < limit; ++i) {
    if (line[i] == '(' || line[i] == '[') ++depth;
    if (line[i] == ')' || line[i] == ']') --depth;
    if (line[i] == ':' && depth <= 0) return i;
  }
  return line.npos;
}

}  // namespace

std::optional<LabelShape> label_shape(std::string_view line) {
  const std::size_t colon = find_colon(line);
  if (colon == line.npos) return std::nullopt;
  LabelShape shape;
  shape.name = trim(line.substr(0, colon));
  shape.aside = cut_aside(shape.name);
  if (shape.name.empty() || count_code_points(shape.name) > kMostCodePoints) return std::nullopt;
  if (!is_label_text(shape.name) || split_words(shape.name).size() > kMostWords) return std::nullopt;
  const std::string_view after = line.substr(colon + 1);
  const bool apart = after.empty() || is_blank(after.front()) || after.starts_with("\u00A0");
  if (!apart && !(all_capitals(shape.name) && is_ascii_letter(after.front()))) return std::nullopt;
  shape.words_at = colon + 1;
  while (shape.words_at < line.size() && is_blank(line[shape.words_at])) ++shape.words_at;
  return shape;
}

SpeakerLabels::SpeakerLabels(const std::vector<std::string>& known) {
  for (const std::string& label : known) known_.insert(fold(label));
}

void SpeakerLabels::add(std::string_view name) {
  ++seen_[fold(name)];
}

std::int64_t SpeakerLabels::count(std::string_view name) const {
  const auto found = seen_.find(fold(name));
  return found == seen_.end() ? 0 : found->second;
}

bool SpeakerLabels::accepts(std::string_view name, bool opens, bool lone) const {
  const std::string folded = fold(name);
  if (known_.contains(folded)) return true;
  if (opens_speech(folded)) return false;
  const auto found = seen_.find(folded);
  const bool recurs = found != seen_.end() && found->second > 1;
  if (all_capitals(name)) return recurs || (opens && letters_of(name).total() > 1);
  if (recurs) return all_begin_with_capitals(name);
  return lone && opens && looks_like_name(name);
}

bool is_heading_field(std::string_view name) {
  static constexpr std::string_view kFields[] = {
      "accession",      "also present",   "audited by",    "collection",  "copyright",    "date",
      "duration",       "edited by",      "file",          "format",      "interview",    "interview date",
      "interview with", "interviewed by", "interviewee",   "interviewer", "interviewers", "language",
      "length",         "location",       "narrator",      "narrators",   "number",       "place",
      "present",        "project",        "recorded",      "recorded by", "recording",    "reference",
      "repository",     "restrictions",   "session",       "side",        "site",         "speakers",
      "subject",        "tape",           "title",         "track",       "transcribed",  "transcribed by",
      "transcriber",    "transcript",     "transcription", "venue"};
  return std::find(std::begin(kFields), std::end(kFields), fold(name)) != std::end(kFields);
}

}  // namespace witnessmark
