#pragma once
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/text_position.h"
#include "witnessmark/model/authority_list.h"
#include "witnessmark/model/mention.h"

namespace witnessmark {

class Language;

/// A term of a list named in a text. A name with several meanings gives one mention with several terms.
struct TermMention {
  CodePointRange range;
  std::vector<std::uint32_t> terms;  ///< Indices into the list's terms, in list order.
  bool plural = false;
  bool near_match = false;  ///< A likely misspelling: to be offered, never assumed.
  std::string name;         ///< The list's name that matched.
  bool operator==(const TermMention&) const = default;
};

/// Finds the terms of an authority list in running text, in one pass over its tokens: preferred, former and
/// spoken names, plural and possessive forms, number words for digits and the other way round ("number two
/// hold", "2-inch"), compounds written as one word or two, compartment numbers of two or more parts, and
/// numbers of one part after a word such as "compartment". The longest name wins. Where a term's name is the
/// last word or words of longer names only, nothing is guessed.
class TermFinder {
 public:
  /// Keeps a copy of the list, and refers to the language, which must outlive it.
  TermFinder(const AuthorityList& list, const Language& language);
  TermFinder(TermFinder&&) noexcept;
  TermFinder& operator=(TermFinder&&) noexcept;
  ~TermFinder();

  const AuthorityList& list() const;

  /// On by default.
  void look_for_misspellings(bool wanted);

  /// Mentions in order of the text, not overlapping.
  std::vector<TermMention> find(std::string_view text) const;

  struct Index;
  const Index& index() const { return *index_; }

 private:
  std::unique_ptr<Index> index_;
};

/// One line for tests: "12-20 crane|winch plural".
std::string dump(const TermMention& mention, const AuthorityList& list);

}  // namespace witnessmark
