#include "read/transcripts/stamps.h"

#include <algorithm>
#include <limits>

#include "witnessmark/base/ascii.h"

namespace witnessmark {
namespace {

/// Digits at the place, at most nine of them (more are no stamp); moves behind them.
std::optional<std::int64_t> read_number(std::string_view text, std::size_t& at, std::size_t& digits) {
  const std::size_t start = at;
  std::int64_t value = 0;
  while (at < text.size() && is_digit(text[at]) && at - start < 10) value = value * 10 + (text[at++] - '0');
  digits = at - start;
  if (digits == 0 || digits > 9) return std::nullopt;
  return value;
}

/// ".5", ",250": thousandths. Moves behind them only when there are digits.
std::int64_t read_decimals(std::string_view text, std::size_t& at) {
  if (at + 1 >= text.size() || (text[at] != '.' && text[at] != ',') || !is_digit(text[at + 1])) return 0;
  std::int64_t value = 0;
  std::int64_t worth = 100;
  std::size_t next = at + 1;
  for (; next < text.size() && is_digit(text[next]) && worth > 0; ++next, worth /= 10) {
    value += (text[next] - '0') * worth;
  }
  at = next;
  return value;
}

}  // namespace

std::optional<StampReading> read_stamp(std::string_view text) {
  std::size_t at = 0;
  std::size_t digits = 0;
  std::int64_t parts[3] = {0, 0, 0};
  int count = 0;
  while (count < 3) {
    const auto number = read_number(text, at, digits);
    if (!number || (count > 0 && digits != 2)) return std::nullopt;
    parts[count++] = *number;
    if (count == 3 || at + 1 >= text.size() || text[at] != ':' || !is_digit(text[at + 1])) break;
    ++at;
  }
  if (count < 2) return std::nullopt;
  const std::int64_t thousandths = read_decimals(text, at);
  if (at < text.size() && (is_digit(text[at]) || text[at] == ':')) return std::nullopt;
  StampReading stamp;
  stamp.length = at;
  stamp.has_hours = count == 3;
  const std::int64_t hours = stamp.has_hours ? parts[0] : 0;
  const std::int64_t minutes = stamp.has_hours ? parts[1] : parts[0];
  const std::int64_t seconds = stamp.has_hours ? parts[2] : parts[1];
  if (seconds > 59 || (stamp.has_hours && minutes > 59)) return stamp;
  stamp.time = Millisecond{((hours * 60 + minutes) * 60 + seconds) * 1000 + thousandths};
  return stamp;
}

// Longest non-decreasing subsequence: for each length the index of the smallest time such a run can end with,
// found by bisection, and for each time its predecessor.
std::vector<bool> keep_in_order(const std::vector<Millisecond>& times) {
  constexpr std::size_t kNone = std::numeric_limits<std::size_t>::max();
  std::vector<std::size_t> last_of_length;
  std::vector<std::size_t> before(times.size(), kNone);
  for (std::size_t i = 0; i < times.size(); ++i) {
    const auto place =
        std::upper_bound(last_of_length.begin(), last_of_length.end(), times[i],
                         [&](Millisecond time, std::size_t index) { return time < times[index]; });
    if (place != last_of_length.begin()) before[i] = *std::prev(place);
    if (place == last_of_length.end()) {
      last_of_length.push_back(i);
    } else {
      *place = i;
    }
  }
  std::vector<bool> keep(times.size(), false);
  if (last_of_length.empty()) return keep;
  for (std::size_t i = last_of_length.back(); i != kNone; i = before[i]) keep[i] = true;
  return keep;
}

}  // namespace witnessmark
