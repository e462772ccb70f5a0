// Sentences with the readings a careful historian expects, as tables/README.md describes. The share of rows
// that pass is printed with every row that does not; the floor is raised as the reader improves, and no row
// is treated specially.
#include "language/claims_table.h"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <cstdio>
#include <fstream>
#include <map>
#include <set>
#include <sstream>

#include "witnessmark/base/code_point_index.h"

namespace witnessmark::testing {

ClaimTable read_claim_table(const std::string& path) {
  ClaimTable table;
  std::ifstream in(path);
  REQUIRE_MESSAGE(in.good(), path);
  const auto split = [](const std::string& line, char by) {
    std::vector<std::string> parts;
    std::string part;
    std::istringstream stream(line);
    while (std::getline(stream, part, by)) parts.push_back(part);
    return parts;
  };
  std::string line;
  int number = 0;
  bool header = true;
  while (std::getline(in, line)) {
    ++number;
    if (line.rfind("#! equipment: ", 0) == 0) table.equipment = split(line.substr(14), '|');
    if (line.rfind("#! place: ", 0) == 0) table.places = split(line.substr(10), '|');
    if (line.empty() || line[0] == '#') continue;
    if (header) {
      header = false;
      continue;
    }
    std::vector<std::string> cells = split(line, '\t');
    cells.resize(11);
    table.rows.push_back({number, cells[0], cells[1], cells[2], cells[3], cells[4], cells[5], cells[6],
                          cells[7], cells[8], cells[9], cells[10]});
  }
  return table;
}

const Language& english() {
  static const Language language = [] {
    auto loaded = Language::load(SystemFileReader(), WITNESSMARK_SOURCE_DIR "/shared/language/en");
    REQUIRE_MESSAGE(loaded.ok(), (loaded.ok() ? "" : to_string(loaded.error())));
    return std::move(loaded).value();
  }();
  return language;
}

AuthorityList list_of_names(AuthorityList::Kind kind, const std::vector<std::string>& names) {
  std::vector<Term> terms;
  for (const std::string& name : names) {
    Term term;
    term.key = term.name = name;
    terms.push_back(term);
  }
  return AuthorityList(kind, terms);
}

Transcript transcript_of(const std::string& text) {
  Transcript transcript;
  const auto add = [&](const std::string& label, const std::string& words) {
    if (!transcript.reading_text.empty()) transcript.reading_text += "\n";
    const std::int64_t begin = CodePointIndex(transcript.reading_text).size().value;
    transcript.reading_text += words;
    const std::int64_t end = CodePointIndex(transcript.reading_text).size().value;
    transcript.utterances.push_back({label, {{begin}, {end}}, std::nullopt, Timing::none});
  };
  const std::size_t bar = text.find(" | A: ");
  if (text.rfind("Q: ", 0) == 0 && bar != std::string::npos) {
    add("Q", text.substr(3, bar - 3));
    add("A", text.substr(bar + 6));
  } else {
    add("A", text);
  }
  return transcript;
}

std::string in_short(const std::vector<Claim>& claims) {
  std::string line;
  for (const Claim& claim : claims) {
    if (!line.empty()) line += "; ";
    line += std::string(to_string(claim.statement)) + " " + claim.subject;
    if (!claim.place.empty()) line += "@" + claim.place;
    if (claim.when.dated.value) line += " " + to_string(claim.when.dated);
    if (claim.quantity) {
      line += " n=" + std::to_string(claim.quantity->least);
      if (claim.quantity->most != claim.quantity->least) line += ".." + std::to_string(claim.quantity->most);
    }
    if (!claim.attribute.empty()) line += " {" + claim.attribute + "}";
    if (claim.basis != Basis::unstated) line += " " + std::string(to_string(claim.basis));
    if (claim.firmness != Firmness::firm) line += " " + std::string(to_string(claim.firmness));
    if (claim.polarity == Polarity::denied) line += " denied";
    if (claim.led) line += " led";
    if (claim.withdrawn) line += " withdrawn";
  }
  return line;
}

std::vector<Claim> claims_of(const std::string& text, const ClaimTable& lists) {
  const Language& language = english();
  const TermFinder places(list_of_names(AuthorityList::Kind::places, lists.places), language);
  const TermFinder equipment(list_of_names(AuthorityList::Kind::equipment, lists.equipment), language);
  Interview interview;
  interview.key = "i";
  interview.narrators = {"n"};
  interview.date.value = parse_edtf("1995-06-01").value();
  std::vector<std::vector<std::string>> locations;
  for (const std::string& place : lists.places) {
    if (place[0] >= 'A' && place[0] <= 'Z') locations.push_back({place});
  }
  ReadingContext context;
  context.language = &language;
  context.places = &places;
  context.equipment = &equipment;
  context.interview = &interview;
  context.locations = locations;
  context.by_weights = false;  // The tables show what rules read; a sentence alone is no talk to weigh.
  const Transcript transcript = transcript_of(text);
  return propose_claims(context, transcript, split_sentences(transcript, language.abbreviations()));
}

std::string claims_line(const std::string& text, const ClaimTable& lists) {
  return in_short(claims_of(text, lists));
}

}  // namespace witnessmark::testing

