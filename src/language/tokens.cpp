// One pass over the bytes. Words of ASCII letters and digits are read and hashed eight bytes at a time, in lower
// case; one with an apostrophe in it is read again byte by byte, and if it has other letters it goes
// through fold(). A run of digits ends where letters begin unless these are an ordinal or plural
// ending ("300mm" is two joined tokens, "1st" and "1960s" are one). Separators of thousands inside digits are
// dropped ("1,200"); a point is kept.
#include "witnessmark/language/tokens.h"

#include <array>
#include <limits>

#include "language/dates/words/text_hash.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

using dates::first_bytes;
using dates::HashInProgress;
using dates::hash_word;
using dates::kLowerCase;
using dates::leading_letters;
using dates::load_group;
using dates::mix_group;

enum Class : std::uint8_t { kMark, kSpace, kLetter, kDigit, kWide };

constexpr std::array<std::uint8_t, 256> make_classes() {
  std::array<std::uint8_t, 256> classes{};
  for (int c = 0; c < 256; ++c) {
    std::uint8_t what = kMark;
    if (c <= ' ' || c == 0x7F) what = kSpace;
    if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z')) what = kLetter;
    if (c >= '0' && c <= '9') what = kDigit;
    if (c >= 0x80) what = kWide;
    classes[static_cast<std::size_t>(c)] = what;
  }
  return classes;
}
constexpr std::array<std::uint8_t, 256> kClasses = make_classes();

constexpr unsigned char lower(unsigned char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<unsigned char>(c + 32) : c;
}

/// What a character outside ASCII is to us: its length, and the mark or apostrophe it stands for.
struct Wide {
  std::uint32_t length = 1;
  char stands_for = 0;  ///< 0: a letter; ' ' a space.
};

class Scanner {
 public:
  Scanner(std::string_view text, std::vector<Token>& tokens) : text_(text), tokens_(tokens) {}

  void run() {
    while (at_ < text_.size()) {
      const unsigned char c = byte(at_);
      switch (kClasses[c]) {
        case kSpace:
          ++at_;
          close_ = false;
          break;
        case kLetter:
          if (!plain_word()) other_word();
          break;
        case kDigit:
          digits();
          break;
        case kWide:
          wide();
          break;
        default:
          mark(static_cast<char>(c), 1);
          break;
      }
    }
  }

 private:
  unsigned char byte(std::size_t i) const { return static_cast<unsigned char>(text_[i]); }
  bool is_letter_at(std::size_t i) const { return i < text_.size() && kClasses[byte(i)] == kLetter; }
  bool is_digit_at(std::size_t i) const { return i < text_.size() && kClasses[byte(i)] == kDigit; }

  Wide wide_at(std::size_t i) const {
    const auto at = [this](std::size_t k) { return k < text_.size() ? byte(k) : 0; };
    const unsigned char lead = byte(i);
    if (lead == 0xC2 && at(i + 1) == 0xA0) return {2, ' '};
    if (lead == 0xE2 && at(i + 1) == 0x80) {
      switch (at(i + 2)) {
        case 0x98:
        case 0x99:
          return {3, '\''};
        case 0x9C:
        case 0x9D:
          return {3, '"'};
        case 0x90:
        case 0x91:
        case 0x92:
        case 0x93:
          return {3, 'h'};
        case 0x94:
        case 0x95:
          return {3, '-'};
        case 0xA6:
          return {3, '~'};
        default:
          break;
      }
    }
    const std::uint32_t length = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : lead >= 0xC0 ? 2 : 1;
    return {length, 0};
  }

  /// The apostrophe at i, its length, 0 when there is none.
  std::uint32_t apostrophe_at(std::size_t i) const {
    if (i >= text_.size()) return 0;
    if (text_[i] == '\'') return 1;
    if (byte(i) == 0xE2) {
      const Wide wide = wide_at(i);
      if (wide.stands_for == '\'') return wide.length;
    }
    return 0;
  }

  Token& push(Token::Kind kind, std::size_t begin, std::size_t end, std::uint64_t form) {
    const bool joined = close_ && !tokens_.empty();
    Token& token = tokens_.emplace_back();
    token.kind = kind;
    token.begin = static_cast<std::uint32_t>(begin);
    token.end = static_cast<std::uint32_t>(end);
    token.form = token.stem = form;
    token.joined = joined;
    close_ = false;
    return token;
  }

  /// A word of ASCII letters and digits; false, and nothing moved, when it has an apostrophe or other letters
  /// or stands so near the text's end that no eight bytes are left.
  bool plain_word() {
    std::uint64_t hash = dates::kHashSeed;
    for (std::size_t i = at_; i + 8 <= text_.size(); i += 8) {
      const std::uint64_t group = load_group(text_.data() + i);
      const std::size_t letters = leading_letters<true>(group);
      if (letters == 8) {
        hash = mix_group(hash, group | kLowerCase);
        continue;
      }
      const auto next = static_cast<unsigned char>(group >> (8 * letters));
      if (next == '\'') return false;
      if (next >= 0x80) {
        const char sign = wide_at(i + letters).stands_for;
        if (sign == 0 || sign == '\'') return false;
      }
      if (letters > 0) hash = mix_group(hash, first_bytes(group | kLowerCase, letters));
      const std::size_t begin = at_;
      at_ = i + letters;
      push(Token::Kind::word, begin, at_, hash).capital = static_cast<unsigned char>(byte(begin) - 'A') < 26;
      close_ = kClasses[next] != kSpace;
      return true;
    }
    return false;
  }

