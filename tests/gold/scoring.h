#pragma once
#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "witnessmark/model/claim.h"

namespace witnessmark::gold {

/// A claim as coded by hand.
struct CodedClaim {
  CodePointRange quote;
  std::string quote_words;
  std::string subject, place, statement, when, number, basis, firmness, polarity, note;
};

/// Reads a coded file and finds its quotes in the reading text, white space aside. Quotes that are not found
/// are listed in missing.
std::vector<CodedClaim> read_coded(const std::string& path, const std::string& reading_text,
                                   std::vector<std::string>& missing);

/// Whether a proposed and a coded claim are the same: statement, subject (the place when one of them names
/// only a place; with `located` the statement alone), quotes overlapping by half or more.
bool same_claim(const Claim& proposed, const CodedClaim& coded);

/// As many pairs (proposed, coded) as possible, one to one, larger overlaps first.
std::vector<std::pair<std::size_t, std::size_t>> pair_up(const std::vector<Claim>& proposed,
                                                         const std::vector<CodedClaim>& coded);

/// Mean over the values that occur in the coding of the F1 for each (macro-averaged F1).
double macro_f1(const std::vector<std::pair<std::string, std::string>>& proposed_and_coded);

/// What macro_f1 gives when the commonest coded value is always answered.
double macro_f1_of_commonest(const std::vector<std::pair<std::string, std::string>>& proposed_and_coded);

}  // namespace witnessmark::gold
