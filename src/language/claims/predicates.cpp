// Finding the verbs that matter, and cutting a sentence into clauses around them.
//
// A word is taken for a verb when its form allows it and its neighbours do: past forms nearly always, base
// forms only after a pronoun, an auxiliary, "to" or another verb; never as part of a list term, date or
// number, never after an article. Auxiliaries before it say whether it is passive. Particles may stand apart
// ("took the derrick off").
//
// A form of "to be" or "to have" counts as a full verb when no verb of the lists follows it as a participle.
//
// Clauses: the sentence is cut at marks and at conjunctions; pieces without a predicate join a neighbour:
// leading pieces the next, others the one before, unless they begin with a conjunction and hold only a date.
#include <algorithm>

#include "language/claims/sentence_reading.h"

namespace witnessmark::claims {
namespace {

bool is_mark(const Passage& passage, std::uint32_t i) {
  return passage.tokens[i].kind == Token::Kind::mark;
}

class Finder {
 public:
  Finder(const Passage& passage, const Words& words, Span span)
      : passage_(passage), words_(words), notes_(passage.notes), span_(span) {}

  std::vector<Predicate> run() {
    for (std::uint32_t i = span_.first; i < span_.past; ++i) {
      const Note& note = notes_[i];
      if (!note.info || note.thing >= 0 || note.date >= 0 || is_mark(passage_, i)) continue;
      if (try_verb(i)) continue;
      if (note.flags.has(WordClass::be)) try_be(i);
      if (note.flags.has(WordClass::have) || note.flags.has(WordClass::had_or_would)) try_have(i);
    }
    std::sort(found_.begin(), found_.end(),
              [](const Predicate& a, const Predicate& b) { return a.at < b.at; });
    return std::move(found_);
  }

 private:
  bool has(std::uint32_t i, WordClass c) const {
    return i < span_.past && i >= span_.first && notes_[i].flags.has(c);
  }
  bool is_adverb(std::uint32_t i) const {
    const Flags& f = notes_[i].flags;
    return f.has(WordClass::adverb) || f.has(WordClass::negative) || f.has(WordClass::still) ||
           f.has(WordClass::already) || f.has(WordClass::never) || f.has(WordClass::yet) ||
           f.has(WordClass::us);
  }
  bool is_aux(std::uint32_t i) const {
    const Flags& f = notes_[i].flags;
    return f.has(WordClass::be) || f.has(WordClass::have) || f.has(WordClass::do_) ||
           f.has(WordClass::modal) || f.has(WordClass::had_or_would) || f.has(WordClass::got);
  }

  /// Auxiliaries and adverbs before token i; sets what they say.
  void read_auxiliaries(std::uint32_t i, Predicate& predicate) const {
    std::uint32_t at = i;
    bool nearest = true;
    bool have = false;
    bool would = false;
    predicate.span.first = i;
    for (int steps = 0; at > span_.first && steps < 7; ++steps) {
      const std::uint32_t k = at - 1;
      if (is_mark(passage_, k) || notes_[k].thing >= 0 || notes_[k].date >= 0) break;
      const Flags& f = notes_[k].flags;
      if (is_aux(k)) {
        if (nearest && (f.has(WordClass::be) || f.has(WordClass::got))) predicate.passive = true;
        if (f.has(WordClass::have)) have = true;
        if (f.has(WordClass::would) || f.has(WordClass::had_or_would)) would = true;
        if (f.has(WordClass::present_be) || f.has(WordClass::do_))
          predicate.present_tense = f.has(WordClass::present_be);
        nearest = false;
        predicate.span.first = k;
        at = k;
        // A contraction holds the subject.
        if (f.has(WordClass::we) || f.has(WordClass::they) || f.has(WordClass::it) || f.has(WordClass::exist))
          break;
        continue;
      }
      if (is_adverb(k)) {
        at = k;
        continue;
      }
      if (f.has(WordClass::to) && notes_[k].reach == 1) {
        predicate.infinitive = true;
        at = k;
        continue;
      }
      // "Did they", "was it": the subject stands between.
      if ((f.has(WordClass::they) || f.has(WordClass::we) || f.has(WordClass::it)) && k > span_.first &&
          is_aux(k - 1) && predicate.span.first == i) {
        at = k;
        continue;
      }
      break;
    }
    predicate.perfect_would = have && would;
  }

  Agent agent_before(std::uint32_t i) const {
    // A contraction among the auxiliaries is its own subject ("we'd").
    for (std::uint32_t k = i; k > span_.first && k + 8 > i; --k) {
      const std::uint32_t at = k - 1;
      if (is_mark(passage_, at)) {
        // "We, the two of us, took": look over one comma only when nothing was found yet.
        break;
      }
      if (notes_[at].thing >= 0) return Agent::none;
      const Flags& f = notes_[at].flags;
      if (f.has(WordClass::we)) return Agent::we;
      if (f.has(WordClass::it)) return Agent::it;
      if (f.has(WordClass::she)) return Agent::it;
      if (f.has(WordClass::they)) return Agent::them;
      if (f.has(WordClass::coordinator) && at > span_.first) {
        // "took off … and put": the agent of the verb before.
        for (auto p = found_.rbegin(); p != found_.rend(); ++p) {
          if (p->at < at) return p->agent;
        }
        return Agent::none;
      }
    }
    return Agent::none;
  }

