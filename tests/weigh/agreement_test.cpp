#include "witnessmark/weigh/agreement.h"

#include <doctest/doctest.h>
#include <fmt/core.h>

#include <fstream>
#include <sstream>

#include "witnessmark/base/code_point_index.h"
#include "witnessmark/base/fold.h"
#include "witnessmark/weigh/statement_words.h"

using namespace witnessmark;

namespace {

std::vector<std::string> split(const std::string& text, char separator) {
  std::vector<std::string> parts(1);
  for (const char c : text) {
    if (c == separator) parts.emplace_back();
    else parts.back() += c;
  }
  return parts;
}

bool take_word(std::string& extras, const std::string& word) {
  const auto at = extras.find(word);
  if (at == std::string::npos) return false;
  extras.erase(at, word.size());
  return true;
}

Claim claim_of(const std::vector<std::string>& row) {
  Claim claim;
  claim.interview = "i1";
  claim.subject = "derrick";
  claim.place = "foredeck";
  claim.statement = *parse_statement(row[0]);
  if (!row[1].empty()) {
    claim.when.dated.value = parse_edtf(row[1]).value();
    claim.when.period = to_period(*claim.when.dated.value, default_date_policy());
  }
  std::string extras = row[2];
  if (take_word(extras, "denied")) claim.polarity = Polarity::denied;
  if (const auto at = extras.find("n="); at != std::string::npos) {
    const std::int64_t number = std::stoll(extras.substr(at + 2));
    claim.quantity = Quantity{number, number, ""};
  }
  if (const auto at = extras.find("a="); at != std::string::npos) claim.attribute = extras.substr(at + 2);
  return claim;
}

Entry entry_of(const std::vector<std::string>& row) {
  Entry entry;
  entry.key = "e1";
  entry.subject = "derrick";
  entry.place = "foredeck";
  entry.statement = *parse_statement(row[3]);
  if (!row[4].empty()) entry.when.value = parse_edtf(row[4]).value();
  std::string extras = row[5];
  entry.source = "photo";
  if (take_word(extras, "intended")) entry.nature = Nature::intended, entry.source = "order";
  if (take_word(extras, "probable")) entry.identification = Identification::probable;
  if (take_word(extras, "possible")) entry.identification = Identification::possible;
  if (take_word(extras, "visible")) entry.spot_visible = SpotVisible::yes;
  if (take_word(extras, "hidden")) entry.spot_visible = SpotVisible::no;
  if (take_word(extras, "throughout")) entry.reading = Reading::throughout;
  if (const auto at = extras.find("n="); at != std::string::npos) entry.number = std::stoll(extras.substr(at + 2));
  if (const auto at = extras.find("a="); at != std::string::npos) entry.attribute = extras.substr(at + 2);
  return entry;
}

Term term(std::string key, std::string broader = "") {
  Term made;
  made.key = key;
  made.name = std::move(key);
  made.broader = std::move(broader);
  return made;
}

AuthorityLists lists() {
  return {AuthorityList(AuthorityList::Kind::places, {term("deck"), term("foredeck", "deck"), term("bridge")}),
          AuthorityList(AuthorityList::Kind::equipment, {term("gear"), term("derrick", "gear"), term("winch", "gear")})};
}

Source source(std::string key, SourceKind kind) {
  Source made;
  made.key = std::move(key);
  made.kind = kind;
  made.title = made.key;
  return made;
}

Register one_entry(Entry entry) {
  Register evidence;
  evidence.sources = {source("photo", SourceKind::photograph), source("order", SourceKind::order),
                      source("book", SourceKind::publication)};
  evidence.entries = {std::move(entry)};
  return evidence;
}

std::string gap_of(const Comparison& comparison) {
  if (!comparison.gap) return "";
  if (!comparison.gap->most) return fmt::format("{}..", comparison.gap->least);
  if (*comparison.gap->most == comparison.gap->least) return std::to_string(comparison.gap->least);
  return fmt::format("{}..{}", comparison.gap->least, *comparison.gap->most);
}

Claim ends_in_1962() { return claim_of({"ends", "1962", ""}); }
Entry ended_in_october() { return entry_of({"", "", "", "ends", "1962-10-04", ""}); }

Comparison comparison_with(const Claim& claim, const Interview& interview, const Register& evidence) {
  const AuthorityLists held = lists();
  return compare(claim, interview, RegisterIndex(evidence, held, default_date_policy())).at(0);
}

Outcome outcome_with(const Claim& claim, const Interview& interview, const Register& evidence) {
  return comparison_with(claim, interview, evidence).outcome;
}

}  // namespace

