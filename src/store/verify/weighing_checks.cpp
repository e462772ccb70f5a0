#include "store/verify/checks.h"
#include "store/weighing/packed_comparisons.h"
#include "store/weighing/standings.h"

// What weighing made can be made again, so the journal says nothing of it. But what a list shows of a claim and
// what the claim itself shows are kept apart, and must be of one weighing.

namespace witnessmark {
namespace {

/// The standing that the comparisons as kept give; throws when they are damaged.
ClaimStanding counted(const std::string& packed) {
  Weighing weighing;
  ComparisonUnpacker unpacker(packed);
  for (NumberedComparison numbered; unpacker.next(numbered);) {
    Comparison& comparison = weighing.comparisons.emplace_back();
    comparison.outcome = numbered.outcome;
    comparison.intention = numbered.intention;
    comparison.circular = numbered.circular;
  }
  return standing_of(weighing);
}

}  // namespace

void check_weighings(Verification& verification) {
  SqlStatement select(*verification.connection.database,
                      std::string("SELECT ") + kStandingColumns +
                          ", packed FROM weighings JOIN claims USING (claim) LEFT JOIN comparisons USING (claim)");
  while (select.step()) {
    const ClaimStanding kept = standing_from(select);
    const auto find = [&](const char* message) {
      verification.find("weighing", to_string(kept.claim), message);
    };
    if (select.is_null(kStandingColumnCount)) {
      find("what it was compared with is missing; weigh it anew");
      continue;
    }
    try {
      const ClaimStanding standing = counted(select.blob(kStandingColumnCount));
      if (standing.foremost != kept.foremost || standing.comparisons != kept.comparisons ||
          standing.intentions != kept.intentions)
        find("how it stands is not what its comparisons give; weigh it anew");
    } catch (const SqliteError&) {
      find("what it was compared with cannot be read; weigh it anew");
    }
  }
}

}  // namespace witnessmark
