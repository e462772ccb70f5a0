#include <doctest/doctest.h>

#include <filesystem>
#include <map>
#include <set>

#include "store/claim/claim_rows.h"
#include "store/coding/coding_tables.h"
#include "store/random_coder.h"
#include "witnessmark/store/journal.h"
#include "witnessmark/store/merge.h"
#include "witnessmark/store/undo.h"

using namespace witnessmark;
using namespace witnessmark::sample;

namespace {

/// Each decided claim and each record as JSON, by what it is about.
std::map<std::string, std::string> coded(const SiteFile& site) {
  std::map<std::string, std::string> states;
  for (const StoredClaim& claim : load_claims(site)) {
    if (claim.decided)
      states["claim " + to_string(claim.claim.id)] = claim_json(claim.claim, claim.version) +
                                                     (claim.by_coder ? " own" : "") +
                                                     (claim.gone ? " gone" : "");
  }
  for_each_coding_table([&]<typename R>(R*) {
    for (const R& record : all_values<R>(site.connection()))
      states[std::string(Table<R>::kind) + " " + Table<R>::target(record)] = to_json(record);
  });
  for (const RestrictedPassage& passage : load_interviews(site).passages) {
    states["passage " + passage.interview + passage.quote] =
        to_json(passage) + std::to_string(passage.range.begin.value);
  }
  return states;
}

/// Leaves out what is open for a person to settle.
void leave_out_open(const SiteFile& site, std::map<std::string, std::string>& states) {
  for (const DoubleDecision& open : open_differences(site)) {
    if (open.target_kind == "passage") {
      const std::string& state = open.here.state.empty() ? open.there.state : open.here.state;
      const auto passage = record_of<RestrictedPassage>(state);
      states.erase("passage " + passage.interview + passage.quote);
    } else {
      states.erase(open.target_kind + " " + open.target);
    }
  }
}

std::string difference_between(const SiteFile& one, const SiteFile& other) {
  auto first = coded(one);
  auto second = coded(other);
  for (const SiteFile* site : {&one, &other}) {
    leave_out_open(*site, first);
    leave_out_open(*site, second);
  }
  for (const auto& [target, state] : first) {
    if (second[target] != state) return target + "\n" + state + "\n" + second[target];
  }
  return first.size() == second.size() ? "" : "other numbers of targets";
}

class Copies {
 public:
  explicit Copies(std::uint64_t seed) {
    SiteFile site =
        must(SiteFile::create(folder_ / "base", {{}, "Tender Guillemot", "2031", "built-in"}, editor()));
    must(save_interviews(site, interview_file()));
    must(save_transcript(site, transcript_file("aske-1", kTalk)));
    must(save_register(site, evidence()));
    std::vector<Claim> claims;
    for (const char* quote :
         {"We had the crane", "The lamp was brass", "it went over", "the yard took", "Was that"})
      claims.push_back(claim("aske-1", kTalk, quote));
    must(replace_proposals(site, "aske-1", claims));
    RandomCoder coder(site, seed);
    for (int i = 0; i < 4; ++i) coder.act();
  }
  SiteFile open(const std::string& name, const std::string& coder, std::uint64_t seed) const {
    return must(SiteFile::edit(folder_ / name, editor(coder, seed)));
  }
  void copy(const std::string& from, const std::string& to) const {
    std::filesystem::remove(folder_ / to);
    must(must(SiteFile::read(folder_ / from)).copy_to(folder_ / to));
  }
  /// A copy of the base with acts and undoings of that coder.
  void work(const std::string& name, const std::string& coder, std::uint64_t seed, int acts) const {
    copy("base", name);
    SiteFile site = open(name, coder, seed);
    RandomCoder random(site, seed);
    for (int i = 0; i < acts; ++i) {
      random.act();
      if (random.below(4) == 0) must(undo(site));
      if (random.below(8) == 0) must(redo(site));
    }
  }
  MergeReport merge(const std::string& into, const std::string& from, std::uint64_t seed) const {
    SiteFile site = open(into, "M. Erger", seed);
    const MergeReport report = must(merge_site_file(site, must(SiteFile::read(folder_ / from))));
    CHECK(findings(site) == std::vector<std::string>{});
    return report;
  }
  std::string difference(const std::string& one, const std::string& other) const {
    return difference_between(must(SiteFile::read(folder_ / one)), must(SiteFile::read(folder_ / other)));
  }

 private:
  TemporaryFolder folder_;
};

}  // namespace

TEST_CASE("merging is the same whichever copy is brought into which, and twice is once") {
  std::size_t taken = 0, differences = 0, alike = 0;
  for (std::uint64_t seed = 1; seed <= 30; ++seed) {
    CAPTURE(seed);
    const Copies copies(seed);
    copies.work("a", "A. Coder", 100 + seed, 4);
    copies.work("b", "B. Other", 200 + seed, 4);
    copies.copy("a", "a-b");
    copies.copy("b", "b-a");
    const MergeReport report = copies.merge("a-b", "b", 300 + seed);
    taken += report.taken;
    differences += report.differences;
    alike += report.alike;
    const MergeReport mirrored = copies.merge("b-a", "a", 400 + seed);
    CHECK(report.differences == mirrored.differences);
    CHECK(report.alike == mirrored.alike);
    CHECK(copies.difference("a-b", "b-a") == "");

    CHECK(copies.merge("a-b", "b", 500 + seed) == MergeReport{});
    const MergeReport again = copies.merge("a-b", "b-a", 600 + seed);
    CHECK(again.taken == 0);
    CHECK(again.alike == 0);
    CHECK(again.differences == 0);
    CHECK(copies.difference("a-b", "b-a") == "");
  }
  MESSAGE(taken << " taken, " << alike << " alike, " << differences << " different");
  CHECK(taken > 30);
  CHECK(differences > 5);
}

TEST_CASE("three copies come to the same in any order") {
  for (std::uint64_t seed = 1; seed <= 10; ++seed) {
    CAPTURE(seed);
    const Copies copies(seed);
    copies.work("a", "A. Coder", 100 + seed, 2);
    copies.work("b", "B. Other", 200 + seed, 3);
    copies.work("c", "C. Third", 300 + seed, 3);
    copies.copy("a", "abc");
    copies.copy("a", "acb");
    copies.copy("c", "c-ab");
    copies.merge("abc", "b", 400 + seed);
    copies.merge("c-ab", "abc", 401 + seed);
    copies.merge("abc", "c", 402 + seed);
    copies.merge("acb", "c", 403 + seed);
    copies.merge("acb", "b", 404 + seed);
    CHECK(copies.difference("abc", "acb") == "");
    CHECK(copies.difference("abc", "c-ab") == "");
  }
}
