// From the words of an utterance to what stands where: dates, terms of the lists, numbers, cues and grammar
// words. Every step is one pass over the tokens. Dates come first, then things, then numbers: "the three
// hundred lamp" is a lamp and "nineteen forty-four" a year before either holds a number.
#include <algorithm>
#include <span>

#include "language/passage/no_thing.h"
#include "language/passage/passage.h"
#include "witnessmark/base/fold.h"

namespace witnessmark::claims {
namespace {

bool hides_negatives(const Cue& what) {
  const CueClass cue = what.cue;
  // "because" and "it'd be" hold clauses together and apart like other words.
  if (cue == CueClass::inferred && (what.value == CueValue::grounds || what.value == CueValue::dating))
    return false;
  return cue == CueClass::pseudo || cue == CueClass::memory || cue == CueClass::doubt ||
         cue == CueClass::hedge || cue == CueClass::correction || cue == CueClass::inferred ||
         cue == CueClass::told || cue == CueClass::before_time;
}

bool is_comma(const Token& token) {
  return token.kind == Token::Kind::mark && token.mark == ',';
}

}  // namespace

void Annotator::look_up_words(Passage& passage) {
  const auto count = static_cast<std::uint32_t>(passage.tokens.size());
  passage.notes.clear();
  passage.notes.reserve(count);
  passage.sources.clear();
  clear_starts();
  for (std::uint32_t i = 0; i < count; ++i) {
    Token& token = passage.tokens[i];
    const Spelling& spelling = vocabulary_.of(passage.text, token);
    const bool stem = token.stem != token.form;
    if (spelling.named || stem) {
      for (std::size_t kind = 0; kind < name_starts_.size(); ++kind) {
        std::uint8_t marks = spelling.names[kind];
        if (stem && vocabulary_.stem_begins_name(token, kind)) marks |= kBeginsName;
        if (marks != 0) name_starts_[kind].push_back({i, marks});
      }
    }
    if (spelling.begins_something) {
      if (spelling.head) head_starts_.push_back(i);
      if (spelling.number) number_starts_.push_back(i);
      if (spelling.phrase) phrase_starts_.push_back(i);
      if (is_comma(token)) comma_at_.push_back(i);
    }
    token.form = spelling.form;
    if (!stem) token.stem = spelling.form;
    Note& note = passage.notes.emplace_back();
    note.ending = spelling.ending;
    if (!spelling.info) continue;
    note.info = spelling.info;
    note.flags = spelling.info->flags;
    if (spelling.info->source) passage.sources.push_back(i);
  }
}

void Annotator::clear_starts() {
  for (std::vector<NameStart>& starts : name_starts_) starts.clear();
  for (Starts* starts : {&head_starts_, &number_starts_, &phrase_starts_, &comma_at_}) starts->clear();
}

void Annotator::place_dates(const std::vector<ByteRange>& date_bytes, Passage& passage) {
  std::uint32_t token = 0;
  const auto count = static_cast<std::uint32_t>(passage.tokens.size());
  passage.date_spans.clear();
  for (std::size_t d = 0; d < date_bytes.size(); ++d) {
    const ByteRange& bytes = date_bytes[d];
    while (token < count && passage.tokens[token].end <= bytes.begin.value) ++token;
    Span span{token, token};
    while (span.past < count && passage.tokens[span.past].begin < bytes.end.value) {
      passage.notes[span.past].date = static_cast<std::int32_t>(d);
      ++span.past;
    }
    passage.date_spans.push_back(span);
  }
}

void Annotator::add_things(const TermFinder& finder, ThingKind kind, Passage& passage) {
  const TermFinder::Index& index = finder.index();
  if (index.list.empty()) return;
  // Names of people and of places far away are not looked for in misspellings.
  const bool listed = kind == ThingKind::equipment || kind == ThingKind::place;
  NearMemory* memory = listed ? &memories_[static_cast<std::size_t>(kind)] : nullptr;
  index.find(passage.text, passage.tokens, name_starts_[static_cast<std::size_t>(kind)], found_, memory);
  for (const TokenMention& mention : found_) {
    Thing thing;
    thing.span = {mention.first, mention.past};
    if (names_no_thing(passage, language_.data().words, thing.span)) continue;
    thing.kind = kind;
    thing.terms = index.terms_of(mention);
    thing.plural = index.names[mention.names->front()].plural;
    thing.near_match = mention.near_match;
    // Dates outrank things of fewer words: "the crane refit" as an event.
    const std::int32_t date = passage.notes[thing.span.first].date;
    if (date >= 0) {
      const Span& span = passage.date_spans[static_cast<std::size_t>(date)];
      if (span.past - span.first >= thing.span.past - thing.span.first) continue;
    }
    passage.things.push_back(std::move(thing));
  }
}

/// Key of the nearest place named within some thirty words; empty when there is none.
std::string Annotator::place_near(const Passage& passage, std::uint32_t at) const {
  constexpr std::uint32_t kReach = 30;
  std::uint32_t best = kReach;
  std::string key;
  // The places stand together, in the order of the text.
  const auto places = std::span(passage.things).subspan(first_place_, past_place_ - first_place_);
  const auto from =
      std::lower_bound(places.begin(), places.end(), at > kReach ? at - kReach : 0,
                       [](const Thing& thing, std::uint32_t i) { return thing.span.first < i; });
  for (const Thing& thing : std::span(from, places.end())) {
    if (thing.span.first >= at + kReach) break;
    if (thing.near_match) continue;
    const std::uint32_t distance = thing.span.first > at ? thing.span.first - at : at - thing.span.first;
    if (distance >= best) continue;
    best = distance;
    key = finders_.places->list().terms()[thing.terms.front()].key;
  }
  return key;
}

/// "the clock", "that old clock": a determiner, then the last word of a longer name.
void Annotator::find_heads(HeadMemory& heads, Passage& passage) {
  // What was named is remembered in the order of the words.
  // Equipment was found first, in that order already; more things are added behind while this goes on.
  const std::size_t found = passage.things.size();
  std::size_t next = 0;
  const auto remember_to = [&](std::uint32_t past) {
    for (; next < found && passage.things[next].kind == ThingKind::equipment; ++next) {
      if (passage.things[next].span.past > past) return;
      if (!passage.things[next].near_match) heads.remember(passage.things[next]);
    }
  };
  for (const std::uint32_t i : head_starts_) {
    if (i == 0 || passage.notes[i].date >= 0) continue;
    remember_to(i);
    const bool one = passage.has(i, WordClass::one);
    if (one) find_one(heads, i, passage);
    if (one && heads.names().ending_in(passage.tokens[i].form).empty()) continue;
    std::uint32_t before = i - 1;
    if (before > 0 && passage.has(before, WordClass::old)) --before;
    const Flags& f = passage.notes[before].flags;
    const WordInfo* counting = passage.notes[before].info;
    const bool number =
        passage.tokens[before].kind == Token::Kind::number || (counting && counting->quantity >= 0);
    if ((!f.has(WordClass::determiner) && !number) || f.has(WordClass::negative_determiner)) continue;
    // "There was a winch": a new one, unless there is but one of its kind at the place spoken of.
    if (f.has(WordClass::indefinite) && !heads.only_here(passage.tokens[i].form, place_near(passage, i)))
      continue;
    const auto term = heads.term_of(passage.tokens[i].form, place_near(passage, i));
    if (!term) continue;
    Thing thing;
    thing.span = {i, i + 1};
    thing.terms = {*term};
    thing.carried = true;
    thing.plural = heads.names().is_plural(passage.tokens[i].form);
    heads.remember(thing);
    passage.things.push_back(std::move(thing));
  }
  remember_to(static_cast<std::uint32_t>(passage.tokens.size()));
}

/// "the steam one", "the electric one": a word of a name in the place of the whole.
void Annotator::find_one(HeadMemory& heads, std::uint32_t i, Passage& passage) {
  if (i < 2 || !passage.has(i - 2, WordClass::determiner)) return;
  // "The old one", "the new one": of what is spoken of, whatever else the lists call old.
  const Flags& which = passage.notes[i - 1].flags;
  if (which.has(WordClass::old) || which.has(WordClass::new_)) return;
  std::vector<std::uint32_t> terms = heads.one_of(passage.tokens[i - 1].form);
  if (terms.empty()) return;
  Thing thing;
  thing.span = {i - 1, i + 1};
  thing.terms = std::move(terms);
  thing.carried = true;
  heads.remember(thing);
  passage.things.push_back(std::move(thing));
}

void Annotator::find_things(HeadMemory& heads, Passage& passage) {
  passage.things.clear();
  passage.look_at({});
  add_things(*finders_.equipment, ThingKind::equipment, passage);
  first_place_ = passage.things.size();
  add_things(*finders_.places, ThingKind::place, passage);
  past_place_ = passage.things.size();
  if (finders_.locations) add_things(*finders_.locations, ThingKind::location, passage);
  if (finders_.persons) add_things(*finders_.persons, ThingKind::person, passage);
  find_heads(heads, passage);
  // Where mentions overlap the longer wins; of equal ones the list named first.
  const bool one = passage.things.size() < 2;
  if (!one)
    std::stable_sort(passage.things.begin(), passage.things.end(), [](const Thing& a, const Thing& b) {
      const auto length = [](const Thing& t) { return t.span.past - t.span.first; };
      if (a.near_match != b.near_match) return !a.near_match;
      if (a.carried != b.carried) return !a.carried;
      return length(a) > length(b);
    });
  std::vector<Thing>& kept = kept_things_;
  kept.clear();
  for (Thing& thing : passage.things) {
    bool free = true;
    for (std::uint32_t k = thing.span.first; k < thing.span.past; ++k)
      free = free && passage.notes[k].thing < 0;
    if (!free) {
      // A place that is also a location of the itinerary is both.
      const std::int32_t over = passage.notes[thing.span.first].thing;
      if (thing.kind == ThingKind::location && over >= 0) {
        Thing& other = kept[static_cast<std::size_t>(over)];
        if (other.kind == ThingKind::place && thing.span.past <= other.span.past) other.location = true;
      }
      continue;
    }
    for (std::uint32_t k = thing.span.first; k < thing.span.past; ++k)
      passage.notes[k].thing = static_cast<std::int32_t>(kept.size());
    kept.push_back(std::move(thing));
  }
  std::swap(passage.things, kept);
  if (one) return;
  std::sort(passage.things.begin(), passage.things.end(),
            [](const Thing& a, const Thing& b) { return a.span.first < b.span.first; });
  for (std::size_t t = 0; t < passage.things.size(); ++t) {
    const Span& span = passage.things[t].span;
    for (std::uint32_t k = span.first; k < span.past; ++k)
      passage.notes[k].thing = static_cast<std::int32_t>(t);
  }
}

void Annotator::find_numbers(Passage& passage) {
  passage.numbers.clear();
  read_numbers(passage, language_.data().words, number_starts_);
}

/// ", hadn't it," denies nothing.
void Annotator::hide_tags(Passage& passage) {
  const auto count = static_cast<std::uint32_t>(passage.tokens.size());
  for (const std::uint32_t comma : comma_at_) {
    const std::uint32_t i = comma + 1;
    if (i + 1 >= count) break;
    Note& note = passage.notes[i];
    const bool auxiliary = note.flags.has(WordClass::be) || note.flags.has(WordClass::have) ||
                           note.flags.has(WordClass::do_) || note.flags.has(WordClass::modal);
    if (!auxiliary || !note.flags.has(WordClass::negative)) continue;
    const Flags& next = passage.notes[i + 1].flags;
    const bool pronoun = next.has(WordClass::it) || next.has(WordClass::they) || next.has(WordClass::we) ||
                         next.has(WordClass::she) || next.has(WordClass::exist);
    const bool ends = i + 2 >= count || passage.is_mark(i + 2);
    if (pronoun && ends) note.flags = Flags{};
  }
}

/// Whether token i is an auxiliary right behind its subject.
static bool is_verb_of_subject(const Passage& passage, std::uint32_t i) {
  const Flags& f = passage.notes[i].flags;
  if (!f.has(WordClass::be) && !f.has(WordClass::do_) && !f.has(WordClass::have)) return false;
  const Note& before = passage.notes[i - 1];
  const Flags& s = before.flags;
  return before.thing >= 0 || s.has(WordClass::it) || s.has(WordClass::they) || s.has(WordClass::we) ||
         s.has(WordClass::she) || s.has(WordClass::this_);
}

void Annotator::find_phrases(Passage& passage) {
  const Words& words = language_.data().words;
  passage.cues.clear();
  const auto add_cue = [&](Span span, std::uint32_t cue) {
    passage.cues.push_back({span, cue});
    if (!hides_negatives(words.cues[cue])) return;
    for (std::uint32_t k = span.first; k < span.past; ++k) {
      passage.notes[k].cue = static_cast<std::int32_t>(passage.cues.size() - 1);
    }
  };
  const auto count = static_cast<std::uint32_t>(passage.tokens.size());
  std::vector<std::uint32_t>& cues = cues_here_;
  std::vector<std::uint32_t>& answers = answers_here_;
  std::uint32_t cue_past = 0;  // Cues inside a longer cue are not cues of their own.
  for (const std::uint32_t i : phrase_starts_) {
    const WordInfo* info = passage.notes[i].info;
    const bool phrase =
        info->starts_phrase && i + 1 < count && words.phrases.may_continue(passage.tokens[i + 1]);
    if (info->cue < 0 && !phrase) continue;
    std::uint32_t longest = 0;
    std::uint32_t longest_answer = 0;  // Words that open an answer are told apart from other cues.
    cues.clear();
    answers.clear();
    const auto take = [&](std::uint32_t index, std::uint32_t length) {
      const bool answer = opens_answer(words.cues[index].cue);
      std::uint32_t& best = answer ? longest_answer : longest;
      std::vector<std::uint32_t>& list = answer ? answers : cues;
      if (length > best) list.clear();
      best = std::max(best, length);
      list.push_back(index);
    };
    if (info->cue >= 0) {
      for (const std::uint32_t index : words.cue_lists[static_cast<std::size_t>(info->cue)]) take(index, 1);
    }
    if (phrase) {
      words.phrases.match(
          passage.tokens, i, [&](std::size_t length, const std::vector<std::uint32_t>& values) {
            for (const std::uint32_t value : values) {
              const std::uint32_t index = Words::index_of(value);
              const bool names = passage.notes[i + length - 1].thing >= 0 && passage.notes[i].thing < 0;
              if (Words::kind_of(value) == Words::PhraseKind::word) {
                // "the steam one" that names a thing is no pronoun.
                if (names && (index == static_cast<std::uint32_t>(WordClass::pronoun) ||
                              index == static_cast<std::uint32_t>(WordClass::new_one))) {
                  continue;
                }
                passage.notes[i].flags.set(static_cast<WordClass>(index));
                passage.notes[i].reach = std::max(passage.notes[i].reach, static_cast<std::uint8_t>(length));
              } else if (Words::kind_of(value) == Words::PhraseKind::cue) {
                take(index, static_cast<std::uint32_t>(length));
              }
            }
          });
    }
    for (const std::uint32_t cue : answers) add_cue({i, i + longest_answer}, cue);
    if (longest == 0 || i + longest <= cue_past) continue;
    // "It was there, wasn't it?", but "It wasn't there."
    const bool has_subject = i > 0 && is_verb_of_subject(passage, i);
    for (const std::uint32_t cue : cues) {
      if (has_subject && words.cues[cue].cue == CueClass::pseudo) continue;
      add_cue({i, i + longest}, cue);
    }
    cue_past = std::max(cue_past, i + longest);
  }
}

/// Reads leftward from a thing over adjectives, numbers and articles to the head of its noun phrase.
void Annotator::read_phrase(Passage& passage, Thing& thing) {
  std::uint32_t at = thing.span.first;
  std::optional<std::uint32_t> behind_name;
  bool determined = false, owned = false;
  for (int steps = 0; at > 0 && steps < 8; ++steps) {
    const Note& note = passage.notes[at - 1];
    if (passage.is_mark(at - 1) || note.thing >= 0 || note.date >= 0) break;
    if (note.number >= 0) {
      const Number& number = passage.numbers[static_cast<std::size_t>(note.number)];
      if (!number.measure && !number.ordinal_name) {
        if (thing.quantity >= 0) thing.total = thing.quantity;
        thing.quantity = note.number;
      }
      at = number.span.first;
      determined = true;
      continue;
    }
    const Flags& flags = note.flags;
    if (flags.has(WordClass::negative_determiner) || flags.has(WordClass::negative)) {
      if (note.cue < 0) thing.negated = true;
      // "neither … nor": the word also links.
      if (!flags.has(WordClass::coordinator)) --at;
      break;
    }
    if (flags.has(WordClass::of) && at >= 2) {
      // "two of the davits": the number counts them. "some of the lamps", "a sort of a locker".
      const Note& before = passage.notes[at - 2];
      if (before.number >= 0 || before.flags.has(WordClass::everything) ||
          before.flags.has(WordClass::both) || before.flags.has(WordClass::indefinite)) {
        --at;
        determined = false;
        continue;
      }
    }
    if (flags.has(WordClass::determiner)) {
      thing.indefinite = thing.indefinite || flags.has(WordClass::indefinite);
      determined = true;
      --at;
      continue;
    }
    const bool adjective = flags.has(WordClass::both) || flags.has(WordClass::only) ||
                           flags.has(WordClass::everything) || flags.has(WordClass::indefinite);
    if (determined && !adjective) break;
    if (adjective || flags.has(WordClass::old) || flags.has(WordClass::more) ||
        flags.has(WordClass::colour) || flags.has(WordClass::shade) || flags.has(WordClass::material) ||
        flags.has(WordClass::type) || flags.has(WordClass::condition) || flags.has(WordClass::quality) ||
        flags.has(WordClass::abstract)) {
      --at;
      continue;
    }
    // Any word known for grammar, as a verb or as a cue ends the phrase; unknown words are adjectives.
    const bool grammar = flags.low != 0 || flags.high != 0;
    // "the polished bell", "a winding drum": participles of verbs between article and noun are adjectives.
    const bool participle = note.info && (note.info->verb_forms[0] & 24U) != 0 && at >= 2 &&
                            passage.has(at - 2, WordClass::determiner);
    const bool verb = note.info && note.info->verb_forms[0] != 0 && !participle;
    if (grammar || verb || note.cue >= 0 || steps >= 3) break;
    owned = owned || passage.tokens[at - 1].stem != passage.tokens[at - 1].form;
    if (thing.kind == ThingKind::equipment && !behind_name && !owned && passage.tokens[at - 1].capital)
      behind_name = at;
    --at;
  }
  // "In Tolbeck lamps were lit": a name not led in by an article is no adjective, but in "Mr Marsh's lamp".
  thing.head = determined ? at : behind_name.value_or(at);
}

/// The preposition right before the noun phrase, which may be a phrase of several words.
void Annotator::read_role(Passage& passage, Thing& thing) {
  if (thing.head == 0 || passage.is_mark(thing.head - 1)) return;
  std::uint32_t at = thing.head - 1;
  for (std::uint32_t k = at; k + 4 > at; --k) {
    if (passage.notes[k].reach > 1 && k + passage.notes[k].reach == thing.head) at = k;
    if (k == 0) break;
  }
  const Note& note = passage.notes[at];
  const Flags& f = note.flags;
  const bool by = f.has(WordClass::by) && thing.kind == ThingKind::equipment && note.reach == 1;
  thing.role_at = static_cast<std::int32_t>(at);
  if (f.has(WordClass::instead_of) && note.reach > 1) {
    thing.role = Role::instead;
  } else if (f.has(WordClass::relation) && !f.has(WordClass::at) && !by) {
    thing.role = Role::relation;
  } else if (f.has(WordClass::from)) {
    thing.role = Role::from;
  } else if (f.has(WordClass::to)) {
    thing.role = Role::to;
  } else if (f.has(WordClass::at)) {
    thing.role = Role::at;
  } else if (f.has(WordClass::of)) {
    thing.role = Role::of;
  } else if (f.has(WordClass::by)) {
    thing.role = Role::by;
  } else if (f.has(WordClass::with)) {
    thing.role = Role::with;
  } else if (f.has(WordClass::for_)) {
    thing.role = Role::for_;
  } else {
    thing.role_at = -1;
  }
}

void Annotator::settle_roles(Passage& passage) {
  const auto count = static_cast<std::uint32_t>(passage.tokens.size());
  for (std::size_t t = 0; t < passage.things.size(); ++t) {
    Thing& thing = passage.things[t];
    read_phrase(passage, thing);
    read_role(passage, thing);
    if (thing.span.past < count) {
      const Flags& next = passage.notes[thing.span.past].flags;
      thing.shadowed = next.has(WordClass::person) || next.has(WordClass::activity);
    }
    // A coordinated thing shares the role and the "no" of the first: "in the galley and the mess room".
    if (t == 0 || thing.role != Role::none || thing.head == 0) continue;
    const Thing& before = passage.things[t - 1];
    const std::uint32_t link = thing.head - 1;
    const bool joined = before.span.past == link &&
                        (passage.has(link, WordClass::coordinator) || is_comma(passage.tokens[link]));
    if (joined && before.kind == thing.kind && !passage.has(link, WordClass::terminator)) {
      thing.role = before.role;
      if (before.negated && before.head + 6 > thing.head && !is_comma(passage.tokens[link]))
        thing.negated = true;
    }
  }
}

/// "the wheelhouse, sorry, the chart room": of two of a kind around a correction the first is taken back.
void Annotator::withdraw_corrected(Passage& passage) {
  const Words& words = language_.data().words;
  for (const CueSpan& cue : passage.cues) {
    if (words.cues[cue.cue].cue != CueClass::correction) continue;
    const auto after =
        std::lower_bound(passage.things.begin(), passage.things.end(), cue.span.past,
                         [](const Thing& thing, std::uint32_t token) { return thing.span.first < token; });
    if (after == passage.things.end() || after == passage.things.begin() || after->head > cue.span.past + 3)
      continue;
    for (auto before = std::prev(after);; --before) {
      if (before->span.past + 4 < cue.span.first) break;
      if (before->kind == after->kind && before->terms != after->terms) {
        before->corrected = true;
        if (after->role == Role::none) after->role = before->role;
        break;
      }
      if (before == passage.things.begin()) break;
    }
  }
}

void Annotator::annotate(std::string_view text, const std::vector<ByteRange>& remarks,
                         std::vector<DateExpression> dates, const std::vector<ByteRange>& date_bytes,
                         HeadMemory& heads, Passage& passage) {
  passage.text = text;
  tokenize(text, passage.tokens);
  language_.data().words.drop_number_stops(passage.tokens);
  if (!remarks.empty()) {
    auto remark = remarks.begin();
    std::erase_if(passage.tokens, [&](const Token& token) {
      while (remark != remarks.end() && remark->end.value <= token.begin) ++remark;
      return remark != remarks.end() && remark->begin.value <= token.begin;
    });
  }
  look_up_words(passage);
  passage.dates = std::move(dates);
  place_dates(date_bytes, passage);
  find_things(heads, passage);
  find_numbers(passage);
  find_phrases(passage);
  hide_tags(passage);
  settle_roles(passage);
  withdraw_corrected(passage);
}

}  // namespace witnessmark::claims
