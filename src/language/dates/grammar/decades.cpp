// Decades and centuries: the 1950s, the late sixties, nineteen fifty-something, the 19th century, the
// eighteen hundreds.
#include "language/dates/grammar/grammar.h"

namespace witnessmark::dates {
namespace {

constexpr std::uint64_t kPossessive[]{w("my"), w("his"), w("her"), w("their"), w("your"), w("our")};

bool is_possessive(std::uint64_t hash) {
  for (const auto word : kPossessive)
    if (word == hash) return true;
  return false;
}

}  // namespace

// "She was in her late forties": years of a life.
bool Grammar::ages_of_someone(std::size_t i) const {
  std::size_t j = i - 1;
  if (t[j].is_sign('-')) --j;
  if (t[j].is(Role::part)) --j;
  return j != i - 1 && (is_possessive(t[j].hash) || names_owner(j));
}

// "His temperature was in the nineties", "the glass stood in the high twenties".
bool Grammar::is_reading(std::size_t i) const {
  std::size_t j = is(i - 1, w("the")) ? i - 2 : i - 1;
  if (is(j, w("in"))) --j;
  for (const auto word :
       {w("was"), w("were"), w("is"), w("stood"), w("stayed"), w("ran"), w("got"), w("read")})
    if (is(j, word)) return t[j - 1].is(Role::amount);
  return false;
}

// "We spun the eighties upstairs": counts of yarn, unless they stand as a time: in the eighties.
bool Grammar::counts_yarn(std::size_t i) const {
  if (prose()) return false;
  const bool the = is(i - 1, w("the")) || is(i - 1, w("those"));
  const auto& before = t[the ? i - 2 : i - 1];
  if (before.any(bit(Role::place_in_time) | bit(Role::part) | bit(Role::part_noun) | bit(Role::limit)))
    return false;
  constexpr std::size_t kBack = 8, kForward = 5;
  const auto stops = [&](std::size_t at) {
    return t[at].kind == Token::Kind::end ||
           (t[at].kind == Token::Kind::sign && t[at].sign != ',' && t[at].sign != '\'');
  };
  for (std::size_t at = i; at > 0 && i - at < kBack && !stops(at - 1); --at)
    if (t[at - 1].is(Role::yarn)) return true;
  for (std::size_t at = i + 1; at < i + kForward && !stops(at); ++at)
    if (t[at].is(Role::yarn)) return true;
  return false;
}

bool Grammar::decade(std::size_t i, Spec& spec) const {
  const auto make = [&](std::size_t past, std::int64_t first, bool short_year, const char* rule) {
    spec.kind = Spec::Kind::calendar;
    spec.begin = i;
    spec.end = past;
    spec.date = DateValue::of_year(first);
    spec.date.precision = DateValue::Precision::decade;
    spec.short_year = short_year;
    spec.year_said = true;
    spec.rule = rule;
    std::size_t after = past;
    if (const int era = short_year ? 0 : era_sign(past, after); era == 1) {
      spec.end = after;
      spec.date.before_christ = true;
      spec.date.year = 1 - first;
    }
    return true;
  };
  const auto ending = [&](std::size_t j, std::size_t& past) {  // s, 's
    if (is(j, w("s")) && !t[j].space) return past = j + 1, true;
    if (t[j].is_sign('\'') && !t[j].space && is(j + 1, w("s")) && !t[j + 1].space) return past = j + 2, true;
    return false;
  };
  std::size_t j = i, past = i;
  if (t[j].is_sign('\'')) ++j;
  if (t[j].is_number() && !t[j].grouped && t[j].number % 10 == 0 && ending(j + 1, past)) {
    if (t[j].digits == 4 && j == i) {
      if (!prose() && t[j].number % 100 == 0 && t[j].number <= 1800) return false;  // the 1800s: a century
      if (is(past, w("men"))) return false;
      return make(past, t[j].number, false, "decade-digits");
    }
    if (t[j].digits == 3 && j == i) {  // the 470s BC
      std::size_t after = past;
      return era_sign(past, after) != 0 && make(past, t[j].number, false, "decade-digits");
    }
    if (t[j].digits == 2 && !number_is_label(i)) {
      if (is_possessive(t[i - 1].hash)) return false;
      return make(past, t[j].number, true, "decade-digits");
    }
    return false;
  }
  if (t[i].is(Role::number) && t[i].value(Role::number) >= 16 &&
      t[i].value(Role::number) <= 20) {  // nineteen-sixties, nineteen sixty-something
    j = i + 1;
    if (t[j].is_sign('-') && !t[j].space) ++j;
    const std::size_t some = t[j + 1].is_sign('-') && !t[j + 1].space ? j + 2 : j + 1;
    if (!prose() && t[j].is(Role::number) && t[j].value(Role::number) >= 20 && is(some, w("something")))
      return make(some + 1, t[i].value(Role::number) * 100 + t[j].value(Role::number), false, "decade-words");
    if (t[j].is(Role::decade))
      return make(j + 1, t[i].value(Role::number) * 100 + t[j].value(Role::decade), false, "decade-words");
    return false;
  }
  if (t[i].is_sign('\'') && t[i + 1].is(Role::decade) && !t[i + 1].space && !prose())  // the 'thirties
    return make(i + 2, t[i + 1].value(Role::decade), true, "decade-words");
  if (!t[i].is(Role::decade)) return false;
  const auto before = t[i - 1].hash;
  if (!prose() && (ages_of_someone(i) || is_reading(i))) return false;
  const bool told = before == w("the") || before == w("those") || t[i - 1].any(bit(Role::part)) ||
                    (t[i - 1].is_sign('-') && t[i - 2].is(Role::part)) || (is(i - 1, w("in")) && prose()) ||
                    ((is(i - 1, w("and")) || is(i - 1, w("or"))) && t[i - 2].is(Role::decade) && !prose() &&
                     (is(i - 3, w("the")) || t[i - 3].is(Role::part)));
  if (!told || counts_yarn(i)) return false;
  return make(i + 1, t[i].value(Role::decade), true, "decade-words");
}

// the eighteen hundreds, the 1800s
bool Grammar::hundreds(std::size_t i, Spec& spec) const {
  if (prose()) return false;
  std::size_t past = i;
  std::int64_t first = 0;
  if (t[i].is(Role::number) && is(i + 1, w("hundreds"))) {
    first = t[i].value(Role::number) * 100;
    past = i + 2;
  } else if (t[i].is_number() && t[i].digits == 4 && !t[i].grouped && t[i].number % 100 == 0 &&
             is(i + 1, w("s")) && !t[i + 1].space) {
    first = t[i].number;
    past = i + 2;
  } else {
    return false;
  }
  if (first < 1000 || first > 1800)
    return false;  // The nineteen hundreds may be a century or its first ten years.
  spec.kind = Spec::Kind::calendar;
  spec.begin = i;
  spec.end = past;
  spec.date = DateValue::of_year(first);
  spec.date.precision = DateValue::Precision::century;
  spec.year_said = true;
  spec.rule = "century";
  return true;
}

bool Grammar::century(std::size_t i, Spec& spec) const {
  if (hundreds(i, spec)) return true;
  std::int64_t number = 0;
  std::size_t past = 0;
  if (!ordinal(i, number, past) || number < 1 || number > 30) return false;
  if (t[past].is_sign('-') && !t[past].space) ++past;
  if (!is(past, w("century")) && !is(past, w("centuries"))) return false;
  spec.kind = Spec::Kind::calendar;
  spec.begin = i;
  spec.end = past + 1;
  spec.date = DateValue::of_year((number - 1) * 100);
  spec.date.precision = DateValue::Precision::century;
  spec.year_said = true;
  spec.rule = "century";
  std::size_t after = 0;
  if (era_sign(past + 1, after) == 1) {
    spec.end = after;
    spec.date.before_christ = true;
    spec.date.year = 1 - (number - 1) * 100;
  }
  return true;
}

}  // namespace witnessmark::dates
