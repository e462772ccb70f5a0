// Runs the command line as a user would and compares all it prints with a file people can review. A case is a
// folder:
//   command    one command a line, as after "witnessmark"; words in double quotes stay together; `$SOURCE` is
//   the source
//              tree, `< FILE` at the end is standard input, `cat FILE` shows a file, `hold FILE` has somebody
//              else edit a site file until `let-go`; lines starting with # are comments
//   input/     files copied to the folder the commands run in
//   expected   what the commands print and how they end
// usage: golden_tests [--update] [CASE ...]
#include <fmt/core.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <optional>
#include <sstream>

#include "witnessmark/cli/run.h"
#include "witnessmark/store/site_file.h"
#include "witnessmark/terminal/review.h"

namespace {

namespace fs = std::filesystem;
using namespace witnessmark;

const fs::path kSource = WITNESSMARK_SOURCE_DIR;

std::string read_text(const fs::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

std::vector<std::string> words_of(const std::string& line) {
  std::vector<std::string> words;
  std::string word;
  bool quoted = false, any = false;
  for (const char c : line) {
    if (c == '"') {
      quoted = !quoted;
      any = true;
    } else if (c == ' ' && !quoted) {
      if (any) words.push_back(word);
      word.clear();
      any = false;
    } else {
      word += c;
      any = true;
    }
  }
  if (any) words.push_back(word);
  return words;
}

void replace_all(std::string& text, const std::string& what, const std::string& with) {
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + with.size()))
    text.replace(at, what.size(), with);
}

std::string run_line(const std::string& line, const RandomBytes& random, std::optional<SiteFile>& held) {
  std::vector<std::string> words = words_of(line);
  if (words.front() == "let-go") return held.reset(), "";
  if (words.front() == "hold") {
    auto site = SiteFile::edit(words.at(1), {"somebody else", random, nullptr});
    if (!site) return to_string(site.error()) + "\n";
    held.emplace(std::move(site).value());
    return "";
  }
  for (std::string& word : words) replace_all(word, "$SOURCE", kSource.string());
  if (words.front() == "cat") return read_text(words.at(1));
  std::istringstream in;
  if (words.size() > 2 && words[words.size() - 2] == "<") {
    in.str(read_text(words.back()));
    words.resize(words.size() - 2);
  }
  std::ostringstream out, err;
  const SystemFileReader files;
  const int code = run(words, {in, out, err, files, kSource / "shared", to_day({2026, 1, 15}), "tester", random,
                               [] { return std::string("2026-01-15T10:00:00+0000"); }, false,
                               [&](CodingDesk& desk, const ReviewMode& request) { return review(desk, request, in, out); }});
  std::string text = out.str();
  if (!err.str().empty()) text += "--- standard error\n" + err.str();
  return text + fmt::format("--- exit {}\n", code);
}

std::string run_case(const fs::path& folder) {
  const fs::path work = fs::temp_directory_path() / fmt::format("witnessmark-golden-{}", getpid());
  fs::remove_all(work);
  fs::create_directories(work);
  if (fs::exists(folder / "input")) fs::copy(folder / "input", work, fs::copy_options::recursive);
  const fs::path before = fs::current_path();
  fs::current_path(work);
  std::istringstream commands(read_text(folder / "command"));
  const RandomBytes random = seeded_random(7);
  std::string text, line;
  std::optional<SiteFile> held;
  while (std::getline(commands, line)) {
    if (line.empty() || line.front() == '#') continue;
    text += "$ " + line + "\n" + run_line(line, random, held);
  }
  held.reset();
  fs::current_path(before);
  fs::remove_all(work);
  replace_all(text, kSource.string(), "$SOURCE");
  replace_all(text, work.string(), "$WORK");
  return text;
}

}  // namespace

int main(int argc, char** argv) {
  std::vector<std::string> wanted(argv + 1, argv + argc);
  const bool update = std::erase(wanted, "--update") > 0;
  std::vector<fs::path> folders;
  for (const auto& entry : fs::directory_iterator(kSource / "tests" / "golden")) {
    if (!fs::exists(entry.path() / "command")) continue;
    if (wanted.empty() || std::find(wanted.begin(), wanted.end(), entry.path().filename()) != wanted.end())
      folders.push_back(entry.path());
  }
  std::sort(folders.begin(), folders.end());
  int failed = 0;
  for (const fs::path& folder : folders) {
    const std::string found = run_case(folder);
    if (update) std::ofstream(folder / "expected", std::ios::binary) << found;
    const std::string expected = read_text(folder / "expected");
    if (found == expected) continue;
    ++failed;
    const auto [at, unused] = std::mismatch(found.begin(), found.end(), expected.begin(), expected.end());
    const auto line = 1 + std::count(found.begin(), at, '\n');
    fmt::print("{}: differs from {}/expected at line {}; found:\n{}\n", folder.filename().string(),
               folder.filename().string(), line, found);
  }
  fmt::print("{} passed, {} failed\n", folders.size() - failed, failed);
  return failed == 0 && !folders.empty() ? 0 : 1;
}
