#include <doctest/doctest.h>

#include <random>

#include "../app/whole_job.h"
#include "witnessmark/base/display_width.h"
#include "witnessmark/store/verify.h"
#include "witnessmark/terminal/session.h"

using namespace witnessmark;

namespace {

/// Keys that do something, those that decide more often than others.
Key random_key(std::mt19937& random) {
  static const char* const kKeys[] = {
      "Up",    "Down",  "Down",  "Down",   "PageUp", "PageDown", "Home",      "End",    "Left",   "Right",
      "Enter", "Enter", "Enter", "Escape", "Tab",    "BackTab",  "Backspace", "Delete", "Ctrl-z", "1",
      "2",     "4",     "5",     "6",      "a",      "b",        "c",         "d",      "e",      "f",
      "g",     "h",     "i",     "j",      "k",      "l",        "L",         "m",      "n",      "o",
      "p",     "r",     "s",     "s",      "s",      "t",        "u",         "u",      "U",      "v",
      "x",     "z",     "A",     ".",      "/",      "?",        "!",         "9",      "Space"};
  return *parse_key(kKeys[random() % std::size(kKeys)]);
}

}  // namespace

TEST_CASE("any keys at any size leave a sound site file, and what is shown fits the screen") {
  const auto folder = source_tree() / "tests" / "golden" / "small-site" / "input";
  const MemoryFiles files = files_of(folder);
  const Surroundings around = surroundings_of(files, to_day({2026, 1, 15}));
  for (unsigned seed = 1; seed <= 3; ++seed) {
    CAPTURE(seed);
    std::mt19937 random(seed);
    auto desk = CodingDesk::at(whole_job(files, folder, around.today), around);
    REQUIRE(desk);
    Session session(*desk, Size{80, 24});
    for (int i = 0; i < 1500; ++i) {
      if (random() % 50 == 0)
        session.handle(Resized{{1 + static_cast<int>(random() % 150), 1 + static_cast<int>(random() % 60)}});
      session.press(random_key(random));
      REQUIRE_FALSE(session.finished());
      REQUIRE_FALSE(session.state().places.empty());
      const Size size = session.state().size;
      const Picture picture = render(view(session.state()), size);
      REQUIRE(picture.lines.size() == static_cast<std::size_t>(size.rows));
      for (const Line& line : picture.lines) REQUIRE(display_width(as_text(line)) <= size.columns);
    }
    for (const Finding& finding : verify(desk->site()).findings) FAIL_CHECK(to_string(finding));
  }
}
