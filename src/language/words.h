#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "language/phrase_trie.h"
#include "witnessmark/base/result.h"
#include "witnessmark/model/claim.h"

namespace witnessmark {

/// Classes of grammar words (words.csv), as bits of one token's flags. A phrase of several words sets the bit
/// on its first token.
enum class WordClass : std::uint8_t {
  determiner,
  indefinite,
  be,
  present_be,
  have,
  had_or_would,
  do_,
  modal,
  would,
  we,
  us,
  they,
  it,
  she,
  this_,
  them,
  pronoun,
  new_one,
  exist,
  there,
  in_there,
  at,
  from,
  to,
  of,
  by,
  with,
  for_,
  relation,
  relation_degree,
  side,
  numbered_place,
  coordinator,
  subordinator,
  relative,
  when,
  where,
  as,
  before,
  after,
  until,
  if_,
  then,
  terminator,
  terminator_soft,
  question_word,
  how_many,
  both,
  old,
  only,
  more,
  number_sign,
  everything,
  nothing,
  negative,
  negative_determiner,
  no_longer,
  yet,
  never,
  gone,
  person,
  activity,
  people_count,
  of_them,
  colour,
  shade,
  material,
  type,
  condition,
  event_noun,
  life_event,
  along,
  in_place,
  instead_of,
  had_been,
  used_to,
  used_word,
  still,
  already,
  adverb,
  got,
  interviewer_label,
  narrator_label,
  filler,
  off,
  self,         ///< I, me, my
  whereabouts,  ///< aboard, ashore, up there: where somebody was, in one phrase
  quality,      ///< big, heavy, noisy
  abstract,     ///< story, reason, fuss: nothing that stands anywhere
  new_,         ///< new, brand new
  mental,       ///< wanted, liked, asked: past forms that do nothing to a thing
  when_noun,    ///< year, date: "what year was that?"
  my_time,      ///< in my time, while I was there
  measure,      ///< size, height, shape
  one,          ///< one, ones: stands for a noun
  habit,        ///< every day, always: done again and again
  past_form,    ///< took, lay: past forms that do not end in -ed
  journey,      ///< went, came, stayed: of people, they ask for whereabouts
  leaving,      ///< left, came off: of people, the end of a stay
  article,      ///< a, an
  like,         ///< like: a comparison follows
  way,          ///< out, back, up: between going and where to
  throughout,   ///< throughout, all through: it lasted the whole time
  you,          ///< you, you'd
  than,         ///< than: what it is measured by follows
  past_help,    ///< was, had, could: help a verb, in the past
  our,          ///< our: of the narrator and others
  any,          ///< any: behind a "never" there was none
  exception,    ///< but once, more than twice: behind a denied verb it was so all the same
  other_time,   ///< before the war: a time that is not that of the talk before, and has no date
  either,       ///< or: between two numbers it is one of them
  source,       ///< photograph, log, letter: something to read from; kept as WordInfo::source, not as a flag
  count_
};
/// Flags of a token; more classes than fit in one word.
struct Flags {
  std::uint64_t low = 0;
  std::uint64_t high = 0;
  constexpr bool has(WordClass c) const {
    const auto i = static_cast<unsigned>(c);
    return i < 64 ? (low >> i) & 1U : (high >> (i - 64)) & 1U;
  }
  constexpr void set(WordClass c) {
    const auto i = static_cast<unsigned>(c);
    if (i < 64) {
      low |= std::uint64_t{1} << i;
    } else {
      high |= std::uint64_t{1} << (i - 64);
    }
  }
  void clear(WordClass c) {
    const auto i = static_cast<unsigned>(c);
    if (i < 64) {
      low &= ~(std::uint64_t{1} << i);
    } else {
      high &= ~(std::uint64_t{1} << (i - 64));
    }
  }
  constexpr bool any() const { return low != 0 || high != 0; }
  void join(const Flags& other) {
    low |= other.low;
    high |= other.high;
  }
};

/// Classes of cues (cues.csv). Cues only suggest; each is kept as the span it was read from.
enum class CueClass : std::uint8_t {
  hedge,
  told,
  told_order,
  told_own,
  read,
  inferred,
  would_have,
  own_would_have,
  first_hand,
  memory,
  pseudo,
  doubt,
  correction,
  nonfactual,
  yes,
  maybe,
  no,
  unknown,
  before_time
};
std::string_view to_string(CueClass);
/// Whether the words of a class say yes or no to a question, or that one does not know.
constexpr bool opens_answer(CueClass cue) {
  return cue == CueClass::yes || cue == CueClass::maybe || cue == CueClass::no || cue == CueClass::unknown;
}

/// What a cue's class leaves open; README.md of the language folder says what each does.
enum class CueValue : std::uint8_t {
  none,
  hedged,
  guess,
  sound,
  alone,
  shown,
  not_,
  grounds,
  dating,
  blocks,
  when,
  general,
  affirm,
  aside,
  contrary,
  not_as_if,
  not_only,
  not_until,
  child,
  elsewhere,
  blocks_when,
  agrees,
  states
};
/// As cues.csv writes it; empty for none.
std::string_view to_string(CueValue);
/// Whether what is not remembered keeps a statement from being claimed.
constexpr bool blocks(CueValue value) {
  return value == CueValue::blocks || value == CueValue::blocks_when;
}

struct Cue {
  CueClass cue = CueClass::hedge;
  CueValue value = CueValue::none;
  std::string phrase;
};
/// Class and value, as mentions hold it: "hedge guess".
std::string value_of(const Cue&);

/// Classes of quantity words (quantities.csv).
enum class QuantityClass : std::uint8_t {
  unit,
  ten,
  times,
  phrase,
  about,
  about_before,
  least,
  more_than,
  most,
  less_than,
  not_a_count
};
struct QuantityWord {
  QuantityClass quantity = QuantityClass::unit;
  std::int64_t least = 0;
  std::int64_t most = 0;
};

enum class VerbForm : std::uint8_t { base = 1, third = 2, past = 4, participle = 8, ing = 16 };
/// What a verb row makes of its arguments.
enum class VerbKind : std::uint8_t {
  begins,
  ends,
  move,
  replace,
  swap,
  takeover,
  present,
  paint,
  unpaint,
  name,
  happened,
  located,
  built,
  does
};
enum class VerbFrame : std::uint8_t { object, subject };
enum class VerbNeeds : std::uint8_t {
  nothing,
  place,
  returned,
  toplace,
  fromplace,
  weobject,
  past,
  move,
  swap,
  seen,
  sight,
  colour,
  name,
  thing,
  location,
  counted,
  aboard,
  newthing
};
struct Verb {
  std::string base;
  std::string particle;  ///< "off"; empty when none.
  std::string name;      ///< "take off".
  std::vector<std::uint64_t> particle_forms;
  VerbKind kind = VerbKind::begins;
  VerbFrame frame = VerbFrame::object;
  VerbNeeds needs = VerbNeeds::nothing;
};

/// Words that stand before a noun: "electric", "green", "old".
inline bool is_adjective(const Flags& f) {
  for (const WordClass c : {WordClass::type, WordClass::colour, WordClass::shade, WordClass::material,
                            WordClass::condition, WordClass::quality, WordClass::old, WordClass::new_})
    if (f.has(c)) return true;
  return false;
}

/// What is known of one word form.
struct WordInfo {
  Flags flags;
  /// "lay" is a form of two verbs. VerbForm bits (0: none) and index into verb_groups.
  std::uint8_t verb_forms[2] = {0, 0};
  std::int32_t verb_group[2] = {-1, -1};
  bool starts_phrase = false;    ///< Some phrase of two or more words begins with it.
  bool starts_quantity = false;  ///< Such a phrase of quantities.csv.
  std::int32_t cue = -1;         ///< Index of a one-word cue list.
  std::int32_t quantity = -1;    ///< Index into quantities.
  bool may_be(VerbForm form) const { return (verb_forms[0] & static_cast<std::uint8_t>(form)) != 0; }
  bool source = false;           ///< Names a picture or a writing. It is a noun like any other, so no flag.
};

/// All words of a language but dates.
struct Words {
  /// Spelling variants and number words to one form; applied to every token before anything is looked up.
  std::unordered_map<std::uint64_t, std::uint64_t> equal;
  std::unordered_map<std::uint64_t, std::string> digits_of;  ///< Form of "two" to "2".
  std::vector<std::pair<std::string, std::string>> plural_endings;
  std::vector<std::string> past_endings;
  std::vector<std::string> going_endings;
  /// Whether a word has the look of what is under way ("landing"); short words ("ring") have not.
  bool is_going(std::string_view word) const;
  /// Whether a word of no row has the ending of past forms ("greased").
  bool is_past(std::string_view word) const;

