// Layouts of typed transcripts: common practice, no source, where none is named.
#include "witnessmark/read/plain_text.h"

#include <doctest/doctest.h>

#include "transcript_dump.h"

using namespace witnessmark;

TEST_CASE("stamps, labels and paragraphs are told from the words") {
  const TranscriptRow rows[] = {
      {"stamp and label",
       "[0:00] HALE: When did you join her?\n\n[0:04] TUSK: In the spring. [laughs] April.\n",
       "HALE [0:00.0-0:04.0] When did you join her?\n"
       "TUSK [0:04.0-0:04.0] In the spring. [laughs] April.\n"
       "@0:00.0 When\n@0:04.0 In\nremark [laughs]\n"},
      {"label before stamp, stamp behind the colon, name and time alone on a line",
       "HALE [0:01]: Which lamp?\nTUSK: [0:03] The old one.\nHALE  0:05\nThe old one.\nTUSK  1:00:05\nYes.\n",
       "HALE [0:01.0-0:03.0] Which lamp?\nTUSK [0:03.0-0:05.0] The old one.\nHALE [0:05.0-1:00:05.0] The old "
       "one.\n"
       "TUSK [1:00:05.0-1:00:05.0] Yes.\n@0:01.0 Which\n@0:03.0 The\n@0:05.0 The\n@1:00:05.0 Yes.\n"},
      {"name and time on lines of their own",
       "HALE\n0:05\nWhich lamp?\n\nTUSK\n0:09 \nThe old one.\n\nMrs. Tusk\n0:15\nThe new one.\n",
       "HALE [0:05.0-0:09.0] Which lamp?\nTUSK [0:09.0-0:15.0] The old one.\n"
       "Mrs. Tusk [0:15.0-0:15.0] The new one.\n@0:05.0 Which\n@0:09.0 The\n@0:15.0 The\n"
       "note: talk:9:1: \"Mrs. Tusk:\" stands only once and is taken as a speaker (list the speakers of the "
       "interview to "
       "settle it)\n"},
      {"stamps alone, sentence running on across them",
       "[0:20] so we went down to the\n\n[0:45] lamp room and it was gone.\n\n[1:10] The next day it was "
       "back.\n",
       "- [0:20.0-1:10.0] so we went down to the\n\n[0:45] lamp room and it was gone.\n"
       "- [1:10.0-1:10.0] The next day it was back.\n"
       "@0:20.0 so\n@0:45.0 lamp\n@1:10.0 The\nremark [0:45]\n"},
      {"a stamp inside the words",
       "TUSK: We came in [0:30] at night.\n\nHALE: Which night?\n\nTUSK: [0:40] I forget.\n",
       "TUSK We came in [0:30] at night.\n"
       "HALE [0:33.8-0:40.0 about] Which night?\nTUSK [0:40.0-0:40.0] I forget.\n"
       "@0:30.0 at\n@0:40.0 I\nremark [0:30]\n"},
      {"labels without stamps, a turn of two paragraphs",
       "TUSK: The bell was forward.\n\nIt hung there for years.\n\nHALE: And then?\n\nTUSK: Gone.\n",
       "TUSK The bell was forward.\nTUSK It hung there for years.\nHALE And then?\nTUSK Gone.\n"},
      {"hard line breaks",
       "TUSK: The bell hung\nforward until the refit.\nHALE: Which?\nTUSK: The\nsecond.\nHALE: Ah.\n",
       "TUSK The bell hung\nforward until the refit.\nHALE Which?\nTUSK The\nsecond.\nHALE Ah.\n"},
      {"nothing but paragraphs", "The first of them was the bell.\n\nThen came the horn.\n",
       "- The first of them was the bell.\n- Then came the horn.\n"},
      {"decimals and parentheses", "(0:01.5) We sailed. (0:09) is no stamp here.\n",
       "- [0:01.5-0:01.5] We sailed. (0:09) is no stamp here.\n@0:01.5 We\n"},
  };
  check_transcripts(rows, TranscriptFormat::text);
}

