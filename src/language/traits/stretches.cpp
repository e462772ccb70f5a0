// Each token, each pair and each three that follow one another, and each verb with what stands before and
// behind it have their traits tallied once; a stretch adds up what lies in it, and then what is seen of its
// edges: how it opens, what follows, how many pieces the sentence has. Nothing is allocated anew for a
// sentence, and what a word weighs wherever it stands is kept for the next time it is said.
#include "language/traits/stretches.h"

#include <algorithm>
#include <bit>

#include "language/passage/vocabulary.h"
#include "witnessmark/base/fold.h"

namespace witnessmark::claims {
namespace {

constexpr std::size_t kMostPieces = 2;  ///< Of a stretch that is not the whole sentence.
constexpr Part kStart = named("^");
constexpr Part kEnd = named("$");
constexpr Part kMark = named(",");
constexpr Part kOtherWord = named("?");
constexpr Part kDate = named("<date>");
constexpr Part kNumber = named("<num>");
constexpr Part kName = named("<name>");
constexpr Part kAll = named("all");
constexpr Part kA = named("a");
constexpr Part kNoArticle = named("-");
constexpr Part kAsked = named("asked");
constexpr Part kSaid = named("said");
constexpr Part kAskedYesNo = named("yes-no");
constexpr Part kAskedWhen = named("when");
constexpr Part kAskedWhere = named("where");
constexpr Part kAskedHowMany = named("how-many");
constexpr Part kAskedPeople = named("people");
constexpr Part kAskedInventory = named("inventory");

bool cuts(char mark) {
  return mark != '\'' && mark != '"' && mark != '(' && mark != ')';
}

}  // namespace

template <class Book>
void StretchReader<Book>::read(const StatementContext& context, const TalkTraits& talk,
                               const std::vector<Draft>& drafts, CodePointRange sentence) {
  c_ = &context;
  passage_ = &context.passage;
  talk_ = &talk;
  span_ = context.reading.span;
  look_at_tokens();
  find_pieces();
  tally_items();
  tally_predicates();
  tally_context();
  stretches_.clear();
  tallies_.clear();
  for (std::uint32_t first = 0; first < pieces_.size(); ++first) {
    for (std::uint32_t past = first + 1; past <= pieces_.size(); ++past) {
      Stretch stretch;
      stretch.whole = first == 0 && past == pieces_.size();
      if (!stretch.whole && past - first > kMostPieces) continue;
      stretch.first_piece = first;
      stretch.past_piece = past;
      stretch.span = {pieces_[first].span.first, pieces_[past - 1].span.past};
      stretch.range = context.positions.range_of(*passage_, stretch.span);
      if (first == 0) stretch.range.begin = sentence.begin;
      if (past == pieces_.size()) stretch.range.end = sentence.end;
      const std::vector<Clause>& clauses = context.reading.clauses;
      while (stretch.clause + 1 < clauses.size() && clauses[stretch.clause].span.past <= stretch.span.first)
        ++stretch.clause;
      Tally tally = of_context_;
      tally_inside(stretch, tally);
      tally_edges(stretch, tally);
      bool read_by_rule = false;
      for (const Draft& draft : drafts) {
        if (draft.quotes.empty() || draft.quotes.front().shared_with(stretch.range) < kAlike) continue;
        book_.add(tally, "rule", {statement_part(draft.statement)});
        read_by_rule = true;
      }
      if (read_by_rule) book_.add(tally, "rule");
      stretches_.push_back(stretch);
      tallies_.push_back(std::move(tally));
    }
  }
}

template <class Book>
Part StretchReader<Book>::word(std::uint32_t i) const {
  if constexpr (Book::kSpells) return {passage_->tokens[i].form, spelled_words_[local(i)]};
  return {passage_->tokens[i].form};
}

template <class Book>
bool StretchReader<Book>::subject_like(std::uint32_t i) const {
  return opens_a_subject(note(i).flags) || note(i).thing >= 0;
}

template <class Book>
bool StretchReader<Book>::joins(std::uint32_t i) const {
  return joins_on(note(i).flags) && note(i).thing < 0;
}

template <class Book>
Part StretchReader<Book>::sort_of(std::uint32_t i) const {
  const Note& n = note(i);
  if (n.thing >= 0 || n.date >= 0) return tag(i);
  if (n.number >= 0) return kNumber;
  if (passage_->tokens[i].kind == Token::Kind::mark) return kMark;
  if (is_pronoun(n.flags) && !n.flags.has(WordClass::determiner)) return word(i);
  if (const auto sort = sort_part(n.flags)) return *sort;
  if (is_name(*passage_, i)) return kName;
  return is_grammar(n.flags) ? word(i) : kOtherWord;
}

template <class Book>
void StretchReader<Book>::look_at_tokens() {
  items_.clear();
  types_.clear();
  tags_.clear();
  spelled_words_.clear();
  const auto tag_of = [&](std::uint32_t i) {
    const Note& n = note(i);
    if (n.thing >= 0) return kind_part(passage_->things[static_cast<std::size_t>(n.thing)].kind);
    if (n.date >= 0) return kDate;
    if (n.number >= 0 || passage_->tokens[i].kind == Token::Kind::number) return kNumber;
    return is_name(*passage_, i) ? kName : word(i);
  };
  if constexpr (Book::kSpells) {
    for (std::uint32_t i = span_.first; i < span_.past; ++i)
      spelled_words_.push_back(fold(passage_->words({i, i + 1})));
  }
  for (std::uint32_t i = span_.first; i < span_.past; ++i) {
    const Note& n = note(i);
    tags_.push_back(tag_of(i));
    types_.push_back(sort_of(i));
    const bool mark = passage_->tokens[i].kind == Token::Kind::mark;
    const bool goes_on = i > span_.first && ((n.thing >= 0 && n.thing == note(i - 1).thing) ||
                                             (n.date >= 0 && n.date == note(i - 1).date) ||
                                             (n.number >= 0 && n.number == note(i - 1).number));
    if (!mark && !goes_on) items_.push_back(i);
  }
}

template <class Book>
void StretchReader<Book>::find_pieces() {
  pieces_.clear();
  const auto mark = [&](std::uint32_t i) { return passage_->tokens[i].kind == Token::Kind::mark; };
  const auto add = [&](Span piece) {
    while (!piece.empty() && mark(piece.past - 1)) --piece.past;
    while (!piece.empty() && mark(piece.first)) ++piece.first;
    if (piece.empty()) return;
    // "Well," goes with what follows.
    if (!pieces_.empty() && pieces_.back().span.past - pieces_.back().span.first <= 1) {
      pieces_.back().span.past = piece.past;
    } else {
      pieces_.push_back({piece, {}, false});
    }
  };
  std::uint32_t begin = span_.first;
  for (std::uint32_t i = span_.first + 1; i < span_.past; ++i) {
    const bool inside = (note(i).thing >= 0 && note(i).thing == note(i - 1).thing) ||
                        (note(i).date >= 0 && note(i).date == note(i - 1).date);
    if (inside) continue;
    const Token& before = passage_->tokens[i - 1];
    const bool clause = std::any_of(c_->reading.clauses.begin(), c_->reading.clauses.end(),
                                    [i](const Clause& clause_there) { return clause_there.span.first == i; });
    const bool joined =
        joins(i) && i + 1 < span_.past && (subject_like(i + 1) || follows_joining(note(i + 1).flags));
    if (!clause && !joined && (before.kind != Token::Kind::mark || !cuts(before.mark))) continue;
    add({begin, i});
    begin = i;
  }
  add({begin, span_.past});
  for (Piece& piece : pieces_) {
    const std::uint32_t i = piece.span.first;
    const bool says = joins(i) || note(i).thing >= 0 || note(i).date >= 0 || subject_like(i);
    piece.opening = says ? tag(i) : kOtherWord;
    piece.does = std::any_of(c_->reading.predicates.begin(), c_->reading.predicates.end(),
                             [&](const Predicate& p) { return piece.span.holds(p.at); });
  }
}

/// "… and the wire broke": a past form of no row, and what stands before it.
template <class Book>
void StretchReader<Book>::past_form(std::uint32_t i, Tally& tally) const {
  const Note& n = note(i);
  const bool regular =
      c_->words.is_past(passage_->words({i, i + 1})) && !(n.info && n.info->verb_group[0] >= 0);
  if (!n.flags.has(WordClass::past_form) && !regular) return;
  book_.add(tally, "past", {head_before(i, span_.first)});
}

/// The sort of the last word before a token that is not passed over.
template <class Book>
Part StretchReader<Book>::head_before(std::uint32_t from, std::uint32_t begin) const {
  for (std::uint32_t i = from; i > begin; --i) {
    if (note(i - 1).thing < 0 && is_passed_over(note(i - 1).flags)) continue;
    return type(i - 1);
  }
  return kStart;
}

template <class Book>
Part StretchReader<Book>::verb_part(std::string_view base) const {
  return {c_->words.common_form(dates::hash_word(base)), base};
}

/// What a word has wherever it stands: itself, its classes, the verb it is a form of, its ending.
template <class Book>
void StretchReader<Book>::add_word(std::uint32_t i, Tally& tally) const {
  const Note& n = note(i);
  book_.add(tally, "word", {tag(i)});
  const auto classes = [&](std::uint64_t bits, unsigned first) {
    for (; bits != 0; bits &= bits - 1) {
      const auto word_class = first + static_cast<unsigned>(std::countr_zero(bits));
      book_.add(tally, "class", {class_part(static_cast<WordClass>(word_class))});
    }
  };
  classes(n.flags.low, 0);
  classes(n.flags.high, 64);
  if (n.info && n.info->verb_group[0] >= 0) {
    const auto group = static_cast<std::size_t>(n.info->verb_group[0]);
    const std::string& base = c_->words.verbs[c_->words.verb_groups[group].front()].base;
    book_.add(tally, "verb", {verb_part(base)});
  }
  if (n.ending != 0 && n.date < 0) {
    std::string_view ending;
    if constexpr (Book::kSpells) ending = ending_of(spelled_words_[local(i)]);
    book_.add(tally, "ending", {{n.ending, ending}});
  }
}

template <class Book>
typename Book::Tally StretchReader<Book>::of_word(std::uint32_t i) {
  Tally tally;
  if constexpr (Book::kSpells) {
    add_word(i, tally);
  } else {
    const Note& n = note(i);
    std::uint64_t key = TraitWeights::next(tag(i).form, n.flags.low);
    key = TraitWeights::next(key, n.flags.high);
    key = TraitWeights::next(key, n.ending);  // Spellings of one word may end differently.
    const bool dated = n.date >= 0, has_verb = n.info && n.info->verb_group[0] >= 0;
    key = TraitWeights::next(key, (dated ? 1U : 0U) + (has_verb ? 2U : 0U));
    WordMemory::Kept& kept = words_said_.at(key);
    if (kept.key != key) {
      add_word(i, tally);
      kept = {key, tally};
    }
    tally = kept.scores;
  }
  return tally;
}

template <class Book>
void StretchReader<Book>::tally_items() {
  of_items_.clear();
  of_pairs_.clear();
  of_triples_.clear();
  const auto neighbour = [&](std::size_t k) {
    const std::uint32_t i = items_[k];
    const bool itself = note(i).thing < 0 && note(i).date < 0 && is_grammar(note(i).flags);
    return itself ? word(i) : type(i);
  };
  Part before_last, last;
  for (std::size_t k = 0; k < items_.size(); ++k) {
    const std::uint32_t i = items_[k];
    Tally item, pair, triple;
    if (note(i).thing < 0 && !is_name(*passage_, i)) {
      item = of_word(i);
      past_form(i, item);
    } else {
      book_.add(item, "word", {tag(i)});
    }
    const Part now = neighbour(k);
    if (k > 0) book_.add(pair, "pair", {tag(items_[k - 1]), tag(i)});
    if (k > 1) book_.add(triple, "triple", {before_last, last, now});
    of_items_.push(std::move(item));
    of_pairs_.push(std::move(pair));
    of_triples_.push(std::move(triple));
    before_last = last;
    last = now;
  }
}

template <class Book>
void StretchReader<Book>::tally_predicates() {
  of_predicates_.clear();
  for (const Predicate& p : c_->reading.predicates) {
    const Span clause = c_->reading.clauses[p.clause].span;
    const Part left = head_before(p.span.empty() ? p.at : p.span.first, clause.first);
    Part right = kEnd;
    bool indefinite = false;
    for (std::uint32_t i = std::max(p.span.past, p.at + 1); i < clause.past; ++i) {
      if (note(i).thing < 0 && is_passed_over(note(i).flags)) {
        indefinite = indefinite || note(i).flags.has(WordClass::indefinite);
        continue;
      }
      right = type(i);
      break;
    }
    const Part kind = predicate_kind(p);
    const Part verb = p.verb && !p.verb->base.empty() ? verb_part(p.verb->base) : word(p.at);
    const Part a = indefinite ? kA : kNoArticle;
    Tally tally;
    book_.add(tally, "left", {left});
    book_.add(tally, "right", {a, right});
    book_.add(tally, "does", {verb});
    book_.add(tally, "left-kind", {left, kind});
    book_.add(tally, "kind-right", {kind, a, right});
    book_.add(tally, "left-kind-right", {left, kind, a, right});
    const int forms = (p.passive ? 1 : 0) + (p.present_tense ? 2 : 0) + (p.negated ? 4 : 0);
    book_.add(tally, "form", {kind, number_part(forms), number_part(static_cast<int>(p.agent))});
    of_predicates_.push_back(std::move(tally));
  }
}

template <class Book>
void StretchReader<Book>::tally_context() {
  constexpr int kOldest = 4;
  of_context_ = {};
  Tally& tally = of_context_;
  book_.add(tally, "always");
  book_.add(tally, "age", {number_part(std::min(talk_->answer_age, kOldest))});
  if (talk_->answer_age < 2) {
    const auto asked = [&](bool is, Part what) {
      if (is) book_.add(tally, "asked", {what});
    };
    asked(talk_->yes_no, kAskedYesNo);
    asked(talk_->when, kAskedWhen);
    asked(talk_->where, kAskedWhere);
    asked(talk_->how_many, kAskedHowMany);
    asked(talk_->of_people, kAskedPeople);
    asked(talk_->inventory, kAskedInventory);
  }
  if (c_->reading.question) book_.add(tally, "question");
  if (talk_->after_question) {
    book_.add(tally, "answers");
    const std::vector<Part>& words = talk_->asked_words;
    if (!words.empty()) book_.add(tally, "asks", {words[0]});
    if (words.size() > 1) book_.add(tally, "asks", {words[0], words[1]});
  }
  if (c_->focus.last && c_->focus.sentences - c_->focus.last_sentence <= 1)
    book_.add(tally, "last", {statement_part(c_->focus.last->statement)});
  for (std::size_t ago = 0; ago < talk_->before.size(); ++ago) {
    const TalkTraits::Before& before = talk_->before[ago];
    const Part steps = number_part(static_cast<int>(ago) + 1);
    if (!before.named.text.empty())
      book_.add(tally, "before", {steps, before.named, before.asking ? kAsked : kSaid});
    if (!before.stated.text.empty()) book_.add(tally, "stated", {steps, before.stated});
  }
}

template <class Book>
bool StretchReader<Book>::has_predicate(std::int64_t piece) const {
  return piece >= 0 && piece < static_cast<std::int64_t>(pieces_.size()) &&
         pieces_[static_cast<std::size_t>(piece)].does;
}

template <class Book>
Part StretchReader<Book>::opening(std::int64_t piece) const {
  if (piece < 0) return kStart;
  if (piece >= static_cast<std::int64_t>(pieces_.size())) return kEnd;
  return pieces_[static_cast<std::size_t>(piece)].opening;
}

template <class Book>
void StretchReader<Book>::tally_inside(const Stretch& stretch, Tally& tally) const {
  const auto first = static_cast<std::size_t>(
      std::lower_bound(items_.begin(), items_.end(), stretch.span.first) - items_.begin());
  const auto past = static_cast<std::size_t>(
      std::lower_bound(items_.begin(), items_.end(), stretch.span.past) - items_.begin());
  of_items_.add(first, past, tally);
  of_pairs_.add(first + 1, past, tally);
  of_triples_.add(first + 2, past, tally);
  const std::size_t count = past - first;
  if (count > 0) book_.add(tally, "opens", {tag(items_[first])});
  if (count > 1) {
    book_.add(tally, "opens", {tag(items_[first]), tag(items_[first + 1])});
    book_.add(tally, "first-two", {type(items_[first]), type(items_[first + 1])});
    book_.add(tally, "last-two", {type(items_[past - 2]), type(items_[past - 1])});
  }
  if (count > 2)
    book_.add(tally, "opens", {tag(items_[first]), tag(items_[first + 1]), tag(items_[first + 2])});
  book_.add(tally, "length", {bucket_of(static_cast<int>(count))});

  int predicates = 0;
  for (std::size_t k = 0; k < c_->reading.predicates.size(); ++k) {
    if (!stretch.span.holds(c_->reading.predicates[k].at)) continue;
    tally += of_predicates_[k];
    ++predicates;
  }
  book_.add(tally, "predicates", {number_part(std::min(predicates, 3))});
  if (predicates == 0 && count > 0) {
    book_.add(tally, "bare", {type(items_[first])});
    book_.add(tally, "bare-end", {type(items_[past - 1])});
  }
  for (const CueSpan& cue : passage_->cues_in(stretch.span))
    book_.add(tally, "cue", {named(to_string(c_->words.cues[cue.cue].cue))});
}

template <class Book>
void StretchReader<Book>::tally_edges(const Stretch& stretch, Tally& tally) const {
  constexpr int kManyPieces = 6, kLong = 5;
  const std::int64_t first = stretch.first_piece, past = stretch.past_piece;
  const auto yes_no = [](bool is) { return number_part(is ? 1 : 0); };
  const Part all = number_part(std::min(static_cast<int>(pieces_.size()), kManyPieces));
  const Part own = number_part(std::min(static_cast<int>(past - first), kLong));
  book_.add(tally, "pieces", {stretch.whole ? kAll : own});
  book_.add(tally, "of", {all});
  book_.add(tally, "pieces-of", {own, all});
  book_.add(tally, "open", {opening(first)});
  book_.add(tally, "last-open", {opening(past - 1)});
  book_.add(tally, "next", {opening(past), yes_no(has_predicate(past))});
  book_.add(tally, "first-does", {yes_no(has_predicate(first))});
  book_.add(tally, "last-does", {yes_no(has_predicate(past - 1))});
  if (first > 0) book_.add(tally, "behind", {opening(first - 1), yes_no(has_predicate(first - 1))});
  if (past - first < 2) return;
  book_.add(tally, "second", {opening(first + 1), yes_no(has_predicate(first + 1))});
  int doing = 0;
  for (std::int64_t k = first; k < past; ++k) doing += has_predicate(k) ? 1 : 0;
  book_.add(tally, "doing", {number_part(doing), own});
}

template <class Book>
std::vector<std::string> StretchReader<Book>::telling(const Stretch& stretch, Statement statement) const
    requires(!Book::kSpells) {
  constexpr std::size_t kWords = 3;
  std::vector<std::pair<std::int32_t, std::size_t>> weighty;
  for (std::size_t k = 0; k < items_.size(); ++k) {
    if (!stretch.span.holds(items_[k])) continue;
    std::int32_t weight = of_items_.of(k)[statement];
    if (k > 0 && stretch.span.holds(items_[k - 1])) weight += of_pairs_.of(k)[statement];
    if (weight > 0) weighty.emplace_back(-weight, k);
  }
  std::sort(weighty.begin(), weighty.end());
  if (weighty.size() > kWords) weighty.resize(kWords);
  std::sort(weighty.begin(), weighty.end(), [](const auto& a, const auto& b) { return a.second < b.second; });
  std::vector<std::string> words;
  for (const auto& [weight, k] : weighty) words.emplace_back(passage_->words({items_[k], items_[k] + 1}));
  return words;
}

template class StretchReader<WeighingBook>;
template class StretchReader<SpellingBook>;

}  // namespace witnessmark::claims
