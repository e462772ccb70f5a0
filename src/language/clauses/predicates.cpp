// Finding the verbs that matter.
//
// A word is taken for a verb when its form allows it and its neighbours do: past forms nearly always, base
// forms only after a pronoun, an auxiliary, "to" or another verb; never as part of a list term, date or
// number, never after an article. Auxiliaries before it say whether it is passive. Particles may stand apart
// ("took the derrick off"). Of the rows of a verb the first counts whose particle and needs are met.
//
// A form of "to be" or "to have" counts as a full verb when no verb of the lists follows it as a participle.
#include "language/clauses/verb_surroundings.h"
#include "language/clauses/whereabouts.h"

namespace witnessmark::claims {
namespace {

class Finder : private VerbSurroundings {
 public:
  using VerbSurroundings::VerbSurroundings;

  std::vector<Predicate> run() {
    for (std::uint32_t i = span_.first; i < span_.past; ++i) {
      const Note& note = notes_[i];
      if (note.thing >= 0 && try_contraction(i)) continue;
      if (note.thing >= 0 || note.date >= 0 || is_mark(i)) continue;
      const bool verb = note.info && (note.info->verb_forms[0] | note.info->verb_forms[1]) != 0;
      if (has(i, WordClass::got) && has_got(i)) continue;
      if (verb && try_verb(i)) continue;
      if (try_any(i) || try_ability(i)) continue;
      if (!note.info) continue;
      if (note.flags.has(WordClass::be)) try_be(i);
      if (note.flags.has(WordClass::have) || note.flags.has(WordClass::had_or_would)) try_have(i);
    }
    // "We found the winch jammed", "the winch ordered in 1950 never came": a participle beside another verb.
    for (std::size_t p = 0; p < found_.size(); ++p) {
      const bool beside = (p > 0 && same_stretch(found_[p - 1].at, found_[p].at)) ||
                          (p + 1 < found_.size() && same_stretch(found_[p].at, found_[p + 1].at));
      if (found_[p].verb == &words_.any_does && beside)
        found_.erase(found_.begin() + static_cast<std::ptrdiff_t>(p--));
    }
    return std::move(found_);
  }

 private:
  /// Nothing that could part two clauses stands between two verbs.
  bool same_stretch(std::uint32_t a, std::uint32_t b) const {
    for (std::uint32_t i = a + 1; i < b; ++i) {
      if (is_mark(i) || has(i, WordClass::coordinator) || has(i, WordClass::subordinator) ||
          has(i, WordClass::relative) || has(i, WordClass::when)) {
        return false;
      }
    }
    return true;
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
      if (is_mark(k) || notes_[k].thing >= 0 || notes_[k].date >= 0) break;
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
      if (is_mark(at)) break;
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
    return noun_before(i) ? Agent::other : Agent::none;
  }

  /// "The doctor was in the cabin": a definite noun of no list right before the verb.
  bool noun_before(std::uint32_t i) const {
    constexpr std::uint32_t kLongest = 4;
    std::uint32_t k = i;
    while (k > span_.first && (is_adverb(k - 1) || is_aux(k - 1))) --k;
    const std::uint32_t past = k;
    const auto unlisted = [&](std::uint32_t at) {
      const Note& note = notes_[at];
      return !note.flags.any() && note.thing < 0 && note.date < 0 && note.number < 0 && note.cue < 0 &&
             !is_mark(at);
    };
    while (k > span_.first && past - k < kLongest &&
           (unlisted(k - 1) || (k < past && (has(k - 1, WordClass::quality) || has(k - 1, WordClass::old)))))
      --k;
    return k < past && k > span_.first && has(k - 1, WordClass::determiner);
  }

