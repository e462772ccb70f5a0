#pragma once
#include <vector>

#include "witnessmark/app/surroundings.h"
#include "witnessmark/read/interview_files.h"
#include "witnessmark/store/site_file.h"
#include "witnessmark/store/transcripts.h"

namespace witnessmark {

/// Holds speakers.csv against the transcripts read with it. Warnings: labels under which nobody speaks, at
/// their cells, with those that occur; and labels that occur and of which neither a row (now or taken in
/// before) nor a name of the interview's people says whose they are.
std::vector<Diagnostic> check_speakers(const SiteFile& site, const InterviewFilesReading& reading,
                                       const std::vector<TranscriptFile>& transcripts,
                                       const Surroundings& surroundings);

}  // namespace witnessmark
