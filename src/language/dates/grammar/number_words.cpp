// Numbers in words: "sixty-two", "two hundred and fifty", "twenty-first", "two or three", "a couple of",
// "half a".
#include "language/dates/grammar/grammar.h"

namespace witnessmark::dates {

bool Grammar::below_hundred(std::size_t i, std::int64_t& value, std::size_t& past) const {
  if (!t[i].is(Role::number)) return false;
  value = t[i].value(Role::number);
  past = i + 1;
  if (value < 20) return true;
  std::size_t j = i + 1;
  if (t[j].is_sign('-') && !t[j].space && !t[j + 1].space) ++j;
  if (t[j].is(Role::number) && !t[j].paragraph && t[j].value(Role::number) < 10) {
    value += t[j].value(Role::number);
    past = j + 1;
  }
  return true;
}

bool Grammar::cardinal_words(std::size_t i, std::int64_t& value, std::size_t& past) const {
  std::int64_t total = 0, part = 0;
  std::size_t j = i;
  bool any = false;
  if (is(j, w("a")) && t[j + 1].is(Role::multiplier)) part = 1, ++j, any = true;
  for (int steps = 0; steps < 6; ++steps) {
    std::int64_t number = 0;
    std::size_t after = j;
    if (below_hundred(j, number, after)) {
      if (any && part % 100 != 0) break;
      part += number;
      j = after;
      any = true;
    } else if (any && t[j].is(Role::multiplier)) {
      const auto by = t[j].value(Role::multiplier);
      if (by == 1000)
        total += (part ? part : 1) * 1000, part = 0;
      else
        part = (part ? part : 1) * 100;
      ++j;
    } else if (any && is(j, w("and")) && t[j - 1].is(Role::multiplier) &&
               below_hundred(j + 1, number, after)) {
      ++j;
      continue;
    } else {
      break;
    }
  }
  if (!any) return false;
  value = total + part;
  past = j;
  return true;
}

bool Grammar::cardinal(std::size_t i, std::int64_t& value, std::size_t& past) const {
  if (!t[i].is_number()) return cardinal_words(i, value, past);
  if (t[i].number < 0) return false;
  value = t[i].number;
  past = i + 1;
  return true;
}

bool Grammar::ordinal(std::size_t i, std::int64_t& value, std::size_t& past) const {
  if (t[i].is_number()) {
    if (t[i].digits > 2 || t[i].grouped || !t[i + 1].is(Role::ordinal_ending) || t[i + 1].space) return false;
    value = t[i].number;
    past = i + 2;
    return true;
  }
  if (t[i].is(Role::ordinal)) {
    value = t[i].value(Role::ordinal);
    past = i + 1;
    return true;
  }
  if (!t[i].is(Role::number) || t[i].value(Role::number) < 20) return false;
  std::size_t j = i + 1;
  if (t[j].is_sign('-') && !t[j].space) ++j;
  if (!t[j].is(Role::ordinal) || t[j].value(Role::ordinal) > 9) return false;
  value = t[i].value(Role::number) + t[j].value(Role::ordinal);
  past = j + 1;
  return true;
}

bool Grammar::count(std::size_t i, Count& count, std::size_t& past) const {
  count = {};
  std::size_t j = i;
  if (is(j, w("half")) && is(j + 1, w("a")) && is(j + 2, w("dozen"))) {
    count.value = 6;
    count.couple = true;
    past = j + 3;
    return t[past].any(bit(Role::units) | bit(Role::seasons));
  }
  if (is(j, w("half"))) {  // half a year, half an hour
    if (!is(j + 1, w("a")) && !is(j + 1, w("an"))) return false;
    count.value = 0;
    count.half = true;
    past = j + 2;
    return true;
  }
  const bool article = is(j, w("a")) || is(j, w("an"));
  if (article && is(j + 1, w("dozen")) && t[j + 2].any(bit(Role::units) | bit(Role::seasons))) {
    count.value = 12;
    count.couple = true;
    past = j + 2;
    return true;
  }
  if (article) {
    if (is(j + 1, w("couple")) || is(j + 1, w("pair"))) {
      count.value = 2;
      count.couple = is(j + 1, w("couple"));
      past = is(j + 2, w("of")) ? j + 3 : j + 2;
      return true;
    }
    if (is(j + 1, w("few")) || is(j + 1, w("good")) || is(j + 1, w("great")) || is(j + 1, w("number")) ||
        is(j + 1, w("matter"))) {
      std::size_t k = j + 2;
      if (is(j + 1, w("good")) || is(j + 1, w("great"))) {
        if (!is(k, w("many")) && !is(k, w("few"))) return false;
        ++k;
      } else if (!is(j + 1, w("few"))) {
        if (!is(k, w("of"))) return false;
        ++k;
      }
      count.vague = true;
      count.few = is(j + 1, w("few"));
      past = k;
      return true;
    }
    if (!t[j + 1].is(Role::multiplier)) {
      count.value = 1;
      past = j + 1;
      return true;
    }
  }
  if (is(j, w("couple")) && is(j + 1, w("of"))) {
    count.value = 2;
    count.couple = true;
    past = j + 2;
    return true;
  }
  if (t[j].is(Role::vague)) {
    count.vague = true;
    count.few = is(j, w("few")) || is(j, w("several"));
    past = j + 1;
    return true;
  }
  if (is(j, w("dozens")) && is(j + 1, w("of"))) {
    count.vague = true;
    past = j + 2;
    return true;
  }
  if (!cardinal(j, count.value, past)) return false;
  if (t[j].is_number() && t[j].grouped && t.text(t[j]).find('.') != std::string_view::npos)
    count.decimal = std::string(t.text(t[j]));
  count.round = count.value >= 10 && count.value % 5 == 0;
  const std::size_t odd =
      t[past].is_sign('-') && !t[past].space ? past + 1 : past;  // twenty-odd, thirty-some
  if (!prose() && count.value >= 20 && count.value % 10 == 0 && count.value < 100 &&
      (is(odd, w("odd")) || (odd != past && is(odd, w("some")))) && t[odd + 1].is(Role::units)) {
    count.upper = count.value + 9;
    past = odd + 1;
    return true;
  }
  // two or three, ten to fifteen
  std::int64_t upper = 0;
  std::size_t after = past;
  if ((is(past, w("or")) || is(past, w("to")) || t[past].is_sign('-')) && cardinal(past + 1, upper, after) &&
      upper > count.value && upper < count.value * 3 + 3) {
    count.upper = upper;
    past = after;
  }
  if (is(past, w("and")) && is(past + 1, w("a")) && is(past + 2, w("half"))) {
    count.half = true;
    past += 3;
  }
  return true;
}

}  // namespace witnessmark::dates
