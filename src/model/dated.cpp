#include "witnessmark/model/dated.h"

namespace witnessmark {

std::string to_string(const Dated& dated) {
  return dated.value ? to_string(*dated.value) : "-";
}

}  // namespace witnessmark