  bool base_form_allowed(std::uint32_t i) const {
    std::uint32_t k = i;
    while (k > span_.first && is_adverb(k - 1)) --k;
    if (k == span_.first) return false;
    const std::uint32_t before = k - 1;
    if (is_mark(passage_, before)) return false;
    const Flags& f = notes_[before].flags;
    if (f.has(WordClass::we) || f.has(WordClass::they) || f.has(WordClass::modal) || f.has(WordClass::do_) ||
        f.has(WordClass::us) || f.has(WordClass::had_or_would) || f.has(WordClass::used_to) ||
        f.has(WordClass::them) || f.has(WordClass::it)) {
      return true;
    }
    if (f.has(WordClass::to) && notes_[before].reach == 1) return true;
    // "to take it down and put": a base form joined to a verb before it.
    if (f.has(WordClass::coordinator)) {
      return !found_.empty() && found_.back().kind == Predicate::Kind::verb && before > found_.back().at;
    }
    return before > span_.first && notes_[before - 1].reach == 2 &&
           notes_[before - 1].flags.has(WordClass::used_to);
  }

  bool noun_position(std::uint32_t i) const {
    if (i == span_.first) return false;
    const std::uint32_t before = i - 1;
    if (is_mark(passage_, before)) return false;
    const Flags& f = notes_[before].flags;
    if (notes_[before].number >= 0) return true;
    if (f.has(WordClass::determiner) && !f.has(WordClass::relative) && !f.has(WordClass::it) &&
        !f.has(WordClass::them) && !f.has(WordClass::this_)) {
      return true;
    }
    return f.has(WordClass::old) || f.has(WordClass::of) || f.has(WordClass::colour) ||
           f.has(WordClass::negative_determiner);
  }

  bool form_allowed(std::uint32_t i, std::uint8_t forms) const {
    const auto has_form = [forms](VerbForm form) { return (forms & static_cast<std::uint8_t>(form)) != 0; };
    if (noun_position(i)) return false;
    if (has_form(VerbForm::past) || has_form(VerbForm::participle)) {
      // "put", "set" and "cut" are past and base forms in one; after an article they were ruled out above.
      return true;
    }
    if (has_form(VerbForm::base)) return base_form_allowed(i);
    if (has_form(VerbForm::third)) {
      if (i == span_.first || is_mark(passage_, i - 1)) return false;
      const std::uint32_t k = i - 1;
      return notes_[k].thing >= 0 || has(k, WordClass::it) || has(k, WordClass::she) ||
             has(k, WordClass::they) || has(k, WordClass::relative);
    }
    return has_form(VerbForm::ing);
  }

  static constexpr std::uint32_t kNowhere = 0xFFFFFFFF;

  /// Where the particle of a row stands: right after the verb, apart within eight tokens, or before it.
  std::uint32_t particle_at(std::uint32_t i, const Verb& verb) const {
    const auto length = static_cast<std::uint32_t>(verb.particle_forms.size());
    if (length == 0) return i;
    const auto matches = [&](std::uint32_t k) {
      if (k + length > span_.past) return false;
      for (std::uint32_t n = 0; n < length; ++n) {
        if (passage_.tokens[k + n].form != verb.particle_forms[n]) return false;
      }
      return true;
    };
    // "Down came the chimney."
    if (length == 1 && verb.frame == VerbFrame::subject && i > span_.first && matches(i - 1) &&
        (i - 1 == span_.first || is_mark(passage_, i - 2) || has(i - 2, WordClass::coordinator))) {
      return i - 1;
    }
    for (std::uint32_t k = i + 1; k < std::min(span_.past, i + 10); ++k) {
      if (matches(k) && (k == i + 1 || (length == 1 && verb.frame == VerbFrame::object))) {
        if (is_particle(k, k + length, k == i + 1, verb.frame == VerbFrame::subject)) return k;
      }
      if (is_mark(passage_, k) || has(k, WordClass::be) || has(k, WordClass::have) ||
          has(k, WordClass::relative) || has(k, WordClass::when) || has(k, WordClass::subordinator) ||
          has(k, WordClass::modal)) {
        return kNowhere;
      }
      const WordInfo* info = notes_[k].info;
      const bool verb_here =
          info && notes_[k].thing < 0 && (info->verb_forms[0] & 4U) != 0 && k > i + 1 && !noun_position(k);
      if (verb_here) return kNowhere;
      if (k > i + 1 && (has(k, WordClass::at) || has(k, WordClass::to)) && notes_[k].thing < 0 &&
          !matches(k)) {
        // A prepositional phrase between verb and particle: "put on the deck off" does not happen.
        if (length == 1 && k + 1 < span_.past && matches(k + 1)) continue;
        return kNowhere;
      }
    }
    return kNowhere;
  }

