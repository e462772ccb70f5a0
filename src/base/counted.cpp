#include "witnessmark/base/counted.h"

#include <fmt/core.h>

namespace witnessmark {

std::string counted_noun(std::int64_t number, std::string_view noun) {
  return fmt::format("{} {}{}", number, noun, number == 1 ? "" : "s");
}

}  // namespace witnessmark
