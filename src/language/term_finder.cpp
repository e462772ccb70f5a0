// Every name becomes a sequence of word forms in a trie, with its plural and the other ways to write it.
// Finding walks the tokens once; at each the longest name wins.
//
// Variants made when the index is built:
//   plural          the last word takes a plural ending (inflections.csv); a possessive is met by a token's
//   stem number          "No. 2 hold" is also "number 2 hold" and "hold number 2"; number words and digits
//   have one form number words    a name with digits over twenty is also found in words ("300 mm lamp":
//   "three hundred mm lamp") compound        two neighbouring words are also found as one ("chart room":
//   "chartroom"), and one word as two by
//                   joining neighbouring tokens ("wheel house" for "wheelhouse")
//   article         a leading "the" in the list is not needed in talk, unless the rest is a word of grammar
// Of two names that overlap the one that ends later wins: "the electric blower" is no "the electric". A name
// in talk that is an adjective alone ("the electric") counts only where no other noun follows.
//
// A compartment number of two or more parts is a name; of one part ("207") it counts only after a word such
// as "room".
//
// Near matches: a word that is one letter off (left out, added, changed, or two exchanged) a word of a name,
// where the name's other words stand beside it, or where it is a name of one word of seven letters or more
// that is no plural or other form of a known word. They are marked, and offered.
#include "witnessmark/language/term_finder.h"

#include <fmt/format.h>

#include <algorithm>

#include "language/language_data.h"
#include "language/near_match.h"
#include "language/term_index.h"
#include "witnessmark/base/code_point_index.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {
namespace {

using Forms = std::vector<std::uint64_t>;

class Builder {
 public:
  Builder(TermFinder::Index& index, const Words& words) : index_(index), words_(words) {}

  void add(const std::string& written, std::uint32_t term) {
    std::string name = fold(written);
    // "the well" keeps its article where the bare word is one of grammar or opens sentences.
    if (name.rfind("the ", 0) == 0 && name.size() > 4) {
      const std::vector<std::uint64_t> bare = words_.forms_of(name.substr(4));
      const WordInfo* known = bare.size() == 1 ? words_.find(bare[0]) : nullptr;
      const bool grammar = known && (known->flags.low != 0 || known->flags.high != 0 || known->cue >= 0 ||
                                     known->may_be(VerbForm::past));
      if (!grammar) name = name.substr(4);
    }
    std::vector<std::string> parts = split(name);
    if (parts.empty()) return;
    std::vector<std::vector<std::string>> ways{parts};
    add_number_ways(parts, ways);
    for (const std::vector<std::string>& way : ways) {
      put(way, term, written, false);
      std::vector<std::string> plural = way;
      plural.back() = words_.plural_of(plural.back());
      const bool already = is_plural(way.back());
      if (!already) put(plural, term, written, true);
      put_compounds(way, term, written, false);
      if (!already) put_compounds(plural, term, written, true);
    }
    for (const std::string& part : parts) remember_word(part);
  }

  void add_number(const std::string& written, std::uint32_t term) {
    const std::string number = fold(written);
    const Forms forms = words_.forms_of(number);
    if (forms.empty()) return;
    const std::uint32_t name = name_of(term, written, false);
    if (forms.size() > 1) {
      index_.names_trie.add(forms, name);
    } else {
      index_.numbers.add(forms, name);
    }
  }

 private:
  static std::vector<std::string> split(const std::string& name) {
    std::vector<std::string> parts;
    for (const Token& token : tokenize(name)) {
      if (token.kind != Token::Kind::mark) parts.push_back(name.substr(token.begin, token.end - token.begin));
    }
    return parts;
  }

  /// A list in the plural ("Radial davits") is found in the plural only as written, and in the singular too.
  bool is_plural(const std::string& word) const {
    return word.size() > 3 && word.back() == 's' && word[word.size() - 2] != 's';
  }