  /// "in" and "on" are prepositions where a date or, apart from the verb, a noun phrase follows.
  bool is_grammar(std::uint32_t k) const {
    const Flags& f = notes_[k].flags;
    return (f.low != 0 || f.high != 0) && !f.has(WordClass::determiner);
  }
  bool is_particle(std::uint32_t k, std::uint32_t past, bool adjacent, bool subject_frame) const {
    if (notes_[k].date >= 0) return false;
    if (!has(k, WordClass::at) && !has(k, WordClass::to)) return true;
    if (past >= span_.past || is_mark(passage_, past)) return true;
    if (notes_[past].date >= 0) return false;
    // "It went in watches": of a verb without object a noun phrase follows a preposition.
    if (adjacent && subject_frame) return is_adverb(past) || is_grammar(past);
    if (adjacent) return true;
    return !has(past, WordClass::determiner) && notes_[past].thing < 0 && notes_[past].number < 0;
  }

  /// An object of interest, or a pronoun, right of the verb.
  bool object_after(std::uint32_t i) const {
    for (std::uint32_t k = i + 1; k < std::min(span_.past, i + 12); ++k) {
      if (passage_.tokens[k].kind == Token::Kind::mark && passage_.tokens[k].mark != ',') return false;
      if (has(k, WordClass::pronoun)) return true;
      if (notes_[k].thing >= 0 &&
          passage_.things[static_cast<std::size_t>(notes_[k].thing)].kind == ThingKind::equipment) {
        return true;
      }
    }
    return false;
  }

  /// A mark that ends what a verb can reach: any but a comma, and a comma before a conjunction.
  bool ends_reach(std::uint32_t k) const {
    if (!is_mark(passage_, k)) return false;
    if (passage_.tokens[k].mark != ',') return true;
    return k + 1 < span_.past && (has(k + 1, WordClass::coordinator) || has(k + 1, WordClass::subordinator) ||
                                  has(k + 1, WordClass::relative) || has(k + 1, WordClass::when));
  }

  bool thing_after(std::uint32_t i, std::uint32_t limit, bool with_role_to, bool with_role_from,
                   bool any_place) const {
    for (std::uint32_t k = i + 1; k < std::min(span_.past, i + limit); ++k) {
      if (ends_reach(k)) return false;
      const Flags& f = notes_[k].flags;
      if (any_place || with_role_to) {
        if (f.has(WordClass::in_place) || f.has(WordClass::in_there)) return true;
      }
      if (with_role_from && f.has(WordClass::from)) return true;
      if (notes_[k].thing < 0) continue;
      const Thing& thing = passage_.things[static_cast<std::size_t>(notes_[k].thing)];
      if (thing.kind == ThingKind::equipment) {
        if (any_place && thing.role == Role::relation) return true;
        continue;
      }
      if (with_role_to && (thing.role == Role::to || thing.role == Role::at)) return true;
      if (any_place && thing.role != Role::from && thing.role != Role::of) return true;
    }
    return false;
  }

  bool needs_met(std::uint32_t i, const Verb& verb, std::uint8_t forms, const Predicate& p) const {
    switch (verb.needs) {
      case VerbNeeds::nothing:
      case VerbNeeds::thing:
        return true;
      case VerbNeeds::seen:
        return object_after(i);
      case VerbNeeds::place:
        return thing_after(i, 16, false, false, true) || has(span_.first, WordClass::where);
      case VerbNeeds::toplace:
        return (thing_after(i, 16, true, false, false) || has(span_.first, WordClass::where)) &&
               (verb.frame == VerbFrame::subject || p.passive || object_after(i) || relative_before(i));
      case VerbNeeds::fromplace:
        return thing_after(i, 12, false, true, false);
      case VerbNeeds::move: {
        for (std::uint32_t k = i + 1; k < std::min(span_.past, i + 16); ++k) {
          if (notes_[k].thing < 0) continue;
          const Thing& thing = passage_.things[static_cast<std::size_t>(notes_[k].thing)];
          if (thing.kind != ThingKind::equipment && thing.role == Role::to) return true;
        }
        return false;
      }
      case VerbNeeds::weobject:
        return (forms & 12U) != 0 && !p.passive && direct_object(i) && !has(i + 1, WordClass::pronoun);
      case VerbNeeds::past:
        return goes_away(i, forms);
      case VerbNeeds::swap:
        return swap_word_after(i);
      case VerbNeeds::colour:
        return class_after(i, WordClass::colour);
      case VerbNeeds::name:
        return true;
      case VerbNeeds::location:
        return location_after(i) && who_can_be_somewhere(i);
    }
    return false;
  }

