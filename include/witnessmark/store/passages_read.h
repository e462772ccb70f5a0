#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/text_position.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// What of one version of a reading text a coder has read.
struct PassagesRead {
  std::string interview;  ///< Key.
  std::string coder;
  int version = 1;
  std::vector<CodePointRange> ranges;  ///< In order; none touches another.
  bool operator==(const PassagesRead&) const = default;
};

/// Ranges in order, those that overlap or touch made one, empty ones left out.
std::vector<CodePointRange> join_ranges(std::vector<CodePointRange> ranges);

/// Adds a range of the current reading text to what the present coder has read. Nothing is written when it
/// was read before. An Error when there is no transcript or the range is empty or lies outside the text.
Result<void> mark_read(SiteFile& site, std::string_view interview, CodePointRange range);

/// Takes a range out again.
Result<void> mark_unread(SiteFile& site, std::string_view interview, CodePointRange range);

/// By coder and version. Only what is of the current version says what has been read of the present text.
std::vector<PassagesRead> passages_read(const SiteFile& site, std::string_view interview);

/// What anybody has read of a version: what several have read is there once.
std::vector<CodePointRange> ranges_read(const SiteFile& site, std::string_view interview, int version);

}  // namespace witnessmark
