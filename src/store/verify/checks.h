#pragma once
#include <cstdint>
#include <string>
#include <unordered_map>

#include "store/connection.h"
#include "witnessmark/store/verify.h"

namespace witnessmark {

/// What the parts of verify() share: the file, and where findings go.
struct Verification {
  StoreConnection& connection;
  VerifyReport& report;

  void find(std::string what, std::string where, std::string message) {
    report.findings.push_back({std::move(what), std::move(where), std::move(message)});
  }
};

void check_pages(Verification& verification);
void check_search_index(Verification& verification);
void check_transcripts(Verification& verification);
void check_quotes(Verification& verification);
void check_weighings(Verification& verification);
void check_journal_chain(Verification& verification);
void replay_records(Verification& verification);
void replay_transcripts(Verification& verification);
void replay_claims(Verification& verification);
void replay_coding(Verification& verification);

}  // namespace witnessmark
