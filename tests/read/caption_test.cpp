// SubRip and the speakers of captions: common practice, no source, where none is named.
#include <doctest/doctest.h>

#include "transcript_dump.h"
#include "witnessmark/read/subrip.h"
#include "witnessmark/read/webvtt.h"
#include "witnessmark/read/webvtt_cue_text.h"

using namespace witnessmark;

TEST_CASE("WebVTT: voices become speakers and cues of one speaker a turn") {
  const TranscriptRow rows[] = {
      {"voices",
       "WEBVTT - first tape\n\nNOTE typed in 1994\n\n1\n00:01.000 --> 00:04.000\n<v Ann Hale>When did "
       "you\njoin her?\n\n"
       "00:04.000 --> 00:06.000\n<v Nora Tusk>In the <i>spring</i>,\n\n00:09.000 --> 00:11.500\n<v Nora "
       "Tusk>of '44 &amp; after.</v>\n",
       "Ann Hale [0:01.0-0:04.0] When did you join her?\nNora Tusk [0:04.0-0:11.5] In the spring, of '44 & "
       "after.\n"
       "@0:01.0 When\n@0:04.0 In\n@0:06.0 |\n@0:09.0 of\n@0:11.5 |\nremark [typed in 1994]\n"},
      {"two voices in a cue, a voice gone on without its tag",
       "WEBVTT\n\n00:00.000 --> 00:04.000\n<v Hale>When?</v> <v Tusk>Spring.\n\n00:04.000 --> 00:05.000\nOr "
       "so.\n",
       "Hale [0:00.0-0:01.7 about] When?\nTusk [0:01.7-0:05.0 about] Spring. Or so.\n"
       "@0:00.0 When?\n@0:04.0 Or\n@0:05.0 |\n"
       "note: talk: 1 cue names no speaker and is taken as going on with the speaker before\n"},
      {"a timestamp inside and an overlap",
       "WEBVTT\n\n00:00.000 --> 00:04.000\nWe came <00:02.000>in.\n\n00:03.000 --> 00:05.000\nAt night.\n",
       "- [0:00.0-0:05.0] We came in. At night.\n@0:00.0 We\n@0:02.0 in.\n@0:03.0 At\n@0:05.0 |\n"},
      {"hours and a backward cue",
       "WEBVTT\n\n59:58.000 --> 59:59.500\nZero.\n\n01:00:00.000 --> 01:00:02.000\nOne.\n\n00:00:03.000 --> "
       "00:00:04.000\nTwo.\n\n01:00:05.000 --> 01:00:06.000\nThree.\n",
       "- [59:58.0-1:00:06.0] Zero. One. Two. Three.\n@59:58.0 Zero.\n@59:59.5 |\n@1:00:00.0 "
       "One.\n@1:00:05.0 Three.\n"
       "@1:00:06.0 |\n"
       "warning: talk:9:1: the time 0:03.0 does not fit the order of those around it and is left out (times "
       "count from the "
       "start of one recording; where a second tape starts anew, add the length of the first or make it an "
       "interview of "
       "its own)\n"},
      {"what is left out is told",
       "WEBVTT\n\nstray\n\n00:00.000 -> 00:01.000\nno cue\n\n0:0.000 --> 00:01.000\nbad\n\n00:01.000 --> "
       "00:00.500\nGood.\n",
       "- [0:01.0-0:01.0] Good.\n@0:01.0 Good.\n"
       "warning: talk:3:1: this block has no times and is left out (give it a line mm:ss.ttt --> mm:ss.ttt, "
       "or open it with "
       "NOTE if it is a comment)\n"
       "warning: talk:5:1: this block has no times and is left out (give it a line mm:ss.ttt --> mm:ss.ttt, "
       "or open it with "
       "NOTE if it is a comment)\n"
       "warning: talk:8:1: this line with --> holds no two times, so the cue is left out (write mm:ss.ttt "
       "--> mm:ss.ttt or "
       "h:mm:ss.ttt --> h:mm:ss.ttt)\n"
       "warning: talk:11:1: the cue ends no later than it starts; its words are kept (check both times)\n"},
      {"not WebVTT", "WEBVTTX\n",
       "talk:1:1: the first line of a WebVTT file is WEBVTT, alone or with a space after it (check that the "
       "file is WebVTT, "
       "or name its format)\n"},
      {"nothing said", "WEBVTT\n\n00:00.000 --> 00:01.000\n[music]\n",
       "talk: the transcript holds no spoken words (check that this is the right file)\n"},
  };
  check_transcripts(rows, TranscriptFormat::webvtt);
}

