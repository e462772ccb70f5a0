// Whose words are handed on as whose.
#include <doctest/doctest.h>

#include "app/record_maker.h"
#include "whole_job.h"
#include "witnessmark/app/claim_records.h"
#include "witnessmark/app/coding_desk.h"
#include "witnessmark/app/date_meaning.h"
#include "witnessmark/app/said_about.h"
#include "witnessmark/store/transcripts.h"

using namespace witnessmark;

namespace {

CodePointRange words_in(const std::string& text, std::string_view first, std::string_view last) {
  const auto begin = static_cast<std::int64_t>(text.find(first));
  const auto end = static_cast<std::int64_t>(text.find(last) + last.size());
  return {{begin}, {end}};  // the text is ASCII
}

/// The site of tests/golden/small-site at a desk.
struct SmallSite {
  SystemFileReader files;
  Surroundings around = surroundings_of(files, to_day({2026, 1, 15}));
  CodingDesk desk = std::move(CodingDesk::at(
                                  whole_job(files, source_tree() / "tests/golden/small-site/input", around.today), around))
                        .value();
  std::string text = load_reading_text(desk.site(), "lind-1").value();

  Claim own_claim(CodePointRange range) const {
    Claim claim;
    claim.interview = "lind-1";
    claim.speaker = "LIND";
    claim.statement = Statement::present;
    claim.subject = "lamp";
    claim.quotes = {range};
    return claim;
  }
  ClaimRecord record(const Id& id) const { return desk.claim(id).value().record; }
};

}  // namespace

TEST_CASE("a claim made over several turns has the narrator's words as quotes of their own, and the question as hers") {
  SmallSite held;
  const CodePointRange range = words_in(held.text, "I saw it done.", "lamp room in 1958.");
  const Id id = held.desk.add(held.own_claim(range), "").value();
  const Claim made = find_claim(held.desk.site(), id).value().claim;
  REQUIRE(made.quotes.size() == 3);
  const ClaimRecord record = held.record(id);
  CHECK(own_words(record) == "I saw it done. … There were four spare lamps in the lamp room in 1958.");
  CHECK(words_of_others(record) == "Ruth Hale, interviewer: “And the lamp room?”");
  CHECK(record.quotes.front().text == "I saw it done.");
  CHECK(record.quotes.back().role == SpeakerRole::interviewer);
  // The same when a claim is given other words.
  REQUIRE(held.desk.requote(id, words_in(held.text, "And the lamp room?", "lamp room in 1958.")));
  CHECK(own_words(held.record(id)) == "There were four spare lamps in the lamp room in 1958.");
  CHECK(find_claim(held.desk.site(), id).value().claim.quotes.front() ==
        words_in(held.text, "There were four", "lamp room in 1958."));
}

TEST_CASE("a quote that runs over turns in the site file is handed on turn by turn all the same") {
  SmallSite held;
  Claim claim = held.own_claim(words_in(held.text, "And the lamp room?", "lamp room in 1958."));
  claim.speaker = "lind";
  const DatePolicy policy = load_date_policy(held.around).value();
  RecordMaker maker(held.desk.site(), policy);
  const ClaimRecord record = maker.make({claim, 1}, Withholding(held.desk.site(), held.around.today));
  REQUIRE(record.quotes.size() == 2);
  CHECK(record.quotes[0].own);
  CHECK(record.quotes[0].text == "There were four spare lamps in the lamp room in 1958.");
  CHECK(speaker_words(record.quotes[1]) == "Ruth Hale, interviewer");
  CHECK(record.quotes[1].text == "And the lamp room?");
  // Without the narrator's words there is a question, and no more than that.
  claim.quotes = {words_in(held.text, "And the lamp room?", "And the lamp room?")};
  CHECK_FALSE(maker.make({claim, 1}, Withholding(held.desk.site(), held.around.today)).quotes.at(0).own);
}
