#include "witnessmark/language/sentences.h"

#include <doctest/doctest.h>

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <sstream>

#include "witnessmark/base/code_point_index.h"

using namespace witnessmark;

namespace {

const Abbreviations& english_abbreviations() {
  static const Abbreviations abbreviations =
      Abbreviations::load(SystemFileReader(), WITNESSMARK_SOURCE_DIR "/shared/language/en").value();
  return abbreviations;
}

std::string joined(const std::string& text, const std::vector<CodePointRange>& ranges) {
  const CodePointIndex index(text);
  std::string line;
  for (const CodePointRange& range : ranges)
    line += (line.empty() ? "" : " | ") + std::string(index.slice(range));
  return line;
}

void append(std::string& text, std::uint32_t c) {
  if (c < 0x80) {
    text += static_cast<char>(c);
  } else if (c < 0x800) {
    text += static_cast<char>(0xC0 | (c >> 6));
    text += static_cast<char>(0x80 | (c & 0x3F));
  } else if (c < 0x10000) {
    text += static_cast<char>(0xE0 | (c >> 12));
    text += static_cast<char>(0x80 | ((c >> 6) & 0x3F));
    text += static_cast<char>(0x80 | (c & 0x3F));
  } else {
    text += static_cast<char>(0xF0 | (c >> 18));
    text += static_cast<char>(0x80 | ((c >> 12) & 0x3F));
    text += static_cast<char>(0x80 | ((c >> 6) & 0x3F));
    text += static_cast<char>(0x80 | (c & 0x3F));
  }
}

bool is_trimmed(char c) {
  return c == ' ' || c == '\n' || c == '\t' || c == '\r';
}

/// The sentences a line of the Unicode test file asks for, blanks at their ends cut, empty ones left out.
/// Nothing for lines with paragraph separators: a line break is a wrapped line here, which is where we leave
/// the rules.
std::optional<std::vector<std::string>> expected_of(const std::string& line, std::string& text) {
  std::istringstream words(line.substr(0, line.find('#')));
  std::string word;
  std::vector<std::string> sentences;
  std::string current;
  const auto close = [&] {
    std::size_t begin = 0;
    std::size_t end = current.size();
    while (begin < end && is_trimmed(current[begin])) ++begin;
    while (end > begin && is_trimmed(current[end - 1])) --end;
    if (end > begin) sentences.push_back(current.substr(begin, end - begin));
    current.clear();
  };
  while (words >> word) {
    if (word == "\u00F7") {
      close();
    } else if (word != "\u00D7") {
      const auto c = static_cast<std::uint32_t>(std::stoul(word, nullptr, 16));
      if (c == 0x0A || c == 0x0D || c == 0x85 || c == 0x2028 || c == 0x2029) return std::nullopt;
      append(text, c);
      append(current, c);
    }
  }
  close();
  return sentences;
}

}  // namespace

TEST_CASE("sentences end where a reader would end them") {
  struct Row {
    std::string text, expected;
  };
  const Row rows[] = {
      {"We fitted it. It worked.", "We fitted it. | It worked."},
      {"Mr. Garth came. He stayed.", "Mr. Garth came. | He stayed."},
      {"Lt. J. R. Marsh and Capt. Strand were there. I saw them.",
       "Lt. J. R. Marsh and Capt. Strand were there. | I saw them."},
      {"It was in No. 2 Hold. Yes.", "It was in No. 2 Hold. | Yes."},
      {"Was it there? No. It was gone.", "Was it there? | No. | It was gone."},
      {"He was bigger than I. We laughed.", "He was bigger than I. | We laughed."},
      {"On 4 Oct. 1962 it went. On 5 Oct. the other.", "On 4 Oct. 1962 it went. | On 5 Oct. the other."},
      {"\u201CTake it off,\u201D he said. \u201CNow.\u201D So we did.",
       "\u201CTake it off,\u201D he said. | \u201CNow.\u201D | So we did."},
      {"A line is\nwrapped here. And ends.", "A line is\nwrapped here. | And ends."},
      {"No stop at the end\n\nA new paragraph", "No stop at the end | A new paragraph"},
      {"", ""},
      {"   ", ""},
  };
  for (const Row& row : rows) {
    CAPTURE(row.text);
    CHECK(joined(row.text, split_sentences(row.text, english_abbreviations())) == row.expected);
  }
}