TEST_CASE("WebVTT: the reading text reads on its own") {
  const auto read = read_webvtt(
      "WEBVTT\n\n00:00.000 --> 00:01.000\n<v Hale>When?\n\nNOTE he means\nthe refit\n\n00:01.000 --> "
      "00:02.000\n<v Hale>The year.\n\n"
      "00:02.000 --> 00:03.000\n<v Tusk>Oh.\n",
      "talk");
  REQUIRE(read.ok());
  CHECK(read->reading_text == "Hale: When? The year.\n\n[he means the refit]\n\nTusk: Oh.\n");
}

TEST_CASE("captions without speakers are cut at sentences once they are long") {
  std::string text = "WEBVTT\n";
  for (int i = 0; i < 60; ++i) {
    char cue[160];
    std::snprintf(cue, sizeof cue,
                  "\n%02d:%02d.000 --> %02d:%02d.000\nand so we came to number %d of them%s\n", i / 30,
                  i * 2 % 60, (i * 2 + 2) / 60, (i * 2 + 2) % 60, i, i % 10 == 9 ? "." : "");
    text += cue;
  }
  ReadingRules rules;
  rules.caption_turn = 500;
  const auto read = read_webvtt(text, "talk", std::nullopt, rules);
  REQUIRE(read.ok());
  CHECK(read->utterances.size() == 3);
  for (const Utterance& utterance : read->utterances) CHECK(dump(*read, utterance).ends_with("."));
  rules.longest_turn = 520;
  std::string unpunctuated;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '.' && i + 1 < text.size() && text[i + 1] == '\n') continue;
    unpunctuated += text[i];
  }
  const auto machine = read_webvtt(unpunctuated, "talk", std::nullopt, rules);
  REQUIRE(machine.ok());
  CHECK(machine->utterances.size() == 4);
}

TEST_CASE("SubRip: numbers, times and tags in the shapes they come in") {
  const TranscriptRow rows[] = {
      {"labels at turns",
       "1\n00:00:01,000 --> 00:00:03,000\nHALE: When did you\njoin?\n\n2\n00:00:03,000 --> "
       "00:00:05,500\nTUSK: In spring. It was\n\n"
       "3\n00:00:05,500 --> 00:00:07,000\na Monday.\n",
       "HALE [0:01.0-0:03.0] When did you join?\nTUSK [0:03.0-0:07.0] In spring. It was a Monday.\n"
       "@0:01.0 When\n@0:03.0 In\n@0:05.5 a\n@0:07.0 |\n"
       "note: talk: 1 cue names no speaker and is taken as going on with the speaker before\n"},
      {"dots, missing numbers, positions, tags",
       "0:01.5 --> 0:03 X1:10 X2:20\n<font color=\"#fff\">{\\an8}The <i>lamp</i> &lt; 3 "
       "<feet></font>\n\n\n00:00:04.25 --> 00:00:05\nwent out.\n",
       "- [0:01.5-0:05.0] The lamp < 3 <feet> went out.\n@0:01.5 The\n@0:03.0 |\n@0:04.2 went\n@0:05.0 |\n"},
      {"an empty line inside, a year alone on a line",
       "1\n00:00:01,000 --> 00:00:03,000\nIt was\n\n1958\n\nthe lamp.\n\n2\n00:00:04,000 --> "
       "00:00:03,000\nYes.\n",
       "- [0:01.0-0:04.0] It was 1958 the lamp. Yes.\n@0:01.0 It\n@0:03.0 |\n@0:04.0 Yes.\n"
       "note: talk:5:1: words after an empty line without a time are taken as part of the cue before\n"
       "warning: talk:10:1: the cue ends no later than it starts; its end is left out (check both times)\n"},
      {"a broken time line",
       "1\n00:00:01,000 --> 00:00:03,000\nOne.\n\n2\n00:00:04,000 --> 00:0:05,000\nTwo.\n",
       "- [0:01.0-0:03.0] One. Two.\n@0:01.0 One.\n@0:03.0 |\n"
       "warning: talk:6:1: this line with --> holds no two times; the words after it go with the cue before "
       "(write "
       "00:00:12,500 --> 00:00:16,000)\n"
       "note: talk:7:1: words after an empty line without a time are taken as part of the cue before\n"},
      {"signs of another speaker",
       "1\n00:00:01,000 --> 00:00:03,000\n- When?\n- In spring.\n\n2\n00:00:03,000 --> 00:00:05,000\n>> Was "
       "it?\n",
       "- [0:01.0-0:01.7 about] When?\n- [0:01.7-0:03.0 about] In spring.\n- [0:03.0-0:05.0] Was it?\n"
       "@0:01.0 When?\n@0:03.0 Was\n@0:05.0 |\n"},
      {"no cue", "just words\n",
       "talk: no line holds two times as SubRip writes them (a cue has a line such as 00:00:12,500 --> "
       "00:00:16,000; check "
       "the file or name its format)\n"},
  };
  check_transcripts(rows, TranscriptFormat::subrip);
}

