// What a change bears on is weighed anew, and nothing else: each kind of what weighings rest on is changed on the demo
// corpus. What is expected is said here in other words than the program has: by looking at every claim.
#include <doctest/doctest.h>

#include <algorithm>
#include <functional>
#include <set>

#include "whole_job.h"
#include "witnessmark/app/weigh.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/evidence.h"
#include "witnessmark/store/interviews.h"
#include "witnessmark/store/weighings.h"

using namespace witnessmark;

namespace {

const Day kWeighedOn = to_day({2026, 1, 15});
using Ids = std::set<std::string>;

class WeighedSite {
 public:
  WeighedSite() : site_(whole_job(files_, source_tree() / "corpus-demo", kWeighedOn)) { mark(); }

  SiteFile& site() { return site_; }
  MemoryFiles& files() { return files_; }

  /// Marks what was weighed; what is weighed anew loses the mark.
  void mark() {
    std::vector<Weighing> marked;
    for_each_weighing(site_, [&](Weighing weighing) {
      weighing.recall.age_at_interview = YearRange{kMark, kMark};
      marked.push_back(std::move(weighing));
    });
    REQUIRE(save_weighings(site_, marked).ok());
  }

  /// The claims that weigh() weighs.
  Ids weighed() {
    const auto number = weigh(site_, false, surroundings_of(files_, kWeighedOn));
    REQUIRE(number.ok());
    Ids found;
    for_each_weighing(site_, [&](const Weighing& weighing) {
      if (weighing.recall.age_at_interview != YearRange{kMark, kMark}) found.insert(to_string(weighing.claim));
    });
    CHECK(static_cast<std::size_t>(*number) == found.size());
    return found;
  }

  /// The claims for which `fits` holds.
  Ids claims(const std::function<bool(const Claim&)>& fits) const {
    Ids found;
    for_each_claim(site_, {}, [&](const StoredClaim& stored) {
      if (fits(stored.claim)) found.insert(to_string(stored.claim.id));
    });
    return found;
  }

  /// Of these claims, all stands as if every claim had been weighed.
  void check_as_weighed_from_cold(const Ids& ids) {
    std::vector<Weighing> kept, cold;
    const auto of_these = [&](std::vector<Weighing>& all) {
      return [&](const Weighing& weighing) {
        if (ids.contains(to_string(weighing.claim))) all.push_back(weighing);
      };
    };
    for_each_weighing(site_, of_these(kept));
    REQUIRE(weigh(site_, true, surroundings_of(files_, kWeighedOn)).ok());
    for_each_weighing(site_, of_these(cold));
    CHECK(kept == cold);
    CHECK(kept.size() == ids.size());
    mark();
  }

 private:
  static constexpr std::int64_t kMark = 7777;

  MemoryFiles files_;
  SiteFile site_;
};

/// Whether what is said of one may be held against what is said of the other.
bool related(const AuthorityList& list, const std::string& a, const std::string& b) {
  return list.within(a, b) || list.within(b, a);
}

Entry entry_of(const SiteFile& site, const std::string& key) {
  for (const Entry& entry : load_register(site).entries)
    if (entry.key == key) return entry;
  throw std::runtime_error("no such entry");
}

void save(SiteFile& site, const Entry& entry) {
  Register changed;
  changed.entries = {entry};
  REQUIRE(save_register(site, changed).ok());
}

}  // namespace

TEST_CASE("nothing changed: nothing is weighed") {
  WeighedSite site;
  CHECK(site.weighed().empty());
}

TEST_CASE("a corrected claim is weighed alone, and as among all") {
  WeighedSite site;
  for (const Statement statement : {Statement::ends, Statement::located, Statement::attribute}) {
    CAPTURE(to_string(statement));
    const auto stored = load_claims(site.site(), {.statements = {statement}});
    REQUIRE(!stored.empty());
    Claim claim = stored.front().claim;
    claim.when.dated.value = edtf_year(1949);
    claim.when.period = to_period(*claim.when.dated.value, default_date_policy());
    REQUIRE(decide_claim(site.site(), claim, "").ok());
    const Ids expected{to_string(claim.id)};
    CHECK(site.weighed() == expected);
    site.check_as_weighed_from_cold(expected);
  }
}

