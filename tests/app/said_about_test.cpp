// Everything said about a thing, on the demo corpus: by former names and slang, in its parts, in two orders.
#include "witnessmark/app/said_about.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "whole_job.h"
#include "witnessmark/base/fold.h"

using namespace witnessmark;

namespace {

class Demo {
 public:
  Demo()
      : site_(whole_job(files_, source_tree() / "corpus-demo", kToday)),
        around_(surroundings_of(files_, kToday)) {}

  SaidAbout about(const std::string& name, TellingOrder order = TellingOrder::event) const {
    return said_about(site_, name, order, around_).value();
  }
  Error no_such(const std::string& name) const {
    return said_about(site_, name, TellingOrder::event, around_).error();
  }

 private:
  static inline const Day kToday = to_day({2026, 1, 15});
  SystemFileReader files_;
  SiteFile site_;
  Surroundings around_;
};

/// The first possible day, else the last; nothing where undated.
std::optional<Day> day_of(const ClaimRecord& record) {
  const auto& period = record.claim.when.period;
  if (!period) return std::nullopt;
  return period->earliest() ? period->earliest() : period->past_latest();
}

}  // namespace

TEST_CASE("a former name and a slang word find what the present name finds") {
  const Demo demo;
  const SaidAbout former = demo.about("State Cabin"), present = demo.about("Commissioners' saloon");
  CHECK(former.terms == std::vector<std::string>{"Commissioners' saloon (place saloon)"});
  CHECK(former.proposed.size() == present.proposed.size());
  CHECK(!former.proposed.empty());
  const SaidAbout slang = demo.about("big eye");
  CHECK(slang.terms == std::vector<std::string>{"Arc searchlight (equipment arc-searchlight)"});
  CHECK(slang.proposed.size() == demo.about("arc-searchlight").proposed.size());
  CHECK(demo.no_such("crow nest").advice.find("row's nest") != std::string::npos);
}

TEST_CASE("what is said of the parts of a place is said about the place") {
  const Demo demo;
  const SaidAbout deck = demo.about("main-deck");
  const auto in = [](const SaidAbout& said, const std::string& place) {
    return std::count_if(said.proposed.begin(), said.proposed.end(),
                         [&](const ClaimRecord& record) { return record.claim.place == place; });
  };
  CHECK(in(deck, "saloon") == in(demo.about("saloon"), "saloon"));
  CHECK(in(deck, "saloon") > 0);
}

TEST_CASE("by the time of the event, and by the time of the telling") {
  const Demo demo;
  const SaidAbout by_event = demo.about("arc-searchlight");
  REQUIRE(by_event.proposed.size() > 5);
  for (std::size_t i = 1; i < by_event.proposed.size(); ++i) {
    const auto before = day_of(by_event.proposed[i - 1]), day = day_of(by_event.proposed[i]);
    CHECK((before || !day));  // undated ones come last
    if (before && day) CHECK(*before <= *day);
  }
  const SaidAbout by_telling = demo.about("arc-searchlight", TellingOrder::telling);
  CHECK(by_telling.proposed.size() == by_event.proposed.size());
  for (std::size_t i = 1; i < by_telling.proposed.size(); ++i)
    CHECK(by_telling.proposed[i - 1].interview_date <= by_telling.proposed[i].interview_date);
}

TEST_CASE("conflicts are named first, with their entries and days") {
  const Demo demo;
  const SaidAbout said = demo.about("arc-searchlight");
  const auto conflicts = conflicting(said);
  REQUIRE(!conflicts.empty());
  const auto session = std::find_if(conflicts.begin(), conflicts.end(), [](const ClaimRecord* record) {
    return record->claim.interview == "wt-1994" && record->claim.statement == Statement::ends;
  });
  REQUIRE(session != conflicts.end());
  // Gone by the autumn of 1962, and in the ice of 14 February 1963: 76 days (corpus-demo/expected).
  CHECK(conflict_words(**session).find("e-077 (at least 76 days apart)") != std::string::npos);
  for (const ClaimRecord* record : conflicts)
    CHECK(std::any_of(record->comparisons.begin(), record->comparisons.end(),
                      [](const Comparison& one) { return one.outcome == Outcome::conflicts; }));
}

TEST_CASE("passages that name it and that no claim quotes are given, none twice") {
  const Demo demo;
  std::size_t unread = 0;
  for (const std::string name : {"saloon", "galley", "wheelhouse"}) {
    const SaidAbout said = demo.about(name);
    unread += said.unread.size();
    for (std::size_t i = 0; i < said.unread.size(); ++i) {
      CHECK(fold(said.unread[i].text).find(name) != std::string::npos);
      for (std::size_t j = 0; j < i; ++j)
        CHECK((said.unread[i].interview != said.unread[j].interview ||
               !said.unread[i].range.overlaps(said.unread[j].range)));
      for (const ClaimRecord& record : said.proposed)
        for (const QuoteRecord& quote : record.quotes)
          CHECK((record.claim.interview != said.unread[i].interview ||
                 !quote.range.overlaps(said.unread[i].range)));
    }
  }
  REQUIRE(unread > 0);
}
