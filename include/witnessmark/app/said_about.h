#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/app/conclusions.h"
#include "witnessmark/app/report.h"
#include "witnessmark/app/statement_line.h"
#include "witnessmark/app/surroundings.h"
#include "witnessmark/base/result.h"
#include "witnessmark/model/claim_record.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// A turn that names the place or equipment, in any form a claim would be proposed by, and that no claim on it quotes.
struct UnreadPassage {
  std::string interview;        ///< Key.
  std::string shown_interview;  ///< What it may be called.
  std::string narrator;         ///< As the release allows.
  std::string text;
  std::optional<TimeRange> time;
  Timing timing = Timing::none;
  CodePointRange range;
};

struct SaidAbout {
  std::vector<std::string> terms;          ///< "after crane (equipment aft-crane)": what the name was taken for.
  std::vector<ClaimRecord> reviewed;       ///< A coder found they said so.
  std::vector<ClaimRecord> proposed;       ///< Nobody has decided yet: a preview.
  std::vector<ClaimRecord> put_aside;      ///< A coder marked them misread or set them aside: shown, and of no weight.
  /// Entries of the register on it or in it, by date: dated evidence, which nobody told.
  std::vector<StatementLine> entries;
  std::vector<UnreadPassage> unread;
  std::vector<ConclusionHistory> conclusions;    ///< What was concluded on it, those that stand first.
  std::vector<std::string> without_transcript;   ///< Interviews nobody can have read here.
  std::string withheld;
};

enum class TellingOrder { event, telling };

/// Claims found that conflict with an entry, reviewed ones first: what a long list must not drown.
std::vector<const ClaimRecord*> conflicting(const SaidAbout& said);

/// "e-077 (76 days), e-079 (150 days)": the entries a claim conflicts with.
std::string conflict_words(const ClaimRecord& record);

/// Everything said about a place or a piece of equipment, by any of its names and within it, and beside it
/// what the register has there. An Error that offers near names when neither list has the name.
Result<SaidAbout> said_about(const SiteFile& site, std::string_view name, TellingOrder order,
                             const Surroundings& surroundings);

/// Conflicts first, then each claim in full by how far it is reviewed, the entries of the register, talk
/// nobody has read, and what was concluded.
Report said_report(const SaidAbout& said);

}  // namespace witnessmark
