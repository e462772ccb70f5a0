#include "witnessmark/app/withholding.h"

#include <doctest/doctest.h>

#include <set>

#include "app/taking_in/passages.h"
#include "whole_job.h"
#include "witnessmark/app/bounds.h"
#include "witnessmark/app/claim_records.h"
#include "witnessmark/app/configuration.h"
#include "witnessmark/app/contradictions.h"
#include "witnessmark/app/export_claims.h"
#include "witnessmark/app/journal_listing.h"
#include "witnessmark/app/journal_words.h"
#include "witnessmark/app/said_about.h"
#include "witnessmark/app/weigh.h"
#include "witnessmark/base/csv.h"
#include "witnessmark/store/claims.h"
#include "witnessmark/store/evidence.h"
#include "witnessmark/store/restricted_passages.h"
#include "witnessmark/store/transcripts.h"
#include "witnessmark/write/claims_json.h"

using namespace witnessmark;

namespace {

/// Everything the program would print or hand on about a site on a day.
std::string all_output(const SiteFile& site, const Surroundings& around) {
  std::string text;
  const auto write = [&](std::string_view piece) { text += piece; };
  for (const ExportFormat format : {ExportFormat::csv, ExportFormat::jsonl})
    REQUIRE(export_claims(site, {format, FormulaGuard::raw, false}, write, around));
  const auto add = [&](const std::vector<ClaimRecord>& records) {
    for (const ClaimRecord& record : records) text += claim_json(record) + "\n";
  };
  const auto account = weighing_account(site, around).value();
  Withholding withholding(site, around.today);
  for (const auto* claims : {&account.conflicts, &account.agreements, &account.silent})
    REQUIRE(for_each_record_of(site, *claims, around, withholding,
                               [&](const ClaimRecord& record) { text += claim_json(record) + "\n"; }));
  const auto add_lines = [&](const StatementLines& lines) {
    for (const auto& [key, line] : lines)
      text += line.by + ": " + line.says + " " + line.quote + " " + line.telling + "\n";
  };
  add_lines(bounds_account(site, "", 10'000, around).value().statements);
  add_lines(contradiction_account(site, "", 10'000, around).value().statements);
  add_lines(configuration(site, parse_edtf("1938/1988").value(), "", around).value().statements);
  const AuthorityLists lists = load_lists(site);
  for (const AuthorityList* list : {&lists.places, &lists.equipment}) {
    for (const Term& term : list->terms()) {
      const auto said = said_about(site, term.key, TellingOrder::telling, around).value();
      add(said.reviewed);
      add(said.proposed);
      for (const UnreadPassage& passage : said.unread) text += passage.narrator + ": " + passage.text + "\n";
    }
  }
  list_journal(site, "", around.today, [&](const ListedEvent& listed) {
    text +=
        event_words(listed.event) + " " + listed.event.before + listed.event.after + listed.event.why + "\n";
  });
  return text;
}

struct Secret {
  std::string interview, words;
};
std::vector<Secret> secrets() {
  const auto path = source_tree() / "corpus-demo" / "expected" / "withheld.csv";
  const CsvFile file = parse_csv(SystemFileReader().read(path).value(), path.string()).value();
  std::vector<Secret> found;
  for (std::size_t row = 1; row < file.rows.size(); ++row)
    found.push_back({file.rows[row].cells.at(0).text, file.rows[row].cells.at(1).text});
  return found;
}

}  // namespace

TEST_CASE("no output holds a closed, restricted or unreleased passage, and what was withheld is counted") {
  const SystemFileReader files;
  const auto folder = source_tree() / "corpus-demo";
  const SiteFile site = whole_job(files, folder, to_day({2026, 1, 15}));
  const std::string today = all_output(site, surroundings_of(files, to_day({2026, 1, 15})));
  REQUIRE(today.size() > 10'000);
  for (const Secret& secret : secrets()) {
    CAPTURE(secret.words);
    CHECK(today.find(secret.words) == std::string::npos);
  }
  Withholding withholding(site, to_day({2026, 1, 15}));
  for (const StoredClaim& stored : load_claims(site)) withholding.may_show(stored.claim.interview, stored.claim.quotes);
  CHECK(withholding.total() > 0);
  CHECK(withholding.account().starts_with("withheld: "));
  // A name under a pseudonym is in nobody's words and in no key.
  CHECK(today.find("Greel") == std::string::npos);
  CHECK(today.find("greel") == std::string::npos);
}

TEST_CASE("what a site file withholds is counted where no claim is in it, too") {
  const SystemFileReader files;
  SiteFile site = whole_job(files, source_tree() / "tests/golden/small-site/input", to_day({2026, 1, 15}));
  const Day today = to_day({2026, 1, 15});
  Withholding unasked(site, today);
  CHECK(unasked.account() == "withheld: no claim; 1 interview (no release 1)");
  CHECK(unasked.account("event") == "withheld: no event; 1 interview (no release 1)");
  RestrictedPassage passage;
  passage.interview = "lind-1";
  passage.quote = "I saw it done.";
  const std::string text = load_reading_text(site, "lind-1").value();
  const auto at = static_cast<std::int64_t>(text.find(passage.quote));
  passage.range = {{at}, {at + static_cast<std::int64_t>(passage.quote.size())}};
  passage.conditions.access = Access::closed;
  passage.conditions.closed_until = parse_edtf("2040").value();
  REQUIRE(mark_passage(site, passage, "about a man still living"));
  Withholding withholding(site, today);
  for (const StoredClaim& stored : load_claims(site))
    withholding.may_show(stored.claim.interview, stored.claim.quotes);
  CHECK(withholding.account() ==
        "withheld: 2 claims (no release 2); 1 interview (no release 1), 1 passage (closed 1)");
  CHECK(withholding.withheld_in_file("lind-1") == "1 passage (closed 1)");
  CHECK(withholding.withheld_in_file("berg-1") == "1 interview (no release 1)");
  const Surroundings around = surroundings_of(files, today);
  CHECK(weighing_account(site, around).value().withheld.ends_with("1 passage (closed 1)"));
  CHECK(said_about(site, "crane", TellingOrder::event, around)
            .value()
            .withheld.ends_with("1 passage (closed 1)"));
  // Opened by a coder, and when the closure is past, nothing of it is withheld.
  withholding.open("berg-1");
  CHECK(withholding.withheld_in_file() == "1 passage (closed 1)");
  CHECK(Withholding(site, to_day({2041, 1, 1})).withheld_in_file() == "1 interview (no release 1)");
}

TEST_CASE("when closure and event are past an interview goes out, under the name the release allows") {
  const auto folder = source_tree() / "corpus-demo";
  const SystemFileReader plain;
  const SiteFile before = whole_job(plain, folder, to_day({2026, 1, 15}));
  const std::string steam = "steam windlass came off in the autumn of nineteen sixty-two";
  CHECK(all_output(before, surroundings_of(plain, to_day({2041, 1, 1}))).find(steam) == std::string::npos);   // the event binds

  const MemoryFiles files = files_of(folder, [](const std::string&, std::string text) {
    const std::string event = ",death of the narrator's sister,";
    if (const auto at = text.find(event); at != std::string::npos) text.replace(at, event.size(), ",,");
    return text;
  });
  const SiteFile site = whole_job(files, folder, to_day({2026, 1, 15}));
  CHECK(all_output(site, surroundings_of(files, to_day({2040, 12, 31}))).find(steam) == std::string::npos);
  const std::string later = all_output(site, surroundings_of(files, to_day({2041, 1, 1})));
  CHECK(later.find(steam) != std::string::npos);
  CHECK(later.find("\"narrator\":\"Engineer A\"") != std::string::npos);
  CHECK(later.find("\"narrator\":\"Amos Greel\"") == std::string::npos);
  CHECK(later.find("The fog bell was on the forecastle in nineteen seventy-two") == std::string::npos);   // no release
}

TEST_CASE("a passage is found by its first and last words, white space as it falls") {
  const std::string text = "We sailed.\nHe told me  a thing\nI shall not say. Then we ate.";
  const auto range = find_passage(text, "He told me a thing … not say.");
  REQUIRE(range.size() == 1);
  CHECK(text.substr(range[0].begin.value, range[0].length()) == "He told me  a thing\nI shall not say.");
  CHECK(find_passage(text, "He told her").empty());
  CHECK(find_passage(text, " … ").empty());
  CHECK(find_passage(text, "Then we ate. … We sailed.").empty());
}

TEST_CASE("a passage whose words can mean several places is given with the first and the last") {
  const std::string text = "He took it. We ate. He took it. He was my mate. The end was bad. We ate.";
  const auto words = [&](std::string_view quote) {
    std::vector<std::string> found;
    for (const CodePointRange& range : find_passage(text, quote))
      found.push_back(text.substr(range.begin.value, range.length()));
    return found;
  };
  using Words = std::vector<std::string>;
  CHECK(words("He took it.") == Words{"He took it.", "He took it."});
  CHECK(words("He took it. He was") == Words{"He took it. He was"});
  CHECK(words("He took it. … my mate.").size() == 2);        // begins here or there
  CHECK(words("He was … We ate.") == Words{"He was my mate. The end was bad. We ate."});   // the other stands before
  CHECK(words("it. We … We ate.") == Words{"it. We ate. He took it. He was my mate. The end was bad. We ate."});
  CHECK(words("We ate. … took").size() == 1);
  CHECK(words("My mate … bad").empty());
  // What lies between may stand at several places: the passage is the same.
  CHECK(words("it. We … it … bad.") == Words{"it. We ate. He took it. He was my mate. The end was bad."});
}

TEST_CASE("bounds and contradictions rest on no withheld claim and on no entry of withheld testimony") {
  const SystemFileReader files;
  const SiteFile site = whole_job(files, source_tree() / "corpus-demo", to_day({2026, 1, 15}));
  const Surroundings around = surroundings_of(files, to_day({2026, 1, 15}));
  const auto bounds = bounds_account(site, "", 10'000, around).value();
  const auto contradictions = contradiction_account(site, "", 10'000, around).value();
  std::set<std::string> claims;
  for (const ShownBounds& one : bounds.fixtures)
    for (const ClaimEffect& effect : one.bounds.claims) claims.insert(effect.claim.key);
  for (const ShownDispute& one : contradictions.preview)
    for (const StatementKey& key : one.dispute.statements)
      if (key.kind == StatementKey::Kind::claim) claims.insert(key.key);
  REQUIRE(claims.size() > 50);
  const Withholding withholding(site, around.today);
  for (const std::string& key : claims) {
    const auto stored = find_claim(site, parse_id(key).value());
    REQUIRE(stored);
    CHECK(withholding.reason(stored->claim.interview, stored->claim.quotes) == Withheld::none);
  }
  CHECK(bounds.withheld.starts_with("withheld: "));
}
