// Dates hung on the narrator's life, service and the register's events.
#include <algorithm>

#include "language/dates/talk/talk.h"

#include "witnessmark/time/period.h"

namespace witnessmark::dates {

using P = DateValue::Precision;

namespace {

/// The first and the last day on which something of unit precision may lie.
struct Days {
  Day first, last;
};

std::optional<Days> days_of(const Edtf& edtf, const DatePolicy& policy) {
  const auto period = to_period(edtf, policy);
  const auto first = period.earliest();
  const auto past = period.past_latest();
  if (!first || !past) return std::nullopt;
  return Days{*first, *past - 1};
}

Day years_after(Day day, std::int64_t years) {
  const auto civil = to_civil(day);
  if (civil.month == 2 && civil.day == 29 && !is_leap_year(civil.year + years))
    return to_day({civil.year + years, 3, 1});
  return to_day({civil.year + years, civil.month, civil.day});
}

/// Interval whose ends are as precise as what they were reckoned from.
Edtf interval(Day first, Day last, bool days_known) {
  if (days_known) return day_interval(first, last);
  const auto a = to_civil(first).year, b = to_civil(last).year;
  return Edtf{EdtfInterval{std::get<EdtfDate>(edtf_year(a).value), std::get<EdtfDate>(edtf_year(b).value)}};
}

}  // namespace

// At nineteen: from the nineteenth birthday to the day before the twentieth. Born in 1932, no day known: some
// time in 1951 to some time in 1952.
Meaning Talk::age(const Spec& spec) const {
  Meaning meaning;
  meaning.moves_talk = false;
  meaning.type = TimexType::date;
  if (spec.rule != "age") return age_said_otherwise(spec);
  if (!discourse_.birth) {
    meaning.timex = spec.count.upper ? "PXY" : "P" + std::to_string(spec.number) + "Y";
    meaning.type = TimexType::duration;
    return meaning;
  }
  const auto born = days_of(*discourse_.birth, discourse_.policy);
  const auto value = from_edtf(*discourse_.birth);
  if (!born || !value) return meaning;
  const bool day_known = value->precision == P::day;
  const Day first = years_after(born->first, spec.number);
  const Day last = years_after(born->last, std::max<std::int64_t>(spec.number, spec.count.upper) + 1) - 1;
  meaning.anchor = "birth " + to_string(*discourse_.birth);
  if (spec.limit != Mod::none) {
    limit_age(spec, first, years_after(born->last, spec.number), day_known, meaning);
    if (meaning.edtf) return meaning;
  }
  meaning.edtf = interval(first, last, day_known);
  if (spec.mod == Mod::approx) {
    auto& ends = std::get<EdtfInterval>(meaning.edtf->value);
    for (auto* end : {&ends.begin, &ends.end}) {
      auto& date = std::get<EdtfDate>(*end);
      date.year.qualifier.approximate = true;
      if (date.month) date.month->qualifier.approximate = true;
      if (date.day) date.day->qualifier.approximate = true;
    }
  }
  meaning.timex = to_string(*meaning.edtf);
  meaning.value = DateValue::of_year(to_civil(first).year);
  return meaning;
}

// Before I was twenty, until I turned thirty: the limit is the birthday, between `first` and `last`.
void Talk::limit_age(const Spec& spec, Day first, Day last, bool days_known, Meaning& meaning) const {
  const auto date = [&](Day day) {
    return days_known ? day_date(day) : std::get<EdtfDate>(edtf_year(to_civil(day).year).value);
  };
  switch (spec.limit) {
    case Mod::before:
      meaning.edtf = one_of_span(std::nullopt, date(days_known ? last - 1 : last));
      break;
    case Mod::until:
      meaning.edtf = Edtf{EdtfInterval{EdtfOpen{}, date(last)}};
      break;
    case Mod::after:
    case Mod::not_before:
      meaning.edtf = one_of_span(date(first), std::nullopt);
      break;
    case Mod::on_or_after:
      meaning.edtf = Edtf{EdtfInterval{date(first), EdtfOpen{}}};
      break;
    default:
      return;
  }
  meaning.timex = to_string(*meaning.edtf);
  meaning.mod = spec.limit;
  meaning.value = DateValue::of_year(to_civil(first).year);
}

// The summer I turned sixteen, the winter I was nineteen: the season of that year, or each that touches that
// age.
Meaning Talk::season_of_life(const Spec& spec, const DateValue& born, Day first, Meaning& meaning) const {
  meaning.value = DateValue::of_season(0, spec.date.season);
  meaning.value.year_known = false;
  const bool winter = spec.date.season == Season::winter, turned = spec.first_edge;
  if (spec.number == 0 || (turned && winter)) return meaning;
  const auto year = to_civil(first).year;
  std::vector<std::int64_t> years;
  if (turned) {
    years = {year};
  } else {
    const bool year_only = born.precision == P::year;
    const Day past =
        years_after(year_only ? to_day({born.year, 12, 31}) : first, year_only ? spec.number + 1 : 1);
    for (const auto candidate : {year - 1, year, year + 1}) {
      const auto period =
          to_period(*to_edtf(DateValue::of_season(candidate, spec.date.season), false), discourse_.policy);
      if (*period.earliest() < past && first < *period.past_latest()) years.push_back(candidate);
    }
  }
  if (years.size() == 1) {
    meaning.value = DateValue::of_season(years[0], spec.date.season);
    meaning.moves_talk = true;
    return meaning;
  }
  EdtfSet set;
  for (const auto one : years) {
    const auto date = std::get<EdtfDate>(to_edtf(DateValue::of_season(one, spec.date.season), false)->value);
    set.elements.push_back({date, date, false});
    meaning.alternatives.push_back(to_string(date));
  }
  if (!years.empty()) meaning.edtf = Edtf{std::move(set)};
  return meaning;
}

// On my twenty-first birthday, the year I turned thirty, in my twenties.
Meaning Talk::age_said_otherwise(const Spec& spec) const {
  Meaning meaning;
  const bool birthday = spec.unit == Unit::day, decade = spec.unit == Unit::decade;
  meaning.value.precision = birthday ? P::day : P::year;
  meaning.moves_talk = false;
  if (!discourse_.birth) return meaning;
  const auto born = days_of(*discourse_.birth, discourse_.policy);
  const auto value = from_edtf(*discourse_.birth);
  if (!born || !value || value->precision < P::year) return meaning;
  meaning.anchor = "birth " + to_string(*discourse_.birth);
  const Day first = years_after(born->first, spec.number);
  if (decade) {
    // The part of the decade that early, mid and late are, no younger than thirteen in the teens.
    const auto& parts = discourse_.policy.of_decade;
    const DatePolicy::Part ages = spec.part == Part::early  ? parts.early
                                  : spec.part == Part::mid  ? parts.mid
                                  : spec.part == Part::late ? parts.late
                                                            : DatePolicy::Part{0, 9};
    const int youngest = spec.number == 10 ? std::max(13, 10 + ages.first) : spec.number + ages.first;
    const int oldest = std::max(spec.number + ages.last, youngest);
    meaning.edtf = interval(years_after(born->first, youngest), years_after(born->last, oldest + 1) - 1,
                            value->precision == P::day);
    meaning.timex = to_string(*meaning.edtf);
    meaning.value = DateValue::of_year(to_civil(years_after(born->first, youngest)).year);
    return meaning;
  }
  if (spec.rule == "season-of-life") return season_of_life(spec, *value, first, meaning);
  meaning.value = *value;
  if (birthday && value->precision == P::day) meaning.value = DateValue::of_day(to_civil(first));
  meaning.value.year = to_civil(first).year;
  if (!birthday) meaning.value = DateValue::of_year(meaning.value.year);
  meaning.moves_talk = true;
  return meaning;
}

Meaning Talk::service_edge(const Spec& spec) const {
  Meaning meaning;
  meaning.value.precision = spec.unit == Unit::year ? P::year : spec.unit == Unit::month ? P::month : P::day;
  std::vector<DateValue> found;
  for (const auto& service : service_) {
    if (!service.when.value) continue;
    const auto& edtf = service.when.value->value;
    std::optional<DateValue> value;
    if (const auto* interval = std::get_if<EdtfInterval>(&edtf)) {
      const auto& end = spec.first_edge ? interval->begin : interval->end;
      if (const auto* date = std::get_if<EdtfDate>(&end)) value = from_edtf(Edtf{*date});
    } else if (spec.first_edge) {
      value = from_edtf(*service.when.value);
    }
    if (value) found.push_back(*value);
  }
  meaning.moves_talk = false;
  meaning.happening = true;
  if (found.empty()) return meaning;
  auto chosen = spec.first_edge ? found.front() : found.back();
  if (spec.outermost_edge) found = {chosen};
  if (spec.unit == Unit::year) chosen = DateValue::of_year(chosen.year);
  if (spec.unit == Unit::month && has_month(chosen)) chosen = DateValue::of_month(chosen.year, chosen.month);
  meaning.value = chosen;
  if (spec.unit == Unit::week && is_day(chosen) && found.size() == 1)
    put_week_of(spec, day_of(chosen), meaning);
  meaning.anchor = "service";
  for (const auto& value : found) {
    const auto edtf = to_edtf(value, false);
    if (edtf && to_timex(value) != to_timex(chosen) && value.year != chosen.year)
      meaning.alternatives.push_back(to_string(*edtf));
  }
  if (found.size() > 1) {  // Which coming or going is meant stays open.
    EdtfSet set;
    for (const auto& value : found)
      if (const auto edtf = to_edtf(value, false)) {
        EdtfSetElement element;
        element.first = element.last = std::get<EdtfDate>(edtf->value);
        set.elements.push_back(element);
      }
    if (!meaning.alternatives.empty()) meaning.edtf = Edtf{set};
  }
  meaning.moves_talk = found.size() == 1;
  return meaning;
}

// My second year aboard: the second twelve months from the first day of service.
Meaning Talk::service_year(const Spec& spec) const {
  Meaning meaning;
  meaning.moves_talk = false;
  meaning.value.precision = spec.unit == Unit::year ? P::year : P::day;
  const ServicePeriod* service = nullptr;
  for (const auto& period : service_) {
    if (!period.when.value) continue;
    if (!service || spec.number < 0) service = &period;
  }
  if (!service) return meaning;
  const auto* span = std::get_if<EdtfInterval>(&service->when.value->value);
  const EdtfDate* edge = nullptr;
  if (span)
    edge = std::get_if<EdtfDate>(spec.number < 0 ? &span->end : &span->begin);
  else
    edge = std::get_if<EdtfDate>(&service->when.value->value);
  if (!edge) return meaning;
  const auto value = from_edtf(Edtf{*edge});
  const auto days = days_of(Edtf{*edge}, discourse_.policy);
  if (!value || !days) return meaning;
  meaning.anchor = "service " + to_string(*service->when.value);
  if (spec.named) {  // my first Christmas aboard: the first after the day of coming
    meaning.value.precision = P::day;
    if (spec.number < 1 || value->precision < P::day) return meaning;
    auto year = value->year;
    if (day_in_year(*spec.named, year) < day_of(*value)) ++year;
    named(spec, meaning, year + spec.number - 1);
    meaning.moves_talk = true;
    return meaning;
  }
  if (spec.date.season != Season::none) {  // my first winter aboard
    const int season_month = static_cast<int>(spec.date.season) * 3;
    if (spec.number < 1 || value->precision < P::month) return meaning;
    auto year = value->year;
    const int at = value->precision == P::season ? static_cast<int>(value->season) * 3 : value->month;
    if (at > season_month + 1 && !(spec.date.season == Season::winter)) ++year;
    if (spec.date.season == Season::winter && at <= 2) --year;
    meaning.value = DateValue::of_season(year + spec.number - 1, spec.date.season);
    meaning.moves_talk = true;
    return meaning;
  }
  if (spec.unit == Unit::day) {
    if (spec.number == 1 || spec.number < 0) meaning.value = *value;
    return meaning;
  }
  if (spec.unit != Unit::year) return meaning;
  Day first{}, last{};
  if (spec.number > 0) {
    first = years_after(days->first, spec.number - 1);
    last = years_after(days->last, spec.number) - 1;
  } else {
    last = days->last;
    first = years_after(days->first, -1) + 1;
  }
  if (value->precision == P::day)
    meaning.edtf = day_interval(first, last);
  else if (value->precision == P::month) {
    const auto month = [](Day day) {
      const auto civil = to_civil(day);
      return std::get<EdtfDate>(edtf_month(civil.year, civil.month).value);
    };
    meaning.edtf = Edtf{EdtfInterval{month(first), month(last)}};
  } else {
    meaning.edtf = interval(first, last, false);
  }
  meaning.timex = to_string(*meaning.edtf);
  meaning.value = DateValue::of_year(to_civil(first).year);
  return meaning;
}

Meaning Talk::event(const Spec& spec) const {
  Meaning meaning;
  const auto& event = discourse_.events[static_cast<std::size_t>(spec.event)];
  meaning.anchor = "event " + event.key;
  meaning.happening = true;
  meaning.value.precision = P::day;
  if (!event.when.value) {
    meaning.moves_talk = false;
    return meaning;
  }
  meaning.edtf = *event.when.value;
  meaning.timex = to_string(*event.when.value);
  if (const auto value = from_edtf(*event.when.value)) meaning.value = *value;
  if (spec.unit == Unit::year && meaning.value.precision >= P::year && meaning.value.year_known) {
    meaning.value = DateValue::of_year(meaning.value.year);
    meaning.edtf.reset();
    meaning.timex.clear();
  }
  return meaning;
}

}  // namespace witnessmark::dates