TEST_CASE("every pair of statements comes out as the table argues") {
  std::ifstream file(WITNESSMARK_SOURCE_DIR "/tests/weigh/agreement.tsv");
  REQUIRE(file);
  const AuthorityLists held = lists();
  std::string line;
  int rows = 0;
  while (std::getline(file, line)) {
    if (line.empty() || line.front() == '#') continue;
    const auto row = split(line, '\t');
    CAPTURE(line);
    REQUIRE(row.size() == 9);
    const Register evidence = one_entry(entry_of(row));
    const RegisterIndex index(evidence, held, default_date_policy());
    const Claim claim = claim_of(row);
    const auto comparisons = compare(claim, Interview{}, index);
    REQUIRE(comparisons.size() == 1);
    CHECK(to_string(comparisons[0].outcome) == row[6]);
    const std::string gap = gap_of(comparisons[0]);
    CAPTURE(gap);
    CHECK((gap == row[7] || (row[7] == "0" && gap.starts_with("0"))));
    CHECK(!explain(claim, "", Interview{}, comparisons[0], index).empty());
    ++rows;
  }
  CHECK(rows >= 70);
}

TEST_CASE("an entry dated by the very fixture settles nothing about it") {
  Entry entry = ended_in_october();
  entry.date_rests_on = {"derrick"};
  CHECK(outcome_with(ends_in_1962(), {}, one_entry(entry)) == Outcome::cannot_tell);
}

TEST_CASE("a source that derives from the interview is marked as no independent witness") {
  Entry entry = ended_in_october();
  entry.source = "book";
  Register evidence = one_entry(entry);
  CHECK(!comparison_with(ends_in_1962(), {}, evidence).circular);
  evidence.derivations = {{"book", "article", "retells"}, {"article", "i1", "quotes"}};
  const Comparison comparison = comparison_with(ends_in_1962(), {}, evidence);
  CHECK(comparison.outcome == Outcome::agrees);
  CHECK(comparison.circular);
}

TEST_CASE("so is what the narrator was shown beforehand") {
  Interview interview;
  interview.shown_beforehand = {"photo"};
  const Comparison comparison = comparison_with(ends_in_1962(), interview, one_entry(ended_in_october()));
  CHECK(comparison.outcome == Outcome::agrees);
  CHECK(comparison.circular);
}

TEST_CASE("an entry on a broader or narrower thing leaves it open") {
  Entry entry = ended_in_october();
  entry.subject = "gear";
  CHECK(outcome_with(ends_in_1962(), {}, one_entry(entry)) == Outcome::cannot_tell);
  entry.subject = "winch";
  CHECK(outcome_with(ends_in_1962(), {}, one_entry(entry)) == Outcome::silent);
}

TEST_CASE("a place that contains the other meets it, another place does not") {
  Entry entry = ended_in_october();
  entry.place = "deck";
  CHECK(outcome_with(ends_in_1962(), {}, one_entry(entry)) == Outcome::agrees);
  entry.place = "bridge";
  CHECK(outcome_with(ends_in_1962(), {}, one_entry(entry)) == Outcome::silent);
}

TEST_CASE("fitted and later not there is no conflict when the register shows it gone in between") {
  const Claim claim = claim_of({"begins", "1962", ""});
  Register evidence = one_entry(entry_of({"", "", "", "absent", "1970-07-04", "visible"}));
  CHECK(outcome_with(claim, {}, evidence) == Outcome::conflicts);
  Entry gone = entry_of({"", "", "", "ends", "1966", ""});
  gone.key = "e2";
  evidence.entries.push_back(gone);
  CHECK(outcome_with(claim, {}, evidence) == Outcome::compatible);
}