using namespace witnessmark;
using namespace witnessmark::testing;

namespace {

/// Rows that must pass, of 1000.
constexpr int kFloor = 925;

std::string key_of(const std::string& name, const AuthorityList& list) {
  if (name.empty()) return {};
  const TermFinder finder(list, english());
  const auto found = finder.find(name);
  return found.empty() ? name : list.terms()[found[0].terms[0]].key;
}

struct Expected {
  std::string subject, place;
};

std::vector<std::string> differences(const Claim& claim, const ClaimRow& row, const Expected& expected) {
  std::vector<std::string> found;
  const auto check = [&](bool same, const std::string& what) {
    if (!same) found.push_back(what);
  };
  check(claim.subject == expected.subject, "subject");
  check(claim.place == expected.place, "place");
  check(to_string(claim.statement) == row.statement, "statement");
  const std::string number =
      claim.quantity ? (claim.quantity->written.empty()
                            ? ""
                            : fmt::format("{}", (claim.quantity->least + claim.quantity->most) / 2))
                     : "";
  if (!row.number.empty() || claim.statement == Statement::count)
    check(number == row.number, "number " + number);
  check(to_string(claim.when.dated) == (row.when.empty() ? "-" : row.when),
        "when " + to_string(claim.when.dated));
  check(to_string(claim.basis) == row.basis, "basis " + std::string(to_string(claim.basis)));
  check(to_string(claim.firmness) == row.firmness, "firmness " + std::string(to_string(claim.firmness)));
  check(to_string(claim.polarity) == row.polarity, "polarity " + std::string(to_string(claim.polarity)));
  check(claim.led == (row.led == "yes"), "led");
  return found;
}

}  // namespace

TEST_CASE("sentences give the claims a careful historian expects") {
  const ClaimTable table = read_claim_table(WITNESSMARK_SOURCE_DIR "/tests/language/tables/claims.tsv");
  REQUIRE(table.rows.size() > 150);
  const AuthorityList equipment = list_of_names(AuthorityList::Kind::equipment, table.equipment);
  const AuthorityList places = list_of_names(AuthorityList::Kind::places, table.places);
  std::map<std::string, std::vector<Claim>> claims;
  std::map<std::string, std::set<std::size_t>> matched;
  int passed = 0;
  for (const ClaimRow& row : table.rows) {
    if (!claims.contains(row.text)) {
      std::vector<Claim> made = claims_of(row.text, table);
      std::erase_if(made, [](const Claim& claim) { return claim.withdrawn; });
      claims[row.text] = made;
    }
    const std::vector<Claim>& made = claims[row.text];
    const Expected expected{key_of(row.subject, equipment), key_of(row.place, places)};
    std::string report;
    if (row.statement == "none") {
      for (const Claim& claim : made) {
        const bool same =
            expected.subject.empty() ? claim.subject.empty() : claim.subject == expected.subject;
        if (same) report = "no claim wanted: " + dump(claim);
      }
    } else {
      std::size_t fewest = 99;
      report = "nothing proposed";
      for (std::size_t i = 0; i < made.size(); ++i) {
        const auto different = differences(made[i], row, expected);
        if (different.size() >= fewest) continue;
        fewest = different.size();
        report = different.empty() ? "" : fmt::format("{}: {}", dump(made[i]), fmt::join(different, ", "));
        if (different.empty()) matched[row.text].insert(i);
      }
    }
    if (report.empty()) {
      ++passed;
    } else {
      std::printf("  line %d: %s\n    wants %s %s@%s %s n=%s %s %s %s %s; %s\n", row.line, row.text.c_str(),
                  row.statement.c_str(), row.subject.c_str(), row.place.c_str(), row.when.c_str(),
                  row.number.c_str(), row.basis.c_str(), row.firmness.c_str(), row.polarity.c_str(),
                  row.led.c_str(), report.c_str());
    }
  }
  int extra = 0;
  for (const auto& [text, made] : claims) {
    for (std::size_t i = 0; i < made.size(); ++i) {
      const bool wanted = matched[text].contains(i);
      extra += !wanted;
    }
  }
  const int share = passed * 1000 / static_cast<int>(table.rows.size());
  std::printf("claims table: %d of %zu rows as expected (%d.%d %%), %d claims match no row\n", passed,
              table.rows.size(), share / 10, share % 10, extra);
  CHECK(share >= kFloor);
}
