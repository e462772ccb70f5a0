#include "witnessmark/base/result.h"

#include <doctest/doctest.h>

#include <memory>
#include <stdexcept>
#include <string>

using namespace witnessmark;

namespace {

const Error kError{"crew.csv", 2, 1, "no name", "fill in the column"};

}  // namespace

TEST_CASE("a result holds a value or an error and says which") {
  const Result<std::string> value(std::string("bosun"));
  CHECK(value.ok());
  CHECK(*value == "bosun");
  CHECK(value->size() == 5);
  const Result<std::string> error(kError);
  CHECK_FALSE(error.ok());
  CHECK(error.error() == kError);
}

TEST_CASE("asking a result for what it does not hold is a broken invariant") {
  const Result<int> value(1);
  CHECK_THROWS_AS(value.error(), std::logic_error);
  const Result<int> error(kError);
  CHECK_THROWS_WITH_AS(error.value(), "Result holds an error: crew.csv:2:1: no name (fill in the column)",
                       std::logic_error);
  const Result<void> done;
  CHECK(done.ok());
  CHECK_THROWS_AS(done.error(), std::logic_error);
  const Result<void> failed(kError);
  CHECK_FALSE(failed);
  CHECK(failed.error() == kError);
}

TEST_CASE("a value that cannot be copied can be moved out of a result") {
  Result<std::unique_ptr<int>> result(std::make_unique<int>(4));
  const std::unique_ptr<int> taken = *std::move(result);
  CHECK(*taken == 4);
}

TEST_CASE("the value in a result can be changed in place") {
  Result<std::string> text(std::string("Tar"));
  *text += "pot";
  CHECK(text.value() == "Tarpot");
}
