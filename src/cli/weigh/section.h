#pragma once
#include <cstdint>
#include <span>
#include <string>
#include <string_view>

#include "cli/command.h"
#include "witnessmark/model/comparison.h"

namespace witnessmark {

/// What a section of `weigh` works on.
struct WeighRequest {
  const SiteFile& site;
  const Surroundings& surroundings;
  std::int64_t weighed;  ///< Claims weighed by this run.
  std::size_t most;      ///< How many items to print under each heading.
  std::string of;        ///< Name of a fixture or place to keep to; empty for all.
};

/// One part of what `weigh` reports, each in a file of its own. Adding one: its file and a line in
/// sections.cpp.
struct WeighSection {
  std::string_view name;   ///< As after --section.
  std::string_view about;  ///< For --help.
  /// For people, on standard output.
  Result<void> (*text)(Command& command, const WeighRequest& request);
  /// One JSON object a line on standard output; what was withheld on standard error.
  Result<void> (*jsonl)(Command& command, const WeighRequest& request);
  /// The section in one line without its name: "3 sets of statements that cannot all be true".
  Result<std::string> (*total)(const WeighRequest& request);
  bool keeps_to_one = false;  ///< Whether WeighRequest::of narrows it.
};

/// In the order sections count them.
inline constexpr Outcome kOutcomes[] = {Outcome::agrees, Outcome::compatible, Outcome::conflicts,
                                        Outcome::cannot_tell, Outcome::silent};

/// In the order they are printed.
std::span<const WeighSection> weigh_sections();

// One for each file of this folder.
extern const WeighSection kClaimsSection;
extern const WeighSection kBoundsSection;
extern const WeighSection kContradictionsSection;
extern const WeighSection kCorroborationSection;
extern const WeighSection kCountsSection;
extern const WeighSection kRecallSection;

}  // namespace witnessmark
