#include "witnessmark/base/embedded_schema.h"

namespace witnessmark {

std::optional<std::string_view> embedded_schema(std::string_view path) {
  for (const EmbeddedSchema& schema : embedded_schemas()) {
    if (schema.path == path) return schema.text;
  }
  return std::nullopt;
}

}  // namespace witnessmark