  /// "the bell they hung in the yard"
  bool relative_before(std::uint32_t i) const {
    bool agent = false;
    for (std::uint32_t k = i; k > span_.first && k + 5 > i; --k) {
      if (has(k - 1, WordClass::relative)) return true;
      if (notes_[k - 1].thing >= 0) return agent;
      agent = agent || has(k - 1, WordClass::they) || has(k - 1, WordClass::we);
    }
    return false;
  }

  /// Equipment or a pronoun right behind the verb, with nothing but words of its noun phrase between.
  bool direct_object(std::uint32_t i) const {
    for (std::uint32_t k = i + 1; k < std::min(span_.past, i + 7); ++k) {
      if (is_mark(passage_, k) || notes_[k].date >= 0) return false;
      if (has(k, WordClass::pronoun)) return true;
      if (notes_[k].thing >= 0) {
        return passage_.things[static_cast<std::size_t>(notes_[k].thing)].kind == ThingKind::equipment;
      }
      if (has(k, WordClass::at) || has(k, WordClass::to) || has(k, WordClass::from) ||
          has(k, WordClass::relation) || has(k, WordClass::coordinator) || has(k, WordClass::by) ||
          has(k, WordClass::with) || has(k, WordClass::when) || has(k, WordClass::be)) {
        return false;
      }
    }
    return false;
  }

  /// "it went in 1961", "the whaler went": no way to is named.
  bool goes_away(std::uint32_t i, std::uint8_t forms) const {
    // "it didn't come" as well as "it came".
    bool did = false;
    for (std::uint32_t k = i; k > span_.first && k + 3 > i; --k) did = did || has(k - 1, WordClass::do_);
    if ((forms & 4U) == 0 && !(did && (forms & 1U) != 0)) return false;
    if (i + 1 >= span_.past || is_mark(passage_, i + 1)) return true;
    if (notes_[i + 1].date >= 0) return true;
    const Flags& f = notes_[i + 1].flags;
    return f.has(WordClass::when) || f.has(WordClass::then) || f.has(WordClass::adverb) ||
           f.has(WordClass::coordinator) || f.has(WordClass::before) || f.has(WordClass::after) ||
           f.has(WordClass::subordinator) ||
           (f.has(WordClass::by) && i + 2 < span_.past && notes_[i + 2].date >= 0) ||
           ((f.has(WordClass::at) || f.has(WordClass::for_)) && i + 2 < span_.past &&
            (notes_[i + 2].date >= 0 || has(i + 2, WordClass::indefinite)));
  }

  bool swap_word_after(std::uint32_t i) const {
    for (std::uint32_t k = i + 1; k < span_.past; ++k) {
      if (has(k, WordClass::for_) || has(k, WordClass::with) || has(k, WordClass::to)) return true;
    }
    return false;
  }
  bool class_after(std::uint32_t i, WordClass c) const {
    for (std::uint32_t k = i + 1; k < std::min(span_.past, i + 10); ++k) {
      if (has(k, c)) return true;
    }
    return false;
  }
  /// Left of the verb stands a person, the site or a pronoun, and no equipment.
  bool who_can_be_somewhere(std::uint32_t i) const {
    for (std::uint32_t k = i; k > span_.first && k + 8 > i; --k) {
      if (is_mark(passage_, k - 1)) return false;
      if (notes_[k - 1].thing >= 0) {
        return passage_.things[static_cast<std::size_t>(notes_[k - 1].thing)].kind != ThingKind::equipment;
      }
      if (has(k - 1, WordClass::we) || has(k - 1, WordClass::she) || has(k - 1, WordClass::it)) return true;
    }
    return false;
  }

  bool location_after(std::uint32_t i) const {
    for (std::uint32_t k = i + 1; k < std::min(span_.past, i + 14); ++k) {
      if (passage_.tokens[k].kind == Token::Kind::mark && passage_.tokens[k].mark != ',') return false;
      if (notes_[k].thing < 0) continue;
      const Thing& thing = passage_.things[static_cast<std::size_t>(notes_[k].thing)];
      if (thing.kind == ThingKind::location || thing.location) return true;
    }
    return false;
  }

  /// Inside a cue that denies memory no verb states anything.
  bool in_memory_cue(std::uint32_t i) const {
    const std::int32_t cue = notes_[i].cue;
    return cue >= 0 && words_.cues[passage_.cues[static_cast<std::size_t>(cue)].cue].cue == CueClass::memory;
  }

