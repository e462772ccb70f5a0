// The outline of a question counts origins without writing out who speaks; the answer writes out every voice and groups
// them all. On random sites with all kinds of links both come to the same.
#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <random>
#include <sstream>

#include "witnessmark/weigh/corroboration.h"

using namespace witnessmark;

namespace {

class RandomSite {
 public:
  explicit RandomSite(unsigned seed) : random_(seed) {
    add_lists();
    add_register();
    add_people();
    for (int i = 0; i < 40; ++i) claims.push_back(claim());
  }

  AuthorityLists lists;
  Register evidence;
  InterviewFile people;
  std::vector<Claim> claims;

  std::vector<Testimony> testimony() const {
    std::vector<Testimony> heard;
    for (const Claim& claim : claims) {
      const auto interview = std::find_if(people.interviews.begin(), people.interviews.end(),
                                          [&](const Interview& one) { return one.key == claim.interview; });
      heard.push_back({&claim, &*interview, claim.speaker.starts_with("p") ? claim.speaker : "",
                       claim.rank == 0 ? Answer::no : Answer::yes});
    }
    return heard;
  }

 private:
  int number(int low, int high) { return std::uniform_int_distribution<int>(low, high)(random_); }
  bool one_in(int n) { return number(1, n) == 1; }
  std::string any(const char* letter, int count) { return letter + std::to_string(number(1, count)); }

  void add_lists() {
    std::vector<Term> things, places;
    for (const char* key : {"t1", "t2"}) {
      Term term;
      term.key = term.name = key;
      things.push_back(term);
    }
    for (const char* key : {"deck", "bow", "stern"}) {
      Term term;
      term.key = term.name = key;
      if (term.key != "deck") term.broader = "deck";
      places.push_back(term);
    }
    lists = {AuthorityList(AuthorityList::Kind::places, places), AuthorityList(AuthorityList::Kind::equipment, things)};
  }

  Dated when() {
    const int year = number(1950, 1954);
    const std::string texts[] = {std::to_string(year), std::to_string(year) + "-0" + std::to_string(number(1, 9)),
                                 std::to_string(year) + "/" + std::to_string(year + 1),
                                 "[.." + std::to_string(year) + "]", std::to_string(year) + "~"};
    Dated dated;
    dated.value = parse_edtf(texts[number(0, 4)]).value();
    return dated;
  }

  std::string place() {
    const char* kPlaces[] = {"", "deck", "bow", "stern"};
    return kPlaces[number(0, 3)];
  }

  Statement statement(bool located) {
    constexpr Statement kKinds[] = {Statement::begins, Statement::ends,      Statement::present,  Statement::absent,
                                    Statement::count,  Statement::attribute, Statement::happened, Statement::located};
    return kKinds[number(0, located ? 7 : 6)];
  }

  std::string detail(Statement statement) {
    if (statement == Statement::attribute) return one_in(2) ? "colour: buff" : "colour: red";
    if (statement == Statement::happened) return one_in(2) ? "burned" : "";
    return "";
  }

  void add_register() {
    constexpr SourceKind kKinds[] = {SourceKind::log, SourceKind::photograph, SourceKind::publication,
                                     SourceKind::order, SourceKind::testimony};
    for (int i = 1; i <= 8; ++i) {
      Source source;
      source.key = "s" + std::to_string(i);
      source.kind = kKinds[number(0, 4)];
      if (one_in(6)) source.interview = any("i", 5);
      evidence.sources.push_back(source);
      if (one_in(3)) evidence.derivations.push_back({source.key, one_in(3) ? any("i", 5) : any("s", 8), "retells"});
    }
    for (int i = 1; i <= 14; ++i) {
      Entry entry;
      entry.key = "e" + std::to_string(i);
      entry.source = any("s", 8);
      entry.statement = statement(false);
      entry.subject = any("t", 2);
      entry.place = place();
      entry.when = when();
      if (one_in(3)) entry.reading = Reading::throughout;
      if (entry.statement == Statement::count) entry.number = number(0, 2);
      entry.attribute = detail(entry.statement);
      entry.spot_visible = SpotVisible::yes;
      if (one_in(5)) entry.nature = Nature::intended;
      if (one_in(5)) entry.identification = Identification::probable;
      if (one_in(5)) entry.date_rests_on = {one_in(2) ? any("s", 8) : one_in(2) ? any("e", 14) : any("t", 2)};
      if (one_in(6)) entry.caption_rests_on = {one_in(2) ? any("i", 5) : any("s", 8)};
      evidence.entries.push_back(entry);
    }
    for (int i = 1; i <= 3; ++i) {
      Stay stay;
      stay.key = "stay" + std::to_string(i);
      stay.source = any("s", 8);
      stay.locations = {i == 1 ? "Holm Sound" : i == 2 ? "Varde" : "Holm Quay"};
      if (one_in(3)) stay.party = any("p", 4);
      stay.when = when();
      evidence.itinerary.push_back(stay);
    }
  }

