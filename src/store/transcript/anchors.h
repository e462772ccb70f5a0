#pragma once
#include <map>
#include <optional>
#include <string_view>

#include "witnessmark/base/bare_text.h"
#include "witnessmark/base/code_point_index.h"
#include "witnessmark/base/text_position.h"

namespace witnessmark {

/// Finds passages of one version of a text again in another. Both texts must outlive it.
class AnchorCarrier {
 public:
  AnchorCarrier(std::string_view before, std::string_view after);

  /// Where the same words stand in the other text, whatever became of marks, spaces, capitals and apostrophes
  /// (BareText): when they stand there exactly once, or exactly once together with some of the words around
  /// them. Nothing otherwise: better lost than in the wrong place. Marks at the ends of the passage go with
  /// it.
  std::optional<CodePointRange> find_again(CodePointRange range);

  /// Where a part of a passage went with it; nothing when the passage was not found or has no such part.
  std::optional<CodePointRange> find_part(CodePointRange range, CodePointRange part);

 private:
  /// Letters of the one text and where they begin in both.
  struct Found {
    CodePointRange range;
    std::size_t before = 0, after = 0, size = 0;
  };
  /// Letters [first, past) of the text before.
  struct Letters {
    std::size_t first = 0, past = 0;
  };

  const std::optional<Found>& found(CodePointRange range);
  std::optional<Found> search(CodePointRange range) const;
  std::optional<Found> search_marks(CodePointRange range) const;
  Letters letters_of(CodePointRange range) const;
  std::optional<std::size_t> only_place(Letters wanted, std::size_t left, std::size_t right) const;
  CodePointRange with_marks(CodePointRange old_range, Letters letters, std::size_t place) const;

  CodePointIndex before_;
  CodePointIndex after_;
  BareText bare_before_;
  BareText bare_after_;
  std::map<CodePointRange, std::optional<Found>> found_;  ///< Many claims share one quote.
};

}  // namespace witnessmark