  void add_number_ways(const std::vector<std::string>& parts,
                       std::vector<std::vector<std::string>>& ways) const {
    for (std::size_t i = 0; i + 1 < parts.size(); ++i) {
      const WordInfo* info = words_.find(word_form(parts[i]));
      if (!info || !info->flags.has(WordClass::number_sign)) continue;
      std::vector<std::string> rest;
      rest.insert(rest.end(), parts.begin(), parts.begin() + static_cast<std::ptrdiff_t>(i));
      rest.insert(rest.end(), parts.begin() + static_cast<std::ptrdiff_t>(i) + 2, parts.end());
      for (const char* sign : {"number", "no"}) {
        std::vector<std::string> front{sign, parts[i + 1]};
        front.insert(front.end(), rest.begin(), rest.end());
        std::vector<std::string> back = rest;
        back.insert(back.end(), {sign, parts[i + 1]});
        ways.push_back(front);
        ways.push_back(back);
      }
      // "hold 2"; of "number three" alone no bare number is left, which would be found in every count.
      if (!rest.empty()) {
        std::vector<std::string> bare = rest;
        bare.push_back(parts[i + 1]);
        ways.push_back(bare);
      }
      return;
    }
    for (std::size_t i = 0; i < parts.size(); ++i) {
      const std::string in_words = number_in_words(parts[i]);
      if (in_words.empty()) continue;
      std::vector<std::string> way(parts.begin(), parts.begin() + static_cast<std::ptrdiff_t>(i));
      for (const std::string& word : split(in_words)) way.push_back(word);
      way.insert(way.end(), parts.begin() + static_cast<std::ptrdiff_t>(i) + 1, parts.end());
      ways.push_back(way);
      return;
    }
  }

  /// "300" to "3 hundred", "25" to "20 5": in the normal form that number words take.
  static std::string number_in_words(const std::string& digits) {
    if (digits.empty() || digits.size() > 4 ||
        !std::all_of(digits.begin(), digits.end(), [](char c) { return c >= '0' && c <= '9'; })) {
      return {};
    }
    const int value = std::stoi(digits);
    if (value <= 20 || digits[0] == '0') return {};
    std::string made;
    if (value >= 1000) made += std::to_string(value / 1000) + " thousand ";
    if (value % 1000 >= 100) made += std::to_string(value / 100 % 10) + " hundred ";
    const int rest = value % 100;
    if (rest > 20 && rest % 10 != 0) {
      made += std::to_string(rest / 10 * 10) + " " + std::to_string(rest % 10);
    } else if (rest > 0) {
      made += std::to_string(rest);
    }
    return made == digits ? std::string() : made;
  }

  void put(const std::vector<std::string>& parts, std::uint32_t term, const std::string& written,
           bool plural) {
    std::string joined;
    for (const std::string& part : parts) joined += (joined.empty() ? "" : " ") + part;
    add_forms(joined, name_of(term, written, plural || is_plural(parts.back())));
    if (!plural && is_plural(parts.back())) {
      // "davits" in the list, "the davit" in talk.
      joined.pop_back();
      add_forms(joined, name_of(term, written, false));
    }
  }

  void add_forms(const std::string& name, std::uint32_t value) {
    const Forms forms = words_.forms_of(name);
    if (forms.empty()) return;
    index_.names_trie.add(forms, value);
    if (forms.size() > 1) return;
    // "wheel house" for "wheelhouse": every first part of three letters or more.
    const bool letters = std::all_of(name.begin(), name.end(), [](char c) { return c >= 'a' && c <= 'z'; });
    for (std::size_t i = 3; i + 3 <= name.size(); ++i) {
      if (letters) {
        index_.joined_firsts.add(words_.common_form(word_form(std::string_view(name).substr(0, i))));
        continue;
      }
      const std::vector<std::uint64_t> part = words_.forms_of(name.substr(0, i));
      if (part.size() == 1) index_.joined_firsts.add(part[0]);
    }
  }

