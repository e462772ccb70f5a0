#include "cli/weigh/statement_text.h"

#include <fmt/ostream.h>

#include <nlohmann/json.hpp>

#include "witnessmark/app/claim_words.h"
#include "witnessmark/app/remedies.h"
#include "witnessmark/time/period.h"

namespace witnessmark {

void print_statement(std::ostream& out, const StatementLine& line, const std::string& indent) {
  fmt::print(out, "{}{}: {}{}\n", indent, short_key(line.key), one_line(line.says),
             line.footing == Footing::proposed ? " [proposed]" : "");
  fmt::print(out, "{}    {}{}\n", indent, one_line(line.by),
             line.telling.empty() ? "" : "; " + one_line(line.telling));
  if (!line.quote.empty()) fmt::print(out, "{}    “{}”\n", indent, one_line(line.quote));
  if (!line.others.empty()) fmt::print(out, "{}    {}\n", indent, one_line(line.others));
}

std::string short_keys(const std::vector<StatementKey>& keys) {
  std::string text;
  for (const StatementKey& key : keys) text += (text.empty() ? "" : ", ") + short_key(key);
  return text;
}

std::string day_words(Day day) {
  return describe(exact_period(day, day + 1));
}

nlohmann::ordered_json key_json(const StatementKey& key) {
  return {{"kind", to_string(key.kind)}, {"key", key.key}};
}

nlohmann::ordered_json keys_json(const std::vector<StatementKey>& keys) {
  auto array = nlohmann::ordered_json::array();
  for (const StatementKey& key : keys) array.push_back(key_json(key));
  return array;
}

nlohmann::ordered_json statement_json(const StatementLine& line) {
  auto object = key_json(line.key);
  object["footing"] = to_string(line.footing);
  object["source"] = line.source;
  object["by"] = line.by;
  object["says"] = line.says;
  if (!line.quote.empty()) object["quote"] = line.quote;
  if (!line.others.empty()) object["words_of_others"] = line.others;
  if (!line.telling.empty()) object["telling"] = line.telling;
  return object;
}

}  // namespace witnessmark
