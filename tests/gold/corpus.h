#pragma once
#include <functional>
#include <string>
#include <vector>

#include "witnessmark/language/claims.h"
#include "witnessmark/language/language.h"
#include "witnessmark/read/interview_files.h"
#include "witnessmark/read/register_files.h"

namespace witnessmark::gold {

/// A site with its lists and interviews.
struct Corpus {
  std::string folder;  ///< Ends in a slash.
  InterviewFile file;
  AuthorityLists lists;
  Register evidence;
  std::vector<std::vector<std::string>> locations;
};

Corpus read_corpus(const std::string& folder);

/// What reading an interview of the corpus needs, without the interview. All must outlive it.
ReadingContext context_of(const Corpus& corpus, const Language& language, const TermFinder& places,
                          const TermFinder& equipment);

/// Calls with what reading the interview of that key needs; not at all when the site has no such interview.
void with_interview(
    const Corpus& corpus, const Language& language, const std::string& key,
    const std::function<void(const ReadingContext&, Transcript, const std::vector<Sentence>&)>& use);

}  // namespace witnessmark::gold
