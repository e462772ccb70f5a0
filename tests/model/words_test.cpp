// Every value's word is the word of the column descriptions in schemas/csv, and reads back as the value.
#include <doctest/doctest.h>

#include <string>

#include "witnessmark/base/embedded_schema.h"
#include "witnessmark/model/claim.h"
#include "witnessmark/model/comparison.h"
#include "witnessmark/model/entry.h"
#include "witnessmark/model/interview.h"

using namespace witnessmark;

namespace {

template <typename Value, typename Parse>
std::string words_up_to(Value last, Parse parse) {
  std::string line;
  for (int i = 0; i <= static_cast<int>(last); ++i) {
    const auto value = static_cast<Value>(i);
    const std::string word(to_string(value));
    CHECK_FALSE(word.empty());
    CHECK(parse(word) == value);
    line += (line.empty() ? "" : "|") + word;
  }
  return line;
}

bool schema_has(std::string_view file, const std::string& words) {
  const auto text = embedded_schema(file);
  return text && text->find("," + words + ",") != std::string_view::npos;
}

}  // namespace

TEST_CASE("words of the register are those of its column descriptions") {
  CHECK(schema_has("csv/entries.csv", words_up_to(Statement::located, parse_statement)));
  CHECK(schema_has("csv/sources.csv", words_up_to(SourceKind::object_record, parse_source_kind)));
  CHECK(schema_has("csv/entries.csv", words_up_to(Nature::intended, parse_nature)));
  CHECK(schema_has("csv/entries.csv", words_up_to(Identification::possible, parse_identification)));
  words_up_to(SpotVisible::partly, parse_spot_visible);
  words_up_to(Fabric::restored, parse_fabric);
  CHECK_FALSE(parse_statement("began").has_value());
  CHECK(in_words(SourceKind::physical_trace) == "physical trace");
  CHECK(in_words(SourceKind::log) == "log");
}

TEST_CASE("words of claims and comparisons read back as their values") {
  CHECK(words_up_to(Basis::inferred, parse_basis) == "unstated|first-hand|told|read|inferred");
  CHECK(words_up_to(Firmness::guess, parse_firmness) == "firm|hedged|guess");
  CHECK(words_up_to(Polarity::denied, parse_polarity) == "affirmed|denied");
  CHECK(words_up_to(ClaimStatus::set_aside, parse_claim_status) == "proposed|said-so|misread|set-aside");
  CHECK(words_up_to(Outcome::silent, parse_outcome) == "agrees|compatible|conflicts|cannot-tell|silent");
  CHECK(to_string(SpeakerRole::interviewer) == "interviewer");
  CHECK(to_string(Standing::narrator_reviewed) == "narrator-reviewed");
}

TEST_CASE("a claim, an entry and a comparison are one line each") {
  Claim claim;
  claim.statement = Statement::begins;
  claim.subject = "crane";
  claim.place = "foredeck";
  claim.when.dated.value = parse_edtf("1962-21").value();
  claim.basis = Basis::told;
  claim.firmness = Firmness::hedged;
  CHECK(dump(claim) == "begins crane@foredeck 1962-21 told hedged affirmed");
  claim.subject.clear();
  claim.subject_words = "the old winch";
  claim.when = {};
  claim.quantity = Quantity{10, 14, "a dozen or so"};
  claim.led = true;
  CHECK(dump(claim) == "begins \"the old winch\"@foredeck - n=10..14 told hedged affirmed led");

  Entry entry;
  entry.source = "photo-12";
  entry.statement = Statement::present;
  entry.subject = "crane";
  entry.place = "foredeck";
  entry.when.value = edtf_year(1962);
  entry.identification = Identification::possible;
  CHECK(dump(entry) == "present crane@foredeck 1962 possible (photo-12)");

  Comparison comparison;
  comparison.outcome = Outcome::conflicts;
  comparison.entry = "e-7";
  comparison.relation = AllenSet::of(Allen::precedes);
  comparison.gap = Distance{30, std::nullopt};
  CHECK(dump(comparison) == "conflicts e-7 (p) gap 30....");
}