TEST_CASE("a state holds throughout a stretch told with both ends, and for a part of one that is named") {
  const Register evidence = one_entry(entry_of({"", "", "", "absent", "1962-09-10", "visible"}));
  Claim claim = claim_of({"present", "1962-08-06/1962-11-30", ""});
  claim.when.reading = Reading::throughout;
  claim.when.rule = "range";  // "from the sixth of August to the end of November"
  CHECK(reading_of(claim) == Reading::throughout);
  CHECK(outcome_with(claim, {}, evidence) == Outcome::conflicts);
  claim.when.rule = kThroughout;  // "all through the yard period"
  CHECK(outcome_with(claim, {}, evidence) == Outcome::conflicts);
  claim.when.rule = "named-event";  // "in the yard period"
  CHECK(reading_of(claim) == Reading::within);
  CHECK(outcome_with(claim, {}, evidence) == Outcome::compatible);
  for (const Statement change : {Statement::begins, Statement::ends, Statement::happened}) {
    claim.statement = change;
    claim.when.rule = "range";
    CHECK(reading_of(claim) == Reading::within);
  }
  claim.statement = Statement::absent;
  CHECK(reading_of(claim) == Reading::throughout);
}

TEST_CASE("an event on another day may be another event; how far apart they are is said") {
  const AuthorityLists held = lists();
  Entry fire = entry_of({"", "", "", "happened", "1936-11-21", ""});
  const Claim claim = claim_of({"happened", "1936-11-05", "a=burned"});
  const Register evidence = one_entry(fire);
  const RegisterIndex index(evidence, held, default_date_policy());
  const auto comparisons = compare(claim, Interview{}, index);
  CHECK(comparisons.at(0).outcome == Outcome::cannot_tell);
  CHECK(explain(claim, "", Interview{}, comparisons.at(0), index)
            .ends_with("it may be another event; if it is the same, they are 16 days apart."));
  fire.attribute = "burned";
  const Register named = one_entry(fire);
  const RegisterIndex index_of_named(named, held, default_date_policy());
  const auto same = compare(claim, Interview{}, index_of_named);
  CHECK(same.at(0).outcome == Outcome::conflicts);
  CHECK(explain(claim, "", Interview{}, same.at(0), index_of_named)
            .ends_with("they conflict, 16 days apart; unless it happened twice."));
}

TEST_CASE("what is noted of an entry by the letter-figure scale is said and changes nothing") {
  const AuthorityLists held = lists();
  Entry entry = entry_of({"", "", "", "ends", "1962-10-04", ""});
  entry.letter_figure = "E5";
  const Register evidence = one_entry(entry);
  const RegisterIndex index(evidence, held, default_date_policy());
  const Claim claim = claim_of({"ends", "1962", ""});
  const auto comparisons = compare(claim, Interview{}, index);
  CHECK(comparisons.at(0).outcome == Outcome::agrees);
  CHECK(explain(claim, "", Interview{}, comparisons.at(0), index)
            .starts_with("Photograph e1 (noted E5) has derrick"));
}

