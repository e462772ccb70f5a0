#include "witnessmark/model/transcript.h"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <string>

using namespace witnessmark;

namespace {

std::string time_line(const Transcript& transcript, std::int64_t position) {
  const auto at = time_at(transcript, {position});
  if (!at) return "none";
  return fmt::format("{}{}", at->timing == Timing::interpolated ? "about " : "", to_timecode(at->time));
}

Transcript two_marks() {
  Transcript transcript;
  transcript.reading_text = std::string(100, 'x');
  transcript.marks = {{{0}, {10000}}, {{50}, {20000}}};
  return transcript;
}

}  // namespace

TEST_CASE("a time between two marks is interpolated by code points and said to be so") {
  const Transcript transcript = two_marks();
  CHECK(time_line(transcript, 0) == "0:10.0");
  CHECK(time_line(transcript, 25) == "about 0:15.0");
  CHECK(time_line(transcript, 50) == "0:20.0");
  // After the last mark nothing better than it is known.
  CHECK(time_line(transcript, 90) == "about 0:20.0");
  CHECK(time_line(Transcript{}, 3) == "none");
}

TEST_CASE("before the first mark there is no time") {
  Transcript transcript = two_marks();
  transcript.marks.erase(transcript.marks.begin());
  CHECK(time_line(transcript, 10) == "none");
}

TEST_CASE("an utterance's begin and end hold interpolation inside it") {
  Transcript transcript;
  transcript.reading_text = std::string(100, 'x');
  transcript.utterances = {{"A", {{10}, {30}}, TimeRange{{5000}, {9000}}, Timing::stated},
                           {"B", {{40}, {60}}, TimeRange{{20000}, {24000}}, Timing::stated}};
  CHECK(time_line(transcript, 10) == "0:05.0");
  CHECK(time_line(transcript, 20) == "about 0:07.0");
  CHECK(time_line(transcript, 30) == "0:09.0");
  CHECK(time_line(transcript, 50) == "about 0:22.0");
  transcript.utterances[1].timing = Timing::interpolated;
  CHECK(time_line(transcript, 40) == "about 0:20.0");
  // A stamp inside the utterance is nearer than its end.
  transcript.marks = {{{20}, {6000}}};
  CHECK(time_line(transcript, 25) == "about 0:07.5");
}

TEST_CASE("marks that run backwards do not make times run backwards") {
  Transcript transcript = two_marks();
  transcript.marks[1].time = {3000};
  CHECK(time_line(transcript, 25) == "about 0:10.0");
}

TEST_CASE("sentences take their times from marks and utterances") {
  const Transcript transcript = two_marks();
  std::vector<Sentence> sentences(2);
  sentences[0].range = {{0}, {50}};
  sentences[1].range = {{10}, {40}};
  place_in_time(transcript, sentences);
  CHECK(sentences[0].timing == Timing::stated);
  CHECK(sentences[1].timing == Timing::interpolated);
  CHECK(sentences[1].time == TimeRange{{12000}, {18000}});
  Transcript untimed;
  untimed.reading_text = "x";
  place_in_time(untimed, sentences);
  CHECK(sentences[1].timing == Timing::none);
  CHECK_FALSE(sentences[1].time.has_value());
}

TEST_CASE("timecodes are written with hours only when there are any") {
  CHECK(to_timecode({0}) == "0:00.0");
  CHECK(to_timecode({83456}) == "1:23.4");
  CHECK(to_timecode({3723400}) == "1:02:03.4");
  CHECK(to_timecode({-5}) == "0:00.0");
}

TEST_CASE("an utterance is one line for tests") {
  Transcript transcript;
  transcript.reading_text = "ADA: We fitted it.";
  const Utterance utterance{"ADA", {{5}, {18}}, TimeRange{{5000}, {9000}}, Timing::stated};
  CHECK(dump(transcript, utterance) == "ADA [0:05.0-0:09.0] We fitted it.");
}

TEST_CASE("a range is cut into the words of each turn, without labels between them") {
  Transcript transcript;
  transcript.reading_text = "ADA: We fitted it.\nBEN: When?\nADA: In May.";
  transcript.utterances = {{"ADA", {{5}, {18}}, std::nullopt, Timing::none},
                           {"BEN", {{24}, {29}}, std::nullopt, Timing::none},
                           {"ADA", {{35}, {42}}, std::nullopt, Timing::none}};
  using Pieces = std::vector<TurnPiece>;
  CHECK(by_turn(transcript, {{8}, {14}}) == Pieces{{0, {{8}, {14}}}});
  CHECK(by_turn(transcript, {{8}, {38}}) == Pieces{{0, {{8}, {18}}}, {1, {{24}, {29}}}, {2, {{35}, {38}}}});
  CHECK(by_turn(transcript, {{18}, {24}}).empty());
  CHECK(by_turn(transcript, {{29}, {100}}) == Pieces{{2, {{35}, {42}}}});
  CHECK(by_turn({}, {{0}, {5}}).empty());
}
