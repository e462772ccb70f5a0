#pragma once
#include <array>
#include <cstdint>
#include <string_view>
#include <vector>

#include "language/words.h"

namespace witnessmark::claims {

struct Finders;

/// The last three letters of a folded word of five or more; empty for other words.
std::string_view ending_of(std::string_view folded_word);

/// What one word is to every step of reading, worked out when it is met for the first time in an interview.
/// Talk repeats its words: a token costs one look-up here, and every step goes only to the tokens that are
/// something to it.
struct Spelling {
  std::uint64_t written = 0;  ///< Form as the token scan makes it.
  std::uint64_t form = 0;     ///< The same with equal spellings made one.
  const WordInfo* info = nullptr;
  std::uint64_t ending = 0;  ///< Form of its ending_of; 0 when it has none.
  std::array<std::uint8_t, 4> names{};  ///< NameMark bits by ThingKind.
  bool named = false;                   ///< Some of names is set.
  bool head = false;                    ///< Last word of some name of several words; or "one".
  bool number = false;                  ///< May begin a number.
  bool phrase = false;                  ///< A cue, or may begin a phrase.
  bool begins_something = false;        ///< One of the three, or a comma.
  bool known = false;                   ///< False: a free place of the table.
};

class Vocabulary {
 public:
  Vocabulary(const Words& words, const Finders& finders) : words_(words), finders_(finders) {}

  /// The word of a token of the text; valid until the next call.
  const Spelling& of(std::string_view text, const Token& token) {
    std::uint64_t i = place_of(token.form);
    while (slots_[i].known && slots_[i].written != token.form) i = (i + 1) & mask_;
    return slots_[i].known ? slots_[i] : learn(text, token);
  }

  /// Whether the name of some thing of that kind begins with the token's stem.
  bool stem_begins_name(const Token& token, std::size_t kind) const;

 private:
  std::uint64_t place_of(std::uint64_t form) const { return (form * 0x9E3779B97F4A7C15ULL >> 20) & mask_; }
  const Spelling& learn(std::string_view text, const Token& token);
  Spelling& put(const Spelling& spelling);

  const Words& words_;
  const Finders& finders_;
  std::uint64_t mask_ = 1023;
  std::size_t used_ = 0;
  std::vector<Spelling> slots_{std::vector<Spelling>(1024)};
};

}  // namespace witnessmark::claims
