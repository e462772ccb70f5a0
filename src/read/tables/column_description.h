#pragma once
#include <string>
#include <string_view>
#include <vector>

namespace witnessmark {

/// What a column of one of our tables holds: a row of schemas/csv/<table>.csv.
struct ColumnDescription {
  enum class Kind { key, keys, text, texts, dated_texts, edtf, number, duration, choice, path, term };
  std::string name;
  bool required = false;
  Kind kind = Kind::text;
  std::vector<std::string> values;  ///< Of a choice.
  std::string meaning;
};

/// The columns of a table ("entries"), from the description built into the program. Throws std::logic_error
/// when that is malformed or missing: a broken build.
std::vector<ColumnDescription> column_descriptions(std::string_view table);

/// The names of all tables described, sorted.
std::vector<std::string> table_names();

}  // namespace witnessmark
