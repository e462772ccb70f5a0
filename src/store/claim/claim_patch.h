#pragma once
#include <string>

namespace witnessmark {

/// The top-level members in which two JSON objects differ: in `before` and `after` each with its value there,
/// null where it is missing.
struct ClaimPatch {
  std::string before;
  std::string after;
};
ClaimPatch patch_between(const std::string& before, const std::string& after);

/// The object with the patch's members put in whole; null takes a member out. Throws std::runtime_error when
/// either is no JSON object.
std::string apply_patch(const std::string& object, const std::string& patch);

}  // namespace witnessmark
