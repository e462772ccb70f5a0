#include "store/claim/claim_patch.h"

#include <nlohmann/json.hpp>
#include <stdexcept>

namespace witnessmark {
namespace {

using Json = nlohmann::ordered_json;

Json parse_object(const std::string& text) {
  Json object = Json::parse(text);
  if (!object.is_object()) throw std::runtime_error("site file: a journal event holds no object");
  return object;
}

void note_differences(const Json& from, const Json& to, Json& before, Json& after) {
  for (const auto& [name, value] : from.items()) {
    const auto other = to.find(name);
    if (other != to.end() && *other == value) continue;
    before[name] = value;
    after[name] = other == to.end() ? Json() : *other;
  }
}

}  // namespace

ClaimPatch patch_between(const std::string& before, const std::string& after) {
  const Json old_object = parse_object(before);
  const Json new_object = parse_object(after);
  Json old_part = Json::object();
  Json new_part = Json::object();
  note_differences(old_object, new_object, old_part, new_part);
  note_differences(new_object, old_object, new_part, old_part);
  // Words without the term they stand for would read as if there were none.
  for (const auto& [key, words] :
       {std::pair("subject", "subject_words"), std::pair("place", "place_words")}) {
    if (!old_part.contains(words) || old_part.contains(key) || !old_object.contains(key)) continue;
    old_part[key] = new_part[key] = old_object[key];
  }
  return {old_part.dump(), new_part.dump()};
}

std::string apply_patch(const std::string& object, const std::string& patch) {
  Json result = parse_object(object);
  const Json parsed = parse_object(patch);
  for (const auto& [name, value] : parsed.items()) {
    if (value.is_null()) {
      result.erase(name);
    } else {
      result[name] = value;
    }
  }
  return result.dump();
}

}  // namespace witnessmark
