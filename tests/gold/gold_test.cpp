// Claims proposed for the interviews that were coded by hand, paired one to one with the coding. Prints
// precision, recall and F1 of claims and how often each attribute of the paired ones is as coded. For the
// interview meant for tuning, WITNESSMARK_GOLD_DETAIL=1 lists what was missed and what was proposed besides;
// of the held-out ones only figures are ever printed.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <map>
#include <set>
#include <sstream>

#include "corpus.h"
#include "scoring.h"
#include "witnessmark/base/code_point_index.h"
#include "witnessmark/language/claims.h"
#include "witnessmark/read/list_files.h"
#include "witnessmark/read/transcript_reader.h"

using namespace witnessmark;
using namespace witnessmark::gold;

namespace {

const std::string kDemo = WITNESSMARK_SOURCE_DIR "/corpus-demo/";
const std::string kStation = WITNESSMARK_SOURCE_DIR "/tests/gold/station/";
const std::string kQuarry = WITNESSMARK_SOURCE_DIR "/tests/gold/quarry/";
const std::string kFerry = WITNESSMARK_SOURCE_DIR "/tests/gold/ferry/";
const std::string kFourth = WITNESSMARK_SOURCE_DIR "/tests/gold/fourth-site/";

struct Reading {
  Transcript transcript;
  std::vector<Claim> claims;
  std::vector<Mention> mentions;
};

Reading read_interview(const Corpus& corpus, const Language& language, const std::string& key) {
  Reading reading;
  with_interview(
      corpus, language, key,
      [&](const ReadingContext& context, Transcript transcript, const std::vector<Sentence>& sentences) {
        Proposals proposals = read_claims(context, transcript, sentences);
        reading.transcript = std::move(transcript);
        reading.claims = std::move(proposals.claims);
        reading.mentions = std::move(proposals.mentions);
      });
  // What was taken back in the same breath is not what was said.
  std::erase_if(reading.claims, [](const Claim& claim) { return claim.withdrawn; });
  return reading;
}

struct Tally {
  std::size_t proposed = 0, coded = 0, paired = 0;
  std::size_t dated = 0, dates_right = 0, places = 0, places_right = 0;
  std::size_t undated = 0, dates_added = 0;
  std::size_t dates_missing = 0, dates_apart = 0;  ///< Of the wrong ones: none given; not even overlapping.
  std::vector<std::pair<std::string, std::string>> basis, firmness, polarity;

