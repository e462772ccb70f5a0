#include "language/near_match.h"

#include <algorithm>
#include <set>

#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

/// One stretch of up to four tokens with one of them read as another word.
void match_with(const TermFinder::Index& index, const std::vector<Token>& tokens, std::uint32_t i,
                std::uint32_t changed, const std::string& word, TokenMention& best) {
  std::vector<Token> stretch(tokens.begin() + i,
                             tokens.begin() + std::min<std::ptrdiff_t>(std::ssize(tokens), i + 4));
  Token& token = stretch[changed - i];
  token.form = token.stem = index.words->forms_of(word).front();
  const std::size_t least = word.size() >= kLeastNearName ? 1 : 2;
  index.names_trie.match(stretch, 0, [&](std::size_t length, const std::vector<std::uint32_t>& values) {
    const auto past = i + static_cast<std::uint32_t>(length);
    if (length >= least && past > changed && past > best.past) best = {i, past, &values, true};
  });
}

}  // namespace

Remainders::Remainders(std::string_view word) {
  hashes_[count_++] = word_form(word);
  if (word.empty() || word.size() > kLongest) return;
  char shorter[kLongest];
  std::copy(word.begin() + 1, word.end(), shorter);
  for (std::size_t i = 0; i < word.size(); ++i) {
    hashes_[count_++] = word_form({shorter, word.size() - 1});
    if (i + 1 < word.size()) shorter[i] = word[i];
  }
}

bool one_letter_off(std::string_view a, std::string_view b) {
  if (a.size() > b.size()) std::swap(a, b);
  if (b.size() - a.size() > 1 || a == b) return false;
  std::size_t i = 0;
  while (i < a.size() && a[i] == b[i]) ++i;
  if (a.size() != b.size()) return a.substr(i) == b.substr(i + 1);
  if (a.substr(i + 1) == b.substr(i + 1)) return true;
  return i + 1 < a.size() && a[i] == b[i + 1] && a[i + 1] == b[i] && a.substr(i + 2) == b.substr(i + 2);
}

void match_near(const TermFinder::Index& index, std::string_view text, const std::vector<Token>& tokens,
                std::uint32_t i, NearMemory* memory, TokenMention& best) {
  for (std::uint32_t k = i; k < i + 2 && k < tokens.size(); ++k) {
    const Token& token = tokens[k];
    if (token.kind != Token::Kind::word || token.end - token.begin < kLeastNearWord) return;
    if (memory && memory->nothing[token.form & 0xFFF] == token.form) return;
    if (index.words->find(token.form) || index.name_words.contains(token.form)) {
      // A word known as it stands may begin a name whose second word is misspelt.
      const bool begins = index.names_trie.begins_with(token.form);
      if (k == i && begins) continue;
      if (memory && !begins) memory->nothing[token.form & 0xFFF] = token.form;
      return;
    }
    const std::string word = fold(text.substr(token.begin, token.end - token.begin));
    std::set<std::string> candidates;
    for (const std::uint64_t remainder : Remainders(word)) {
      if (!index.remainder_forms.may_have(remainder)) continue;
      const auto [from, to] = index.remainders.equal_range(remainder);
      for (auto at = from; at != to; ++at) {
        if (one_letter_off(word, at->second)) candidates.insert(at->second);
      }
    }
    if (candidates.empty() && memory) memory->nothing[token.form & 0xFFF] = token.form;
    for (const std::string& candidate : candidates) match_with(index, tokens, i, k, candidate, best);
    return;
  }
}

void match_joined(const TermFinder::Index& index, std::string_view text, const std::vector<Token>& tokens,
                  std::uint32_t i, TokenMention& best) {
  const Token& first = tokens[i];
  const Token& second = tokens[i + 1];
  if (first.kind != Token::Kind::word || second.kind != Token::Kind::word || first.end - first.begin < 3 ||
      second.end - second.begin < 3 || first.stem != first.form) {
    return;
  }
  const auto lower = [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; };
  char joined[48];
  std::size_t size = 0;
  for (const Token* token : {&first, &second}) {
    for (std::uint32_t k = token->begin; k < token->end && size < sizeof joined; ++k)
      joined[size++] = lower(text[k]);
  }
  if (size == sizeof joined) return;
  const std::uint64_t form = word_form({joined, size});
  if (!index.names_trie.begins_with(form)) return;
  const std::vector<std::uint32_t>* values = index.names_trie.single(form);
  if (values && best.past <= i + 1) best = {i, i + 2, values, false};
}

}  // namespace witnessmark
