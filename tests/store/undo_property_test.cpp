#include <doctest/doctest.h>

#include "store/random_coder.h"
#include "store/table_dump.h"
#include "witnessmark/store/journal.h"
#include "witnessmark/store/undo.h"

using namespace witnessmark;
using namespace witnessmark::sample;

TEST_CASE("any sequence of decisions and as many undos give the first state of all tables, redos the last") {
  std::size_t acts = 0;
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    CAPTURE(seed);
    SiteFile site = filled_site(seed);
    RandomCoder coder(site, seed);
    const auto first = state_dump(site);
    std::vector<std::vector<std::string>> states{first};
    for (int i = 0; i < 12; ++i) {
      if (coder.act()) states.push_back(state_dump(site));
    }
    acts += states.size() - 1;
    // Back, some way forward and back again, to the first; each state on the way is the one it was.
    std::size_t at = states.size() - 1;
    const auto check_state = [&] { CHECK(first_difference(states[at], state_dump(site)) == ""); };
    for (int turn = 0; turn < 3; ++turn) {
      for (std::size_t steps = coder.below(states.size()); steps > 0 && at > 0; --steps) {
        REQUIRE(must(undo(site)));
        --at;
        check_state();
      }
      for (std::size_t steps = coder.below(states.size()); steps > 0 && at + 1 < states.size(); --steps) {
        REQUIRE(must(redo(site)));
        ++at;
        check_state();
      }
    }
    while (at > 0) {
      REQUIRE(must(undo(site)));
      --at;
      check_state();
    }
    CHECK(!must(undo(site)));
    CHECK(findings(site) == std::vector<std::string>{});
    while (at + 1 < states.size()) {
      REQUIRE(must(redo(site)));
      ++at;
      check_state();
    }
    CHECK(!must(redo(site)));
    CHECK(findings(site) == std::vector<std::string>{});
  }
  MESSAGE(acts << " acts undone and redone");
  CHECK(acts > 300);
}