  bool try_verb(std::uint32_t i) {
    const WordInfo& info = *notes_[i].info;
    if (in_memory_cue(i)) return false;
    for (int slot = 0; slot < 2; ++slot) {
      const std::uint8_t forms = info.verb_forms[slot];
      if (forms == 0 || !form_allowed(i, forms)) continue;
      Predicate predicate;
      predicate.at = i;
      read_auxiliaries(i, predicate);
      const bool participle = (forms & 8U) != 0;
      if (!participle) predicate.passive = false;
      for (const std::uint32_t row : words_.verb_groups[static_cast<std::size_t>(info.verb_group[slot])]) {
        const Verb& verb = words_.verbs[row];
        const std::uint32_t particle = particle_at(i, verb);
        if (particle == kNowhere) continue;
        if (verb.base == "have" || verb.base == "be") continue;  // Read below, as full verbs.
        if (predicate.passive && verb.frame == VerbFrame::subject && verb.kind != VerbKind::happened &&
            verb.kind != VerbKind::located) {
          continue;
        }
        const bool inverted = particle < i;
        if (verb.frame == VerbFrame::subject && !inverted && verb.kind != VerbKind::located &&
            direct_object(i))
          continue;
        // "We went up to the yard": people neither begin nor end.
        const bool of_things = verb.kind != VerbKind::located && verb.frame == VerbFrame::subject;
        if (of_things && !inverted && agent_before(i) == Agent::we) continue;
        if (!needs_met(i, verb, forms, predicate)) continue;
        predicate.verb = &verb;
        predicate.span.past = i + 1;
        predicate.inverted = inverted;
        if (!verb.particle_forms.empty() && !inverted) {
          const auto past = particle + static_cast<std::uint32_t>(verb.particle_forms.size());
          if (particle == i + 1) {
            predicate.span.past = past;
          } else {
            predicate.particle = particle;
          }
        }
        predicate.agent = agent_before(i);
        found_.push_back(predicate);
        return true;
      }
    }
    return false;
  }

  /// A participle of the lists, or any verb form, that makes the form of "to be" at i an auxiliary.
  bool auxiliary_of_verb(std::uint32_t i) const {
    for (std::uint32_t k = i + 1; k < std::min(span_.past, i + 6); ++k) {
      if (is_mark(passage_, k) || notes_[k].thing >= 0 || notes_[k].date >= 0) return false;
      for (const Predicate& p : found_) {
        if (p.at == k) return true;
      }
      if (notes_[k].info && (notes_[k].info->verb_forms[0] & 24U) != 0 && !has(k, WordClass::gone)) {
        return verb_will_be_read(k);
      }
      if (!is_adverb(k) && !is_aux(k)) return false;
    }
    return false;
  }

  bool verb_will_be_read(std::uint32_t k) const {
    Finder probe(passage_, words_, span_);
    return probe.try_verb(k);
  }

  /// ", what would it be,": set between marks, asking oneself.
  bool asks_oneself(std::uint32_t i) const {
    std::uint32_t begin = i;
    while (begin > span_.first && !is_mark(passage_, begin - 1)) --begin;
    std::uint32_t past = i;
    while (past < span_.past && !is_mark(passage_, past)) ++past;
    return begin > span_.first && past < span_.past && past - begin <= 6 &&
           has(begin, WordClass::question_word);
  }

  void try_be(std::uint32_t i) {
    if (asks_oneself(i)) return;
    // Only the last of "must have been", "used to be" is read; "was being" is an auxiliary.
    for (std::uint32_t k = i + 1; k < std::min(span_.past, i + 3); ++k) {
      if (has(k, WordClass::be) && !has(k, WordClass::exist) && !is_mark(passage_, i + 1)) return;
      if (!is_adverb(k)) break;
    }
    if (auxiliary_of_verb(i)) return;
    // "I'm", "he's": of people, unless a location of the site follows.
    const bool person = has(i, WordClass::we) || (has(i, WordClass::they) && !has(i, WordClass::them)) ||
                        (i > span_.first && has(i - 1, WordClass::we));
    if (person && !location_after(i)) return;
    Predicate predicate;
    predicate.at = i;
    read_auxiliaries(i, predicate);
    predicate.passive = false;
    predicate.present_tense = predicate.present_tense || has(i, WordClass::present_be);
    predicate.span.past = i + 1;
    predicate.kind = Predicate::Kind::be;
    // "There was", "was there", "there used to be", "there'd been".
    if (has(i, WordClass::exist)) {
      predicate.kind = Predicate::Kind::exist;
    } else {
      for (std::uint32_t k = i; k > span_.first && k + 7 > i; --k) {
        const std::uint32_t at = k - 1;
        if (has(at, WordClass::exist)) {
          predicate.kind = Predicate::Kind::exist;
          predicate.span.first = std::min(predicate.span.first, at);
          break;
        }
        if (is_mark(passage_, at) || notes_[at].thing >= 0 ||
            (!is_aux(at) && !is_adverb(at) && !has(at, WordClass::used_to) && !has(at, WordClass::to) &&
             notes_[at].cue < 0)) {
          break;
        }
      }
      if (predicate.kind == Predicate::Kind::be && i + 1 < span_.past && has(i + 1, WordClass::exist) &&
          i + 2 < span_.past && !is_mark(passage_, i + 2) && notes_[i + 2].date < 0) {
        predicate.kind = Predicate::Kind::exist;  // "Was there a radar".
        predicate.span.past = i + 2;
      }
    }
    predicate.agent = has(i, WordClass::we) ? Agent::we : has(i, WordClass::it) ? Agent::it : agent_before(i);
    found_.push_back(predicate);
  }

