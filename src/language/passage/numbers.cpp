// Numbers in digits and words: cardinals, phrases such as "a dozen", what makes them vague or bounds them,
// and what shows that they count no things.
#include <algorithm>

#include "language/passage/passage.h"

namespace witnessmark::claims {
namespace {

/// A cardinal in the making, word by word. Behind "thousand" counting begins anew, and what it comes to is
/// added.
class Cardinal {
 public:
  Cardinal() = default;
  /// In digits: only a multiplier may follow.
  explicit Cardinal(std::int64_t digits) : Cardinal(digits, digits) { closed_ = true; }
  /// By a phrase ("a dozen"), of least to most.
  Cardinal(std::int64_t least, std::int64_t most)
      : total_(least < kThousand ? 0 : least),
        part_(least - total_),
        over_(most - least),
        begun_(true),
        closed_(least < kHundred) {}

  std::int64_t least() const { return total_ + part_; }
  std::int64_t most() const { return total_ + part_ + over_; }
  /// What its first number was multiplied by, if nothing was added: 100 of "three hundred".
  std::int64_t scale() const { return mixed_ ? 1 : scale_; }
  /// Whether "and" and a number below a hundred may follow.
  bool takes_rest() const { return begun_ && !closed_ && least() >= kHundred; }

  /// Takes the next word in; false where it begins something else, as of "three four".
  bool add(const QuantityWord& word) {
    switch (word.quantity) {
      case QuantityClass::unit:
        return add_below_hundred(word.least, part_ % 10 == 0 && part_ % kHundred != 10);
      case QuantityClass::ten:
        return add_below_hundred(word.least, part_ % kHundred == 0);
      case QuantityClass::times:
        return multiply(word.least);
      default:
        return false;
    }
  }

 private:
  static constexpr std::int64_t kHundred = 100, kThousand = 1000, kMost = 1'000'000'000;

  bool add_below_hundred(std::int64_t value, bool fits) {
    if (!fits || closed_ || (begun_ && least() == 0)) return false;
    part_ += value;
    begun_ = true;
    mixed_ = scale_ > 1;
    return true;
  }

  /// "Two hundred thousand", "four dozen"; not "two hundred hundred", "two thousand thousand".
  bool multiply(std::int64_t by) {
    if (part_ == 0 && by < kHundred) std::swap(part_, total_);  // "Two thousand dozen."
    if (part_ == 0 || by < 2 || by == last_times_ || by >= thousands_ || part_ + over_ > kMost / by)
      return false;
    part_ *= by;
    over_ *= by;
    scale_ *= by;
    last_times_ = by;
    closed_ = by < kHundred;
    if (by < kThousand) return true;
    total_ += part_;
    part_ = last_times_ = 0;
    thousands_ = by;
    return true;
  }

  std::int64_t total_ = 0, part_ = 0;   ///< Two thousand, and three hundred.
  std::int64_t over_ = 0;               ///< By how much it may be more.
  std::int64_t scale_ = 1;              ///< All it was multiplied by.
  std::int64_t last_times_ = 0;         ///< What the part was multiplied by last.
  std::int64_t thousands_ = kMost + 1;  ///< What the total was: the next must be smaller.
  bool begun_ = false;
  bool closed_ = false;  ///< "Four dozen", "a couple of": only a multiplier may follow.
  bool mixed_ = false;   ///< Something was added to what was multiplied.
};

class NumberReader {
 public:
  NumberReader(Passage& passage, const Words& words) : passage_(passage), words_(words) {}

  void run(const Starts& starts) {
    std::uint32_t past = 0;  // Of the number read last.
    for (const std::uint32_t i : starts) {
      if (i >= past) past = read(i);
    }
  }

 private:
  const QuantityWord* word_at(std::uint32_t i) const {
    const Note& note = passage_.notes[i];
    if (!note.info || note.info->quantity < 0 || taken(i)) return nullptr;
    return &words_.quantities[static_cast<std::size_t>(note.info->quantity)];
  }
  bool taken(std::uint32_t i) const { return passage_.notes[i].thing >= 0 || passage_.notes[i].date >= 0; }

