// How weighed claims stand in number: what the interviewer supplied counts apart among those that agree, and in corroboration
// not at all.
#include <doctest/doctest.h>

#include <algorithm>

#include "whole_job.h"
#include "witnessmark/app/corroboration.h"
#include "witnessmark/app/weigh.h"
#include "witnessmark/store/claims.h"

using namespace witnessmark;

TEST_CASE("a claim that agrees is counted as supplied by the interviewer once a coder says so, and speaks for nothing") {
  const SystemFileReader files;
  const Day today = to_day({2026, 1, 15});
  SiteFile site = whole_job(files, source_tree() / "corpus-demo", today);
  const Surroundings around = surroundings_of(files, today);
  const auto before = weighing_account(site, around).value();
  REQUIRE(!before.agreements.empty());
  std::optional<Claim> chosen;
  for (const StoredClaim& stored : load_claims(site, {.ids = before.agreements}))
    if (!stored.claim.led && stored.claim.statement == Statement::ends && stored.claim.basis == Basis::first_hand)
      chosen = stored.claim;
  REQUIRE(chosen);
  const auto worth_of = [&](const CorroborationAccount& account) -> std::optional<Worth> {
    for (const GradedQuestions& grade : account.preview)
      for (const ShownQuestion& question : grade.shown)
        for (const Voice& voice : question.answer.voices)
          if (voice.claim == chosen->id && voice.stand == Stand::for_it) return voice.worth;
    return std::nullopt;
  };
  constexpr std::size_t kAll = 100'000;
  CHECK(worth_of(corroboration_account(site, kAll, around).value()) == Worth::counted);
  chosen->led = true;
  REQUIRE(decide_claim(site, *chosen, "").ok());
  REQUIRE(weigh(site, false, around).ok());
  const auto after = weighing_account(site, around).value();
  CHECK(after.led == before.led + 1);
  CHECK(after.agreements.size() == before.agreements.size());
  CHECK(worth_of(corroboration_account(site, kAll, around).value()) == Worth::led);
}
