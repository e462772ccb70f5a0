#include "language/passage/no_thing.h"

namespace witnessmark::claims {
namespace {

/// "I saw", "they left": a word that is a past form, right behind a pronoun, is no name of a thing.
bool is_verb_behind_pronoun(const Passage& passage, Span span) {
  if (span.first == 0 || span.past - span.first != 1) return false;
  const WordInfo* info = passage.notes[span.first].info;
  if (!info || !info->may_be(VerbForm::past)) return false;
  const Flags& f = passage.notes[span.first - 1].flags;
  if (f.has(WordClass::determiner)) return false;
  for (const WordClass pronoun : {WordClass::self, WordClass::we, WordClass::you, WordClass::they,
                                  WordClass::she, WordClass::it, WordClass::never})
    if (f.has(pronoun)) return true;
  return false;
}

/// "No one could hear", where number one is on the list; but "No 1".
bool is_nobody(const Passage& passage, const Words& words, Span span) {
  const WordInfo* info = passage.notes[span.first].info;
  if (span.past - span.first != 2 || !info || !info->starts_phrase) return false;
  const std::string_view number = passage.words({span.first + 1, span.past});
  constexpr std::uint32_t kNegative =
      Words::phrase_value(Words::PhraseKind::word, static_cast<std::size_t>(WordClass::negative));
  bool negative = false;
  words.phrases.match(passage.tokens, span.first,
                      [&](std::size_t length, const std::vector<std::uint32_t>& values) {
                        for (const std::uint32_t value : values)
                          negative = negative || (length == 2 && value == kNegative);
                      });
  return negative && (number.front() < '0' || number.front() > '9');
}

}  // namespace

bool names_no_thing(const Passage& passage, const Words& words, Span span) {
  return is_verb_behind_pronoun(passage, span) || is_nobody(passage, words, span);
}

}  // namespace witnessmark::claims