  /// Digits of at most nine places without a point.
  bool digits_at(std::uint32_t i, std::int64_t& value) const {
    const Token& token = passage_.tokens[i];
    if (token.kind != Token::Kind::number || token.end - token.begin > 9) return false;
    value = 0;
    for (std::uint32_t k = token.begin; k < token.end; ++k) {
      const char c = passage_.text[k];
      if (c == ',') continue;
      if (c < '0' || c > '9') return false;
      value = value * 10 + (c - '0');
    }
    return true;
  }

  /// "Two hundred and six": a word that joins, and a number below a hundred behind it.
  bool joins(std::uint32_t i, const Cardinal& made) const {
    const bool may = passage_.has(i, WordClass::coordinator) && !passage_.has(i, WordClass::either) &&
                     made.takes_rest() && i + 1 < passage_.tokens.size();
    const QuantityWord* next = may ? word_at(i + 1) : nullptr;
    return next && next->quantity <= QuantityClass::ten;
  }

  /// "a hundred two-inch bolts": of each bolt.
  bool makes_adjective(std::uint32_t i) const {
    const std::uint32_t end = passage_.tokens[i].end;
    if (i + 1 >= passage_.tokens.size() || passage_.text[end] != '-') return false;
    const QuantityWord* next = word_at(i + 1);
    return !next || next->quantity == QuantityClass::not_a_count;
  }

  /// A cardinal from token i in words, or in digits or a phrase with number words behind them ("2 hundred",
  /// "a couple of dozen"); the token past it, i when there is none.
  std::uint32_t cardinal(std::uint32_t i, Cardinal& made) const {
    if (taken(i)) return i;
    const auto count = static_cast<std::uint32_t>(passage_.tokens.size());
    std::uint32_t at = i;
    std::int64_t digits = 0;
    QuantityWord word;
    if (digits_at(i, digits)) {
      made = Cardinal(digits);
      at = i + 1;
    } else if (const std::uint32_t past = phrase(i, word);
               past > i && word.quantity == QuantityClass::phrase) {
      made = Cardinal(word.least, word.most);
      at = past;
    }
    for (; at < count; ++at) {
      const QuantityWord* next = word_at(at);
      if (next ? (at > i && makes_adjective(at)) || !made.add(*next) : !joins(at, made)) break;
    }
    return at;
  }

  std::uint32_t phrase(std::uint32_t i, QuantityWord& word) const {
    if (!passage_.notes[i].info || !passage_.notes[i].info->starts_quantity) return i;
    std::uint32_t past = i;
    words_.phrases.match(passage_.tokens, i,
                         [&](std::size_t length, const std::vector<std::uint32_t>& values) {
                           for (const std::uint32_t value : values) {
                             if (Words::kind_of(value) == Words::PhraseKind::quantity) {
                               past = i + static_cast<std::uint32_t>(length);
                               word = words_.quantities[Words::index_of(value)];
                             }
                           }
                         });
    return past;
  }

  std::uint32_t read(std::uint32_t i) {
    if (taken(i)) return i;
    const auto count = static_cast<std::uint32_t>(passage_.tokens.size());
    Number number;
    number.span.first = i;
    number.ordinal_name = names_one(i);
    QuantityWord before;
    std::uint32_t at = phrase(i, before);
    bool qualified = at > i && before.quantity != QuantityClass::phrase;
    if (!qualified) {
      at = i;
      if (const QuantityWord* word = word_at(i); word && word->quantity >= QuantityClass::about_before &&
                                                 word->quantity != QuantityClass::not_a_count) {
        before = *word;
        qualified = true;
        at = i + 1;
      }
    }
    if (at >= count) return i;
    Cardinal said;
    const std::uint32_t past = cardinal(at, said);
    if (past == at) return i;
    number.least = said.least();
    number.most = said.most();
    // "In number two, four": no two to four.
    at = number.ordinal_name ? past : alternative(past, number);
    if (qualified) apply(before, number);
    at = afterthought(at, number);
    number.span.past = at;
    judge(number);
    for (std::uint32_t k = number.span.first; k < at; ++k) {
      passage_.notes[k].number = static_cast<std::int32_t>(passage_.numbers.size());
    }
    passage_.numbers.push_back(number);
    return at;
  }

