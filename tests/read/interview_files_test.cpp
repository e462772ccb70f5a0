#include "witnessmark/read/interview_files.h"

#include <doctest/doctest.h>

#include <sstream>

#include "memory_files.h"

using namespace witnessmark;

namespace {

const char* kPersons =
    "person,name,pseudonym,birth,death,notes\ntusk,Nora Tusk,,1921,2009,\nhale,Ann Hale,,,,\n";

InterviewFilesReading read_interviews(const std::string& interviews,
                                      std::map<std::string, std::string> others = {}) {
  others.emplace("in/interviews.csv", interviews);
  others.emplace("in/persons.csv", kPersons);
  return read_interview_files(MemoryFiles(std::move(others)), "in/interviews.csv");
}

}  // namespace

TEST_CASE("interviews come with persons, service, speakers, releases and passages") {
  const auto reading = read_interviews(
      "interview,transcript,format,narrators,interviewers,date,session,recording_length,standing,access,"
      "closed_until,notes,weather\n"
      "01,t/"
      "01.txt,text,tusk|tusk,hale,1994-09-14~,2,0:36:40,narrator-reviewed,closed,2040,\"first\nsession\","
      "wet\n",
      {{"in/service.csv", "person,when,role\ntusk,1938-04/1960-10,Lamp trimmer\n"},
       {"in/speakers.csv", "interview,label,person,role\n01,TUSK,tusk,narrator\n01,VOICE,,other\n"},
       {"in/releases.csv", "interview;person;release;naming\n01;tusk;signed;pseudonym\n"},
       {"in/passages.csv",
        "interview,quote,access,reason\n01,\"He said … after.\",closed,About a person living\n"}});
  CHECK(faults(reading) ==
        "note: in/interviews.csv:1:117: the column \"weather\" is not known and is kept in the notes\n"
        "warning: in/releases.csv:2:16: cell D2 (naming) asks for a pseudonym, and persons.csv has none for "
        "this person (add "
        "one; until then the narrator is not named at all)\n");
  REQUIRE(reading.ok);
  REQUIRE(reading.file.interviews.size() == 1);
  const Interview& interview = reading.file.interviews[0];
  CHECK(interview.key == "01");
  CHECK(interview.narrators == std::vector<std::string>{"tusk"});
  CHECK(to_string(interview.date) == "1994-09-14~");
  CHECK(interview.session == 2);
  CHECK(interview.recording_length == Millisecond{2'200'000});
  CHECK(interview.standing == Standing::narrator_reviewed);
  CHECK(interview.access.access == Access::closed);
  CHECK(interview.access.closed_until == edtf_year(2040));
  CHECK(interview.notes == "first\nsession; weather: wet");
  REQUIRE(reading.file.persons.size() == 2);
  CHECK(reading.file.persons[0].service.size() == 1);
  CHECK(reading.file.persons[0].service[0].role == "Lamp trimmer");
  REQUIRE(reading.file.speakers.size() == 2);
  CHECK(reading.file.speakers[1].role == SpeakerRole::other);
  REQUIRE(reading.file.releases.size() == 1);
  CHECK(reading.file.releases[0].release == Release::signed_release);
  REQUIRE(reading.file.passages.size() == 1);
  CHECK(reading.file.passages[0].conditions.access == Access::closed);
  CHECK(reading.files_read.size() == 6);
}

TEST_CASE("what is left empty has the meaning the column says") {
  const auto reading = read_interviews("interview,narrators,date\n1,tusk,1994\n");
  REQUIRE(reading.ok);
  const Interview& interview = reading.file.interviews[0];
  CHECK(interview.access.access == Access::restricted);
  CHECK(interview.standing == Standing::draft);
  CHECK(interview.session == 1);
  CHECK(!interview.recording_length);
}

