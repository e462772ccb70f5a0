#include "language/traits/subjects.h"

#include <algorithm>

#include "witnessmark/base/fold.h"

namespace witnessmark::claims {
namespace {

constexpr int kReach = 11;  ///< Sentences that what was named stays in mind.
constexpr int kNotNear = 9, kFar = 3;
constexpr double kExact = 0.9, kTouching = 0.3;  ///< Shares of quotes.

constexpr Part kYes = named("yes"), kNo = named("no");
constexpr Part kBefore = named("before"), kAfter = named("after");
constexpr Part kSame = named("same"), kOther = named("other");
constexpr Part yes_no(bool is) {
  return is ? kYes : kNo;
}

bool may_be_subject(const Referent& referent) {
  return referent.kind == ThingKind::equipment || referent.kind == ThingKind::place;
}

Part how_part(std::size_t how) {
  static constexpr std::array kNames = {named("thing"),       named("things"),  named("she"),
                                        named("topic"),       named("counted"), named("place-topic"),
                                        named("it"),          named("them"),    named("place"),
                                        named("asked-place"), named("last"),    named("recent")};
  return kNames[how];
}

}  // namespace

bool Candidate::is(const Referent& other) const {
  return other.kind == kind && std::find(other.terms.begin(), other.terms.end(), term) != other.terms.end();
}

Referent Candidate::referent() const {
  Referent made = *from;
  made.terms = {term};
  made.carried = made.carried || named.empty();
  return made;
}

void RecentlyNamed::sentence(const StatementContext& context) {
  constexpr std::size_t kMost = 100;
  ++now_;
  for (const Thing& thing : context.passage.things_in(context.reading.span)) {
    if (thing.kind != ThingKind::equipment && thing.kind != ThingKind::place) continue;
    for (const std::uint32_t term : thing.terms) {
      const auto known = std::find_if(named_.begin(), named_.end(), [&](const Named& other) {
        return other.referent.kind == thing.kind && other.referent.terms.front() == term;
      });
      if (known != named_.end()) named_.erase(known);
      named_.push_front({referent_of(context, thing), now_});
      named_.front().referent.terms = {term};
    }
  }
  while (!named_.empty() && (now_ - named_.back().sentence >= kReach || named_.size() > kMost))
    named_.pop_back();
}

Candidate* Candidates::add(const Referent& referent, std::uint32_t term) {
  if (!may_be_subject(referent)) return nullptr;
  for (Candidate& known : list_) {
    if (known.kind == referent.kind && known.term == term) return &known;
  }
  Candidate made;
  made.kind = referent.kind;
  made.term = term;
  made.from = &referent;
  made.nearness = kNotNear;
  list_.push_back(std::move(made));
  return &list_.back();
}

void Candidates::carried(const Referent* referent, Carried how, int ago) {
  if (!referent) return;
  for (const std::uint32_t term : referent->terms) {
    Candidate* candidate = add(*referent, term);
    if (!candidate) continue;
    candidate->carried |= 1U << static_cast<unsigned>(how);
    const auto slot = static_cast<std::size_t>(how);
    if (slot < candidate->ago.size()) candidate->ago[slot] = ago;
    if (!candidate->plural) candidate->plural = referent->plural;
  }
}

void Candidates::find(const StatementContext& context, const RecentlyNamed& recent) {
  list_.clear();
  made_.clear();
  for (const Thing& thing : context.passage.things_in(context.reading.span)) {
    if (thing.kind != ThingKind::equipment && thing.kind != ThingKind::place) continue;
    const Referent& referent = made_.emplace_back(referent_of(context, thing));
    for (const std::uint32_t term : thing.terms) {
      if (Candidate* candidate = add(referent, term)) candidate->named.push_back(&thing);
    }
  }
  const Focus& focus = context.focus;
  const auto mentioned = [&](const Focus::Mentioned& m, Carried how) {
    carried(m.referent ? &*m.referent : nullptr, how, focus.words - m.at);
  };
  const auto stands_for = [&](std::optional<Referent> referent, Carried how) {
    if (referent) carried(&made_.emplace_back(std::move(*referent)), how);
  };
  const auto named_as = [&](const std::optional<Referent>& referent, Carried how) {
    carried(referent ? &*referent : nullptr, how);
  };
  mentioned(focus.thing, Carried::thing);
  mentioned(focus.things, Carried::things);
  mentioned(focus.named_she, Carried::she);
  mentioned(focus.topic, Carried::topic);
  mentioned(focus.counted, Carried::counted);
  mentioned(focus.place_topic, Carried::place_topic);
  stands_for(focus.pronoun(false, false), Carried::it);
  stands_for(focus.pronoun(true, false), Carried::them);
  named_as(focus.place, Carried::place);
  carried(context.asked_place, Carried::asked_place);
  if (focus.last) {
    named_as(focus.last->subject, Carried::last);
    named_as(focus.last->place, Carried::last);
  }
  std::array<int, 2> of_kind{};  // Equipment and places seen so far.
  for (const RecentlyNamed::Named& named : recent.named()) {
    Candidate* candidate = add(named.referent, named.referent.terms.front());
    if (!candidate) continue;
    candidate->carried |= 1U << static_cast<unsigned>(Carried::recent);
    candidate->recent_ago = recent.now() + 1 - named.sentence;
    candidate->nearness = std::min(of_kind[named.referent.kind == ThingKind::place ? 1 : 0]++, kFar);
  }
}

const Thing* named_in(const Candidate& candidate, const Stretch& stretch) {
  const auto found = std::find_if(candidate.named.begin(), candidate.named.end(),
                                  [&](const Thing* thing) { return stretch.span.holds(thing->span.first); });
  return found == candidate.named.end() ? nullptr : *found;
}

template <class Book>
void SubjectReader<Book>::read(const StatementContext& context, const std::vector<Candidate>& candidates,
                               const std::vector<Draft>& drafts) {
  c_ = &context;
  candidates_ = &candidates;
  drafts_ = &drafts;
  spelled_.clear();
  own_.assign(candidates.size(), {});
  const Focus& focus = context.focus;
  const Referent* last = focus.last && focus.last->subject && may_be_subject(*focus.last->subject)
                             ? &*focus.last->subject
                             : nullptr;
  std::array<int, 2> carried{};  // Equipment and places so far.
  for (std::size_t which = 0; which < candidates.size(); ++which) {
    const Candidate& it = candidates[which];
    Tally& tally = own_[which];
    book_.add(tally, "is", {kind_part(it.kind)});
    if (it.named.empty()) add_carried(it, carried[it.kind == ThingKind::place ? 1 : 0]++, tally);
    if (last && it.is(*last)) book_.add(tally, "of-last", {bucket_of(focus.sentences - focus.last_sentence)});
  }
}

template <class Book>
void SubjectReader<Book>::read(const Stretch& stretch) {
  stretch_ = &stretch;
  equipment_.clear();
  pronouns_.clear();
  beside_.clear();
  nearby_ = 0;
  one_ = many_ = false;
  for (const Thing& thing : c_->passage.things_in(stretch.span)) {
    if (thing.kind == ThingKind::equipment && !thing.shadowed) equipment_.push_back(&thing);
    nearby_ += thing.kind == ThingKind::equipment || thing.kind == ThingKind::place ? 1 : 0;
  }
  for (std::uint32_t i = stretch.span.first; i < stretch.span.past; ++i) {
    const Note& note = c_->passage.notes[i];
    if (note.thing >= 0) continue;
    const Flags& f = note.flags;
    one_ = one_ || f.has(WordClass::it) || f.has(WordClass::this_);
    many_ = many_ || f.has(WordClass::they) || f.has(WordClass::them);
    const bool pronoun = f.has(WordClass::it) || f.has(WordClass::this_) || f.has(WordClass::they) ||
                         f.has(WordClass::them) || f.has(WordClass::she) || f.has(WordClass::there) ||
                         f.has(WordClass::one);
    if (pronoun) pronouns_.push_back(i);
  }
  of_carried_ = {};
  book_.add(of_carried_, "carried-others", {yes_no(!equipment_.empty())});
  book_.add(of_carried_, "carried-things", {number_part(std::min(nearby_, 2))});
  for (const std::uint32_t i : pronouns_) book_.add(of_carried_, "carried-with", {spoken(i)});
  if (pronouns_.empty()) book_.add(of_carried_, "carried-with");
  for (const Draft& draft : *drafts_) {
    if (draft.quotes.empty()) continue;
    const double shared = draft.quotes.front().shared_with(stretch.range);
    if (shared < kTouching) continue;
    const std::optional<Referent>& about = draft.subject ? draft.subject : draft.place;
    beside_.push_back({&draft, about ? &*about : nullptr, shared});
  }
}

template <class Book>
typename Book::Tally SubjectReader<Book>::tally(std::size_t candidate) {
  const Candidate& it = (*candidates_)[candidate];
  Tally tally = own_[candidate];
  if (it.named.empty()) {
    tally += of_carried_;
    add_carried_here(it, tally);
  } else if (const Thing* here = named_in(it, *stretch_)) {
    add_named_here(it, *here, tally);
  } else {
    add_named_elsewhere(it, tally);
  }
  for (const Beside& beside : beside_) add_beside_rule(it, beside, tally);
  return tally;
}

template <class Book>
int SubjectReader<Book>::others(const Candidate& it) const {
  return static_cast<int>(std::count_if(equipment_.begin(), equipment_.end(), [&](const Thing* thing) {
    return it.kind != ThingKind::equipment ||
           std::find(thing->terms.begin(), thing->terms.end(), it.term) == thing->terms.end();
  }));
}

template <class Book>
Part SubjectReader<Book>::word_at(std::int64_t i) const {
  const Span& sentence = c_->reading.span;
  if (i < sentence.first) return named("^");
  if (i >= sentence.past) return named("$");
  const auto token = static_cast<std::uint32_t>(i);
  const Note& note = c_->passage.notes[token];
  if (note.thing >= 0) return kind_part(c_->passage.things[static_cast<std::size_t>(note.thing)].kind);
  if (c_->passage.tokens[token].kind == Token::Kind::mark) return named(",");
  if (is_name(c_->passage, token)) return named("<name>");
  return spoken(token);
}

template <class Book>
Part SubjectReader<Book>::spoken(std::uint32_t token) const {
  if constexpr (Book::kSpells) {
    spelled_.push_back(fold(c_->passage.words({token, token + 1})));
    return {c_->passage.tokens[token].form, spelled_.back()};
  }
  return {c_->passage.tokens[token].form};
}

template <class Book>
void SubjectReader<Book>::add_named_here(const Candidate& it, const Thing& thing, Tally& tally) const {
  const Part kind = kind_part(it.kind), role = number_part(static_cast<int>(thing.role));
  book_.add(tally, "here");
  book_.add(tally, "here-role", {role});
  book_.add(tally, "here-kind-role", {kind, role});
  const auto flag = [&](bool is, Part what) {
    if (is) book_.add(tally, "here-is", {what});
  };
  constexpr Part kIndefinite = named("indefinite"), kShadowed = named("shadowed"), kPlural = named("plural"),
                 kCounted = named("counted"), kNegated = named("negated"), kMisspelt = named("misspelt"),
                 kAmbiguous = named("ambiguous");
  flag(thing.indefinite, kIndefinite);
  flag(thing.shadowed, kShadowed);
  flag(thing.plural, kPlural);
  flag(thing.quantity >= 0, kCounted);
  flag(thing.negated, kNegated);
  flag(thing.near_match, kMisspelt);
  flag(thing.terms.size() > 1, kAmbiguous);
  const auto predicate = std::find_if(c_->reading.predicates.begin(), c_->reading.predicates.end(),
                                      [&](const Predicate& p) { return stretch_->span.holds(p.at); });
  if (predicate == c_->reading.predicates.end()) {
    book_.add(tally, "here-bare");
    book_.add(tally, "here-bare", {role});
  } else {
    const Part side = thing.span.past <= std::max(predicate->span.first, predicate->at) ? kBefore : kAfter;
    const Part does = number_part(static_cast<int>(predicate->kind));
    const Part verb = number_part(predicate->verb ? static_cast<int>(predicate->verb->kind) + 1 : 0);
    book_.add(tally, "side", {side});
    book_.add(tally, "side", {side, does});
    book_.add(tally, "side-verb", {side, verb, yes_no(predicate->passive)});
    book_.add(tally, "side-role", {side, role, does});
  }
  const auto inside = c_->passage.things_in(stretch_->span);
  const auto first = std::find_if(inside.begin(), inside.end(), [](const Thing& other) {
    return other.kind == ThingKind::equipment || other.kind == ThingKind::place;
  });
  book_.add(tally, "here-first", {yes_no(first != inside.end() && first->span.first == thing.span.first)});
  book_.add(tally, "here-others", {number_part(std::min(others(it), 2))});
  book_.add(tally, "here-next", {word_at(thing.span.past)});
  book_.add(tally, "here-word-before", {word_at(static_cast<std::int64_t>(thing.head) - 1)});
}

template <class Book>
void SubjectReader<Book>::add_named_elsewhere(const Candidate& it, Tally& tally) const {
  const bool before = it.named.front()->span.first < stretch_->span.first;
  book_.add(tally, "elsewhere");
  book_.add(tally, "elsewhere", {before ? kBefore : kAfter});
  book_.add(tally, "elsewhere-others", {yes_no(others(it) > 0)});
  for (const std::uint32_t i : pronouns_) book_.add(tally, "elsewhere-with", {spoken(i)});
  if (pronouns_.empty()) book_.add(tally, "elsewhere-with");
}

/// What is the same in every stretch.
template <class Book>
void SubjectReader<Book>::add_carried(const Candidate& it, int rank, Tally& tally) const {
  const Part kind = kind_part(it.kind);
  book_.add(tally, "carried");
  for (std::size_t how = 0; how < static_cast<std::size_t>(Carried::count_); ++how) {
    if (it.is_carried_by(static_cast<Carried>(how))) book_.add(tally, "carried-as", {how_part(how)});
  }
  for (const Carried how : {Carried::thing, Carried::things, Carried::topic}) {
    const auto slot = static_cast<std::size_t>(how);
    if (it.is_carried_by(how)) book_.add(tally, "ago", {how_part(slot), bucket_of(it.ago[slot])});
  }
  if (it.is_carried_by(Carried::recent)) book_.add(tally, "sentences-ago", {bucket_of(it.recent_ago)});
  book_.add(tally, "rank", {kind, number_part(std::min(rank, 3))});
  book_.add(tally, "nearness", {kind, number_part(it.nearness)});
}

template <class Book>
void SubjectReader<Book>::add_carried_here(const Candidate& it, Tally& tally) const {
  if (it.is_carried_by(Carried::thing)) {
    book_.add(tally, "thing-one", {yes_no(one_)});
    book_.add(tally, "thing-others", {yes_no(!equipment_.empty())});
  }
  if (it.is_carried_by(Carried::things)) book_.add(tally, "things-many", {yes_no(many_)});
  if (it.plural) book_.add(tally, "agrees", {yes_no(*it.plural), yes_no(one_), yes_no(many_)});
}

template <class Book>
void SubjectReader<Book>::add_beside_rule(const Candidate& it, const Beside& beside, Tally& tally) const {
  const Draft& draft = *beside.draft;
  const bool same = beside.about && it.is(*beside.about);
  const Part stated = statement_part(draft.statement);
  const Part whose = same ? kSame : kOther;
  book_.add(tally, beside.shared >= kAlike ? TraitKind("rule-of") : TraitKind("rule-near"), {whose, stated});
  if (beside.shared >= kExact) book_.add(tally, "rule-exact", {whose, stated});
  if (!same || beside.shared < kAlike) return;
  if (draft.led) book_.add(tally, "rule-led");
  if (draft.fragment) book_.add(tally, "rule-bare");
  if (draft.elliptical) book_.add(tally, "rule-repeats");
  if (draft.subject && draft.subject->carried) book_.add(tally, "rule-carried", {stated});
  if (draft.date) book_.add(tally, "rule-dated");
  if (!draft.subject && !draft.subject_words.empty()) book_.add(tally, "rule-unlisted", {stated});
}

template class SubjectReader<WeighingBook>;
template class SubjectReader<SpellingBook>;

}  // namespace witnessmark::claims
