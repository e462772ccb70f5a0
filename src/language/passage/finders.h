#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "language/words.h"
#include "witnessmark/language/term_finder.h"

namespace witnessmark::claims {

struct Thing;

/// The last words of the names of a list, by which a thing may be called once it is known which is meant:
/// "the clock", "the steam one". Depends on the list alone.
class HeadNames {
 public:
  struct Head {
    std::uint32_t term = 0;
    bool spoken = false;  ///< Of a spoken name.
  };

  /// Refers to the list.
  HeadNames(const AuthorityList& equipment, const Words& words);

  const AuthorityList& list() const { return *list_; }
  /// Terms that have a name of several words with that last word, in list order; none for most words.
  const std::vector<Head>& ending_in(std::uint64_t form) const { return found(heads_, form); }
  /// Terms that have a name with both words, the second as its last, in list order: "steam", "windlass".
  const std::vector<std::uint32_t>& with_both(std::uint64_t word, std::uint64_t head) const {
    return found(pairs_, pair_key(word, head));
  }
  /// The last words of a term's names.
  const std::vector<std::uint64_t>& heads_of(std::uint32_t term) const { return heads_of_[term]; }
  bool is_plural(std::uint64_t form) const { return plurals_.contains(form); }

 private:
  static std::uint64_t pair_key(std::uint64_t word, std::uint64_t head) {
    return word * 0x9E3779B97F4A7C15ULL ^ head;
  }
  template <class Item>
  static const std::vector<Item>& found(const std::unordered_map<std::uint64_t, std::vector<Item>>& map,
                                        std::uint64_t key) {
    static const std::vector<Item> kNone;
    const auto at = map.find(key);
    return at == map.end() ? kNone : at->second;
  }
  void learn_head(const std::string& name, std::uint32_t term, bool spoken, const Words& words);

  const AuthorityList* list_;
  std::unordered_map<std::uint64_t, std::vector<Head>> heads_;
  std::unordered_set<std::uint64_t> plurals_;
  std::unordered_map<std::uint64_t, std::vector<std::uint32_t>> pairs_;
  std::vector<std::vector<std::uint64_t>> heads_of_;
};

/// All names one looks for.
struct Finders {
  const TermFinder* equipment = nullptr;
  const TermFinder* places = nullptr;
  std::optional<TermFinder> locations;
  std::optional<TermFinder> persons;  ///< In the order of the persons.
  std::optional<HeadNames> heads;     ///< Of the equipment.
};

/// Which term "the clock" means: the last word of one name of several words, when that term was named earlier
/// in the interview or belongs to the place now spoken of.
class HeadMemory {
 public:
  explicit HeadMemory(const HeadNames& names) : names_(names) {}

  const HeadNames& names() const { return names_; }
  /// Key of the place now spoken of; may be empty.
  void go_to(std::string place) { place_ = std::move(place); }
  void remember(const Thing& thing);
  /// Whether just one term with that last word belongs to the place spoken of.
  bool only_here(std::uint64_t form, const std::string& near) const;
  /// "the steam one", when a windlass was spoken of: the one of that name that was named last, or all of them
  /// where none was.
  std::vector<std::uint32_t> one_of(std::uint64_t word) const;
  std::optional<std::uint32_t> term_of(std::uint64_t form, const std::string& near) const;

 private:
  bool is_here(const HeadNames::Head& head, const std::string& near) const;

  const HeadNames& names_;
  std::unordered_map<std::uint32_t, std::int64_t> named_;  ///< Terms named so far; when, as a running count.
  std::int64_t clock_ = 0;
  std::string place_;
  std::vector<std::uint32_t> recent_;  ///< Terms named last, the latest last.
};

}  // namespace witnessmark::claims