  void put_compounds(const std::vector<std::string>& parts, std::uint32_t term, const std::string& written,
                     bool plural) {
    for (std::size_t i = 0; i + 1 < parts.size(); ++i) {
      if (parts[i].size() < 3 || parts[i + 1].size() < 3) continue;
      std::vector<std::string> joined = parts;
      joined[i] += joined[i + 1];
      joined.erase(joined.begin() + static_cast<std::ptrdiff_t>(i) + 1);
      put(joined, term, written, plural);
    }
  }

  void remember_word(const std::string& word) {
    if (word.size() < kLeastNearWord) return;
    if (!index_.name_words.emplace(words_.forms_of(word).front(), word).second) return;
    for (const std::uint64_t remainder : Remainders(word)) {
      index_.remainders.emplace(remainder, word);
      index_.remainder_forms.add(remainder);
    }
  }

  std::uint32_t name_of(std::uint32_t term, const std::string& written, bool plural) {
    for (std::uint32_t i = first_of_term_; i < index_.names.size(); ++i) {
      const NameInList& name = index_.names[i];
      if (name.term == term && name.plural == plural && name.name == written) return i;
    }
    if (index_.names.empty() || index_.names.back().term != term) {
      first_of_term_ = static_cast<std::uint32_t>(index_.names.size());
    }
    index_.names.push_back({term, plural, written});
    return static_cast<std::uint32_t>(index_.names.size() - 1);
  }

  TermFinder::Index& index_;
  const Words& words_;
  std::uint32_t first_of_term_ = 0;
};

}  // namespace

TermFinder::TermFinder(const AuthorityList& list, const Language& language)
    : index_(std::make_unique<Index>()) {
  index_->list = list;
  index_->words = &language.data().words;
  Builder builder(*index_, language.data().words);
  const auto& terms = index_->list.terms();
  for (std::uint32_t i = 0; i < terms.size(); ++i) {
    const Term& term = terms[i];
    builder.add(term.name, i);
    for (const FormerName& former : term.former_names) builder.add(former.name, i);
    for (const std::string& spoken : term.spoken) builder.add(spoken, i);
    if (!term.number.empty()) builder.add_number(term.number, i);
  }
}

TermFinder::TermFinder(TermFinder&&) noexcept = default;
TermFinder& TermFinder::operator=(TermFinder&&) noexcept = default;
TermFinder::~TermFinder() = default;

void TermFinder::look_for_misspellings(bool wanted) {
  index_->near = wanted;
}

const AuthorityList& TermFinder::list() const {
  return index_->list;
}

std::uint8_t TermFinder::Index::marks_of(std::uint64_t form, const WordInfo* info) const {
  std::uint8_t marks = 0;
  const bool begins = names_trie.begins_with(form);
  if (begins) marks |= kBeginsName;
  if (joined_firsts.may_have(form)) marks |= kBeginsJoined;
  if (numbers.begins_with(form)) marks |= kNumberOfPlace;
  const bool unknown = !info && !name_words.contains(form);
  if (near && !remainders.empty() && (unknown || begins)) marks |= kMayBeMisspelt;
  return marks;
}

void TermFinder::Index::find(std::string_view text, const std::vector<Token>& tokens,
                             std::span<const NameStart> starts, std::vector<TokenMention>& found,
                             NearMemory* memory) const {
  found.clear();
  const auto count = static_cast<std::uint32_t>(tokens.size());
  std::uint32_t past = 0;  // Of the last mention.
  for (const auto [i, marks] : starts) {
    if (i < past) continue;
    TokenMention best;
    const auto take = [&best, i = i](std::size_t length, const std::vector<std::uint32_t>& values) {
      if (length > best.past - best.first) best = {i, i + static_cast<std::uint32_t>(length), &values, false};
    };
    best.first = best.past = i;
    if ((marks & kBeginsName) != 0) names_trie.match(tokens, i, take);
    if ((marks & kBeginsJoined) != 0 && i + 1 < count && best.past <= i + 1) {
      match_joined(*this, text, tokens, i, best);
    }
    if ((marks & kNumberOfPlace) != 0 && best.past == i && i > 0) {
      const WordInfo* before = words->find(tokens[i - 1].form);
      if (before && before->flags.has(WordClass::numbered_place)) numbers.match(tokens, i, take);
    }
    if ((marks & kMayBeMisspelt) != 0 && best.past == i) match_near(*this, text, tokens, i, memory, best);
    if (best.past <= i || leads_to_noun(tokens, best) || overtaken(tokens, starts, best)) continue;
    found.push_back(best);
    past = best.past;
  }
}