TEST_CASE("a faulty cell is named with file, line, column and cell") {
  struct Row {
    const char* cells;
    const char* faults;
  };
  // Columns: interview, narrators, date, session, recording_length, access, transcript
  const Row rows[] = {
      {"1,tusk,12/03/1958,,,,",
       "error: in/interviews.csv:2:8: \"12/03/1958\" in cell C2 (date) looks like a date changed by a "
       "spreadsheet (write "
       "1958-03-12 or 1958-12-03, whichever the source says; format the column as text before typing)\n"},
      {"1,tusk,3-Dec-58,,,,",
       "error: in/interviews.csv:2:8: \"3-Dec-58\" in cell C2 (date) looks like a date changed by a "
       "spreadsheet (write "
       "1958-12-03 (in the century it belongs to); format the column as text before typing)\n"},
      {"1,tusk,21522,,,,",
       "error: in/interviews.csv:2:8: \"21522\" in cell C2 (date) looks like a date changed by a spreadsheet "
       "(as a "
       "spreadsheet's day count it is 1958-12-03, or 1962-12-04 in a file that counts from 1904; write the "
       "date the source "
       "gives, as 1958-12-03; format the column as text before typing)\n"},
      {"1,tusk,1958-12-03 00:00:00,,,,",
       "error: in/interviews.csv:2:8: \"1958-12-03 00:00:00\" in cell C2 (date) looks like a date changed by "
       "a spreadsheet "
       "(write 1958-12-03; format the column as text before typing)\n"},
      {"1,tusk,,,,,",
       "error: in/interviews.csv:2:8: cell C2 (date) is empty (it must hold: When the interview was "
       "recorded)\n"},
      {"1,tusk,1958,0,,,",
       "error: in/interviews.csv:2:13: cell D2 (session) is out of range (sessions count from 1)\n"},
      {"1,tusk,1958,2.0,,,",
       "error: in/interviews.csv:2:13: \"2.0\" in cell D2 (session) is no whole number (write digits only, "
       "such as 12)\n"},
      {"1,tusk,1958,,0.0254,,",
       "error: in/interviews.csv:2:14: \"0.0254\" in cell E2 (recording_length) is no length of a recording "
       "(write h:mm:ss or "
       "m:ss, such as 0:36:40; format the column as text before typing)\n"},
      {"1,tusk,1958,,1:75,,",
       "error: in/interviews.csv:2:14: \"1:75\" in cell E2 (recording_length) is no length of a recording "
       "(write h:mm:ss or "
       "m:ss, such as 0:36:40; format the column as text before typing)\n"},
      {"1,tusk,1958,,,opn,",
       "error: in/interviews.csv:2:15: \"opn\" in cell F2 (access) is not one of open, restricted or closed "
       "(did you mean "
       "open?)\n"},
      {"1,tusk,1958,,,#REF!,",
       "error: in/interviews.csv:2:15: \"#REF!\" in cell F2 (access) is a fault the spreadsheet shows, not a "
       "value (mend the "
       "formula, or type the value)\n"},
      {"1,tusk,1958,,,,../secret.txt",
       "error: in/interviews.csv:2:16: cell G2 (transcript) leads out of the folder of this file (put the "
       "transcript beside "
       "this file or in a folder below it, and write the path with /)\n"},
      {"1,tsuk,1958,,,,",
       "unresolved: in/interviews.csv:2:3: \"tsuk\" in cell B2 (narrators) is not the key of a person (did "
       "you mean tusk?)\n"},
      {"1,tusk,1958,,,,,more",
       "error: in/interviews.csv:2:17: the row has 8 cells, the header 7 (put a cell that holds the "
       "separator in quotation "
       "marks)\n"},
      {"1,tusk,1958",
       "note: in/interviews.csv:2: the row has 3 of the header's 7 cells; the rest are taken as empty\n"},
      {"1,tusk,1958,,,,\n1,tusk,1959,,,,",
       "error: in/interviews.csv:3:1: cell A3 (interview) repeats the key \"1\" of line 2 (give each row a "
       "key of its own)\n"},
      {"\"a\nb\",tusk,1958,,,,",
       "error: in/interviews.csv:2:1: \"a b\" in cell A2 (interview) is no key (a key is a short text on one "
       "line, without "
       "|)\n"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.cells);
    const std::string text = "interview,narrators,date,session,recording_length,access,transcript\n" +
                             std::string(row.cells) + "\n";
    CHECK(faults(read_interviews(text)) == row.faults);
  }
}

