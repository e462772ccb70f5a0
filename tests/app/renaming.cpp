#include "renaming.h"

#include <re2/re2.h>

#include <cctype>

namespace witnessmark {
namespace {

bool is_letter(char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; }

std::string lower(std::string_view text) {
  std::string made(text);
  for (char& c : made) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return made;
}

/// The form a plural and its singular share.
std::string base_of(const std::string& word) {
  if (word.size() > 5 && word.ends_with("ches")) return word.substr(0, word.size() - 2);
  if (word.size() > 4 && word.ends_with("s") && !word.ends_with("ss")) return word.substr(0, word.size() - 1);
  return word;
}

template <typename Replace>
std::string replace_words(std::string_view text, const Replace& replace) {
  std::string made;
  for (std::size_t at = 0; at < text.size();) {
    std::size_t end = at;
    while (end < text.size() && is_letter(text[end])) ++end;
    if (end > at) made += replace(std::string(text.substr(at, end - at)));
    else made += text[end++];
    at = end;
  }
  return made;
}

std::string moved_years(std::string text) {
  std::string made;
  re2::StringPiece rest(text);
  static const RE2 kYear("((?s:.*?))\\b(1[89]\\d\\d|20\\d\\d)\\b");
  std::string before, year;
  while (RE2::Consume(&rest, kYear, &before, &year)) made += before + std::to_string(std::stoi(year) - 400);
  made += std::string(rest);
  RE2::GlobalReplace(&made, "(since|before)-1549", "\\1-1949");   // names of numbering schemes, not dates
  // The spoken ones.
  const std::string next = R"re((?:[ \n-](?:hundred|oh|ought|ten|eleven|twelve|(?:thir|four|fif|six|seven|eigh|nine)teen|)re"
                           R"re((?:twen|thir|for|fif|six|seven|eigh|nine)t(?:y|ies))))re";
  RE2::GlobalReplace(&made, "(?i)\\bnineteen(" + next + ")", "fifteen\\1");
  RE2::GlobalReplace(&made, "(?i)\\bnineteen(\\s*\\n)", "fifteen\\1");   // its second half stands in the next caption
  RE2::GlobalReplace(&made, "(?i)\\beighteen(" + next + ")", "fourteen\\1");
  RE2::GlobalReplace(&made, "(?i)\\btwo thousand(?: and)? (one|two|three|four|five|six|seven|eight|nine)\\b", "sixteen oh-\\1");
  RE2::GlobalReplace(&made, "(?i)\\btwo thousand(?: and)? (ten|eleven|twelve|thirteen|fourteen|fifteen)\\b", "sixteen \\1");
  RE2::GlobalReplace(&made, "(?i)\\btwenty[ -](ten|eleven|twelve|thirteen|fourteen|fifteen|forty)\\b", "sixteen \\1");
  RE2::GlobalReplace(&made, "(?i)\\btwo thousand\\b", "sixteen hundred");
  return made;
}

}  // namespace

std::set<std::string> Renaming::words_of(std::string_view text) {
  std::set<std::string> words;
  replace_words(text, [&](const std::string& word) {
    words.insert(lower(word));
    return word;
  });
  return words;
}

std::string Renaming::invent() {
  constexpr std::string_view kConsonants = "bdfgklmnprtvz", kVowels = "aeiou", kLast = "bdgkmprt";
  const auto draw = [&](std::string_view letters) {
    state_ = state_ * 6364136223846793005ULL + 1442695040888963407ULL;
    return letters[(state_ >> 33) % letters.size()];
  };
  std::string word;
  for (int syllable = 0; syllable < 3; ++syllable) word += {draw(kConsonants), draw(kVowels)};
  return word + draw(kLast);
}

void Renaming::add_names(std::string_view text) {
  for (const std::string& word : words_of(text)) {
    const std::string base = base_of(word);
    if (word.size() < 4 || spared_.contains(word) || spared_.contains(base) || names_.contains(base)) continue;
    names_.emplace(base, invent());
  }
}

std::string Renaming::renamed(const std::string& word) const {
  const std::string folded = lower(word);
  const std::string base = base_of(folded);
  auto at = names_.find(base);
  if (at == names_.end()) return word;
  std::string made = at->second + (base == folded ? "" : "s");
  const bool capitals = word.size() > 1 && std::isupper(static_cast<unsigned char>(word[1])) != 0;
  for (std::size_t i = 0; i < made.size(); ++i) {
    if (capitals || (i == 0 && std::isupper(static_cast<unsigned char>(word[0])) != 0))
      made[i] = static_cast<char>(std::toupper(static_cast<unsigned char>(made[i])));
  }
  return made;
}

std::string Renaming::apply(std::string_view text) const {
  return moved_years(replace_words(text, [this](const std::string& word) { return renamed(word); }));
}

}  // namespace witnessmark