  [[gnu::noinline]] void other_word() {
    const std::size_t begin = at_;
    HashInProgress hash;
    std::uint64_t stem = 0;
    bool only_ascii = true;
    while (at_ < text_.size()) {
      const unsigned char c = byte(at_);
      const std::uint8_t what = kClasses[c];
      if (what == kLetter || what == kDigit) {
        hash.add(lower(c));
        ++at_;
      } else if (const std::uint32_t length = apostrophe_at(at_); length > 0 && is_letter_at(at_ + length)) {
        // "crane's": the stem is what stands before the apostrophe. "didn't" is one word and its own stem.
        const std::size_t tail = at_ + length;
        if (lower(byte(tail)) == 's' && !is_letter_at(tail + 1)) stem = hash.value();
        hash.add('\'');
        at_ = tail;
      } else if (what == kWide && wide_at(at_).stands_for == 0) {
        only_ascii = false;
        at_ += wide_at(at_).length;
      } else {
        break;
      }
    }
    if (at_ > text_.size()) at_ = text_.size();
    const std::uint64_t form =
        only_ascii ? hash.value() : word_form(fold(text_.substr(begin, at_ - begin)));
    Token& token = push(Token::Kind::word, begin, at_, form);
    if (stem != 0 && only_ascii) token.stem = stem;
    const unsigned char first = byte(begin);
    token.capital = first >= 'A' && first <= 'Z';
    // A plural possessive: "cranes'". The apostrophe is swallowed unless a closing quote would need it.
    if (const std::uint32_t length = apostrophe_at(at_);
        length > 0 && at_ > begin && lower(byte(at_ - 1)) == 's') {
      at_ += length;
    }
    close_ = at_ < text_.size() && kClasses[byte(at_)] != kSpace;
  }

  void digits() {
    const std::size_t begin = at_;
    HashInProgress hash;
    while (at_ < text_.size()) {
      const unsigned char c = byte(at_);
      if (kClasses[c] == kDigit) {
        hash.add(c);
        ++at_;
      } else if (c == ',' && thousands_follow(at_ + 1)) {
        ++at_;
      } else if (c == '.' && is_digit_at(at_ + 1)) {
        hash.add(c);
        ++at_;
      } else {
        break;
      }
    }
    const std::size_t ending = ending_length(at_);
    for (std::size_t i = 0; i < ending; ++i) hash.add(lower(byte(at_ + i)));
    at_ += ending;
    push(ending > 0 ? Token::Kind::word : Token::Kind::number, begin, at_, hash.value());
    close_ = at_ < text_.size() && kClasses[byte(at_)] != kSpace;
  }

  bool thousands_follow(std::size_t i) const {
    return is_digit_at(i) && is_digit_at(i + 1) && is_digit_at(i + 2) && !is_digit_at(i + 3);
  }

  /// Length of an ordinal or plural ending that ends the word.
  std::size_t ending_length(std::size_t i) const {
    if (i >= text_.size()) return 0;
    const unsigned char a = lower(byte(i));
    const bool single = !is_letter_at(i + 1);
    if (a == 's' && single) return 1;
    if (single || is_letter_at(i + 2)) return 0;
    const unsigned char b = lower(byte(i + 1));
    const bool ordinal =
        (a == 's' && b == 't') || (a == 'n' && b == 'd') || (a == 'r' && b == 'd') || (a == 't' && b == 'h');
    return ordinal ? 2 : 0;
  }

  void wide() {
    const Wide what = wide_at(at_);
    switch (what.stands_for) {
      case 0:
        other_word();
        break;
      case ' ':
        at_ += what.length;
        close_ = false;
        break;
      case 'h':
        hyphen(what.length);
        break;
      default:
        mark(what.stands_for, what.length);
        break;
    }
  }

  /// A hyphen or short dash: between two words it joins them, else it is a dash.
  void hyphen(std::uint32_t length) {
    const bool after =
        at_ + length < text_.size() && kClasses[byte(at_ + length)] != kSpace && text_[at_ + length] != '-';
    if (close_ && after) {
      at_ += length;
      return;
    }
    mark('-', length);
  }

  void mark(char c, std::uint32_t length) {
    if (c == '-' && length == 1 && close_ && at_ + 1 < text_.size() && text_[at_ + 1] != '-' &&
        kClasses[byte(at_ + 1)] != kSpace) {
      ++at_;
      return;
    }
    const std::size_t begin = at_;
    at_ += length;
    // "--" and "..." are one mark each.
    while (at_ < text_.size() && (c == '-' || c == '.') && text_[at_] == c) ++at_;
    if (c == '.' && at_ - begin > 1) c = '~';
    close_ = false;
    Token& token = push(Token::Kind::mark, begin, at_, hash_word({&c, 1}));
    token.mark = c;
  }

  std::string_view text_;
  std::vector<Token>& tokens_;
  std::size_t at_ = 0;
  bool close_ = false;  ///< The last token ended right here.
};

}  // namespace

std::uint64_t word_form(std::string_view folded_word) {
  return hash_word(folded_word);
}

void tokenize(std::string_view text, std::vector<Token>& tokens) {
  tokens.clear();
  text = text.substr(0, std::numeric_limits<std::uint32_t>::max());
  Scanner(text, tokens).run();
}

std::vector<Token> tokenize(std::string_view text) {
  std::vector<Token> tokens;
  tokens.reserve(text.size() / 5 + 4);
  tokenize(text, tokens);
  return tokens;
}

}  // namespace witnessmark
