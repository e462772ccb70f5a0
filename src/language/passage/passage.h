#pragma once
#include <algorithm>
#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "language/language_data.h"
#include "language/passage/finders.h"
#include "language/passage/vocabulary.h"
#include "language/term_index.h"
#include "witnessmark/base/code_point_index.h"
#include "witnessmark/language/claims.h"
#include "witnessmark/language/date_expression.h"

namespace witnessmark::claims {

/// Half-open range of tokens.
struct Span {
  std::uint32_t first = 0;
  std::uint32_t past = 0;
  bool empty() const { return past <= first; }
  bool holds(std::uint32_t token) const { return first <= token && token < past; }
};

enum class ThingKind : std::uint8_t { equipment, place, location, person };

/// What the word before a mention makes of it.
enum class Role : std::uint8_t {
  none,      ///< Subject or object.
  at,        ///< in, on, at …
  from,      ///< off, out of, from
  to,        ///< to, into, onto
  relation,  ///< by, under, aft of …: not where it is but what it is beside
  of,
  by,
  with,
  for_,
  until,
  instead  ///< instead of
};

/// A term, location or person named.
struct Thing {
  Span span;
  ThingKind kind = ThingKind::equipment;
  std::vector<std::uint32_t> terms;  ///< Indices into the list, the locations or the persons.
  bool plural = false;
  bool near_match = false;
  Role role = Role::none;
  bool negated = false;        ///< "no radar", "not the capstan".
  bool indefinite = false;     ///< "a crane", "another crane".
  std::uint32_t head = 0;      ///< First token of the noun phrase it ends.
  std::int32_t quantity = -1;  ///< Index of the number that counts it.
  bool shadowed = false;       ///< "the crane driver": names a person or work, not the thing.
  bool location = false;       ///< A place that is also one of the itinerary's locations.
  bool carried = false;        ///< "the clock" for a "wireless cabin clock" spoken of before.
  bool corrected = false;      ///< Taken back: "the wheelhouse, sorry, the chart room".
  std::int32_t total = -1;     ///< "two of the four davits": the four.
  std::int32_t role_at = -1;   ///< Token of the word that gives the role.
};

struct Number {
  Span span;
  std::int64_t least = 0;
  std::int64_t most = 0;
  bool about = false;
  bool measure = false;                ///< Counts years, feet and the like.
  bool ordinal_name = false;           ///< "number two".
  std::optional<QuantityClass> bound;  ///< "at least", "more than".
};

struct CueSpan {
  Span span;
  std::uint32_t cue = 0;
};

/// What stands at a token; -1 for nothing.
struct Note {
  const WordInfo* info = nullptr;
  Flags flags;
  std::uint64_t ending = 0;  ///< Form of the word's ending_of (vocabulary.h); 0 when it has none.
  std::int32_t thing = -1;
  std::int32_t date = -1;
  std::int32_t number = -1;
  std::int32_t cue = -1;   ///< A cue that covers it, if it is of a class that hides negatives.
  std::uint8_t reach = 1;  ///< Length of the longest phrase of grammar words that begins here.
};

/// One utterance with everything found in it by looking up words; nothing is understood yet.
struct Passage {
  std::string_view text;
  std::int64_t base_byte = 0;        ///< Of text in the reading text.
  std::int64_t base_code_point = 0;  ///< The same in code points.
  bool ascii = false;                ///< Of text: a byte is a code point.
  std::vector<Token> tokens;
  std::vector<Note> notes;    ///< One for each token.
  std::vector<Thing> things;  ///< In order.
  std::vector<Number> numbers;
  std::vector<CueSpan> cues;
  std::vector<std::uint32_t> sources;  ///< Tokens that name a picture or a writing.
  std::vector<DateExpression> dates;
  std::vector<Span> date_spans;  ///< One for each date; empty when no token is covered.

  // What begins in a range of tokens: an utterance may be long, a sentence looks at its own part.
  std::span<const Thing> things_in(Span range) const { return beginning_in(things_near(range), range); }
  std::span<Thing> things_in(Span range) { return beginning_in(std::span(things), range); }
  /// Things are from now on mostly asked for in this range, so that they need not be looked up each time.
  void look_at(Span range) {
    const std::span<Thing> inside = things_in(range);
    looked_at_ = range;
    things_looked_at_ = {inside.data(), inside.size()};
  }
  std::span<const Number> numbers_in(Span range) const { return beginning_in(std::span(numbers), range); }
  std::span<const CueSpan> cues_in(Span range) const { return beginning_in(std::span(cues), range); }
  /// Whether a picture or a writing is named.
  bool names_source(Span range) const {
    const auto first = std::lower_bound(sources.begin(), sources.end(), range.first);
    return first != sources.end() && *first < range.past;
  }
  /// Indices of the dates, half-open; of those that cover no token some may be among them.
  Span dates_in(Span range) const {
    const auto before = [](const Span& date, std::uint32_t token) { return date.first < token; };
    const auto from = std::lower_bound(date_spans.begin(), date_spans.end(), range.first, before);
    const auto past = std::lower_bound(from, date_spans.end(), range.past, before);
    return {static_cast<std::uint32_t>(from - date_spans.begin()),
            static_cast<std::uint32_t>(past - date_spans.begin())};
  }

