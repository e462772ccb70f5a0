// Which way a date without a year lies, by tense and by "back": in November we had sailed, back in December.
#include "language/dates/grammar/grammar.h"

namespace witnessmark::dates {

// In November we had sailed; they'd painted her in the fall. Not "by December she had been sold", nor "when
// we came in May the ice had gone".
bool Grammar::pluperfect_near(const Spec& spec) const {
  constexpr std::size_t kReach = 6;
  const auto ends = [&](const Token& token) {
    return token.kind == Token::Kind::end || token.paragraph ||
           (token.kind == Token::Kind::sign && token.sign != ',' && token.sign != '\'');
  };
  const auto told = [&](std::size_t at) {
    const bool had =
        is(at, w("had")) || (t[at].is_word() && t[at].is(Role::after_year) && ends_with(at, "'d"));
    const std::size_t verb = is(at + 1, w("just")) || is(at + 1, w("already")) ? at + 2 : at + 1;
    return had && t[verb].is_word() && (t[verb].is(Role::participle) || ends_with(verb, "ed"));
  };
  if (t[spec.begin - 1].is(Role::limit)) return false;
  const std::size_t head = spec.definite ? spec.begin - 1 : spec.begin;
  const bool in = is(head - 1, w("in")) || is(head - 1, w("on")) || is(head - 1, w("at"));
  const std::size_t first = in ? head - 1 : head;
  const bool opens = first == 0 || !t[first - 1].is_word() || t[first].newline || is(first - 1, w("and")) ||
                     is(first - 1, w("but"));
  for (std::size_t at = spec.end; opens && at < spec.end + kReach && !ends(t[at]); ++at)
    if (told(at)) return true;
  for (std::size_t at = spec.begin;
       at > 0 && spec.begin - at < kReach && !ends(t[at - 1]) && !t[at].paragraph; --at)
    if (told(at - 1)) return true;
  return false;
}

// "Back in December", "that was back in December"; but "we came back in December" goes nowhere.
bool Grammar::opens_going_back(std::size_t i) const {
  const std::size_t back = is(i - 1, w("back")) ? i - 1 : i - 2;
  if (!is(back, w("back")) || (back + 2 == i && !t[i - 1].is_word())) return false;
  const auto& before = t[back - 1];
  if (!before.is_word() || t[back].newline) return true;
  if (is(back - 1, w("was")))
    return is(back - 2, w("it")) || is(back - 2, w("that")) || is(back - 2, w("this"));
  return is(back - 1, w("and")) || is(back - 1, w("but")) || is(back - 1, w("so"));
}

void Grammar::put_tense(Spec& spec) const {
  if (spec.kind == Spec::Kind::relative && spec.speech && spec.following == Following::previous &&
      pluperfect_near(spec)) {
    spec.speech = false;
    spec.told_back = true;
  }
  if (spec.kind != Spec::Kind::calendar || spec.year_said || spec.of || spec.first || spec.day_only) return;
  spec.going_back = opens_going_back(spec.begin) ||
                    (is(spec.begin - 1, w("the")) && is(spec.end, w("before"))) || pluperfect_near(spec);
}

}  // namespace witnessmark::dates
