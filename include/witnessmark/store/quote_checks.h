#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "witnessmark/base/id.h"
#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// That a coder has compared a claim's quote with the recording.
struct QuoteCheck {
  Id claim;
  std::string coder;
  std::string interview;  ///< Of the claim.
  std::string checked;    ///< When, as text for people.
  std::string result;     ///< In the coder's words: "as transcribed", "he says forty, not fourteen".
  bool operator==(const QuoteCheck&) const = default;
};

/// Notes that the present coder has compared it; a new one takes the place of the same coder's former. An
/// Error when the claim is not known, or the result is empty or not UTF-8.
Result<void> check_quote(SiteFile& site, const Id& claim, std::string_view result);

/// By coder.
std::vector<QuoteCheck> quote_checks(const SiteFile& site, const Id& claim);

}  // namespace witnessmark
