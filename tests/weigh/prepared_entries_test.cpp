// A claim is held against entries that were prepared and found beforehand. Here each entry of a random site is looked at
// by itself instead, by the plain rule for what a claim is held against: the same comparisons come out.
#include <doctest/doctest.h>

#include <algorithm>
#include <random>

#include "witnessmark/weigh/agreement.h"

using namespace witnessmark;

namespace {

class RandomSite {
 public:
  explicit RandomSite(unsigned seed) : random_(seed) {
    lists = {AuthorityList(AuthorityList::Kind::places, places()), AuthorityList(AuthorityList::Kind::equipment, things())};
    constexpr SourceKind kKinds[] = {SourceKind::log, SourceKind::photograph, SourceKind::drawing};
    for (int i = 1; i <= 5; ++i) {
      Source source;
      source.key = "s" + std::to_string(i);
      source.kind = kKinds[number(0, 2)];
      if (one_in(4)) source.interview = "i1";
      evidence.sources.push_back(source);
      if (one_in(3)) evidence.derivations.push_back({source.key, any("s", 5), ""});
    }
    for (int i = 1; i <= 30; ++i) evidence.entries.push_back(entry(i));
    interview.key = "i1";
    if (one_in(2)) interview.shown_beforehand = {any("s", 5)};
  }

  Claim claim() {
    Claim made;
    made.interview = "i1";
    made.statement = statement();
    made.subject = one_in(6) ? "" : thing();
    made.place = place();
    made.place_carried = one_in(4);
    if (!one_in(8)) {
      made.when.dated = when();
      made.when.period = to_period(*made.when.dated.value, default_date_policy());
      if (one_in(4)) made.when.reading = Reading::throughout, made.when.rule = "range";
    }
    if (made.statement == Statement::count && !one_in(5)) made.quantity = Quantity{number(0, 2), 2, ""};
    made.attribute = detail(made.statement);
    if (one_in(5)) made.polarity = Polarity::denied;
    return made;
  }

  AuthorityLists lists;
  Register evidence;
  Interview interview;

 private:
  int number(int low, int high) { return std::uniform_int_distribution<int>(low, high)(random_); }
  bool one_in(int n) { return number(1, n) == 1; }
  std::string any(const char* letter, int count) { return letter + std::to_string(number(1, count)); }

  static Term term(const char* key, const char* broader) {
    Term made;
    made.key = made.name = key;
    made.broader = broader;
    return made;
  }
  static std::vector<Term> places() { return {term("deck", ""), term("bow", "deck"), term("locker", "bow"), term("stern", "deck")}; }
  static std::vector<Term> things() { return {term("boats", ""), term("gig", "boats"), term("oars", "gig"), term("lamp", "")}; }
  std::string thing() {
    const char* kThings[] = {"boats", "gig", "oars", "lamp", "unlisted"};
    return kThings[number(0, 4)];
  }
  std::string place() {
    const char* kPlaces[] = {"", "deck", "bow", "locker", "stern", "unlisted"};
    return kPlaces[number(0, 5)];
  }
  Statement statement() {
    constexpr Statement kKinds[] = {Statement::begins, Statement::ends,      Statement::present, Statement::absent,
                                    Statement::count,  Statement::attribute, Statement::happened};
    return kKinds[number(0, 6)];
  }
  std::string detail(Statement of) {
    constexpr const char* kDetails[] = {"colour: buff", "colour: red", "colour: red with white band", "type: steam", ""};
    const bool change = of == Statement::begins || of == Statement::ends;
    if (of == Statement::happened) return one_in(2) ? "burned" : "";
    return of == Statement::attribute || (change && one_in(4)) ? kDetails[number(0, 4)] : "";
  }
  Dated when() {
    const int year = number(1950, 1955);
    const std::string texts[] = {std::to_string(year), std::to_string(year) + "-0" + std::to_string(number(1, 9)),
                                 std::to_string(year) + "/" + std::to_string(year + 2),
                                 "[.." + std::to_string(year) + "]", std::to_string(year) + "~",
                                 "[" + std::to_string(year) + "," + std::to_string(year + 3) + "]"};
    Dated dated;
    dated.value = parse_edtf(texts[number(0, 5)]).value();
    return dated;
  }
  Entry entry(int n) {
    Entry made;
    made.key = "e" + std::to_string(n);
    made.source = any("s", 5);
    made.statement = one_in(15) ? Statement::located : statement();
    made.subject = one_in(6) ? "" : thing();
    made.place = place();
    if (!one_in(8)) made.when = when();
    if (one_in(3)) made.reading = Reading::throughout;
    if (made.statement == Statement::count) made.number = number(0, 2);
    made.attribute = detail(made.statement);
    made.spot_visible = one_in(2) ? SpotVisible::yes : SpotVisible::no;
    if (one_in(5)) made.nature = Nature::intended;
    if (one_in(5)) made.identification = Identification::probable;
    if (one_in(6)) made.date_rests_on = {one_in(2) ? thing() : any("e", 30)};
    if (one_in(6)) made.identification_rests_on = {one_in(2) ? "i1" : any("s", 5)};
    return made;
  }