  double precision() const {
    return proposed ? static_cast<double>(paired) / static_cast<double>(proposed) : 0;
  }
  double recall() const { return coded ? static_cast<double>(paired) / static_cast<double>(coded) : 0; }
  double f1() const {
    return proposed + coded ? 2.0 * static_cast<double>(paired) / static_cast<double>(proposed + coded) : 0;
  }
  void add(const Tally& other) {
    proposed += other.proposed;
    coded += other.coded;
    paired += other.paired;
    dated += other.dated;
    dates_right += other.dates_right;
    undated += other.undated;
    dates_missing += other.dates_missing;
    dates_apart += other.dates_apart;
    dates_added += other.dates_added;
    places += other.places;
    places_right += other.places_right;
    basis.insert(basis.end(), other.basis.begin(), other.basis.end());
    firmness.insert(firmness.end(), other.firmness.begin(), other.firmness.end());
    polarity.insert(polarity.end(), other.polarity.begin(), other.polarity.end());
  }
};

/// Whether the two cannot mean the same day.
bool apart(const Edtf& ours, const std::string& theirs) {
  const auto parsed = parse_edtf(theirs);
  if (!parsed) return false;
  const DatePolicy policy;
  const Period a = to_period(ours, policy), b = to_period(*parsed, policy);
  const auto before = [](const Period& first, const Period& then) {
    return first.past_latest() && then.earliest() && *first.past_latest() <= *then.earliest();
  };
  return before(a, b) || before(b, a);
}

Tally score(const std::vector<Claim>& claims, const std::vector<CodedClaim>& coded,
            const std::vector<std::pair<std::size_t, std::size_t>>& pairs) {
  Tally tally;
  tally.proposed = claims.size();
  tally.coded = coded.size();
  tally.paired = pairs.size();
  for (const auto& [p, c] : pairs) {
    const Claim& ours = claims[p];
    const CodedClaim& theirs = coded[c];
    if (!theirs.when.empty()) {
      ++tally.dated;
      const bool right = to_string(ours.when.dated) == theirs.when;
      tally.dates_right += right;
      tally.dates_missing += !right && !ours.when.dated.value;
      tally.dates_apart += !right && ours.when.dated.value && apart(*ours.when.dated.value, theirs.when);
    } else {
      ++tally.undated;
      tally.dates_added += ours.when.dated.value.has_value();
    }
    if (ours.statement != Statement::located) {
      ++tally.places;
      tally.places_right += ours.place == theirs.place;
    }
    tally.basis.emplace_back(to_string(ours.basis), theirs.basis);
    tally.firmness.emplace_back(to_string(ours.firmness), theirs.firmness);
    tally.polarity.emplace_back(to_string(ours.polarity), theirs.polarity);
  }
  return tally;
}

void print(const std::string& name, const Tally& tally) {
  const auto share = [](std::size_t part, std::size_t whole) {
    return whole ? static_cast<double>(part) / static_cast<double>(whole) : 0.0;
  };
  std::printf("%-9s claims %zu coded %zu paired %zu: precision %.3f recall %.3f F1 %.3f\n", name.c_str(),
              tally.proposed, tally.coded, tally.paired, tally.precision(), tally.recall(), tally.f1());
  std::printf(
      "          date %.3f (of %zu dated; %zu not dated, %zu apart; %zu of %zu undated given one) place "
      "%.3f; macro-F1 basis %.3f (commonest %.3f) firmness %.3f "
      "(%.3f) "
      "polarity %.3f (%.3f)\n",
      share(tally.dates_right, tally.dated), tally.dated, tally.dates_missing, tally.dates_apart,
      tally.dates_added, tally.undated, share(tally.places_right, tally.places), macro_f1(tally.basis),
      macro_f1_of_commonest(tally.basis), macro_f1(tally.firmness), macro_f1_of_commonest(tally.firmness),
      macro_f1(tally.polarity), macro_f1_of_commonest(tally.polarity));
}

/// Proposed, coded and paired claims by statement.
void print_statements(const std::vector<Claim>& claims, const std::vector<CodedClaim>& coded,
                      const std::vector<std::pair<std::size_t, std::size_t>>& pairs) {
  std::map<std::string, std::array<int, 3>> counts;
  for (const Claim& claim : claims) ++counts[std::string(to_string(claim.statement))][0];
  for (const CodedClaim& claim : coded) ++counts[claim.statement][1];
  for (const auto& pair : pairs) ++counts[coded[pair.second].statement][2];
  std::printf("          proposed/coded/paired:");
  for (const auto& [statement, n] : counts) std::printf(" %s %d/%d/%d", statement.c_str(), n[0], n[1], n[2]);
  std::printf("\n");
}

/// Why a coded claim has no partner: the nearest that was proposed over its words.
const char* why_missed(const CodedClaim& coded, const std::vector<Claim>& claims) {
  const auto any = [&](const auto& fits) { return std::any_of(claims.begin(), claims.end(), fits); };
  const auto same_subject = [&](const Claim& c) {
    return c.statement == Statement::located ||
           (c.subject == coded.subject && (!c.subject.empty() || c.place == coded.place));
  };
  const auto same_statement = [&](const Claim& c) { return to_string(c.statement) == coded.statement; };
  const auto over = [&](const Claim& c) { return c.quotes.front().shared_with(coded.quote); };
  if (any([&](const Claim& c) { return over(c) >= 0.5 && same_statement(c) && same_subject(c); }))
    return "paired otherwise";
  if (any([&](const Claim& c) { return over(c) > 0 && same_statement(c) && same_subject(c); }))
    return "quote";
  if (any([&](const Claim& c) { return over(c) >= 0.5 && same_subject(c); })) return "statement";
  if (any([&](const Claim& c) { return over(c) >= 0.5 && same_statement(c); })) return "subject";
  if (any([&](const Claim& c) { return over(c) > 0; })) return "other claims";
  return "nothing";
}

/// Whether the words of a coded claim name its subject.
const char* naming(const CodedClaim& coded, const std::vector<Mention>& mentions) {
  if (coded.statement == "located") return "located";
  if (coded.subject.empty()) return "of no list";
  for (const Mention& mention : mentions) {
    if (mention.kind == MentionKind::equipment && mention.value == coded.subject &&
        coded.quote.begin <= mention.range.begin && mention.range.end <= coded.quote.end) {
      return "named";
    }
  }
  return "carried";
}

/// Totals of the causes, by statement.
void print_misses(const Reading& reading, const std::vector<CodedClaim>& coded,
                  const std::vector<std::pair<std::size_t, std::size_t>>& pairs) {
  const std::vector<Claim>& claims = reading.claims;
  std::map<std::string, std::array<int, 2>> named;
  for (std::size_t c = 0; c < coded.size(); ++c) ++named[naming(coded[c], reading.mentions)][0];
  for (const auto& pair : pairs) ++named[naming(coded[pair.second], reading.mentions)][1];
  std::printf("          coded/paired by how the subject is given:");
  for (const auto& [how, n] : named) std::printf(" %s %d/%d", how.c_str(), n[0], n[1]);
  std::printf("\n");
  std::set<std::size_t> found;
  for (const auto& pair : pairs) found.insert(pair.second);
  std::map<std::string, std::map<std::string, int>> counts;
  for (std::size_t c = 0; c < coded.size(); ++c) {
    if (!found.contains(c)) ++counts[why_missed(coded[c], claims)][coded[c].statement];
  }
  for (const auto& [why, statements] : counts) {
    int sum = 0;
    std::string list;
    for (const auto& [statement, n] : statements) {
      sum += n;
      list += fmt::format(" {} {}", statement, n);
    }
    std::printf("          missed, %s: %d (%s )\n", why.c_str(), sum, list.c_str());
  }
}

void print_detail(const Reading& reading, const std::vector<CodedClaim>& coded,
                  const std::vector<std::pair<std::size_t, std::size_t>>& pairs) {
  const CodePointIndex index(reading.transcript.reading_text);
  std::set<std::size_t> ours, theirs;
  for (const auto& [p, c] : pairs) {
    ours.insert(p);
    theirs.insert(c);
    const Claim& claim = reading.claims[p];
    const CodedClaim& code = coded[c];
    std::string different;
    if (to_string(claim.when.dated) != (code.when.empty() ? "-" : code.when))
      different += " when " + code.when;
    if (claim.place != code.place && claim.statement != Statement::located)
      different += " place " + code.place;
    if (to_string(claim.basis) != code.basis) different += " " + code.basis;
    if (to_string(claim.polarity) != code.polarity) different += " " + code.polarity;
    std::printf("  %s: %s | coded%s | %s | %s\n", different.empty() ? "same" : "differs", dump(claim).c_str(),
                different.c_str(), claim.reason.c_str(), code.quote_words.c_str());
  }
  for (std::size_t c = 0; c < coded.size(); ++c) {
    if (theirs.contains(c)) continue;
    std::printf("  missed (%s, %s): %s %s@%s %s | %s\n", why_missed(coded[c], reading.claims),
                naming(coded[c], reading.mentions), coded[c].statement.c_str(), coded[c].subject.c_str(),
                coded[c].place.c_str(), coded[c].when.c_str(), coded[c].quote_words.c_str());
  }
  for (std::size_t p = 0; p < reading.claims.size(); ++p) {
    if (ours.contains(p)) continue;
    std::printf("  besides: %s | %s | %s\n", dump(reading.claims[p]).c_str(),
                reading.claims[p].reason.c_str(),
                std::string(index.slice(reading.claims[p].quotes.front())).c_str());
  }
}

const Language& english() {
  static const Language language =
      std::move(Language::load(SystemFileReader(), WITNESSMARK_SOURCE_DIR "/shared/language/en")).value();
  return language;
}

struct Scored {
  Reading reading;
  std::vector<CodedClaim> coded;
  std::vector<std::pair<std::size_t, std::size_t>> pairs;
  Tally tally;
};

Scored score_interview(const Corpus& corpus, const std::string& key) {
  Scored scored;
  scored.reading = read_interview(corpus, english(), key);
  std::vector<std::string> missing;
  scored.coded = read_coded(WITNESSMARK_SOURCE_DIR "/tests/gold/" + key + ".tsv",
                            scored.reading.transcript.reading_text, missing);
  CHECK_MESSAGE(missing.empty(), key << ": quotes not in the transcript: " << missing.size());
  const CodePoint end = CodePointIndex(scored.reading.transcript.reading_text).size();
  for (const Claim& claim : scored.reading.claims) {
    // Whoever reviews it can confirm it as it stands.
    CHECK_MESSAGE(what_it_needs(claim).empty(), key << ": " << claim.reason);
    for (const Mention& mention : claim.mentions) {
      CHECK_MESSAGE((mention.range.begin < mention.range.end && mention.range.end <= end),
                    key << ": " << claim.reason);
    }
  }
  scored.pairs = pair_up(scored.reading.claims, scored.coded);
  scored.tally = score(scored.reading.claims, scored.coded, scored.pairs);
  return scored;
}

}  // namespace

