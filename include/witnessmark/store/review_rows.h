#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "witnessmark/model/claim.h"
#include "witnessmark/model/comparison.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// As much of a claim as a list shows.
struct ReviewRow {
  std::int64_t row = 0;  ///< Its number in this file.
  Id id;
  std::string interview;  ///< Key.
  int rank = 0;           ///< Smaller first.
  CodePoint first;        ///< Where its main quote begins.
  Statement statement = Statement::present;
  std::string subject;
  std::string subject_words;
  std::string place;
  std::string place_words;
  std::string speaker;
  ClaimStatus status = ClaimStatus::proposed;
  bool decided = false;
  bool gone = false;
  bool lost = false;
  std::optional<Outcome> foremost;  ///< Of what it was compared with: conflicts, agrees, compatible, cannot
                                    ///< tell, silent; nothing when it was not weighed.
  bool operator==(const ReviewRow&) const = default;
};

/// Which claims, and which page of them. Empty parts do not narrow.
struct ReviewRequest {
  std::string interview = {};
  std::vector<std::string> without = {};   ///< Not those of these interviews.
  std::vector<std::string> speakers = {};  ///< Person keys or labels.
  std::vector<std::string> subjects = {};  ///< Equipment keys.
  std::vector<std::string> places = {};    ///< Place keys.
  std::optional<Statement> statement = {};
  std::optional<ClaimStatus> status = {};
  std::optional<Outcome> outcome = {};   ///< Compared with something to that outcome.
  std::optional<int> recall_least = {};  ///< Recall distance in whole years, at least this.
  std::size_t limit = 100;
  std::size_t offset = 0;                ///< From the first, or from `after`.
  std::optional<ReviewRow> after = {};   ///< Last row of the page before: quicker than an offset.
  std::optional<ReviewRow> before = {};  ///< First row of the page after; then the page is that before it.
};

/// In review order: by rank, interview and place in the text. Nothing is withheld here.
std::vector<ReviewRow> review_rows(const SiteFile& site, const ReviewRequest& request);

/// How many there are; limit, offset, after and before do not count.
std::int64_t count_review_rows(const SiteFile& site, const ReviewRequest& request);

/// How many stand before that row, among those asked for.
std::int64_t rows_before(const SiteFile& site, const ReviewRequest& request, const ReviewRow& row);

}  // namespace witnessmark