TEST_CASE("the explanation names the quote, the entry, both dates and the gap") {
  const AuthorityLists held = lists();
  const Register evidence = one_entry(entry_of({"", "", "", "present", "1963-02-14", ""}));
  const RegisterIndex index(evidence, held, default_date_policy());
  Claim claim = claim_of({"ends", "[..1962-11]", ""});
  claim.when.dated.written = "by the autumn of 1962";
  const auto comparisons = compare(claim, Interview{}, index);
  const std::string entry = "Photograph e1 has derrick (foredeck) there, " + describe(*index.items()[0].period);
  const std::string days = describe(*claim.when.period);
  // Words said elsewhere stand beside the days they mean; within the quote they are not said twice.
  CHECK(explain(claim, "", Interview{}, comparisons.at(0), index) ==
        entry + "; the narrator has derrick (foredeck) taken away, “by the autumn of 1962” (" + days +
            "): they conflict, at least 76 days apart.");
  CHECK(explain(claim, "It was gone then.", Interview{}, comparisons.at(0), index) ==
        entry + "; the narrator, “It was gone then.”, has derrick (foredeck) taken away, “by the autumn of 1962” (" +
            days + "): they conflict, at least 76 days apart.");
  CHECK(explain(claim, "It was gone\nby the autumn of 1962.", Interview{}, comparisons.at(0), index) ==
        entry + "; the narrator, “It was gone by the autumn of 1962.”, has derrick (foredeck) taken away, " + days +
            ": they conflict, at least 76 days apart.");
  Comparison silent;
  CHECK(explain(claim, "It was gone by the autumn of 1962.", Interview{}, silent, index) ==
        "Nothing in the register speaks to it: the narrator, “It was gone by the autumn of 1962.”, has derrick "
        "(foredeck) taken away, " +
            days + ".");
}

TEST_CASE("who is meant by words that name nobody is not said as if it were known") {
  const AuthorityLists held = lists();
  const Register evidence;
  const RegisterIndex index(evidence, held, default_date_policy());
  Claim claim = claim_of({"located", "1949-09", ""});
  claim.subject = "";
  claim.subject_words = "She";
  CHECK(statement_words(claim, index) == "“She” at foredeck, September 1949");
  claim.subject = claim.speaker = "hand";
  claim.subject_words = "I";
  CHECK(statement_words(claim, index) == "the narrator at foredeck, September 1949");
}

TEST_CASE("what a claim lacks is said, not made up") {
  const AuthorityLists held = lists();
  const Register evidence;
  const RegisterIndex index(evidence, held, default_date_policy());
  const auto words = [&](const char* statement, const char* more) {
    return statement_words(claim_of({statement, "1957", more}), index);
  };
  CHECK(words("attribute", "") == "derrick (foredeck): what it was like, 1957");
  CHECK(words("attribute", "a=buff") == "derrick (foredeck): buff, 1957");
  CHECK(words("count", "") == "derrick (foredeck): how many there were, 1957");
  CHECK(words("happened", "a=freeze") == "derrick (foredeck): something happened (freeze), 1957");
  CHECK(words("happened", "") == "derrick (foredeck): something happened, 1957");
}

TEST_CASE("a date in doubt is told with its doubt") {
  const AuthorityLists held = lists();
  const Register evidence = one_entry(entry_of({"", "", "", "present", "1957?", ""}));
  const RegisterIndex index(evidence, held, default_date_policy());
  CHECK(statement_words(index.items()[0], index) == "derrick (foredeck) there, 1957, uncertain");
}

TEST_CASE("a long quote is shortened to whole words around the date as said") {
  CHECK(brief_quote("", "1962") == "");
  CHECK(brief_quote(" It  was\n gone. ", "") == "It was gone.");
  const std::string long_one =
      "Well, you see, they had always had it standing there by the lamp room door, and nobody thought about it "
      "until, oh, late in 1962, when the yard men came and took the whole of it away on a Tuesday morning.";
  CHECK(brief_quote(long_one, "late in 1962") ==
        "… nobody thought about it until, oh, late in 1962, when the yard men came …");
  CHECK(brief_quote(long_one, "by 1970") ==
        "Well, you see, they had always had it standing there by the lamp room …");
  CHECK(brief_quote(long_one, "Tuesday morning") ==
        "… the yard men came and took the whole of it away on a Tuesday morning.");
  const std::string not_long = long_one.substr(0, 100);
  CHECK(brief_quote(not_long, "by the lamp") == not_long);
  const std::string one_word(200, 'x');
  CHECK(brief_quote(one_word, "") == one_word);
  // Cut between words, never within a character, at no more than 72 of them.
  std::string accents;
  for (int i = 0; i < 40; ++i) accents += "éàü ";
  const std::string brief = brief_quote(accents, "");
  CHECK(is_valid_utf8(brief));
  CHECK(CodePointIndex(brief).size().value == 71 + 2);
}