  void add_people() {
    for (int i = 1; i <= 4; ++i) {
      Person person;
      person.key = "p" + std::to_string(i);
      person.name = "Narrator N" + std::to_string(i);
      people.persons.push_back(person);
    }
    for (int i = 1; i <= 5; ++i) {
      Interview interview;
      interview.key = "i" + std::to_string(i);
      interview.narrators = {any("p", 4)};
      if (one_in(3)) interview.narrators.push_back(any("p", 4));
      if (one_in(3)) interview.shown_beforehand = {any("s", 8)};
      people.interviews.push_back(interview);
    }
  }

  Claim claim() {
    Claim made;
    made.id.bytes[0] = static_cast<std::uint8_t>(claims.size() + 1);
    const Interview& interview = people.interviews[static_cast<std::size_t>(number(0, 4))];
    made.interview = interview.key;
    made.speaker = one_in(8) ? "somebody" : interview.narrators.front();
    made.statement = statement(true);
    if (made.statement == Statement::located) {
      const char* kWords[] = {"Holm Sound", "varde", "quay", "Skarr"};
      made.place_words = kWords[number(0, 3)];
      if (one_in(2)) made.subject = any("p", 4);
    } else {
      made.subject = any("t", 2);
      made.place = place();
      made.place_carried = one_in(5);
    }
    made.when.dated = when();
    made.when.period = to_period(*made.when.dated.value, default_date_policy());
    if (one_in(4)) made.when.reading = Reading::throughout, made.when.rule = "range";
    if (made.statement == Statement::count) made.quantity = Quantity{number(0, 2), 2, ""};
    made.attribute = detail(made.statement);
    if (one_in(5)) made.polarity = Polarity::denied;
    constexpr Basis kBases[] = {Basis::unstated, Basis::first_hand, Basis::told, Basis::read, Basis::inferred};
    made.basis = kBases[number(0, 4)];
    if (made.basis == Basis::told && one_in(2)) made.knower = "N" + std::to_string(number(1, 4));
    if (one_in(8)) made.firmness = Firmness::guess;
    made.led = one_in(10);
    made.rank = number(0, 2);
    made.status = one_in(2) ? ClaimStatus::said_so : ClaimStatus::proposed;
    return made;
  }

  std::mt19937 random_;
};

GradeTable table() {
  std::ifstream file(WITNESSMARK_SOURCE_DIR "/shared/grades.csv");
  std::ostringstream text;
  text << file.rdbuf();
  return parse_grade_table(text.str(), "grades.csv").value();
}

}  // namespace

TEST_CASE("the outline of a question is that of its answer, whatever rests on whatever") {
  const GradeTable grades = table();
  std::int64_t questions = 0, several_groups = 0, tied = 0, divided = 0, located = 0;
  for (unsigned seed = 1; seed <= 300; ++seed) {
    const RandomSite site(seed);
    const RegisterIndex index(site.evidence, site.lists, default_date_policy());
    const Corroborator corroborator(site.evidence, index, site.people, site.testimony(), grades);
    const auto outlines = corroborator.outlines();
    const auto answers = corroborator.all();
    REQUIRE(outlines.size() == answers.size());
    for (std::size_t i = 0; i < answers.size(); ++i) {
      const Corroboration& answer = answers[i];
      const CorroborationOutline& outline = outlines[i];
      CAPTURE(seed);
      CAPTURE(dump(answer));
      CAPTURE(dump(outline.tally));
      CHECK(outline.number == i);
      REQUIRE(outline.tally == answer.tally);
      CHECK(outline.grade == answer.grade);
      CHECK(outline.dissent == answer.dissent());
      CHECK(outline.spoken_against == std::any_of(answer.voices.begin(), answer.voices.end(), [](const Voice& voice) {
              return voice.stand == Stand::against_it;
            }));
      CHECK(outline.put_by_testimony == answer.put_by_testimony);
      CHECK(outline.put_by_register == answer.put_by_register);
      CHECK(outline.put_by_review == answer.put_by_review);
      CHECK(outline.with_proposal == std::any_of(answer.voices.begin(), answer.voices.end(), [&](const Voice& voice) {
              if (!voice.entry.empty() || (voice.stand != Stand::for_it && voice.stand != Stand::against_it))
                return false;
              return std::any_of(site.claims.begin(), site.claims.end(), [&](const Claim& claim) {
                return claim.id == voice.claim && claim.status == ClaimStatus::proposed;
              });
            }));
      CHECK(dump(corroborator.answer(outline)) == dump(answer));
      ++questions;
      several_groups += answer.tally.groups_for > 1;
      located += answer.question.statement == Statement::located;
      for (const LineageGroup& group : answer.groups) {
        tied += group.voices.size() > 1 && !group.links.empty();
        divided += group.divided;
      }
    }
  }
  // What makes it hard did occur.
  CHECK(questions > 5000);
  CHECK(several_groups > 500);
  CHECK(tied > 500);
  CHECK(divided > 500);
  CHECK(located > 500);
}
