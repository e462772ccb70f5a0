#include "language/dates/two_dates.h"

#include <utility>

#include "language/dates/talk/talk.h"
#include "language/dates/words/named_days.h"
#include "witnessmark/time/day.h"

namespace witnessmark::dates {
namespace {

/// Whether b is the year, month or day after a, both plain.
bool follows(const EdtfDate& a, const EdtfDate& b) {
  EdtfDate next = a;
  if (a.day && a.month) {
    next = day_date(to_day({a.year.value, static_cast<int>(a.month->value), static_cast<int>(a.day->value)}) +
                    1);
  } else if (a.month && a.month->value < 12) {
    ++next.month->value;
  } else {
    ++next.year.value;
    if (next.month) next.month->value = 1;
  }
  return next == b;
}

/// Puts the dates of one value into a set, spans that meet made one; false when it is none of dates.
bool add_to(EdtfSet& set, const Edtf& value) {
  if (const auto* date = std::get_if<EdtfDate>(&value.value)) {
    EdtfSetElement element;
    element.first = element.last = *date;
    set.elements.push_back(std::move(element));
    return true;
  }
  const auto* other = std::get_if<EdtfSet>(&value.value);
  if (!other || other->kind != EdtfSet::Kind::one_of) return false;
  for (const auto& element : other->elements) {
    auto* last = set.elements.empty() ? nullptr : &set.elements.back();
    const bool meet = last && last->is_span && element.is_span && last->last && element.first &&
                      follows(*last->last, *element.first);
    if (meet)
      last->last = element.last;
    else
      set.elements.push_back(element);
  }
  return true;
}

/// First and last date of a span of dates or of one date.
const EdtfDate* edge_of(const Edtf& value, bool last) {
  if (const auto* date = std::get_if<EdtfDate>(&value.value)) return date;
  const auto* set = std::get_if<EdtfSet>(&value.value);
  if (!set || set->elements.size() != 1) return nullptr;
  const auto& edge = last ? set->elements[0].last : set->elements[0].first;
  return edge ? &*edge : nullptr;
}

bool alike(const EdtfDate& a, const EdtfDate& b) {
  return a.month.has_value() == b.month.has_value() && a.day.has_value() == b.day.has_value();
}

/// Two values as one: A/B, [A..B], [A,B]; nothing when they do not go together. `ends`: A and B as single
/// dates.
std::optional<Edtf> joined_dates(Spec::Join join, const Edtf& a, const Edtf& b,
                                 const std::array<std::optional<EdtfDate>, 2>& ends) {
  if (join == Spec::Join::either) {
    EdtfSet set;
    if (!add_to(set, a) || !add_to(set, b)) return std::nullopt;
    return Edtf{std::move(set)};
  }
  const auto* first = edge_of(a, false);
  const auto* last = edge_of(b, true);
  if (!first || !last) return std::nullopt;
  if (join == Spec::Join::between && alike(*first, *last)) return one_of_span(*first, *last);
  if (ends[0] && ends[1]) return Edtf{EdtfInterval{*ends[0], *ends[1]}};
  const bool dates = std::holds_alternative<EdtfDate>(a.value) && std::holds_alternative<EdtfDate>(b.value);
  return dates ? std::optional(Edtf{EdtfInterval{*first, *last}}) : std::nullopt;
}

const Edtf& whole_of(const DateExpression& e) {
  return e.whole ? *e.whole : *e.edtf;
}

/// 4/10/1957 to 5/10/1957: month first or day first, but the same in both.
void add_either_order(DateExpression& whole, const std::vector<DateExpression>& parts) {
  if (parts[0].rule != "numeric-either-order" || parts[1].rule != "numeric-either-order") return;
  for (std::size_t order = 0; order < 2; ++order)
    whole.alternatives.push_back(parts[0].alternatives[order] + "/" + parts[1].alternatives[order]);
}

/// Between Christmas and New Year's 1955: the year is the one feast's or the other's, so there are two such
/// times.
void put_over_new_year(const Spec& spec, DateExpression& e) {
  const auto& first = *spec.first->named;
  const auto& second = *spec.second->named;
  const auto year = to_civil(*e.parts[1].period->earliest()).year;
  EdtfSet set;
  for (const auto from : {year - 1, year}) {
    const auto a = day_date(day_in_year(first, from)), b = day_date(day_in_year(second, from + 1));
    e.alternatives.push_back(to_string(Edtf{EdtfInterval{a, b}}));
    set.elements.push_back({a, b, true});
  }
  e.timex3 = "XXXX" + e.parts[0].timex3.substr(4) + "/XXXX" + e.parts[1].timex3.substr(4);
  if (spec.join == Spec::Join::between) e.edtf = Edtf{std::move(set)};
}

}  // namespace

bool join_dates(const TwoDates& two, std::vector<DateExpression>& parts, DateExpression& e) {
  e.rule = two.spec.rule;
  e.anchor = parts[0].anchor;
  e.corrected = two.spec.taken_back;
  const bool either_order = two.spec.join == Spec::Join::range && parts[0].alternatives.size() == 2 &&
                            parts[1].alternatives.size() == 2;
  if ((!parts[0].edtf && !parts[1].edtf && two.spec.join != Spec::Join::either) || either_order) {
    e.timex3 = parts[0].timex3 + "/" + parts[1].timex3;  // from June to August, no year known
    add_either_order(e, parts);
    e.parts = std::move(parts);
    return true;
  }
  if (!parts[0].edtf || !parts[1].edtf) return false;
  // A range the wrong way round is none.
  const auto& first = *parts[0].period;
  const auto& second = *parts[1].period;
  if (two.spec.join != Spec::Join::either && first.earliest() && second.earliest() &&
      *second.earliest() < *first.earliest()) {
    if (!two.spec.first->named || !two.spec.second->named || parts[0].timex3.size() < 10 ||
        parts[1].timex3.size() < 10)
      return false;
    e.parts = std::move(parts);
    put_over_new_year(two.spec, e);
    if (e.edtf) e.period = to_period(*e.edtf, two.policy);
    return true;
  }
  const auto whole = joined_dates(two.spec.join, whole_of(parts[0]), whole_of(parts[1]), {});
  if (!whole) return false;
  e.timex3 = to_string(*whole);
  if (two.limited) {
    e.edtf = two.limited;
  } else if (parts[0].whole || parts[1].whole) {
    e.edtf = joined_dates(two.spec.join, *parts[0].edtf, *parts[1].edtf, two.ends);
    if (e.edtf) e.whole = *whole;
  }
  if (!e.edtf) e.edtf = whole;
  e.period = to_period(*e.edtf, two.policy);
  e.parts = std::move(parts);
  return true;
}

}  // namespace witnessmark::dates
