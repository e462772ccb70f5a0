#pragma once
#include <string>
#include <vector>

#include "witnessmark/base/id.h"
#include "witnessmark/model/dated.h"

namespace witnessmark {

/// What somebody concluded, on what, and where it was said: a record, not a verdict of the program. A later one replaces
/// it and does not unsay it.
struct Conclusion {
  Id id;
  std::string key;
  std::string subject, place;          ///< What it is about: keys of the lists; may be empty.
  std::string wording, reasons, author;
  Dated date;
  std::vector<std::string> evidence;   ///< Known then: keys of entries, stays, sources and interviews, ids of claims.
  std::string published;               ///< Where it was said: a label, a guidebook, a page; empty when it was not.
  std::vector<std::string> replaces;   ///< Keys of conclusions.
  std::string notes;
  bool operator==(const Conclusion&) const = default;
};

/// A question from outside and what it was answered, so that a correction can reach who was told.
struct Enquiry {
  Id id;
  std::string key;
  std::string question;
  std::string answer;                  ///< As sent.
  std::string sent_to, author;
  Dated date;
  std::vector<std::string> conclusions;   ///< Keys of those it rests on.
  std::string notes;
  bool operator==(const Enquiry&) const = default;
};

/// A look into a source for something: only where one has looked does silence mean anything.
struct Search {
  Id id;
  std::string key;
  std::string source;                  ///< Key of the source looked into.
  std::string subject, place;          ///< What was looked for; either may be empty.
  Dated when;                          ///< The time looked through; undated: all of the source.
  enum class Found { nothing, something };
  Found found = Found::nothing;
  std::string author;
  Dated date;
  std::string notes;
  bool operator==(const Search&) const = default;
};

struct ConclusionFile {
  std::vector<Conclusion> conclusions;
  std::vector<Enquiry> enquiries;
  std::vector<Search> searches;
};

}  // namespace witnessmark
