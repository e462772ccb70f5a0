#pragma once
#include <iosfwd>
#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "witnessmark/app/statement_line.h"
#include "witnessmark/time/day.h"

namespace witnessmark {

/// A statement for people: the key or the beginning of a claim's id, who says it and what, then the words.
void print_statement(std::ostream& out, const StatementLine& line, const std::string& indent);

/// Short keys with commas between.
std::string short_keys(const std::vector<StatementKey>& keys);

/// "14 February 1963".
std::string day_words(Day day);

nlohmann::ordered_json key_json(const StatementKey& key);
nlohmann::ordered_json keys_json(const std::vector<StatementKey>& keys);
nlohmann::ordered_json statement_json(const StatementLine& line);

}  // namespace witnessmark