  /// "three or four", "two or three hundred", "six, seven weeks".
  std::uint32_t alternative(std::uint32_t at, Number& number) const {
    const auto count = static_cast<std::uint32_t>(passage_.tokens.size());
    if (at + 1 >= count) return at;
    const bool comma = passage_.is_mark(at, ',');
    if (!comma && !passage_.has(at, WordClass::either)) return at;
    if (comma && number.least <= 1) return at;
    Cardinal other;
    const std::uint32_t past = cardinal(at + 1, other);
    if (past == at + 1 || (comma && goes_on_as_list(past))) return at;
    // "Two or three hundred": hundreds both.
    for (const std::int64_t scale : {std::int64_t{1}, other.scale()}) {
      const std::int64_t least = number.least * scale;
      const std::int64_t highest = (comma ? number.least * 3 / 2 + 1 : number.least * 2 + 1) * scale;
      if (other.most() <= least || other.most() > highest) continue;
      number.least = least;
      number.most = other.most();
      number.about = true;
      return past;
    }
    return at;
  }

  /// "One, two and three", "in 12, 13 and 14": a list, not one number about.
  bool goes_on_as_list(std::uint32_t past) const {
    return past + 1 < passage_.tokens.size() &&
           (passage_.is_mark(past, ',') || passage_.has(past, WordClass::coordinator)) &&
           (word_at(past + 1) || passage_.tokens[past + 1].kind == Token::Kind::number);
  }

  static void apply(const QuantityWord& word, Number& number) {
    switch (word.quantity) {
      case QuantityClass::about_before:
        number.least = std::max<std::int64_t>(0, number.least - word.least);
        number.most += word.most;
        number.about = true;
        break;
      default:
        number.bound = word.quantity;
        break;
    }
  }

  /// "a dozen or so", "forty-odd".
  std::uint32_t afterthought(std::uint32_t at, Number& number) const {
    const auto count = static_cast<std::uint32_t>(passage_.tokens.size());
    if (at >= count) return at;
    QuantityWord word;
    std::uint32_t past = phrase(at, word);
    if (past == at) {
      if (const QuantityWord* single = word_at(at)) {
        word = *single;
        past = at + 1;
      }
    }
    // "twenty-some".
    const bool hyphened = past == at + 1 && passage_.text[passage_.tokens[at].begin - 1] == '-';
    const bool vague =
        word.quantity == QuantityClass::about || (word.quantity == QuantityClass::about_before && hyphened);
    if (past == at || !vague) return at;
    number.least = std::max<std::int64_t>(0, number.least - word.least);
    number.most += word.most;
    number.about = true;
    return past;
  }

  void judge(Number& number) const {
    const auto count = static_cast<std::uint32_t>(passage_.tokens.size());
    const std::uint32_t at = number.span.past;
    if (at < count) {
      const QuantityWord* next = word_at(at);
      // "a twelve foot mast", "a 40-ton crane": one thing of that size.
      const bool after_article = number.span.first > 0 && number.least == number.most && number.least > 1 &&
                                 passage_.has(number.span.first - 1, WordClass::article);
      number.measure = after_article || (next && next->quantity == QuantityClass::not_a_count);
    }
  }

  /// "Number two": whether the number at a token is a name.
  bool names_one(std::uint32_t i) const {
    if (i == 0 || passage_.tokens[i - 1].kind != Token::Kind::word) return false;
    return passage_.has(i - 1, WordClass::number_sign) && !passage_.has(i - 1, WordClass::negative_determiner);
  }

  Passage& passage_;
  const Words& words_;
};

}  // namespace

void read_numbers(Passage& passage, const Words& words, const Starts& starts) {
  NumberReader(passage, words).run(starts);
}

}  // namespace witnessmark::claims
