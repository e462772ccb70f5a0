// Numbers in digits and words: cardinals, phrases such as "a dozen", what makes them vague or bounds them,
// and what shows that they count no things.
#include <algorithm>

#include "language/passage/passage.h"

namespace witnessmark::claims {
namespace {

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

  /// A cardinal in digits or words from token i; the token past it, i when there is none.
  std::uint32_t cardinal(std::uint32_t i, std::int64_t& value) const {
    const auto count = static_cast<std::uint32_t>(passage_.tokens.size());
    if (!taken(i) && digits_at(i, value)) return i + 1;
    std::int64_t total = 0;
    std::int64_t part = 0;
    std::uint32_t at = i;
    bool any = false;
    for (; at < count; ++at) {
      const QuantityWord* word = word_at(at);
      if (!word) {
        const bool bridge = any && total + part >= 100 && passage_.has(at, WordClass::coordinator) &&
                            at + 1 < count && word_at(at + 1) &&
                            word_at(at + 1)->quantity <= QuantityClass::ten;
        if (bridge) continue;
        break;
      }
      if (word->quantity == QuantityClass::unit) {
        // "three four" are two numbers; "twenty-three" is one.
        if (part % 10 != 0 || (part == 0 && any && total == 0) || (part % 100 == 10)) break;
        part += word->least;
      } else if (word->quantity == QuantityClass::ten) {
        if (part % 100 != 0) break;
        part += word->least;
      } else if (word->quantity == QuantityClass::times && any) {
        part *= word->least;
        if (word->least >= 1000) {
          total += part;
          part = 0;
        }
      } else {
        break;
      }
      any = true;
    }
    if (!any) return i;
    value = total + part;
    return at;
  }

  std::uint32_t phrase(std::uint32_t i, QuantityWord& word) const {
    if (!passage_.notes[i].info || !passage_.notes[i].info->starts_quantity) return i;
    std::uint32_t past = i;
    words_.phrases.match(passage_.tokens, i,
                         [&](std::size_t length, const std::vector<std::uint32_t>& values) {
                           for (const std::uint32_t value : values) {
                             if (value >> 28 == static_cast<std::uint32_t>(Words::PhraseKind::quantity)) {
                               past = i + static_cast<std::uint32_t>(length);
                               word = words_.quantities[value & 0x0FFFFFFF];
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
    QuantityWord before{QuantityClass::unit, 0, 0};
    std::uint32_t at = phrase(i, before);
    bool qualified = at > i && before.quantity != QuantityClass::phrase;
    if (at > i && before.quantity == QuantityClass::phrase) {
      number.least = before.least;
      number.most = before.most;
    } else {
      if (!qualified) {
        if (const QuantityWord* word = word_at(i); word && word->quantity >= QuantityClass::about_before &&
                                                   word->quantity != QuantityClass::not_a_count) {
          before = *word;
          qualified = true;
          at = i + 1;
        }
      }
      if (at >= count) return i;
      std::int64_t value = 0;
      QuantityWord named;
      std::uint32_t past = cardinal(at, value);
      if (past == at) {
        past = phrase(at, named);
        if (past == at || named.quantity != QuantityClass::phrase) return i;
        value = named.least;
      }
      number.least = number.most = value;
      at = past;
      at = alternative(at, number);
      if (qualified) apply(before, number);
    }
    at = afterthought(at, number);
    number.span.past = at;
    judge(number);
    for (std::uint32_t k = number.span.first; k < at; ++k) {
      passage_.notes[k].number = static_cast<std::int32_t>(passage_.numbers.size());
    }
    passage_.numbers.push_back(number);
    return at;
  }

  /// "three or four", "six, seven weeks".
  std::uint32_t alternative(std::uint32_t at, Number& number) const {
    const auto count = static_cast<std::uint32_t>(passage_.tokens.size());
    if (at + 1 < count && passage_.is_mark(at, ',')) return between_commas(at, number);
    if (at + 1 >= count || !passage_.has(at, WordClass::coordinator)) return at;
    std::int64_t value = 0;
    const std::uint32_t past = cardinal(at + 1, value);
    if (past == at + 1 || value <= number.least || value > number.least * 2 + 1) return at;
    if (words_.find(passage_.tokens[at].form) && passage_.words({at, at + 1}) != "or") return at;
    number.most = value;
    number.about = true;
    return past;
  }

  /// "six, seven weeks", but "one, two and three" and "in 12, 13 and 14" are lists.
  std::uint32_t between_commas(std::uint32_t comma, Number& number) const {
    const auto count = static_cast<std::uint32_t>(passage_.tokens.size());
    std::int64_t value = 0;
    const std::uint32_t past = cardinal(comma + 1, value);
    const bool higher = number.least > 1 && value > number.least && value <= number.least * 3 / 2 + 1;
    if (past == comma + 1 || !higher) return comma;
    const bool goes_on =
        past < count && (passage_.is_mark(past, ',') || passage_.has(past, WordClass::coordinator)) &&
        past + 1 < count && (word_at(past + 1) || passage_.tokens[past + 1].kind == Token::Kind::number);
    if (goes_on) return comma;
    number.most = value;
    number.about = true;
    return past;
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
    if (number.span.first > 0) {
      number.ordinal_name = passage_.has(number.span.first - 1, WordClass::number_sign) &&
                            passage_.tokens[number.span.first - 1].kind == Token::Kind::word &&
                            !passage_.has(number.span.first - 1, WordClass::negative_determiner);
    }
  }

  Passage& passage_;
  const Words& words_;
};

}  // namespace

void read_numbers(Passage& passage, const Words& words, const Starts& starts) {
  NumberReader(passage, words).run(starts);
}

}  // namespace witnessmark::claims
