// Values so far from another date: two years later, a couple of weeks before Christmas, the summer before.
#include <algorithm>

#include "language/dates/talk/talk.h"
#include "witnessmark/time/period.h"

namespace witnessmark::dates {

using P = DateValue::Precision;

// What an offset is reckoned from; its words go into the anchor.
std::optional<DateValue> Talk::base_of(const Spec& spec, std::string& anchor) const {
  if (!spec.anchor) {
    // "… in April 1938. It had 1937 on it. Two days after": a year looked back to is not where days are
    // counted from.
    const bool days = spec.unit == Unit::day || spec.unit == Unit::week;
    if (!spec.speech && !setting_.prose && days && day_talked_of_ && reference_ &&
        reference_->precision == P::year && reference_->year < day_talked_of_->year) {
      anchor = std::string(kTalkOf) + to_timex(*day_talked_of_);
      return day_talked_of_;
    }
    anchor = !spec.speech ? reference_anchor() : speech_ ? "interview " + to_timex(*speech_) : "";
    return spec.speech ? speech_ : reference_;
  }
  const auto from = this->meaning(*spec.anchor);
  anchor = from.anchor;
  if (!from.value.year_known) return std::nullopt;
  if (spec.anchor->kind != Spec::Kind::event) anchor = to_timex(from.value).view();
  if (spec.later == Later::after && from.edtf)  // After a period its end counts, not its beginning.
    if (const auto* interval = std::get_if<EdtfInterval>(&from.edtf->value))
      if (const auto* end = std::get_if<EdtfDate>(&interval->end))
        if (const auto value = from_edtf(Edtf{*end})) return value;
  return from.value;
}

Meaning Talk::offset(const Spec& spec) const {
  Meaning meaning;
  const auto base = base_of(spec, meaning.anchor);
  const bool forward = spec.later == Later::after;
  meaning.value = unresolved(spec);
  if (spec.timex ==
      kUnknownAnchor) {  // What it would be from the date under discussion is only an alternative.
    Spec here;
    here.kind = spec.kind;
    here.unit = spec.unit;
    here.date = spec.date;
    here.later = spec.later;
    const bool counted = spec.rule == "offset";
    if (const auto edtf = counted ? std::nullopt : to_edtf(offset(here).value, false))
      meaning.alternatives.push_back(to_string(*edtf));
    meaning.anchor.clear();
    meaning.moves_talk = false;
    return meaning;
  }
  if (!base && !setting_.prose && spec.anchor) put_beside_feast(spec, meaning);
  if (spec.rule == "week-of") {
    meaning.moves_talk = false;
    if (base && is_day(*base)) put_week_of(spec, day_of(*base), meaning);
    return meaning;
  }
  if (spec.count.vague) {
    meaning.value = {};
    if (spec.count.few && base && !setting_.prose) put_few(spec, *base, meaning);
    meaning.timex = forward ? "FUTURE_REF" : "PAST_REF";
    meaning.moves_talk = false;
    return meaning;
  }
  if (!base) {
    meaning.anchor.clear();
    meaning.moves_talk = false;
    return meaning;
  }
  if (spec.date.precision == P::season || spec.named || (spec.unit == Unit::week && spec.date.weekday))
    return unit_beside(spec, *base, meaning.anchor);
  if (spec.rule == "offset-unit" && spec.unit == Unit::week && is_day(*base) && !setting_.prose)
    return week_beside(*base, forward, spec.anchor && spec.anchor->kind == Spec::Kind::calendar, meaning);
  if (spec.has_more)
    put_compound(spec, *base, meaning);
  else if (spec.keeps_part && spec.unit == Unit::year)
    put_part_in_year(spec, *base, meaning);
  else if (spec.count.half && spec.unit >= Unit::year)
    put_half_years(spec, *base, meaning);
  else if (spec.count.upper)
    put_between(spec, *base, meaning);
  else
    put_counted(spec, *base, meaning);
  return meaning;
}

// The day before New Year's Eve, no year known: 30 December of some year.
void Talk::put_beside_feast(const Spec& spec, Meaning& meaning) const {
  const auto* named = spec.anchor->named;
  const std::int64_t unit = spec.unit == Unit::day         ? 1
                            : spec.unit == Unit::week      ? 7
                            : spec.unit == Unit::fortnight ? 14
                                                           : 0;
  const bool plain = !spec.count.vague && !spec.count.half && !spec.count.upper && !spec.has_more &&
                     spec.date.precision == P::none && spec.rule != "week-of";
  if (!named || named->kind != NamedDay::Kind::fixed || !named->earlier.empty() || unit == 0 || !plain ||
      spec.count.value > 100)
    return;
  if (spec.rule == "offset-unit" && spec.unit != Unit::day) return;
  const auto step = (spec.later == Later::after ? 1 : -1) * spec.count.value * unit;
  constexpr std::int64_t kLeap = 2000, kCommon = 2001;
  const auto a = to_civil(day_in_year(*named, kLeap) + step),
             b = to_civil(day_in_year(*named, kCommon) + step);
  if (a.month != b.month || a.day != b.day) return;
  meaning.value.precision = P::day;
  meaning.value.month = a.month;
  meaning.value.day = a.day;
}

// The week or the weekend in which a day lies; a weekend only when the day touches it.
void Talk::put_week_of(const Spec& spec, Day day, Meaning& meaning) const {
  if (spec.unit == Unit::week) {
    put_week(DateValue::of_day(to_civil(day)), 0, false, meaning);
    return;
  }
  constexpr int kMonday = 1, kFriday = 5, kSaturday = 6;
  const int weekday = iso_weekday(day);
  if (weekday != kMonday && weekday < kFriday) return;
  const Day saturday = weekday == kMonday ? day - 2 : day + (kSaturday - weekday);
  meaning.timex = week_timex(saturday) + "-WE";
  meaning.edtf = day_interval(saturday, saturday + 1);
  const auto civil = to_civil(saturday);
  meaning.value = DateValue::of_month(civil.year, civil.month);
}

// The week before Easter: the seven days before it. The week after, with nothing said: the calendar week.
Meaning Talk::week_beside(const DateValue& base, bool forward, bool named_anchor, Meaning& meaning) const {
  if (!named_anchor) {
    put_week(base, forward ? 1 : -1, setting_.prose, meaning);
    return meaning;
  }
  const Day day = day_of(base), first = forward ? day + 1 : day - 7;
  meaning.edtf = day_interval(first, first + 6);
  meaning.timex = to_string(*meaning.edtf);
  const auto civil = to_civil(first);
  meaning.value = DateValue::of_month(civil.year, civil.month);
  return meaning;
}

// the summer before, the Sunday before Christmas
Meaning Talk::unit_beside(const Spec& spec, const DateValue& base, const std::string& anchor) const {
  const bool forward = spec.later == Later::after;
  Spec step;
  step.kind = Spec::Kind::relative;
  step.unit = spec.unit;
  step.date = spec.date;
  step.named = spec.named;
  step.following = forward ? Following::next : Following::previous;
  step.count.value = spec.count.value;
  Talk at(*this);
  at.reference_ = base;
  at.year_ = base.year;
  auto found = at.relative(step);
  found.anchor = anchor;
  if (spec.date.precision == P::season && spec.count.value > 1 && found.value.year_known) {
    // Two summers after a spring: that year's summer may count as the first or not. So with a bare year.
    const int month = month_of(base), begins = static_cast<int>(spec.date.season) * 3;
    const int apart = !month                           ? (forward ? -1 : 1)
                      : forward && begins > month      ? 1
                      : !forward && begins + 2 < month ? -1
                                                       : 0;
    DateValue other = found.value;
    other.year += apart;
    if (apart != 0 && !(speech_past_ && first_day(other) >= *speech_past_))
      if (const auto edtf = to_edtf(other, false)) found.alternatives.push_back(to_string(*edtf));
  }
  const int first_month = static_cast<int>(spec.date.season) * 3;
  if (!forward && spec.date.precision == P::season && found.value.year_known && base.precision >= P::month &&
      base.month >= first_month && base.month <= first_month + 2) {
    DateValue same = found.value;  // The summer before an August may be that same summer.
    same.year = base.year;
    if (same.year != found.value.year) found.alternatives.push_back(to_string(*to_edtf(same, false)));
  }
  return found;
}

}  // namespace witnessmark::dates
