#include "language/traits/subjects.h"

#include <algorithm>

#include "witnessmark/base/fold.h"

namespace witnessmark::claims {
namespace {

constexpr int kReach = 11;  ///< Sentences that what was named stays in mind.
constexpr int kNotNear = 9;
constexpr double kAlike = 0.5, kSame = 0.9, kTouching = 0.3;  ///< Shares of quotes.

const Part kYes = named("yes"), kNo = named("no");
Part yes_no(bool is) {
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

class CandidateList {
 public:
  Candidate* add(const Referent& referent, std::uint32_t term) {
    if (!may_be_subject(referent)) return nullptr;
    for (Candidate& known : list) {
      if (known.referent.kind == referent.kind && known.referent.terms.front() == term) return &known;
    }
    Candidate made{referent};
    made.referent.terms = {term};
    list.push_back(std::move(made));
    return &list.back();
  }
  void carried(const std::optional<Referent>& referent, Carried how, int ago = 0) {
    if (!referent) return;
    for (const std::uint32_t term : referent->terms) {
      Candidate* candidate = add(*referent, term);
      if (!candidate) continue;
      if (candidate->named.empty()) candidate->referent.carried = true;
      candidate->carried |= 1U << static_cast<unsigned>(how);
      const auto slot = static_cast<std::size_t>(how);
      if (slot < candidate->ago.size()) candidate->ago[slot] = ago;
      if (!candidate->plural) candidate->plural = referent->plural;
    }
  }
  std::vector<Candidate> list;
};

/// Traits of one candidate in one stretch.
class SubjectTraits {
 public:
  SubjectTraits(const StatementContext& context, const TraitBook& book, const Stretch& stretch,
                const std::vector<Candidate>& candidates, std::size_t which, const RecentlyNamed& recent)
      : c_(context),
        book_(book),
        stretch_(stretch),
        candidates_(candidates),
        it_(candidates[which]),
        recent_(recent),
        kind_(kind_part(it_.referent.kind)) {
    for (const Thing& thing : c_.passage.things_in(stretch.span)) {
      const bool other = thing.kind == ThingKind::equipment && !thing.shadowed &&
                         !(it_.referent.kind == thing.kind && has_term(thing));
      others_ += other ? 1 : 0;
      nearby_ += thing.kind == ThingKind::equipment || thing.kind == ThingKind::place ? 1 : 0;
    }
    for (std::uint32_t i = stretch.span.first; i < stretch.span.past; ++i) {
      const Note& note = c_.passage.notes[i];
      if (note.thing >= 0) continue;
      const Flags& f = note.flags;
      one_ = one_ || f.has(WordClass::it) || f.has(WordClass::this_);
      many_ = many_ || f.has(WordClass::they) || f.has(WordClass::them);
      const bool pronoun = f.has(WordClass::it) || f.has(WordClass::this_) || f.has(WordClass::they) ||
                           f.has(WordClass::them) || f.has(WordClass::she) || f.has(WordClass::there) ||
                           f.has(WordClass::one);
      if (pronoun) pronouns_.push_back(i);
    }
  }

  Tally run(const std::vector<Draft>& drafts) {
    add("is", {kind_});
    if (const Thing* here = named_in(it_, stretch_)) {
      named_here(*here);
    } else if (!it_.named.empty()) {
      named_elsewhere();
    } else {
      carried();
    }
    const Focus& focus = c_.focus;
    if (focus.last && focus.last->subject && may_be_subject(*focus.last->subject)) {
      const auto& terms = focus.last->subject->terms;
      if (std::find(terms.begin(), terms.end(), it_.referent.terms.front()) != terms.end() &&
          focus.last->subject->kind == it_.referent.kind)
        add("of-last", {bucket_of(focus.sentences - focus.last_sentence)});
    }
    for (const Draft& draft : drafts) beside_rule(draft);
    return std::move(tally_);
  }

 private:
  void add(TraitKind kind, std::initializer_list<Part> parts) { book_.add(tally_, kind, parts); }
  bool has_term(const Thing& thing) const {
    return std::find(thing.terms.begin(), thing.terms.end(), it_.referent.terms.front()) != thing.terms.end();
  }
  Part word_at(std::int64_t i) const {
    const Span& sentence = c_.reading.span;
    if (i < sentence.first) return named("^");
    if (i >= sentence.past) return named("$");
    const auto token = static_cast<std::uint32_t>(i);
    const Note& note = c_.passage.notes[token];
    if (note.thing >= 0) return kind_part(c_.passage.things[static_cast<std::size_t>(note.thing)].kind);
    if (c_.passage.tokens[token].kind == Token::Kind::mark) return named(",");
    if (is_name(c_.passage, token)) return named("<name>");
    return spoken(token);
  }
  Part spoken(std::uint32_t token) const {
    if (!book_.spells()) return {c_.passage.tokens[token].form};
    spelled_.push_back(fold(c_.passage.words({token, token + 1})));
    return {c_.passage.tokens[token].form, spelled_.back()};
  }

  void named_here(const Thing& thing) {
    const Part role = number_part(static_cast<int>(thing.role));
    add("here", {});
    add("here-role", {role});
    add("here-kind-role", {kind_, role});
    const auto flag = [&](bool is, std::string_view what) {
      if (is) add("here-is", {named(what)});
    };
    flag(thing.indefinite, "indefinite");
    flag(thing.shadowed, "shadowed");
    flag(thing.plural, "plural");
    flag(thing.quantity >= 0, "counted");
    flag(thing.negated, "negated");
    flag(thing.near_match, "misspelt");
    flag(thing.terms.size() > 1, "ambiguous");
    const auto predicate = std::find_if(c_.reading.predicates.begin(), c_.reading.predicates.end(),
                                        [&](const Predicate& p) { return stretch_.span.holds(p.at); });
    if (predicate == c_.reading.predicates.end()) {
      add("here-bare", {});
      add("here-bare", {role});
    } else {
      const bool before = thing.span.past <= std::max(predicate->span.first, predicate->at);
      const Part side = named(before ? "before" : "after");
      const Part kind = number_part(static_cast<int>(predicate->kind));
      const Part verb = number_part(predicate->verb ? static_cast<int>(predicate->verb->kind) + 1 : 0);
      add("side", {side});
      add("side", {side, kind});
      add("side-verb", {side, verb, yes_no(predicate->passive)});
      add("side-role", {side, role, kind});
    }
    const auto inside = c_.passage.things_in(stretch_.span);
    const auto first = std::find_if(inside.begin(), inside.end(), [](const Thing& other) {
      return other.kind == ThingKind::equipment || other.kind == ThingKind::place;
    });
    add("here-first", {yes_no(first != inside.end() && first->span.first == thing.span.first)});
    add("here-others", {number_part(std::min(others_, 2))});
    add("here-next", {word_at(thing.span.past)});
    add("here-word-before", {word_at(static_cast<std::int64_t>(thing.head) - 1)});
  }

  void named_elsewhere() {
    const bool before = it_.named.front()->span.first < stretch_.span.first;
    add("elsewhere", {});
    add("elsewhere", {named(before ? "before" : "after")});
    add("elsewhere-others", {yes_no(others_ > 0)});
    for (const std::uint32_t i : pronouns_) add("elsewhere-with", {spoken(i)});
    if (pronouns_.empty()) add("elsewhere-with", {});
  }

  void carried() {
    add("carried", {});
    add("carried-others", {yes_no(others_ > 0)});
    add("carried-things", {number_part(std::min(nearby_, 2))});
    for (std::size_t how = 0; how < static_cast<std::size_t>(Carried::count_); ++how) {
      if (it_.is_carried_by(static_cast<Carried>(how))) add("carried-as", {how_part(how)});
    }
    for (const std::uint32_t i : pronouns_) add("carried-with", {spoken(i)});
    if (pronouns_.empty()) add("carried-with", {});
    if (it_.is_carried_by(Carried::thing)) {
      add("thing-one", {yes_no(one_)});
      add("thing-others", {yes_no(others_ > 0)});
    }
    if (it_.is_carried_by(Carried::things)) add("things-many", {yes_no(many_)});
    for (const Carried how : {Carried::thing, Carried::things, Carried::topic}) {
      const auto slot = static_cast<std::size_t>(how);
      if (it_.is_carried_by(how)) add("ago", {how_part(slot), bucket_of(it_.ago[slot])});
    }
    if (it_.is_carried_by(Carried::recent)) add("sentences-ago", {bucket_of(it_.recent_ago)});
    int rank = 0;
    for (const Candidate& other : candidates_) {
      if (&other == &it_) break;
      rank += other.named.empty() && other.referent.kind == it_.referent.kind ? 1 : 0;
    }
    add("rank", {kind_, number_part(std::min(rank, 3))});
    add("nearness", {kind_, number_part(recent_.nearness(it_.referent))});
    if (it_.plural) add("agrees", {yes_no(*it_.plural), yes_no(one_), yes_no(many_)});
  }

  void beside_rule(const Draft& draft) {
    if (draft.quotes.empty()) return;
    const double shared = draft.quotes.front().shared_with(stretch_.range);
    if (shared < kTouching) return;
    const bool of_equipment = draft.subject.has_value();
    const std::optional<Referent>& about = of_equipment ? draft.subject : draft.place;
    const bool same =
        about && about->kind == it_.referent.kind &&
        std::find(about->terms.begin(), about->terms.end(), it_.referent.terms.front()) != about->terms.end();
    const Part stated = statement_part(draft.statement);
    const Part whose = named(same ? "same" : "other");
    add(shared >= kAlike ? TraitKind("rule-of") : TraitKind("rule-near"), {whose, stated});
    if (shared >= kSame) add("rule-exact", {whose, stated});
    if (!same || shared < kAlike) return;
    if (draft.led) add("rule-led", {});
    if (draft.fragment) add("rule-bare", {});
    if (draft.elliptical) add("rule-repeats", {});
    if (draft.subject && draft.subject->carried) add("rule-carried", {stated});
    if (draft.date) add("rule-dated", {});
    if (!draft.subject && !draft.subject_words.empty()) add("rule-unlisted", {stated});
  }

  const StatementContext& c_;
  const TraitBook& book_;
  const Stretch& stretch_;
  const std::vector<Candidate>& candidates_;
  const Candidate& it_;
  const RecentlyNamed& recent_;
  Part kind_;
  Tally tally_;
  int others_ = 0, nearby_ = 0;
  bool one_ = false, many_ = false;
  std::vector<std::uint32_t> pronouns_;
  mutable std::deque<std::string> spelled_;
};

}  // namespace

bool same_referent(const Referent& a, const Referent& b) {
  return a.kind == b.kind && a.terms == b.terms;
}

void RecentlyNamed::sentence(const StatementContext& context) {
  ++now_;
  for (const Thing& thing : context.passage.things_in(context.reading.span)) {
    const Referent whole = referent_of(context, thing);
    if (!may_be_subject(whole)) continue;
    for (const std::uint32_t term : thing.terms) {
      Named named{whole, now_};
      named.referent.terms = {term};
      named_.push_front(std::move(named));
    }
  }
  constexpr std::size_t kMost = 100;
  while (!named_.empty() && (now_ - named_.back().sentence >= kReach || named_.size() > kMost))
    named_.pop_back();
}

int RecentlyNamed::nearness(const Referent& referent) const {
  std::vector<std::uint32_t> before;
  for (const Named& named : named_) {
    if (named.referent.kind != referent.kind) continue;
    const std::uint32_t term = named.referent.terms.front();
    if (term == referent.terms.front()) return std::min(static_cast<int>(before.size()), 3);
    if (std::find(before.begin(), before.end(), term) == before.end()) before.push_back(term);
  }
  return kNotNear;
}

std::vector<Candidate> candidates_for(const StatementContext& context, const RecentlyNamed& recent) {
  CandidateList made;
  for (const Thing& thing : context.passage.things_in(context.reading.span)) {
    const Referent referent = referent_of(context, thing);
    for (const std::uint32_t term : thing.terms) {
      if (Candidate* candidate = made.add(referent, term)) candidate->named.push_back(&thing);
    }
  }
  const Focus& focus = context.focus;
  const auto mentioned = [&](const Focus::Mentioned& m, Carried how) {
    made.carried(m.referent, how, focus.words - m.at);
  };
  mentioned(focus.thing, Carried::thing);
  mentioned(focus.things, Carried::things);
  mentioned(focus.named_she, Carried::she);
  mentioned(focus.topic, Carried::topic);
  mentioned(focus.counted, Carried::counted);
  mentioned(focus.place_topic, Carried::place_topic);
  made.carried(focus.pronoun(false, false), Carried::it);
  made.carried(focus.pronoun(true, false), Carried::them);
  made.carried(focus.place, Carried::place);
  if (context.asked_place) made.carried(*context.asked_place, Carried::asked_place);
  if (focus.last) {
    made.carried(focus.last->subject, Carried::last);
    made.carried(focus.last->place, Carried::last);
  }
  for (const RecentlyNamed::Named& named : recent.named()) {
    Candidate* candidate = made.add(named.referent, named.referent.terms.front());
    if (!candidate) continue;
    if (candidate->named.empty()) candidate->referent.carried = true;
    if (candidate->is_carried_by(Carried::recent)) continue;
    candidate->carried |= 1U << static_cast<unsigned>(Carried::recent);
    candidate->recent_ago = recent.now() + 1 - named.sentence;
  }
  return std::move(made.list);
}

const Thing* named_in(const Candidate& candidate, const Stretch& stretch) {
  const auto found = std::find_if(candidate.named.begin(), candidate.named.end(),
                                  [&](const Thing* thing) { return stretch.span.holds(thing->span.first); });
  return found == candidate.named.end() ? nullptr : *found;
}

Tally subject_tally(const StatementContext& context, const TraitBook& book, const Stretch& stretch,
                    const std::vector<Candidate>& candidates, std::size_t which, const RecentlyNamed& recent,
                    const std::vector<Draft>& drafts) {
  return SubjectTraits(context, book, stretch, candidates, which, recent).run(drafts);
}

}  // namespace witnessmark::claims
