// Dates of interviews against what is told in them; the rest of what no life can hold is in
// tests/golden/bad-rows.
#include <doctest/doctest.h>

#include "whole_job.h"
#include "witnessmark/app/take_in.h"
#include "witnessmark/store/claims.h"

using namespace witnessmark;

TEST_CASE("an interview dated before what it tells first-hand is warned of, by reviewed claims only") {
  const auto folder = source_tree() / "tests" / "second-site";
  const Day today = to_day({2026, 1, 15});
  const SystemFileReader system;
  SiteFile site = whole_job(system, folder, today);
  // 1990 is after every birth and before the interview; the claim is dated 1993 by the coder.
  const MemoryFiles moved = files_of(folder, [](const std::string& path, std::string bytes) {
    const std::string date = "1994-06-08";
    const std::size_t at = path == "interviews.csv" ? bytes.find(date) : bytes.npos;
    return at == bytes.npos ? bytes : bytes.replace(at, date.size(), "1990-06-08");
  });
  const auto warnings = [&] {
    std::string lines;
    const auto taken = take_in_interviews(site, folder / "interviews.csv", {}, surroundings_of(moved, today));
    CHECK(taken.done);
    for (const Diagnostic& one : taken.diagnostics)
      if (one.severity == Diagnostic::Severity::warning) lines += one.what.message + "\n";
    return lines;
  };
  ClaimFilter filter;
  filter.interviews = {"garth-1"};
  Claim claim = load_claims(site, filter).front().claim;
  claim.basis = Basis::first_hand;
  claim.quantity = Quantity{1, 1, ""};
  claim.attribute = "colour: red";
  claim.when.dated.value = parse_edtf("1993-05").value();
  claim.when.period = to_period(*claim.when.dated.value, default_date_policy());
  SUBCASE("reviewed") {
    claim.status = ClaimStatus::said_so;
    REQUIRE(decide_claim(site, claim, ""));
    CHECK(warnings() ==
          "\"1990-06-08\" in cell F2 (date): 1 claim of it, reviewed and first-hand, is dated after that "
          "(1993-05)\n");
  }
  SUBCASE("set aside") {
    claim.status = ClaimStatus::set_aside;
    REQUIRE(decide_claim(site, claim, ""));
    CHECK(warnings() == "");
  }
}