TEST_CASE("positions are code points") {
  const std::string text = "Caf\u00E9 closed. \u00C9tienne left.";
  const auto ranges = split_sentences(text, english_abbreviations());
  REQUIRE(ranges.size() == 2);
  CHECK(ranges[0] == CodePointRange{{0}, {12}});
  CHECK(ranges[1] == CodePointRange{{13}, {26}});
}

TEST_CASE("captions without full stops are cut before clause words") {
  std::string text;
  for (int i = 0; i < 40; ++i) text += "and then we took the long way round the yard ";
  const auto ranges = split_sentences(text, english_abbreviations(), 45);
  CHECK(ranges.size() >= 20);
  const CodePointIndex index(text);
  for (const CodePointRange& range : ranges) CHECK(index.slice(range).substr(0, 8) == "and then");
  // Without a limit nothing is cut.
  CHECK(split_sentences(text, english_abbreviations()).size() == 1);
}

TEST_CASE("sentences of a transcript keep to utterances and leave remarks whole") {
  Transcript transcript;
  transcript.reading_text = "ANN: It was there. [She points. Long pause.] By the door.\nBEN: No.";
  transcript.utterances = {{"ANN", {{5}, {57}}, std::nullopt, Timing::none},
                           {"BEN", {{63}, {66}}, std::nullopt, Timing::none}};
  transcript.remarks = {{{{19}, {44}}}};
  const auto sentences = split_sentences(transcript, english_abbreviations());
  std::string line;
  const CodePointIndex index(transcript.reading_text);
  for (const Sentence& sentence : sentences) {
    line += std::to_string(sentence.utterance) + ":" + std::string(index.slice(sentence.range)) + "|";
  }
  CHECK(line == "0:It was there.|0:[She points. Long pause.]|0:By the door.|1:No.|");
}

TEST_CASE("a time mark cuts captions only where no clause word does") {
  Transcript transcript;
  for (int i = 0; i < 120; ++i) transcript.reading_text += "word ";
  transcript.utterances = {{"", {{0}, {600}}, std::nullopt, Timing::none}};
  transcript.marks = {{{0}, {0}}, {{200}, {20000}}, {{400}, {40000}}};
  const auto sentences = split_sentences(transcript, english_abbreviations());
  REQUIRE(sentences.size() == 3);
  CHECK(sentences[1].range.begin == CodePoint{200});
  CHECK(sentences[1].time->begin == Millisecond{20000});
}

TEST_CASE("the sentence cases of UAX #29 hold where we keep ICU's rules") {
  const char* folder = std::getenv("WITNESSMARK_DATASETS");
  const std::string path = folder ? std::string(folder) + "/unicode-break/SentenceBreakTest.txt" : "";
  std::ifstream in(path);
  if (!in.good()) {
    std::printf(
        "skipped: UAX #29 sentence cases, WITNESSMARK_DATASETS names no "
        "unicode-break/SentenceBreakTest.txt\n");
    return;
  }
  std::string line;
  int checked = 0;
  int different = 0;
  while (std::getline(in, line)) {
    if (line.empty() || line[0] == '#') continue;
    std::string text;
    const auto expected = expected_of(line, text);
    if (!expected) continue;
    ++checked;
    std::vector<std::string> found;
    const CodePointIndex index(text);
    for (const CodePointRange& range : split_sentences(text, Abbreviations{}))
      found.emplace_back(index.slice(range));
    if (found != *expected) ++different;
  }
  std::printf("UAX #29 sentence cases without paragraph separators: %d, different: %d\n", checked, different);
  CHECK(checked > 200);
  CHECK(different == 0);
}