TEST_CASE("the cell is the spreadsheet's, whatever line breaks cells before it hold") {
  const auto reading =
      read_interviews("interview,narrators,date,notes\n1,tusk,1994,\"one\ntwo\nthree\"\n\n2,tusk,199x,\n");
  REQUIRE(reading.diagnostics.size() == 1);
  CHECK(to_string(reading.diagnostics[0])
            .starts_with("error: in/interviews.csv:6:8: \"199x\" in cell C4 (date) is no EDTF date: "));
}

TEST_CASE("a header that will not do is told of and nothing is taken in") {
  struct Row {
    const char* text;
    const char* faults;
  };
  const Row rows[] = {
      {"interview,narators,date\n1,tusk,1994\n",
       "error: in/interviews.csv:1:11: the column \"narators\" is not known (did you mean narrators? If it "
       "is "
       "one of your own, give it a name less like it)\n"},
      {"interview,narrators\n",
       "error: in/interviews.csv:1: the column date is missing (the first line names the columns; date "
       "holds: When the interview "
       "was recorded)\n"},
      {"interview,narrators,date,Date\n",
       "error: in/interviews.csv:1:26: the column date stands twice (rename or take out one of them)\n"},
      {"interview,narrators,date,\"a\n",
       "error: in/interviews.csv:1:26: a quotation mark that opens here is never closed (close the cell with "
       "a quotation mark; "
       "one that belongs to the text is doubled)\n"},
      {"", "error: in/interviews.csv:1:1: the file holds no line (its first line must name the columns)\n"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.text);
    const auto reading = read_interviews(row.text);
    CHECK(faults(reading) == row.faults);
    CHECK(!reading.ok);
  }
}

TEST_CASE("a slip in a header is told of once, and by itself, in every file") {
  const char* interviews = "interview,narrators,date\n1,tusk,1994\n";
  struct Row {
    const char* file;
    const char* text;
    const char* column;  // where the slip stands, what stands there, what is meant
  };
  const Row rows[] = {
      {"in/interviews.csv", "interview,narrators,date,transcirpt\n1,tusk,1994,01.txt\n",
       "26 transcirpt transcript"},
      {"in/persons.csv", "person,name,brith\ntusk,Nora Tusk,1921\nhale,Ann Hale,\n", "13 brith birth"},
      {"in/persons.csv", "preson,name\ntusk,Nora Tusk\nhale,Ann Hale\n", "1 preson person"},
      {"in/service.csv", "person,when,roll\ntusk,1950,Cook\n", "13 roll role"},
      {"in/speakers.csv", "interview,label,role,persn\n1,T,narrator,tusk\n", "22 persn person"},
      {"in/releases.csv", "interview,person,release,close_until\n1,tusk,signed,2040\n",
       "26 close_until closed_until"},
      {"in/passages.csv", "interview,quote,acess\n1,He said,closed\n", "17 acess access"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.text);
    const bool main = std::string_view(row.file) == "in/interviews.csv";
    const auto reading = read_interviews(main ? row.text : interviews, {{row.file, row.text}});
    std::istringstream words(row.column);
    std::string at, typed, meant;
    words >> at >> typed >> meant;
    CHECK(faults(reading) == "error: " + std::string(row.file) + ":1:" + at + ": the column \"" + typed +
                                 "\" is not known (did you mean " + meant +
                                 "? If it is one of your own, give it a name less like it)\n");
    CHECK(!reading.ok);
  }
}

TEST_CASE("the columns of another table are told of once") {
  CHECK(
      faults(read_interviews("person,name,birth\ntusk,Nora Tusk,1921\n")) ==
      "error: in/interviews.csv:1:1: the columns are those of the table persons, not of interviews (take it "
      "in as persons; the table interviews is wanted here)\n");
}

