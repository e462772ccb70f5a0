#pragma once
#include <optional>
#include <string>
#include <vector>

#include "witnessmark/app/conclusions.h"
#include "witnessmark/base/id.h"
#include "witnessmark/base/text_position.h"
#include "witnessmark/model/claim_record.h"

namespace witnessmark {

// What is read rather than worked through, line by line: what was said about something, what stood where, the journal.
// The command line prints these lines and the terminal shows them, so both tell the same. All are safe to print.

struct ReportLine {
  enum class Weight { heading, item, detail, caution };
  Weight weight = Weight::item;
  std::string text;
  std::optional<Id> claim = std::nullopt;            ///< It is about this claim.
  std::string interview = {};                        ///< It is about a place in this transcript …
  std::optional<CodePoint> position = std::nullopt;  ///< … here.
  std::string difference = {};                       ///< It is about a difference between coders: its key.
  std::string entry = {};                            ///< It is about an entry or a stay of the register: its key.
};

struct Report {
  std::string title;
  std::vector<ReportLine> lines;
};

/// A line that leads nowhere.
void add_line(Report& report, ReportLine::Weight weight, std::string text);

/// A claim in a few lines: who, when told and at what time in the recording, the words, what was read from them, the facts
/// of recall, and the comparisons with the given outcome (all of them when none is given). Each line leads to it.
void add_record(Report& report, const ClaimRecord& record, std::optional<Outcome> only = std::nullopt);

/// A conclusion: what was concluded, why, by whom and where said, and what took its place. Without the names of those who
/// were answered.
void add_conclusion(Report& report, const ConclusionHistory& history);
/// Several under a heading that counts them; nothing where there are none.
void add_conclusions(Report& report, const std::string& heading, const std::vector<ConclusionHistory>& histories);

}  // namespace witnessmark
