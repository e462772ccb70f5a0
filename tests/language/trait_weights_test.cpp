// Weights of traits in a language folder: what they find, what they doubt, and faults of the file.
#include <doctest/doctest.h>

#include <map>

#include "claims_table.h"

using namespace witnessmark;
using namespace witnessmark::testing;

namespace {

/// The English folder with weights of its own.
class WithWeights final : public FileReader {
 public:
  explicit WithWeights(std::string weights) : weights_(std::move(weights)) {}
  Result<std::string> read(const std::filesystem::path& path) const override {
    if (path.filename() == "trait-weights.tsv") return weights_;
    return real_.read(path);
  }
  bool exists(const std::filesystem::path& path) const override {
    return path.filename() == "trait-weights.tsv" ? !weights_.empty() : real_.exists(path);
  }

 private:
  std::string weights_;
  SystemFileReader real_;
};

constexpr const char* kHeader = "trait\tbegins\tends\tpresent\tabsent\tcount\tattribute\thappened\tlocated\n";

Result<Language> load(const std::string& lines) {
  return Language::load(WithWeights(lines.empty() ? lines : kHeader + lines),
                        WITNESSMARK_SOURCE_DIR "/shared/language/en");
}

Term term(std::string key, std::string name) {
  Term made;
  made.key = std::move(key);
  made.name = std::move(name);
  return made;
}

std::vector<Claim> read(const Language& language, const std::string& words, bool by_weights = true) {
  const TermFinder places(AuthorityList(AuthorityList::Kind::places, {term("loft", "Loft")}), language);
  const TermFinder equipment(AuthorityList(AuthorityList::Kind::equipment, {term("vat", "Vat")}), language);
  ReadingContext context;
  context.language = &language;
  context.places = &places;
  context.equipment = &equipment;
  context.by_weights = by_weights;
  const Transcript transcript = transcript_of(words);
  return propose_claims(context, transcript, split_sentences(transcript, language.abbreviations()));
}

std::vector<std::string> claims_of(const Language& language, const std::string& words,
                                   bool by_weights = true) {
  std::vector<std::string> lines;
  for (const Claim& claim : read(language, words, by_weights)) lines.push_back(dump(claim));
  return lines;
}

using Lines = std::vector<std::string>;

}  // namespace

TEST_CASE("a stretch whose traits weigh enough states what no rule reads, of what it most likely speaks of") {
  // No rule has "lovely" for a property. Odds of e^4 for an attribute, against everything from the start.
  // What a rule reads of the vat stays.
  const std::string against =
      "always\t-900\t-900\t-900\t-900\t-900\t-400\t-900\t-900\n"
      "rule-of:same present\t0\t0\t900\t0\t0\t0\t0\t0\n";
  const auto language = load(against + "word:lovely\t0\t0\t0\t0\t0\t500\t0\t0\n" +
                             "carried-with:it\t0\t0\t0\t0\t0\t100\t0\t0\n");
  REQUIRE(language.ok());
  const std::string words = "There was the vat in the loft. It had lovely in it.";
  const Lines plain = claims_of(*language, words, false);
  Lines weighed = claims_of(*language, words);
  REQUIRE(weighed.size() == plain.size() + 1);
  CHECK(std::equal(plain.begin(), plain.end(), weighed.begin()));
  CHECK(weighed.back().starts_with("attribute vat"));
  CHECK(claims_of(*language, words) == weighed);

  SUBCASE("without weights there are only the rules") {
    const auto without = load("");
    REQUIRE(without.ok());
    CHECK(claims_of(*without, words) == plain);
  }
  SUBCASE("a trait of two words is two words that follow one another") {
    const auto pair = load(against + "pair:had lovely\t0\t0\t0\t0\t0\t700\t0\t0\n");
    REQUIRE(pair.ok());
    CHECK(claims_of(*pair, words).size() == plain.size() + 1);
    CHECK(claims_of(*pair, "There was the vat in the loft. Lovely had it in it.").size() ==
          claims_of(*pair, "There was the vat in the loft. Lovely had it in it.", false).size());
  }
}

