// Dates hung on a life or on the register: when I was nineteen, my second year aboard, the day I reported,
// before the yard period.
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

// "It was red when I came.", "when I came there was one": nothing says where to.
bool Grammar::ends_here(std::size_t i) const {
  const auto& after = t[i];
  if (after.kind != Token::Kind::word || after.newline) return true;
  for (const auto next :
       {w("there"), w("it"), w("they"), w("we"), w("the"), w("a"), w("and"), w("but"), w("so")})
    if (after.hash == next) return true;
  return false;
}

// "When I came two of the lamps were in", "it was there when I come": nothing says where to, as in "came to
// the galley", "came below". "When I come I'll bring it" is to come.
bool Grammar::came_at(std::size_t i) const {
  const auto& after = t[i + 1];
  const bool aboard = after.is(Role::service_place) || is(i + 1, w("here")) || is(i + 1, w("her"));
  if (!aboard && !ends_here(i + 1) && !after.is_number() && !after.is(Role::number) &&
      !after.is(Role::pronoun))
    return false;
  if (is(i, w("came"))) return true;
  if (!is(i, w("come")) || is(i - 1, w("you"))) return false;
  constexpr std::size_t kReach = 6;
  for (std::size_t k = i + 1; k <= i + kReach && t[k].kind != Token::Kind::end; ++k)
    for (const auto ahead : {w("will"), w("i'll"), w("we'll"), w("you'll"), w("won't")})
      if (is(k, ahead)) return false;
  return true;
}

// Behind "joined", "reported", "signed": on, up, for duty, the ship, or a new clause; not the union, the
// papers.
bool Grammar::joins_service(std::size_t i) const {
  const auto& next = t[i];
  if (next.kind != Token::Kind::word || next.newline) return true;
  if (is(i, w("on")) || is(i, w("up")) || is(i, w("in"))) return true;
  if (is(i, w("for"))) return is(i + 1, w("duty")) || is(i + 1, w("work"));
  const std::size_t at = is(i, w("to")) || is(i, w("with")) ? i + 1 : i;
  if (is(at, w("the")) || is(at, w("my")) || is(at, w("a")))
    return t[at + 1].is(Role::workplace) || t[at + 2].is(Role::workplace) ||
           (t[at + 1].capital && ends_in_small(at + 1));
  return at == i && next.is(Role::after_year);
}

// started, began work, first started here, first went, first went there; not: started the engine, first went
// up the mast
bool Grammar::starts_service(std::size_t i, Spec& spec) const {
  const std::size_t verb = is(i, w("first")) ? i + 1 : i;
  const bool starts = is(verb, w("started")) || is(verb, w("began"));
  const bool comes = verb > i && (is(verb, w("went")) || is(verb, w("come")));
  if (!starts && !comes) return false;
  const std::size_t past = verb + 1;
  const bool somewhere = t[past].is(Role::service_place) || is(past, w("here")) ||
                         (is(past, w("there")) && !is(past + 1, w("was")) && !is(past + 1, w("were"))) ||
                         (starts && is(past, w("work")));
  spec.end = somewhere ? past + 1 : past;
  if (somewhere) return true;
  // "When I started it": the engine, not the service.
  return ends_here(past) && !(starts && (is(past, w("it")) || is(past, w("the")) || is(past, w("a"))));
}

// joined, came aboard, left: the edge of a service, its words beginning at i
bool Grammar::edge_of_service(std::size_t i, Spec& spec) const {
  const bool place = t[i + 1].is(Role::service_place);
  const bool aboard = place || is(i + 1, w("her")) || is(i + 1, w("here"));
  spec.kind = Spec::Kind::service_edge;
  spec.first_edge = true;
  spec.rule = "service-begins";
  // "When I first came", "when I started": of those who came twice, the first time.
  spec.outermost_edge =
      is(i, w("first")) || is(i + 1, w("first")) || is(i, w("started")) || is(i, w("began"));
  if (t[i].is(Role::join)) return spec.end = aboard ? i + 2 : i + 1, aboard || joins_service(i + 1);
  const bool came_first = is(i, w("first")) && (is(i + 1, w("came")) || is(i + 1, w("come")));
  if (came_first) return spec.end = t[i + 2].is(Role::service_place) ? i + 3 : i + 2, true;
  if (is(i, w("came")) && is(i + 1, w("first"))) return spec.end = i + 2, true;
  if (starts_service(i, spec)) return true;
  const bool coming = came_at(i);
  if (coming && !aboard) return spec.end = i + 1, true;
  const bool new_to_it = is(i + 2, w("to")) || is(i + 2, w("at"));
  if (is(i, w("was")) && is(i + 1, w("new")) && !new_to_it)
    return spec.end = is(i + 2, w("there")) || is(i + 2, w("here")) ? i + 3 : i + 2, true;
  const bool came = (coming && aboard) || (is(i, w("went")) && place) ||
                    (is(i, w("got")) && (place || is(i + 1, w("here")) || is(i + 1, w("there"))));
  if (came) return spec.end = i + 2, true;
  if (!t[i].is(Role::leave)) return false;
  spec.first_edge = false;
  spec.outermost_edge = is(i, w("retired"));
  spec.rule = "service-ends";
  const auto& after = t[i + 1];
  if (place || is(i + 1, w("her"))) return spec.end = i + 2, true;
  if (is(i + 1, w("the"))) return spec.end = i + 3, t[i + 2].is(Role::workplace);
  spec.end = i + 1;
  if (after.kind != Token::Kind::word || after.newline) return true;
  // I left it burning, I left my boots: not the service.
  for (const auto object : {w("it"), w("a"), w("my"), w("him"), w("them"), w("that"), w("out"), w("off")})
    if (after.hash == object) return false;
  return after.is(Role::after_year);
}

