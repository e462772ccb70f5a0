// The parser tests of the W3C Web Platform Tests for WebVTT (file-parsing and cue-text-parsing), with the
// results of npm webvtt-parser 2.2.0 for the cues and the tests' own trees for the cue text. The WebVTT
// standard decides where the two differ; such files are listed below with the rule.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cstdlib>
#include <filesystem>
#include <map>
#include <nlohmann/json.hpp>

#include "witnessmark/base/file_system.h"
#include "witnessmark/read/webvtt.h"
#include "witnessmark/read/webvtt_cue_text.h"

using namespace witnessmark;

namespace {

/// Where our result is meant to differ from the parser's: file name and the rule of the standard.
const std::map<std::string, std::string> kJustified = {};

std::optional<std::filesystem::path> data_set() {
  const char* folder = std::getenv("WITNESSMARK_DATASETS");
  if (folder && std::filesystem::exists(std::filesystem::path(folder) / "webvtt-wpt")) {
    return std::filesystem::path(folder) / "webvtt-wpt";
  }
  std::puts("skipped: no data sets (WITNESSMARK_DATASETS names their folder)");
  return std::nullopt;
}

/// As decode_transcript and decode_text together do it, for parse_webvtt alone.
std::string decoded(std::string bytes) {
  if (bytes.starts_with("\xEF\xBB\xBF")) bytes.erase(0, 3);
  std::string text;
  for (std::size_t i = 0; i < bytes.size(); ++i) {
    if (bytes[i] == '\0') {
      text += "\uFFFD";
    } else if (bytes[i] == '\r') {
      if (i + 1 == bytes.size() || bytes[i + 1] != '\n') text += '\n';
    } else {
      text += bytes[i];
    }
  }
  return text;
}

std::string cue_line(std::string_view id, std::int64_t start, std::int64_t end, std::string_view text) {
  return fmt::format("id=\"{}\" {}..{} \"{}\"\n", id, start, end, text);
}

std::string dump(const WebvttFile& file) {
  std::string lines;
  for (const WebvttCue& cue : file.cues) lines += cue_line(cue.id, cue.start.value, cue.end.value, cue.text);
  return lines;
}

std::int64_t to_milliseconds(double seconds) {
  return static_cast<std::int64_t>(seconds * 1000 + 0.5);
}

std::string clock(Millisecond time) {
  const std::int64_t ms = time.value;
  return fmt::format("{:02}:{:02}:{:02}.{:03}", ms / 3600000, ms / 60000 % 60, ms / 1000 % 60, ms % 1000);
}

/// The tree as the tests print it: spans as the HTML elements the standard maps them to, attributes sorted.
void print_tree(const std::vector<CueNode>& nodes, std::size_t depth, std::string& out) {
  static const std::map<CueNode::Kind, std::string> kElements = {
      {CueNode::Kind::c, "span"}, {CueNode::Kind::i, "i"},       {CueNode::Kind::b, "b"},
      {CueNode::Kind::u, "u"},    {CueNode::Kind::ruby, "ruby"}, {CueNode::Kind::rt, "rt"},
      {CueNode::Kind::v, "span"}, {CueNode::Kind::lang, "span"}};
  for (const CueNode& node : nodes) {
    const std::string indent = "| " + std::string(depth * 2, ' ');
    if (node.kind == CueNode::Kind::text) {
      out += indent + "\"" + node.text + "\"\n";
    } else if (node.kind == CueNode::Kind::timestamp) {
      out += indent + "<?timestamp " + clock(node.time) + ">\n";
    } else {
      out += indent + "<" + kElements.at(node.kind) + ">\n";
      if (!node.classes.empty()) {
        std::string classes;
        for (const std::string& name : node.classes) classes += (classes.empty() ? "" : " ") + name;
        out += indent + "  class=\"" + classes + "\"\n";
      }
      if (node.kind == CueNode::Kind::lang) out += indent + "  lang=\"" + node.text + "\"\n";
      if (node.kind == CueNode::Kind::v) out += indent + "  title=\"" + node.text + "\"\n";
      print_tree(node.children, depth + 1, out);
    }
  }
}

}  // namespace

TEST_CASE("files of the Web Platform Tests give the cues their parser gives") {
  const auto folder = data_set();
  if (!folder) return;
  const SystemFileReader files;
  const auto expected = nlohmann::json::parse(*files.read(*folder / "expected-cues.json"));
  int checked = 0;
  for (const auto& [name, result] : expected.items()) {
    CAPTURE(name);
    const std::string bytes = *files.read(*folder / "files" / name);
    const auto file = parse_webvtt(decoded(bytes), name);
    std::string wanted;
    for (const auto& cue : result.at("cues")) {
      wanted += cue_line(cue.at("id").get<std::string>(), to_milliseconds(cue.at("start")),
                         to_milliseconds(cue.at("end")), cue.at("text").get<std::string>());
    }
    const std::string got = file ? dump(*file) : "";
    if (kJustified.contains(name)) {
      CHECK(got != wanted);
    } else {
      CHECK(got == wanted);
    }
    ++checked;
  }
  fmt::print("webvtt: {} files compared, {} differ by the standard\n", checked, kJustified.size());
  CHECK(checked >= 30);
}

TEST_CASE("cue texts of the Web Platform Tests give the trees the tests state") {
  const auto folder = data_set();
  if (!folder) return;
  const SystemFileReader files;
  int checked = 0;
  for (const char* name : {"entities", "tags", "text", "timestamps", "tree-building"}) {
    const auto cases =
        nlohmann::json::parse(*files.read(*folder / "cue-text" / (std::string(name) + ".json")));
    for (const auto& each : cases) {
      const std::string text = each.at("text");
      CAPTURE(name);
      CAPTURE(text);
      const auto file = parse_webvtt(decoded("WEBVTT\n\n00:00:00.000 --> 00:00:01.000\n" + text), name);
      REQUIRE(file.ok());
      REQUIRE(file->cues.size() >= 1);
      std::string tree;
      print_tree(parse_cue_text(file->cues.front().text), 0, tree);
      CHECK(tree == each.at("expectedTree").get<std::string>());
      ++checked;
    }
  }
  fmt::print("webvtt: {} cue texts compared\n", checked);
  CHECK(checked >= 70);
}
