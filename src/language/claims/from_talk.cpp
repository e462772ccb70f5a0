// What is not said in a sentence but holds for it. A date goes on holding until another is said or talk turns
// to something else; a place as long as talk is about the same thing.
#include "language/claims/from_talk.h"

#include <algorithm>

namespace witnessmark::claims {
namespace {

/// A date said so many sentences ago still dates what is told.
constexpr int kDateReach = 10;

bool any(const StatementContext& c, WordClass word) {
  for (std::uint32_t i = c.reading.span.first; i < c.reading.span.past; ++i)
    if (c.passage.notes[i].flags.has(word)) return true;
  return false;
}

}  // namespace

std::optional<ChosenDate> time_of_service(const std::vector<ServicePeriod>& service) {
  std::optional<EdtfInterval> whole;
  for (const ServicePeriod& period : service) {
    const auto* span = period.when.value ? std::get_if<EdtfInterval>(&period.when.value->value) : nullptr;
    if (!span || !std::holds_alternative<EdtfDate>(span->begin) ||
        !std::holds_alternative<EdtfDate>(span->end))
      continue;
    if (!whole) whole = *span;
    whole->end = span->end;
  }
  if (!whole) return std::nullopt;
  ChosenDate served;
  served.expression.text = to_string(Edtf{*whole});
  served.expression.edtf = Edtf{*whole};
  served.expression.rule = "service";
  served.expression.anchor = "service " + served.expression.text;
  return served;
}

namespace {

/// "When I came", of somebody who came twice: the time that talk has reached.
void settle_service(const Focus& focus, DateExpression& said) {
  const auto* times = said.edtf ? std::get_if<EdtfSet>(&said.edtf->value) : nullptr;
  if (!said.rule.starts_with("service") || !times || times->elements.size() < 2 || !focus.date) return;
  const DatePolicy policy;
  const Edtf* talked_of = focus.date->expression.edtf ? &*focus.date->expression.edtf : nullptr;
  const auto past = talked_of ? to_period(*talked_of, policy).past_latest() : std::nullopt;
  if (!past) return;
  std::optional<Edtf> reached;
  for (const EdtfSetElement& element : times->elements) {
    if (!element.first || element.is_span) return;
    const auto begins = to_period(Edtf{*element.first}, policy).earliest();
    if (begins && *begins < *past) reached = Edtf{*element.first};
  }
  if (!reached) return;
  said.alternatives.clear();
  said.edtf = reached;
  said.period = to_period(*reached, policy);
}

}  // namespace

void carry(const StatementContext& context, const TalkBefore& talk, Draft& draft) {
  const Focus& focus = talk.focus;
  if (draft.date && !draft.date->carried) settle_service(focus, draft.date->expression);
  if (!draft.date && talk.served && any(context, WordClass::my_time)) draft.date = *talk.served;
  if (!draft.date && !draft.is_now && focus.date && focus.date_age <= kDateReach) {
    draft.date = focus.date;
    draft.date->carried = true;
    std::optional<Edtf>& when = draft.date->expression.edtf;
    if (draft.by_then && when) when = at_the_latest(*when);
  }
  const bool silent = !draft.place && draft.place_words.empty();
  if (!silent || !draft.subject) return;
  // "We put three more down at the dry end. That made twenty-one."
  const bool goes_on = draft.statement == Statement::count && focus.last_sentence == focus.sentences;
  if ((draft.subject->carried || goes_on) && draft.statement != Statement::begins && focus.last &&
      focus.last->subject && focus.last->place && focus.last->subject->terms == draft.subject->terms) {
    draft.place = focus.last->place;
    draft.place->carried = true;
  }
}

bool only_denies(const StatementContext& context) {
  constexpr int kMostWords = 4;
  int words = 0;
  bool pronoun = false;
  bool negative = false;
  for (std::uint32_t i = context.reading.span.first; i < context.reading.span.past; ++i) {
    if (context.passage.tokens[i].kind == Token::Kind::mark) continue;
    const Flags& f = context.passage.notes[i].flags;
    if (f.has(WordClass::filler)) continue;
    if (++words > kMostWords) return false;
    const bool auxiliary = f.has(WordClass::be) || f.has(WordClass::have) || f.has(WordClass::do_);
    if (words == 1) {
      pronoun =
          f.has(WordClass::it) || f.has(WordClass::they) || f.has(WordClass::this_) || f.has(WordClass::we);
    } else if (!auxiliary && !f.has(WordClass::negative) && !f.has(WordClass::never) &&
               !f.has(WordClass::adverb)) {
      return false;
    }
    negative = negative || f.has(WordClass::negative) || f.has(WordClass::never);
  }
  return pronoun && negative && words > 1;
}

bool opens_with_no(const StatementContext& context) {
  const std::uint32_t first = context.reading.span.first;
  for (const CueSpan& cue : context.passage.cues) {
    if (cue.span.first != first || context.words.cues[cue.cue].cue != CueClass::no) continue;
    if (cue.span.past >= context.reading.span.past) return true;
    const Flags& next = context.passage.notes[cue.span.past].flags;
    if (next.has(WordClass::filler) || next.has(WordClass::we) || next.has(WordClass::it) ||
        next.has(WordClass::they) || next.has(WordClass::she) || next.has(WordClass::never)) {
      return true;
    }
  }
  return false;
}

void settle_basis(const StatementContext& context, Draft& draft) {
  if (draft.basis != Basis::unstated || draft.led) return;
  for (const CueSpan& cue : context.passage.cues) {
    if (!context.reading.span.holds(cue.span.first)) continue;
    const CueClass what = context.words.cues[cue.cue].cue;
    if (what == CueClass::told || what == CueClass::read || what == CueClass::inferred) return;
  }
  const auto in_cue = [&](std::uint32_t i) {
    return std::any_of(context.passage.cues.begin(), context.passage.cues.end(),
                       [i](const CueSpan& cue) { return cue.span.holds(i); });
  };
  for (std::uint32_t i = context.reading.span.first; i < context.reading.span.past; ++i) {
    const Flags& f = context.passage.notes[i].flags;
    if (!f.has(WordClass::self) && !f.has(WordClass::we) && !f.has(WordClass::us)) continue;
    // "My father went": another's doing.
    const bool of_somebody = i + 1 < context.reading.span.past &&
                             context.passage.notes[i + 1].flags.has(WordClass::person) &&
                             f.has(WordClass::determiner);
    if (of_somebody || in_cue(i)) continue;
    draft.basis = Basis::first_hand;
    draft.because.push_back("'" + std::string(context.passage.words({i, i + 1})) + "' → first-hand");
    return;
  }
}

}  // namespace witnessmark::claims