  std::mt19937 random_;
};

/// Above, below or the same in a list; what the list does not have is only itself.
bool related(const AuthorityList& list, const std::string& a, const std::string& b) {
  const auto above = [&](const std::string& inner, const std::string& outer) {
    for (const std::string& key : list.above(inner))
      if (key == outer) return true;
    return false;
  };
  return a == b || above(a, b) || above(b, a);
}

/// The plain rule.
bool held_against(const Claim& claim, const Entry& entry, const AuthorityLists& lists) {
  if (claim.subject.empty() && claim.place.empty()) return false;
  if (entry.statement == Statement::located) return false;
  if (claim.subject.empty() ? !entry.subject.empty() || entry.place.empty()
                            : entry.subject.empty() || !related(lists.equipment, claim.subject, entry.subject))
    return false;
  const bool narrows = !claim.place.empty() && (!claim.place_carried || claim.subject.empty());
  return !narrows || entry.place.empty() || related(lists.places, claim.place, entry.place);
}

}  // namespace

TEST_CASE("prepared entries give the comparisons that each entry gives by itself") {
  std::int64_t outcomes[5] = {}, gaps = 0, circles = 0;
  for (unsigned seed = 1; seed <= 200; ++seed) {
    RandomSite site(seed);
    // Asked for many claims, and made anew for each: what an index keeps changes nothing.
    const RegisterIndex index(site.evidence, site.lists, default_date_policy());
    for (int i = 0; i < 25; ++i) {
      const Claim claim = site.claim();
      const RegisterIndex fresh(site.evidence, site.lists, default_date_policy());
      std::vector<Comparison> expected;
      for (const RegisterIndex::Item& item : fresh.items()) {
        if (!held_against(claim, *item.entry, site.lists)) continue;
        const Comparison comparison = compare(claim, site.interview, item, fresh);
        // What says nothing of one another is left out.
        Register one = site.evidence;
        std::erase_if(one.entries, [&](const Entry& entry) { return entry.key != item.entry->key; });
        const RegisterIndex index_of_one(one, site.lists, default_date_policy());
        if (compare(claim, site.interview, index_of_one).front().outcome == Outcome::silent) continue;
        expected.push_back(comparison);
      }
      if (expected.empty()) expected.emplace_back().claim = claim.id;
      const auto found = compare(claim, site.interview, index);
      CAPTURE(seed);
      CAPTURE(dump(claim));
      REQUIRE(found.size() == expected.size());
      for (std::size_t k = 0; k < found.size(); ++k) {
        CAPTURE(dump(found[k]));
        CAPTURE(dump(expected[k]));
        CHECK(found[k] == expected[k]);
        ++outcomes[static_cast<std::size_t>(found[k].outcome)];
        gaps += found[k].gap.has_value();
        circles += found[k].circular;
      }
    }
  }
  for (const std::int64_t number : outcomes) CHECK(number > 100);
  CHECK(gaps > 100);
  CHECK(circles > 100);
}
