#pragma once
#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "witnessmark/base/result.h"

namespace witnessmark {

/// The Extended Date/Time Format: ISO 8601-2:2019, in the profile of the Library of Congress dated 2019-02-04.
/// All of levels 0, 1 and 2 are read and printed.

/// `?` uncertain, `~` approximate, `%` both. Kept for each component.
struct Qualifier {
  bool uncertain = false;
  bool approximate = false;
  bool any() const { return uncertain || approximate; }
  auto operator<=>(const Qualifier&) const = default;
};

/// The digits of a component some of which are X, in place: dates are copied often, and have no memory of their own.
class EdtfMask {
 public:
  static constexpr std::size_t kMost = 17;   ///< A minus and the digits of the largest year.
  EdtfMask() = default;
  EdtfMask(std::string_view text) : size_(static_cast<std::uint8_t>(text.copy(text_.data(), kMost))) {}
  std::string_view view() const { return {text_.data(), size_}; }
  bool empty() const { return size_ == 0; }
  bool operator==(const EdtfMask&) const = default;

 private:
  std::array<char, kMost> text_{};
  std::uint8_t size_ = 0;
};

/// Digits of a year, month or day, some of which may be unspecified (X).
struct EdtfComponent {
  std::int64_t value = 0;       ///< With X read as 0; negative for years before 0000.
  EdtfMask mask;                ///< As written, with its minus, when any digit is X ("156X", "-20XX", "1X"); else empty.
  Qualifier qualifier;
  bool specified() const { return mask.empty(); }
  bool operator==(const EdtfComponent&) const = default;
};

struct EdtfTime {
  int hour = 0;
  int minute = 0;
  int second = 0;
  std::optional<int> shift_minutes;  ///< Offset from UTC in minutes; 0 for Z; nothing for local time.
  bool shift_is_z = false;
  bool shift_has_minutes = false;
  bool operator==(const EdtfTime&) const = default;
};

/// A year, a month of a year, a day, or a season-like division (codes 21-41 stand in month).
struct EdtfDate {
  EdtfComponent year;
  std::optional<EdtfComponent> month;  ///< 1-12, or 21-41.
  std::optional<EdtfComponent> day;
  std::optional<EdtfTime> time;
  bool long_year = false;                      ///< Written with a leading Y.
  std::optional<int> exponent;                 ///< Y-17E7: value holds the significand times ten to this.
  std::optional<int> significant_digits;       ///< 1950S2.
  bool is_season() const { return month && month->specified() && month->value >= 21; }
  bool operator==(const EdtfDate&) const = default;
};

/// An end of an interval: a date, unknown (nothing written) or open (`..`).
struct EdtfUnknown {
  bool operator==(const EdtfUnknown&) const = default;
};
struct EdtfOpen {
  bool operator==(const EdtfOpen&) const = default;
};
using EdtfEnd = std::variant<EdtfDate, EdtfUnknown, EdtfOpen>;

struct EdtfInterval {
  EdtfEnd begin;
  EdtfEnd end;
  bool operator==(const EdtfInterval&) const = default;
};

/// One element of a set: a date (first == last), a span `a..b`, or one with an open side (`..b`, `a..`).
struct EdtfSetElement {
  std::optional<EdtfDate> first;
  std::optional<EdtfDate> last;
  bool is_span = false;
  bool operator==(const EdtfSetElement&) const = default;
};

struct EdtfSet {
  enum class Kind { one_of, all_of };
  Kind kind = Kind::one_of;
  std::vector<EdtfSetElement> elements;
  bool operator==(const EdtfSet&) const = default;
};

struct Edtf {
  std::variant<EdtfDate, EdtfInterval, EdtfSet> value;
  bool operator==(const Edtf&) const = default;
};

/// Reads one expression, the whole text. The Error names the column and what to write instead; the syntax of the 2012
/// draft (199u, unknown, open, ?~, y, e, p, parentheses) is recognised and named. Impossible days, reversed intervals and
/// spaces are errors.
Result<Edtf> parse_edtf(std::string_view text);

/// Canonical text: for every value parse_edtf(to_string(v)) == v, and for canonical x to_string(parse_edtf(x)) == x.
std::string to_string(const Edtf& value);
std::string to_string(const EdtfDate& date);

/// What the marks `?`, `~` and `%` say, in words: "uncertain", "approximate", "uncertain and approximate" of
/// a date; the component where they are on some only ("year and month uncertain"), the end of an interval
/// ("end: approximate"), the element of a set ("1957?: uncertain"). Empty without marks.
std::string doubt_words(const Edtf& value);

/// Whether `?` or `%` stands anywhere. A period shows how wide an approximate date is, but not that it is in
/// doubt.
bool is_uncertain(const Edtf& value);

/// The lowest level (0, 1 or 2) that has everything the value uses.
int edtf_level(const Edtf& value);

/// A whole year, month or day.
Edtf edtf_year(std::int64_t year);
Edtf edtf_month(std::int64_t year, int month);
Edtf edtf_day(std::int64_t year, int month, int day);

}  // namespace witnessmark
