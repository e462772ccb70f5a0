// Values seen from the date under discussion or the day of speaking: that spring, the following year, later
// that month, two years later, a couple of weeks before Christmas.
#include "language/dates/talk/talk.h"

namespace witnessmark::dates {

using P = DateValue::Precision;

EdtfDate day_date(Day day) {
  const auto civil = to_civil(day);
  return std::get<EdtfDate>(edtf_day(civil.year, civil.month, civil.day).value);
}

Edtf day_interval(Day first, Day last) {
  return Edtf{EdtfInterval{day_date(first), day_date(last)}};
}

Edtf one_of_span(std::optional<EdtfDate> first, std::optional<EdtfDate> last) {
  EdtfSet set;
  EdtfSetElement element;
  element.is_span = true;
  element.first = std::move(first);
  element.last = std::move(last);
  set.elements.push_back(std::move(element));
  return Edtf{std::move(set)};
}

namespace {

std::int64_t floor_tens(std::int64_t value, std::int64_t by) {
  return (value >= 0 ? value / by : -((-value + by - 1) / by)) * by;
}

bool is_day(const DateValue& value) {
  return value.precision == P::day && value.year_known && value.month && value.day;
}
bool has_month(const DateValue& value) {
  return value.year_known && value.month && (value.precision == P::day || value.precision == P::month);
}

Day day_of(const DateValue& value) {
  return to_day({value.year, value.month, value.day});
}

std::string week_timex(Day day) {  // ISO 8601 week: the week of its Thursday
  const Day thursday = day - (iso_weekday(day) - 4);
  const auto year = to_civil(thursday).year;
  const auto week = (thursday - to_day({year, 1, 1})) / 7 + 1;
  return std::to_string(year) + "-W" + (week < 10 ? "0" : "") + std::to_string(week);
}

DateValue unresolved(const Spec& spec) {
  DateValue value = spec.date;
  switch (spec.unit) {
    case Unit::year:
      if (value.precision == P::none) value.precision = P::year;
      break;
    case Unit::month:
      value.precision = P::month;
      break;
    case Unit::week:
      if (value.precision == P::none) value.precision = P::week;
      break;
    case Unit::decade:
      value.precision = P::decade;
      break;
    case Unit::century:
      value.precision = P::century;
      break;
    default:
      if (value.precision == P::none) value.precision = P::day;
      break;
  }
  return value;
}

}  // namespace

std::optional<DateValue> moved(const DateValue& from, std::int64_t count, Unit unit) {
  if (!from.year_known || from.precision == P::none) return std::nullopt;
  constexpr std::int64_t kMost = 3'000'000;
  if (count > kMost || count < -kMost) return std::nullopt;
  switch (unit) {
    case Unit::fortnight:
      count *= 2;
      [[fallthrough]];
    case Unit::week:
    case Unit::weekend:
      count *= 7;
      [[fallthrough]];
    case Unit::day:
      if (!is_day(from)) return std::nullopt;
      return DateValue::of_day(to_civil(day_of(from) + count));
    case Unit::month: {
      if (!has_month(from)) return std::nullopt;
      const auto civil = add_months({from.year, from.month, 1}, count);
      return DateValue::of_month(civil.year, civil.month);
    }
    case Unit::century:
      count *= 10;
      [[fallthrough]];
    case Unit::decade:
      count *= 10;
      [[fallthrough]];
    case Unit::year: {
      if (from.precision < P::year) return std::nullopt;
      return DateValue::of_year(from.year + count);
    }
    default:
      return std::nullopt;
  }
}

Meaning Talk::relative(const Spec& spec) const {
  Meaning meaning;
  const auto& base = spec.speech ? speech_ : reference_;
  meaning.anchor = spec.speech ? (speech_ ? "interview " + to_timex(*speech_) : "") : reference_anchor();
  meaning.value = unresolved(spec);
  const int step = spec.following == Following::next ? 1 : spec.following == Following::previous ? -1 : 0;
  const bool speech_place = spec.speech && step != 0;
  if (!base || !base->year_known) {
    if (!spec.speech && year_ && spec.unit == Unit::year && spec.date.precision == P::none)
      meaning.value = DateValue::of_year(*year_ + step);
    else {
      meaning.anchor.clear();
      meaning.moves_talk = false;
      if (!spec.speech && !year_ && speech_ && !setting_.prose &&
          step != 0) {  // Nothing was under discussion: perhaps seen from today.
        Spec from_today = Spec{};
        from_today.kind = spec.kind, from_today.unit = spec.unit, from_today.date = spec.date,
        from_today.following = spec.following;
        from_today.named = spec.named, from_today.speech = true;
        const auto other = relative(from_today);
        if (other.moves_talk)
          meaning.alternatives.push_back(other.timex.empty() ? std::string(to_timex(other.value).view())
                                                             : other.timex);
      }
    }
    return meaning;
  }
  const auto& from = *base;
  // A part of a year: season, month, named day.
  if (spec.unit == Unit::year && (spec.date.precision != P::none || spec.named)) {
    const int at = from.precision == P::season  ? static_cast<int>(from.season) * 3
                   : from.precision >= P::month ? from.month
                                                : 0;
    if (from.precision < P::year) return meaning.moves_talk = false, meaning;
    auto year = from.year;
    int month = spec.date.precision == P::season ? static_cast<int>(spec.date.season) * 3 : spec.date.month;
    if (spec.named) month = to_civil(day_in_year(*spec.named, year)).month;
    if (step > 0) {
      if (!at || month <= at) ++year;  // the first that begins after
    } else if (step < 0) {
      const bool ended = at && (spec.date.precision == P::season ? month + 2 < at : month < at);
      if (!ended) --year;
    } else if (spec.date.season == Season::winter && at && at <= 2) {
      --year;  // that winter, in January
    }
    if (spec.named) {
      named(spec, meaning, year);
      return meaning;
    }
    meaning.value.year = year;
    meaning.value.year_known = true;
    return meaning;
  }
  switch (spec.unit) {
    case Unit::year:
      if (from.precision < P::year) return meaning.moves_talk = false, meaning;
      meaning.value = DateValue::of_year(from.year + step);
      return meaning;
    case Unit::decade:
    case Unit::century: {
      const bool bc = from.year <= 0;
      const std::int64_t width = spec.unit == Unit::decade ? 10 : 100;
      const auto counted = bc ? 1 - from.year : from.year;
      const auto first = floor_tens(counted, width) + (bc ? -step : step) * width;
      meaning.value = DateValue::of_year(bc ? 1 - first : first);
      meaning.value.before_christ = bc;
      meaning.value.precision = spec.unit == Unit::decade ? P::decade : P::century;
      return meaning;
    }
    case Unit::month:
      if (const auto value = moved(from, step, Unit::month))
        meaning.value = *value;
      else if (from.precision >= P::year) {
        meaning.value = DateValue::of_month(from.year, 0);
        meaning.moves_talk = false;
      }
      return meaning;
    case Unit::week:
      if (spec.date.weekday) {  // that Sunday, the following Sunday, last Sunday
        if (!is_day(from)) return meaning.moves_talk = false, meaning;
        const Day day = day_of(from);
        const int ahead = (spec.date.weekday - iso_weekday(day) + 7) % 7;
        if (step > 0)
          meaning.value = DateValue::of_day(to_civil(day + (ahead == 0 ? 7 : ahead)));
        else if (step < 0)
          meaning.value = DateValue::of_day(to_civil(day - (ahead == 0 ? 7 : 7 - ahead)));
        else if (ahead == 0)
          meaning.value = from;
        else {
          meaning.moves_talk = false;  // the one before or the one after
          for (const Day near : {day - (7 - ahead), day + ahead})
            meaning.alternatives.push_back(to_string(near));
        }
        return meaning;
      }
      if (is_day(from)) {
        const Day day = day_of(from) + 7 * step;
        const Day monday = day - (iso_weekday(day) - 1);
        meaning.timex = week_timex(day);
        meaning.edtf = day_interval(monday, monday + 6);
        meaning.value = DateValue::of_day(to_civil(day));
        meaning.value.precision = P::month;
        meaning.value.day = 0;
      } else {
        meaning.moves_talk = false;
        if (setting_.prose && from.precision >= P::year)
          meaning.value.year = from.year, meaning.value.year_known = true;
      }
      return meaning;
    case Unit::weekend:
    case Unit::fortnight:
      meaning.moves_talk = false;
      return meaning;
    default:
      break;
  }
  // Days and their parts.
  const auto time = spec.date.time;
  if (is_day(from)) {
    int days = step;
    if (speech_place && !time.empty()) days = step;  // last night, this morning
    meaning.value = DateValue::of_day(to_civil(day_of(from) + days));
  } else if (has_month(from) && !speech_place) {
    meaning.value = from;
    meaning.value.precision = P::day;
    meaning.value.day = 0;
    meaning.moves_talk = false;
    meaning.no_edtf = true;
  } else {
    meaning.moves_talk = false;
    if (setting_.prose && from.year <= 0) meaning.timex = "BCXXXX-XX-XX" + std::string(time.view());
  }
  meaning.value.time = time;
  return meaning;
}

// later that month, earlier that year
Meaning Talk::within(const Spec& spec) const {
  Spec whole;
  whole.kind = Spec::Kind::relative;
  whole.unit = spec.unit;
  whole.following = Following::same;
  whole.date = spec.date;
  whole.speech = spec.speech;
  Meaning meaning = relative(whole);
  if (!meaning.value.year_known || spec.date.precision != P::none) return meaning;
  const auto& from = spec.speech ? speech_ : reference_;
  const bool later = spec.later == Later::after;
  if (from && spec.unit == Unit::month && is_day(*from)) {
    const Day first = to_day({from->year, from->month, 1}), day = day_of(*from);
    const Day last = first + (days_in_month(from->year, from->month) - 1);
    if (later && day < last) meaning.edtf = one_of_span(day_date(day + 1), day_date(last));
    if (!later && first < day) meaning.edtf = one_of_span(day_date(first), day_date(day - 1));
  } else if (from && spec.unit == Unit::year && has_month(*from)) {
    const auto month = [&](int number) { return std::get<EdtfDate>(edtf_month(from->year, number).value); };
    if (later)
      meaning.edtf = one_of_span(month(from->month), month(12));
    else
      meaning.edtf = one_of_span(month(1), month(from->month));
  }
  return meaning;
}

Meaning Talk::offset(const Spec& spec) const {
  Meaning meaning;
  std::optional<DateValue> base;
  Meaning from;
  if (spec.anchor) {
    from = this->meaning(*spec.anchor);
    if (from.value.year_known) base = from.value;
    meaning.anchor = from.anchor;
    if (base && spec.anchor->kind != Spec::Kind::event) meaning.anchor = to_timex(*base).view();
    // After a period its end counts, not its beginning.
    if (spec.later == Later::after && from.edtf) {
      if (const auto* interval = std::get_if<EdtfInterval>(&from.edtf->value))
        if (const auto* end = std::get_if<EdtfDate>(&interval->end))
          if (const auto value = from_edtf(Edtf{*end})) base = *value;
    }
  } else if (spec.speech) {
    base = speech_;
    if (speech_) meaning.anchor = "interview " + to_timex(*speech_);
  } else {
    base = reference_;
    meaning.anchor = reference_anchor();
  }
  const bool forward = spec.later == Later::after;
  meaning.value = unresolved(spec);
  if (spec.timex == kUnknownAnchor) {
    Spec here;
    here.kind = spec.kind, here.unit = spec.unit, here.date = spec.date, here.later = spec.later;
    const auto other = offset(here);
    if (const auto edtf = to_edtf(other.value, false)) meaning.alternatives.push_back(to_string(*edtf));
    meaning.anchor.clear();
    meaning.moves_talk = false;
    return meaning;
  }
  if (spec.count.vague) {
    meaning.value = {};
    meaning.timex = forward ? "FUTURE_REF" : "PAST_REF";
    meaning.moves_talk = false;
    return meaning;
  }
  if (!base) {
    meaning.anchor.clear();
    meaning.moves_talk = false;
    return meaning;
  }
  const std::int64_t sign = forward ? 1 : -1;
  if (spec.date.precision == P::season ||
      (spec.unit == Unit::week && spec.date.weekday)) {  // the summer before, the Sunday before
    Spec step;
    step.kind = Spec::Kind::relative;
    step.unit = spec.unit;
    step.date = spec.date;
    step.following = forward ? Following::next : Following::previous;
    Talk at(*this);
    at.reference_ = base;
    at.year_ = base->year;
    auto found = at.relative(step);
    found.anchor = meaning.anchor;
    if (!forward && spec.date.precision == P::season && found.value.year_known &&
        base->precision >= P::month && base->month >= static_cast<int>(spec.date.season) * 3 &&
        base->month <= static_cast<int>(spec.date.season) * 3 + 2) {
      DateValue same = found.value;  // The summer before an August may be that same summer.
      same.year = base->year;
      if (same.year != found.value.year) found.alternatives.push_back(to_string(*to_edtf(same, false)));
    }
    return found;
  }
  if (spec.count.half && spec.unit >= Unit::year) {
    const auto months = (spec.count.value * 12 + 6) * (spec.unit == Unit::decade    ? 10
                                                       : spec.unit == Unit::century ? 100
                                                                                    : 1);
    if (const auto value = moved(*base, sign * months, Unit::month))
      meaning.value = *value, meaning.approximate = true;
    else if (const auto year = moved(*base, sign * (months / 12), Unit::year)) {
      const auto a = std::get<EdtfDate>(edtf_year(year->year).value);
      const auto b = std::get<EdtfDate>(edtf_year(year->year + sign).value);
      meaning.edtf = forward ? one_of_span(a, b) : one_of_span(b, a);
      meaning.moves_talk = false;
    }
    return meaning;
  }
  if (spec.count.upper) {
    const auto a = moved(*base, sign * spec.count.value, spec.unit),
               b = moved(*base, sign * spec.count.upper, spec.unit);
    meaning.moves_talk = false;
    if (!a || !b) return meaning;
    auto first = to_edtf(*a, false), second = to_edtf(*b, false);
    if (!first || !second) return meaning;
    if (!forward) std::swap(first, second);
    meaning.edtf = one_of_span(std::get<EdtfDate>(first->value), std::get<EdtfDate>(second->value));
    if (setting_.prose) meaning.timex = to_timex(*a).view();
    return meaning;
  }
  const auto value = moved(*base, sign * spec.count.value, spec.unit);
  if (!value) {
    meaning.moves_talk = false;
    if (base->precision >= P::year &&
        spec.unit <= Unit::month) {  // ten days after an undated day of a known month or year
      if (setting_.prose && has_month(*base) && spec.unit == Unit::day && spec.count.value <= 3) {
        meaning.value.year = base->year, meaning.value.year_known = true, meaning.value.month = base->month;
      }
      meaning.no_edtf = true;
    }
    if (setting_.prose && base->year <= 0 && spec.unit <= Unit::week) meaning.timex = "BCXXXX-XX-XX";
    return meaning;
  }
  meaning.value = *value;
  if (!spec.date.time.empty()) meaning.value.time = spec.date.time;
  if (spec.unit == Unit::decade || spec.unit == Unit::century) {
    if (setting_.prose && meaning.value.year > 0) {
      meaning.value.precision = P::decade;
      meaning.value.year = meaning.value.year / 10 * 10;
    } else {
      meaning.approximate = true;
    }
  }
  const bool rough = spec.count.round && spec.unit == Unit::year && spec.speech && spec.count.value % 10 == 0;
  if (rough || spec.mod == Mod::approx || spec.count.couple)
    meaning.mod = Mod::approx, meaning.approximate = true;
  return meaning;
}

}  // namespace witnessmark::dates