// "I reported aboard on the ninth of June 1955", "In March 1952 I joined her": the date is that of coming.
bool Grammar::tells_coming(const Spec& spec) const {
  constexpr std::size_t kReach = 9;
  const auto comes = [&](std::size_t at, Spec& edge) {
    if (!is(at, w("i"))) return false;
    const std::size_t verb = is(at + 1, w("had")) || is(at + 1, w("first")) ? at + 2 : at + 1;
    return edge_of_service(verb, edge) && edge.first_edge;
  };
  for (std::size_t back = 1; back <= kReach && back <= spec.begin; ++back) {
    const std::size_t at = spec.begin - back;
    if (!t[at].is_word()) break;
    Spec edge;
    if (comes(at, edge)) {
      for (const auto word : {w("when"), w("before"), w("after"), w("since"), w("until"), w("till"), w("if")})
        if (is(at - 1, word)) return false;
      return edge.end <= spec.begin;
    }
    if (t[at].is(Role::pronoun) || is(at, w("and")) || is(at, w("that")) || is(at, w("but"))) break;
  }
  Spec edge;
  return comes(t[spec.end].is_sign(',') ? spec.end + 1 : spec.end, edge);
}

// when I left; before I came aboard; the day I reported
bool Grammar::service_edge(std::size_t i, Spec& spec) const {
  spec.begin = i;
  // The interviewer's "when you first came" is the narrator's coming.
  if (is(i, w("when"))) {
    if (is(i + 1, w("i")) || is(i + 1, w("you"))) return edge_of_service(i + 2, spec);
    // "When we first came": not "when we came to the buoy", "when we left".
    const bool first = is(i + 2, w("first")) || is(i + 3, w("first"));
    return first && is(i + 1, w("we")) && edge_of_service(i + 2, spec) && spec.first_edge;
  }
  if (is(i, w("i"))) {
    const auto before = t[i - 1].hash;
    return (before == w("before") || before == w("after") || before == w("since") || before == w("until")) &&
           edge_of_service(i + 1, spec);
  }
  // "Before my time", the interviewer's "before your time": before the first coming.
  if (is(i, w("my")) || is(i, w("your"))) {
    if (t[i - 1].hash != w("before") || !is(i + 1, w("time"))) return false;
    spec.kind = Spec::Kind::service_edge;
    spec.first_edge = spec.outermost_edge = true;
    spec.rule = "service-begins";
    spec.end = i + 2;
    return true;
  }
  if (!is(i, w("the")) || !t[i + 1].is(Role::unit)) return false;
  spec.unit = static_cast<Unit>(t[i + 1].value(Role::unit));
  if (spec.unit < Unit::day || spec.unit > Unit::year) return false;
  std::size_t j = i + 2;
  if (is(j, w("that")) || is(j, w("when"))) ++j;
  return is(j, w("i")) && edge_of_service(j + 1, spec);
}

// my second year aboard, my first winter aboard, my last year
bool Grammar::service_year(std::size_t i, Spec& spec) const {
  std::size_t j = i + 1, past = 0;
  if (is(j, w("very"))) ++j;
  std::int64_t number = 0;
  if (is(j, w("last")) || is(j, w("final")))
    number = -1, past = j + 1;
  else if (!ordinal(j, number, past) || number > 40)
    return false;
  const auto& unit = t[past];
  const bool on_board = is(past + 1, w("on")) && is(past + 2, w("board"));
  spec.kind = Spec::Kind::service_year;
  spec.begin = i;
  spec.end = t[past + 1].is(Role::service_place) ? past + 2 : on_board ? past + 3 : past + 1;
  spec.number = static_cast<int>(number);
  spec.rule = "service-year";
  if (std::size_t after = past; unit.is(Role::phrase)) {  // my first Christmas aboard
    const auto* phrase = t.phrase_at(past, after);
    if (!phrase || !phrase->day || phrase->day->kind == NamedDay::Kind::once) return false;
    spec.end = t[after].is(Role::service_place) ? after + 1 : after;
    spec.unit = Unit::year;
    spec.named = &*phrase->day;
    return true;
  }
  if (unit.is(Role::season)) {
    spec.unit = Unit::year;
    spec.date.season = static_cast<Season>(unit.value(Role::season));
    return true;
  }
  if (!unit.is(Role::unit)) return false;
  spec.unit = static_cast<Unit>(unit.value(Role::unit));
  return spec.unit == Unit::year || spec.unit == Unit::day || spec.unit == Unit::week ||
         spec.unit == Unit::month;
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
