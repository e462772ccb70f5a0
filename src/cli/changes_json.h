#pragma once
#include <nlohmann/json.hpp>
#include <vector>

#include "witnessmark/app/conclusions.h"

namespace witnessmark {

/// What was done to what a conclusion rests on since.
inline nlohmann::ordered_json changes_json(const std::vector<GroundChange>& changes) {
  auto list = nlohmann::ordered_json::array();
  for (const GroundChange& change : changes)
    list.push_back({{"kind", change.kind},
                    {"key", change.key},
                    {"what", change.what},
                    {"how", change.how},
                    {"by", change.by},
                    {"at", change.at}});
  return list;
}

}  // namespace witnessmark
