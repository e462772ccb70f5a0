#include "witnessmark/base/error.h"

#include <doctest/doctest.h>

using namespace witnessmark;

TEST_CASE("an error is shown with the parts that are known") {
  struct Row {
    Error error;
    const char* shown;
  };
  const Row rows[] = {
      {{"log.csv", 3, 7, "no such day", "write it as 1951-06-30"},
       "log.csv:3:7: no such day (write it as 1951-06-30)"},
      {{"log.csv", 3, 0, "no such day", ""}, "log.csv:3: no such day"},
      {{"log.csv", 0, 7, "is empty", ""}, "log.csv: is empty"},
      {{"", 3, 7, "no such day", ""}, "3:7: no such day"},
      {{"", 0, 0, "no such day", "leave it out"}, "no such day (leave it out)"},
  };
  for (const Row& row : rows) CHECK(to_string(row.error) == row.shown);
}

TEST_CASE("a diagnostic is shown with its severity first") {
  const Error what{"log.csv", 3, 0, "no such day", ""};
  CHECK(to_string(Diagnostic{Diagnostic::Severity::note, what}) == "note: log.csv:3: no such day");
  CHECK(to_string(Diagnostic{Diagnostic::Severity::warning, what}) == "warning: log.csv:3: no such day");
  CHECK(to_string(Diagnostic{Diagnostic::Severity::error, what}) == "error: log.csv:3: no such day");
}
