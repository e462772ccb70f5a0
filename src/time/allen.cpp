// An interval is two numbers, so relations need no table: two intervals a and b are told apart by the signs
// of four differences, and the composition of two relations is found by placing x, y and z on a line of few
// points in every way. Six boundaries have at most six distinct places, so placements over 0..5 show every
// possible triple; all 169 results are worked out once, on first use.
#include "witnessmark/time/allen.h"

#include <fmt/format.h>

#include <array>
#include <bit>

namespace witnessmark {
namespace {

constexpr std::string_view kLetters = "pmoFDseSdfOMP";
constexpr int kCount = 13;

using Table = std::array<std::array<AllenSet, kCount>, kCount>;

struct Interval {
  int begin;
  int end;
};

constexpr Allen relation_between(std::int64_t a_begin, std::int64_t a_end, std::int64_t b_begin,
                                 std::int64_t b_end) {
  if (a_end < b_begin) return Allen::precedes;
  if (a_end == b_begin) return Allen::meets;
  if (b_end < a_begin) return Allen::preceded_by;
  if (b_end == a_begin) return Allen::met_by;
  if (a_begin == b_begin) {
    if (a_end == b_end) return Allen::equals;
    return a_end < b_end ? Allen::starts : Allen::started_by;
  }
  if (a_end == b_end) return a_begin < b_begin ? Allen::finished_by : Allen::finishes;
  if (a_begin < b_begin) return a_end < b_end ? Allen::overlaps : Allen::contains;
  return a_end < b_end ? Allen::during : Allen::overlapped_by;
}

constexpr int kPlaces = 6;

constexpr Table make_table() {
  std::array<Interval, kPlaces*(kPlaces - 1) / 2> intervals{};
  std::size_t count = 0;
  for (int begin = 0; begin < kPlaces; ++begin) {
    for (int end = begin + 1; end < kPlaces; ++end) intervals[count++] = {begin, end};
  }
  Table table{};
  for (const Interval& x : intervals) {
    for (const Interval& y : intervals) {
      const auto xy = static_cast<std::size_t>(relation_between(x.begin, x.end, y.begin, y.end));
      for (const Interval& z : intervals) {
        const auto yz = static_cast<std::size_t>(relation_between(y.begin, y.end, z.begin, z.end));
        table[xy][yz] = table[xy][yz] | AllenSet::of(relation_between(x.begin, x.end, z.begin, z.end));
      }
    }
  }
  return table;
}

constexpr Table kComposition = make_table();

}  // namespace

int AllenSet::size() const {
  return std::popcount(bits);
}

Allen relation_of(Day a_begin, Day a_end, Day b_begin, Day b_end) {
  return relation_between(a_begin.value, a_end.value, b_begin.value, b_end.value);
}

// In the order of the letters the converse of a relation stands as far from the end as the relation from the
// beginning.
AllenSet converse(AllenSet set) {
  AllenSet reversed;
  for (int i = 0; i < kCount; ++i) {
    if (set.has(static_cast<Allen>(i)))
      reversed = reversed | AllenSet::of(static_cast<Allen>(kCount - 1 - i));
  }
  return reversed;
}

AllenSet compose(AllenSet a, AllenSet b) {
  AllenSet result;
  for (std::size_t i = 0; i < kCount; ++i) {
    if (!a.has(static_cast<Allen>(i))) continue;
    for (std::size_t j = 0; j < kCount; ++j) {
      if (b.has(static_cast<Allen>(j))) result = result | kComposition[i][j];
    }
  }
  return result;
}

std::string to_string(AllenSet set) {
  std::string text = "(";
  for (std::size_t i = 0; i < kCount; ++i) {
    if (set.has(static_cast<Allen>(i))) text += kLetters[i];
  }
  return text + ")";
}

Result<AllenSet> parse_allen(std::string_view text) {
  Error error;
  error.advice = fmt::format("write letters of {} in parentheses, such as (pmo)", kLetters);
  if (text.size() < 2 || text.front() != '(' || text.back() != ')') {
    error.column = 1;
    error.message = "a set of relations stands in parentheses";
    return error;
  }
  AllenSet set;
  for (std::size_t at = 1; at + 1 < text.size(); ++at) {
    const std::size_t index = kLetters.find(text[at]);
    if (index == std::string_view::npos) {
      error.column = static_cast<std::int64_t>(at) + 1;
      error.message = "there is no relation of that letter";
      return error;
    }
    set = set | AllenSet::of(static_cast<Allen>(index));
  }
  return set;
}

std::string_view in_words(Allen relation) {
  constexpr std::array<std::string_view, kCount> kWords{
      "before",     "meets",  "overlaps", "finished by",   "contains", "starts", "equals",
      "started by", "during", "finishes", "overlapped by", "met by",   "after"};
  return kWords[static_cast<std::size_t>(relation)];
}

}  // namespace witnessmark
