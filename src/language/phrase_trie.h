#pragma once
#include <array>
#include <cstdint>
#include <span>
#include <vector>

#include "witnessmark/language/tokens.h"

namespace witnessmark {

/// Whether a form is surely not among those added: two bits of 32768 for each.
class FormFilter {
 public:
  void add(std::uint64_t form) {
    set(form & 0x7FFF);
    set(form >> 20 & 0x7FFF);
  }
  bool may_have(std::uint64_t form) const { return has(form & 0x7FFF) && has(form >> 20 & 0x7FFF); }

 private:
  void set(std::uint64_t bit) { bits_[bit >> 6] |= std::uint64_t{1} << (bit & 63); }
  bool has(std::uint64_t bit) const { return (bits_[bit >> 6] >> (bit & 63)) & 1U; }
  std::array<std::uint64_t, 512> bits_{};
};

/// Phrases as sequences of word forms, each with values. A look-up walks from a token; every step is one
/// probe of an open-addressing table keyed by (node, form).
class PhraseTrie {
 public:
  void add(std::span<const std::uint64_t> forms, std::uint32_t value);

  /// Calls found(length in tokens, values) for every phrase that starts at tokens[at], shorter ones first.
  /// The first token is compared by form, the last may also match by its stem ("crane's").
  template <typename Found>
  void match(std::span<const Token> tokens, std::size_t at, Found&& found) const {
    if (slots_.empty()) return;
    std::uint32_t node = 0;
    for (std::size_t i = at; i < tokens.size(); ++i) {
      const std::uint32_t next = step(node, tokens[i].form);
      if (tokens[i].stem != tokens[i].form) {
        const std::uint32_t by_stem = step(node, tokens[i].stem);
        if (by_stem != 0 && !nodes_[by_stem].empty()) found(i + 1 - at, nodes_[by_stem]);
      }
      if (next == 0) return;
      node = next;
      if (!nodes_[node].empty()) found(i + 1 - at, nodes_[node]);
    }
  }

  /// False when the token is surely no second word of a phrase; none is looked up by then.
  bool may_continue(const Token& second) const {
    return seconds_.may_have(second.form) || (second.stem != second.form && seconds_.may_have(second.stem));
  }
  /// Whether some phrase begins with the form.
  bool begins_with(std::uint64_t form) const { return !slots_.empty() && step(0, form) != 0; }
  /// The values of a phrase of exactly one word.
  const std::vector<std::uint32_t>* single(std::uint64_t form) const;

  bool empty() const { return slots_.empty(); }

 private:
  struct Slot {
    std::uint64_t form = 0;
    std::uint32_t from = 0;
    std::uint32_t to = 0;  ///< 0: free.
  };
  static std::uint64_t place_of(std::uint32_t node, std::uint64_t form) {
    std::uint64_t hash = (form ^ (std::uint64_t{node} << 32 | node)) * 0x9E3779B97F4A7C15ULL;
    return hash ^ (hash >> 29);
  }
  std::uint32_t step(std::uint32_t node, std::uint64_t form) const {
    for (std::uint64_t i = place_of(node, form) & mask_;; i = (i + 1) & mask_) {
      const Slot& slot = slots_[i];
      if (slot.to == 0) return 0;
      if (slot.from == node && slot.form == form) return slot.to;
    }
  }
  void grow();
  void insert(const Slot& slot);

  std::vector<Slot> slots_;
  std::uint64_t mask_ = 0;
  std::size_t used_ = 0;
  FormFilter seconds_;  ///< Second words of phrases.
  std::vector<std::vector<std::uint32_t>> nodes_{1};  ///< Values by node; node 0 is the root.
};

}  // namespace witnessmark