  std::vector<Cue> cues;
  std::vector<QuantityWord> quantities;
  std::vector<Verb> verbs;
  // What a past form of no row is taken for.
  Verb any_doing;  ///< Done to a thing: it happened.
  Verb any_does;   ///< Done by a thing: what it is like.
  Verb any_going;  ///< Done by people somewhere: where they were.
  std::vector<std::vector<std::uint32_t>>
      verb_groups;  ///< Rows of verbs of one base, longest particle first.
  std::vector<std::vector<std::uint32_t>> cue_lists;

  enum class PhraseKind : std::uint32_t { word, cue, quantity };
  /// Values are kind << 28 | index: a WordClass, a cue, a quantity.
  PhraseTrie phrases;
  static constexpr std::uint32_t phrase_value(PhraseKind kind, std::size_t index) {
    return static_cast<std::uint32_t>(kind) << 28 | static_cast<std::uint32_t>(index);
  }
  static constexpr PhraseKind kind_of(std::uint32_t value) { return static_cast<PhraseKind>(value >> 28); }
  static constexpr std::uint32_t index_of(std::uint32_t value) { return value & 0x0FFFFFFF; }

  const WordInfo* find(std::uint64_t form) const {
    for (std::uint64_t i = (form * 0x9E3779B97F4A7C15ULL >> 20) & mask;; i = (i + 1) & mask) {
      if (table[i].second < 0) return nullptr;
      if (table[i].first == form) return &infos[static_cast<std::size_t>(table[i].second)];
    }
  }
  WordInfo& at(std::uint64_t form);
  /// The form that a word of this form is compared by: equal spellings have one.
  std::uint64_t common_form(std::uint64_t form) const {
    const auto found = equal.find(form);
    return found == equal.end() ? form : found->second;
  }
  /// Takes the full stops out that belong to an abbreviation before a number ("no. 2").
  void drop_number_stops(std::vector<Token>& tokens) const;
  /// The tokens without those stops, their forms with equal spellings made one.
  void normalize(std::vector<Token>& tokens) const;
  /// Forms of a phrase of a data file, normalised.
  std::vector<std::uint64_t> forms_of(std::string_view phrase) const;
  /// "davit" to "davits".
  std::string plural_of(std::string_view word) const;

  std::vector<std::pair<std::uint64_t, std::int32_t>> table{16, {0, -1}};
  std::uint64_t mask = 15;
  std::vector<WordInfo> infos;
};

class FileReader;

/// Reads words.csv, cues.csv, verbs.csv, quantities.csv, equivalents.csv and inflections.csv.
Result<Words> load_words(const FileReader& files, const std::string& folder);

/// The bit's name in words.csv, and back.
std::string_view to_string(WordClass);

}  // namespace witnessmark
