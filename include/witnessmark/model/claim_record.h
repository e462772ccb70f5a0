#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "witnessmark/model/claim.h"
#include "witnessmark/model/comparison.h"
#include "witnessmark/model/transcript.h"

namespace witnessmark {

/// One quote of a claim as it is handed on: words, place in the reading text, time in the recording.
struct QuoteRecord {
  std::string text;
  CodePointRange range;
  std::optional<TimeRange> time;
  Timing timing = Timing::none;
  bool operator==(const QuoteRecord&) const = default;
};

/// A claim with everything needed to cite and check it. Made only of what may go out.
struct ClaimRecord {
  Claim claim;
  std::string subject;             ///< Key of the list, or of a person as the release lets them be named.
  std::string subject_name;        ///< Preferred name of the list, or the words said.
  std::string place_name;
  std::vector<QuoteRecord> quotes;
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

}  // namespace witnessmark