  bool base_form_allowed(std::uint32_t i) const {
    std::uint32_t k = i;
    while (k > span_.first && is_adverb(k - 1)) --k;
    if (k == span_.first) return false;
    const std::uint32_t before = k - 1;
    if (is_mark(before)) return false;
    // "When did the winch go?"
    if (const Thing* thing = passage_.thing_at(before))
      return thing->head > span_.first && has(thing->head - 1, WordClass::do_);
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

  bool form_allowed(std::uint32_t i, std::uint8_t forms) const {
    const auto has_form = [forms](VerbForm form) { return (forms & static_cast<std::uint8_t>(form)) != 0; };
    if (noun_position(i)) return false;
    if (has_form(VerbForm::past) || has_form(VerbForm::participle)) {
      // "put", "set" and "cut" are past and base forms in one; after an article they were ruled out above.
      return true;
    }
    if (has_form(VerbForm::base)) return base_form_allowed(i);
    if (has_form(VerbForm::third)) {
      if (i == span_.first || is_mark(i - 1)) return false;
      const std::uint32_t k = i - 1;
      return notes_[k].thing >= 0 || has(k, WordClass::it) || has(k, WordClass::she) ||
             has(k, WordClass::they) || has(k, WordClass::relative);
    }
    return has_form(VerbForm::ing);
  }

  bool try_verb(std::uint32_t i) {
    const WordInfo& info = *notes_[i].info;
    if (in_cue_of_doubt(i)) return false;
    for (int slot = 0; slot < 2; ++slot) {
      const std::uint8_t forms = info.verb_forms[slot];
      if (forms == 0 || !form_allowed(i, forms)) continue;
      Predicate predicate;
      predicate.at = i;
      read_auxiliaries(i, predicate);
      const bool participle = (forms & 8U) != 0;
      if (!participle) predicate.passive = false;
      const std::uint64_t near = forms_near(i);
      for (const std::uint32_t row : words_.verb_groups[static_cast<std::size_t>(info.verb_group[slot])]) {
        const Verb& verb = words_.verbs[row];
        // Most particles of a verb of many rows are not there.
        if (!verb.particle_forms.empty() && (near & form_bit(verb.particle_forms.front())) == 0) continue;
        const std::uint32_t particle = particle_at(i, verb);
        if (particle == kNowhere) continue;
        if (verb.base == "have" || verb.base == "be") continue;  // Read below, as full verbs.
        if (predicate.passive && verb.frame == VerbFrame::subject && verb.kind != VerbKind::happened &&
            verb.kind != VerbKind::located && verb.kind != VerbKind::does) {
          continue;
        }
        const bool inverted = particle < i;
        // "made way for a winch": what follows an adjacent particle is no object.
        const bool apart = particle != i + 1;
        if (verb.frame == VerbFrame::subject && !inverted && verb.kind != VerbKind::located &&
            verb.kind != VerbKind::takeover && apart && direct_object(i)) {
          continue;
        }
        // "We went up to the yard": people neither begin nor end.
        const bool of_things = verb.kind != VerbKind::located && verb.frame == VerbFrame::subject;
        if (verb.kind == VerbKind::does && predicate.passive) continue;
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

  /// A bit for each word form from the one before token i to the last a particle may stand at.
  std::uint64_t forms_near(std::uint32_t i) const {
    std::uint64_t bits = 0;
    for (std::uint32_t k = i > span_.first ? i - 1 : i; k < std::min(span_.past, i + kParticleReach); ++k)
      bits |= form_bit(passage_.tokens[k].form);
    return bits;
  }
  static std::uint64_t form_bit(std::uint64_t form) { return std::uint64_t{1} << (form & 63); }

  /// "The drum's still there": a name with "is" contracted to it, where what follows is no noun.
  bool try_contraction(std::uint32_t i) {
    const Thing& thing = *passage_.thing_at(i);
    const std::string_view word = passage_.words({i, i + 1});
    if (i + 1 != thing.span.past || thing.kind != ThingKind::equipment ||
        !(word.ends_with("'s") || word.ends_with("\u2019s")))
      return false;
    const bool says = has(i + 1, WordClass::still) || has(i + 1, WordClass::gone) ||
                      has(i + 1, WordClass::there) || has(i + 1, WordClass::in_there) ||
                      has(i + 1, WordClass::no_longer) || has(i + 1, WordClass::already);
    if (!says) return false;
    Predicate predicate;
    predicate.kind = Predicate::Kind::be;
    predicate.at = i;
    predicate.span = {i + 1, i + 1};
    predicate.present_tense = true;
    found_.push_back(predicate);
    return true;
  }

  /// "They'd got a long table": what somebody had.
  bool has_got(std::uint32_t i) {
    if (i == span_.first || !has(i + 1, WordClass::determiner)) return false;
    std::uint32_t k = i - 1;
    while (k > span_.first && is_adverb(k)) --k;
    if (!has(k, WordClass::have) && !has(k, WordClass::had_or_would)) return false;
    const std::size_t before = found_.size();
    try_have(i);
    return found_.size() > before;
  }

  /// A past form, of any verb but those of thinking and saying.
  bool any_past(std::uint32_t i) const {
    const Note& note = notes_[i];
    const bool listed = has(i, WordClass::past_form) || (note.info && (note.info->verb_forms[0] & 4U) != 0);
    if (!listed) {
      Flags others = note.flags;
      others.clear(WordClass::journey);
      others.clear(WordClass::leaving);
      if (note.info &&
          (note.info->verb_forms[0] != 0 || others.any() || note.info->cue >= 0 || note.info->quantity >= 0))
        return false;
      // "He showed Alfred the winch": a name.
      if (passage_.capitalised(i) && i > span_.first) return false;
      if (!words_.is_past(passage_.words({i, i + 1}))) return false;
    }
    return note.cue < 0 && !noun_position(i) && !has(i, WordClass::mental) && !is_aux(i) &&
           !has(i, WordClass::got);
  }

  /// A past form of no row that fits: "they greased it", "it was varnished", "Dad moved up to the rocks".
  bool try_any(std::uint32_t i) {
    if (!any_past(i)) return false;
    Predicate predicate;
    predicate.at = i;
    read_auxiliaries(i, predicate);
    predicate.agent = agent_before(i);
    predicate.span.past = i + 1;
    const bool known = notes_[i].info && (notes_[i].info->verb_forms[0] & 4U) != 0;
    const bool goes = has(i, WordClass::journey) || has(i, WordClass::leaving);
    if (!known && (predicate.passive || acts_on(i))) {
      predicate.verb = &words_.any_doing;
    } else if (known && !goes && !predicate.passive && named_object(i)) {
      predicate.verb = &words_.any_doing;
    } else if (!goes && !predicate.passive && equipment_right_before(predicate.span.first)) {
      predicate.verb = &words_.any_does;
    } else if (somebody_before(predicate.span.first) &&
               (place_behind(i + 1) || (goes && !destination_after(passage_, span_, i + 1).empty()))) {
      predicate.verb = &words_.any_going;
    } else {
      return false;
    }
    found_.push_back(predicate);
    return true;
  }

  /// "The derrick could lift ten tons", "the horn would shake the cups": what a thing did whenever it did.
  bool try_ability(std::uint32_t i) {
    const Note& note = notes_[i];
    if (i < span_.first + 2 || (note.flags.any() && !has(i, WordClass::journey)) || note.cue >= 0 ||
        note.number >= 0)
      return false;
    std::uint32_t k = i;
    while (k > span_.first && is_adverb(k - 1)) --k;
    if (k == span_.first || (!has(k - 1, WordClass::modal) && !has(k - 1, WordClass::would))) return false;
    const std::uint32_t modal = k - 1;
    if (notes_[modal].cue >= 0 || modal == span_.first) return false;
    if (!equipment_right_before(modal)) return false;  // "It would freeze hard" is as often the weather.
    Predicate predicate;
    predicate.at = i;
    read_auxiliaries(i, predicate);
    predicate.span.past = i + 1;
    predicate.verb = &words_.any_does;
    found_.push_back(predicate);
    return true;
  }

  /// A participle of the lists, or any verb form, that makes the form of "to be" at i an auxiliary.
  bool auxiliary_of_verb(std::uint32_t i) const {
    for (std::uint32_t k = i + 1; k < std::min(span_.past, i + 6); ++k) {
      if (is_mark(k) || notes_[k].thing >= 0 || notes_[k].date >= 0) return false;
      for (const Predicate& p : found_) {
        if (p.at == k) return true;
      }
      if (notes_[k].info && (notes_[k].info->verb_forms[0] & 24U) != 0 && !has(k, WordClass::gone)) {
        return verb_will_be_read(k);
      }
      if (!notes_[k].flags.any() && Finder(passage_, words_, span_).try_any(k)) return true;
      if (!is_adverb(k) && !is_aux(k)) return false;
    }
    return false;
  }

  bool verb_will_be_read(std::uint32_t k) const {
    Finder probe(passage_, words_, span_);
    return probe.try_verb(k);
  }

  void try_be(std::uint32_t i) {
    if (asks_oneself(i)) return;
    // Only the last of "must have been", "used to be" is read; "was being" is an auxiliary.
    for (std::uint32_t k = i + 1; k < std::min(span_.past, i + 3); ++k) {
      if (has(k, WordClass::be) && !has(k, WordClass::exist) && !is_mark(i + 1)) return;
      if (!is_adverb(k)) break;
    }
    if (auxiliary_of_verb(i)) return;
    // "I'm", "he's": of people, unless a location of the site follows.
    const bool person = has(i, WordClass::we) || (has(i, WordClass::they) && !has(i, WordClass::them)) ||
                        (i > span_.first && has(i - 1, WordClass::we));
    if (person && !location_after(i) && whereabouts_after(passage_, span_, i + 1).empty() &&
        !place_behind(i + 1))
      return;
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
        if (is_mark(at) || notes_[at].thing >= 0 ||
            (!is_aux(at) && !is_adverb(at) && !has(at, WordClass::used_to) && !has(at, WordClass::to) &&
             notes_[at].cue < 0)) {
          break;
        }
      }
      // "The winch was there when I came" says of what was named that it was there.
      const bool named_before = i > span_.first && (notes_[i - 1].thing >= 0 || has(i - 1, WordClass::it) ||
                                                    has(i - 1, WordClass::this_));
      if (predicate.kind == Predicate::Kind::be && !named_before && i + 1 < span_.past &&
          has(i + 1, WordClass::exist) && i + 2 < span_.past && !is_mark(i + 2) && notes_[i + 2].date < 0) {
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
    if (has_one(i) || has_something_somewhere(i)) {
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
      if (is_mark(k) || has(k, WordClass::pronoun) || has(k, WordClass::we) || has(k, WordClass::they))
        return;
      if (notes_[k].thing >= 0 || notes_[k].number >= 0) {
        if (notes_[k].thing >= 0 && !passage_.names(k, ThingKind::equipment)) {
          // "I'd number three": of people only.
          if (has(i, WordClass::we) || somebody_before(i)) push_have(i);
          return;
        }
        if (contraction && !article && notes_[k].number < 0 && k > i + 1) return;
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
                      : f.has(WordClass::it)   ? Agent::it
                      : f.has(WordClass::they) ? Agent::them
                                               : agent_before(i);
    found_.push_back(predicate);
  }

  std::vector<Predicate> found_;
};

}  // namespace

std::vector<Predicate> find_predicates(const Passage& passage, const Words& words, Span span) {
  return Finder(passage, words, span).run();
}

}  // namespace witnessmark::claims
