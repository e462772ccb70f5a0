#pragma once
#include <functional>
#include <string>
#include <vector>

#include "store/sample_site.h"
#include "witnessmark/store/journal.h"
#include "witnessmark/store/weighings.h"

namespace witnessmark::sample {

/// A long talk of turns that differ.
inline std::string long_talk(int turns, const std::string& word) {
  std::string text;
  for (int i = 0; i < turns; ++i) {
    text += "Turn " + std::to_string(i) + ": we had the crane until the yard took it off, and the lamp " +
            word + " burnt for " + std::to_string(i * 7) + " nights on the foredeck.\n";
  }
  return text;
}

/// One claim for each turn.
inline std::vector<Claim> claims_of(const std::string& interview, const std::string& text, int turns,
                                    int claims) {
  std::vector<Claim> all;
  const Claim like = claim(interview, text, "the crane");
  for (int i = 0; i < claims && i < turns; ++i) {
    Claim c = like;
    c.quotes = {range_of(text, "Turn " + std::to_string(i) + ": we had the crane")};
    c.subject = "crane-" + std::to_string(i % 7);
    all.push_back(std::move(c));
  }
  return all;
}

/// Turns of a transcript in coding sessions, and how many of the steps below come before coding can begin.
constexpr int kSessionTurns = 12;
constexpr std::size_t kStepsBeforeCoding = 7;

/// Everything that is ever written to a site file, one step after another. Each is kept whole or not at all.
inline std::vector<std::function<void(SiteFile&)>> work_steps(int turns) {
  std::vector<std::function<void(SiteFile&)>> steps;
  steps.push_back([](SiteFile& site) { must(save_interviews(site, interview_file())); });
  for (const char* key : {"aske-1", "aske-2"}) {
    steps.push_back([key, turns](SiteFile& site) {
      must(save_transcript(site, transcript_file(key, long_talk(turns, key))));
    });
  }
  steps.push_back([](SiteFile& site) { must(save_register(site, evidence())); });
  steps.push_back([](SiteFile& site) { must(save_list(site, places())); });
  for (const char* key : {"aske-1", "aske-2"}) {
    steps.push_back([key, turns](SiteFile& site) {
      must(replace_proposals(site, key, claims_of(key, long_talk(turns, key), turns, turns)));
    });
  }
  steps.push_back([](SiteFile& site) {
    std::vector<Weighing> weighings;
    for (const Id& id : claims_to_weigh(site)) {
      Weighing weighing;
      weighing.claim = id;
      weighing.comparisons.resize(2);
      weighing.comparisons[0].entry = "e1";
      for (Comparison& comparison : weighing.comparisons) comparison.claim = id;
      weighings.push_back(std::move(weighing));
    }
    must(save_weighings(site, weighings));
  });
  for (int i = 0; i < 4; ++i) {
    steps.push_back([i](SiteFile& site) {
      Claim decided = load_claims(site)[static_cast<std::size_t>(i * 3)].claim;
      decided.status = ClaimStatus::said_so;
      if (i % 2 == 0) decided.subject = "derrick";
      must(decide_claim(site, decided, "heard"));
    });
  }
  steps.push_back([turns](SiteFile& site) {
    must(save_transcript(site, transcript_file("aske-1", "[revised]\n" + long_talk(turns, "aske-1"))));
  });
  steps.push_back([turns](SiteFile& site) {
    const std::string text = "[revised]\n" + long_talk(turns, "aske-1");
    must(replace_proposals(site, "aske-1", claims_of("aske-1", text, turns, turns / 2)));
  });
  return steps;
}

}  // namespace witnessmark::sample
