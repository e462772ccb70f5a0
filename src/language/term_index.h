#pragma once
#include <array>
#include <cstdint>
#include <span>
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

/// Forms lately found to be no misspelling of any name's word. Talk repeats its words.
struct NearMemory {
  std::array<std::uint64_t, 4096> nothing{};
};

/// What a word can be to one list, as bits; most words are nothing to it.
enum NameMark : std::uint8_t {
  kBeginsName = 1,     ///< Some name begins with it.
  kBeginsJoined = 2,   ///< May be the first part of a name of one word, written as two.
  kNumberOfPlace = 4,  ///< A compartment number of one part.
  kMayBeMisspelt = 8   ///< It, or the word behind it, may be a misspelling.
};

/// A token that is something to a list.
struct NameStart {
  std::uint32_t token = 0;
  std::uint8_t marks = 0;  ///< NameMark bits.
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

  /// NameMark bits of a form, `info` being what Words knows of it. A token has those of its form, and
  /// kBeginsName if a name begins with its stem; punctuation has none.
  std::uint8_t marks_of(std::uint64_t form, const WordInfo* info) const;
  /// Mentions among tokens that went through Words::normalize; text is what the tokens were made of, starts
  /// are the tokens with NameMark bits, in order.
  void find(std::string_view text, const std::vector<Token>& tokens, std::span<const NameStart> starts,
            std::vector<TokenMention>& found, NearMemory* memory = nullptr) const;
  /// "The electric [fires]": a name that is article and adjective, with another noun behind it.
  bool leads_to_noun(const std::vector<Token>& tokens, const TokenMention& mention) const;
  /// "The electric [blower]": whether a name that begins in the mention goes on behind it.
  bool overtaken(const std::vector<Token>& tokens, std::span<const NameStart> starts,
                 const TokenMention& mention) const;
  /// Whether misspellings are looked for.
  bool near = true;
  FormFilter joined_firsts;  ///< First parts of names of one word, where it may be written as two.
  FormFilter remainder_forms;
  /// The terms a mention may mean, in list order.
  std::vector<std::uint32_t> terms_of(const TokenMention& mention) const;
};

}  // namespace witnessmark