TEST_CASE("an entry bears on the claims on its thing, on what it is a part of and on its parts") {
  WeighedSite site;
  const AuthorityLists lists = load_lists(site.site());
  for (const char* key : {"e-003", "e-004"}) {
    CAPTURE(key);
    Entry entry = entry_of(site.site(), key);
    entry.when.value = edtf_year(1931);
    save(site.site(), entry);
    const Ids expected = site.claims([&](const Claim& claim) {
      return claim.statement != Statement::located && !claim.subject.empty() &&
             related(lists.equipment, claim.subject, entry.subject);
    });
    REQUIRE(!expected.empty());
    CHECK(site.weighed() == expected);
    site.check_as_weighed_from_cold(expected);
  }
}

TEST_CASE("the kind of a source bears on the claims on things of which it, or what rests on it, has an entry") {
  WeighedSite site;
  const AuthorityLists lists = load_lists(site.site());
  const Register held = load_register(site.site());
  // A drawing of 1966 was drawn over this one.
  const auto drawing = std::find_if(held.sources.begin(), held.sources.end(),
                                    [](const Source& source) { return source.key == "dr-ga-1937"; });
  REQUIRE(drawing != held.sources.end());
  std::set<std::string> things;
  for (const Entry& entry : held.entries)
    if (entry.source == "dr-ga-1937" || entry.source == "dr-66-02") things.insert(entry.subject);
  REQUIRE(things.contains("generators"));
  Register changed;
  changed.sources = {*drawing};
  changed.sources[0].kind = SourceKind::publication;
  REQUIRE(save_register(site.site(), changed).ok());
  const Ids expected = site.claims([&](const Claim& claim) {
    return claim.statement != Statement::located && !claim.subject.empty() &&
           std::any_of(things.begin(), things.end(),
                       [&](const std::string& thing) { return related(lists.equipment, claim.subject, thing); });
  });
  CHECK(std::any_of(expected.begin(), expected.end(), [&](const std::string& id) {
    return load_claims(site.site(), {.ids = {*parse_id(id)}}).front().claim.subject == "generators";
  }));
  CHECK(site.weighed() == expected);
  site.check_as_weighed_from_cold(expected);
}

TEST_CASE("what is noted of an entry and bears on no outcome is weighed by nobody") {
  WeighedSite site;
  Entry entry = entry_of(site.site(), "e-003");
  entry.observation += " Seen again.";
  entry.notes = "checked";
  save(site.site(), entry);
  CHECK(site.weighed().empty());
}

TEST_CASE("a place put elsewhere bears on claims about it and beneath it, and on things whose entries lie there") {
  WeighedSite site;
  const AuthorityLists before = load_lists(site.site());
  const std::string moved = "bridge-levels";
  std::vector<Term> terms = before.places.terms();
  const auto term = std::find_if(terms.begin(), terms.end(), [&](const Term& one) { return one.key == moved; });
  REQUIRE(term != terms.end());
  REQUIRE(!term->broader.empty());
  term->broader = "forecastle";
  REQUIRE(save_list(site.site(), AuthorityList(AuthorityList::Kind::places, {*term})).ok());
  std::set<std::string> things;
  for (const Entry& entry : load_register(site.site()).entries)
    if (entry.statement != Statement::located && before.places.within(entry.place, moved)) things.insert(entry.subject);
  const Ids expected = site.claims([&](const Claim& claim) {
    if (before.places.within(claim.place, moved)) return true;
    return claim.statement != Statement::located &&
           std::any_of(things.begin(), things.end(), [&](const std::string& thing) {
             return claim.subject.empty() || thing.empty() ? claim.subject == thing
                                                           : related(before.equipment, claim.subject, thing);
           });
  });
  REQUIRE(!expected.empty());
  CHECK(site.weighed() == expected);
  site.check_as_weighed_from_cold(expected);
}

TEST_CASE("the itinerary bears on claims of where somebody was") {
  WeighedSite site;
  Register changed;
  changed.itinerary = {load_register(site.site()).itinerary.front()};
  changed.itinerary[0].when.value = edtf_year(1931);
  REQUIRE(save_register(site.site(), changed).ok());
  const Ids expected = site.claims([](const Claim& claim) { return claim.statement == Statement::located; });
  REQUIRE(!expected.empty());
  CHECK(site.weighed() == expected);
  site.check_as_weighed_from_cold(expected);
}

