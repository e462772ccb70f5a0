#pragma once
#include <filesystem>
#include <string>
#include <vector>

#include "witnessmark/app/surroundings.h"
#include "witnessmark/base/error.h"
#include "witnessmark/model/authority_list.h"
#include "witnessmark/read/conclusion_files.h"
#include "witnessmark/read/interview_files.h"
#include "witnessmark/read/register_files.h"
#include "witnessmark/store/conclusions.h"
#include "witnessmark/store/evidence.h"
#include "witnessmark/store/interviews.h"
#include "witnessmark/store/transcripts.h"

namespace witnessmark {

/// What came of taking something in. When `done` is false at least one diagnostic is an error and the site file is as it
/// was.
struct TakenTranscript {
  std::string interview;
  std::string reader;
  std::string encoding_remark;
  std::size_t words = 0;
  std::size_t utterances = 0;
  TranscriptChanges changes;
};

struct InterviewsTakenIn {
  bool done = false;
  std::vector<Diagnostic> diagnostics;
  InterviewChanges changes;
  std::vector<TakenTranscript> transcripts;
};

/// Interviews, persons, releases and transcripts, all or nothing.
InterviewsTakenIn take_in_interviews(SiteFile& site, const std::filesystem::path& interviews,
                                     const InterviewFilePaths& paths, const Surroundings& surroundings);

struct EvidenceTakenIn {
  bool done = false;
  std::vector<Diagnostic> diagnostics;
  RegisterChanges changes;
};

/// The dated register from CSV or XML, all or nothing.
EvidenceTakenIn take_in_evidence(SiteFile& site, const std::filesystem::path& entries, const RegisterFilePaths& paths,
                                 const Surroundings& surroundings);

struct ConclusionsTakenIn {
  bool done = false;
  std::vector<Diagnostic> diagnostics;
  ConclusionChanges changes;
};

/// Conclusions, enquiries and searches from CSV, all or nothing.
ConclusionsTakenIn take_in_conclusions(SiteFile& site, const ConclusionFilePaths& paths,
                                       const Surroundings& surroundings);

struct ListTakenIn {
  bool done = false;
  std::vector<Diagnostic> diagnostics;
  ListChanges changes;
};

/// An authority list from CSV or SKOS, all or nothing.
ListTakenIn take_in_list(SiteFile& site, AuthorityList::Kind kind, const std::filesystem::path& path,
                         const Surroundings& surroundings);

}  // namespace witnessmark
