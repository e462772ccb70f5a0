#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "witnessmark/model/claim.h"
#include "witnessmark/model/comparison.h"
#include "witnessmark/model/interview.h"
#include "witnessmark/model/transcript.h"

namespace witnessmark {

/// One quote of a claim as it is handed on: words of one turn, their place in the reading text, time in the
/// recording.
struct QuoteRecord {
  std::string text;
  CodePointRange range;
  std::optional<TimeRange> time;
  Timing timing = Timing::none;
  /// Who says it, as that may be told: the claim's narrator (own), or who asked what is needed to understand
  /// the answer.
  bool own = true;
  SpeakerRole role = SpeakerRole::narrator;
  std::string speaker;
  bool operator==(const QuoteRecord&) const = default;
};

/// A claim with everything needed to cite and check it. Made only of what may go out.
struct ClaimRecord {
  Claim claim;
  std::string subject;             ///< Key of the list, or of a person as the release lets them be named.
  std::string subject_name;        ///< Preferred name of the list, or the words said.
  std::string place_name;
  std::vector<QuoteRecord> quotes;  ///< The narrator's own words first, the main quote before all.
  std::int64_t names_withheld = 0;  ///< Places in the quotes where a name was taken out.
  std::string interview;  ///< What the interview may be called: its key, unless that holds a withheld name.
  std::string narrator;            ///< As the release lets the narrator be named.
  std::string interview_date;      ///< EDTF.
  std::string accession;
  std::string repository;
  std::string recording;
  int transcript_version = 1;
  std::string reading_text_sha256;
  std::string original_sha256;
  std::string coded_by;            ///< Who decided last; empty for a proposal nobody has decided on.
  std::string coded_at;            ///< ISO 8601; as that person's clock had it.
  Recall recall;
  std::vector<Comparison> comparisons;   ///< With explanations.
};

/// Who says words that are not the narrator's own: "Judith Hale, interviewer".
std::string speaker_words(const QuoteRecord& quote);
/// The narrator's own words; between several quotes stands " … ".
std::string own_words(const ClaimRecord& record);
/// The words of others, each with who says them: "Judith Hale, interviewer: “When did you leave?”"; " | "
/// between several.
std::string words_of_others(const ClaimRecord& record);

}  // namespace witnessmark
