#pragma once
#include <cstdint>
#include <string>
#include <unordered_map>
#include <vector>

#include "language/phrase_trie.h"
#include "language/words.h"
#include "witnessmark/language/term_finder.h"

namespace witnessmark {

/// A name of a list as it stands in the trie.
struct NameInList {
  std::uint32_t term = 0;
  bool plural = false;
  std::string name;
};

/// What one mention is, in tokens.
struct TokenMention {
  std::uint32_t first = 0;
  std::uint32_t past = 0;
  const std::vector<std::uint32_t>* names =
      nullptr;  ///< Indices into names: several terms may bear one name.
  bool near_match = false;
};

struct TermFinder::Index {
  AuthorityList list;
  const Words* words = nullptr;
  PhraseTrie names_trie;
  std::vector<NameInList> names;
  PhraseTrie numbers;  ///< Numbers of one part, after a place word only.
  /// Words of five letters and more of names, each with one letter left out, to the words themselves: a
  /// misspelling by one letter shares one such remainder with the right word.
  std::unordered_multimap<std::uint64_t, std::string> remainders;
  std::unordered_map<std::uint64_t, std::string> name_words;  ///< Forms of the words of names.

  /// Mentions among tokens that went through Words::normalize; text is what the tokens were made of.
  void find(std::string_view text, const std::vector<Token>& tokens, std::vector<TokenMention>& found) const;
  /// The terms a mention may mean, in list order.
  std::vector<std::uint32_t> terms_of(const TokenMention& mention) const;
};

}  // namespace witnessmark
