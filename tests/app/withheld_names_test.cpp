// Names under a pseudonym in the words of those who say them.
#include "witnessmark/app/withheld_names.h"

#include <doctest/doctest.h>

#include "whole_job.h"
#include "witnessmark/app/claim_records.h"
#include "witnessmark/app/export_claims.h"
#include "witnessmark/app/journal_listing.h"
#include "witnessmark/app/journal_words.h"
#include "witnessmark/app/said_about.h"
#include "witnessmark/write/claims_json.h"

using namespace witnessmark;

namespace {

Person person(const char* key, const char* name) {
  Person made;
  made.key = key;
  made.name = name;
  return made;
}

WithheldNames names() {
  WithheldNames made;
  made.add(person("sarle", "Jory Sarle"));
  made.add(person("brien", "Capt. Meg O'Brien-Tusk"));
  made.add(person("miller", "May Miller"));
  made.add(person("vane", "P. van Vane"));
  return made;
}

}  // namespace

TEST_CASE("a name is found as people say and write it, and nothing else is taken for it") {
  struct Row {
    const char *text, *without;
  };
  for (const Row& row :
       {Row{"Mr Sarle was working it.", "Mr [name withheld] was working it."},
        Row{"Jory Sarle's lamp, and Jory’s too", "[name withheld]'s lamp, and [name withheld]’s too"},
        Row{"It was J. Sarle and P.Vane.", "It was [name withheld] and [name withheld]."},
        Row{"“Sarle,” she said, “Jory\nSarle.”", "“[name withheld],” she said, “[name withheld].”"},
        Row{"ask mr sarle or jory sarle", "ask mr [name withheld] or [name withheld]"},
        Row{"Meg O’Brien-Tusk and the O'Brien-Tusk boat", "[name withheld] and the [name withheld] boat"},
        Row{"The captain and Capt. Grail", "The captain and Capt. Grail"},
        Row{"the miller saw Miller in May", "the miller saw [name withheld] in May"},
        Row{"May Miller and Mrs May", "[name withheld] and Mrs [name withheld]"},
        Row{"sarles, Sarlet, parsarle", "sarles, Sarlet, parsarle"}, Row{"a van came", "a van came"},
        Row{"", ""}}) {
    CAPTURE(row.text);
    CHECK(names().without(row.text, {}).text == row.without);
  }
  CHECK(names().without("Mr Sarle, Jory Sarle and Sarle", {}).names == 3);
  CHECK(names().without("Sarle and Miller", {"sarle"}).text == "Sarle and [name withheld]");
  CHECK(WithheldNames().without("Sarle", {}).names == 0);
}

TEST_CASE("where a text has no capitals, and in keys and file names, any spelling of a name counts") {
  constexpr auto kAny = WithheldNames::Capitals::not_needed;
  CHECK(names().without("so sarle what did you do", {}, kAny).text == "so [name withheld] what did you do");
  CHECK(names().without("sarle-1", {}, kAny).text == "[name withheld]-1");
  CHECK(names().without("tapes/sarle_02.wav", {}, kAny).text == "tapes/[name withheld]_02.wav");
  CHECK(capitals_of("so sarle what did you do then with the lamp") == kAny);
  CHECK(capitals_of("So, Sarle, what did you do?") == WithheldNames::Capitals::needed);
  CHECK(capitals_of("") == WithheldNames::Capitals::needed);
}

TEST_CASE("a narrator under a pseudonym is named in no export, listing or journal, whoever speaks") {
  // The small site with one more narrator, whom the first one names; the keys hold the name, too.
  const auto folder = source_tree() / "tests/golden/small-site/input";
  MemoryFiles files = files_of(folder, [](const std::string& file, std::string text) {
    if (file == "lind.txt")
      text += "\n[1:30] LIND: Olav Berg painted the derrick in 1956. Mr Berg was aboard in 1957.\n";
    if (file == "releases.csv") text.replace(text.find("berg,none,"), 10, "berg,signed,pseudonym");
    return text;
  });
  const Day today = to_day({2026, 1, 15});
  const SiteFile site = whole_job(files, folder, today);
  const Surroundings around = surroundings_of(files, today);
  std::string text;
  const auto write = [&](std::string_view piece) { text += piece; };
  std::int64_t names = 0;
  for (const ExportFormat format : {ExportFormat::csv, ExportFormat::jsonl})
    names = export_claims(site, {format, FormulaGuard::raw, false}, write, around).value().names_withheld;
  CHECK(names > 0);
  for (const char* thing : {"derrick", "crane", "lamp"})
    for (const ReportLine& line :
         said_report(said_about(site, thing, TellingOrder::event, around).value()).lines)
      text += line.text + "\n";
  list_journal(site, "", today, [&](const ListedEvent& listed) {
    text += event_words(listed.event) + " " + listed.event.target + " " + listed.event.interview + " " +
            listed.event.before + listed.event.after + "\n";
  });
  CHECK(text.find("[name withheld] painted the derrick") != std::string::npos);
  CHECK(text.find("A deckhand") != std::string::npos);
  CHECK(text.find("HM.2001.1") != std::string::npos);  // in place of the key
  CHECK(text.find("Anna Lind") != std::string::npos);
  for (const char* name : {"Berg", "berg", "Olav"}) CHECK(text.find(name) == std::string::npos);
}