TEST_CASE("headers may be written as people write them") {
  const auto reading = read_interviews("Interview , Narrators,DATE,Recording length\n1,tusk,1994,9:48\n");
  CHECK(faults(reading) == "");
  REQUIRE(reading.file.interviews.size() == 1);
  CHECK(reading.file.interviews[0].recording_length == Millisecond{588'000});
}

TEST_CASE("files that contradict one another are told of") {
  const char* interviews = "interview,narrators,date\n1,tusk,1994\n";
  struct Row {
    const char* file;
    const char* text;
    const char* faults;
  };
  const Row rows[] = {
      {"in/service.csv", "person,when\ntosk,1950\n",
       "error: in/service.csv:2:1: cell A2 (person) names \"tosk\", who has no row in persons.csv (add the "
       "person there, or "
       "correct the key)\n"},
      {"in/speakers.csv", "interview,label,role\n1,T,narrator\n1,T,other\n",
       "error: in/speakers.csv:3:3: cell B3 (label) gives \"T\" of this interview twice (keep one of the "
       "rows)\n"},
      {"in/speakers.csv", "interview,label,role,colour\n2,T,narrator,red\n",
       "warning: in/speakers.csv:1:22: the column \"colour\" is not known and is left out\n"
       "unresolved: in/speakers.csv:2:1: \"2\" in cell A2 (interview) is not the key of an interview (did "
       "you mean 1?)\n"},
      {"in/releases.csv", "interview,person,release\n1,tusk,none\n1,tusk,signed\n",
       "error: in/releases.csv:3:3: cell B3 (person) gives a second release of \"tusk\" for this interview "
       "(keep the row that "
       "holds now)\n"},
      {"in/releases.csv", "interview,person,release\n1,tusk,Signd\n",
       "error: in/releases.csv:2:8: \"Signd\" in cell C2 (release) is not one of none, signed or withdrawn "
       "(did you mean "
       "signed?)\n"},
      {"in/passages.csv", "interview,quote,access\n1,words,open\n",
       "error: in/passages.csv:2:9: \"open\" in cell C2 (access) is not one of restricted or closed\n"},
  };
  for (const Row& row : rows) {
    CAPTURE(row.text);
    CHECK(faults(read_interviews(interviews, {{row.file, row.text}})) == row.faults);
  }
}

TEST_CASE("a file that is named must be there, one beside may be missing") {
  const MemoryFiles files(
      std::map<std::string, std::string>{{"interviews.csv", "interview,narrators,date\n1,tusk,1994\n"}});
  const auto beside = read_interview_files(files, "interviews.csv");
  CHECK(beside.ok);
  CHECK(faults(beside) ==
        "unresolved: interviews.csv:2:3: \"tusk\" in cell B2 (narrators) is not the key of a person (add it, "
        "or correct the key)\n");
  InterviewFilePaths paths;
  paths.persons = "people.csv";
  CHECK(faults(read_interview_files(files, "interviews.csv", paths))
            .starts_with("error: people.csv: there is no such file (check the path)\n"));
  CHECK(!read_interview_files(files, "other.csv").ok);
}

TEST_CASE("tables are read in any encoding and with either separator") {
  const std::string text = "interview;narrators;date;place\n1;tusk;1994;Caf\u00e9\n";
  std::string wide = "\xFF\xFE";
  std::string latin;
  for (const char16_t unit : std::u16string(u"interview;narrators;date;place\r\n1;tusk;1994;Caf\u00e9\r\n")) {
    wide += {static_cast<char>(unit & 0xFF), static_cast<char>(unit >> 8)};
    latin += static_cast<char>(unit);
  }
  for (const std::string& bytes : {text, "\xEF\xBB\xBF" + text, wide, latin}) {
    const auto reading = read_interviews(bytes);
    REQUIRE(reading.file.interviews.size() == 1);
    CHECK(reading.file.interviews[0].place == "Caf\u00e9");
  }
  CHECK(faults(read_interviews(latin)) ==
        "note: in/interviews.csv: encoding: not UTF-8 (byte E9 in line 2, column 16); taken as windows-1252 "
        "(save the file as UTF-8 "
        "if letters come out wrong)\n");
}
