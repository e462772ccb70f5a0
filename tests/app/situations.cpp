#include "situations.h"

#include <algorithm>
#include <map>
#include <optional>

#include "app/taking_in/passages.h"
#include "witnessmark/base/csv.h"
#include "witnessmark/base/decode.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/evidence.h"
#include "witnessmark/store/transcripts.h"
#include "witnessmark/store/weighings.h"

namespace witnessmark {
namespace {

using Row = std::map<std::string, std::string>;

std::vector<Row> rows_of(const FileReader& files, const std::filesystem::path& path) {
  const auto text = decode_text(files.read(path).value(), path.string()).value();
  const CsvFile file = parse_csv(text.text, path.string()).value();
  std::vector<Row> rows;
  for (std::size_t i = 1; i < file.rows.size(); ++i) {
    Row row;
    for (std::size_t column = 0; column < file.rows[0].cells.size(); ++column)
      row[file.rows[0].cells[column].text] = file.rows[i].cells.at(column).text;
    rows.push_back(std::move(row));
  }
  return rows;
}

std::string range_cell(const std::optional<YearRange>& range) {
  if (!range) return "";
  return std::to_string(range->least) + ".." + std::to_string(range->most);
}

/// "24" and "24..24" are the same.
bool same_range(const std::string& expected, const std::optional<YearRange>& found) {
  if (expected.empty()) return true;
  if (expected.find("..") == std::string::npos) return range_cell(found) == expected + ".." + expected;
  return range_cell(found) == expected;
}

std::string service_cell(const Recall& recall) {
  if (recall.partly_in_service) return "partly";
  return recall.in_service == Answer::yes ? "inside" : recall.in_service == Answer::no ? "outside" : "unknown";
}

bool same_outcome(const Row& row, const Comparison& comparison) {
  const std::string& expected = row.at("outcome");
  if (expected == "intention") return comparison.intention && comparison.outcome == Outcome::compatible;
  if (to_string(comparison.outcome) != expected) return false;
  if (expected != "conflicts" || row.at("gap_least_days").empty()) return true;
  if (!comparison.gap || std::to_string(comparison.gap->least) != row.at("gap_least_days")) return false;
  const std::string most = comparison.gap->most ? std::to_string(*comparison.gap->most) : "";
  return most == row.at("gap_most_days");
}

std::string when_of(const Claim& claim) { return claim.when.dated.value ? to_string(*claim.when.dated.value) : ""; }

/// "[..1962-23]" and "../1962-23" mean the same days for something that happened at some time within them.
bool same_days(const Claim& claim, const std::string& expected) {
  const auto value = parse_edtf(expected);
  if (!value || !claim.when.period) return false;
  const Period wanted = to_period(*value, default_date_policy());
  return wanted.earliest() == claim.when.period->earliest() && wanted.past_latest() == claim.when.period->past_latest();
}

class Checker {
 public:
  explicit Checker(const SiteFile& site) : site_(site), lists_(load_lists(site)) {
    for (StoredClaim& stored : load_claims(site)) claims_[stored.claim.interview].push_back(std::move(stored.claim));
  }

  SituationResult check(const Row& row) {
    SituationResult result;
    result.situation = row.at("situation");
    result.quote = row.at("interview") + ": " + row.at("quote");
    const auto text = load_reading_text(site_, row.at("interview"));
    const auto places = text ? find_passage(*text, row.at("quote")) : std::vector<CodePointRange>();
    if (places.empty()) {
      result.found = "the words are not in the transcript";
      return result;
    }
    // The best of the claims over these words counts.
    for (const Claim& claim : claims_[row.at("interview")]) {
      if (!over(claim, places.front())) continue;
      const SituationResult one = hold(row, claim, result);
      if (score(one) > score(result) || result.found.empty()) result = one;
    }
    if (result.found.empty()) result.found = "no claim over these words";
    return result;
  }

 private:
  static int score(const SituationResult& one) {
    return one.claimed ? 1 + one.dated + one.weighed + one.recalled : 0;
  }

  static bool over(const Claim& claim, CodePointRange range) {
    return std::any_of(claim.quotes.begin(), claim.quotes.end(), [&](const auto& quote) { return quote.overlaps(range); });
  }

  bool same_place(const Row& row, const Claim& claim) const {
    const std::string& expected = row.at("place");
    return expected.empty() || claim.place == expected || claim.place_words == expected ||
           row.at("statement") == "located";
  }

  SituationResult hold(const Row& row, const Claim& claim, SituationResult result) {
    const bool located = row.at("statement") == "located";
    // Painted so is the beginning of an attribute: whoever wrote "attribute" for it meant the same.
    const bool painted = claim.statement == Statement::begins && !claim.attribute.empty() && row.at("statement") == "attribute";
    result.claimed = (painted || to_string(claim.statement) == row.at("statement")) &&
                     (located || claim.subject == row.at("subject")) && same_place(row, claim);
    result.dated = when_of(claim) == row.at("when") || same_days(claim, row.at("when"));
    result.found = dump(claim);
    const auto weighing = load_weighing(site_, claim.id);
    if (!weighing) return result;
    for (const Comparison& comparison : weighing->comparisons) {
      if (comparison.entry == row.at("entry")) {
        result.weighed = same_outcome(row, comparison);
        result.found += " | " + dump(comparison);
      }
    }
    const std::string service = service_cell(weighing->recall);
    result.recalled = (row.at("inside_service").empty() || service == row.at("inside_service")) &&
                      same_range(row.at("recall_distance"), weighing->recall.recall_distance) &&
                      (row.at("age_at_event") == "not born" || same_range(row.at("age_at_event"), weighing->recall.age_at_event));
    result.found += " | " + dump(weighing->recall);
    return result;
  }

  const SiteFile& site_;
  AuthorityLists lists_;
  std::map<std::string, std::vector<Claim>> claims_;
};

}  // namespace

std::vector<SituationResult> check_situations(const SiteFile& site, const FileReader& files,
                                              const std::filesystem::path& situations) {
  Checker checker(site);
  std::vector<SituationResult> results;
  for (const Row& row : rows_of(files, situations)) results.push_back(checker.check(row));
  return results;
}

}  // namespace witnessmark