TEST_CASE("a named event bears on dates when they are read, not on weighing") {
  WeighedSite site;
  Register changed;
  changed.events = {load_register(site.site()).events.front()};
  changed.events[0].when.value = edtf_year(1931);
  REQUIRE(save_register(site.site(), changed).ok());
  CHECK(site.weighed().empty());
}

TEST_CASE("an interview's date bears on its claims") {
  WeighedSite site;
  InterviewFile file = load_interviews(site.site());
  InterviewFile changed;
  changed.interviews = {file.interviews.front()};
  changed.interviews[0].date.value = edtf_year(2003);
  REQUIRE(save_interviews(site.site(), changed).ok());
  const std::string key = changed.interviews[0].key;
  const Ids expected = site.claims([&](const Claim& claim) { return claim.interview == key; });
  REQUIRE(!expected.empty());
  CHECK(site.weighed() == expected);
  site.check_as_weighed_from_cold(expected);
}

TEST_CASE("a birth bears on what that person said") {
  WeighedSite site;
  const InterviewFile file = load_interviews(site.site());
  const auto narrates = [&](const Interview& interview, const std::string& person) {
    return std::find(interview.narrators.begin(), interview.narrators.end(), person) != interview.narrators.end();
  };
  const auto person = std::find_if(file.persons.begin(), file.persons.end(), [&](const Person& one) {
    return one.birth.value && narrates(file.interviews.front(), one.key);
  });
  REQUIRE(person != file.persons.end());
  InterviewFile changed;
  changed.persons = {*person};
  changed.persons[0].birth.value = edtf_year(1901);
  REQUIRE(save_interviews(site.site(), changed).ok());
  const Ids expected = site.claims([&](const Claim& claim) {
    return claim.speaker == person->key || (claim.statement == Statement::located && claim.subject == person->key) ||
           std::any_of(file.interviews.begin(), file.interviews.end(), [&](const Interview& interview) {
             return interview.key == claim.interview && narrates(interview, person->key);
           });
  });
  REQUIRE(!expected.empty());
  CHECK(site.weighed() == expected);
  site.check_as_weighed_from_cold(expected);
}

TEST_CASE("service bears on what that person said, and on where anybody says that person was") {
  WeighedSite site;
  const InterviewFile file = load_interviews(site.site());
  Claim claim = load_claims(site.site(), {.statements = {Statement::located}}).front().claim;
  // Somebody else's claim: that this person was with the site.
  const auto other = std::find_if(file.persons.begin(), file.persons.end(), [&](const Person& one) {
    return one.key != claim.speaker && !one.service.empty() &&
           std::none_of(file.interviews.begin(), file.interviews.end(), [&](const Interview& interview) {
             return interview.key == claim.interview &&
                    std::find(interview.narrators.begin(), interview.narrators.end(), one.key) != interview.narrators.end();
           });
  });
  REQUIRE(other != file.persons.end());
  claim.subject = other->key;
  REQUIRE(decide_claim(site.site(), claim, "").ok());
  CHECK(site.weighed() == Ids{to_string(claim.id)});
  site.mark();
  InterviewFile changed;
  changed.persons = {*other};
  changed.persons[0].service[0].when.value = parse_edtf("1931/1932").value();
  REQUIRE(save_interviews(site.site(), changed).ok());
  const Ids weighed = site.weighed();
  CHECK(weighed.contains(to_string(claim.id)));
  CHECK(weighed == site.claims([&](const Claim& one) {
    return one.id == claim.id || one.speaker == other->key ||
           std::any_of(file.interviews.begin(), file.interviews.end(), [&](const Interview& interview) {
             return interview.key == one.interview &&
                    std::find(interview.narrators.begin(), interview.narrators.end(), other->key) != interview.narrators.end();
           });
  }));
  site.check_as_weighed_from_cold(weighed);
}

TEST_CASE("another date policy bears on everything") {
  WeighedSite site;
  const auto path = source_tree() / "shared" / "date-policy.json";
  std::string text = SystemFileReader().read(path).value();
  const std::string width = R"("year": {"years": 1})";
  REQUIRE(text.find(width) != std::string::npos);
  text.replace(text.find(width), width.size(), R"("year": {"years": 3})");
  site.files().files[path.string()] = text;
  const Ids all = site.claims([](const Claim&) { return true; });
  CHECK(site.weighed() == all);
  site.check_as_weighed_from_cold(all);
}
