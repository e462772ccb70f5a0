#include "witnessmark/store/verify.h"

#include <stdexcept>

#include "store/verify/checks.h"
#include "witnessmark/base/fold.h"

namespace witnessmark {

std::string to_string(const Finding& finding) {
  std::string text = finding.what;
  if (!finding.where.empty()) text += " " + finding.where;
  return visible(text + ": " + finding.message);
}

VerifyReport verify(const SiteFile& site) {
  VerifyReport report;
  Verification verification{site.connection(), report};
  struct Check {
    const char* what;
    void (*run)(Verification&);
  };
  static constexpr Check kChecks[] = {
      {"file", check_pages},           {"search", check_search_index},   {"transcript", check_transcripts},
      {"claim", check_quotes},         {"weighing", check_weighings},     {"journal", check_journal_chain},
      {"journal", replay_records},     {"journal", replay_transcripts},  {"journal", replay_claims},
      {"journal", replay_coding}};
  for (const Check& check : kChecks) {
    // A damaged file may fail anywhere while it is read: that too is a finding, and the other checks still
    // run.
    try {
      check.run(verification);
    } catch (const std::runtime_error& error) {
      verification.find(check.what, "", std::string("cannot be checked further: ") + error.what());
    }
  }
  return report;
}

}  // namespace witnessmark
