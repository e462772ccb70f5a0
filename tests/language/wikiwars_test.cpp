// Scores read_dates against WikiWars (Mazur & Dale, EMNLP 2010; CC BY-SA 3.0), in its TIMEX3 form. Strict:
// same extent. Relaxed: any overlap. Value F1: relaxed F1 times the share of overlapping gold expressions
// whose value is right, as in TempEval-3. Offsets are counted over characters that are no white space.
#include <doctest/doctest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <regex>
#include <set>

#include "language/date_settings.h"
#include "witnessmark/language/timeml.h"

using namespace date_testing;

namespace {

struct Mark {
  std::size_t begin = 0, end = 0;
  std::string value;
};

std::string attribute(const std::string& tag, const std::string& name) {
  const auto at = tag.find(" " + name + "=\"");
  if (at == std::string::npos) return "";
  const auto begin = at + name.size() + 3;
  return tag.substr(begin, tag.find('"', begin) - begin);
}

// "195X" and "195" are two spellings of one value, "null" is none.
std::string plain_value(const std::string& value) {
  static const std::regex long_year("^(BC)?(\\d{2,3})X{1,2}$");
  return value == "null" ? "" : std::regex_replace(value, long_year, "$1$2");
}

/// Marks of a TimeML file's TEXT; bytes that are no white space are counted, entities as one.
std::vector<Mark> marks(const std::string& file) {
  const auto begin = file.find("<TEXT>") + 6, end = file.find("</TEXT>");
  std::vector<Mark> found, open;
  std::size_t position = 0;
  for (auto i = begin; i < end;) {
    if (file[i] == '<') {
      const auto close = file.find('>', i);
      const auto tag = file.substr(i, close - i);
      if (tag.rfind("<TIMEX3", 0) == 0) open.push_back({position, 0, attribute(tag, "value")});
      if (tag == "</TIMEX3") {
        open.back().end = position;
        found.push_back(open.back());
        open.pop_back();
      }
      i = close + 1;
    } else if (file[i] == '&') {
      ++position;
      i = file.find(';', i) + 1;
    } else {
      if (!std::isspace(static_cast<unsigned char>(file[i]))) ++position;
      ++i;
    }
  }
  return found;
}

struct Score {
  double gold = 0, system = 0, exact = 0, gold_met = 0, system_met = 0, value = 0;
  void add(const std::vector<Mark>& gold_marks, const std::vector<Mark>& ours) {
    gold += static_cast<double>(gold_marks.size());
    system += static_cast<double>(ours.size());
    std::set<std::pair<std::size_t, std::size_t>> extents;
    for (const auto& mark : ours) extents.insert({mark.begin, mark.end});
    for (const auto& mark : gold_marks) {
      exact += static_cast<double>(extents.count({mark.begin, mark.end}));
      const Mark* best = nullptr;
      std::size_t most = 0;
      for (const auto& other : ours) {
        const auto from = std::max(mark.begin, other.begin), to = std::min(mark.end, other.end);
        if (to > from && to - from > most) best = &other, most = to - from;
      }
      if (!best) continue;
      ++gold_met;
      value += plain_value(best->value) == plain_value(mark.value) ? 1 : 0;
    }
    for (const auto& mark : ours)
      system_met += std::any_of(gold_marks.begin(), gold_marks.end(),
                                [&](const Mark& g) { return g.begin < mark.end && mark.begin < g.end; });
  }
  static double f1(double p, double r) { return p + r == 0 ? 0 : 100 * 2 * p * r / (p + r); }
  double strict() const { return f1(exact / system, exact / gold); }
  double relaxed() const { return f1(system_met / system, gold_met / gold); }
  double values() const { return relaxed() * value / gold_met; }
};

}  // namespace

TEST_CASE("Histories: WikiWars is read with strict F1 88, relaxed F1 96, value F1 85 or better") {
  const char* folder = std::getenv("WITNESSMARK_DATASETS");
  if (!folder) {
    MESSAGE("skipped: no data sets");
    return;
  }
  const auto lexicon = english();
  const SystemFileReader files;
  Score score;
  int documents = 0;
  for (const auto& entry :
       std::filesystem::directory_iterator(std::filesystem::path(folder) / "wikiwars/timex3-tml")) {
    if (entry.path().extension() != ".tml") continue;
    const auto file = files.read(entry.path()).value();
    const auto document = parse_timeml(file, entry.path().string()).value();
    const auto reading = read_dates(document.text, lexicon, setting("prose"));
    score.add(marks(file),
              marks(document.before + with_timex3(document.text, reading.expressions) + document.after));
    ++documents;
  }
  MESSAGE("WikiWars, " << documents << " documents: strict F1 " << score.strict() << ", relaxed F1 "
                       << score.relaxed() << ", value F1 " << score.values());
  CHECK(documents >= 16);
  CHECK(score.strict() >= 88);
  CHECK(score.relaxed() >= 96);
  CHECK(score.values() >= 85);
}
