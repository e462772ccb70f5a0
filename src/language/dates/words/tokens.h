#pragma once
#include <array>
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "language/dates/words/words.h"

namespace witnessmark::dates {

/// Marks in Token::rules beside the rules.
inline constexpr RuleSet kLineBegins = RuleSet{1} << 30;
inline constexpr RuleSet kEventMayBegin = RuleSet{1} << 29;

/// A word, a run of digits or one sign of the text.
struct Token {
  enum class Kind : std::uint8_t { end, word, number, sign };
  std::size_t begin = 0;       ///< Byte offset in the text.
  std::uint64_t hash = 0;      ///< Of a word, in lower case, without "'s" when that is no word of its own.
  const Word* word = nullptr;  ///< What the lexicon knows of it.
  std::int32_t number = -1;    ///< Of digits; -1 when over 9 digits.
  std::uint32_t length = 0;    ///< In bytes.
  RuleSet rules = 0;           ///< Rules that may begin here, and the marks below; 0 for most tokens.
  Kind kind = Kind::end;
  char sign = 0;  ///< ASCII stand-in of a sign: dashes are '-', apostrophes '\'', quotation marks '"'.
  std::uint8_t digits = 0;      ///< How many digits stand there.
  std::uint8_t possessive = 0;  ///< Bytes of the "'s" that follows and is not part of the token.
  bool space = false;           ///< White space stands before it.
  bool newline = false;         ///< A line break stands before it.
  bool paragraph = false;       ///< An empty line stands before it.
  bool capital : 1 = false;     ///< First letter is a capital (ASCII).
  bool grouped : 1 = false;     ///< Digits with thousands commas or a decimal point: never a year.

  std::size_t end() const { return begin + length; }
  std::size_t full_end() const { return begin + length + possessive; }  ///< With "'s".
  bool is(Role role) const { return word && word->is(role); }
  bool any(std::uint64_t roles) const { return word && word->any(roles); }
  int value(Role role) const { return word->value(role); }
  bool is_word() const { return kind == Kind::word; }
  bool is_number() const { return kind == Kind::number; }
  bool is_sign(char c) const { return kind == Kind::sign && sign == c; }
};

/// The tokens around the place of reading. The window moves over the text: some tokens behind stay, some
/// ahead are there, so that memory does not grow with the text and every rule looks at a bounded number of
/// tokens.
class TokenWindow {
 public:
  static constexpr std::size_t kBehind = 24;
  static constexpr std::size_t kAhead = 96;
  static constexpr std::size_t kBlock = 1024;  ///< Tokens held at most.

  /// `lines_matter`: tokens that begin a line are marked kLineBegins.
  TokenWindow(const DateLexicon::Data& lexicon, const std::vector<Phrase>* events, bool lines_matter);
  /// Goes to the beginning of a text, which must outlive what is asked of the window.
  void begin(std::string_view text);

  /// Token i; an end token outside the window.
  const Token& operator[](std::size_t i) const { return i < size_ ? first_[i] : end_; }

  /// Makes sure that kAhead tokens follow i, as far as the text goes; returns i's new place.
  std::size_t refill(std::size_t i);

  std::size_t size() const { return size_; }
  /// Up to here every token has kAhead tokens after it, or the text's end.
  std::size_t safe_end() const { return at_text_end() ? size_ : size_ - kAhead; }
  bool at_text_end() const { return position_ >= text_.size(); }
  std::string_view text() const { return text_; }
  std::string_view text(const Token& token) const { return text_.substr(token.begin, token.length); }

  bool has_events() const { return events_ != nullptr; }
  /// The longest phrase (named day, named time, event) that starts at i; `past` is set behind it.
  const Phrase* phrase_at(std::size_t i, std::size_t& past) const;

 private:
  void scan();
  void scan_word(Token& token);
  /// `next` is the byte behind the word's letters, a blank at the text's end.
  void finish_word(Token& token, std::size_t end, char next, std::uint64_t hash);
  void scan_rest(Token& token);
  void look_up(Token& token, std::uint64_t hash);
  std::uint64_t hash_with_s(const Token& token) const;
  void scan_number(Token& token);
  void scan_sign(Token& token, char sign, std::size_t length);
  const Phrase* match(const std::vector<Phrase>& phrases, std::size_t i, std::size_t& past) const;

  std::string_view text_;
  const DateLexicon::Data& lexicon_;
  const std::vector<Phrase>* events_;
  bool may_begin_event(std::uint64_t hash) const {
    return (event_filter_[hash >> 6 & 63] >> (hash & 63) & 1) != 0;
  }
  std::array<std::uint64_t, 64> event_filter_;  ///< With events: a bit for each hash their first words may have.
  bool lines_matter_ = false;
  std::size_t position_ = 0;
  std::unique_ptr<Token[]> tokens_;
  std::size_t held_ = 0;    ///< Tokens there is room for.
  Token* first_ = nullptr;  ///< Of tokens_.
  std::size_t size_ = 0;
  Token end_;
};

/// Walks a text's tokens without a window, for names.
std::vector<Token> all_tokens(std::string_view text, const DateLexicon::Data& lexicon);

}  // namespace witnessmark::dates
