#define DOCTEST_CONFIG_IMPLEMENT
#include <doctest/doctest.h>
#include <unistd.h>

#include "kill/coding_session.h"

// Works on a site file until it is killed. For each step it says on standard output that it begins, and, when
// the step has returned, how many events there are: those must be there afterwards, whatever happens.

using namespace witnessmark;
using namespace witnessmark::sample;

namespace {

void say(const std::string& line) {
  // Not buffered: what was said was said, also when the next instruction is never reached.
  if (write(STDOUT_FILENO, line.data(), line.size()) < 0) _exit(4);
}

}  // namespace

int main(int count, char** arguments) {
  const bool coding = count == 4 && std::string(arguments[3]) == "coding";
  if (count != 3 && !coding) return 2;
  doctest::Context context;  // the sample site checks what it makes
  context.setAsDefaultForAssertsOutOfTestCases();
  const std::uint64_t seed = std::stoull(arguments[2]);
  auto site = SiteFile::edit(arguments[1], editor(coding ? kSessionCoder : "Worker", seed));
  if (!site.ok()) return 3;
  int number = 0;
  for (const auto& step : coding ? coding_steps(80, seed, kSessionTurns) : work_steps(60)) {
    say("begin\n");
    step(*site);
    say("done " + std::to_string(count_events(*site)) + " " + std::to_string(++number) + "\n");
  }
  return 0;
}