TEST_CASE("claims of the interviews for tuning") {
  const Corpus demo = read_corpus(kDemo);
  const Corpus station = read_corpus(kStation);
  const Corpus quarry = read_corpus(kQuarry);
  const std::pair<const Corpus&, const char*> interviews[] = {
      {demo, "lc-2001"},    {demo, "eb-2015"},    {demo, "tc-2006"},
      {demo, "js-2012"},    {station, "np-1999"}, {station, "dv-2014"},
      {station, "hm-1989"}, {quarry, "wh-1987"},  {quarry, "rk-2011"}};
  Tally all;
  for (const auto& [corpus, key] : interviews) {
    const Scored scored = score_interview(corpus, key);
    print(key, scored.tally);
    print_statements(scored.reading.claims, scored.coded, scored.pairs);
    const char* detail = std::getenv("WITNESSMARK_GOLD_DETAIL");
    if (detail && (std::string(detail) == "1" || std::string(detail) == key)) {
      print_detail(scored.reading, scored.coded, scored.pairs);
    }
    print_misses(scored.reading, scored.coded, scored.pairs);
    all.add(scored.tally);
  }
  print("tuning", all);
  CHECK(all.coded > 920);
  CHECK(all.f1() >= 0.44);
}

TEST_CASE("claims of the held-out interviews" *
          doctest::skip(std::getenv("WITNESSMARK_GOLD_TUNING") != nullptr)) {
  const Corpus demo = read_corpus(kDemo);
  const Corpus fourth = read_corpus(kFourth);
  const Corpus ferry = read_corpus(kFerry);
  const std::pair<const Corpus&, const char*> interviews[] = {{demo, "wt-1996"},   {demo, "ko-2007"},
                                                              {fourth, "im-1997"}, {fourth, "np-2009"},
                                                              {ferry, "wi-1979"},  {ferry, "pt-2006"}};
  Tally all;
  for (const auto& [corpus, key] : interviews) {
    const Scored scored = score_interview(corpus, key);
    print(key, scored.tally);
    all.add(scored.tally);
  }
  print("held out", all);
  CHECK(all.coded > 780);
  CHECK(all.f1() >= 0.30);
}

