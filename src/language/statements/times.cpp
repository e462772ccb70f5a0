// Which date belongs to which verb. A sentence with one date gives it to all its verbs. Otherwise a verb
// takes the nearest date of its own clause, first to the right; a clause without date takes the sentence's
// opening date, else that of a following clause that shares its subject ("took off A and put on B in 1962"),
// else that of the clause before.
#include "language/statements/times.h"

#include <algorithm>

#include "language/statements/statements.h"

namespace witnessmark::claims {
namespace {

/// "In the gale", "after the fire", "with the conversion", "when they shut": a named event says when only behind a preposition of
/// time. "They talked of the accident" does not.
bool says_when(const Passage& passage, std::uint32_t date) {
  if (passage.dates[date].rule != "named-event") return true;
  const Span span = passage.date_spans[date];
  const auto temporal = [&](std::uint32_t i) {
    const Flags& f = passage.notes[i].flags;
    for (const WordClass c :
         {WordClass::at, WordClass::before, WordClass::after, WordClass::until, WordClass::by,
          WordClass::from, WordClass::for_, WordClass::when, WordClass::subordinator, WordClass::to,
          WordClass::with}) {
      if (f.has(c)) return true;
    }
    return false;
  };
  if (span.empty() || temporal(span.first)) return true;
  std::uint32_t i = span.first;
  while (i > 0 && passage.notes[i - 1].flags.has(WordClass::determiner) && passage.notes[i - 1].date < 0) --i;
  const auto mark = [&](std::uint32_t k) { return passage.tokens[k].kind == Token::Kind::mark; };
  const bool alone = (i == 0 || mark(i - 1)) && (span.past >= passage.tokens.size() || mark(span.past));
  return alone || (i > 0 && temporal(i - 1));
}

bool usable(const DateExpression& date) {
  return date.type == TimexType::date || date.type == TimexType::time || date.edtf.has_value();
}

/// Flags of the words just before a date, over prepositions.
DateUse use_of(const Passage& passage, std::uint32_t date, Span sentence) {
  DateUse use;
  use.date = date;
  use.corrected = passage.dates[date].corrected;
  const Span span = passage.date_spans[date];
  const auto mark_flags = [&](std::uint32_t i) {
    const Flags& f = passage.notes[i].flags;
    if (f.has(WordClass::until)) use.until = true;
    if (f.has(WordClass::by)) use.by = true;
  };
  if (!span.empty()) {
    mark_flags(span.first);
    for (std::uint32_t k = span.first; k > sentence.first && k + 3 > span.first; --k) {
      const std::uint32_t at = k - 1;
      if (passage.tokens[at].kind == Token::Kind::mark || passage.notes[at].thing >= 0) break;
      const Flags& f = passage.notes[at].flags;
      const bool preposition = f.has(WordClass::at) || f.has(WordClass::for_) || f.has(WordClass::by) ||
                               f.has(WordClass::until) || f.has(WordClass::subordinator) ||
                               f.has(WordClass::to) || f.has(WordClass::determiner);
      if (f.has(WordClass::negative) && passage.notes[at].cue < 0) {
        // "not in 1954" as a piece of its own; "was not in 1954" belongs to the verb.
        const bool alone = at == sentence.first || passage.tokens[at - 1].kind == Token::Kind::mark ||
                           passage.notes[at - 1].flags.has(WordClass::coordinator);
        use.negated = alone;
        break;
      }
      if (!preposition) break;
      mark_flags(at);
    }
    for (std::uint32_t k = span.first; k > sentence.first && k + 4 > span.first; --k) {
      const Note& note = passage.notes[k - 1];
      if (note.flags.has(WordClass::until) && k - 1 + note.reach >= span.first) use.until = true;
      if (note.flags.has(WordClass::throughout) && k - 1 + note.reach >= span.first) use.throughout = true;
    }
  }
  return use;
}

/// Dates that begin in a stretch, with those that are taken back.
std::vector<std::uint32_t> usable_in(const Passage& passage, Span span) {
  std::vector<std::uint32_t> dates;
  for (auto [d, past] = passage.dates_in(span); d < past; ++d) {
    const Span& at = passage.date_spans[d];
    if (!at.empty() && span.holds(at.first) && usable(passage.dates[d])) dates.push_back(d);
  }
  return dates;
}

std::vector<std::uint32_t> dates_in(const Passage& passage, Span span) {
  std::vector<std::uint32_t> dates = usable_in(passage, span);
  std::erase_if(dates, [&](std::uint32_t d) { return !says_when(passage, d); });
  return dates;
}

/// Date d and those joined to it by "and" or "but" with nothing but prepositions between.
std::vector<std::uint32_t> joined(const Passage& passage, const std::vector<std::uint32_t>& dates,
                                  std::size_t at) {
  std::vector<std::uint32_t> group{dates[at]};
  const auto linked = [&](std::uint32_t a, std::uint32_t b) {
    bool link = false;
    for (std::uint32_t i = passage.date_spans[a].past; i < passage.date_spans[b].first; ++i) {
      const Flags& f = passage.notes[i].flags;
      if (f.has(WordClass::coordinator)) {
        link = true;
      } else if (passage.tokens[i].kind == Token::Kind::mark && passage.tokens[i].mark == ',') {
        link = true;
      } else if (!f.has(WordClass::at) && !f.has(WordClass::adverb) && !f.has(WordClass::determiner) &&
                 !f.has(WordClass::negative) && passage.notes[i].cue < 0 && !f.has(WordClass::then)) {
        return false;
      }
    }
    return link;
  };
  for (std::size_t i = at; i > 0 && linked(dates[i - 1], dates[i]); --i)
    group.insert(group.begin(), dates[i - 1]);
  for (std::size_t i = at; i + 1 < dates.size() && linked(dates[i], dates[i + 1]); ++i)
    group.push_back(dates[i + 1]);
  return group;
}

std::vector<DateUse> uses(const Passage& passage, const std::vector<std::uint32_t>& dates, Span sentence) {
  std::vector<DateUse> all;
  for (const std::uint32_t date : dates) all.push_back(use_of(passage, date, sentence));
  // "in 1949, or was it 1950?"
  for (DateUse& use : all) {
    const std::uint32_t next = use.date + 1;
    if (next >= passage.dates.size() || passage.date_spans[next].empty()) continue;
    for (const CueSpan& cue :
         passage.cues_in({passage.date_spans[use.date].past, passage.date_spans[next].first})) {
      const bool between = cue.span.past == passage.date_spans[next].first;
      if (between && passage.notes[cue.span.first].flags.has(WordClass::coordinator)) use.or_date = next;
    }
  }
  std::erase_if(all, [&](const DateUse& use) {
    return std::any_of(all.begin(), all.end(),
                       [&](const DateUse& other) { return other.or_date == use.date; });
  });
  return all;
}

/// "In 1961, in June": of a year and a date next to it the one that lies within it.
std::uint32_t narrowed(const Passage& passage, const std::vector<std::uint32_t>& all, std::uint32_t date) {
  constexpr std::uint32_t kNear = 4;  // Tokens.
  const DateExpression& said = passage.dates[date];
  const auto* year = said.edtf ? std::get_if<EdtfDate>(&said.edtf->value) : nullptr;
  if (!year || year->month) return date;
  const auto near = [&](std::uint32_t other) {
    const Span a = passage.date_spans[std::min(date, other)], b = passage.date_spans[std::max(date, other)];
    if (b.first > a.past + kNear) return false;
    for (std::uint32_t i = a.past; i < b.first; ++i) {
      const Note& note = passage.notes[i];
      if (note.flags.has(WordClass::coordinator) || note.flags.has(WordClass::be) ||
          note.flags.has(WordClass::have) || note.thing >= 0 || (note.info && note.info->verb_group[0] >= 0))
        return false;
    }
    return true;
  };
  for (const std::uint32_t other : all) {
    const DateExpression& within = passage.dates[other];
    if (other != date && !within.corrected && lies_in(within, said) && !lies_in(said, within) && near(other))
      return other;
  }
  return date;
}

std::vector<std::uint32_t> own_dates(const Passage& passage, const Predicate& predicate, Span clause) {
  const std::vector<std::uint32_t> all = dates_in(passage, clause);
  if (all.empty()) return {};
  std::size_t best = all.size();
  for (std::size_t i = 0; i < all.size() && best == all.size(); ++i) {
    if (predicate.right.holds(passage.date_spans[all[i]].first)) best = i;
  }
  for (std::size_t i = all.size(); i > 0 && best == all.size(); --i) {
    if (predicate.left.holds(passage.date_spans[all[i - 1]].first)) best = i - 1;
  }
  for (std::size_t i = 0; i < all.size() && best == all.size(); ++i) {
    if (passage.date_spans[all[i]].first > predicate.at) best = i;
  }
  if (best == all.size()) best = all.size() - 1;
  return joined(passage, all, best);
}

}  // namespace

std::vector<DateUse> dates_for(const Passage& passage, const SentenceReading& reading,
                               const Predicate* predicate, std::uint32_t clause) {
  const std::vector<std::uint32_t> all = dates_in(passage, reading.span);
  if (all.empty()) return {};
  if (all.size() == 1) return uses(passage, all, reading.span);
  const Clause& own = reading.clauses[clause];
  std::vector<std::uint32_t> chosen =
      predicate ? own_dates(passage, *predicate, own.span) : dates_in(passage, own.span);
  if (chosen.empty() && !reading.predicates.empty() &&
      passage.date_spans[all.front()].first < reading.predicates.front().at) {
    chosen = joined(passage, all, 0);
  }
  if (chosen.empty() && clause + 1 < reading.clauses.size() && !reading.clauses[clause + 1].own_subject) {
    chosen = dates_in(passage, reading.clauses[clause + 1].span);
  }
  for (std::uint32_t c = clause; chosen.empty() && c > 0; --c) {
    chosen = dates_in(passage, reading.clauses[c - 1].span);
    if (chosen.size() > 1) chosen.erase(chosen.begin(), chosen.end() - 1);
  }
  // "There'd been one when he came, and he came in 1909, and it went before the war."
  if (chosen.empty()) {
    std::vector<std::uint32_t> plain = all;
    std::erase_if(plain, [&](std::uint32_t d) { return passage.dates[d].rule == "named-time"; });
    if (plain.size() == 1) chosen = std::move(plain);
  }
  for (std::uint32_t& date : chosen) date = narrowed(passage, all, date);
  chosen.erase(std::unique(chosen.begin(), chosen.end()), chosen.end());
  const auto of_one_verb = [&](std::uint32_t a, std::uint32_t b) {
    return std::none_of(reading.predicates.begin(), reading.predicates.end(), [&](const Predicate& p) {
      return passage.date_spans[std::min(a, b)].first < p.at &&
             p.at < passage.date_spans[std::max(a, b)].first;
    });
  };
  // "Eighteen ninety-five, before my time": the limit says nothing more.
  std::erase_if(chosen, [&](std::uint32_t limit) {
    const std::optional<Period>& period = passage.dates[limit].period;
    if (!period || (period->earliest() && period->past_latest())) return false;
    return std::any_of(all.begin(), all.end(), [&](std::uint32_t date) {
      return date != limit && of_one_verb(date, limit) &&
             lies_in(passage.dates[date], passage.dates[limit]) &&
             !lies_in(passage.dates[limit], passage.dates[date]);
    });
  });
  // "It was the year after, so fifty-four", "fifty-one, at the same time": one has a value.
  const auto unknown = [&](std::uint32_t date) { return !passage.dates[date].edtf; };
  if (!chosen.empty() && std::all_of(chosen.begin(), chosen.end(), unknown)) {
    for (const std::uint32_t date : all)
      if (!unknown(date) && of_one_verb(date, chosen.front())) chosen.push_back(date);
  }
  if (!std::all_of(chosen.begin(), chosen.end(), unknown)) std::erase_if(chosen, unknown);
  return uses(passage, chosen, reading.span);
}

std::vector<std::uint32_t> dates_said(const Passage& passage, Span span) {
  std::vector<std::uint32_t> dates = usable_in(passage, span);
  std::erase_if(dates, [&](std::uint32_t d) { return passage.dates[d].corrected; });
  return dates;
}

std::optional<ChosenDate> last_date_in(const Passage& passage, Span span) {
  std::optional<ChosenDate> last;
  for (const std::uint32_t d : dates_said(passage, span))
    if (passage.dates[d].edtf) last = ChosenDate{passage.dates[d], false};
  return last;
}

std::optional<ChosenDate> bare_year(const StatementContext& answer) {
  if (!answer.today || !answer.today->expression.edtf) return std::nullopt;
  const auto* day = std::get_if<EdtfDate>(&answer.today->expression.edtf->value);
  if (!day || !day->year.specified()) return std::nullopt;
  const Number* said = nullptr;
  for (const Number& number : answer.passage.numbers_in(answer.reading.span)) {
    if (!said && answer.reading.span.holds(number.span.first)) said = &number;
  }
  constexpr std::int64_t kLeast = 20, kMost = 99, kHundred = 100;
  if (!said || said->least != said->most || said->least < kLeast || said->most > kMost) return std::nullopt;
  for (std::uint32_t i = answer.reading.span.first; i < answer.reading.span.past; ++i) {
    const Flags& f = answer.passage.notes[i].flags;
    const bool empty = said->span.holds(i) || answer.passage.tokens[i].kind == Token::Kind::mark ||
                       f.has(WordClass::filler) || f.has(WordClass::adverb) ||
                       answer.passage.notes[i].cue >= 0;
    if (!empty || answer.passage.notes[i].date >= 0) return std::nullopt;  // "At twenty-one." is an age.
  }
  const std::int64_t now = day->year.value;
  std::int64_t year = now - now % kHundred + said->least;
  if (year > now) year -= kHundred;
  const auto edtf = parse_edtf(std::to_string(year));
  if (!edtf) return std::nullopt;
  ChosenDate chosen;
  chosen.expression.text = std::string(answer.passage.words(said->span));
  chosen.expression.edtf = *edtf;
  chosen.expression.rule = "bare-year";
  chosen.expression.anchor = "interview " + to_string(*answer.today->expression.edtf);
  return chosen;
}

Edtf end_of_until(const Edtf& value) {
  if (const auto* interval = std::get_if<EdtfInterval>(&value.value)) {
    if (const auto* end = std::get_if<EdtfDate>(&interval->end)) return Edtf{*end};
  }
  if (const auto* set = std::get_if<EdtfSet>(&value.value)) {
    if (set->elements.size() == 1 && set->elements[0].last) return Edtf{*set->elements[0].last};
  }
  return value;
}

std::optional<Edtf> either(const std::optional<Edtf>& a, const std::optional<Edtf>& b) {
  if (!a || !b) return a ? a : b;
  EdtfSet set;
  for (const Edtf* value : {&*a, &*b}) {
    const auto* date = std::get_if<EdtfDate>(&value->value);
    const auto* other = std::get_if<EdtfSet>(&value->value);
    if (date)
      set.elements.push_back({*date, *date, false});
    else if (other && other->kind == EdtfSet::Kind::one_of)
      set.elements.insert(set.elements.end(), other->elements.begin(), other->elements.end());
    else
      return a;
  }
  return Edtf{set};
}

namespace {

/// A date beside "..", which has all its digits: the fifties end with 1959, an unknown
/// day of March with that month. Nothing where no day is known to be the last.
std::optional<EdtfDate> last_in_full(EdtfDate date) {
  date.time.reset();
  if (date.day && !date.day->specified()) date.day.reset();
  if (date.month && !date.month->specified()) date.month.reset();
  if (!date.month) date.day.reset();
  if (date.year.specified()) return date;
  const auto past = to_period(Edtf{date}, DatePolicy()).past_latest();
  if (!past) return std::nullopt;
  EdtfDate year;
  year.year.value = to_civil(*past - 1).year;
  year.year.qualifier = date.year.qualifier;
  return year;
}

}  // namespace

Edtf at_the_latest(const Edtf& value) {
  const auto* date = std::get_if<EdtfDate>(&value.value);
  const auto* span = std::get_if<EdtfSet>(&value.value);
  if (span && span->elements.size() == 1 && span->elements[0].last) date = &*span->elements[0].last;
  const std::optional<EdtfDate> last = date ? last_in_full(*date) : std::nullopt;
  if (!last) return value;
  EdtfSet set;
  set.elements = {{std::nullopt, *last, true}};
  return Edtf{set};
}

Edtf at_the_earliest(const Edtf& value) {
  const auto* date = std::get_if<EdtfDate>(&value.value);
  const auto* interval = std::get_if<EdtfInterval>(&value.value);
  if (interval) date = std::get_if<EdtfDate>(&interval->end);  // After 1943 to 1958.
  if (!date || !date->year.specified()) return value;
  EdtfSet set;
  set.elements = {{last_in_full(*date), std::nullopt, true}};
  return Edtf{set};
}

Edtf up_to(const Edtf& value) {
  const auto* date = std::get_if<EdtfDate>(&value.value);
  if (const auto* interval = std::get_if<EdtfInterval>(&value.value))
    date = std::get_if<EdtfDate>(&interval->end);
  const auto* span = std::get_if<EdtfSet>(&value.value);
  if (span && span->elements.size() == 1 && span->elements[0].last) date = &*span->elements[0].last;
  return date ? Edtf{EdtfInterval{EdtfOpen{}, *date}} : value;
}

Edtf as_interval(const Edtf& value) {
  const auto* set = std::get_if<EdtfSet>(&value.value);
  if (!set || set->elements.size() != 1 || !set->elements[0].is_span) return value;
  const EdtfSetElement& span = set->elements[0];
  EdtfInterval interval{EdtfOpen{}, EdtfOpen{}};
  if (span.first) interval.begin = *span.first;
  if (span.last) interval.end = *span.last;
  return Edtf{interval};
}

Edtf stay_from(const Edtf& value) {
  const auto* date = std::get_if<EdtfDate>(&value.value);
  return date && !date->time ? Edtf{EdtfInterval{*date, EdtfOpen{}}} : value;
}

Edtf date_of_state(const DateExpression& expression, bool by) {
  const auto* set = std::get_if<EdtfSet>(&expression.edtf->value);
  const bool one_sided =
      set && set->elements.size() == 1 && (!set->elements[0].first || !set->elements[0].last);
  if (expression.whole && !one_sided) return *expression.edtf;
  const Edtf& value = expression.whole ? *expression.whole : *expression.edtf;
  return by ? end_of_until(value) : as_interval(value);
}

namespace {

/// A month or day said without a year, in the year of a date; nothing where a year was said with it.
std::optional<EdtfDate> in_year_of(const EdtfDate& date, const DateExpression& said) {
  constexpr std::string_view kNoYear = "XXXX-";
  const auto* known = said.edtf ? std::get_if<EdtfDate>(&said.edtf->value) : nullptr;
  if (known && year_from_talk(said)) {
    EdtfDate made = *known;
    made.year = date.year;
    return made;
  }
  if (said.edtf || !said.timex3.starts_with(kNoYear) || !date.year.specified()) return std::nullopt;
  const auto made = parse_edtf(std::to_string(date.year.value) + said.timex3.substr(kNoYear.size() - 1));
  const auto* value = made ? std::get_if<EdtfDate>(&made->value) : nullptr;
  return value ? std::optional(*value) : std::nullopt;
}

}  // namespace

std::optional<Edtf> narrowed_to(const Edtf& value, const DateExpression& said, const DatePolicy& policy) {
  const auto narrowed = [&](const EdtfDate& date) -> std::optional<EdtfDate> {
    if (!date.month) {
      if (const auto within = in_year_of(date, said)) return within;
    }
    const auto* within = said.edtf ? std::get_if<EdtfDate>(&said.edtf->value) : nullptr;
    DateExpression wide;
    wide.period = to_period(Edtf{date}, policy);
    return within && date != *within && lies_in(said, wide) ? std::optional(*within) : std::nullopt;
  };
  if (const auto* date = std::get_if<EdtfDate>(&value.value)) {
    const auto closer = narrowed(*date);
    return closer ? std::optional(Edtf{*closer}) : std::nullopt;
  }
  const auto* interval = std::get_if<EdtfInterval>(&value.value);
  if (!interval) return std::nullopt;
  EdtfInterval made = *interval;
  for (const auto& [known, other] : {std::pair(&made.begin, &made.end), std::pair(&made.end, &made.begin)}) {
    const auto* date = std::get_if<EdtfDate>(known);
    const auto closer =
        date && std::holds_alternative<EdtfOpen>(*other) ? narrowed(*date) : std::optional<EdtfDate>();
    if (!closer) continue;
    *known = *closer;
    return Edtf{made};
  }
  return std::nullopt;
}

void settle_service(const ChosenDate* talked_of, const DatePolicy& policy, DateExpression& said) {
  const auto* times = said.edtf ? std::get_if<EdtfSet>(&said.edtf->value) : nullptr;
  if (!said.rule.starts_with("service") || !times || times->elements.size() < 2) return;
  for (const EdtfSetElement& element : times->elements)
    if (!element.first || element.is_span) return;
  const bool leaving = said.rule == "service-ends";
  const Edtf* talk =
      !leaving && talked_of && talked_of->expression.edtf ? &*talked_of->expression.edtf : nullptr;
  const auto past = talk ? to_period(*talk, policy).past_latest() : std::nullopt;
  std::optional<Edtf> reached;
  for (const EdtfSetElement& element : times->elements) {
    const auto begins = to_period(Edtf{*element.first}, policy).earliest();
    if (past && begins && *begins < *past) reached = Edtf{*element.first};
  }
  if (reached) {
    said.alternatives.clear();
  } else {
    reached = Edtf{*(leaving ? times->elements.back() : times->elements.front()).first};
  }
  said.edtf = reached;
  said.period = to_period(*reached, policy);
}

bool lies_in(const DateExpression& inner, const DateExpression& outer) {
  if (!inner.period || !outer.period) return false;
  const auto first = inner.period->earliest(), from = outer.period->earliest();
  const auto past = inner.period->past_latest(), to = outer.period->past_latest();
  if (!first || !past || (!from && !to)) return false;
  return (!from || *from <= *first) && (!to || *past <= *to);
}

}  // namespace witnessmark::claims
