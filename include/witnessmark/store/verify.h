#pragma once
#include <string>
#include <vector>

#include "witnessmark/store/site_file.h"

namespace witnessmark {

/// A fault found in a site file.
struct Finding {
  std::string what;  ///< "file", "transcript", "claim", "journal", "search", "list", "evidence", "interview".
  std::string where;  ///< Key or id; may be empty.
  std::string message;
  bool operator==(const Finding&) const = default;
};
std::string to_string(const Finding& finding);

/// What was looked at, so that "no finding" says of how much.
struct VerifyReport {
  std::vector<Finding> findings;
  std::size_t originals = 0, reading_texts = 0, utterances = 0, claims = 0, events = 0, records = 0;
  bool accepted() const { return findings.empty(); }
};

/// Looks at everything: pages and indexes (SQLite's integrity check), references, the full-text index against
/// the words, hashes of originals and reading texts, turns and sentences in order and within their text,
/// quotes within theirs, each journal event against its hash and those it follows, and the journal replayed:
/// interviews, evidence and lists unwound to what was taken in, claims to what was proposed, each compared
/// with the hash the journal has of it.
VerifyReport verify(const SiteFile& site);

}  // namespace witnessmark
