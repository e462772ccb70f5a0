// Dates hung on a life or on the register: when I was nineteen, in my twenties, before the yard period.
#include "language/dates/grammar/grammar.h"

namespace witnessmark::dates {

// I must have been, I'd have been, I would have been, I'd be; j is set behind it.
bool Grammar::supposed_age(std::size_t& j) const {
  std::size_t k = j;
  if (is(k, w("i")) && (is(k + 1, w("must")) || is(k + 1, w("would")) || is(k + 1, w("might"))))
    k += 2;
  else if (is(k, w("i'd")))
    ++k;
  else
    return false;
  if (is(k, w("have")) && is(k + 1, w("been")))
    k += 2;
  else if (is(k, w("been")) && is(k - 1, w("i'd")))
    return false;  // I had been nineteen years at it
  else if (is(k, w("be")))
    ++k;
  else
    return false;
  j = k;
  return true;
}

// I'd turned, I had just turned; j is set behind it.
bool Grammar::turned_age(std::size_t& j) const {
  std::size_t k = j;
  if (is(k, w("i")) && is(k + 1, w("had")))
    k += 2;
  else if (is(k, w("i'd")))
    ++k;
  else
    return false;
  if (is(k, w("just")) || is(k, w("only"))) ++k;
  if (!is(k, w("turned"))) return false;
  j = k + 1;
  return true;
}

// Behind "I was sixty-five": when they pulled it down, in 1997, then, or nothing; not the sixty-five it may
// count.
bool Grammar::age_stands(std::size_t past) const {
  const auto& after = t[past];
  if (after.kind != Token::Kind::word || after.newline) return !after.is_sign('-') && !after.is_sign('/');
  Spec dated;
  if (is(past, w("in"))) return year(past + 1, YearStance::supported, dated);
  for (const auto word : {w("when"), w("then"), w("by"), w("before"), w("already"), w("and"), w("but"),
                          w("so"), w("that"), w("because")})
    if (after.hash == word) return true;
  return false;
}

// when I was nineteen, I was about nineteen years old, at nineteen, at the age of 19
bool Grammar::age(std::size_t i, Spec& spec) const {
  if (prose()) {  // died at age [seventy-nine], aged [26]
    std::int64_t years = 0;
    std::size_t past = 0;
    if ((!is(i - 1, w("age")) && !is(i - 1, w("aged"))) || !cardinal(i, years, past) || years < 1 ||
        years > 120 || t[past].is(Role::units))
      return false;
    spec.kind = Spec::Kind::duration;
    spec.begin = i;
    spec.end = past;
    spec.unit = Unit::year;
    spec.count.value = years;
    spec.rule = "age-duration";
    return true;
  }
  std::size_t j = i;
  bool said = false, supposed = false;
  if (is(j, w("when")) && (is(j + 1, w("i")) || is(j + 1, w("i'd")))) {
    j += 2;
    if (is(j, w("was")) || is(j, w("turned")) || is(j, w("were")))
      ++j;
    else
      return false;
    said = true;
  } else if (is(j, w("i")) && (is(j + 1, w("was")) || is(j + 1, w("turned")))) {
    j += 2;
  } else if (turned_age(j)) {    // I'd just turned twenty
  } else if (supposed_age(j)) {  // I must have been nineteen
    supposed = true;
  } else if (is(j, w("at")) || is(j, w("age")) || is(j, w("aged"))) {
    if (is(j, w("at")) && is(j + 1, w("the")) && is(j + 2, w("age")) && is(j + 3, w("of")))
      j += 4, said = true;
    else if (is(j, w("at"))) {
      ++j;
      if (is(j, w("age"))) ++j, said = true;
    } else
      ++j, said = true;
  } else {
    return false;
  }
  const bool only = is(j, w("only")) || is(j, w("just")) || is(j, w("barely")) || is(j, w("exactly"));
  if (!only && (t[j].is(Role::approx) || is(j, w("like")) || is(j, w("maybe")))) ++j, spec.mod = Mod::approx;
  if (is(j, w("only")) || is(j, w("just")) || is(j, w("barely")) || is(j, w("exactly")))
    ++j, spec.mod = Mod::none;
  if (is(j, w("all")) && is(j + 1, w("of"))) j += 2;
  const bool nearing =
      (is(j, w("going")) && is(j + 1, w("on"))) || is(j, w("rising"));  // going on seventeen: sixteen
  if (nearing) j += is(j, w("going")) ? 2 : 1;
  const bool of = is(j, w("a")) && is(j + 2, w("of")) &&
                  (t[j + 1].is(Role::descendant) || is(j + 1, w("boy")) || is(j + 1, w("lad")) ||
                   is(j + 1, w("girl")) || is(j + 1, w("youngster")));
  if (of) j += 3;  // a boy of ten
  std::int64_t years = 0;
  std::size_t past = 0;
  if (!cardinal(j, years, past) || years < 3 || years > 99 || (t[j].is_number() && t[j].grouped))
    return false;
  if (is(past, w("or"))) {  // eighteen or nineteen; what stands behind any other "or" is unknown
    std::int64_t upper = 0;
    constexpr std::int64_t kWidest = 3;
    if ((is(i, w("at")) && !said) || !cardinal(past + 1, upper, past)) return false;
    if (upper <= years || upper > years + kWidest) return false;
    spec.count.upper = upper;
  }
  const bool of_age = is(past, w("years")) && is(past + 1, w("of")) && is(past + 2, w("age"));
  const bool old = of_age || (is(past, w("years")) && is(past + 1, w("old")));
  if (old) past += of_age ? 3 : 2;
  const auto& after = t[past];
  if (is(i, w("at")) && !said && !old) {  // at nineteen: not at ten, at forty feet
    if (years < 13 || years > 24 || t[j].is_number()) return false;
    if (after.is_word() && !after.newline && !after.is(Role::pronoun) && !after.is(Role::after_year))
      return false;
    if (is(past, w("hundred")) || is(past, w("to")) || after.is(Role::number) || after.is_number())
      return false;
  }
  if ((is(i, w("i")) || is(i, w("i'd"))) && !old) {
    if (years > 40 && !age_stands(past)) return false;
    if (years > (supposed ? 80 : 95) || (after.is_word() && !after.newline && !after.is(Role::after_year)))
      return false;
  }
  if (counts_something(past)) return false;
  if (after.is(Role::number) || after.is(Role::multiplier)) return false;
  if (nearing && (spec.count.upper || years < 5)) return false;
  spec.kind = Spec::Kind::age;
  spec.begin = i;
  spec.end = past;
  spec.number = static_cast<int>(nearing ? years - 1 : years);
  spec.rule = "age";
  return true;
}

// my twenty-first birthday
bool Grammar::birthday(std::size_t i, Spec& spec) const {
  std::int64_t years = 0;
  std::size_t past = 0;
  if (!ordinal(i + 1, years, past) || years < 1 || !is(past, w("birthday"))) return false;
  spec.kind = Spec::Kind::age;
  spec.begin = i;
  spec.end = past + 1;
  spec.number = static_cast<int>(years);
  spec.unit = Unit::day;
  spec.rule = "birthday";
  return true;
}

// the day I turned fourteen, the day I was fourteen, the day I was born: that birthday
bool Grammar::day_turned(std::size_t i, Spec& spec) const {
  const std::size_t day = is(i + 1, w("very")) ? i + 2 : i + 1;
  if (!is(i, w("the")) || !is(day, w("day"))) return false;
  const std::size_t j = is(day + 1, w("that")) ? day + 2 : day + 1;
  if (my_birth(j, spec)) return spec.begin = i, true;
  std::int64_t years = 0;
  std::size_t past = 0;
  const bool was = is(j + 1, w("was"));
  if (!is(j, w("i")) || (!was && !is(j + 1, w("turned"))) || !cardinal(j + 2, years, past)) return false;
  const auto& after = t[past];
  const bool open = !after.is_word() || after.newline || after.is(Role::after_year);
  if (years < 1 || years > 110 || counts_something(past) || plural_follows(past) || (was && !open))
    return false;
  spec.kind = Spec::Kind::age;
  spec.begin = i;
  spec.end = past;
  spec.number = static_cast<int>(years);
  spec.unit = Unit::day;
  spec.rule = "birthday";
  return true;
}

// I was born: what something may be reckoned from
bool Grammar::my_birth(std::size_t i, Spec& spec) const {
  if (prose() || !is(i, w("i")) || !is(i + 1, w("was")) || !is(i + 2, w("born"))) return false;
  spec.kind = Spec::Kind::age;
  spec.begin = i;
  spec.end = i + 3;
  spec.number = 0;
  spec.unit = Unit::day;
  spec.rule = "birthday";
  return true;
}

// the year I turned thirty, the year I was born, the winter I was nineteen
bool Grammar::year_turned(std::size_t i, Spec& spec) const {
  const bool season = t[i + 1].is(Role::season);
  if (!is(i, w("the")) || (!is(i + 1, w("year")) && !season)) return false;
  const std::size_t j = is(i + 2, w("that")) ? i + 3 : i + 2;
  std::int64_t years = 0;
  std::size_t past = j + 3;
  const bool was = is(j + 1, w("was")), born = was && is(j + 2, w("born"));
  if (!is(j, w("i")) || (!is(j + 1, w("turned")) && !was) || (was && !born && !season)) return false;
  if (!born && (!cardinal(j + 2, years, past) || years < 1 || years > 110 || counts_something(past)))
    return false;
  if (season) {
    spec.kind = Spec::Kind::age;
    spec.begin = i;
    spec.end = past;
    spec.number = static_cast<int>(years);
    spec.unit = Unit::year;
    spec.date.season = static_cast<Season>(t[i + 1].value(Role::season));
    spec.first_edge = !was;  // The season of the birthday's year; else any of that age.
    spec.rule = "season-of-life";
    return true;
  }
  spec.kind = Spec::Kind::age;
  spec.begin = i;
  spec.end = past;
  spec.number = static_cast<int>(years);
  spec.unit = Unit::year;
  spec.rule = "birthday-year";
  return true;
}

// in my twenties, in my early thirties, in my late teens
bool Grammar::decade_of_life(std::size_t i, Spec& spec) const {
  std::size_t j = i + 1;
  if (t[j].is(Role::part)) {
    spec.mod = static_cast<Mod>(t[j].value(Role::part));
    spec.part = spec.mod == Mod::start ? Part::early : spec.mod == Mod::mid ? Part::mid : Part::late;
    ++j;
    if (t[j].is_sign('-') && !t[j].space) ++j;
  }
  const bool teens = is(j, w("teens"));
  if (!t[j].is(Role::decade) && !teens) return false;
  spec.kind = Spec::Kind::age;
  spec.begin = i;
  spec.end = j + 1;
  spec.number = teens ? 10 : t[j].value(Role::decade);
  spec.unit = Unit::decade;
  spec.rule = "decade-of-life";
  return true;
}

namespace {

bool has_short_year(const Spec& spec) {
  return spec.short_year || (spec.first && has_short_year(*spec.first)) ||
         (spec.second && has_short_year(*spec.second));
}

}  // namespace

// Whose life the sentence is about; only two-digit years need it.
Life Grammar::life_told(const Spec& spec) const {
  constexpr std::size_t kBack = 14, kForward = 8;
  bool born = false, elder = false, descendant = false, death = false, self = false, self_last = false,
       ancestor = false;
  const auto note = [&](const Token& token, std::size_t at) {
    if (is(at, w("born"))) born = true;
    if (token.is(Role::death)) death = true, born = false;  // What is dated is the death.
    descendant |= token.is(Role::descendant);
    const bool speaker =
        is(at, w("i")) || is(at, w("i'd")) || is(at, w("we")) || is(at, w("me")) || is(at, w("us"));
    if (speaker) self = self_last = true;
    if (token.is(Role::elder)) elder = true;
    if (token.is(Role::elder) && (t.text(token).substr(1).starts_with("rand") || is(at, w("ancestors")) ||
                                  is(at, w("forefathers")) || is(at, w("granny"))))
      ancestor = true;
    if (token.any(bit(Role::elder) | bit(Role::descendant)) || (token.is(Role::pronoun) && !speaker))
      self_last = false;
  };
  const auto stops = [&](const Token& token) {
    return token.kind == Token::Kind::end || token.is_sign('.') || token.is_sign('!') || token.is_sign('?') ||
           token.is_sign(';');
  };
  std::size_t first = spec.begin;
  while (first > 0 && spec.begin - first < kBack && !stops(t[first - 1]) && !t[first].paragraph) --first;
  for (std::size_t at = first; at < spec.begin; ++at) note(t[at], at);
  const bool own = self_last;
  for (std::size_t at = spec.end; at < spec.end + kForward && !stops(t[at]) && !t[at].paragraph; ++at)
    if (!self) note(t[at], at);
  if (born && own) return Life::own_birth;
  if (descendant || own) return Life::own;
  if (ancestor && !born && !death) return Life::ancestors;
  if (born || (elder && !death)) return Life::elders;
  if (elder || self) return Life::own;
  return is(spec.begin - 1, w("of")) ? Life::thing : Life::untold;
}

void Grammar::put_life(Spec& spec) const {
  if (!has_short_year(spec)) return;
  const auto life = life_told(spec);
  for (auto* rest = &spec; rest; rest = rest->second.get()) {
    rest->life = life;
    if (rest->first) rest->first->life = life;
  }
}

bool Grammar::service(std::size_t i, Spec& spec) const {
  if (prose()) return false;
  if (is(i, w("my")))
    return birthday(i, spec) || decade_of_life(i, spec) || service_year(i, spec) || service_edge(i, spec);
  return year_turned(i, spec) || day_turned(i, spec) || service_edge(i, spec);
}

bool Grammar::event(std::size_t i, Spec& spec) const {
  std::size_t past = 0;
  std::size_t j = i;  // Names are kept without a leading article.
  if (is(j, w("the")) && is(j + 1, w("year")) && is(j + 2, w("of"))) {  // the year of the flood
    if (!event(j + 3, spec)) return false;
    spec.begin = i;
    spec.unit = Unit::year;
    return true;
  }
  if (is(j, w("the")) || is(j, w("that")) || is(j, w("our")) || is(j, w("this"))) ++j;
  const auto* phrase = t.phrase_at(j, past);
  if (!phrase || phrase->event < 0) return false;
  // A name of one word is only meant with an article or behind a preposition of time, and not of something
  // ("the end of the wharf", "at the far end").
  const bool one_word = past == j + 1;
  if (one_word && (is(past, w("of")) || (j == i && !t[i - 1].is(Role::limit)))) return false;
  spec.kind = Spec::Kind::event;
  spec.begin = i;
  spec.end = past;
  spec.full_end = true;
  spec.event = phrase->event;
  spec.rule = "named-event";
  return true;
}

}  // namespace witnessmark::dates
