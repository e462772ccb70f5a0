#include "witnessmark/read/conclusion_files.h"

#include <doctest/doctest.h>

#include "memory_files.h"
#include "witnessmark/read/register_files.h"

using namespace witnessmark;

namespace {

AuthorityLists lamp_list() {
  Term lamp;
  lamp.key = "lamp";
  lamp.name = "Great lamp";
  return {AuthorityList(AuthorityList::Kind::places, {}),
          AuthorityList(AuthorityList::Kind::equipment, {lamp})};
}

ConclusionFilesReading read_conclusions(std::map<std::string, std::string> files) {
  const AuthorityLists both = lamp_list();
  return read_conclusion_files(MemoryFiles(std::move(files)), both,
                               {.conclusions = "in/conclusions.csv", .enquiries = {}, .searches = {}});
}

const std::string kHeader = "conclusion,wording,reasons,author,date,subject,evidence,replaces\n";

/// Without what is to be looked for in the site file.
template <typename Reading>
std::string wrong(Reading reading) {
  reading.unresolved.clear();
  return faults(reading);
}

std::string letter_figure_faults(const std::string& kind, const std::string& noted) {
  const auto reading = read_register_files(
      MemoryFiles({{"in/entries.csv",
                    "entry,source,statement,subject,letter_figure\ne1,s,begins,lamp," + noted + "\n"},
                   {"in/sources.csv", "source,kind,title\ns," + kind + ",S\n"}}),
      "in/entries.csv", nullptr);
  return wrong(reading);
}

}  // namespace

TEST_CASE("conclusions, enquiries and searches are read, terms by name, and what they rest on is asked for") {
  const auto reading = read_conclusions(
      {{"in/conclusions.csv", kHeader + "c1,Gone by 1962,Said so,H. Quill,1995,Great lamp,e1|wt-1,\n"
                                        "c2,Gone in 1963,A log,H. Quill,2005,lamp,,c1\n"},
       {"in/enquiries.csv",
        "enquiry,question,answer,sent_to,date,conclusions\nq1,When?,By 1962,A reader,1996-02,c1\n"},
       {"in/searches.csv", "search,source,subject,found,author,when\ns1,log,lamp,nothing,T. Lorne,1962\n"}});
  CHECK(wrong(reading) == "");
  REQUIRE(reading.file.conclusions.size() == 2);
  CHECK(reading.file.conclusions[0].subject == "lamp");
  CHECK(reading.file.conclusions[1].replaces == std::vector<std::string>{"c1"});
  CHECK(reading.file.enquiries.at(0).sent_to == "A reader");
  CHECK(reading.file.searches.at(0).found == Search::Found::nothing);
  std::string asked;
  for (const UnresolvedKey& key : reading.unresolved) asked += key.key + " ";
  CHECK(asked == "e1 wt-1 log ");
}

TEST_CASE("a conclusion that replaces itself, and a search for nothing in particular, are refused") {
  CHECK(wrong(read_conclusions({{"in/conclusions.csv", kHeader + "c1,W,R,A,1995,,,c1\n"}}))
            .find("names the conclusion itself") != std::string::npos);
  CHECK(
      wrong(read_conclusions({{"in/conclusions.csv", kHeader},
                              {"in/searches.csv", "search,source,found,author\ns1,log,nothing,T. Lorne\n"}}))
          .find("say what was looked for, or where") != std::string::npos);
}

TEST_CASE("the letter-figure scale may stand on an entry; no letter stands on testimony") {
  CHECK(letter_figure_faults("log", "B2") == "");
  CHECK(letter_figure_faults("testimony", "2") == "");
  CHECK(letter_figure_faults("testimony", "B2").find("no person is graded") != std::string::npos);
  CHECK(letter_figure_faults("log", "good").find("is not of the letter-figure scale") != std::string::npos);
}
