#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <vector>

namespace witnessmark {

/// A line that opens with words before a colon, by shape alone. Offsets are bytes in the line.
struct LabelShape {
  std::string_view name;  ///< Without brackets and colon.
  std::string_view
      aside;  ///< What stands in brackets between name and colon, brackets included; may be empty.
  std::size_t words_at = 0;  ///< First byte after the colon that is no white space, or the line's end.
};

/// At most five words and 40 code points of letters, digits and . ' - & / before a colon that white space,
/// the end or (after capitals) a letter follows.
std::optional<LabelShape> label_shape(std::string_view line);

/// Decides which label-shaped openings of a transcript are speakers, by the rules of plain_text.h. All
/// candidates are told first, then each is asked for.
class SpeakerLabels {
 public:
  explicit SpeakerLabels(const std::vector<std::string>& known);

  void add(std::string_view name);

  /// `opens`: the line is the first of a paragraph or cue. `lone`: a label that stands only once and looks
  /// like a name is taken too.
  bool accepts(std::string_view name, bool opens, bool lone) const;

  /// How often the name was told.
  std::int64_t count(std::string_view name) const;

 private:
  std::unordered_set<std::string> known_;               // folded
  std::unordered_map<std::string, std::int64_t> seen_;  // folded
};

/// Whether the name is one of the fields of a transcript's heading (Date, Place, Narrator, …).
bool is_heading_field(std::string_view name);

}  // namespace witnessmark
