#include "record_text.h"

#include <fmt/ostream.h>

#include <algorithm>
#include <vector>

#include "witnessmark/app/claim_words.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {

void print_record(std::ostream& out, const ClaimRecord& record, std::optional<Outcome> only) {
  const QuoteRecord main = record.quotes.empty() ? QuoteRecord{} : record.quotes.front();
  const std::string time = time_words(main.time, main.timing);
  fmt::print(out, "  {} ({}, {}{}{})", visible(record.narrator), record.claim.interview,
             record.interview_date, time.empty() ? "" : ", ", time);
  if (record.claim.status != ClaimStatus::proposed) fmt::print(out, " [{}]", to_string(record.claim.status));
  fmt::print(out, "\n");
  for (const QuoteRecord& quote : record.quotes) fmt::print(out, "    “{}”\n", one_line(quote.text));
  fmt::print(out, "    {}; {}\n", what_words(record), how_words(record.claim));
  if (const std::string recall = recall_words(record.recall); !recall.empty())
    fmt::print(out, "    {}\n", recall);
  std::vector<const Comparison*> comparisons;
  for (const Comparison& comparison : record.comparisons)
    if (!only || comparison.outcome == *only) comparisons.push_back(&comparison);
  std::stable_sort(comparisons.begin(), comparisons.end(),
                   [](const Comparison* a, const Comparison* b) { return weight_of(*a) < weight_of(*b); });
  for (const Comparison* comparison : comparisons)
    fmt::print(out, "    → {}\n", one_line(comparison->explanation));
}

}  // namespace witnessmark