bool TermFinder::Index::leads_to_noun(const std::vector<Token>& tokens, const TokenMention& mention) const {
  if (mention.past - mention.first != 2 || mention.past >= tokens.size()) return false;
  const auto info = [&](std::uint32_t i) { return words->find(tokens[i].form); };
  const WordInfo *article = info(mention.first), *last = info(mention.first + 1);
  if (!article || !article->flags.has(WordClass::determiner) || !last || !is_adjective(last->flags))
    return false;
  const Token& next = tokens[mention.past];
  return next.kind == Token::Kind::word && (!info(mention.past) || names_trie.begins_with(next.form));
}

bool TermFinder::Index::overtaken(const std::vector<Token>& tokens, std::span<const NameStart> starts,
                                  const TokenMention& mention) const {
  if (mention.near_match) return false;
  auto next = std::upper_bound(starts.begin(), starts.end(), mention.first,
                               [](std::uint32_t at, const NameStart& start) { return at < start.token; });
  for (; next != starts.end() && next->token < mention.past; ++next) {
    if ((next->marks & kBeginsName) == 0) continue;
    bool longer = false;
    names_trie.match(tokens, next->token, [&](std::size_t length, const std::vector<std::uint32_t>&) {
      longer = longer || next->token + length > mention.past;
    });
    if (longer) return true;
  }
  return false;
}

std::vector<std::uint32_t> TermFinder::Index::terms_of(const TokenMention& mention) const {
  std::vector<std::uint32_t> terms;
  for (const std::uint32_t name : *mention.names) terms.push_back(names[name].term);
  std::sort(terms.begin(), terms.end());
  terms.erase(std::unique(terms.begin(), terms.end()), terms.end());
  return terms;
}

std::vector<TermMention> TermFinder::find(std::string_view text) const {
  std::vector<Token> tokens = tokenize(text);
  index_->words->normalize(tokens);
  std::vector<NameStart> starts;
  for (std::uint32_t i = 0; i < tokens.size(); ++i) {
    const Token& token = tokens[i];
    if (token.kind == Token::Kind::mark) continue;
    std::uint8_t marks = index_->marks_of(token.form, index_->words->find(token.form));
    if (token.stem != token.form && index_->names_trie.begins_with(token.stem)) marks |= kBeginsName;
    if (marks != 0) starts.push_back({i, marks});
  }
  std::vector<TokenMention> found;
  index_->find(text, tokens, starts, found);
  const CodePointIndex positions(text);
  std::vector<TermMention> mentions;
  for (const TokenMention& mention : found) {
    TermMention made;
    made.range = positions.to_code_points({{tokens[mention.first].begin}, {tokens[mention.past - 1].end}});
    const NameInList& name = index_->names[mention.names->front()];
    made.plural = name.plural;
    made.near_match = mention.near_match;
    made.name = name.name;
    made.terms = index_->terms_of(mention);
    mentions.push_back(std::move(made));
  }
  return mentions;
}

std::string dump(const TermMention& mention, const AuthorityList& list) {
  std::string keys;
  for (const std::uint32_t term : mention.terms) keys += (keys.empty() ? "" : "|") + list.terms()[term].key;
  return fmt::format("{}-{} {}{}{}", mention.range.begin.value, mention.range.end.value, keys,
                     mention.plural ? " plural" : "", mention.near_match ? " near-match" : "");
}

}  // namespace witnessmark
