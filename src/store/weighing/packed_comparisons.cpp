#include "store/weighing/packed_comparisons.h"

#include <sqlite3.h>

#include "store/sqlite/database.h"

namespace witnessmark {
namespace {

constexpr std::uint64_t kOutcomes = 7;
constexpr std::uint64_t kIntention = 8;
constexpr std::uint64_t kCircular = 16;
constexpr std::uint64_t kLeast = 32;
constexpr std::uint64_t kMost = 64;
constexpr unsigned kRelationAt = 7;
constexpr std::uint64_t kRelations = 0x1FFF;

void put(std::string& bytes, std::uint64_t number) {
  for (; number >= 0x80; number >>= 7) bytes += static_cast<char>((number & 0x7F) | 0x80);
  bytes += static_cast<char>(number);
}

/// Small numbers of either sign stay short: 0, -1, 1, -2 … are 0, 1, 2, 3 …
std::uint64_t zigzag(std::int64_t number) {
  return (static_cast<std::uint64_t>(number) << 1) ^ static_cast<std::uint64_t>(number >> 63);
}
std::int64_t from_zigzag(std::uint64_t number) {
  return static_cast<std::int64_t>(number >> 1) ^ -static_cast<std::int64_t>(number & 1);
}

/// The difference wraps round, so that no two numbers are too far apart.
std::int64_t less(std::int64_t a, std::int64_t b) {
  return static_cast<std::int64_t>(static_cast<std::uint64_t>(a) - static_cast<std::uint64_t>(b));
}
std::int64_t plus(std::int64_t a, std::int64_t b) {
  return static_cast<std::int64_t>(static_cast<std::uint64_t>(a) + static_cast<std::uint64_t>(b));
}

[[noreturn]] void damaged() {
  throw SqliteError(SQLITE_CORRUPT, "site file: what a claim was compared with is damaged");
}

std::uint64_t take(std::string_view& rest) {
  std::uint64_t number = 0;
  for (unsigned shift = 0; shift < 64; shift += 7) {
    if (rest.empty()) damaged();
    const auto byte = static_cast<std::uint8_t>(rest.front());
    rest.remove_prefix(1);
    number |= static_cast<std::uint64_t>(byte & 0x7F) << shift;
    if (byte < 0x80) return number;
  }
  damaged();
}

}  // namespace

void ComparisonPacker::add(const NumberedComparison& comparison) {
  put(bytes_, zigzag(less(comparison.evidence, last_)));
  last_ = comparison.evidence;
  std::uint64_t head = static_cast<std::uint64_t>(comparison.outcome);
  if (comparison.intention) head |= kIntention;
  if (comparison.circular) head |= kCircular;
  if (comparison.gap) head |= kLeast;
  if (comparison.gap && comparison.gap->most) head |= kMost;
  head |= static_cast<std::uint64_t>(comparison.relation.bits) << kRelationAt;
  put(bytes_, head);
  if (!comparison.gap) return;
  put(bytes_, zigzag(comparison.gap->least));
  if (comparison.gap->most) put(bytes_, zigzag(less(*comparison.gap->most, comparison.gap->least)));
}

bool ComparisonUnpacker::next(NumberedComparison& comparison) {
  if (rest_.empty()) return false;
  last_ = plus(last_, from_zigzag(take(rest_)));
  comparison.evidence = last_;
  const std::uint64_t head = take(rest_);
  if ((head & kOutcomes) > static_cast<std::uint64_t>(Outcome::silent)) damaged();
  if (head >> kRelationAt > kRelations || ((head & kMost) != 0 && (head & kLeast) == 0)) damaged();
  comparison.outcome = static_cast<Outcome>(head & kOutcomes);
  comparison.intention = (head & kIntention) != 0;
  comparison.circular = (head & kCircular) != 0;
  comparison.relation.bits = static_cast<std::uint16_t>(head >> kRelationAt);
  comparison.gap.reset();
  if ((head & kLeast) == 0) return true;
  comparison.gap = Distance{from_zigzag(take(rest_)), std::nullopt};
  if ((head & kMost) != 0) comparison.gap->most = plus(comparison.gap->least, from_zigzag(take(rest_)));
  return true;
}

}  // namespace witnessmark
