#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/text_position.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// Words looked for in what was said. Case, width, accents and the form of apostrophes and dashes do not
/// matter. All words must stand in one turn; words in double quotes must follow one another; a word that ends
/// in * is a beginning. Nothing else is special, so no text is a wrong query.
struct SearchRequest {
  std::string text = {};
  std::string interview = {};  ///< Key; empty for all.
  std::int64_t after = 0;      ///< `number` of the last hit of the page before.
  std::size_t limit = 100;
};

/// A turn in a current reading text. Nothing is withheld here: judge it by access_file() of its interview and
/// range.
struct SearchHit {
  std::int64_t number = 0;
  std::string interview;
  std::size_t utterance = 0;  ///< Index into the transcript's utterances.
  CodePointRange range;
  std::string speaker;
  std::optional<TimeRange> time;
  bool operator==(const SearchHit&) const = default;
};

/// In the order transcripts were taken in, then of the text. Nothing for a text without a word.
std::vector<SearchHit> search_talk(const SiteFile& site, const SearchRequest& request);

}  // namespace witnessmark
