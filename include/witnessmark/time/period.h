#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "witnessmark/time/date_policy.h"
#include "witnessmark/time/day.h"
#include "witnessmark/time/edtf.h"

namespace witnessmark {

/// One end of a period: a boundary between days, known to lie from `earliest` to `latest`, both inclusive. The boundary
/// d lies at the first moment of day d, so that the year 1951 ends at the boundary 1952-01-01, where 1952 begins.
/// A side without value has no limit on that side.
struct Boundary {
  enum class Kind {
    known,    ///< Lies between the two limits.
    unknown,  ///< There is one, nobody says when.
    open      ///< The period may have none.
  };
  Kind kind = Kind::known;
  std::optional<Day> earliest;
  std::optional<Day> latest;
  bool operator==(const Boundary&) const = default;
};

/// What a dated statement can mean: it begins within [begin.earliest, begin.latest] and ends within
/// [end.earliest, end.latest] (the four dates of CIDOC CRM P81/P82: outer begin.earliest to end.latest, inner
/// begin.latest to end.earliest). Proleptic Gregorian days, half-open inside: the end boundary is the first day after.
struct Period {
  Boundary begin;
  Boundary end;

  /// First day it can touch; nothing when there is no limit.
  std::optional<Day> earliest() const { return begin.earliest; }
  /// The day after the last it can touch; nothing when there is no limit.
  std::optional<Day> past_latest() const { return end.latest; }
  /// Whether the days [first, past) all surely belong to it.
  bool surely_covers(Day first, Day past) const;
  bool possibly_touches(Day first, Day past) const;

  bool operator==(const Period&) const = default;
};

/// "[1962-09-01..1962-09-01 | 1962-12-01..1962-12-01)" : begins within | ends within, a limit that is not there left out;
/// `?` an unknown side, `..` an open one.
std::string to_string(const Period& period);

/// For people, inclusive, years before 1 as BCE: "September to November 1962", "some time from 2010 to 2019",
/// "beginning 1964, ending 2008", "from 1960, end unknown".
std::string describe(const Period& period);

/// The same of a date with its doubt: "1957, uncertain", "some time from 1956 to 1958, approximate", "1957 to
/// 1959; end: uncertain".
std::string describe(const Edtf& value, const Period& period);

/// Exactly the days [first, past).
Period exact_period(Day first, Day past);

/// Does a dated statement hold throughout its period, or at some time within it? (CIDOC CRM P81, P82.)
enum class Reading { throughout, within };

/// The calendar period an expression denotes under a policy. A date without signs gives exact boundaries; signs widen
/// outward by the policy's widths and draw the inner limits inward; unspecified digits and one-of sets give the hull of
/// the candidates (see candidates()); an all-of set spans from its first to its last element.
Period to_period(const Edtf& value, const DatePolicy& policy);

/// The same period read as "at some time within it": begin and end anywhere inside, at least one day long.
Period some_time_within(const Period& period);

/// The alternatives a one-of set or unspecified digits stand for, each a period of its own in order of time; one element
/// for plain values. Nothing when there are more than limit.
std::optional<std::vector<Period>> candidates(const Edtf& value, const DatePolicy& policy, std::size_t limit = 400);

}  // namespace witnessmark
