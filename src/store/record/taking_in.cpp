#include "store/record/taking_in.h"

#include <fmt/format.h>

#include <algorithm>

#include "witnessmark/base/sha256.h"

namespace witnessmark {

Error unknown_reference(std::string_view what, std::string_view key, std::string_view of,
                        std::string_view named) {
  return {"", 0, 0, fmt::format("{} \"{}\" names {} \"{}\", which is not known", what, key, of, named),
          fmt::format("add a row for that {}, or correct the name", of)};
}

std::string AddedRecords::sha256() const {
  auto sorted = texts_;
  std::sort(sorted.begin(), sorted.end());
  std::string joined;
  for (const auto& [kind, json] : sorted) joined += kind + ' ' + json + '\n';
  return sha256_hex(joined);
}

std::string AddedRecords::summary() const {
  std::map<std::string, std::int64_t> counts;
  for (const auto& [kind, json] : texts_) ++counts[kind];
  std::string out = "{";
  for (const auto& [kind, count] : counts) {
    append_json(out, std::string_view(kind));
    out += ':';
    append_json(out, count);
    out += ',';
  }
  out += "\"sha256\":";
  append_json(out, std::string_view(sha256()));
  return out + "}";
}

}  // namespace witnessmark
