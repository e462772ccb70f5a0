#include "language/claims/write_claim.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

namespace witnessmark::claims {

const AuthorityList& list_of(const Finders& finders, ThingKind kind) {
  switch (kind) {
    case ThingKind::equipment:
      return finders.equipment->list();
    case ThingKind::place:
      return finders.places->list();
    case ThingKind::location:
      return finders.locations->list();
    case ThingKind::person:
      return finders.persons->list();
  }
  return finders.equipment->list();
}

namespace {

MentionKind mention_kind(ThingKind kind) {
  return kind == ThingKind::equipment || kind == ThingKind::person ? MentionKind::equipment
                                                                   : MentionKind::place;
}

ClaimTime time_of(const Draft& draft, const DatePolicy& policy) {
  ClaimTime when;
  if (!draft.date) return when;
  const DateExpression& expression = draft.date->expression;
  when.dated.written = expression.text;
  when.dated.value = expression.edtf;
  if (expression.edtf) when.period = to_period(*expression.edtf, policy);
  const bool interval = expression.edtf && std::holds_alternative<EdtfInterval>(expression.edtf->value);
  const bool state = draft.statement == Statement::present || draft.statement == Statement::absent ||
                     draft.statement == Statement::located;
  when.reading = interval && state ? Reading::throughout : Reading::within;
  when.rule = expression.rule;
  if (draft.throughout && state) {
    when.reading = Reading::throughout;
    when.rule = kThroughout;
  }
  when.anchor = expression.anchor;
  when.carried = draft.date->carried;
  when.alternatives = expression.alternatives;
  return when;
}

void add_referent(const Referent& referent, const std::string& key, std::vector<Mention>& mentions) {
  Mention mention;
  mention.kind = mention_kind(referent.kind);
  mention.range = referent.range;
  mention.value = key;
  mention.rule = referent.carried ? "carried from the talk before" : "list";
  mention.near_match = referent.near_match;
  mentions.push_back(std::move(mention));
}

std::string reason_of(const Draft& draft) {
  std::string reason;
  constexpr std::size_t kUsual = 160;
  reason.reserve(kUsual);
  const auto part = [&reason](std::string_view before, std::string_view words, std::string_view after = "") {
    if (!reason.empty()) reason += " + ";
    reason.append(before).append("'").append(words).append("'").append(after);
  };
  const auto named = [&](std::string_view kind, const Referent& referent) {
    part(kind, referent.words, referent.carried ? " (carried)" : "");
    if (referent.near_match) reason += " (a likely misspelling)";
  };
  if (draft.subject)
    named(draft.subject->kind == ThingKind::person ? "person " : "equipment ", *draft.subject);
  if (!draft.subject && !draft.subject_words.empty()) part("", draft.subject_words, " (on no list)");
  if (!draft.action.empty()) part("", draft.action);
  if (draft.place) named(draft.place->kind == ThingKind::location ? "location " : "place ", *draft.place);
  if (!draft.place && !draft.place_words.empty()) part("", draft.place_words);
  if (draft.quantity) part("", draft.quantity->written);
  if (draft.date) part("", draft.date->expression.text, draft.date->carried ? " (carried)" : "");
  if (draft.led) {
    reason += "; the interviewer said it, the narrator agreed";
  } else if (draft.by_weights) {
    reason += " in these words";
  } else if (draft.fragment) {
    reason += " without a verb";
  } else if (draft.elliptical) {
    reason += "; repeats what was said before";
  } else {
    reason += " in one clause";
  }
  if (draft.date_led) reason += "; the interviewer gave the date";
  for (const std::string& because : draft.because) reason.append("; ").append(because);
  if (draft.withdrawn) reason += "; taken back in the same breath";
  return reason;
}

/// The likeliest first; without weights full and firm claims. What was taken back comes last.
int rank_of(const Draft& draft) {
  constexpr double kUnlikeliest = 100;
  const int behind = draft.withdrawn ? kRankOfTakenBack : 0;
  if (draft.odds) return static_cast<int>(kUnlikeliest / (1 + std::exp(*draft.odds))) + behind;
  int rank = 10;
  if (!draft.subject) rank += 20;
  if (!draft.date) rank += 10;
  if (!draft.place) rank += 5;
  if (draft.subject && draft.subject->carried) rank += 10;
  if (draft.subject && draft.subject->near_match) rank += 20;
  if (draft.subject && draft.subject->terms.size() > 1) rank += 5;
  if (draft.fragment || draft.elliptical) rank += 5;
  if (draft.statement == Statement::attribute) rank += 5;
  return rank + behind;
}

}  // namespace

void Writer::write(const Draft& draft, std::vector<Claim>& claims) const {
  const bool whereabouts = draft.statement == Statement::located && !draft.place_words.empty();
  if (!draft.subject && !draft.place && !whereabouts) return;
  Claim claim;
  claim.interview = context.interview ? context.interview->key : std::string();
  claim.speaker = speaker.person.empty() ? utterance.speaker : speaker.person;
  claim.knower = draft.knower;
  claim.statement = draft.statement;
  claim.when = time_of(draft, context.policy);
  claim.quantity = draft.quantity;
  claim.attribute = draft.attribute;
  claim.basis = draft.basis;
  claim.firmness = draft.firmness;
  claim.polarity = draft.polarity;
  claim.led = draft.led || draft.date_led;
  claim.withdrawn = draft.withdrawn;
  claim.quotes = draft.quotes;
  claim.reason = reason_of(draft);
  claim.rank = rank_of(draft);
  const std::size_t subjects = draft.subject ? draft.subject->terms.size() : 1;
  const std::size_t places = draft.place ? draft.place->terms.size() : 1;
  for (std::size_t s = 0; s < subjects; ++s) {
    for (std::size_t p = 0; p < places; ++p) {
      Claim made = s + 1 < subjects || p + 1 < places ? claim : std::move(claim);
      if (draft.subject) {
        made.subject = list_of(finders, draft.subject->kind).terms()[draft.subject->terms[s]].key;
        made.subject_words = draft.subject->words;
        made.subject_carried = draft.subject->carried;
        add_referent(*draft.subject, made.subject, made.mentions);
      }
      if (!draft.subject) made.subject_words = draft.subject_words;
      made.place_words = draft.place_words;
      if (draft.place) {
        const std::string& key = list_of(finders, draft.place->kind).terms()[draft.place->terms[p]].key;
        if (draft.place->kind == ThingKind::place) made.place = key;
        made.place_words = draft.place->words;
        made.place_carried = draft.place->carried;
        add_referent(*draft.place, key, made.mentions);
      }
      made.mentions.insert(made.mentions.end(), draft.cues.begin(), draft.cues.end());
      claims.push_back(std::move(made));
    }
  }
}

void number_ordinals(std::vector<Claim>& claims) {
  std::map<std::tuple<std::int64_t, std::int64_t, Statement>, int> next;
  for (Claim& claim : claims) {
    const CodePointRange& quote = claim.quotes.front();
    // Nearly always behind all others.
    const auto at = next.try_emplace(next.end(), {quote.begin.value, quote.end.value, claim.statement}, 0);
    claim.ordinal = at->second++;
  }
}

void collect_mentions(const Passage& passage, const Positions& positions, const Finders& finders,
                      const Words& words, std::vector<Mention>& mentions) {
  for (const Thing& thing : passage.things) {
    for (const std::uint32_t term : thing.terms) {
      Mention mention;
      mention.kind = mention_kind(thing.kind);
      mention.range = positions.range_of(passage, thing.span);
      mention.value = list_of(finders, thing.kind).terms()[term].key;
      mention.rule = thing.kind == ThingKind::person     ? "person"
                     : thing.kind == ThingKind::location ? "itinerary"
                                                         : "list";
      mention.near_match = thing.near_match;
      mentions.push_back(std::move(mention));
    }
  }
  for (std::size_t d = 0; d < passage.dates.size(); ++d) {
    const DateExpression& date = passage.dates[d];
    if (passage.date_spans[d].empty()) continue;
    mentions.push_back({MentionKind::date, positions.range_of(passage, passage.date_spans[d]),
                        date.edtf ? to_string(*date.edtf) : date.timex3, std::string(date.rule), false});
  }
  for (const Number& number : passage.numbers) {
    mentions.push_back({MentionKind::quantity, positions.range_of(passage, number.span),
                        number.least == number.most ? std::to_string(number.least)
                                                    : fmt::format("{}..{}", number.least, number.most),
                        "number", false});
  }
  for (const CueSpan& cue : passage.cues) {
    const Cue& what = words.cues[cue.cue];
    if (opens_answer(what.cue)) continue;
    mentions.push_back(
        {MentionKind::cue, positions.range_of(passage, cue.span), value_of(what), what.phrase, false});
  }
}

void MentionOrder::put_in_order(std::vector<Mention>& mentions, std::size_t first) {
  places_.clear();
  for (std::size_t i = first; i < mentions.size(); ++i) places_.push_back({mentions[i].range, i});
  if (std::is_sorted(places_.begin(), places_.end())) return;
  std::sort(places_.begin(), places_.end());
  ordered_.clear();
  for (const Place& place : places_) ordered_.push_back(std::move(mentions[place.at]));
  std::move(ordered_.begin(), ordered_.end(), mentions.begin() + static_cast<std::ptrdiff_t>(first));
}

void collect_actions(const SentenceReading& reading, const StatementContext& context,
                     std::vector<Mention>& mentions) {
  for (const Predicate& p : reading.predicates) {
    if (p.kind != Predicate::Kind::verb) continue;
    static constexpr std::string_view kNames[] = {
        "begins", "ends", "ends begins", "ends begins", "ends begins", "ends begins", "present",
        "begins", "ends", "attribute",   "happened",    "located",     "attribute",   "attribute"};
    mentions.push_back({MentionKind::action, context.positions.range_of(context.passage, {p.at, p.span.past}),
                        std::string(kNames[static_cast<std::size_t>(p.verb->kind)]), p.verb->name, false});
  }
}

}  // namespace witnessmark::claims