TEST_CASE("what a rule reads is quoted as coders would much rather quote it") {
  const std::string words = "The vat was red, and they all went home early, and we sang.";
  const auto quote = [&](const std::string& weights, bool by_weights = true) {
    const auto language = load(weights);
    REQUIRE(language.ok());
    for (const Claim& claim : read(*language, words, by_weights)) {
      if (claim.statement == Statement::attribute && !claim.attribute.empty())
        return words.substr(static_cast<std::size_t>(claim.quotes.front().begin.value),
                            static_cast<std::size_t>(claim.quotes.front().length()));
    }
    return std::string();
  };
  const std::string none = "always\t-900\t-900\t-900\t-900\t-900\t0\t-900\t-900\n";
  CHECK(quote(none, false) == words);
  CHECK(quote(none + "pieces:1\t0\t0\t0\t0\t0\t300\t0\t0\n") == "The vat was red");
  // A little rather is not enough.
  CHECK(quote(none + "pieces:1\t0\t0\t0\t0\t0\t50\t0\t0\n") == words);
}

TEST_CASE("a property found in the words is that of the thing spoken of") {
  const auto language = load(
      "always\t-900\t-900\t-900\t-900\t-900\t-900\t-900\t-900\n"
      "word:lovely\t0\t0\t0\t0\t0\t1400\t0\t0\n"
      "named-in:equipment\t0\t0\t0\t0\t0\t200\t0\t0\n");
  REQUIRE(language.ok());
  const auto attribute = [&](const std::string& words) {
    for (const Claim& claim : read(*language, words))
      if (claim.statement == Statement::attribute && claim.subject == "vat") return claim.attribute;
    return std::string();
  };
  CHECK(attribute("It stood, the lovely vat, on a concrete bed.").starts_with("as told: "));
  CHECK(attribute("The vat stood lovely on a concrete bed.") != "material: concrete");
  CHECK(attribute("The vat stood lovely and brass.") == "material: brass");
}

TEST_CASE("the place something went from did not go") {
  const auto language = load("always\t-900\t900\t-900\t-900\t-900\t-900\t-900\t-900\n");
  REQUIRE(language.ok());
  const auto gone = [&](const std::string& words) {
    Lines lines;
    for (const Claim& claim : read(*language, words))
      if (claim.statement == Statement::ends)
        lines.push_back(claim.subject.empty() ? claim.place : claim.subject);
    return lines;
  };
  CHECK(gone("They took the vat out of the loft.") == Lines{"vat"});
  CHECK(gone("They took the loft down.") == Lines{"loft"});
}

TEST_CASE("what rules read of something only carried is left out where the weights speak against it") {
  const auto against = load("always\t-900\t-900\t-900\t-900\t-900\t-900\t-900\t-900\n");
  REQUIRE(against.ok());
  const std::string words = "They fitted the vat in the loft. It was red.";
  const Lines plain = claims_of(*against, words, false);
  REQUIRE(plain.size() == 2);
  // The first names the vat, and stays.
  CHECK(claims_of(*against, words) == Lines{plain.front()});
}

TEST_CASE("who was somewhere is the narrator only where nobody and nothing else is said") {
  const auto language = load(
      "always\t-900\t-900\t-900\t-900\t-900\t-900\t-900\t-400\n"
      "word:ashore\t0\t0\t0\t0\t0\t0\t0\t900\n");
  REQUIRE(language.ok());
  Interview interview;
  interview.narrators = {"ada"};
  Person ada;
  ada.key = "ada";
  ada.name = "Ada Marsh";
  const TermFinder places(AuthorityList(AuthorityList::Kind::places, {term("loft", "Loft")}), *language);
  const TermFinder equipment(AuthorityList(AuthorityList::Kind::equipment, {term("vat", "Vat")}), *language);
  ReadingContext context;
  context.language = &*language;
  context.places = &places;
  context.equipment = &equipment;
  context.interview = &interview;
  context.persons = {&ada, 1};
  struct Row {
    std::string words, subject, subject_words;
  };
  const Row rows[] = {
      {"And then ashore for a year.", "ada", "the narrator"},
      {"I was ashore.", "ada", "I"},
      {"The surveyor was ashore.", "", "The surveyor"},
      {"That year the old surveyor was ashore.", "", "the old surveyor"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.words);
    const Transcript transcript = transcript_of(row.words);
    const auto claims =
        propose_claims(context, transcript, split_sentences(transcript, language->abbreviations()));
    REQUIRE(claims.size() == 1);
    CHECK(claims[0].statement == Statement::located);
    CHECK(claims[0].subject == row.subject);
    CHECK(claims[0].subject_words == row.subject_words);
  }
  // Where a thing was is not where somebody was.
  const Transcript it = transcript_of("It was ashore.");
  CHECK(propose_claims(context, it, split_sentences(it, language->abbreviations())).empty());
}