  void try_have(std::uint32_t i) {
    // A full verb only when a noun phrase of interest follows before any verb.
    if (has_it_somewhere(i)) {
      push_have(i);
      return;
    }
    if (has_part(i) && !direct_object(i)) {
      push_have(i);
      return;
    }
    bool contraction = has(i, WordClass::had_or_would);
    bool article = false;
    for (std::uint32_t k = i + 1; k < std::min(span_.past, i + 11); ++k) {
      if (is_mark(passage_, k) || has(k, WordClass::pronoun) || has(k, WordClass::we) ||
          has(k, WordClass::they))
        return;
      if (notes_[k].thing >= 0 || notes_[k].number >= 0) {
        if (notes_[k].thing >= 0 &&
            passage_.things[static_cast<std::size_t>(notes_[k].thing)].kind != ThingKind::equipment) {
          return;
        }
        if (contraction && !article && notes_[k].number < 0) return;
        push_have(i);
        return;
      }
      const Flags& f = notes_[k].flags;
      if (f.has(WordClass::determiner) || f.has(WordClass::negative_determiner)) {
        article = true;
        continue;
      }
      // "I'd liked that whistle": of a contraction the noun phrase follows at once.
      if (contraction && !article && !is_adverb(k)) return;
      if (f.has(WordClass::be) || f.has(WordClass::modal) || f.has(WordClass::relative) ||
          f.has(WordClass::when) || f.has(WordClass::to)) {
        return;
      }
      if (notes_[k].info && (notes_[k].info->verb_forms[0] & 12U) != 0 && !f.has(WordClass::got) && !article)
        return;
    }
  }

  /// "They had it up on the bridge": a pronoun, then a place, and no participle right after.
  bool has_it_somewhere(std::uint32_t i) const {
    if (i + 2 >= span_.past || !has(i + 1, WordClass::pronoun) || has(i, WordClass::had_or_would))
      return false;
    const WordInfo* next = notes_[i + 2].info;
    if (next && (next->verb_forms[0] & 8U) != 0) return false;
    for (std::uint32_t k = i + 2; k < std::min(span_.past, i + 9); ++k) {
      if (is_mark(passage_, k)) return false;
      if (notes_[k].thing < 0) continue;
      const Thing& thing = passage_.things[static_cast<std::size_t>(notes_[k].thing)];
      return thing.kind == ThingKind::place && (thing.role == Role::at || thing.role == Role::relation);
    }
    return false;
  }

  /// "It had a handle": of a thing or the pronoun for one, with something the lists do not have.
  bool has_part(std::uint32_t i) const {
    if (i + 2 >= span_.past || !has(i + 1, WordClass::indefinite) || i == span_.first) return false;
    return notes_[i - 1].thing >= 0 || has(i - 1, WordClass::it);
  }

  void push_have(std::uint32_t i) {
    Predicate predicate;
    predicate.kind = Predicate::Kind::have;
    predicate.at = i;
    read_auxiliaries(i, predicate);
    // "you can have the pipe"
    for (std::uint32_t k = predicate.span.first; k < i; ++k) {
      if (has(k, WordClass::modal) && !has(k, WordClass::would) && notes_[k].cue < 0) return;
    }
    predicate.passive = false;
    predicate.span.past = i + 1;
    const Flags& f = notes_[i].flags;
    predicate.agent = f.has(WordClass::we)     ? Agent::we
                      : f.has(WordClass::they) ? Agent::them
                                               : agent_before(i);
    found_.push_back(predicate);
  }