TEST_CASE("openers of speech, times and lists are no labels") {
  const TranscriptRow rows[] = {
      {"Well", "Well: it was the lamp.\n\nWell: not the lamp.\n",
       "- Well: it was the lamp.\n- Well: not the lamp.\n"},
      {"a time of day", "12:30 we had dinner.\n\n12:45 we were back.\n",
       "- 12:30 we had dinner.\n- 12:45 we were back.\n"},
      {"a list", "There were three things: a lamp, a bell, a horn.\n\nThere were three things: all gone.\n",
       "- There were three things: a lamp, a bell, a horn.\n- There were three things: all gone.\n"},
      {"a name once, nothing else labelled", "Lantern Quay: that was the place.\n",
       "- Lantern Quay: that was the place.\n"},
      {"NOTE", "NOTE: the tape is poor.\n\nNOTE: very poor.\n",
       "- NOTE: the tape is poor.\n- NOTE: very poor.\n"},
      {"one capital letter once", "A: I was born there.\n", "- A: I was born there.\n"},
      {"questions and answers", "Q: When?\nA: In spring.\nQ: Which?\nA: The first.\n",
       "Q When?\nA In spring.\nQ Which?\nA The first.\n"},
      {"mixed case that recurs",
       "Mr. Hale: When?\nNora Tusk: In spring.\nMr. Hale: Which?\nNora Tusk: The first.\n",
       "Mr. Hale When?\nNora Tusk In spring.\nMr. Hale Which?\nNora Tusk The first.\n"},
      {"a third person once",
       "Hale: When?\n\nTusk: In spring.\n\nMrs. Tusk: Autumn.\n\nHale: Which?\n\nTusk: She is right.\n",
       "Hale When?\nTusk In spring.\nMrs. Tusk Autumn.\nHale Which?\nTusk She is right.\n"
       "note: talk:5:1: \"Mrs. Tusk:\" stands only once and is taken as a speaker (list the speakers of the "
       "interview to "
       "settle it)\n"},
      {"accents and a Mac", "MÜLLER: When?\n\nMcKAY: In spring.\n", "MÜLLER When?\nMcKAY In spring.\n"},
      {"an aside with the label", "TUSK (laughing): Never.\n\nHALE: Never?\n",
       "TUSK Never.\nHALE Never?\nremark (laughing)\n"},
  };
  check_transcripts(rows, TranscriptFormat::text);
}

TEST_CASE("labels that are known need not recur") {
  const TranscriptRow rows[] = {{"known", "Well, so: it began.\n\nthe old man: It did not.\n",
                                 "- Well, so: it began.\nthe old man It did not.\n"}};
  ReadingRules rules;
  rules.speaker_labels = {"The Old Man"};
  // With a label in it, what stands before is a heading.
  const auto read = read_transcript(rows[0].text, "talk", TranscriptFormat::text, std::nullopt, rules);
  REQUIRE(read.ok());
  REQUIRE(read->utterances.size() == 1);
  CHECK(read->utterances[0].speaker == "the old man");
}

TEST_CASE("headings and the transcriber's lines are no utterances") {
  const TranscriptRow rows[] = {
      {"fields",
       "Narrator: Nora Tusk\nDate: 3 May 2004\n\nHALE: When?\n\nTUSK: In spring.\n\n[END OF TRACK 1]\n\nEND "
       "OF TAPE 2\n",
       "HALE When?\nTUSK In spring.\nremark [END OF TRACK 1]\nremark END OF TAPE 2\n"
       "note: talk:1:1: 2 lines before the first speaker or time are taken as a heading\n"},
      {"roles that are labels too",
       "NARRATOR: Nora Tusk\nINTERVIEWER: Hale\n\nINTERVIEWER: When?\n\nNARRATOR: In spring.\n",
       "INTERVIEWER When?\nNARRATOR In spring.\n"
       "note: talk:1:1: 2 lines before the first speaker or time are taken as a heading\n"},
      {"an editor's remark", "TUSK: It was 1959 [sic: 1958], (pause) or so (I think).\n\nHALE: Oh.\n",
       "TUSK It was 1959 [sic: 1958], (pause) or so (I think).\nHALE Oh.\nremark [sic: 1958]\nremark "
       "(pause)\n"},
      {"no words", "[0:00] [tape starts]\n",
       "talk: the transcript holds no spoken words (check that this is the right file)\n"},
      {"empty", "\n", "talk: the transcript holds no spoken words (check that this is the right file)\n"},
  };
  check_transcripts(rows, TranscriptFormat::text);
}

TEST_CASE("faulty stamps are told of and the rest is read") {
  const TranscriptRow rows[] = {
      {"seconds over 59", "[0:05] HALE: When?\n\n[0:75] TUSK: In spring, [9:99] say.\n",
       "HALE [0:05.0-0:05.0] When?\nTUSK In spring, [9:99] say.\n@0:05.0 When?\nremark [9:99]\n"
       "warning: talk:3:1: [0:75] is no time and is left out (write m:ss or h:mm:ss, with seconds, and "
       "minutes after hours, "
       "from 00 to 59)\n"
       "warning: talk:3:25: [9:99] is no time and is left out (write m:ss or h:mm:ss, with seconds, and "
       "minutes after "
       "hours, from 00 to 59)\n"},
      {"one stamp out of order", "[0:05] A one.\n\n[9:00] A two.\n\n[0:15] A three.\n\n[0:20] A four.\n",
       "- [0:05.0-0:10.0] A one.\n- [0:10.0-0:15.0 about] A two.\n- [0:15.0-0:20.0] A three.\n- "
       "[0:20.0-0:20.0] A four.\n"
       "@0:05.0 A\n@0:15.0 A\n@0:20.0 A\n"
       "warning: talk:3:1: the time 9:00.0 does not fit the order of those around it and is left out (times "
       "count from the "
       "start of one recording; where a second tape starts anew, add the length of the first or make it an "
       "interview of "
       "its own)\n"},
  };
  check_transcripts(rows, TranscriptFormat::text);
}

