// Dates hung on a service: when I came aboard, the day I reported, my second year aboard, before my time.
#include "language/dates/grammar/grammar.h"

namespace witnessmark::dates {

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

}  // namespace witnessmark::dates
