// Agreement with dates in written, present-day English: half of the English DateTime cases of
// microsoft/Recognizers-Text (MIT). In scope: days, months, years, seasons and weeks, ranges of them,
// durations and sets. Out of scope, because they are made for appointments to come: times of the day and what
// is made of them ("3:00 to 4:00 tomorrow", "eod"), numbered weeks, business units of time (quarters,
// business days), offsets in months that the set gives to the day, and cases to which the set itself gives no
// value.
#include <doctest/doctest.h>

#include <cstdlib>
#include <fstream>
#include <nlohmann/json.hpp>

#include "language/date_settings.h"

using namespace date_testing;
using nlohmann::json;

namespace {

std::string text_of(const json& object, const char* key) {
  return object.contains(key) && object[key].is_string() ? object[key].get<std::string>() : std::string();
}

bool in_scope(const json& result) {
  const auto type = text_of(result, "type");
  if (!result.contains("values") || !result.contains("begin")) return false;
  if (type != "date" && type != "daterange" && type != "duration" && type != "set") return false;
  if (result["values"].is_null() || result["values"].empty()) return false;
  const auto& first = result["values"][0];
  if (!first.contains("timex") || first["timex"].is_null()) return false;
  const auto timex = first["timex"].get<std::string>();
  const auto text = text_of(result, "text");
  if (type == "date" && text_of(first, "value") == "not resolved") return false;  // 30 February
  for (const char* business : {"business", "quarter", "week 1", "week 3", "-q", " q", "eod", "ytd",
                               "semester", "weekday", "workday", "school"})
    if (text.find(business) != std::string::npos) return false;
  if (text.size() >= 2 && text[0] == 'q' && std::isdigit(static_cast<unsigned char>(text[1]))) return false;
  if (text.find("month ago") != std::string::npos || text.find("months ago") != std::string::npos)
    return false;
  return !timex.empty() && timex.find("BD") == std::string::npos && timex.find("FUTURE") == std::string::npos;
}

/// "P1W" of a set is what TIMEX3 writes "XXXX-WXX"; decades and seasons are spelled alike otherwise.
std::string set_value(const std::string& timex) {
  if (timex == "P1D") return "XXXX-XX-XX";
  if (timex == "P1W") return "XXXX-WXX";
  if (timex == "P1M") return "XXXX-XX";
  if (timex == "P1Y") return "XXXX";
  return timex;
}

/// "(2016-01-12,2016-01-22,P10D)": the two ends.
bool ends_of(const std::string& timex, std::string& first, std::string& second) {
  if (timex.empty() || timex[0] != '(') return false;
  const auto comma = timex.find(','), other = timex.find(',', comma + 1);
  first = timex.substr(1, comma - 1);
  second = timex.substr(comma + 1, other - comma - 1);
  return true;
}

bool agrees(const json& result, const std::vector<DateExpression>& ours) {
  const auto begin = result["begin"].get<std::int64_t>(), end = result["end"].get<std::int64_t>() + 1;
  const auto type = result["type"].get<std::string>();
  for (const auto& e : ours) {
    if (e.range.end.value <= begin || e.range.begin.value >= end) continue;
    for (const auto& value : result["values"]) {
      if (!value.contains("timex") || value["timex"].is_null()) continue;
      const auto timex = value["timex"].get<std::string>();
      std::string first, second;
      if (ends_of(timex, first, second)) {
        if (e.parts.size() == 2 && e.parts[0].timex3 == first && e.parts[1].timex3 == second) return true;
        if (e.edtf && to_string(*e.edtf) == first + "/" + second) return true;
        if (std::find(e.alternatives.begin(), e.alternatives.end(), first + "/" + second) !=
            e.alternatives.end())
          return true;
        // A month or a year as a range of days, its end left out: (2020-05-01,2020-10-01) is May up to
        // October.
        if (e.parts.size() == 2 && e.parts[0].period && e.parts[1].period && e.parts[0].period->earliest() &&
            e.parts[1].period->earliest() && to_string(*e.parts[0].period->earliest()) == first &&
            to_string(*e.parts[1].period->earliest()) == second)
          return true;
        if (e.period && e.period->earliest() && e.period->past_latest() &&
            to_string(*e.period->earliest()) == first && to_string(*e.period->past_latest()) == second)
          return true;
        continue;
      }
      if (e.timex3 == timex || (type == "set" && e.timex3 == set_value(timex))) return true;
      // The past reading of an undated day counts when it is among the alternatives.
      if (value.contains("value") && value["value"].is_string() &&
          std::find(e.alternatives.begin(), e.alternatives.end(), value["value"].get<std::string>()) !=
              e.alternatives.end())
        return true;
      if (std::find(e.alternatives.begin(), e.alternatives.end(), timex) != e.alternatives.end()) return true;
      if (e.edtf && (to_string(*e.edtf) == timex)) return true;
    }
  }
  return false;
}

}  // namespace

TEST_CASE("Written dates: values agree on the cases in scope") {
  const char* folder = std::getenv("WITNESSMARK_DATASETS");
  if (!folder) {
    MESSAGE("skipped: no data sets");
    return;
  }
  std::ifstream file(std::string(folder) + "/written-dates/cases.jsonl");
  REQUIRE(file.good());
  const auto lexicon = english();
  int all = 0, scope = 0, right = 0, none = 0, none_right = 0;
  std::string line;
  while (std::getline(file, line)) {
    const auto item = json::parse(line);
    auto talk = setting("fresh");
    if (const auto reference = text_of(item, "reference"); reference.size() >= 10)
      talk.speech_time = edtf(reference.substr(0, 10));
    const auto text = item["input"].get<std::string>();
    const auto ours = read_dates(text, lexicon, talk).expressions;
    if (item["results"].empty()) {
      ++none;
      none_right += ours.empty();
      continue;
    }
    for (const auto& result : item["results"]) {
      ++all;
      if (!in_scope(result)) continue;
      ++scope;
      const bool ok = agrees(result, ours);
      right += ok;
      if (!ok && std::getenv("WITNESSMARK_LIST")) {
        std::string values;
        for (const auto& value : result["values"]) values += value["timex"].dump() + " ";
        std::printf("%s\n   [%s] %s| ours %s\n", text.c_str(), text_of(result, "text").c_str(),
                    values.c_str(), in_short(DateReading{ours, talk}).c_str());
      }
    }
  }
  MESSAGE("written dates: " << scope << " of " << all << " results in scope, " << right << " agree; of "
                            << none << " texts without a date " << none_right << " give none");
  CHECK(scope >= 60);
  CHECK(right * 100 >= scope * 75);
}