  const Passage& passage_;
  const Words& words_;
  const std::vector<Note>& notes_;
  Span span_;
  std::vector<Predicate> found_;
};

/// A piece of a sentence between cuts.
struct Piece {
  Span span;
  std::uint32_t predicates = 0;
  bool conjunction = false;  ///< Begins with a conjunction.
  bool strong = false;       ///< Cut by more than a comma.
};

std::vector<Piece> cut(const Passage& passage, Span span, const std::vector<Predicate>& predicates) {
  std::vector<Piece> pieces;
  Piece piece;
  piece.span = {span.first, span.first};
  const auto close = [&](std::uint32_t end, std::uint32_t next, bool conjunction, bool strong) {
    piece.span.past = end;
    if (!piece.span.empty()) pieces.push_back(piece);
    piece = Piece{};
    piece.span.first = next;
    piece.conjunction = conjunction;
    piece.strong = strong;
  };
  std::size_t next_predicate = 0;
  for (std::uint32_t i = span.first; i < span.past; ++i) {
    while (next_predicate < predicates.size() && predicates[next_predicate].at < i) ++next_predicate;
    if (is_mark(passage, i)) {
      const char mark = passage.tokens[i].mark;
      if (mark == '"' || mark == '\'') continue;
      close(i, i + 1, false, mark != ',');
      continue;
    }
    if (i == piece.span.first && !piece.conjunction) {
      const Flags& f = passage.notes[i].flags;
      piece.conjunction =
          f.has(WordClass::coordinator) || f.has(WordClass::subordinator) || f.has(WordClass::then);
    }
    if (i == piece.span.first || passage.notes[i].thing >= 0 || passage.notes[i].date >= 0 ||
        (passage.notes[i].cue >= 0 && !passage.notes[i].flags.has(WordClass::coordinator))) {
      continue;
    }
    const Flags& f = passage.notes[i].flags;
    const bool conjunction = f.has(WordClass::coordinator) || f.has(WordClass::subordinator) ||
                             f.has(WordClass::terminator) || f.has(WordClass::when) ||
                             f.has(WordClass::relative) || f.has(WordClass::if_) ||
                             (f.has(WordClass::where) && !f.has(WordClass::in_place));
    if (!conjunction || passage.notes[i].number >= 0) continue;
    // Cut only where a predicate stands on both sides, the next before another mark.
    const bool before = std::any_of(predicates.begin(), predicates.end(), [&](const Predicate& p) {
      return piece.span.holds(p.at) ? p.at < i : (p.at >= piece.span.first && p.at < i);
    });
    if (!before || next_predicate >= predicates.size()) continue;
    bool reachable = true;
    for (std::uint32_t k = i; k < predicates[next_predicate].at; ++k)
      reachable = reachable && !is_mark(passage, k);
    if (!reachable) continue;
    close(i, i, true, !f.has(WordClass::relative));
  }
  close(span.past, span.past, false, false);
  for (Piece& p : pieces) {
    for (const Predicate& predicate : predicates) p.predicates += p.span.holds(predicate.at);
  }
  return pieces;
}

bool has_thing(const Passage& passage, Span span) {
  for (std::uint32_t i = span.first; i < span.past; ++i) {
    if (passage.notes[i].thing >= 0) return true;
  }
  return false;
}

bool begins_relative(const Passage& passage, Span span) {
  const Flags& f = passage.notes[span.first].flags;
  return f.has(WordClass::relative) || f.has(WordClass::when);
}

/// Whether a piece only says "it was" and a date.
bool dates_only(const Passage& passage, Span span, const std::vector<Predicate>& predicates) {
  const Predicate* only = nullptr;
  for (const Predicate& p : predicates) {
    if (!span.holds(p.at)) continue;
    if (only || p.kind != Predicate::Kind::be) return false;
    only = &p;
  }
  if (!only || has_thing(passage, span)) return false;
  for (std::uint32_t k = only->span.past; k < span.past; ++k) {
    if (passage.notes[k].date >= 0) return true;
  }
  return false;
}

/// Joins pieces without predicate to a neighbour.
std::vector<Clause> join(const Passage& passage, const std::vector<Piece>& pieces,
                         const std::vector<Predicate>& predicates) {
  std::vector<Clause> clauses;
  constexpr std::size_t kNone = static_cast<std::size_t>(-1);
  std::size_t cleft = kNone;          // A clause that gives only a date.
  std::optional<std::uint32_t> open;  // First token of leading pieces still without predicate.
  bool contrast = false;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const Piece& piece = pieces[i];
    const bool more = i + 1 < pieces.size();
    if (piece.predicates == 0) {
      bool date_only = false;
      for (std::uint32_t k = piece.span.first; k < piece.span.past; ++k)
        date_only |= passage.notes[k].date >= 0;
      date_only = date_only && !has_thing(passage, piece.span);
      const bool later = std::any_of(pieces.begin() + static_cast<std::ptrdiff_t>(i), pieces.end(),
                                     [](const Piece& p) { return p.predicates > 0; });
      const bool forward =
          clauses.empty() || (later && more && (piece.conjunction || piece.strong) && date_only);
      if (forward && later) {
        if (!open) open = piece.span.first;
        contrast = contrast || passage.notes[piece.span.first].flags.has(WordClass::terminator);
        continue;
      }
      if (clauses.empty()) {
        Clause clause;
        clause.span = {open.value_or(piece.span.first), piece.span.past};
        clause.core = clause.span;
        clauses.push_back(clause);
        open.reset();
      } else {
        Clause& last = clauses.back();
        const bool whole = last.core.past + 1 >= last.span.past;
        last.span.past = piece.span.past;
        bool bears = has_thing(passage, piece.span);
        for (std::uint32_t k = piece.span.first; k < piece.span.past; ++k)
          bears = bears || passage.notes[k].date >= 0;
        if (whole && (bears || !piece.conjunction)) last.core.past = piece.span.past;
      }
      continue;
    }
    // "It was 1962, not 1963, that the derrick went": the date belongs to what follows.
    if (!clauses.empty() && cleft == clauses.size() - 1 &&
        begins_relative(passage, piece.span)) {
      clauses.back().span.past = clauses.back().core.past = piece.span.past;
      cleft = kNone;
      continue;
    }
    Clause clause;
    clause.span = {open.value_or(piece.span.first), piece.span.past};
    clause.core = clause.span;
    open.reset();
    if (dates_only(passage, piece.span, predicates)) cleft = clauses.size();
    clause.contrast = contrast || passage.notes[piece.span.first].flags.has(WordClass::terminator);
    contrast = false;
    clauses.push_back(clause);
  }
  return clauses;
}

void set_windows(const Passage& passage, SentenceReading& reading) {
  std::uint32_t p = 0;
  for (std::uint32_t c = 0; c < reading.clauses.size(); ++c) {
    Clause& clause = reading.clauses[c];
    clause.first_predicate = p;
    while (p < reading.predicates.size() && reading.predicates[p].at < clause.span.past) {
      Predicate& predicate = reading.predicates[p];
      predicate.clause = c;
      predicate.left = {clause.span.first, std::max(clause.span.first, predicate.span.first)};
      if (p > clause.first_predicate) predicate.left.first = reading.predicates[p - 1].span.past;
      if (predicate.left.past < predicate.left.first) predicate.left.past = predicate.left.first;
      predicate.right = {predicate.span.past, clause.span.past};
      const bool next_inside =
          p + 1 < reading.predicates.size() && reading.predicates[p + 1].at < clause.span.past;
      if (next_inside)
        predicate.right.past = std::max(predicate.right.first, reading.predicates[p + 1].span.first);
      ++p;
    }
    clause.past_predicate = p;
    // "and put a crane on": a conjunction right before the verb.
    if (c > 0 && clause.past_predicate > clause.first_predicate) {
      const Predicate& first = reading.predicates[clause.first_predicate];
      std::uint32_t at = clause.span.first;
      const Flags& f = passage.notes[at].flags;
      const bool joined = f.has(WordClass::coordinator) && !f.has(WordClass::terminator);
      while (at < first.span.first && (passage.notes[at].flags.has(WordClass::coordinator) ||
                                       passage.notes[at].flags.has(WordClass::then) ||
                                       passage.notes[at].flags.has(WordClass::adverb))) {
        ++at;
      }
      clause.own_subject = !(joined && at >= first.span.first);
      const Flags& opening = passage.notes[clause.span.first].flags;
      clause.complement = opening.has(WordClass::relative) && opening.has(WordClass::this_);
      clause.relative = opening.has(WordClass::relative);
    }
    for (std::uint32_t k = clause.span.first; k < clause.span.past; ++k) {
      if (passage.notes[k].flags.has(WordClass::if_) && passage.notes[k].cue < 0) clause.conditional = true;
    }
  }
}

}  // namespace