TEST_CASE("the files of every site coded are without a fault, and every quote is found") {
  const SystemFileReader files;
  const auto in_order = [](const std::string& file, bool ok, const std::vector<Diagnostic>& said) {
    CAPTURE(file);
    std::string all;
    for (const Diagnostic& diagnostic : said) all += to_string(diagnostic) + "\n";
    INFO(all);
    CHECK(ok);
  };
  std::size_t interviews = 0;
  for (const auto& site : std::filesystem::directory_iterator(WITNESSMARK_SOURCE_DIR "/tests/gold/sites")) {
    const std::string folder = site.path().string() + "/";
    AuthorityLists lists;
    for (const auto kind : {AuthorityList::Kind::places, AuthorityList::Kind::equipment}) {
      const std::string name = kind == AuthorityList::Kind::places ? "places.csv" : "equipment.csv";
      ListReading list = read_list(files.read(folder + name).value(), folder + name, kind);
      in_order(folder + name, list.ok, list.diagnostics);
    }
    const InterviewFilesReading read = read_interview_files(files, folder + "interviews.csv");
    in_order(folder + "interviews.csv", read.ok, read.diagnostics);
    for (const Interview& interview : read.file.interviews) {
      const std::string path = folder + interview.transcript_path;
      std::vector<std::string> missing;
      const auto coded =
          read_coded(folder + interview.key + ".tsv",
                     read_transcript(files.read(path).value(), path).value().reading_text, missing);
      CAPTURE(interview.key);
      CHECK(missing.empty());
      CHECK_FALSE(coded.empty());
      ++interviews;
    }
  }
  CHECK(interviews > 250);
}

TEST_CASE("pairing takes as many pairs as possible and larger overlaps first") {
  const auto claim = [](std::int64_t begin, std::int64_t end) {
    Claim made;
    made.statement = Statement::present;
    made.subject = "crane";
    made.quotes = {{{begin}, {end}}};
    return made;
  };
  const auto coded = [](std::int64_t begin, std::int64_t end) {
    CodedClaim made;
    made.quote = {{begin}, {end}};
    made.statement = "present";
    made.subject = "crane";
    return made;
  };
  CHECK(CodePointRange{{0}, {10}}.shared_with({{5}, {15}}) == doctest::Approx(1.0 / 3));
  CHECK(CodePointRange{{0}, {10}}.shared_with({{10}, {15}}) == 0);
  // The first claim fits both codings, the second only the first coding.
  const auto pairs = pair_up({claim(0, 10), claim(0, 8)}, {coded(0, 8), coded(0, 16)});
  CHECK(pairs.size() == 2);
  CodedClaim other = coded(0, 10);
  other.subject = "winch";
  CHECK_FALSE(same_claim(claim(0, 10), other));
}

TEST_CASE("macro-averaged F1 by hand") {
  // told: right 1, proposed 2, coded 1 → 2/3; read: right 1, proposed 1, coded 2 → 2/3.
  CHECK(macro_f1({{"told", "told"}, {"told", "read"}, {"read", "read"}}) == doctest::Approx(2.0 / 3));
  // Always "read": told 0, read 2·2/(3+2) = 0.8.
  CHECK(macro_f1_of_commonest({{"told", "told"}, {"told", "read"}, {"read", "read"}}) ==
        doctest::Approx(0.4));
}
