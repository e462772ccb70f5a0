#pragma once
#include <string>
#include <string_view>
#include <vector>

namespace witnessmark::house {

/// What the include lines of one file of include/ or src/ have against the order of the layers, each as
/// "path:line: fault". `path` is relative to the root of the project, with '/'. Empty when all is in order.
std::vector<std::string> layering_faults(std::string_view path, std::string_view text);

}  // namespace witnessmark::house