  bool has(std::uint32_t i, WordClass c) const { return notes[i].flags.has(c); }
  bool is_mark(std::uint32_t i) const { return tokens[i].kind == Token::Kind::mark; }
  bool is_mark(std::uint32_t i, char mark) const { return is_mark(i) && tokens[i].mark == mark; }
  /// What is named at token i; null for nothing.
  const Thing* thing_at(std::uint32_t i) const {
    const std::int32_t thing = notes[i].thing;
    return thing < 0 ? nullptr : &things[static_cast<std::size_t>(thing)];
  }
  /// Whether a thing of that kind is named at token i.
  bool names(std::uint32_t i, ThingKind kind) const {
    const Thing* thing = thing_at(i);
    return thing && thing->kind == kind;
  }
  /// "The crane and the funnel were buff": whether a thing stands beside another of a list.
  bool is_listed(const Thing* thing) const {
    if (!thing) return false;
    std::uint32_t first = thing->span.first;
    while (first > 0 && (has(first - 1, WordClass::determiner) || is_adjective(notes[first - 1].flags))) --first;
    const bool behind = first > 0 && has(first - 1, WordClass::coordinator);
    return behind || (thing->span.past < notes.size() && has(thing->span.past, WordClass::coordinator));
  }
  /// Whether a number counts things: not years or feet ("four feet"), not one of them ("number four"), not
  /// people ("four of us").
  bool countable(const Number& number) const {
    if (number.measure || number.ordinal_name) return false;
    const std::uint32_t past = number.span.past;
    return past >= notes.size() || (!has(past, WordClass::people_count) && !has(past, WordClass::person));
  }

  /// Whether token i is a word with a capital letter (ASCII).
  bool capitalised(std::uint32_t i) const {
    const char c = text[tokens[i].begin];
    return tokens[i].kind == Token::Kind::word && c >= 'A' && c <= 'Z';
  }

  std::string_view words(Span span) const {
    if (span.empty()) return {};
    const std::uint32_t begin = tokens[span.first].begin;
    return text.substr(begin, tokens[span.past - 1].end - begin);
  }

 private:
  std::span<const Thing> things_near(Span range) const {
    const bool inside = looked_at_.first <= range.first && range.past <= looked_at_.past;
    return inside ? things_looked_at_ : std::span<const Thing>(things);
  }
  template <typename Item>
  static std::span<Item> beginning_in(std::span<Item> items, Span range) {
    constexpr std::size_t kFew = 6;
    if (items.size() <= kFew) {
      std::size_t first = 0, past = items.size();
      while (first < past && items[first].span.first < range.first) ++first;
      while (past > first && items[past - 1].span.first >= range.past) --past;
      return items.subspan(first, past - first);
    }
    const auto before = [](const Item& item, std::uint32_t token) { return item.span.first < token; };
    const auto from = std::lower_bound(items.begin(), items.end(), range.first, before);
    return {from, std::lower_bound(from, items.end(), range.past, before)};
  }

  Span looked_at_;
  std::span<const Thing> things_looked_at_;
};

/// Tokens that may begin something, in order.
using Starts = std::vector<std::uint32_t>;

/// Finds the numbers of a passage in which dates and things are already found.
void read_numbers(Passage& passage, const Words& words, const Starts& starts);

/// Finds dates, terms, numbers and cues. The passage's vectors are reused from call to call.
class Annotator {
 public:
  Annotator(const Language& language, const Finders& finders)
      : language_(language), finders_(finders), vocabulary_(language.data().words, finders) {}

  /// remarks: byte ranges of the text whose words are passed over, in order.
  void annotate(std::string_view text, const std::vector<ByteRange>& remarks,
                std::vector<DateExpression> dates, const std::vector<ByteRange>& date_bytes,
                HeadMemory& heads, Passage& passage);

 private:
  void look_up_words(Passage& passage);
  void place_dates(const std::vector<ByteRange>& date_bytes, Passage& passage);
  void find_things(HeadMemory& heads, Passage& passage);
  std::string place_near(const Passage& passage, std::uint32_t at) const;
  void clear_starts();
  void find_heads(HeadMemory& heads, Passage& passage);
  void find_one(HeadMemory& heads, std::uint32_t i, Passage& passage);
  void add_things(const TermFinder& finder, ThingKind kind, Passage& passage);
  void find_numbers(Passage& passage);
  void find_phrases(Passage& passage);
  void hide_tags(Passage& passage);
  void settle_roles(Passage& passage);
  void read_phrase(Passage& passage, Thing& thing);
  void read_role(Passage& passage, Thing& thing);
  void withdraw_corrected(Passage& passage);

  const Language& language_;
  const Finders& finders_;
  Vocabulary vocabulary_;
  std::array<std::vector<NameStart>, 4> name_starts_;  ///< By ThingKind.
  Starts head_starts_, number_starts_, phrase_starts_, comma_at_;
  std::vector<TokenMention> found_;
  std::size_t first_place_ = 0, past_place_ = 0;  ///< Among the passage's things, while they are being found.
  // Kept from passage to passage for their memory.
  std::vector<Thing> kept_things_;
  std::vector<std::uint32_t> cues_here_, answers_here_;
  std::array<NearMemory, 2> memories_;  ///< Of equipment and places.
};

}  // namespace witnessmark::claims
