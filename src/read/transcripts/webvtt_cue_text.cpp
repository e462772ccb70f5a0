// The tokenizer and the tree building of the WebVTT standard. The tokenizer's states follow the standard's
// names. The tree grows on a stack: a span is moved into its parent when it ends, so no node has to know its
// parent.
#include "witnessmark/read/webvtt_cue_text.h"

#include <algorithm>

#include "read/transcripts/character_references.h"

namespace witnessmark {
namespace {

constexpr std::size_t kDeepestTag = 64;

struct Token {
  enum class Kind { words, start_tag, end_tag, timestamp };
  Kind kind = Kind::words;
  std::string text;  ///< Words, tag name or timestamp.
  std::vector<std::string> classes;
  std::string annotation;
};

bool is_cue_space(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\f' || c == '\r';
}

/// Ends trimmed, runs of white space made one space.
std::string tidy(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (!is_cue_space(c)) {
      out += c;
    } else if (!out.empty() && out.back() != ' ') {
      out += ' ';
    }
  }
  if (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

class Tokenizer {
 public:
  explicit Tokenizer(std::string_view text) : text_(text) {}

  bool at_end() const { return at_ >= text_.size(); }

  Token next() {
    if (text_[at_] == '<') {
      ++at_;
      return tag();
    }
    Token token;
    while (!at_end() && text_[at_] != '<') {
      if (text_[at_] == '&') {
        at_ += read_character_reference(text_.substr(at_), token.text);
      } else {
        token.text += text_[at_++];
      }
    }
    return token;
  }

 private:
  /// Up to '>' or the end; moves behind it.
  std::string_view up_to_close() {
    const std::size_t close = std::min(text_.find('>', at_), text_.size());
    const std::string_view inside = text_.substr(at_, close - at_);
    at_ = std::min(close + 1, text_.size());
    return inside;
  }

  Token tag() {
    Token token;
    token.kind = Token::Kind::start_tag;
    if (at_end()) return token;
    const char c = text_[at_];
    if (c == '/') {
      ++at_;
      token.kind = Token::Kind::end_tag;
      token.text = up_to_close();
      return token;
    }
    if (c >= '0' && c <= '9') {
      token.kind = Token::Kind::timestamp;
      token.text = up_to_close();
      return token;
    }
    return start_tag(std::move(token));
  }

  /// name{.class} white space annotation
  Token start_tag(Token token) {
    token.text = part();
    while (!at_end() && text_[at_] == '.') {
      ++at_;
      token.classes.emplace_back(part());
    }
    std::string annotation;
    while (!at_end() && text_[at_] != '>') {
      if (text_[at_] == '&') {
        at_ += read_character_reference(text_.substr(at_), annotation);
      } else {
        annotation += text_[at_++];
      }
    }
    if (!at_end()) ++at_;
    token.annotation = tidy(annotation);
    return token;
  }

  std::string_view part() {
    const std::size_t start = at_;
    while (!at_end() && text_[at_] != '.' && text_[at_] != '>' && !is_cue_space(text_[at_])) ++at_;
    return text_.substr(start, at_ - start);
  }

  std::string_view text_;
  std::size_t at_ = 0;
};

std::optional<CueNode::Kind> kind_of(std::string_view tag) {
  using enum CueNode::Kind;
  if (tag == "c") return c;
  if (tag == "i") return i;
  if (tag == "b") return b;
  if (tag == "u") return u;
  if (tag == "ruby") return ruby;
  if (tag == "rt") return rt;
  if (tag == "v") return v;
  if (tag == "lang") return lang;
  return std::nullopt;
}

class TreeBuilder {
 public:
  TreeBuilder() : stack_(1) {}

  void take(Token token) {
    switch (token.kind) {
      case Token::Kind::words:
        if (!token.text.empty()) add_text(std::move(token.text));
        break;
      case Token::Kind::start_tag:
        open(std::move(token));
        break;
      case Token::Kind::end_tag:
        close(token.text);
        break;
      case Token::Kind::timestamp:
        if (const auto time = parse_webvtt_timestamp(token.text)) {
          CueNode node;
          node.kind = CueNode::Kind::timestamp;
          node.time = *time;
          children().push_back(std::move(node));
        }
        break;
    }
  }

  std::vector<CueNode> finish() {
    while (stack_.size() > 1) pop();
    return std::move(stack_.front().children);
  }

 private:
  std::vector<CueNode>& children() { return stack_.back().children; }
  bool inside(CueNode::Kind kind) const { return stack_.size() > 1 && stack_.back().kind == kind; }

  void add_text(std::string text) {
    CueNode node;
    node.text = std::move(text);
    children().push_back(std::move(node));
  }

  void open(Token token) {
    const auto kind = kind_of(token.text);
    if (!kind || (*kind == CueNode::Kind::rt && !inside(CueNode::Kind::ruby))) return;
    if (stack_.size() > kDeepestTag) {
      ++too_deep_;
      return;
    }
    CueNode node;
    node.kind = *kind;
    std::erase(token.classes, "");
    node.classes = std::move(token.classes);
    if (*kind == CueNode::Kind::v || *kind == CueNode::Kind::lang) node.text = std::move(token.annotation);
    stack_.push_back(std::move(node));
  }

  void close(std::string_view tag) {
    const auto kind = kind_of(tag);
    if (!kind) return;
    if (too_deep_ > 0) {
      --too_deep_;
    } else if (inside(*kind)) {
      pop();
    } else if (*kind == CueNode::Kind::ruby && inside(CueNode::Kind::rt)) {
      pop();
      pop();
    }
  }

  void pop() {
    CueNode node = std::move(stack_.back());
    stack_.pop_back();
    children().push_back(std::move(node));
  }

  std::vector<CueNode> stack_;  // the root first, then the open spans
  std::size_t too_deep_ = 0;
};

/// Digits at the place, at most nine significant ones.
std::optional<std::int64_t> digits(std::string_view text, std::size_t& at, std::size_t& count) {
  const std::size_t start = at;
  std::int64_t value = 0;
  while (at < text.size() && text[at] >= '0' && text[at] <= '9') {
    value = std::min<std::int64_t>(value * 10 + (text[at++] - '0'), 999'999'999);
  }
  count = at - start;
  if (count == 0) return std::nullopt;
  return value;
}

}  // namespace

// Standard, "collect a WebVTT timestamp": the first number is hours when it does not have two digits, is over
// 59, or a second colon follows.
std::optional<Millisecond> parse_webvtt_timestamp(std::string_view text) {
  std::size_t at = 0;
  std::size_t count = 0;
  const auto colon = [&] { return at < text.size() && text[at] == ':' ? (++at, true) : false; };
  auto first = digits(text, at, count);
  if (!first) return std::nullopt;
  const bool hours = count != 2 || *first > 59;
  if (!colon()) return std::nullopt;
  auto second = digits(text, at, count);
  if (!second || count != 2) return std::nullopt;
  std::optional<std::int64_t> third;
  if (hours || (at < text.size() && text[at] == ':')) {
    if (!colon()) return std::nullopt;
    third = digits(text, at, count);
    if (!third || count != 2) return std::nullopt;
  } else {
    third = second;
    second = first;
    first = 0;
  }
  if (at >= text.size() || text[at] != '.') return std::nullopt;
  ++at;
  const auto fraction = digits(text, at, count);
  if (!fraction || count != 3 || *second > 59 || *third > 59 || at != text.size()) return std::nullopt;
  return Millisecond{((*first * 60 + *second) * 60 + *third) * 1000 + *fraction};
}

std::vector<CueNode> parse_cue_text(std::string_view text) {
  Tokenizer tokenizer(text);
  TreeBuilder tree;
  while (!tokenizer.at_end()) tree.take(tokenizer.next());
  return tree.finish();
}

}  // namespace witnessmark