TEST_CASE("claims are reviewed in the order of their odds") {
  // The second sentence is the likelier.
  const auto language = load(
      "always\t-300\t-300\t-300\t-300\t-300\t-300\t-300\t-300\n"
      "rule-of:same begins\t200\t0\t0\t0\t0\t0\t0\t0\n"
      "rule-of:same attribute\t0\t0\t0\t0\t0\t500\t0\t0\n");
  REQUIRE(language.ok());
  const std::vector<Claim> claims = read(*language, "They fitted the vat in the loft. It was red.");
  REQUIRE(claims.size() == 2);
  CHECK(claims[0].statement == Statement::begins);
  CHECK(claims[1].statement == Statement::attribute);
  CHECK(claims[1].rank < claims[0].rank);
}

TEST_CASE("a fault in the weights is named with its line and column") {
  for (const std::string line :
       {"word:red\t1\t2\n", "word:red\t1\t2\t3\t4\t5\t6\t7\tx\n", "word:red\n",
        "word:red\t1\t2\t3\t4\t5\t6\t7\t30001\n", "word:red\t1\t2\t3\t4\t5\t6\t7\t8\t9\n",
        "word:blue\t1\t2\t3\t4\t5\t6\t7\t8\n"}) {
    CAPTURE(line);
    const auto language = load("word:blue\t0\t0\t0\t0\t0\t0\t0\t0\n" + line);
    REQUIRE_FALSE(language.ok());
    CHECK(to_string(language.error()).find("trait-weights.tsv:3:") != std::string::npos);
    CHECK_FALSE(language.error().advice.empty());
  }
}

TEST_CASE("a file of weights has its header; lines may end as on any system; one word has one line") {
  const std::filesystem::path english = WITNESSMARK_SOURCE_DIR "/shared/language/en";
  const auto bare = Language::load(WithWeights("word:blue\t0\t0\t0\t0\t0\t0\t0\t0\n"), english);
  REQUIRE_FALSE(bare.ok());
  CHECK(to_string(bare.error()).find("trait-weights.tsv:1:1:") != std::string::npos);
  std::string lines = std::string(kHeader) + "word:blue\t0\t0\t0\t0\t0\t0\t0\t1\n";
  for (std::size_t i = 0; (i = lines.find('\n', i)) != std::string::npos; i += 2) lines.insert(i, "\r");
  CHECK(Language::load(WithWeights(lines), english).ok());
  // "gray" and "grey" are one word.
  CHECK_FALSE(load("word:gray\t0\t0\t0\t0\t0\t0\t0\t1\nword:grey\t0\t0\t0\t0\t0\t0\t0\t1\n").ok());
}

namespace {

/// The last claim of what is said of a vat, read with weights that find attributes where there is a "foot".
std::string last_of_vat(const std::string& words) {
  static const auto language = load(
      "always\t-900\t-900\t-900\t-900\t-900\t-400\t-900\t-900\n"
      "word:foot\t0\t0\t0\t0\t0\t900\t0\t0\n");
  REQUIRE(language.ok());
  const Lines lines = claims_of(*language, "There was the vat in the loft. " + words);
  return lines.empty() ? std::string() : lines.back();
}

}  // namespace

TEST_CASE(
    "a size that is not exact hedges the attribute that says nothing else; words beyond the clause count "
    "too") {
  struct Row {
    const char* words;
    const char* expected;
  };
  const Row rows[] = {
      {"The vat was about twelve foot long.", "unstated hedged affirmed"},
      {"It was about, oh, twelve foot, the vat.", "unstated hedged affirmed"},
      {"The vat was ten, twelve foot long.", "unstated hedged affirmed"},
      {"The vat was twelve foot long.", "unstated firm affirmed"},
      {"The vat was twelve foot long, they told me.", "told firm affirmed"},
      {"It was twelve foot long, the vat, and he never said a word.", "unstated firm affirmed"}};
  for (const Row& row : rows) {
    CAPTURE(row.words);
    CHECK(last_of_vat(row.words).starts_with("attribute vat"));
    CHECK(last_of_vat(row.words).ends_with(row.expected));
  }
}

TEST_CASE("what the weights find has the words it was said in, with their denial") {
  CHECK(last_of_vat("The vat was twelve foot long.").find("{as told: twelve foot long}") !=
        std::string::npos);
  CHECK(last_of_vat("The vat wasn't twelve foot long.").find("{as told: wasn't twelve foot long}") !=
        std::string::npos);
  CHECK(last_of_vat("The vat wasn't twelve foot long.").ends_with("firm affirmed"));
}
