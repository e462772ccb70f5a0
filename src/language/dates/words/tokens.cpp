// One pass over the bytes. A 256-entry table gives the class of a byte; letters are hashed in lower case
// while the word is walked, digits are summed. Bytes from 128 up count as letters, but for the few
// typographic signs that stand for ASCII ones (dashes, apostrophes, quotation marks, no-break space), which
// are recognised by their three bytes.
#include "language/dates/words/tokens.h"

#include <algorithm>
#include <array>
#include <memory>

#include "witnessmark/base/fold.h"

namespace witnessmark::dates {
namespace {

enum Class : std::uint8_t { kSign, kSpace, kLetter, kDigit, kHigh };

constexpr std::array<std::uint8_t, 256> make_classes() {
  std::array<std::uint8_t, 256> classes{};
  for (int c = 0; c < 256; ++c) {
    if (c == ' ' || (c >= 9 && c <= 13))
      classes[c] = kSpace;
    else if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'))
      classes[c] = kLetter;
    else if (c >= '0' && c <= '9')
      classes[c] = kDigit;
    else if (c >= 128)
      classes[c] = kHigh;
  }
  return classes;
}
constexpr auto kClasses = make_classes();

std::uint8_t class_of(char c) {
  return kClasses[static_cast<unsigned char>(c)];
}

/// Length of a typographic sign at the start of the text and its ASCII stand-in; 0 when there is none.
std::size_t typographic(std::string_view text, char& sign) {
  const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0u; };
  if (byte(0) == 0xC2 && byte(1) == 0xA0) return sign = ' ', 2;
  if (byte(0) == 0xC2 && (byte(1) == 0xAB || byte(1) == 0xBB)) return sign = '"', 2;
  if (byte(0) != 0xE2 || byte(1) != 0x80) return 0;
  if (byte(2) >= 0x90 && byte(2) <= 0x95) return sign = '-', 3;
  if (byte(2) >= 0x98 && byte(2) <= 0x9B) return sign = '\'', 3;
  if (byte(2) >= 0x9C && byte(2) <= 0x9F) return sign = '"', 3;
  if (byte(2) == 0xA6) return sign = '.', 3;
  if (byte(2) == 0xAF || (byte(2) >= 0x80 && byte(2) <= 0x8A)) return sign = ' ', 3;
  return 0;
}

/// Length of an apostrophe at the start of the text, straight or curly; 0 when there is none.
std::size_t apostrophe(std::string_view text) {
  if (!text.empty() && text[0] == '\'') return 1;
  char sign = 0;
  const auto length = text.empty() || class_of(text[0]) != kHigh ? 0 : typographic(text, sign);
  return length && sign == '\'' ? length : 0;
}

}  // namespace

TokenWindow::TokenWindow(const DateLexicon::Data& lexicon, const std::vector<Phrase>* events,
                         bool lines_matter)
    : lexicon_(lexicon), events_(events), lines_matter_(lines_matter) {
  if (events_) {
    event_filter_.fill(0);
    for (const auto& event : *events_)
      event_filter_[event.words[0] >> 6 & 63] |= std::uint64_t{1} << (event.words[0] & 63);
  }
  end_.paragraph = end_.newline = end_.space = true;
}

void TokenWindow::begin(std::string_view text) {
  text_ = text;
  position_ = 0;
  size_ = 0;
  const auto wanted = std::min<std::size_t>(kBlock, text.size() + 1);
  if (wanted > held_) {
    held_ = std::min<std::size_t>(kBlock, std::max<std::size_t>(wanted, 2 * held_));
    tokens_ = std::make_unique<Token[]>(held_);
    first_ = tokens_.get();
  }
  end_.begin = text.size();
}

std::size_t TokenWindow::refill(std::size_t i) {
  if (i + kAhead < size_ || at_text_end()) return i;
  if (i > kBehind) {
    const auto drop = i - kBehind;
    std::copy(first_ + drop, first_ + size_, first_);
    size_ -= drop;
    i = kBehind;
  }
  scan();
  return i;
}

[[gnu::always_inline]] inline void TokenWindow::look_up(Token& token, std::uint64_t hash) {
  token.hash = hash;
  const auto& slot = lexicon_.find(hash);
  token.word = slot.known;
  token.rules |= slot.rules;
  if (events_ && may_begin_event(hash)) token.rules |= kEventMayBegin;
}

[[gnu::always_inline]] inline void TokenWindow::finish_word(Token& token, std::size_t end,
                                                            char next, std::uint64_t hash) {
  if (next == '\'' || static_cast<unsigned char>(next) >= 0x80) return scan_rest(token);
  token.length = static_cast<std::uint32_t>(end - position_);
  position_ = end;
  look_up(token, hash);
}

