#include <doctest/doctest.h>

#include "witnessmark/base/csv.h"
#include "witnessmark/write/claims_csv.h"
#include "witnessmark/write/claims_json.h"

using namespace witnessmark;

namespace {

ClaimRecord record() {
  ClaimRecord made;
  made.claim.id = make_id(seeded_random(1));
  made.claim.interview = "lind-1";
  made.claim.statement = Statement::ends;
  made.subject = made.claim.subject = "derrick";
  made.claim.when.dated = {"by the autumn of sixty-two", parse_edtf("[..1962-23]").value(), Calendar::gregorian};
  made.claim.when.period = to_period(*made.claim.when.dated.value, default_date_policy());
  made.subject_name = "=SUM(A1)";
  QuoteRecord quote{"They took it off, \"gone\" by the\nautumn",
                    {{10}, {47}},
                    TimeRange{{61'000}, {65'500}},
                    Timing::interpolated,
                    true,
                    SpeakerRole::narrator,
                    "Anna Lind"};
  made.quotes = {quote};
  made.narrator = "Anna Lind";
  made.recall.recall_distance = YearRange{35, 36};
  Comparison comparison;
  comparison.entry = "log-3";
  comparison.outcome = Outcome::conflicts;
  comparison.gap = Distance{76, std::nullopt};
  made.comparisons = {comparison};
  return made;
}

std::string cell(const std::string& csv, const std::string& column) {
  const CsvFile file = parse_csv(csv, "test").value();
  for (std::size_t i = 0; i < file.rows.at(0).cells.size(); ++i) {
    if (file.rows[0].cells[i].text == column) return file.rows.at(1).cells.at(i).text;
  }
  return "no such column";
}

}  // namespace

TEST_CASE("a claim's row can be read back as RFC 4180 with every column filled as described") {
  const std::string csv = claims_csv_header() + claim_csv_row(record(), FormulaGuard::raw);
  const CsvFile file = parse_csv(csv, "test").value();
  REQUIRE(file.rows.size() == 2);
  CHECK(file.rows[0].cells.size() == file.rows[1].cells.size());
  CHECK(cell(csv, "quote") == "They took it off, \"gone\" by the\nautumn");
  CHECK(cell(csv, "when") == "[..1962-23]");
  CHECK(cell(csv, "time") == to_timecode({61'000}));
  CHECK(cell(csv, "timing") == "interpolated");
  CHECK(cell(csv, "recall_distance") == "35 to 36");
  CHECK(cell(csv, "comparisons") == "log-3: conflicts (at least 76 days)");
}

TEST_CASE("what the narrator took back says so in both formats") {
  ClaimRecord made = record();
  CHECK(cell(claims_csv_header() + claim_csv_row(made, FormulaGuard::raw), "withdrawn") == "");
  made.claim.withdrawn = true;
  CHECK(cell(claims_csv_header() + claim_csv_row(made, FormulaGuard::raw), "withdrawn") == "yes");
  CHECK(claim_json(made).find(R"("withdrawn":true)") != std::string::npos);
}

TEST_CASE("years below zero are never handed on: what they mean is said") {
  ClaimRecord made = record();
  made.recall.recall_distance = YearRange{-80, -80};
  made.recall.age_at_event = YearRange{-3, -2};
  const std::string csv = claims_csv_header() + claim_csv_row(made, FormulaGuard::raw);
  CHECK(cell(csv, "recall_distance") == "dated after the interview");
  CHECK(cell(csv, "age_at_event") == "not born");
  CHECK(claim_json(made).find(
            R"("recall_distance":null,"recall_distance_unstated":"dated after the interview")") !=
        std::string::npos);
}

TEST_CASE("cells a spreadsheet would run are guarded unless raw is asked for") {
  // OWASP ASVS 1.2.10: a single quote before a leading = + - @, tab or carriage return.
  const std::string header = claims_csv_header();
  CHECK(cell(header + claim_csv_row(record(), FormulaGuard::guarded), "subject_name") == "'=SUM(A1)");
  CHECK(cell(header + claim_csv_row(record(), FormulaGuard::raw), "subject_name") == "=SUM(A1)");
}

TEST_CASE("a claim's JSON keeps words, positions, times and comparisons") {
  const std::string json = claim_json(record());
  CHECK(json.find('\n') == std::string::npos);
  CHECK(
      json.find(
          R"("quotes":[{"text":"They took it off, \"gone\" by the\nautumn","begin":10,"end":47,"said_by":"narrator","speaker":"Anna Lind",)"
          R"("time_begin_ms":61000,"time_end_ms":65500,"timing":"interpolated"}])") != std::string::npos);
  CHECK(json.find(R"("gap_days":{"least":76,"most":null})") != std::string::npos);
  CHECK(json.find(R"("latest":"1962-11-30")") != std::string::npos);
}

TEST_CASE("what was asked is handed on apart from the narrator's words, with who asked") {
  ClaimRecord made = record();
  made.quotes.push_back({"When did it go?",
                         {{0}, {9}},
                         std::nullopt,
                         Timing::none,
                         false,
                         SpeakerRole::interviewer,
                         "Ruth Hale"});
  made.quotes.push_back(
      {"I think", {{60}, {67}}, std::nullopt, Timing::none, true, SpeakerRole::narrator, "Anna Lind"});
  const std::string csv = claims_csv_header() + claim_csv_row(made, FormulaGuard::raw);
  CHECK(cell(csv, "quote") == "They took it off, \"gone\" by the\nautumn … I think");
  CHECK(cell(csv, "words_of_others") == "Ruth Hale, interviewer: “When did it go?”");
  const std::string json = claim_json(made);
  CHECK(json.find("\"text\":\"When did it "
                  "go?\",\"begin\":0,\"end\":9,\"said_by\":\"interviewer\",\"speaker\":\"Ruth Hale\"") !=
        std::string::npos);
  CHECK(json.find("\"said_by\":\"narrator\",\"speaker\":\"Anna Lind\"") != std::string::npos);
}
