#pragma once
#include <optional>
#include <span>
#include <string_view>

namespace witnessmark {

/// A file of schemas/, as built into the program.
struct EmbeddedSchema {
  std::string_view path;  ///< Relative to schemas/, such as "csv/entries.csv".
  std::string_view text;
};

std::span<const EmbeddedSchema> embedded_schemas();

/// The text of one file of schemas/; nothing when there is none of that name.
std::optional<std::string_view> embedded_schema(std::string_view path);

}  // namespace witnessmark