[[gnu::always_inline]] inline void TokenWindow::scan_word(Token& token) {
  token.kind = Token::Kind::word;
  token.capital = static_cast<unsigned char>(text_[position_] - 'A') < 26;
  auto hash = kHashSeed;
  std::size_t i = position_;
  const auto size = text_.size();
  while (i + 8 <= size) {
    const auto group = load_group(text_.data() + i);
    const auto letters = leading_letters(group);
    if (letters == 8) {
      hash = mix_group(hash, group | kLowerCase);
      i += 8;
      continue;
    }
    if (letters > 0) hash = mix_group(hash, first_bytes(group | kLowerCase, letters));
    i += letters;
    return finish_word(token, i, static_cast<char>(group >> (8 * letters)), hash);
  }
  // The last few bytes of the text.
  std::uint64_t group = 0;
  std::size_t letters = 0;
  for (; i + letters < size && class_of(text_[i + letters]) == kLetter; ++letters)
    group |= static_cast<std::uint64_t>(static_cast<unsigned char>(text_[i + letters] | 0x20))
             << (8 * letters);
  if (letters > 0) hash = mix_group(hash, group);
  finish_word(token, i + letters, i + letters < size ? text_[i + letters] : ' ', hash);
}

// A token is made in its place and written once: a copy right after its small fields were set would stall on
// every token.
void TokenWindow::scan() {
  const auto text = text_;
  auto position = position_;
  Token* next = first_ + size_;
  const Token* const end = first_ + held_;
  while (next != end) {
    const auto before = position;
    int lines = 0;
    char sign = 0;
    std::size_t length = 0;  // Of a typographic sign.
    if (position < text.size() && text[position] == ' ') ++position;  // Mostly all there is.
    for (; position < text.size(); ++position) {
      const auto kind = class_of(text[position]);
      if (kind == kSpace) {
        lines += text[position] == '\n';
        continue;
      }
      if (kind != kHigh) break;
      length = typographic(text.substr(position), sign);
      if (length == 0 || sign != ' ') break;
      position += length - 1;  // A typographic space.
      length = 0;
    }
    if (position >= text.size()) break;
    position_ = position;
    auto& token = *std::construct_at(next++);
    token.begin = position;
    token.space = position != before;
    if (lines > 0) {
      token.newline = true;
      token.paragraph = lines > 1;
      if (lines_matter_) token.rules = kLineBegins;
    }
    const auto kind = class_of(text[position]);
    if (length > 0)
      scan_sign(token, sign, length);
    else if (kind == kLetter || kind == kHigh)
      scan_word(token);
    else if (kind == kDigit)
      scan_number(token);
    else
      scan_sign(token, text[position], 1);
    position = position_;
  }
  position_ = position;
  size_ = static_cast<std::size_t>(next - first_);
}

void TokenWindow::scan_sign(Token& token, char sign, std::size_t length) {
  token.kind = Token::Kind::sign;
  token.sign = sign;
  token.length = static_cast<std::uint32_t>(length);
  position_ += length;
  if (sign == '\'') token.rules |= kApostropheRules;
}

// A word in which an apostrophe or a byte from 128 up stands. "'s" is cut off when the lexicon does not know
// the word with it, so that "the year's campaign" has the year.
void TokenWindow::scan_rest(Token& token) {
  bool plain = true;
  std::size_t i = position_, stem_end = 0;
  std::string lower_case;
  while (i < text_.size()) {
    const char c = text_[i];
    const auto kind = class_of(c);
    if (kind == kLetter) {
      lower_case += static_cast<char>(c | 0x20);
      ++i;
      continue;
    }
    if (const auto length = apostrophe(text_.substr(i))) {
      if (i + length >= text_.size() || class_of(text_[i + length]) != kLetter) break;
      stem_end = i;
      lower_case += '\'';
      i += length;
      continue;
    }
    char sign = 0;
    if (kind != kHigh || typographic(text_.substr(i), sign)) break;
    plain = false;
    ++i;
  }
  token.length = static_cast<std::uint32_t>(i - position_);
  position_ = i;
  if (!plain) return look_up(token, lexicon_.has_non_ascii ? hash_word(fold(text(token))) : 0);
  look_up(token, hash_word(lower_case));
  const bool cut =
      stem_end > token.begin && lower_case.size() > 2 && lower_case.substr(lower_case.size() - 2) == "'s";
  if (token.word || !cut) return;
  const auto stem_hash = hash_word(std::string_view(lower_case).substr(0, lower_case.size() - 2));
  if (lexicon_.find(stem_hash).hash == 0) return;
  token.possessive = static_cast<std::uint8_t>(i - stem_end);
  token.length = static_cast<std::uint32_t>(stem_end - token.begin);
  look_up(token, stem_hash);
}

