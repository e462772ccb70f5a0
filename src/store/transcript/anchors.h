#pragma once
#include <map>
#include <optional>
#include <string>
#include <string_view>

#include "witnessmark/base/code_point_index.h"
#include "witnessmark/base/text_position.h"

namespace witnessmark {

/// Finds passages of one version of a text again in another. Both texts must outlive it.
class AnchorCarrier {
 public:
  AnchorCarrier(std::string_view before, std::string_view after) : before_(before), after_(after) {}

  /// Where the same words stand in the other text: when they stand there exactly once, or exactly once
  /// together with some of the words around them. Nothing otherwise: better lost than in the wrong place.
  std::optional<CodePointRange> find_again(CodePointRange range);

 private:
  std::optional<CodePointRange> search(CodePointRange range) const;

  CodePointIndex before_;
  CodePointIndex after_;
  std::map<CodePointRange, std::optional<CodePointRange>> found_;  ///< Many claims share one quote.
};

}  // namespace witnessmark
