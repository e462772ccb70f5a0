#include "read/tables/table_files.h"

namespace witnessmark {

Table TableFiles::read(const std::filesystem::path& path, std::string_view name, bool takes_notes) {
  auto bytes = files_.read(path);
  if (!bytes) {
    diagnostics_.push_back({Diagnostic::Severity::error, bytes.error()});
    return {std::string(name), path.string(), column_descriptions(name), {}, {}};
  }
  files_read_.push_back(path);
  return read_table(*bytes, path.string(), name, takes_notes, diagnostics_);
}

Table TableFiles::read_beside(const std::filesystem::path& main,
                              const std::optional<std::filesystem::path>& given, std::string_view name,
                              bool takes_notes) {
  if (given) return read(*given, name, takes_notes);
  const std::filesystem::path path = main.parent_path() / (std::string(name) + ".csv");
  if (files_.exists(path)) return read(path, name, takes_notes);
  return {std::string(name), path.string(), column_descriptions(name), {}, {}};
}

}  // namespace witnessmark