void TokenWindow::scan_number(Token& token) {
  token.kind = Token::Kind::number;
  std::int32_t number = 0;
  std::size_t i = position_;
  std::size_t digits = 0;
  const auto take_digits = [&] {
    while (i < text_.size() && class_of(text_[i]) == kDigit) {
      if (digits < 9) number = number * 10 + (text_[i] - '0');
      ++digits;
      ++i;
    }
  };
  take_digits();
  // Thousands commas and a decimal point: 10,000 and 22.8 are not years.
  while (digits <= 9 && i + 3 < text_.size() && text_[i] == ',' && class_of(text_[i + 1]) == kDigit &&
         class_of(text_[i + 2]) == kDigit && class_of(text_[i + 3]) == kDigit &&
         (i + 4 >= text_.size() || class_of(text_[i + 4]) != kDigit) && (digits <= 3 || token.grouped)) {
    token.grouped = true;
    ++i;
    take_digits();
  }
  const bool after_dot =
      token.begin > 1 && text_[token.begin - 1] == '.' && class_of(text_[token.begin - 2]) == kDigit;
  if (!after_dot && i + 1 < text_.size() && text_[i] == '.' && class_of(text_[i + 1]) == kDigit) {
    std::size_t j = i + 1;
    while (j < text_.size() && class_of(text_[j]) == kDigit) ++j;
    if (!(j + 1 < text_.size() && text_[j] == '.' && class_of(text_[j + 1]) == kDigit)) {  // not 4.10.1962
      token.grouped = true;
      i = j;
    }
  }
  token.number = digits > 9 ? -1 : number;
  token.digits = static_cast<std::uint8_t>(std::min<std::size_t>(digits, 255));
  token.length = static_cast<std::uint32_t>(i - position_);
  position_ = i;
  token.rules |= kDigitRules;
}

std::uint64_t TokenWindow::hash_with_s(const Token& token) const {
  std::string lower_case;
  for (const char c : text(token)) lower_case += static_cast<char>(c | 0x20);
  return hash_word(lower_case + "'s");
}

const Phrase* TokenWindow::match(const std::vector<Phrase>& phrases, std::size_t i, std::size_t& past) const {
  const auto first = (*this)[i].hash;
  const auto by_first = [](const Phrase& phrase, std::uint64_t hash) { return phrase.words[0] < hash; };
  auto at = std::lower_bound(phrases.begin(), phrases.end(), first, by_first);
  for (; at != phrases.end() && at->words[0] == first; ++at) {
    std::size_t j = i + 1;
    std::size_t matched = 1;
    while (matched < at->words.size()) {
      const auto& token = (*this)[j];
      if (token.kind == Token::Kind::end || token.paragraph) break;
      if (token.is_sign('-') || (token.is_sign('.') && !token.space)) {
        ++j;
        continue;
      }
      const auto hash = token.is_number() ? hash_word(text(token)) : token.hash;
      const bool same =
          hash == at->words[matched] || (token.possessive && hash_with_s(token) == at->words[matched]);
      if (!same) break;
      ++matched;
      ++j;
    }
    if (matched == at->words.size()) return past = j, &*at;
  }
  return nullptr;
}

const Phrase* TokenWindow::phrase_at(std::size_t i, std::size_t& past) const {
  const auto& token = (*this)[i];
  if (token.kind == Token::Kind::end || token.kind == Token::Kind::sign) return nullptr;
  if (events_ && may_begin_event(token.hash))
    if (const auto* event = match(*events_, i, past)) return event;
  return token.is(Role::phrase) ? match(lexicon_.phrases, i, past) : nullptr;
}

std::vector<Token> all_tokens(std::string_view text, const DateLexicon::Data& lexicon) {
  TokenWindow window(lexicon, nullptr, false);
  window.begin(text);
  std::vector<Token> tokens;
  std::size_t i = window.refill(0);
  while (window[i].kind != Token::Kind::end) {
    tokens.push_back(window[i]);
    i = window.refill(i + 1);
  }
  return tokens;
}

std::vector<std::uint64_t> phrase_words(std::string_view name) {
  DateLexicon::Data empty;
  empty.has_non_ascii = true;
  std::vector<std::uint64_t> words;
  for (const auto& token : all_tokens(name, empty)) {
    if (token.is_number())
      words.push_back(hash_word(name.substr(token.begin, token.length)));
    else if (token.is_word())
      words.push_back(token.hash);
  }
  return words;
}

}  // namespace witnessmark::dates
