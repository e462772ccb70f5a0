#include "witnessmark/base/embedded_schema.h"

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <string>

using namespace witnessmark;

TEST_CASE("every file of schemas/ is built in byte for byte, and no other") {
  namespace fs = std::filesystem;
  const fs::path folder = fs::path(WITNESSMARK_SOURCE_DIR) / "schemas";
  std::map<std::string, std::string> files;
  for (const auto& entry : fs::recursive_directory_iterator(folder)) {
    if (!entry.is_regular_file()) continue;
    std::ifstream stream(entry.path(), std::ios::binary);
    files[entry.path().lexically_relative(folder).generic_string()] =
        std::string(std::istreambuf_iterator<char>(stream), {});
  }
  REQUIRE_FALSE(files.empty());
  CHECK(embedded_schemas().size() == files.size());
  for (const auto& file : files) {
    CAPTURE(file.first);
    const auto built_in = embedded_schema(file.first);
    REQUIRE(built_in);
    CHECK(*built_in == file.second);
  }
}

TEST_CASE("a schema that does not exist is not found") {
  CHECK_FALSE(embedded_schema("csv/no-such-file.csv"));
  CHECK_FALSE(embedded_schema(""));
}
