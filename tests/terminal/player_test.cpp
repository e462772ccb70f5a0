// What is started to play a recording: a recording's name comes with the site file and is never taken for an option.
#include "witnessmark/terminal/player.h"

#include <doctest/doctest.h>

using namespace witnessmark;

TEST_CASE("a recording's name is a file to the player, whatever it is called") {
  struct Row {
    std::string command, recording;
    std::vector<std::string> words;
  };
  using Words = std::vector<std::string>;
  const std::vector<Row> rows{
      {"play --start={seconds} {recording}", "reel 4.wav", Words{"play", "--start=61.5", "reel 4.wav"}},
      {"play --start={seconds}", "reel 4.wav", Words{"play", "--start=61.5", "reel 4.wav"}},
      {"play {recording}", "--script=evil.lua", Words{"play", "./--script=evil.lua"}},
      {"play", "--script=evil.lua", Words{"play", "./--script=evil.lua"}},
      {"play {recording}#t={seconds}", "-r", Words{"play", "./-r#t=61.5"}},
      {"play --file={recording} -q", "-r", Words{"play", "--file=-r", "-q"}},
      {"play {recording}", "https://archive.example/reel-4", Words{"play", "https://archive.example/reel-4"}}};
  for (const Row& row : rows) {
    CAPTURE(row.command);
    CHECK(player_words(row.command, row.recording, Millisecond{61'500}) == row.words);
  }
}
