#pragma once
#include <cstdint>

#include "language/clauses/sentence_reading.h"

namespace witnessmark::claims {

/// What stands around a verb in one sentence: the questions a verb row asks of its neighbours.
class VerbSurroundings {
 public:
  VerbSurroundings(const Passage& passage, const Words& words, Span span)
      : passage_(passage), words_(words), notes_(passage.notes), span_(span) {}

  /// False outside the sentence.
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

  /// Whether the words before make a noun of it: an article, a number, "of", "old".
  bool noun_position(std::uint32_t i) const;

  static constexpr std::uint32_t kNowhere = 0xFFFFFFFF;
  static constexpr std::uint32_t kParticleReach = 10;  ///< Tokens.

  /// Where the particle of a row stands: right after the verb, apart within kParticleReach, or before it.
  /// kNowhere when there is none; the verb's own token for a row without one.
  std::uint32_t particle_at(std::uint32_t i, const Verb& verb) const;

  /// A word of grammar that opens no noun phrase.
  bool is_grammar(std::uint32_t k) const {
    return notes_[k].flags.any() && !notes_[k].flags.has(WordClass::determiner);
  }

  /// "in" and "on" are prepositions where a date or, apart from the verb, a noun phrase follows.
  bool is_particle(std::uint32_t k, std::uint32_t past, bool adjacent, bool subject_frame) const;

  /// An object of interest, or a pronoun, right of the verb.
  bool object_after(std::uint32_t i) const;

  /// "Never saw one", "never saw any there".
  bool never_any(std::uint32_t i) const;

  /// A mark that ends what a verb can reach: any but a comma, and a comma before a conjunction.
  bool ends_reach(std::uint32_t k) const;

  /// Of the next tokens, fewer than limit: a place or equipment in the role that is asked for.
  bool thing_after(std::uint32_t i, std::uint32_t limit, bool with_role_to, bool with_role_from,
                   bool any_place) const;

  /// Whether what the row needs stands beside the verb.
  bool needs_met(std::uint32_t i, const Verb& verb, std::uint8_t forms, const Predicate& p) const;

  /// "the bell they hung in the yard"
  bool relative_before(std::uint32_t i) const;

  /// Equipment or a pronoun right behind the verb, with nothing but words of its noun phrase between.
  bool direct_object(std::uint32_t i) const;

  /// "The new boat was hoisted": what is called new comes.
  bool new_thing_beside(std::uint32_t i) const;

  /// A thing, a place or a pronoun right behind the verb: what is done is done to it.
  bool acts_on(std::uint32_t i) const;

  /// The token behind a verb and its particle.
  std::uint32_t past_verb(std::uint32_t i, const Verb& verb) const;

  /// "I joined", "we signed on": the narrator or a person of the list.
  bool agent_can_join(std::uint32_t i) const;

  /// "They" do it.
  bool others_act(std::uint32_t i) const;

  /// The site, "her", a date or nothing more behind the verb: not "joined the union".
  bool boards_after(std::uint32_t i) const;

  /// The date at a token is a length of time.
  bool lasts(std::uint32_t i) const {
    return passage_.dates[static_cast<std::size_t>(notes_[i].date)].type == TimexType::duration;
  }

  /// A date begins at a token, or behind the article there.
  bool dated_from(std::uint32_t i) const;

  /// "it went in 1961", "the whaler went": no way to is named.
  bool goes_away(std::uint32_t i, std::uint8_t forms) const;

  /// "for a turbine", "with the crane": equipment behind a preposition, in the verb's own clause.
  bool swap_word_after(std::uint32_t i) const;

  /// A word of the class within a few words, in the verb's own clause.
  bool class_after(std::uint32_t i, WordClass c) const;

  /// Left of the verb stands a person, the site or a pronoun, and no equipment.
  bool who_can_be_somewhere(std::uint32_t i) const;

  /// "That made twenty-one cylinders."
  bool counted_after(std::uint32_t i) const;

  /// A location of the itinerary, over commas.
  bool location_after(std::uint32_t i) const;

  /// "We stopped the lens": equipment by its name, right behind the verb.
  bool named_object(std::uint32_t i) const;

  /// "They put the bulb in the lens": equipment by its name, then in, on or into anything definite.
  bool put_somewhere(std::uint32_t i) const;

  /// "It stood out behind the house", "lying in the nettles": a place in words of no list.
  bool beside_something(std::uint32_t i) const;

  /// "The range drew": equipment by its name as the subject.
  bool equipment_right_before(std::uint32_t i) const;

  /// People as the subject right before a verb: "we", "Dad", a person of the list, "she" (who may be the
  /// vessel).
  bool somebody_before(std::uint32_t i) const;

  /// A place of the lists behind a preposition, within a few words.
  bool place_behind(std::uint32_t i) const;

  /// Inside a cue that denies memory or hedges ("There was, I don't know, a locker") no verb states anything.
  bool in_cue_of_doubt(std::uint32_t i) const;

  /// ", what would it be,": set between marks, asking oneself.
  bool asks_oneself(std::uint32_t i) const;

  /// "They had it up on the bridge": a pronoun, then a place, and no participle right after.
  bool has_it_somewhere(std::uint32_t i) const;

  /// "We had one."
  bool has_one(std::uint32_t i) const;

  /// "They'd a big table in there": something of no list, and a place.
  bool has_something_somewhere(std::uint32_t i) const;

  /// "It had a handle": of a thing or the pronoun for one, with something the lists do not have.
  bool has_part(std::uint32_t i) const;

 protected:
  bool is_mark(std::uint32_t i) const { return passage_.is_mark(i); }

  const Passage& passage_;
  const Words& words_;
  const std::vector<Note>& notes_;
  Span span_;
};

}  // namespace witnessmark::claims
