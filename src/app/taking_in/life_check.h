#pragma once
#include <vector>

#include "witnessmark/read/interview_files.h"
#include "witnessmark/store/site_file.h"
#include "witnessmark/time/date_policy.h"

namespace witnessmark {

/// What no life can hold, by the dates read and those taken in before: death before birth, service that began
/// before birth or lasted beyond death, an interview with somebody not a year old or dead. Each is an error
/// at a cell read. Only what is impossible however the dates are meant: of an imprecise date every day it may
/// be is allowed for. A warning where an interview is given another date and a reviewed first-hand claim of
/// it is dated after that.
std::vector<Diagnostic> check_lives(const SiteFile& site, const InterviewFilesReading& reading,
                                    const DatePolicy& policy);

}  // namespace witnessmark
