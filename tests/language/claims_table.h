#pragma once
#include <doctest/doctest.h>

#include <string>
#include <utility>
#include <vector>

#include "witnessmark/language/claims.h"

namespace witnessmark::testing {

/// A row of a claims table.
struct ClaimRow {
  int line = 0;
  std::string text, subject, place, statement, number, when, basis, firmness, polarity, led, note;
};

struct ClaimTable {
  std::vector<std::string> equipment;
  std::vector<std::string> places;
  std::vector<ClaimRow> rows;
};

inline ClaimTable lists_of(std::vector<std::string> equipment, std::vector<std::string> places) {
  return {std::move(equipment), std::move(places), {}};
}

ClaimTable read_claim_table(const std::string& path);

/// The language of shared/language/en, loaded once for each test program that asks.
const Language& english();

/// Lists whose terms' keys are their names.
AuthorityList list_of_names(AuthorityList::Kind kind, const std::vector<std::string>& names);

/// "Q: … | A: …" as two utterances with labels Q and A; anything else as one utterance of A.
Transcript transcript_of(const std::string& text);

/// Claims as "statement subject@place when attributes", leaving out what is as usual.
std::string in_short(const std::vector<Claim>& claims);

/// Claims of a short text under lists of names; capitalised places are also locations of the itinerary.
std::vector<Claim> claims_of(const std::string& text, const ClaimTable& lists);

/// The same in short.
std::string claims_line(const std::string& text, const ClaimTable& lists);

/// A text, and its claims in short.
struct ShortRow {
  std::string text, expected;
};

template <std::size_t N>
void check_rows(const ShortRow (&rows)[N], const ClaimTable& lists) {
  for (const ShortRow& row : rows) {
    CAPTURE(row.text);
    CHECK(claims_line(row.text, lists) == row.expected);
  }
}

}  // namespace witnessmark::testing
