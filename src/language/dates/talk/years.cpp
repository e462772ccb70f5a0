// Which year is meant: the century of a two-digit year, the year of an undated month, season or feast, and
// the rule that talk does not reach beyond its own day.
#include "language/dates/talk/talk.h"
#include "witnessmark/time/period.h"

namespace witnessmark::dates {

using P = DateValue::Precision;

// '43 is 1943 unless that lies outside the narrator's life and talk and 1843 or 2043 does not.
void Talk::complete_year(const Spec& spec, Meaning& meaning) const {
  auto& value = meaning.value;
  if (!spec.short_year) return;
  const auto short_year = value.year;
  const auto base = setting_.century;
  std::int64_t year = base + short_year;
  if (decade_ && !setting_.prose && setting_.year &&
      !(year >= setting_.first_year && year <= setting_.last_year)) {
    const auto near = *setting_.year / 100 * 100 + short_year;
    if (near >= setting_.first_year && near <= setting_.last_year) year = near;
  }
  const bool fits = year >= setting_.first_year && year <= setting_.last_year;
  const auto later = year + 100;
  const bool later_fits = later >= setting_.first_year && later <= setting_.last_year;
  if (!fits && later_fits)
    year = later;
  else if (fits && later_fits) {
    DateValue other = value;
    other.year = later;
    if (const auto edtf = to_edtf(other, false)) meaning.alternatives.push_back(to_string(*edtf));
  }
  value.year = year;
  value.year_known = true;
  if (!setting_.prose && speech_) put_century(spec, meaning);
  if (meaning.anchor.empty()) meaning.anchor = "century " + std::to_string(value.year / 100 * 100);
}

// Talk never reaches beyond its own day, and of years just before it the sentence has to say that they are
// the narrator's own: "my grandfather came over in ninety-one" is the other century.
void Talk::put_century(const Spec& spec, Meaning& meaning) const {
  auto& value = meaning.value;
  const auto as_text = [&](std::int64_t year) {
    DateValue other = value;
    other.year = year;
    const auto edtf = to_edtf(other, false);
    return edtf ? to_string(*edtf) : std::string();
  };
  if (value.year > speech_->year) {
    value.year -= 100;
    meaning.alternatives.clear();
  }
  if (spec.life == Life::own_birth && discourse_.birth) {
    const auto birth = from_edtf(*discourse_.birth);
    if (birth && birth->precision >= P::year && value.year - birth->year >= 50) value.year -= 100;
    meaning.alternatives.clear();
    return;
  }
  const auto born = discourse_.birth ? from_edtf(*discourse_.birth) : std::nullopt;
  constexpr std::int64_t kFew = 35, kNone = 50;  // Of that age, few have a grandparent at work; then none.
  if (spec.life == Life::ancestors && born && value.year >= born->year + kFew &&
      value.year < born->year + kNone) {
    meaning.alternatives = {as_text(value.year - 100), as_text(value.year)};
    value.year_known = false;
    meaning.moves_talk = false;
    return;
  }
  if (value.year <= speech_->year - discourse_.century.recent_years || spec.life == Life::own ||
      spec.life == Life::own_birth)
    return;
  const auto recent = value.year, older = recent - 100;
  meaning.alternatives.clear();
  if (spec.life == Life::elders || spec.life == Life::ancestors) {
    value.year = older;
    meaning.alternatives = {as_text(recent)};
  } else if (spec.life == Life::untold) {
    meaning.alternatives = {as_text(older)};
  } else {
    meaning.alternatives = {as_text(older), as_text(recent)};
    value.year_known = false;
    meaning.moves_talk = false;
  }
}

namespace {

/// Said as a year, or seen from the day of speaking: tomorrow, next year, by 2050.
bool may_lie_ahead(const Spec& spec) {
  using Kind = Spec::Kind;
  if (spec.of) return may_lie_ahead(*spec.of);
  if (spec.anchor) return spec.anchor->speech || spec.anchor->kind == Kind::day_word;
  if (spec.speech || spec.kind == Kind::day_word || spec.kind == Kind::reference || spec.when) return true;
  if (spec.kind == Kind::event || spec.kind == Kind::service_edge || spec.kind == Kind::service_year)
    return true;
  return spec.kind == Kind::calendar && spec.year_said && !spec.short_year;
}

}  // namespace

// What lies after the day of speaking was not meant: an undated month is rather the year before's, anything
// else stays open.
void Talk::forget_future(const Spec& spec, Meaning& meaning) const {
  if (!speech_past_ || may_lie_ahead(spec)) return;
  if (year_ && *year_ > speech_->year && !spec.year_said)
    return;  // Talk is of the future: by 2050 … that summer
  std::optional<Day> first;
  if (meaning.narrowed)
    first = to_period(*meaning.narrowed, discourse_.policy).earliest();
  else if (meaning.edtf)
    first = to_period(*meaning.edtf, discourse_.policy).earliest();
  else if (meaning.value.year_known && meaning.value.precision != P::none)
    first = first_day(meaning.value);
  if (!first || *first < *speech_past_) return;
  const bool calendar = spec.kind == Spec::Kind::calendar && !spec.year_said;
  auto before = meaning.value;
  meaning.alternatives.clear();
  meaning.edtf.reset();
  meaning.narrowed.reset();
  meaning.part.reset();
  meaning.timex.clear();
  meaning.anchor.clear();
  meaning.value.year_known = false;
  meaning.no_edtf = true;
  meaning.moves_talk = false;
  if (!calendar || !before.year_known || spec.named) return;
  --before.year;
  if (const auto edtf = to_edtf(before, false)) meaning.alternatives = {to_string(*edtf)};
}

// Coronation Day was in 1911, 1937 and 1953: the year told, or else the only one of the narrator's life.
void Talk::named_once_of_several(const NamedDay& rule, Meaning& meaning,
                                 std::optional<std::int64_t> year) const {
  auto& value = meaning.value;
  const auto time = value.time;
  std::vector<const NamedDay*> in_life, in_year;
  const auto add = [&](const NamedDay& one) {
    if (year && one.year == *year) in_year.push_back(&one);
    if (one.year > setting_.first_year + 10 && one.year <= setting_.last_year) in_life.push_back(&one);
  };
  add(rule);
  for (const auto& one : rule.also) add(one);
  const auto& found = in_year.empty() ? in_life : in_year;
  value = DateValue{};
  value.precision = P::day;
  if (found.size() == 1)
    value = DateValue::of_day(to_civil(day_in_year(*found[0], found[0]->year)));
  else
    meaning.moves_talk = false;
  for (const auto* one : found)
    if (found.size() > 1) meaning.alternatives.push_back(to_string(day_in_year(*one, one->year)));
  value.time = time;
}

void Talk::named(const Spec& spec, Meaning& meaning, std::optional<std::int64_t> year) const {
  const auto& rule = *spec.named;
  auto& value = meaning.value;
  if (!rule.part.empty() || spec.date.time.empty()) value.time = rule.part;
  if (rule.kind == NamedDay::Kind::once && !rule.also.empty())
    return named_once_of_several(rule, meaning, year);
  if (rule.kind == NamedDay::Kind::once) year = rule.year;
  if (year) {
    const auto time = value.time;
    value = DateValue::of_day(to_civil(day_in_year(rule, *year)));
    value.time = time;
    for (const auto day : other_days_in_year(rule, *year)) meaning.alternatives.push_back(to_string(day));
    return;
  }
  value.precision = P::day;
  value.year_known = false;
  if (rule.earlier.empty() && rule.kind == NamedDay::Kind::fixed)
    value.month = rule.month, value.day = rule.day;
}

// A season beside the month under discussion: in February "the winter" is the one under way, in October "the
// spring" the next one.
Talk::YearChoice Talk::year_for_season(int at, Season season) const {
  const auto year = *year_;
  const bool winter = season == Season::winter;
  if (!at) return winter ? YearChoice{year, year - 1, false} : YearChoice{year, {}, false};
  if (winter && at <= 2) return {year - 1, {}, false};
  if (winter && at <= 5) return {year, year - 1, false};
  if (season == Season::spring && at >= 10) return {year + 1, year, false};
  if (season == Season::summer && at >= 11) return {year, year + 1, false};
  if (season == Season::autumn && at <= 3) return {year, year - 1, false};
  return {year, {}, false};
}

// A month eight or more behind the one just spoken of is next year's: November, then March; in talk six or
// more. One less far behind may be, one eight or more ahead may be last year's. Going back, it is the last
// one before.
Talk::YearChoice Talk::year_for(const Spec& spec, int month) const {
  const bool season = spec.date.precision == P::season;
  const int at = !reference_                          ? 0
                 : reference_->precision == P::season ? static_cast<int>(reference_->season) * 3
                 : reference_->precision >= P::month  ? reference_->month
                                                      : 0;
  const auto year = *year_;
  if (setting_.prose && season && !at) return {year, {}, false};
  if (spec.going_back && !at) return {year, year - 1, true};
  if (spec.going_back && month > at) return {year - 1, year, false};
  if (season) return year_for_season(at, spec.date.season);
  constexpr int kTurn = 8, kDoubt = 5;
  if (!at && month && !spec.named && reference_ && reference_->precision == P::year && !setting_.prose)
    return {year, year + 1, false};  // "In 1952 …, and then in September": that year's, or the next.
  if (!at || !month) return {year, {}, false};
  if (reference_->precision ==
      P::season) {  // The winter of 1963, then February: people name winters both ways.
    const bool winter = reference_->season == Season::winter && month <= 3;
    return winter ? YearChoice{year, year + 1, false} : YearChoice{year, {}, false};
  }
  if (at - month >= kTurn) return {year + 1, year, false};
  if (!setting_.prose && month < at && (spec.limit == Mod::until || spec.limit == Mod::on_or_before))
    return {year + 1, {}, false};  // In October we docked and lay there till March.
  constexpr int kTalkTurn = 6, kTalkDoubt = 4;
  if (!setting_.prose && at - month >= kTalkTurn) return {year + 1, year, false};
  if (at - month >= (setting_.prose ? kDoubt : kTalkDoubt)) return {year, year + 1, false};
  if (month - at >= kTurn) return {year, year - 1, false};
  return {year, {}, false};
}

// A month, day or season without a year.
Meaning Talk::undated(const Spec& spec, DateValue value) const {
  Meaning meaning;
  meaning.value = value;
  if (!year_) return meaning;
  const int month = value.precision == P::season ? static_cast<int>(value.season) * 3 : value.month;
  const auto choice = year_for(spec, month);
  const auto add = [&](std::int64_t year) {
    DateValue other = value;
    other.year = year;
    other.year_known = true;
    if (setting_.prose || (speech_past_ && first_day(other) >= *speech_past_)) return;
    if (const auto edtf = to_edtf(other, false)) meaning.alternatives.push_back(to_string(*edtf));
  };
  if (choice.other) add(*choice.other);
  if (choice.open) {
    add(choice.year);
    meaning.moves_talk = false;
    return meaning;
  }
  const auto year = choice.year;
  meaning.moves_talk = !spec.going_back;  // An aside.
  meaning.value.year = year;
  meaning.value.year_known = true;
  meaning.anchor = reference_anchor();
  if (setting_.prose && value.precision == P::season && value.season == Season::winter) {
    // Histories name a winter by the year it ends in; our value is the one it begins in.
    DateValue ending = meaning.value;
    ++ending.year;
    meaning.timex = to_timex(ending).view();
  }
  return meaning;
}

// Christmas, New Year's Day: no year said.
void Talk::undated_name(const Spec& spec, Meaning& meaning) const {
  if (!year_ || spec.named->kind == NamedDay::Kind::once) return named(spec, meaning, year_);
  const auto choice = year_for(spec, to_civil(day_in_year(*spec.named, *year_)).month);
  if (choice.open) {
    meaning.alternatives = {to_string(day_in_year(*spec.named, *choice.other)),
                            to_string(day_in_year(*spec.named, choice.year))};
    meaning.moves_talk = false;
    return named(spec, meaning, std::nullopt);
  }
  meaning.anchor = reference_anchor();
  named(spec, meaning, choice.year);
  if (!choice.other || setting_.prose || !reference_) return;
  constexpr int kNear = 70;  // Days: from Christmas to New Year's Day nothing is in doubt.
  const Day from = first_day(*reference_), there = first_day(meaning.value);
  const auto other = day_in_year(*spec.named, *choice.other);
  if ((from < there ? there - from : from - there) > kNear && !(speech_past_ && other >= *speech_past_))
    meaning.alternatives.push_back(to_string(other));
}

}  // namespace witnessmark::dates
