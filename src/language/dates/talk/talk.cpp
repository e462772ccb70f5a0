// Years for undated months, and the state of the talk. An undated month, day or season takes the year under
// discussion; in the last months of a year the first months belong to the next. Nothing is ever taken from
// the clock.
#include "language/dates/talk/talk.h"

#include <algorithm>

#include "witnessmark/time/period.h"

namespace witnessmark::dates {

using P = DateValue::Precision;

Talk::Talk(const Discourse& discourse) : discourse_(discourse) {
  if (discourse.speech_time) speech_ = from_edtf(*discourse.speech_time);
  if (speech_ && !discourse.prose)
    speech_past_ = to_period(*discourse.speech_time, discourse.policy).past_latest();
  if (speech_) setting_.speech_year = speech_->year;
  setting_.prose = discourse.prose;
  setting_.century = discourse.century.century_begins;
  setting_.last_year = speech_ ? speech_->year : setting_.century + 99;
  take_life();
  take_state();
}

void Talk::take_life() {
  const auto born = discourse_.birth ? from_edtf(*discourse_.birth) : std::nullopt;
  setting_.life_known = born && speech_;
  setting_.first_year = born ? born->year - 10 : TalkSetting().first_year;
  service_ = discourse_.service;
  const auto begins = [&](const ServicePeriod& period) {
    return period.when.value ? to_period(*period.when.value, discourse_.policy).earliest() : std::nullopt;
  };
  std::stable_sort(service_.begin(), service_.end(), [&](const ServicePeriod& a, const ServicePeriod& b) {
    return begins(a) < begins(b);
  });
  if (!service_.empty() || !discourse_.told_coming) return;
  if (const auto value = from_edtf(*discourse_.told_coming)) put_coming(*value);
}

void Talk::take_state() {
  reference_ = discourse_.reference ? from_edtf(*discourse_.reference) : std::nullopt;
  day_talked_of_ = discourse_.day_talked_of ? from_edtf(*discourse_.day_talked_of) : std::nullopt;
  year_ = discourse_.reference_year;
  if (!year_ && reference_ && reference_->precision >= P::year) year_ = reference_->year;
  decade_ = discourse_.decade;
  moved_ = false;
  far_year_.reset();
  section_year_.reset();
  setting_.listed.reset();
  refresh_setting();
}

void Talk::refresh_setting() {
  setting_.year = year_;
  setting_.decade_set = year_.has_value() || decade_.has_value();
}

void Talk::put_coming(const DateValue& value) {
  const auto edtf = to_edtf(value, false);
  const auto* date = edtf ? std::get_if<EdtfDate>(&edtf->value) : nullptr;
  if (!date || value.precision < P::year) return;
  ServicePeriod period;
  period.when.value = Edtf{EdtfInterval{*date, EdtfUnknown{}}};
  service_ = {std::move(period)};
}

void Talk::put_state(Discourse& discourse) const {
  if (asks_for_coming() && !service_.empty())
    discourse.told_coming =
        Edtf{std::get<EdtfDate>(std::get<EdtfInterval>(service_[0].when.value->value).begin)};
  discourse.reference_year = year_;
  discourse.decade = decade_;
  if (day_talked_of_) discourse.day_talked_of = to_edtf(*day_talked_of_, false);
  if (!moved_ || !reference_) return;
  auto value = *reference_;
  value.time.clear();
  if (auto edtf = to_edtf(value, false)) discourse.reference = std::move(edtf);
}

std::string Talk::reference_anchor() const {
  if (reference_) return std::string(kTalkOf) + to_timex(*reference_);
  return year_ ? std::string(kTalkOf) + std::to_string(*year_) : "";
}

// A history names other years in passing: a limit ("until 1945"), or one year far off ("in 2005 it was
// declassified"). Only a second mention near the far one takes the story there.
bool Talk::passing(std::int64_t year, Mod limit) {
  constexpr std::int64_t kFar = 5, kNear = 2;
  const auto apart = [](std::int64_t a, std::int64_t b) { return a < b ? b - a : a - b; };
  if (apart(year, *year_) == 0) return false;
  if (limit != Mod::none) return true;
  if (apart(year, *year_) <= kFar || (far_year_ && apart(year, *far_year_) <= kNear)) return false;
  far_year_ = year;
  return true;
}

// A heading that names one year ("2006: Civil war") sets the year of the section; what a paragraph mentioned
// in passing ends with it.
void Talk::begin_section(std::int64_t year) {
  section_year_ = year;
  year_ = year;
  moved_ = true;
  reference_ = DateValue::of_year(year);
  refresh_setting();
}

void Talk::list_year(const Meaning& meaning, std::size_t past) {
  setting_.listed.reset();
  if (setting_.prose || meaning.value.precision != P::year || !meaning.value.year_known) return;
  setting_.listed = TalkSetting::ListedYear{meaning.value.year, past};
}

void Talk::begin_paragraph() {
  if (!setting_.prose || !section_year_ || !year_ || *year_ == *section_year_) return;
  year_ = section_year_;
  moved_ = true;
  reference_ = DateValue::of_year(*section_year_);
  refresh_setting();
}

void Talk::end_section() {
  section_year_.reset();
}

void Talk::move_to(const Meaning& meaning, const Spec& spec, Mod limit) {
  if (!meaning.moves_talk || !meaning.value.year_known || spec.taken_back) return;
  if (meaning.value.precision == P::none) return;
  if (meaning.value.precision == P::century || meaning.value.precision == P::decade) {
    if (meaning.value.precision == P::decade && !meaning.value.before_christ) decade_ = meaning.value.year;
    if (setting_.prose) reference_ = meaning.value, moved_ = true;
    refresh_setting();
    return;
  }
  if (setting_.prose && year_ && meaning.value.precision == P::year && passing(meaning.value.year, limit))
    return;
  far_year_.reset();
  moved_ = true;
  reference_ = meaning.value;
  if (meaning.value.precision >= P::month) {
    day_talked_of_ = meaning.value;
    day_talked_of_->time.clear();
  }
  year_ = meaning.value.year;
  if (*year_ > 0) decade_ = *year_ / 10 * 10;
  refresh_setting();
}

// The second Sunday of May, the last week of October (its last seven days).
Meaning Talk::nth_of(const Spec& spec) const {
  auto meaning = this->meaning(*spec.of);
  const auto of = meaning.value;
  meaning.timex.clear();
  meaning.edtf.reset();
  meaning.value = {};
  meaning.value.precision = P::day;
  const bool month = of.precision == P::month && of.month != 0;
  if (!of.year_known || (!month && of.precision != P::year)) {
    meaning.value.month = of.month;
    meaning.moves_talk = false;
    return meaning;
  }
  const Day first = to_day({of.year, month ? of.month : 1, 1});
  const Day last = month ? first + (days_in_month(of.year, of.month) - 1) : to_day({of.year, 12, 31});
  if (spec.unit == Unit::week) {
    Day begin = spec.nth < 0 ? last - 6 : first + 7 * (spec.nth - 1);
    const Day end = begin + 6 < last ? begin + 6 : last;
    meaning.edtf = day_interval(begin, end);
    meaning.timex = to_string(*meaning.edtf);
    meaning.value = DateValue::of_month(of.year, to_civil(begin).month);
    return meaning;
  }
  Day day = spec.nth < 0 ? last : first + (spec.nth - 1);
  if (spec.date.weekday) {
    day = spec.nth < 0 ? last - (iso_weekday(last) - spec.date.weekday + 7) % 7
                       : first + (spec.date.weekday - iso_weekday(first) + 7) % 7 + 7 * (spec.nth - 1);
    if (day > last) {  // There is no fifth.
      meaning.value.year = of.year, meaning.value.year_known = true, meaning.value.month = of.month;
      meaning.no_edtf = true;
      return meaning;
    }
  }
  meaning.value = DateValue::of_day(to_civil(day));
  return meaning;
}

namespace {

// 4/10/1962: 4 October or April 10; both are kept.
void put_either_order(Meaning& meaning) {
  DateValue other = meaning.value;
  std::swap(other.month, other.day);
  if (!meaning.value.year_known) {
    meaning.alternatives = {std::string(to_timex(meaning.value).view()), std::string(to_timex(other).view())};
  } else {
    const auto a = to_edtf(meaning.value, false), b = to_edtf(other, false);
    auto first = std::get<EdtfDate>(a->value), second = std::get<EdtfDate>(b->value);
    meaning.alternatives = {to_string(*a), to_string(*b)};
    if (first.month->value > second.month->value) std::swap(first, second);
    EdtfSet set;
    for (const auto& date : {first, second}) {
      EdtfSetElement element;
      element.first = element.last = date;
      set.elements.push_back(element);
    }
    meaning.edtf = Edtf{set};
  }
  meaning.value.month = meaning.value.day = 0;
}

}  // namespace

// Thursday, of which week only "of that week" can tell.
Meaning Talk::weekday(const Spec& spec) const {
  Meaning meaning;
  meaning.value = spec.date;
  meaning.value.year_known = false;
  meaning.moves_talk = false;
  if (!spec.of) {
    if (setting_.prose || !reference_ || !is_day(*reference_)) return meaning;
    const Day day = day_of(*reference_);  // The one before or the one after the day under discussion.
    const int ahead = (spec.date.weekday - iso_weekday(day) + 7) % 7;
    const bool told_on =
        spec.definite && !spec.going_back && ahead != 0;  // and on the Friday we were in Carrow
    if (told_on && !(speech_past_ && day + ahead >= *speech_past_)) {
      meaning.value = DateValue::of_day(to_civil(day + ahead));
      meaning.anchor = reference_anchor();
      meaning.alternatives = {to_string(day + (ahead - 7))};
      meaning.moves_talk = true;
      return meaning;
    }
    if (ahead == 0)
      meaning.alternatives = {to_string(day)};
    else
      meaning.alternatives = {to_string(day + (ahead - 7)), to_string(day + ahead)};
    if (speech_past_ && day + ahead >= *speech_past_) meaning.alternatives.resize(1);
    return meaning;
  }
  const auto week = this->meaning(*spec.of);
  meaning.anchor = week.anchor;
  const auto* days = week.edtf ? std::get_if<EdtfInterval>(&week.edtf->value) : nullptr;
  const auto* monday = days ? std::get_if<EdtfDate>(&days->begin) : nullptr;
  if (!monday) return meaning;
  if (const auto value = from_edtf(Edtf{*monday})) {
    meaning.value = DateValue::of_day(to_civil(first_day(*value) + (spec.date.weekday - 1)));
    meaning.moves_talk = true;
  }
  return meaning;
}

// The Roaring Twenties; the war, a stretch that dates nothing but what was said to be in it, and in whose first and
// last year something before it or after it may have been.
Meaning Talk::named_time(const Spec& spec) const {
  Meaning meaning;
  meaning.value = spec.date;
  const auto starts = to_period(*spec.when, discourse_.policy).earliest();
  if (speech_past_ && starts && *starts >= *speech_past_) {  // Another of that name was meant.
    meaning.moves_talk = false;
    return meaning;
  }
  meaning.anchor = "named time";
  if (const auto value = from_edtf(*spec.when)) meaning.value = *value;
  if (meaning.value.precision == P::decade && to_edtf(meaning.value, false) == *spec.when)
    return meaning;  // Early and late are parts of it.
  meaning.edtf = *spec.when;
  if (const auto* stretch = std::get_if<EdtfInterval>(&spec.when->value)) {
    meaning.happening = meaning.years_long = true;
    meaning.moves_talk = false;
    const bool from_start = spec.part == Part::beginning || spec.part == Part::early;
    const bool to_end = spec.part == Part::end || spec.part == Part::late;
    const auto* edge = std::get_if<EdtfDate>(from_start ? &stretch->begin : &stretch->end);
    if ((from_start || to_end) && edge) meaning.edtf = Edtf{*edge};
  }
  meaning.timex = to_string(*meaning.edtf);
  return meaning;
}

Meaning Talk::calendar(const Spec& spec) const {
  if (spec.nth != 0) return nth_of(spec);
  Meaning meaning;
  meaning.value = spec.date;
  if (spec.when) return named_time(spec);
  std::optional<std::int64_t> year;
  if (spec.of) {
    const auto of = this->meaning(*spec.of);
    meaning.anchor = of.anchor;
    meaning.value.year = of.value.year;
    meaning.value.year_known = of.value.year_known;
    if (of.value.year_known) year = of.value.year;
    if (spec.day_only && of.value.month) meaning.value.month = of.value.month;
    if (!of.value.year_known && of.alternatives.size() == 1 && of.value.precision == P::year && !spec.named)
      if (const auto edtf = parse_edtf(of.alternatives[0])) {  // of the year before …
        auto other = meaning.value;
        if (const auto found = from_edtf(*edtf)) other.year = found->year, other.year_known = true;
        if (const auto with_year = to_edtf(other, false)) meaning.alternatives = {to_string(*with_year)};
      }
  } else if (spec.year_said) {
    complete_year(spec, meaning);
    if (meaning.value.year_known) year = meaning.value.year;
  }
  if (spec.named) {
    if (!year && !spec.of)
      undated_name(spec, meaning);
    else
      named(spec, meaning, year);
    if (spec.named->kind == NamedDay::Kind::once) meaning.anchor.clear();
    return meaning;
  }
  if (spec.rule == "numeric-either-order") {
    put_either_order(meaning);
    return meaning;
  }
  if (spec.day_only && !spec.of) {
    if (reference_ && reference_->precision >= P::month && reference_->month) {
      meaning.value.year = reference_->year;
      meaning.value.year_known = reference_->year_known;
      meaning.value.month = reference_->month;
      meaning.anchor = reference_anchor();
    }
  } else if (meaning.value.weekday && !meaning.value.day) {
    return weekday(spec);
  } else if (!meaning.value.year_known && !spec.year_said && !spec.of) {
    meaning = undated(spec, meaning.value);
  }
  if (meaning.value.year_known && meaning.value.day && meaning.value.month &&
      meaning.value.day > days_in_month(meaning.value.year, meaning.value.month)) {
    meaning.value.day = 0;  // 30 February: the month can still be meant
    meaning.no_edtf = true;
  }
  return meaning;
}

namespace {

/// One date, or an interval of a day and the next: what the night of an event can be.
bool short_enough(const std::optional<Edtf>& edtf) {
  if (!edtf) return false;
  if (std::holds_alternative<EdtfDate>(edtf->value)) return true;
  const auto* span = std::get_if<EdtfInterval>(&edtf->value);
  const auto* first = span ? std::get_if<EdtfDate>(&span->begin) : nullptr;
  const auto* last = span ? std::get_if<EdtfDate>(&span->end) : nullptr;
  if (!first || !last) return false;
  const auto a = from_edtf(Edtf{*first}), b = from_edtf(Edtf{*last});
  return a && b && is_day(*a) && is_day(*b) && day_of(*b) == day_of(*a) + 1;
}

}  // namespace

Meaning Talk::clock(const Spec& spec) const {
  Meaning meaning;
  if (spec.rule == "hour") {  // At seven we ate: an hour, or an age; of no day.
    meaning.value.precision = P::day;
  } else if (spec.of) {
    meaning = this->meaning(*spec.of);
    if (meaning.value.precision == P::none && !meaning.timex.empty()) meaning.value.precision = P::day;
  } else if (reference_ && reference_->precision == P::day) {
    meaning.value = *reference_;
    meaning.anchor = reference_anchor();
  } else if (reference_ && reference_->precision == P::month) {
    meaning.value = *reference_;
    meaning.value.precision = P::day;
    meaning.value.day = 0;
    meaning.anchor = reference_anchor();
  } else {
    meaning.value.precision = P::day;
  }
  if (meaning.value.precision != P::day) meaning.value = DateValue{}, meaning.value.precision = P::day;
  const bool night_of_event =
      spec.of && spec.of->kind == Spec::Kind::event && meaning.value.precision != P::none;
  meaning.timex.clear();
  if (!night_of_event)
    meaning.edtf.reset();
  else if (!short_enough(meaning.edtf))
    meaning.edtf.reset(), meaning.value = DateValue{}, meaning.value.precision = P::day;
  if (!spec.timex.empty()) {  // 1200 to 1600
    meaning.value.time = spec.timex;
    meaning.timex = to_timex(meaning.value).view();
  }
  meaning.value.time = spec.date.time;
  if (!spec.timex.empty()) meaning.timex.insert(0, std::string(to_timex(meaning.value).view()) + "/");
  meaning.type = TimexType::time;
  meaning.no_edtf = meaning.value.day == 0 && !meaning.edtf;
  if (!spec.of) meaning.moves_talk = false;
  return meaning;
}

Meaning Talk::day_word(const Spec& spec) const {
  Meaning meaning;
  meaning.moves_talk = false;
  meaning.value.precision = P::day;
  if (setting_.prose) {
    if (spec.count.value == 0 && spec.date.time.empty()) meaning.timex = "PRESENT_REF";
    meaning.value.time = spec.date.time;
    return meaning;
  }
  if (speech_ && speech_->precision == P::day) {
    meaning.value =
        DateValue::of_day(to_civil(to_day({speech_->year, speech_->month, speech_->day}) + spec.count.value));
    meaning.anchor = "interview " + to_timex(*speech_);
  } else if (spec.count.value == 0) {
    meaning.timex = "PRESENT_REF";
    if (discourse_.speech_time)
      meaning.edtf = discourse_.speech_time,
      meaning.anchor = "interview " + to_string(*discourse_.speech_time);
  }
  meaning.value.time = spec.date.time;
  if (!spec.date.time.empty()) meaning.type = TimexType::time;
  return meaning;
}

Meaning Talk::era(const Spec& spec) const {
  Meaning meaning;
  meaning.moves_talk = false;
  if (spec.following == Following::none || !reference_ || spec.speech) return meaning;
  meaning.value = *reference_;
  meaning.anchor = reference_anchor();
  return meaning;
}

Meaning Talk::duration(const Spec& spec) const {
  Meaning meaning;
  meaning.type = TimexType::duration;
  meaning.moves_talk = false;
  meaning.timex =
      duration_timex(spec.count.value, spec.count.vague || spec.count.upper != 0, spec.count.half, spec.unit)
          .view();
  if (!spec.count.decimal.empty() && spec.count.decimal.view().find(',') == std::string::npos)
    if (const auto digits = meaning.timex.find_first_of("0123456789"); digits != std::string::npos)
      meaning.timex.replace(digits, std::to_string(spec.count.value).size(), spec.count.decimal.view());
  if (!spec.up_to_now || !speech_ || spec.count.vague || spec.count.half || spec.count.upper ||
      spec.unit > Unit::year)
    return meaning;
  const auto first = moved(*speech_, -spec.count.value, spec.unit), last = moved(*speech_, 0, spec.unit);
  if (!first || !last) return meaning;
  const auto a = to_edtf(*first, false), b = to_edtf(*last, false);
  meaning.edtf = Edtf{EdtfInterval{std::get<EdtfDate>(a->value), std::get<EdtfDate>(b->value)}};
  meaning.anchor = "interview " + to_timex(*speech_);
  return meaning;
}

Meaning Talk::set_or_reference(const Spec& spec) const {
  Meaning meaning;
  if (spec.kind == Spec::Kind::set) meaning.type = TimexType::set;
  meaning.timex = spec.timex.view();
  meaning.moves_talk = false;
  if (spec.timex == "PRESENT_REF" && !setting_.prose && discourse_.speech_time) {
    meaning.edtf = discourse_.speech_time;
    meaning.anchor = "interview " + to_string(*discourse_.speech_time);
  }
  return meaning;
}

Meaning Talk::without_modifier(const Spec& spec) const {
  switch (spec.kind) {
    case Spec::Kind::calendar:
      return calendar(spec);
    case Spec::Kind::relative:
      return relative(spec);
    case Spec::Kind::within:
      return within(spec);
    case Spec::Kind::offset:
      return offset(spec);
    case Spec::Kind::era:
      return era(spec);
    case Spec::Kind::day_word:
      return day_word(spec);
    case Spec::Kind::age:
      return age(spec);
    case Spec::Kind::service_year:
      return service_year(spec);
    case Spec::Kind::service_edge:
      return service_edge(spec);
    case Spec::Kind::event:
      return event(spec);
    case Spec::Kind::clock:
      return clock(spec);
    case Spec::Kind::duration:
      return duration(spec);
    case Spec::Kind::set:
    case Spec::Kind::reference:
      return set_or_reference(spec);
  }
  return {};
}

Meaning Talk::meaning(const Spec& spec) const {
  Meaning meaning = without_modifier(spec);
  if (spec.mod != Mod::none) meaning.mod = spec.mod;
  if (meaning.mod == Mod::approx || spec.about) meaning.approximate = true;
  if (!meaning.value.time.empty() && meaning.value.precision == P::day) meaning.type = TimexType::time;
  if (spec.told_back && meaning.value.year_known && speech_) add_seen_from_today(spec, meaning);
  narrow(spec, meaning);
  forget_future(spec, meaning);
  return meaning;
}

}  // namespace witnessmark::dates
