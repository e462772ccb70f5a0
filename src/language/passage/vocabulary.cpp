#include "language/passage/vocabulary.h"

#include <algorithm>

#include "language/passage/passage.h"
#include "witnessmark/base/fold.h"

namespace witnessmark::claims {
namespace {

const TermFinder* finder_of(const Finders& finders, std::size_t kind) {
  switch (static_cast<ThingKind>(kind)) {
    case ThingKind::equipment:
      return finders.equipment;
    case ThingKind::place:
      return finders.places;
    case ThingKind::location:
      return finders.locations ? &*finders.locations : nullptr;
    case ThingKind::person:
      return finders.persons ? &*finders.persons : nullptr;
  }
  return nullptr;
}

}  // namespace

std::string_view ending_of(std::string_view folded_word) {
  constexpr std::size_t kLong = 5, kLetters = 3;
  if (folded_word.size() < kLong) return {};
  const std::string_view ending = folded_word.substr(folded_word.size() - kLetters);
  const bool ascii = std::all_of(ending.begin(), ending.end(), [](char c) { return (c & 0x80) == 0; });
  return ascii ? ending : std::string_view();
}

Spelling& Vocabulary::put(const Spelling& spelling) {
  std::uint64_t i = place_of(spelling.written);
  while (slots_[i].known) i = (i + 1) & mask_;
  slots_[i] = spelling;
  ++used_;
  return slots_[i];
}

const Spelling& Vocabulary::learn(std::string_view text, const Token& token) {
  if ((used_ + 1) * 2 > slots_.size()) {
    const std::vector<Spelling> old = std::move(slots_);
    slots_.assign(old.size() * 2, Spelling{});
    mask_ = slots_.size() - 1;
    used_ = 0;
    for (const Spelling& spelling : old) {
      if (spelling.known) put(spelling);
    }
  }
  Spelling made;
  made.known = true;
  made.written = token.form;
  made.form = token.kind == Token::Kind::word ? words_.common_form(token.form) : token.form;
  made.info = words_.find(made.form);
  if (token.kind == Token::Kind::word) {
    const std::string folded = fold(text.substr(token.begin, token.end - token.begin));
    const std::string_view ending = ending_of(folded);
    if (!ending.empty()) made.ending = word_form(ending);
  }
  const bool one = made.info && made.info->flags.has(WordClass::one);
  made.head = token.kind == Token::Kind::word && (one || !finders_.heads->ending_in(made.form).empty());
  made.number = token.kind == Token::Kind::number ||
                (made.info && (made.info->quantity >= 0 || made.info->starts_quantity));
  made.phrase = made.info && (made.info->cue >= 0 || made.info->starts_phrase);
  made.begins_something =
      made.head || made.number || made.phrase || (token.kind == Token::Kind::mark && token.mark == ',');
  for (std::size_t kind = 0; kind < made.names.size() && token.kind != Token::Kind::mark; ++kind) {
    const TermFinder* finder = finder_of(finders_, kind);
    if (!finder || finder->index().list.empty()) continue;
    made.names[kind] = finder->index().marks_of(made.form, made.info);
    made.named = made.named || made.names[kind] != 0;
  }
  return put(made);
}

bool Vocabulary::stem_begins_name(const Token& token, std::size_t kind) const {
  const TermFinder* finder = finder_of(finders_, kind);
  return finder && finder->index().names_trie.begins_with(token.stem);
}

}  // namespace witnessmark::claims