TEST_CASE("the recording's length ends the last utterance and is checked") {
  const TranscriptRow rows[] = {
      {"end", "[0:05] HALE: When?\n\n[0:15] TUSK: In spring.\n",
       "HALE [0:05.0-0:15.0] When?\nTUSK [0:15.0-0:20.0] In spring.\n@0:05.0 When?\n@0:15.0 In\n"},
      {"past it", "[0:05] HALE: When?\n\n[0:25] TUSK: In spring.\n",
       "HALE [0:05.0-0:25.0] When?\nTUSK [0:25.0-0:25.0] In spring.\n@0:05.0 When?\n@0:25.0 In\n"
       "warning: talk:3:1: the time 0:25.0 lies past the recording's end, 0:20.0 (check the recording length "
       "or the time)\n"}};
  check_transcripts(rows, TranscriptFormat::text, {}, Millisecond{20'000});
}

TEST_CASE("bracket rules are the house's own") {
  const char* text = "HALE: One (two) [three] {four} (pause).\n\nTUSK: Five.\n";
  struct Row {
    bool square, curly;
    BracketRules::Round round;
    const char* remarks;
  };
  const Row rows[] = {{true, true, BracketRules::Round::listed, "[three]{four}(pause)"},
                      {false, true, BracketRules::Round::never, "{four}"},
                      {true, false, BracketRules::Round::always, "(two)[three](pause)"}};
  for (const Row& row : rows) {
    ReadingRules rules;
    rules.brackets.square = row.square;
    rules.brackets.curly = row.curly;
    rules.brackets.round = row.round;
    const auto read = read_plain_text(text, "talk", std::nullopt, rules);
    REQUIRE(read.ok());
    std::string remarks;
    const CodePointIndex index(read->reading_text);
    for (const Remark& remark : read->remarks) remarks += index.slice(remark.range);
    CHECK(remarks == row.remarks);
  }
}

TEST_CASE("brackets nest, and one left open holds nothing") {
  struct Row {
    const char* text;
    const char* remarks;
  };
  const Row rows[] = {{"a [b [c] d] e", "[b [c] d]"}, {"a [b\n\nc] d", ""}, {"a ] b [c]", "[c]"},
                      {"a [b (c] d)", "[b (c]"},      {"[a]\n\n[b", "[a]"}, {"((pause) x)", "(pause)"}};
  for (const Row& row : rows) {
    CAPTURE(row.text);
    std::string found;
    for (const ByteRange& range : find_remarks(row.text, {})) {
      found += std::string_view(row.text).substr(static_cast<std::size_t>(range.begin.value),
                                                 static_cast<std::size_t>(range.length()));
    }
    CHECK(found == row.remarks);
  }
}

TEST_CASE("the encoding is found, said, and changes nothing else") {
  const std::string utf8 = "[0:00] HALE: Caf\u00e9, \u201cthe lamp\u201d?\n\n[0:04] TUSK: Yes.\n";
  std::string little = "\xFF\xFE";
  std::string big = "\xFE\xFF";
  std::string latin;
  std::string crlf;
  const std::u16string wide = u"[0:00] HALE: Caf\u00e9, \u201cthe lamp\u201d?\n\n[0:04] TUSK: Yes.\n";
  for (const char16_t unit : wide) {
    little += {static_cast<char>(unit & 0xFF), static_cast<char>(unit >> 8)};
    big += {static_cast<char>(unit >> 8), static_cast<char>(unit & 0xFF)};
    latin += unit == 0x201C ? '\x93' : unit == 0x201D ? '\x94' : static_cast<char>(unit);
  }
  for (const char c : utf8) crlf += c == '\n' ? "\r\n" : std::string(1, c);
  struct Row {
    std::string bytes;
    const char* remark;
    std::size_t diagnostics;
  };
  const Row rows[] = {{utf8, "valid UTF-8", 0},
                      {"\xEF\xBB\xBF" + utf8, "UTF-8 by its byte order mark", 0},
                      {little, "UTF-16LE by its byte order mark", 0},
                      {big, "UTF-16BE by its byte order mark", 0},
                      {crlf, "valid UTF-8", 0},
                      {latin, "not UTF-8 (byte E9 in line 1, column 17); taken as windows-1252", 1}};
  for (const Row& row : rows) {
    CAPTURE(row.remark);
    const auto read = read_transcript(row.bytes, "talk.txt");
    REQUIRE(read.ok());
    CHECK(read->encoding_remark == row.remark);
    CHECK(read->reading_text == utf8);
    CHECK(read->diagnostics.size() == row.diagnostics);
    REQUIRE(read->utterances.size() == 2);
    CHECK(read->utterances[0].range == CodePointRange{{13}, {30}});
  }
}