std::optional<std::uint32_t> negative_in(const Passage& passage, Span span) {
  std::optional<std::uint32_t> found;
  for (std::uint32_t i = span.first; i < span.past; ++i) {
    const Note& note = passage.notes[i];
    if (note.thing >= 0 || note.date >= 0) continue;
    if (note.flags.has(WordClass::terminator) && found) found.reset();
    if (note.flags.has(WordClass::negative) && note.cue < 0 && !note.flags.has(WordClass::terminator))
      found = i;
  }
  return found;
}

SentenceReading read_sentence(Passage& passage, const Words& words, Span span) {
  SentenceReading reading;
  reading.span = span;
  reading.predicates = Finder(passage, words, span).run();
  // "took off the derrick": a particle gives no role.
  for (Thing& thing : passage.things) {
    if (thing.kind != ThingKind::equipment || thing.role_at < 0 || !span.holds(thing.span.first)) continue;
    const auto at = static_cast<std::uint32_t>(thing.role_at);
    for (const Predicate& p : reading.predicates) {
      if (p.span.holds(at) && at != p.at) thing.role = Role::none;
    }
  }
  for (std::uint32_t i = span.first; i < span.past; ++i) {
    if (passage.tokens[i].kind == Token::Kind::mark && passage.tokens[i].mark == '?') reading.question = true;
  }
  reading.clauses = join(passage, cut(passage, span, reading.predicates), reading.predicates);
  set_windows(passage, reading);
  for (Predicate& predicate : reading.predicates) {
    const Span inside{predicate.span.first, predicate.span.past};
    Span before = predicate.left;
    // Only the last stretch before the verb without a mark.
    for (std::uint32_t k = before.past; k > before.first; --k) {
      if (is_mark(passage, k - 1)) {
        before.first = k;
        break;
      }
    }
    predicate.negated = negative_in(passage, inside).has_value() || negative_in(passage, before).has_value();
  }
  return reading;
}

}  // namespace witnessmark::claims
