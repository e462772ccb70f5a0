// Claims held against entries of things that the register shows come again. Argued by hand; common practice, no source.
#include <doctest/doctest.h>

#include "stay_site.h"
#include "witnessmark/weigh/agreement.h"

using namespace witnessmark;
using namespace witnessmark::testing;

namespace {

/// "e1 agrees; e2 conflicts", of the first claim.
std::string outcomes(const StaySite& site) {
  std::string text;
  for (const Comparison& one :
       compare(site.claims().front().claim, Interview{}, site.evidence().evidence()))
    text += fmt::format("{}{} {}", text.empty() ? "" : "; ", one.entry, to_string(one.outcome));
  return text;
}

struct Row {
  const char* why;
  const char* claim;
  const char* outcomes;
};

void check(const std::string& entries, const std::vector<Row>& rows) {
  for (const Row& row : rows) {
    INFO(std::string(row.why));
    const StaySite site(entries + "c1 proposed " + row.claim);
    CHECK(outcomes(site) == std::string(row.outcomes));
  }
}

}  // namespace

TEST_CASE("damaged by ice in January, new ones in August: two stays, of which no entry shows the going") {
  check(
      "e1 correspondence:l1 happened crane@foredeck 1963-01-26\ne2 log:l2 begins crane@foredeck 1963-08-19\n",
      {{"the first coming, long before", "begins crane@foredeck 1898", "e1 compatible; e2 compatible"},
       {"the return itself", "begins crane@foredeck 1963-08", "e1 compatible; e2 agrees"},
       {"neither the one coming nor the other", "begins crane@foredeck 1963-04", "e1 cannot-tell; e2 conflicts"},
       {"there before it came again", "present crane@foredeck 1962", "e1 compatible; e2 compatible"},
       {"so many before it came again", "count crane@foredeck 1962 n=2", "e1 compatible; e2 compatible"},
       {"gone in between", "ends crane@foredeck 1963-02", "e1 compatible; e2 compatible"},
       {"that it came later does not bear out that it was not there before",
        "present crane@foredeck 1962 denied", "e1 compatible; e2 compatible"},
       {"nor that it was not there in between", "absent crane@foredeck 1963-05", "e1 compatible; e2 compatible"},
       {"what happened to it before it came again", "happened crane@foredeck 1960 a=burned",
        "e1 cannot-tell; e2 compatible"},
       {"never mind the place, where none is told", "present crane 1962", "e1 compatible; e2 compatible"}});
}

TEST_CASE("gone and come again by entries") {
  check(
      "e1 log:a begins crane@foredeck 1950-01-01\ne2 log:b ends crane@foredeck 1955-03-01\n"
      "e3 log:c begins crane@foredeck 1956-12-11\n",
      {{"the first coming", "begins crane@foredeck 1950", "e1 agrees; e2 compatible; e3 compatible"},
       {"the going", "ends crane@foredeck 1955", "e1 compatible; e2 agrees; e3 compatible"},
       {"there the first time", "present crane@foredeck 1952", "e1 compatible; e2 compatible; e3 compatible"},
       {"there while it was gone: after the one it was gone, before the other it had not come",
        "present crane@foredeck 1956-01", "e1 compatible; e2 conflicts; e3 conflicts"},
       {"not there while it was gone: each bears it out only beside the other, which the register has",
        "absent crane@foredeck 1956-01", "e1 compatible; e2 agrees; e3 agrees"},
       {"not there all that year, before whose end it came again", "absent crane@foredeck 1956",
        "e1 compatible; e2 compatible; e3 conflicts"},
       {"another date of the first coming, not of the second", "begins crane@foredeck 1953",
        "e1 conflicts; e2 compatible; e3 compatible"},
       {"that it did not come in the year it came again", "begins crane@foredeck 1956 denied",
        "e1 compatible; e2 compatible; e3 conflicts"},
       {"that the first did not come in another year, of which the second says nothing",
        "begins crane@foredeck 1953 denied", "e1 agrees; e2 compatible; e3 compatible"}});
}

TEST_CASE("two stays that no record shows are one, as before") {
  check("e1 publication:b happened crane@foredeck 1963-01-26\ne2 log:l2 begins crane@foredeck 1963-08-19\n",
        {{"a later account of what happened shows no return", "begins crane@foredeck 1898",
          "e1 compatible; e2 conflicts"}});
  check("e1 log:a begins crane@foredeck 1950-05-01\ne2 photograph:p present crane@afterdeck 1940\n",
        {{"what stood at another place came to this one only once", "present crane@foredeck 1945",
          "e1 conflicts"}});
}

TEST_CASE("why the two need not be of one stay is said, with what shows the return") {
  const StaySite site(
      "e1 correspondence:l1 happened crane@foredeck 1963-01-26\ne2 log:l2 begins crane@foredeck 1963-08-19\n"
      "c1 proposed begins crane@foredeck 1898");
  const RegisterIndex& index = site.evidence().evidence();
  const Claim& claim = site.claims().front().claim;
  const auto comparisons = compare(claim, Interview{}, index);
  REQUIRE(comparisons.size() == 2);
  CHECK(explain(claim, "", Interview{}, comparisons[1], index)
            .ends_with("both can be right; the register shows it come again (e2, for e1 has it there before), so that "
                       "they need not be of one stay."));
}
