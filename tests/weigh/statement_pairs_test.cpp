// The table statement-pairs.tsv, cell by cell; and that no pair of kinds is missing from it.
#include <doctest/doctest.h>

#include <fstream>
#include <functional>
#include <map>
#include <set>
#include <sstream>

#include "witnessmark/weigh/agreement.h"

using namespace witnessmark;

namespace {

constexpr const char* kRelations[] = {"1960-05-01",      "1962-05-01", "1962", "1960/1964",
                                      "1962-07/1963-06", "1964-05-01", "",     "1962-05-01"};
constexpr std::size_t kUndatedClaim = 7;

/// A kind of statement as the table names it.
struct Kind {
  Statement statement = Statement::present;
  bool denied = false, value = false, other = false, same = false;
};

bool take(std::string& word, const std::string& part, bool at_end) {
  const bool has = at_end ? word.ends_with(part) : word.starts_with(part);
  if (has) word = at_end ? word.substr(0, word.size() - part.size()) : word.substr(part.size());
  return has;
}

Kind kind_of(std::string word) {
  Kind kind;
  kind.denied = take(word, "not-", false);
  kind.other = take(word, "-other", true);
  kind.same = take(word, "-same", true);
  kind.value = word == "given" || word == "lost";
  if (word == "given") word = "begins";
  if (word == "lost") word = "ends";
  kind.statement = parse_statement(word).value();
  return kind;
}

/// What the claim says of number, value and event, and the entry the same or otherwise.
std::string attribute_of(const Kind& kind, bool of_claim) {
  if (kind.statement == Statement::happened)
    return of_claim || kind.same ? "burned" : kind.other ? "flooded" : "";
  if (kind.statement != Statement::attribute && !kind.value) return "";
  return kind.other ? "colour: grey" : "colour: buff";
}

Claim claim_of(const Kind& kind, bool dated) {
  Claim claim;
  claim.interview = "i1";
  claim.subject = "derrick";
  claim.place = "foredeck";
  claim.statement = kind.statement;
  claim.polarity = kind.denied ? Polarity::denied : Polarity::affirmed;
  claim.attribute = attribute_of(kind, true);
  if (kind.statement == Statement::count) claim.quantity = Quantity{2, 2, ""};
  if (!dated) return claim;
  claim.when.dated.value = parse_edtf("1962").value();
  claim.when.period = to_period(*claim.when.dated.value, default_date_policy());
  return claim;
}

Register entry_of(const Kind& kind, const std::string& when) {
  Register evidence;
  Source& photograph = evidence.sources.emplace_back();
  photograph.key = "photo";
  photograph.kind = SourceKind::photograph;
  Entry& entry = evidence.entries.emplace_back();
  entry.key = "e1";
  entry.source = "photo";
  entry.subject = "derrick";
  entry.place = "foredeck";
  entry.statement = kind.statement;
  entry.spot_visible = SpotVisible::yes;
  entry.attribute = attribute_of(kind, false);
  if (kind.statement == Statement::count) entry.number = kind.other ? 3 : 2;
  if (!when.empty()) entry.when.value = parse_edtf(when).value();
  return evidence;
}

Term term(const std::string& key) {
  Term made;
  made.key = made.name = key;
  return made;
}

std::string sign_of(Outcome outcome) {
  const std::map<Outcome, std::string> kSigns{{Outcome::agrees, "A"},
                                              {Outcome::compatible, "C"},
                                              {Outcome::conflicts, "X"},
                                              {Outcome::cannot_tell, "?"},
                                              {Outcome::silent, "-"}};
  return kSigns.at(outcome);
}

std::string sign_of(const std::string& told, const std::string& stated, std::size_t relation,
                    const std::function<void(Entry&)>& change = {}) {
  Register evidence = entry_of(kind_of(stated), kRelations[relation]);
  if (change) change(evidence.entries.front());
  const AuthorityLists lists{AuthorityList(AuthorityList::Kind::places, {term("foredeck")}),
                             AuthorityList(AuthorityList::Kind::equipment, {term("derrick")})};
  const RegisterIndex index(evidence, lists, default_date_policy());
  const auto comparisons = compare(claim_of(kind_of(told), relation != kUndatedClaim), Interview{}, index);
  REQUIRE(comparisons.size() == 1);
  return sign_of(comparisons.front().outcome);
}

std::vector<std::string> cells_of(const std::string& line) {
  std::vector<std::string> cells;
  std::istringstream stream(line);
  for (std::string cell; std::getline(stream, cell, '\t');) cells.push_back(cell);
  return cells;
}

}  // namespace

TEST_CASE("doubt of what an entry shows, and an intention, lower an outcome and never raise it") {
  std::ifstream file(WITNESSMARK_SOURCE_DIR "/tests/weigh/statement-pairs.tsv");
  REQUIRE(file);
  const std::map<std::string, std::string> kProbable{
      {"A", "C"}, {"X", "?"}, {"C", "C"}, {"?", "?"}, {"-", "-"}};
  int compared = 0;
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line.front() == '#') continue;
    const auto cells = cells_of(line);
    CAPTURE(line);
    for (std::size_t i = 0; i < std::size(kRelations); ++i) {
      const std::string& certain = cells[2 + i];
      CAPTURE(kRelations[i]);
      const auto with = [&](const std::function<void(Entry&)>& change) {
        return sign_of(cells[0], cells[1], i, change);
      };
      CHECK(with([](Entry& entry) { entry.identification = Identification::probable; }) ==
            kProbable.at(certain));
      CHECK(with([](Entry& entry) { entry.identification = Identification::possible; }) ==
            (certain == "-" ? "-" : "?"));
      // An intention contradicts nobody and bears out nothing but that it was meant.
      const std::string intended = with([](Entry& entry) { entry.nature = Nature::intended; });
      CHECK((intended == "C" || intended == "?" || intended == "-"));
      ++compared;
    }
  }
  CHECK(compared > 800);
}

TEST_CASE("every kind of statement against every other in each relation of their times") {
  std::ifstream file(WITNESSMARK_SOURCE_DIR "/tests/weigh/statement-pairs.tsv");
  REQUIRE(file);
  std::set<std::pair<std::string, std::string>> pairs;
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line.front() == '#') continue;
    const auto cells = cells_of(line);
    CAPTURE(line);
    REQUIRE(cells.size() == 3 + std::size(kRelations));
    CHECK(!cells.back().empty());
    pairs.emplace(cells[0], cells[1]);
    std::string found, expected;
    for (std::size_t i = 0; i < std::size(kRelations); ++i) {
      expected += cells[2 + i] + " ";
      found += sign_of(cells[0], cells[1], i) + " ";
    }
    CHECK(found == expected);
  }
  const std::string kinds[] = {"begins",    "ends",     "present", "absent", "count",
                               "attribute", "happened", "located", "given",  "lost"};
  for (const std::string& told : kinds)
    for (const std::string& stated : kinds)
      CHECK_MESSAGE(pairs.contains({told, stated}), told, " against ", stated);
}
