// A text is cut into words, and each name is a sequence of them. What lies between the words of a name is at
// most a blank, a line break, a full stop, an apostrophe or a hyphen, in any number up to two. An initial
// before a surname ("L. Hobday") goes with it.
#include "witnessmark/app/withheld_names.h"

#include <algorithm>
#include <array>

#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

struct NameToken {
  std::size_t begin = 0, end = 0;  // bytes
  std::string folded;
  bool capital = false;
};

/// Bytes of a separator at `at`; 0 where a letter or digit stands. General Punctuation and Latin-1 signs are
/// no letters.
std::size_t separator_at(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) {
    return i < text.size() ? static_cast<unsigned char>(text[i]) : static_cast<unsigned char>(0);
  };
  const unsigned char first = byte(at);
  if (first < 0x80) {
    const bool letter =
        (first >= '0' && first <= '9') || (first >= 'A' && first <= 'Z') || (first >= 'a' && first <= 'z');
    return letter ? 0 : 1;
  }
  if (first == 0xC2) return 2;
  if (first == 0xE2 && (byte(at + 1) == 0x80 || byte(at + 1) == 0x81)) return 3;
  return 0;
}

std::vector<NameToken> tokens_of(std::string_view text) {
  std::vector<NameToken> tokens;
  for (std::size_t at = 0; at < text.size();) {
    if (const std::size_t skip = separator_at(text, at); skip > 0) {
      at += skip;
      continue;
    }
    NameToken token;
    token.begin = at;
    while (at < text.size() && separator_at(text, at) == 0) ++at;
    token.end = at;
    const std::string_view word = text.substr(token.begin, at - token.begin);
    token.folded = fold(word);
    token.capital = !token.folded.empty() && token.folded.front() != word.front();
    tokens.push_back(std::move(token));
  }
  return tokens;
}

/// Common practice, no source: what stands before a surname, and months that are also given names.
constexpr std::array kTitles = {"mr",        "mrs",      "miss",   "ms",     "dr",         "sir",
                                "lady",      "captain",  "capt",   "cap",    "skipper",    "colonel",
                                "major",     "sergeant", "father", "rev",    "reverend",   "professor",
                                "prof",      "uncle",    "aunt",   "auntie", "lieutenant", "lt",
                                "commander", "madam",    "old",    "young"};
constexpr std::array kMonths = {"april", "may", "june", "august", "january", "march"};

template <typename Words>
bool is_one_of(const Words& words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

constexpr std::size_t kBetween = 2;  // bytes between the words of a name

bool stand_together(std::string_view text, const NameToken& a, const NameToken& b) {
  const std::string_view between = text.substr(a.end, b.begin - a.end);
  return (between.size() <= kBetween && between.find_first_not_of(" .'-\n") == std::string_view::npos) ||
         between == "\u2019";
}

}  // namespace

void WithheldNames::add(const Person& person) {
  std::vector<std::string> parts;  // at blanks
  for (std::string_view rest = person.name; !rest.empty();) {
    const std::size_t blank = std::min(rest.find(' '), rest.size());
    if (blank > 0) parts.emplace_back(rest.substr(0, blank));
    rest.remove_prefix(std::min(blank + 1, rest.size()));
  }
  const auto words_of = [](std::string_view part) {
    std::vector<std::string> words;
    for (NameToken& token : tokens_of(part)) words.push_back(std::move(token.folded));
    return words;
  };
  names_.push_back({person.key, words_of(person.name), true});
  for (std::size_t i = 0; i < parts.size() && parts.size() > 1; ++i) {
    std::vector<std::string> words = words_of(parts[i]);
    const auto first = tokens_of(parts[i]);
    // No initials, titles, or particles ("van").
    const bool counts =
        !first.empty() && first.front().capital && !is_one_of(kTitles, words.front()) &&
        std::any_of(words.begin(), words.end(), [](const auto& word) { return word.size() > 1; });
    if (counts) names_.push_back({person.key, std::move(words), false});
  }
  std::erase_if(names_, [](const Name& name) { return name.words.empty(); });
  std::stable_sort(names_.begin(), names_.end(),
                   [](const Name& a, const Name& b) { return a.words.size() > b.words.size(); });
}

WithheldNames::Text WithheldNames::without(std::string_view text,
                                           const std::set<std::string, std::less<>>& named_here,
                                           Capitals capitals) const {
  Text made;
  if (names_.empty()) return {std::string(text), 0};
  const std::vector<NameToken> tokens = tokens_of(text);
  const auto stands_at = [&](const Name& name, std::size_t at) {
    if (at + name.words.size() > tokens.size()) return false;
    for (std::size_t i = 0; i < name.words.size(); ++i) {
      if (tokens[at + i].folded != name.words[i]) return false;
      if (i > 0 && !stand_together(text, tokens[at + i - 1], tokens[at + i])) return false;
    }
    const bool titled = at > 0 && is_one_of(kTitles, tokens[at - 1].folded);
    if ((name.whole && name.words.size() > 1) || titled) return true;
    if (is_one_of(kMonths, name.words.front())) return false;
    return capitals == Capitals::not_needed || tokens[at].capital;
  };
  std::size_t copied = 0;
  for (std::size_t at = 0; at < tokens.size();) {
    const auto found = std::find_if(names_.begin(), names_.end(), [&](const Name& name) {
      return !named_here.contains(name.person) && stands_at(name, at);
    });
    if (found == names_.end()) {
      ++at;
      continue;
    }
    std::size_t begin = tokens[at].begin;
    const bool initial = at > 0 && tokens[at - 1].folded.size() == 1 && tokens[at - 1].capital &&
                         tokens[at - 1].end < text.size() && text[tokens[at - 1].end] == '.' &&
                         stand_together(text, tokens[at - 1], tokens[at]);
    if (initial) begin = std::max(copied, tokens[at - 1].begin);
    made.text += text.substr(copied, begin - copied);
    made.text += kNameWithheld;
    ++made.names;
    const std::string& person = found->person;
    at += found->words.size();
    // "Meg O'Brien" of one person is one name, whichever parts of it are known.
    for (bool more = true; more;) {
      const auto next = std::find_if(names_.begin(), names_.end(), [&](const Name& name) {
        return name.person == person && at < tokens.size() &&
               stand_together(text, tokens[at - 1], tokens[at]) && stands_at(name, at);
      });
      more = next != names_.end();
      if (more) at += next->words.size();
    }
    copied = tokens[at - 1].end;
  }
  made.text += text.substr(copied);
  return made;
}

WithheldNames::Capitals capitals_of(std::string_view text) {
  constexpr std::size_t kOneIn = 400;  // letters: prose has a capital in every thirty or so
  std::size_t letters = 0, capitals = 0;
  for (const char c : text) {
    letters += (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    capitals += c >= 'A' && c <= 'Z';
  }
  return capitals * kOneIn < letters ? WithheldNames::Capitals::not_needed : WithheldNames::Capitals::needed;
}

}  // namespace witnessmark