TEST_CASE("a sentence with a colon in captions makes no speaker") {
  const TranscriptRow rows[] = {{"once",
                                 "1\n00:00:01,000 --> 00:00:03,000\nThere was one rule\n\n2\n00:00:03,000 "
                                 "--> 00:00:05,000\nLantern Quay: keep off.\n",
                                 "- [0:01.0-0:05.0] There was one rule Lantern Quay: keep off.\n@0:01.0 "
                                 "There\n@0:03.0 Lantern\n@0:05.0 |\n"}};
  check_transcripts(rows, TranscriptFormat::subrip);
}

TEST_CASE("WebVTT timestamps are read as the standard reads them") {
  struct Row {
    const char* text;
    std::int64_t milliseconds;
  };
  const Row rows[] = {{"00:00.000", 0},
                      {"59:59.999", 3'599'999},
                      {"00:00:00.001", 1},
                      {"1:00:00.000", 3'600'000},
                      {"100:00:00.000", 360'000'000},
                      {"0:00.000", -1},
                      {"00:60.000", -1},
                      {"60:00.000", -1},
                      {"00:00:60.000", -1},
                      {"00:00.00", -1},
                      {"00:00,000", -1},
                      {"00:00.0000", -1},
                      {"-00:00.000", -1},
                      {"", -1},
                      {"00:00:00", -1}};
  for (const Row& row : rows) {
    CAPTURE(row.text);
    CHECK(parse_webvtt_timestamp(row.text).value_or(Millisecond{-1}).value == row.milliseconds);
  }
}

TEST_CASE("character references are read as HTML reads them") {
  // HTML standard, section 13.2.5.72 and following.
  struct Row {
    const char* text;
    const char* read;
  };
  const Row rows[] = {{"&amp;&lt;&gt;", "&<>"},
                      {"&eacute;t&eacute", "\u00e9t\u00e9"},
                      {"&#8217;&#x2019;", "\u2019\u2019"},
                      {"&#146;", "\u2019"},
                      {"&#0;&#xD800;&#x110000;", "\uFFFD\uFFFD\uFFFD"},
                      {"&#;&#x;&;&", "&#;&#x;&;&"},
                      {"&nosuch;", "&nosuch;"},
                      {"&#99999999999999999999;", "\uFFFD"},
                      {"&notit; &notin;", "\u00acit; \u2209"}};
  for (const Row& row : rows) {
    CAPTURE(row.text);
    CHECK(read_character_references(row.text) == row.read);
  }
}

TEST_CASE("spans nested without end are cut and end") {
  std::string text;
  for (int i = 0; i < 100'000; ++i) text += "<i>";
  text += "deep";
  const auto nodes = parse_cue_text(text);
  REQUIRE(nodes.size() == 1);
  int depth = 0;
  const CueNode* node = &nodes[0];
  while (!node->children.empty()) {
    node = &node->children[0];
    ++depth;
  }
  CHECK(depth == 64);
  CHECK(node->text == "deep");
}

TEST_CASE("formats are told by content before name") {
  struct Row {
    const char* name;
    const char* text;
    TranscriptFormat format;
  };
  const Row rows[] = {{"a.txt", "WEBVTT\n", TranscriptFormat::webvtt},
                      {"a.txt", "1\n00:00:01,000 --> 00:00:02,000\nYes.", TranscriptFormat::subrip},
                      {"a.SRT", "", TranscriptFormat::subrip},
                      {"a.vtt", "words", TranscriptFormat::webvtt},
                      {"a", "WEBVTTS are", TranscriptFormat::text},
                      {"a.doc", "HALE: x --> y", TranscriptFormat::text}};
  for (const Row& row : rows) {
    CAPTURE(row.name);
    CHECK(detect_format(row.name, row.text) == row.format);
  }
}

TEST_CASE("a NUL in WebVTT is read as the standard wants, elsewhere it is refused") {
  using namespace std::string_literals;
  const auto vtt = read_transcript("WEBVTT\n\n00:00.000 --> 00:01.000\na\0b\n"s, "a.vtt");
  REQUIRE(vtt.ok());
  CHECK(vtt->reading_text == "a\uFFFDb\n");
  const auto text = read_transcript("HALE: a\0b\n"s, "a.txt");
  REQUIRE(!text.ok());
  CHECK(to_string(text.error()) ==
        "a.txt:1:8: a NUL character, which no text holds (is this a text file? Save it as plain text in "
        "UTF-8)");
}
