#include "layering.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>

using witnessmark::house::layering_faults;
namespace fs = std::filesystem;

namespace {

std::string joined(const std::vector<std::string>& faults) {
  std::string all;
  for (const std::string& fault : faults) all += fault + "\n";
  return all;
}

std::string content_of(const fs::path& path) {
  std::ifstream stream(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(stream), {}};
}

}  // namespace

TEST_CASE("no file of include/ or src/ includes what its layer must not see") {
  const fs::path root = WITNESSMARK_SOURCE_DIR;
  std::size_t files = 0;
  std::vector<std::string> faults;
  for (const char* folder : {"include", "src"}) {
    for (const auto& entry : fs::recursive_directory_iterator(root / folder)) {
      const auto extension = entry.path().extension();
      if (extension != ".h" && extension != ".cpp") continue;
      ++files;
      const auto more =
          layering_faults(entry.path().lexically_relative(root).generic_string(), content_of(entry.path()));
      faults.insert(faults.end(), more.begin(), more.end());
    }
  }
  std::sort(faults.begin(), faults.end());
  CHECK(files > 20);
  CHECK(joined(faults) == "");
}

TEST_CASE("an include line against the order of the layers is found") {
  struct Row {
    const char* path;
    const char* text;
    const char* fault;
  };
  const Row rows[] = {
      {"src/base/x.cpp", "#include \"witnessmark/time/day.h\"",
       "src/base/x.cpp:1: base must not include time"},
      {"src/time/x.cpp", "\n\n  #  include   \"witnessmark/model/claim.h\"  // why\n",
       "src/time/x.cpp:3: time must not include model"},
      {"src/read/x.cpp", "#include \"witnessmark/store/site_file.h\"",
       "src/read/x.cpp:1: read must not include store"},
      {"src/weigh/x.cpp", "#include\"witnessmark/language/sentences.h\"",
       "src/weigh/x.cpp:1: weigh must not include language"},
      {"include/witnessmark/model/x.h", "#include \"witnessmark/app/propose.h\"",
       "include/witnessmark/model/x.h:1: model must not include app"},
      {"src/cli/x.cpp", "#include \"witnessmark/terminal/view.h\"",
       "src/cli/x.cpp:1: cli must not include terminal"},
      {"src/app/x.cpp", "#include \"witnessmark/cli/command.h\"",
       "src/app/x.cpp:1: app must not include cli"},
      {"src/store/x.cpp", "#include \"read/html.h\"",
       "src/store/x.cpp:1: store must not include private headers of read"},
      {"src/app/x.cpp", "#include \"read/html.h\"",
       "src/app/x.cpp:1: app must not include private headers of read"},
      {"src/read/x.cpp", "#include \"../store/sql.h\"",
       "src/read/x.cpp:1: include by \"witnessmark/<layer>/x.h\" or \"read/x.h\""},
      {"include/witnessmark/read/x.h", "#include \"read/html.h\"",
       "include/witnessmark/read/x.h:1: a public header includes public headers only, by "
       "\"witnessmark/<layer>/x.h\""},
      {"src/time/x.cpp", "#include <sqlite3.h>", "src/time/x.cpp:1: time must not use <sqlite3.h>"},
      {"src/weigh/x.cpp", "#include <re2/re2.h>", "src/weigh/x.cpp:1: weigh must not use <re2/re2.h>"},
      {"include/witnessmark/store/x.h", "#include <sqlite3.h>",
       "include/witnessmark/store/x.h:1: a public header must not need <sqlite3.h>"},
      {"src/base/x.cpp", "#include <boost/any.hpp>",
       "src/base/x.cpp:1: <boost/any.hpp> is in no library the project has chosen"},
      {"src/base/x.cpp", "#include NAME_OF_FILE", "src/base/x.cpp:1: an include line that names no file"},
      {"src/helpers/x.cpp", "", "src/helpers/x.cpp:1: stands in no layer"},
      {"src/x.cpp", "", "src/x.cpp:1: stands in no layer"},
      {"src/base/x.cpp", "#include \"witnessmark/helpers/x.h\"",
       "src/base/x.cpp:1: there is no layer helpers"},
      {"src/main.cpp", "#include \"witnessmark/store/site_file.h\"",
       "src/main.cpp:1: main must not include store"},
  };
  for (const Row& row : rows)
    CHECK(joined(layering_faults(row.path, row.text)) == std::string(row.fault) + "\n");
}

TEST_CASE("include lines in the order of the layers are let pass") {
  struct Row {
    const char* path;
    const char* text;
  };
  const Row rows[] = {
      {"src/base/x.cpp",
       "#include <vector>\n#include <unicode/uchar.h>\n#include \"base/utf8.h\"\n#include \"utf8.h\"\n"},
      {"src/read/x.cpp",
       "#include <pugixml.hpp>\n#include \"witnessmark/base/csv.h\"\n#include \"witnessmark/read/x.h\""},
      {"src/store/x.cpp", "#include <sqlite3.h>\n#include <nlohmann/json.hpp>\n#include <fmt/format.h>"},
      {"src/app/x.cpp", "#include \"witnessmark/read/x.h\"\n#include \"witnessmark/store/x.h\""},
      {"src/cli/x.cpp",
       "#include <CLI/CLI.hpp>\n#include \"witnessmark/app/x.h\"\n#include \"witnessmark/time/day.h\""},
      {"src/terminal/x.cpp", "#include <curses.h>\n#include \"witnessmark/app/x.h\""},
      {"src/main.cpp", "#include \"witnessmark/cli/run.h\""},
      {"src/base/x.cpp", "// #include \"witnessmark/app/x.h\"\nint x;  // see #include\n"},
  };
  for (const Row& row : rows) CHECK(joined(layering_faults(row.path, row.text)) == "");
}

TEST_CASE("every fault of a file is named") {
  CHECK(layering_faults("src/base/x.cpp", "#include <zip.h>\n#include <re2/re2.h>\r\n").size() == 2);
}
